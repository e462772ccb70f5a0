#include "store/coding/record_changes.h"

#include <stdexcept>

#include "store/claim/claim_rows.h"
#include "store/coding/passage_place.h"

namespace witnessmark {
namespace {

/// Calls with a null pointer to the type of that kind of record. False when there is none.
template <typename Visit>
bool with_type(std::string_view target_kind, Visit visit) {
  bool found = false;
  const auto each = [&]<typename R>(R* type) {
    if (target_kind != Table<R>::kind) return;
    found = true;
    visit(type);
  };
  for_each_coding_table(each);
  each(static_cast<RestrictedPassage*>(nullptr));
  return found;
}

template <typename Visit>
void require_type(std::string_view target_kind, Visit visit) {
  if (!with_type(target_kind, visit))
    throw std::runtime_error("site file: no record is a \"" + std::string(target_kind) + "\"");
}

}  // namespace

bool is_coding_record(std::string_view target_kind) {
  return with_type(target_kind, [](auto*) {});
}

std::string plain_json(std::string_view target_kind, const std::string& json) {
  if (json.empty()) return json;
  std::string plain;
  require_type(target_kind, [&]<typename R>(R*) { plain = to_json(record_of<R>(json)); });
  return plain;
}

std::string stored_json(StoreConnection& connection, std::string_view target_kind, const std::string& like) {
  std::string json;
  require_type(target_kind, [&]<typename R>(R*) { json = stored_json(connection, record_of<R>(like)); });
  return json;
}

std::string record_target(std::string_view target_kind, const std::string& json) {
  std::string target;
  require_type(target_kind, [&]<typename R>(R*) { target = Table<R>::target(record_of<R>(json)); });
  return target;
}

bool same_record(std::string_view target_kind, const std::string& one, const std::string& other) {
  bool same = false;
  require_type(target_kind, [&]<typename R>(R*) {
    const R first = record_of<R>(one);
    const R second = record_of<R>(other);
    same = Table<R>::key(first) == Table<R>::key(second);
  });
  return same;
}

void write_record(StoreConnection& connection, std::string_view target_kind, const std::string& before,
                  const std::string& after, std::int64_t since) {
  require_type(target_kind, [&]<typename R>(R*) {
    if (after.empty()) {
      delete_record(connection, record_of<R>(before));
    } else if (before.empty()) {
      insert_record(connection, record_of<R>(after), since);
      if constexpr (std::same_as<R, RestrictedPassage>) restore_place(connection, after);
    } else {
      update_record(connection, record_of<R>(after));
      if constexpr (std::same_as<R, RestrictedPassage>) restore_place(connection, after);
    }
  });
}

}  // namespace witnessmark
