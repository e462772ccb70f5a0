#include <fmt/core.h>

#include "app/open/open_finders.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/weigh/bounds.h"

namespace witnessmark {
namespace {

/// Days that dates of a month leave; a narrower stretch is not worth a search.
constexpr std::int64_t kWorthwhile = 31;

void go_to(const Bound& bound, OpenQuestion& open) {
  for (const StatementKey& key : bound.from) {
    const auto claim = key.kind == StatementKey::Kind::claim ? parse_id(key.key) : std::nullopt;
    if (claim)
      open.claims.push_back(*claim);
    else
      open.entries.push_back(key.key);
  }
}

void add(const ShownEvidence& shown, const FixtureBounds& fixture, const Bound& earliest, const Bound& latest,
         const std::string& change, std::vector<OpenQuestion>& found) {
  if (!earliest.day || !latest.day || *latest.day - *earliest.day <= kWorthwhile) return;
  OpenQuestion open;
  open.because = OpenBecause::came_or_went_between;
  open.subject = fixture.subject;
  open.place = fixture.place;
  const std::string place = shown.place_name(fixture.place);
  const std::string from = to_string(*earliest.day);
  const std::string to = to_string(*latest.day);
  open.question = one_line(fmt::format("{}{} {}: when?", shown.subject_name(fixture.subject),
                                       place.empty() ? "" : " (" + place + ")", change));
  const bool value = !fixture.property.empty();
  open.standing = fmt::format("between {} and {}", from, to);
  open.would_decide = {
      photograph_of(place, "some day between " + from + " and " + to),
      fmt::format("a log, workshop book or letter that enters the work, between {} and {}", from, to)};
  if (value) open.would_decide.push_back("a paint layer or another trace on the fabric that can be dated so closely");
  go_to(earliest, open);
  go_to(latest, open);
  found.push_back(std::move(open));
}

}  // namespace

void add_between(const ShownEvidence& shown, std::vector<OpenQuestion>& found) {
  for (const FixtureBounds& fixture : find_bounds(shown.stays())) {
    if (fixture.with_reviewed.state != BoundsState::known) continue;
    for (const StayBounds& stay : fixture.with_reviewed.stays) {
      const bool value = !fixture.property.empty();
      add(shown, fixture, stay.came_earliest, stay.came_latest, value ? "given " + fixture.property : "fitted", found);
      add(shown, fixture, stay.went_earliest, stay.went_latest,
          value ? "no longer " + fixture.property : "taken away", found);
    }
  }
}

}  // namespace witnessmark
