#include "witnessmark/app/bounds.h"

#include <algorithm>
#include <tuple>

#include "app/stays/shown_evidence.h"

namespace witnessmark {
namespace {

void add_named(const Bounds& bounds, std::set<StatementKey>& keys) {
  for (const StayBounds& stay : bounds.stays)
    for (const Bound* bound :
         {&stay.came_earliest, &stay.came_latest, &stay.went_earliest, &stay.went_latest})
      keys.insert(bound->from.begin(), bound->from.end());
}

void add_named(const FixtureBounds& bounds, std::set<StatementKey>& keys) {
  for (const Bounds* one : {&bounds.from_register, &bounds.with_reviewed, &bounds.preview})
    add_named(*one, keys);
  for (const BoundsWithout& without : bounds.without) {
    add_named(without.bounds, keys);
    keys.insert(without.left_out.begin(), without.left_out.end());
  }
  for (const ClaimEffect& effect : bounds.claims) {
    const bool matters =
        effect.kind == ClaimEffect::Kind::narrows || effect.kind == ClaimEffect::Kind::contradicts;
    if (matters) keys.insert(effect.claim);
  }
  for (const NoBound& none : bounds.no_bound)
    if (none.footing == Footing::evidence) keys.insert(none.statement);
}

bool asked_for(const std::string& subject, const std::string& place, const NamedTerms& names) {
  return names.equipment.contains(subject) || names.places.contains(place);
}

}  // namespace

Result<BoundsAccount> bounds_account(const SiteFile& site, std::string_view name, std::size_t most,
                                     const Surroundings& surroundings) {
  const auto shown = ShownEvidence::load(site, surroundings);
  if (!shown) return shown.error();
  const ShownEvidence& evidence = **shown;
  std::optional<NamedTerms> names;
  if (!name.empty()) {
    auto found = named_terms(evidence.lists(), name, true);
    if (!found) return found.error();
    names = std::move(*found);
  }
  BoundsAccount account;
  for (const StayGroup& group : evidence.stays().groups()) {
    if (names && std::none_of(group.fixtures.begin(), group.fixtures.end(), [&](const FixturePlace& fixture) {
          return asked_for(fixture.subject, fixture.place, *names);
        }))
      continue;
    for (FixtureBounds& found : find_bounds(evidence.stays(), group)) {
      if (names && !asked_for(found.subject, found.place, *names)) continue;
      ++account.total;
      account.properties += !found.property.empty();
      account.contradicted += found.from_register.state == BoundsState::contradicted;
      account.narrowed += found.with_reviewed != found.from_register;
      ShownBounds made{std::move(found), "", ""};
      made.subject_name = value_name(evidence.subject_name(made.bounds.subject), made.bounds.property);
      made.place_name = evidence.place_name(made.bounds.place);
      account.fixtures.push_back(std::move(made));
    }
  }
  std::stable_sort(account.fixtures.begin(), account.fixtures.end(), [](const auto& a, const auto& b) {
    const auto key = [](const ShownBounds& shown_bounds) {
      return std::tuple(
          shown_bounds.bounds.preview.state == BoundsState::none,
          std::tie(shown_bounds.subject_name, shown_bounds.place_name, shown_bounds.bounds.property));
    };
    return key(a) < key(b);
  });
  if (account.fixtures.size() > most) account.fixtures.resize(most);
  std::set<StatementKey> keys;
  for (const ShownBounds& fixture : account.fixtures) add_named(fixture.bounds, keys);
  auto lines = evidence.lines(keys);
  if (!lines) return lines.error();
  account.statements = std::move(*lines);
  account.reviewed_claims = evidence.reviewed_claims();
  account.withheld = evidence.withheld();
  return account;
}

}  // namespace witnessmark
