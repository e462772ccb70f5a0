#include "witnessmark/app/key_check.h"

#include <algorithm>
#include <set>

#include "witnessmark/base/did_you_mean.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/conclusions.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"

namespace witnessmark {
namespace {

/// Every key of the site file, by kind.
class KnownKeys {
 public:
  explicit KnownKeys(const SiteFile& site) : site_(site) {
    const InterviewFile interviews = load_interviews(site);
    for (const auto& interview : interviews.interviews) add(KeyKind::interview, interview.key);
    for (const auto& person : interviews.persons) add(KeyKind::person, person.key);
    const Register evidence = load_register(site);
    for (const auto& source : evidence.sources) add(KeyKind::source, source.key);
    for (const auto& entry : evidence.entries) add(KeyKind::entry, entry.key);
    for (const auto& stay : evidence.itinerary) add(KeyKind::stay, stay.key);
    for (const auto& event : evidence.events) add(KeyKind::event, event.key);
    const AuthorityLists lists = load_lists(site);
    for (const auto& term : lists.places.terms()) add(KeyKind::place, term.key);
    for (const auto& term : lists.equipment.terms()) add(KeyKind::equipment, term.key);
    for (const auto& conclusion : load_conclusions(site).conclusions) add(KeyKind::conclusion, conclusion.key);
  }

  bool has(const UnresolvedKey& wanted) const {
    return std::any_of(wanted.may_be.begin(), wanted.may_be.end(), [&](KeyKind kind) {
      if (kind != KeyKind::claim) return keys_.contains({kind, wanted.key});
      const auto id = parse_id(wanted.key);
      return id && find_claim(site_, *id).has_value();
    });
  }

  /// Keys of the wanted kinds that are spelt nearly so.
  std::vector<std::string> near(const UnresolvedKey& wanted) const {
    std::vector<std::string> candidates;
    for (const auto& [kind, key] : keys_)
      if (std::find(wanted.may_be.begin(), wanted.may_be.end(), kind) != wanted.may_be.end())
        candidates.push_back(key);
    return near_matches(wanted.key, candidates);
  }

 private:
  void add(KeyKind kind, const std::string& key) { keys_.emplace(kind, key); }
  const SiteFile& site_;
  std::set<std::pair<KeyKind, std::string>> keys_;
};

}  // namespace

std::vector<Diagnostic> check_keys(const SiteFile& site, const std::vector<UnresolvedKey>& keys,
                                   const std::vector<KeyKind>& awaited) {
  std::vector<Diagnostic> diagnostics;
  if (keys.empty()) return diagnostics;
  const KnownKeys known(site);
  // Looking for near matches takes a pass over all keys, so only the first few get one.
  constexpr std::size_t kMostWithAdvice = 50;
  std::size_t looked_for = 0;
  for (const UnresolvedKey& key : keys) {
    if (known.has(key)) continue;
    auto near = key.near;
    if (near.empty() && ++looked_for <= kMostWithAdvice) near = known.near(key);
    const bool may_come = std::any_of(key.may_be.begin(), key.may_be.end(), [&](KeyKind kind) {
      return std::find(awaited.begin(), awaited.end(), kind) != awaited.end();
    });
    Error what = key.what;
    if (!near.empty()) what.advice = did_you_mean(near);
    Diagnostic::Severity severity = Diagnostic::Severity::error;
    if (may_come && near.empty()) what.advice = "take it in later, or correct the key";
    if (may_come && !near.empty()) what.advice += " If not, take it in later";
    if (may_come) severity = near.empty() ? Diagnostic::Severity::note : Diagnostic::Severity::warning;
    diagnostics.push_back({severity, std::move(what)});
  }
  return diagnostics;
}

}  // namespace witnessmark
