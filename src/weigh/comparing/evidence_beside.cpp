#include "evidence_beside.h"

#include <algorithm>
#include <limits>
#include <numeric>

#include "weigh/fixtures/fixture_places.h"
#include "weigh/fixtures/shown_stays.h"

namespace witnessmark {

void ShownStretches::sort() {
  std::sort(stretches_.begin(), stretches_.end());
  least_past_.resize(stretches_.size());
  std::int64_t least = std::numeric_limits<std::int64_t>::max();
  for (std::size_t i = stretches_.size(); i-- > 0;) {
    least = std::min(least, stretches_[i].second);
    least_past_[i] = least;
  }
}

bool ShownStretches::any_between(std::int64_t from, std::int64_t to) const {
  const auto first = std::lower_bound(stretches_.begin(), stretches_.end(), from,
                                      [](const auto& stretch, std::int64_t day) { return stretch.first < day; });
  if (first == stretches_.end()) return false;
  return least_past_[static_cast<std::size_t>(first - stretches_.begin())] - 1 <= to;
}

const EvidenceBeside& EvidenceFinder::beside(std::string_view subject, std::string_view place) {
  std::string key;
  key.reserve(subject.size() + place.size() + 1);
  key.append(subject).append("\n").append(place);
  const std::lock_guard lock(mutex_);
  const auto [at, fresh] = beside_.try_emplace(std::move(key));
  if (fresh) at->second = found(std::string(subject), std::string(place));
  return at->second;
}

const std::unordered_set<std::string>& EvidenceFinder::lineage(std::string_view source) {
  const std::lock_guard lock(mutex_);
  return held_lineage(std::string(source));
}

const std::unordered_set<std::string>& EvidenceFinder::held_lineage(const std::string& source) {
  const auto [at, fresh] = lineages_.try_emplace(source);
  if (fresh) at->second = evidence_.trace_lineage(source);
  return at->second;
}

const std::vector<std::size_t>& EvidenceFinder::on(const std::string& subject) {
  const auto [at, fresh] = on_.try_emplace(subject);
  if (!fresh) return at->second;
  const AuthorityList& things = evidence_.lists().equipment;
  std::vector<std::string> keys;
  if (!subject.empty()) {
    keys = things.all_within(subject);
    for (std::string& key : things.above(subject)) keys.push_back(std::move(key));
  }
  if (keys.empty()) keys.push_back(subject);
  std::vector<std::size_t>& numbers = at->second;
  for (const std::string& key : keys) {
    const std::vector<std::size_t>& own = evidence_.entries_on(key);
    numbers.insert(numbers.end(), own.begin(), own.end());
  }
  std::sort(numbers.begin(), numbers.end());
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  std::erase_if(numbers, [&](std::size_t number) {
    const Entry& entry = *evidence_.items()[number].entry;
    return entry.statement == Statement::located || (subject.empty() && entry.place.empty());
  });
  return numbers;
}

const ShownStays* EvidenceFinder::shown_stays(const std::string& subject, const std::string& place) {
  const std::lock_guard lock(mutex_);
  const auto [at, fresh] = shown_stays_.try_emplace(subject);
  if (fresh) at->second = find_stays(subject);
  const auto found = at->second.find(place);
  return found == at->second.end() ? nullptr : found->second.get();
}

std::map<std::string, std::shared_ptr<const ShownStays>> EvidenceFinder::find_stays(const std::string& subject) const {
  std::map<std::string, std::shared_ptr<const ShownStays>> by_place;
  const std::vector<std::size_t>& numbers = evidence_.entries_on(subject);
  if (subject.empty() || numbers.size() < 2) return by_place;
  const auto statements = entry_statements(evidence_, numbers);
  std::vector<std::size_t> all(statements.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  for (const FixturePlace& fixture : fixtures_of(subject, "", all, statements, evidence_.lists())) {
    if (fixture.episodes == 1) continue;
    const auto stays = std::make_shared<const ShownStays>(fixture, statements);
    for (const Bearing& bearing : fixture.bearings)
      if (bearing.relation == PlaceRelation::same) by_place.emplace(statements[bearing.statement].place, stays);
  }
  return by_place;
}

const PreparedEntry& EvidenceFinder::prepared(std::size_t number) {
  if (prepared_.empty()) prepared_.resize(evidence_.items().size());
  std::unique_ptr<PreparedEntry>& held = prepared_[number];
  if (!held) {
    const RegisterIndex::Item& item = evidence_.items()[number];
    held = std::make_unique<PreparedEntry>(
        PreparedEntry{timed(item, evidence_), &held_lineage(item.entry->source)});
  }
  return *held;
}

const std::unordered_set<std::string>& EvidenceFinder::places_around(const std::string& place) {
  const auto [at, fresh] = around_.try_emplace(place);
  if (!fresh) return at->second;
  const AuthorityList& places = evidence_.lists().places;
  for (std::string& key : places.above(place)) at->second.insert(std::move(key));
  if (places.find(place) != nullptr) at->second.insert(place);
  return at->second;
}

EvidenceBeside EvidenceFinder::found(const std::string& subject, const std::string& place) {
  EvidenceBeside made;
  const std::string* counted_at = nullptr;
  for (const std::size_t number : on(subject)) {
    const RegisterIndex::Item& item = evidence_.items()[number];
    const Entry& entry = *item.entry;
    const bool meet = place.empty() || entry.place.empty() || places_around(place).contains(entry.place) ||
                      places_around(entry.place).contains(place);
    if (!meet) continue;
    const PreparedEntry& held = prepared(number);
    made.numbers.push_back(number);
    made.entries.push_back(&held);
    if (entry.subject != subject) continue;
    if (entry.statement == Statement::count) {
      made.counted_at_several_places |= counted_at != nullptr && *counted_at != entry.place;
      counted_at = &entry.place;
    }
    if (entry.nature == Nature::intended || !item.period) continue;
    const auto first = item.period->earliest();
    const auto past = item.period->past_latest();
    if (!first || !past) continue;
    const Statement stated = held.timed.own.statement;
    const bool there =
        stated == Statement::present || stated == Statement::count || stated == Statement::attribute;
    if (there || stated == Statement::begins) made.came.add(first->value, past->value);
    if (there || stated == Statement::ends) made.went.add(first->value, past->value);
  }
  made.came.sort();
  made.went.sort();
  return made;
}

}  // namespace witnessmark
