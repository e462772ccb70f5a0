#include "store/connection.h"

#include <stdexcept>

namespace witnessmark {

StoreConnection::~StoreConnection() {
  // In this order: open statements keep the connection alive, and with the lock held the connection is not
  // the last one and leaves its side files.
  statements_.clear();
  lock.reset();
  database.reset();
}

SqlStatement& StoreConnection::prepared(const char* sql) {
  auto& statement = statements_[sql];
  if (!statement) statement = std::make_unique<SqlStatement>(*database, sql);
  statement->reset();
  return *statement;
}

void StoreConnection::require_editor() const {
  if (!editor) throw std::logic_error("the site file is open to read only");
}

}  // namespace witnessmark
