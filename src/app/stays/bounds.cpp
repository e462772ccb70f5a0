#include "witnessmark/app/bounds.h"

#include <algorithm>
#include <tuple>

#include "app/said/named_terms.h"
#include "app/stays/shown_evidence.h"
#include "witnessmark/base/parallel.h"

namespace witnessmark {
namespace {

void add_named(const Bounds& bounds, std::set<StatementKey>& keys) {
  for (const StayBounds& stay : bounds.stays)
    for (const Bound* bound :
         {&stay.came_earliest, &stay.came_latest, &stay.went_earliest, &stay.went_latest})
      keys.insert(bound->from.begin(), bound->from.end());
}

void add_named(const FixtureBounds& bounds, std::set<StatementKey>& keys) {
  for (const ShownRenewal& one : bounds.renewals) keys.insert({one.there, one.come});
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

/// The groups with a fixture or place that is asked for.
std::vector<const StayGroup*> groups_of(const ShownEvidence& evidence, const std::optional<NamedTerms>& names) {
  std::vector<const StayGroup*> groups;
  for (const StayGroup& group : evidence.stays().groups())
    if (!names || std::any_of(group.fixtures.begin(), group.fixtures.end(), [&](const FixturePlace& fixture) {
          return asked_for(fixture.subject, fixture.place, *names);
        }))
      groups.push_back(&group);
  return groups;
}

/// Without the fixtures themselves.
void count_only(const ShownEvidence& evidence, const std::optional<NamedTerms>& names,
                const std::vector<const StayGroup*>& groups, BoundsAccount& account) {
  std::vector<std::vector<BoundsOutline>> found(groups.size());
  in_parallel(groups.size(), [&](std::size_t i) { found[i] = outline_bounds(evidence.stays(), *groups[i]); });
  for (const auto& of_group : found)
    for (const BoundsOutline& outline : of_group) {
      if (names && !asked_for(outline.subject, outline.place, *names)) continue;
      ++account.total;
      account.properties += !outline.property.empty();
      account.contradicted += outline.from_register == BoundsState::contradicted;
      account.narrowed += outline.narrowed;
    }
}

void find_all(const ShownEvidence& evidence, const std::optional<NamedTerms>& names,
              const std::vector<const StayGroup*>& groups, BoundsAccount& account) {
  std::vector<std::vector<FixtureBounds>> found(groups.size());
  in_parallel(groups.size(), [&](std::size_t i) { found[i] = find_bounds(evidence.stays(), *groups[i]); });
  for (auto& of_group : found)
    for (FixtureBounds& bounds : of_group) {
      if (names && !asked_for(bounds.subject, bounds.place, *names)) continue;
      ++account.total;
      account.properties += !bounds.property.empty();
      account.contradicted += bounds.from_register.state == BoundsState::contradicted;
      account.narrowed += !same_limits(bounds.from_register, bounds.with_reviewed);
      ShownBounds made{std::move(bounds), "", ""};
      made.subject_name = value_name(evidence.subject_name(made.bounds.subject), made.bounds.property);
      made.place_name = evidence.place_name(made.bounds.place);
      for (BoundsWithout& without : made.bounds.without)
        without.source = evidence.source_name(without.source);
      account.fixtures.push_back(std::move(made));
    }
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
  const auto groups = groups_of(evidence, names);
  if (most == 0)
    count_only(evidence, names, groups, account);
  else
    find_all(evidence, names, groups, account);
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
