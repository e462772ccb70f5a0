#include <fmt/core.h>

#include <algorithm>
#include <set>
#include <tuple>

#include "app/open/open_finders.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/weigh/bounds.h"

namespace witnessmark {
namespace {

/// Days that dates of a month leave; a narrower stretch is not worth a search.
constexpr std::int64_t kWorthwhile = 31;

void go_to(const Bound& bound, OpenQuestion& open) {
  const auto add = [](auto& list, const auto& one) {
    if (std::find(list.begin(), list.end(), one) == list.end()) list.push_back(one);
  };
  for (const StatementKey& key : bound.from) {
    const auto claim = key.kind == StatementKey::Kind::claim ? parse_id(key.key) : std::nullopt;
    if (claim)
      add(open.claims, *claim);
    else
      add(open.entries, key.key);
  }
}

/// A change of one value into another is one question: where something else of the property came in the same
/// stretch, it is not asked when this one went.
using Coming = std::tuple<std::string, std::string, std::string, std::int64_t, std::int64_t>;

std::optional<Coming> coming_of(const FixtureBounds& fixture, const Bound& earliest, const Bound& latest) {
  if (fixture.property.empty() || !earliest.day || !latest.day) return std::nullopt;
  const std::string name = fixture.property.substr(0, fixture.property.find(':'));
  return Coming(fixture.subject, fixture.place, name, earliest.day->value, latest.day->value);
}

void add(const ShownEvidence& shown, const FixtureBounds& fixture, const Bound& earliest, const Bound& latest,
         const std::string& change, std::string_view standing, std::vector<OpenQuestion>& found) {
  if (!earliest.day || !latest.day || *latest.day - *earliest.day <= kWorthwhile) return;
  OpenQuestion open;
  open.because = OpenBecause::came_or_went_between;
  open.subject = fixture.subject;
  open.place = fixture.place;
  const std::string place = shown.place_name(fixture.place);
  const auto day = [](Day one) { return describe(exact_period(one, one + 1)); };
  const std::string from = day(*earliest.day);
  const std::string to = day(*latest.day);
  open.question = one_line(fmt::format("{}{} {}: when?", shown.subject_name(fixture.subject),
                                       place.empty() ? "" : " (" + place + ")", change));
  const bool value = !fixture.property.empty();
  open.standing = fmt::format("between {} and {}{}", from, to, standing);
  open.would_decide = {
      photograph_of(place, "some day between " + from + " and " + to),
      fmt::format("a log, workshop book or letter that enters the work, between {} and {}", from, to)};
  if (value)
    open.would_decide.push_back("a paint layer or another trace on the fabric that can be dated so closely");
  go_to(earliest, open);
  go_to(latest, open);
  found.push_back(std::move(open));
}

}  // namespace

void add_between(const ShownEvidence& shown, std::vector<OpenQuestion>& found) {
  const auto all = find_bounds(shown.stays());
  std::set<Coming> comings;
  for (const FixtureBounds& fixture : all)
    for (const StayBounds& stay : fixture.with_reviewed.stays)
      if (const auto came = coming_of(fixture, stay.came_earliest, stay.came_latest)) comings.insert(*came);
  for (const FixtureBounds& fixture : all) {
    if (fixture.with_reviewed.state != BoundsState::known) continue;
    for (std::size_t i = 0; i < fixture.with_reviewed.stays.size(); ++i) {
      const StayBounds& stay = fixture.with_reviewed.stays[i];
      const bool taken_so = std::any_of(fixture.renewals.begin(), fixture.renewals.end(), [&](const ShownRenewal& one) {
        return static_cast<std::size_t>(one.episode) == i + 1;
      });
      const bool value = !fixture.property.empty();
      add(shown, fixture, stay.came_earliest, stay.came_latest,
          value ? "given " + fixture.property : "fitted", "", found);
      if (const auto went = coming_of(fixture, stay.went_earliest, stay.went_latest);
          went && comings.contains(*went))
        continue;
      add(shown, fixture, stay.went_earliest, stay.went_latest,
          value ? "no longer " + fixture.property : "taken away",
          taken_so ? "; it came again then, and no entry shows it gone before" : "", found);
    }
  }
}

}  // namespace witnessmark
