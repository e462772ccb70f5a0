#include "witnessmark/weigh/statement_words.h"

#include <fmt/core.h>

#include <algorithm>
#include <vector>

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

std::string name_of(const AuthorityList& list, const std::string& key, const std::string& words) {
  if (const Term* term = list.find(key)) return term->name;
  return words.empty() ? key : words;
}

std::string number_words(std::int64_t least, std::int64_t most) {
  return least == most ? std::to_string(least) : fmt::format("{} to {}", least, most);
}

/// What is stated of a thing; `what` names it, or of `located` the place.
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
      return fmt::format("{}: {}", what, detail.empty() ? "how many there were" : detail);
    case Statement::attribute:
      return fmt::format("{}: {}", what, detail.empty() ? "what it was like" : detail);
    case Statement::happened:
      return fmt::format("{}: something happened{}", what, detail.empty() ? "" : " (" + detail + ")");
    case Statement::located:
      return "at " + what;
  }
  return what;
}

/// Who a claim of whereabouts is of. "I" is nobody's name outside of the quote, and words that stand for nobody who is
/// known ("she", "the men") are given as words.
std::string who_words(const Claim& claim) {
  if (claim.subject.empty())
    return claim.subject_words.empty() ? "the site" : fmt::format("“{}”", claim.subject_words);
  if (!claim.subject.empty() && claim.subject == claim.speaker) return "the narrator";
  return claim.subject_words.empty() ? claim.subject : claim.subject_words;
}

/// In code points: a quote that stands whole, and what is left of a longer one.
constexpr std::size_t kWholeQuote = 100;
constexpr std::size_t kBriefQuote = 72;

std::size_t code_points(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  while (!text.empty()) {
    const auto begin = text.find_first_not_of(" \t\r\n");
    if (begin == std::string_view::npos) break;
    const auto end = std::min(text.size(), text.find_first_of(" \t\r\n", begin));
    words.push_back(text.substr(begin, end - begin));
    text.remove_prefix(end);
  }
  return words;
}

/// The words from `first` that hold the wanted ones, punctuation after them allowed.
bool begins_at(const std::vector<std::string_view>& words, std::size_t first,
               const std::vector<std::string_view>& wanted) {
  if (first + wanted.size() > words.size()) return false;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const bool last = i + 1 == wanted.size();
    if (last ? !words[first + i].starts_with(wanted[i]) : words[first + i] != wanted[i]) return false;
  }
  return true;
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
  const bool doubted = dated.value && is_uncertain(*dated.value);
  const std::string meant = doubted ? describe(*dated.value, *period) : describe(*period);
  const bool own_words = !dated.written.empty() && fold(dated.written) != fold(meant) &&
                         (!dated.value || dated.written != to_string(*dated.value));
  return own_words ? fmt::format("“{}” ({})", dated.written, meant) : meant;
}

std::string when_words(const Dated& dated, const std::optional<Period>& period, Reading reading) {
  if (!period || reading == Reading::throughout) return when_words(dated, period);
  // Of some time within it: that the days at its ends are imprecise, or that it has but one end, makes no stretch of it.
  const auto first = period->earliest(), past = period->past_latest();
  const bool exact = first && past && period->surely_covers(*first, *past);
  if (exact || (!first && !past)) return when_words(dated, period);
  const Period some_time{{Boundary::Kind::known, first, past}, {Boundary::Kind::known, first, past}};
  return when_words(dated, some_time);
}

std::string statement_words(const RegisterIndex::Item& item, const RegisterIndex& evidence) {
  const Entry& entry = *item.entry;
  std::string detail = entry.attribute;
  if (entry.statement == Statement::count && entry.number)
    detail = number_words(*entry.number, *entry.most());
  return fmt::format("{}, {}",
                     stated(entry.statement, thing_words(evidence.lists(), entry.subject, "", entry.place, ""), detail),
                     when_words(entry.when, item.period, entry.reading));
}

Whereabouts whereabouts_of(const Claim& claim, const RegisterIndex& evidence) {
  if (const Term* term = evidence.lists().places.find(claim.place))
    return {Whereabouts::Kind::place, term->name};
  if (claim.place_words.empty()) return {Whereabouts::Kind::not_named, ""};
  const std::string folded = fold(claim.place_words);
  const auto& stays = evidence.stays();
  const bool location = std::any_of(stays.begin(), stays.end(), [&](const RegisterIndex::StayItem& stay) {
    return std::find(stay.folded_locations.begin(), stay.folded_locations.end(), folded) !=
           stay.folded_locations.end();
  });
  const bool name = !folded.empty() && folded.front() != claim.place_words.front();
  return {location || name ? Whereabouts::Kind::place : Whereabouts::Kind::words, claim.place_words};
}

std::string to_string(const Whereabouts& where) {
  switch (where.kind) {
    case Whereabouts::Kind::place:
      return "at " + where.words;
    case Whereabouts::Kind::words:
      return fmt::format("“{}”", where.words);
    case Whereabouts::Kind::not_named:
      return "no place named";
  }
  return "";
}

std::string statement_words(const Claim& claim, const RegisterIndex& evidence) {
  std::string detail = claim.attribute;
  if (claim.statement == Statement::count && claim.quantity)
    detail = number_words(claim.quantity->least, claim.quantity->most);
  const std::string when = when_words(claim.when.dated, claim.when.period, reading_of(claim));
  if (claim.statement == Statement::located) {
    const Whereabouts where = whereabouts_of(claim, evidence);
    const bool place = where.kind == Whereabouts::Kind::place;
    return fmt::format("{}{} {}, {}", who_words(claim), place ? "" : ":", to_string(where), when);
  }
  const std::string what =
      thing_words(evidence.lists(), claim.subject, claim.subject_words, claim.place, claim.place_words);
  return fmt::format("{}, {}", stated(claim.statement, what, detail), when);
}

std::string brief_quote(std::string_view quote, std::string_view about) {
  const std::vector<std::string_view> words = words_of(quote);
  const std::vector<std::string_view> wanted = words_of(about);
  std::size_t all = 0;
  for (const std::string_view word : words) all += code_points(word) + 1;
  const std::size_t most = all <= kWholeQuote + 1 ? all : kBriefQuote + 1;
  std::size_t first = 0, past = 0;
  for (std::size_t i = 0; !wanted.empty() && past == 0 && i < words.size(); ++i)
    if (begins_at(words, i, wanted)) first = i, past = i + wanted.size();
  std::size_t length = 0;
  for (std::size_t i = first; i < past; ++i) length += code_points(words[i]) + 1;
  // A word before it for each word after it, as long as there is room: no word is cut, and one stands in any case.
  for (bool grew = true; grew;) {
    grew = false;
    const auto take = [&](std::size_t word) {
      const std::size_t more = code_points(words[word]) + 1;
      if (length > 0 && length + more > most) return false;
      length += more;
      return grew = true;
    };
    if (first > 0 && take(first - 1)) --first;
    if (past < words.size() && take(past)) ++past;
  }
  std::string brief = first > 0 ? "…" : "";
  for (std::size_t i = first; i < past; ++i) brief += (brief.empty() ? "" : " ") + std::string(words[i]);
  if (past < words.size()) brief += brief.empty() ? "…" : " …";
  return brief;
}

}  // namespace witnessmark
