// One rule for every output. The conditions of an interview, the release of each narrator and the conditions
// of each passage are judged one after the other and the first reason to withhold is the answer; an interview
// withdrawn comes before everything else.
//
// A date in closed_until binds until its latest possible day is past, whatever the access says beside it: a
// record that says "open" and "closed until 2040" is a contradiction, and the careful reading withholds. An
// end that is open or unknown never passes.
#include "witnessmark/model/access.h"

#include <algorithm>

#include "model/names.h"
#include "witnessmark/time/date_policy.h"
#include "witnessmark/time/period.h"

namespace witnessmark {
namespace {

constexpr std::pair<Withheld, std::string_view> kReasons[] = {
    {Withheld::none, "none"},
    {Withheld::closed, "closed"},
    {Withheld::restricted, "restricted"},
    {Withheld::no_release, "no release"},
    {Withheld::release_withdrawn, "release withdrawn"},
    {Withheld::closed_until_event, "closed until an event"},
    {Withheld::interview_withdrawn, "interview withdrawn"},
};

enum class Closing { never_set, ahead, past };

Closing closing(const std::optional<Edtf>& until, Day today) {
  if (!until) return Closing::never_set;
  const std::optional<Day> past = to_period(*until, default_date_policy()).past_latest();
  return past && *past <= today ? Closing::past : Closing::ahead;
}

}  // namespace

std::string_view to_string(Withheld why) {
  return word_of(kReasons, why);
}

Withheld judge(const AccessConditions& conditions, Day today) {
  const Closing closed = closing(conditions.closed_until, today);
  if (closed == Closing::ahead) return Withheld::closed;
  if (!conditions.closed_until_event.empty()) return Withheld::closed_until_event;
  switch (conditions.access) {
    case Access::open:
      return Withheld::none;
    case Access::restricted:
      return Withheld::restricted;
    // "Closed until 2020" has run out; "closed" without a date never does.
    case Access::closed:
      return closed == Closing::past ? Withheld::none : Withheld::closed;
  }
  return Withheld::closed;
}

Withheld judge(const NarratorRelease& release, Day today) {
  if (release.release == Release::withdrawn) return Withheld::release_withdrawn;
  if (release.release == Release::none) return Withheld::no_release;
  if (closing(release.closed_until, today) == Closing::ahead) return Withheld::closed;
  if (!release.closed_until_event.empty()) return Withheld::closed_until_event;
  return Withheld::none;
}

Withheld judge(const AccessFile& file, Day today) {
  if (file.withdrawn) return Withheld::interview_withdrawn;
  if (const Withheld why = judge(file.interview, today); why != Withheld::none) return why;
  // Nobody known to speak in it means nobody known to have released it.
  if (file.narrators.empty()) return Withheld::no_release;
  for (const std::string& narrator : file.narrators) {
    bool found = false;
    for (const NarratorRelease& release : file.releases) {
      if (release.person != narrator) continue;
      found = true;
      if (const Withheld why = judge(release, today); why != Withheld::none) return why;
    }
    if (!found) return Withheld::no_release;
  }
  return Withheld::none;
}

Withheld judge(const AccessFile& file, CodePointRange range, Day today) {
  if (const Withheld why = judge(file, today); why != Withheld::none) return why;
  for (const RestrictedPassage& passage : file.passages) {
    if (!passage.range.overlaps(range)) continue;
    if (const Withheld why = judge(passage.conditions, today); why != Withheld::none) return why;
  }
  return Withheld::none;
}

}  // namespace witnessmark
