// Statements of how many are gathered from entries and claims alike. A total is a count whose place has other
// places in it, or whose subject has parts, for which something is stated at the same date. Of these only the
// outermost are added up: a rack in a locker that is counted itself is in the locker's number already.

#include "witnessmark/weigh/counts.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace witnessmark {
namespace {

/// A statement of how many, with what and when it is about.
struct Numbered {
  std::string subject, place;
  Dated when;
  std::optional<Period> period;
  bool total = false;  ///< Gives a number, and so may be a total itself.
  NumberStatement statement;
};

std::optional<NumberRange> number_of(Statement statement, const std::optional<NumberRange>& counted) {
  switch (statement) {
    case Statement::count:
      return counted;
    case Statement::present:
      return NumberRange{1, std::nullopt};
    case Statement::absent:
      return NumberRange{0, 0};
    default:
      return std::nullopt;
  }
}

void add_entry(const RegisterIndex::Item& item, std::vector<Numbered>& all) {
  const Entry& entry = *item.entry;
  std::optional<NumberRange> counted;
  if (entry.number) counted = NumberRange{*entry.number, entry.most()};
  const auto number = number_of(entry.statement, counted);
  const bool hidden = entry.statement == Statement::absent && item.source != nullptr &&
                      item.source->kind == SourceKind::photograph && entry.spot_visible != SpotVisible::yes;
  if (!number || !item.period || entry.subject.empty() || entry.nature == Nature::intended || hidden ||
      entry.identification == Identification::possible)
    return;
  all.push_back({entry.subject,
                 entry.place,
                 entry.when,
                 item.period,
                 entry.statement == Statement::count,
                 {Id{}, entry.key, *number, true}});
}

void add_claim(const Claim& claim, std::vector<Numbered>& all) {
  if (claim.polarity == Polarity::denied && claim.statement == Statement::count) return;
  std::optional<NumberRange> counted;
  if (claim.quantity) counted = NumberRange{claim.quantity->least, claim.quantity->most};
  Statement statement = claim.statement;
  if (claim.polarity == Polarity::denied && statement == Statement::present)
    statement = Statement::absent;
  else if (claim.polarity == Polarity::denied && statement == Statement::absent)
    statement = Statement::present;
  const auto number = number_of(statement, counted);
  if (!number || !claim.when.period || claim.subject.empty() || claim.led) return;
  all.push_back({claim.subject,
                 claim.place_carried ? "" : claim.place,
                 claim.when.dated,
                 claim.when.period,
                 statement == Statement::count,
                 {claim.id, "", *number, claim.status == ClaimStatus::said_so}});
}

NumberRange sum_of(const std::vector<CountedPosition>& positions) {
  NumberRange sum{0, 0};
  for (const CountedPosition& position : positions) {
    sum.least += position.number.least;
    if (sum.most && position.number.most)
      *sum.most += *position.number.most;
    else
      sum.most = std::nullopt;
  }
  return sum;
}

/// By how much a is more than b; 0 where it is not.
NumberRange surplus(const NumberRange& a, const NumberRange& b) {
  NumberRange more{0, std::nullopt};
  if (b.most) more.least = std::max<std::int64_t>(0, a.least - *b.most);
  if (a.most) more.most = std::max<std::int64_t>(0, *a.most - b.least);
  return more;
}

class Counter {
 public:
  Counter(const RegisterIndex& evidence, const std::vector<Testimony>& testimony) : evidence_(evidence) {
    for (const RegisterIndex::Item& item : evidence.items()) add_entry(item, all_);
    for (const Testimony& told : testimony) add_claim(*told.claim, all_);
    for (std::size_t i = 0; i < all_.size(); ++i) by_subject_[all_[i].subject].push_back(i);
  }

  std::vector<CountComparison> compare() const {
    std::vector<CountComparison> made;
    for (const Numbered& reported : all_) {
      if (!reported.total) continue;
      CountComparison comparison = against_positions(reported);
      if (!comparison.positions.empty()) made.push_back(std::move(comparison));
    }
    std::stable_sort(made.begin(), made.end(), [](const CountComparison& a, const CountComparison& b) {
      const auto order = [](const CountComparison& one) {
        return std::tuple(one.subject, one.place, one.period->earliest().value_or(Day{}),
                          one.reported.entry.empty());
      };
      return order(a) < order(b);
    });
    return made;
  }

 private:
  /// The place a number without place is of: where the register counts the thing, the widest of its places.
  std::string place_of(const Numbered& reported) const {
    if (!reported.place.empty()) return reported.place;
    std::string widest;
    for (const RegisterIndex::Item* item : evidence_.on(reported.subject, "")) {
      const std::string& place = item->entry->place;
      if (item->entry->subject != reported.subject || place.empty()) continue;
      if (widest.empty() || within_place(widest, place)) widest = place;
    }
    return widest;
  }

  bool within_place(const std::string& inner, const std::string& outer) const {
    return outer.empty() || inner == outer || evidence_.lists().places.within(inner, outer);
  }
  bool within_thing(const std::string& inner, const std::string& outer) const {
    return inner == outer || evidence_.lists().equipment.within(inner, outer);
  }

  /// Inside the total's place and thing, and not the very same.
  bool is_position(const Numbered& stated, const std::string& subject, const std::string& place) const {
    if (stated.place.empty() || place.empty()) return false;
    const bool same = stated.subject == subject && stated.place == place;
    return !same && within_place(stated.place, place) && within_thing(stated.subject, subject);
  }

  static bool same_date(const Numbered& a, const Numbered& b) {
    return within(*a.period, *b.period) == Answer::yes || within(*b.period, *a.period) == Answer::yes;
  }

  std::vector<std::string> subjects_in(const std::string& subject) const {
    std::vector<std::string> keys = evidence_.lists().equipment.all_within(subject);
    if (keys.empty()) keys.push_back(subject);
    return keys;
  }

  CountComparison against_positions(const Numbered& reported) const {
    CountComparison made;
    made.subject = reported.subject;
    made.place = place_of(reported);
    made.when = reported.when;
    made.period = reported.period;
    made.total = reported.statement.number;
    made.reported = reported.statement;
    std::map<std::pair<std::string, std::string>, CountedPosition> positions;
    std::set<std::string> elsewhen;
    for (const std::string& subject : subjects_in(reported.subject)) {
      const auto at = by_subject_.find(subject);
      if (at == by_subject_.end()) continue;
      for (const std::size_t i : at->second) {
        const Numbered& stated = all_[i];
        if (!is_position(stated, reported.subject, made.place)) continue;
        if (!same_date(stated, reported)) {
          elsewhen.insert(stated.place);
          continue;
        }
        add_reading(positions[{stated.place, stated.subject}], stated);
      }
    }
    for (auto& [key, position] : positions) {
      if (!held_in_another(position, positions)) made.positions.push_back(position);
      elsewhen.erase(position.place);
    }
    made.nothing_said.assign(elsewhen.begin(), elsewhen.end());
    made.sum = sum_of(made.positions);
    made.unaccounted = surplus(made.total, made.sum);
    made.excess = surplus(made.sum, made.total);
    return made;
  }

  static void add_reading(CountedPosition& position, const Numbered& stated) {
    const NumberRange& number = stated.statement.number;
    if (position.statements.empty()) {
      position.subject = stated.subject;
      position.place = stated.place;
      position.number = number;
    } else {
      // "There" says no more than a number that is given.
      const bool open = !position.number.most;
      if (open && number.most)
        position.number = number;
      else if (number.most || open) {
        position.number.least = std::min(position.number.least, number.least);
        if (position.number.most) position.number.most = std::max(*position.number.most, *number.most);
      }
    }
    position.statements.push_back(stated.statement);
  }

  bool held_in_another(const CountedPosition& position,
                       const std::map<std::pair<std::string, std::string>, CountedPosition>& all) const {
    return std::any_of(all.begin(), all.end(), [&](const auto& other) {
      const CountedPosition& outer = other.second;
      const bool same = outer.place == position.place && outer.subject == position.subject;
      return !same && within_place(position.place, outer.place) &&
             within_thing(position.subject, outer.subject);
    });
  }

  const RegisterIndex& evidence_;
  std::vector<Numbered> all_;
  std::map<std::string, std::vector<std::size_t>> by_subject_;
};

}  // namespace

std::string to_string(const NumberRange& range) {
  if (!range.most) return fmt::format("{} or more", range.least);
  return range.least == *range.most ? fmt::format("{}", range.least)
                                    : fmt::format("{} to {}", range.least, *range.most);
}

std::string dump(const CountComparison& comparison) {
  std::string text = fmt::format("{}@{} {}: {} =", comparison.subject, comparison.place,
                                 to_string(comparison.when), to_string(comparison.total));
  for (std::size_t i = 0; i < comparison.positions.size(); ++i) {
    const CountedPosition& position = comparison.positions[i];
    text += fmt::format("{} {} ({}@{})", i == 0 ? "" : " +", to_string(position.number), position.subject,
                        position.place);
  }
  text += fmt::format(", unaccounted {}, excess {}", to_string(comparison.unaccounted),
                      to_string(comparison.excess));
  for (const std::string& place : comparison.nothing_said) text += ", nothing of " + place;
  return text;
}

std::vector<CountComparison> compare_counts(const RegisterIndex& evidence,
                                            const std::vector<Testimony>& testimony) {
  return Counter(evidence, testimony).compare();
}

}  // namespace witnessmark
