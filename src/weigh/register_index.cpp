#include "witnessmark/weigh/register_index.h"

#include <algorithm>

#include "weigh/comparing/evidence_beside.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {

RegisterIndex::RegisterIndex(const Register& evidence, const AuthorityLists& lists, const DatePolicy& policy)
    : lists_(lists), policy_(policy), finder_(std::make_unique<EvidenceFinder>(*this)) {
  for (const Source& source : evidence.sources) sources_.emplace(source.key, &source);
  for (const Derivation& derivation : evidence.derivations)
    derives_from_[derivation.source].push_back(derivation.derives_from);
  items_.reserve(evidence.entries.size());
  for (const Entry& entry : evidence.entries) {
    std::optional<Period> period;
    if (entry.when.value) period = to_period(*entry.when.value, policy_);
    by_subject_[entry.subject].push_back(items_.size());
    by_key_.emplace(entry.key, items_.size());
    items_.push_back({&entry, source(entry.source), period});
  }
  stays_.reserve(evidence.itinerary.size());
  for (const Stay& stay : evidence.itinerary) {
    StayItem item{&stay, std::nullopt, {}};
    if (stay.when.value) item.period = to_period(*stay.when.value, policy_);
    for (const std::string& location : stay.locations) item.folded_locations.push_back(fold(location));
    stay_by_key_.emplace(stay.key, stays_.size());
    stays_.push_back(std::move(item));
  }
  add_locations();
}

void RegisterIndex::add_locations() {
  for (std::size_t i = 0; i < stays_.size(); ++i)
    for (const std::string& name : stays_[i].folded_locations) stay_by_location_.emplace(name, i);
  for (const auto& [name, stay] : stay_by_location_) {
    for (auto space = name.find(' '); space != std::string::npos; space = name.find(' ', space + 1)) {
      const auto [at, fresh] = stay_by_name_end_.try_emplace(name.substr(space + 1), stay);
      const bool same =
          at->second && stays_[*at->second].folded_locations.front() == stays_[stay].folded_locations.front();
      if (!fresh && !same) at->second = std::nullopt;
    }
  }
}

std::vector<std::string> RegisterIndex::location_names(std::string_view words) const {
  const std::string folded = fold(words);
  if (const auto at = stay_by_location_.find(folded); at != stay_by_location_.end())
    return stays_[at->second].folded_locations;
  const auto at = stay_by_name_end_.find(folded);
  if (at != stay_by_name_end_.end() && at->second) return stays_[*at->second].folded_locations;
  return {folded};
}

RegisterIndex::~RegisterIndex() = default;

std::vector<const RegisterIndex::Item*> RegisterIndex::on(std::string_view subject,
                                                          std::string_view place) const {
  const EvidenceBeside& found = beside(subject, place);
  std::vector<const Item*> items;
  items.reserve(found.numbers.size());
  for (const std::size_t number : found.numbers) items.push_back(&items_[number]);
  return items;
}

const EvidenceBeside& RegisterIndex::beside(std::string_view subject, std::string_view place) const {
  return finder_->beside(subject, place);
}

const ShownStays* RegisterIndex::shown_stays(const std::string& subject, const std::string& place) const {
  return finder_->shown_stays(subject, place);
}

const std::unordered_set<std::string>& RegisterIndex::lineage(std::string_view source_key) const {
  return finder_->lineage(source_key);
}

const std::vector<std::size_t>& RegisterIndex::entries_on(const std::string& subject) const {
  static const std::vector<std::size_t> kNone;
  const auto at = by_subject_.find(subject);
  return at == by_subject_.end() ? kNone : at->second;
}

const RegisterIndex::Item* RegisterIndex::find(std::string_view entry_key) const {
  const auto at = by_key_.find(std::string(entry_key));
  return at == by_key_.end() ? nullptr : &items_[at->second];
}

const RegisterIndex::StayItem* RegisterIndex::find_stay(std::string_view stay_key) const {
  const auto at = stay_by_key_.find(std::string(stay_key));
  return at == stay_by_key_.end() ? nullptr : &stays_[at->second];
}

const Source* RegisterIndex::source(std::string_view key) const {
  const auto at = sources_.find(std::string(key));
  return at == sources_.end() ? nullptr : at->second;
}

std::unordered_set<std::string> RegisterIndex::trace_lineage(std::string_view source_key) const {
  std::unordered_set<std::string> seen;
  std::vector<std::string> open{std::string(source_key)};
  while (!open.empty()) {
    std::string key = std::move(open.back());
    open.pop_back();
    if (!seen.insert(key).second) continue;
    if (const auto at = derives_from_.find(key); at != derives_from_.end())
      open.insert(open.end(), at->second.begin(), at->second.end());
    if (const Source* held = source(key); held && !held->interview.empty()) open.push_back(held->interview);
  }
  return seen;
}

bool RegisterIndex::places_meet(std::string_view a, std::string_view b) const {
  if (a.empty() || b.empty()) return true;
  return lists_.places.within(a, b) || lists_.places.within(b, a);
}

}  // namespace witnessmark
