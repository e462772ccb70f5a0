#include "witnessmark/model/statement.h"

#include "model/names.h"

namespace witnessmark {
namespace {

constexpr std::pair<Statement, std::string_view> kStatements[] = {
    {Statement::begins, "begins"},     {Statement::ends, "ends"},       {Statement::present, "present"},
    {Statement::absent, "absent"},     {Statement::count, "count"},     {Statement::attribute, "attribute"},
    {Statement::happened, "happened"}, {Statement::located, "located"},
};

}  // namespace

std::string_view to_string(Statement statement) {
  return word_of(kStatements, statement);
}

std::optional<Statement> parse_statement(std::string_view text) {
  return value_of(kStatements, text);
}

}  // namespace witnessmark
