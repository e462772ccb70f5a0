#include "witnessmark/weigh/statement_words.h"

#include <fmt/core.h>

namespace witnessmark {
namespace {

std::string name_of(const AuthorityList& list, const std::string& key, const std::string& words) {
  if (const Term* term = list.find(key)) return term->name;
  return words.empty() ? key : words;
}

std::string number_words(std::int64_t least, std::int64_t most) {
  return least == most ? std::to_string(least) : fmt::format("{} to {}", least, most);
}

std::string stated(Statement statement, const std::string& what, const std::string& detail) {
  switch (statement) {
    case Statement::begins:
      return detail.empty() ? what + " fitted" : fmt::format("{} given {}", what, detail);
    case Statement::ends:
      return detail.empty() ? what + " taken away" : fmt::format("{} no longer {}", what, detail);
    case Statement::present:
      return what + " there";
    case Statement::absent:
      return what + " not there";
    case Statement::count:
      return fmt::format("{}: {}", what, detail.empty() ? "a number" : detail);
    case Statement::attribute:
      return fmt::format("{}: {}", what, detail.empty() ? "a property" : detail);
    case Statement::happened:
      return fmt::format("{}: {}", what, detail.empty() ? "an event" : detail);
    case Statement::located:
      return "at " + what;
  }
  return what;
}

}  // namespace

std::string thing_words(const AuthorityLists& lists, const std::string& subject, const std::string& subject_words,
                  const std::string& place, const std::string& place_words) {
  const std::string what = name_of(lists.equipment, subject, subject_words);
  const std::string where = name_of(lists.places, place, place_words);
  if (what.empty()) return where;
  return where.empty() ? what : fmt::format("{} ({})", what, where);
}

std::string when_words(const Dated& dated, const std::optional<Period>& period) {
  if (!period) return dated.written.empty() ? "undated" : fmt::format("“{}” (not resolved)", dated.written);
  const bool own_words = !dated.written.empty() && (!dated.value || dated.written != to_string(*dated.value));
  return own_words ? fmt::format("“{}” ({})", dated.written, describe(*period)) : describe(*period);
}

std::string statement_words(const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  const Entry& entry = *item.entry;
  std::string detail = entry.attribute;
  if (entry.statement == Statement::count && entry.number)
    detail = number_words(*entry.number, *entry.most());
  return fmt::format("{}, {}",
                     stated(entry.statement, thing_words(evidence.lists(), entry.subject, "", entry.place, ""), detail),
                     when_words(entry.when, item.period));
}

std::string statement_words(const Claim& claim, const RegisterIndex& evidence) {
  std::string detail = claim.attribute;
  if (claim.statement == Statement::count && claim.quantity)
    detail = number_words(claim.quantity->least, claim.quantity->most);
  const std::string what =
      thing_words(evidence.lists(), claim.subject, claim.subject_words, claim.place, claim.place_words);
  return fmt::format("{}, {}", stated(claim.statement, what, detail),
                     when_words(claim.when.dated, claim.when.period));
}

}  // namespace witnessmark
