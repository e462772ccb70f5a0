#include <fmt/core.h>

#include <algorithm>

#include "app/open/open_finders.h"
#include "app/weighing/question_words.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/weigh/counts.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

void go_to(const NumberStatement& stated, OpenQuestion& open) {
  if (stated.entry.empty())
    open.claims.push_back(stated.claim);
  else
    open.entries.push_back(stated.entry);
}

OpenQuestion of_count(const CountComparison& comparison, const AuthorityLists& lists) {
  OpenQuestion open;
  open.because = OpenBecause::count_differs;
  open.subject = comparison.subject;
  open.place = comparison.place;
  const std::string when = when_words(comparison.when, comparison.period);
  const std::string days = comparison.period ? describe(*comparison.period) : when;
  open.question =
      one_line(fmt::format("{}, {}", thing_words(lists, comparison.subject, "", comparison.place, ""), when));
  open.standing =
      fmt::format("total {}, sum by position {}", to_string(comparison.total), to_string(comparison.sum));
  if (comparison.unaccounted.least > 0)
    open.standing += ", unaccounted for " + to_string(comparison.unaccounted);
  if (comparison.excess.least > 0) open.standing += ", over " + to_string(comparison.excess);
  for (const std::string& place : comparison.nothing_said)
    open.would_decide.push_back(photograph_of(thing_words(lists, "", "", place, ""), days));
  open.would_decide.push_back(fmt::format("a stores book or inventory by position, of {}", days));
  go_to(comparison.reported, open);
  for (const CountedPosition& position : comparison.positions)
    for (const NumberStatement& stated : position.statements) go_to(stated, open);
  return open;
}

/// Whether a key names the entry's own thing, or another entry on it.
bool rests_on_thing(const std::vector<std::string>& keys, const Entry& entry, const RegisterIndex& index) {
  return std::any_of(keys.begin(), keys.end(), [&](const std::string& key) {
    const auto* other = index.find(key);
    return !entry.subject.empty() &&
           (key == entry.subject || (other != nullptr && other->entry->subject == entry.subject));
  });
}

}  // namespace

void add_counts(const OpenGround& ground, bool preview, std::vector<OpenQuestion>& found) {
  for (const CountComparison& comparison :
       compare_counts(ground.heard.index(), ground.heard.testimony(preview))) {
    if (!comparison.differ()) continue;
    bool proposed = !comparison.reported.reviewed;
    for (const CountedPosition& position : comparison.positions)
      for (const NumberStatement& stated : position.statements) proposed = proposed || !stated.reviewed;
    if (proposed != preview) continue;
    found.push_back(of_count(comparison, ground.heard.lists()));
    found.back().preview = preview;
  }
}

void add_doubtful_entries(const OpenGround& ground, std::vector<OpenQuestion>& found) {
  const RegisterIndex& index = ground.heard.index();
  for (const RegisterIndex::Item& item : index.items()) {
    const Entry& entry = *item.entry;
    const bool doubtful = entry.identification != Identification::certain;
    const bool by_itself = rests_on_thing(entry.date_rests_on, entry, index) ||
                           rests_on_thing(entry.identification_rests_on, entry, index);
    if (!doubtful && !by_itself) continue;
    OpenQuestion open;
    open.because = doubtful ? OpenBecause::identification : OpenBecause::dated_by_itself;
    open.subject = entry.subject;
    open.place = entry.place;
    open.entries = {entry.key};
    open.question =
        one_line(fmt::format("{} {} ({})", item.source != nullptr ? in_words(item.source->kind) : "entry",
                             entry.key, source_words(item.source, entry.source, entry.locator)));
    open.standing = one_line(statement_words(item, index));
    if (doubtful)
      open.standing += fmt::format("; that it shows this site is only {}", to_string(entry.identification));
    if (by_itself) open.standing += "; its date or identification rests on the thing itself";
    if (doubtful) open.would_decide.push_back("something in it, or written with it, that only this site has");
    if (by_itself)
      open.would_decide.push_back(
          "a date from something else: the taker, the paper, the register of negatives, another thing it "
          "shows");
    found.push_back(std::move(open));
  }
}

}  // namespace witnessmark
