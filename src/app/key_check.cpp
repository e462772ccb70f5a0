#include "witnessmark/app/key_check.h"

#include <algorithm>
#include <set>

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
  for (const UnresolvedKey& key : keys) {
    if (known.has(key)) continue;
    const bool may_come = std::any_of(key.may_be.begin(), key.may_be.end(), [&](KeyKind kind) {
      return std::find(awaited.begin(), awaited.end(), kind) != awaited.end();
    });
    if (!may_come) {
      diagnostics.push_back({Diagnostic::Severity::error, key.what});
      continue;
    }
    Error awaited_key = key.what;
    awaited_key.advice = "take it in later, or correct the key";
    diagnostics.push_back({Diagnostic::Severity::note, std::move(awaited_key)});
  }
  return diagnostics;
}

}  // namespace witnessmark
