#include "witnessmark/app/counts.h"

#include <fmt/core.h>

#include <algorithm>

#include "app/weighing/heard_evidence.h"
#include "app/weighing/question_words.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

bool has_proposal(const CountComparison& comparison) {
  if (!comparison.reported.reviewed) return true;
  return std::any_of(comparison.positions.begin(), comparison.positions.end(),
                     [](const CountedPosition& position) {
                       return std::any_of(position.statements.begin(), position.statements.end(),
                                          [](const NumberStatement& stated) { return !stated.reviewed; });
                     });
}

class CountWords {
 public:
  explicit CountWords(HeardEvidence& heard) : heard_(heard), words_(heard) {}

  ShownCount shown(CountComparison comparison) {
    ShownCount made;
    const AuthorityLists& lists = heard_.lists();
    made.total_words =
        one_line(fmt::format("{}, {}: {}", thing_words(lists, comparison.subject, "", comparison.place, ""),
                             when_words(comparison.when, comparison.period), to_string(comparison.total)));
    made.reported_by = by(comparison.reported);
    for (const CountedPosition& position : comparison.positions) {
      ShownCount::Position shown;
      const bool part = position.subject != comparison.subject;
      shown.words = one_line(
          fmt::format("{}: {}", thing_words(lists, part ? position.subject : "", "", position.place, ""),
                      to_string(position.number)));
      for (const NumberStatement& stated : position.statements) shown.stated_by.push_back(by(stated));
      made.positions.push_back(std::move(shown));
    }
    for (const std::string& place : comparison.nothing_said)
      made.nothing_said.push_back(thing_words(lists, "", "", place, ""));
    made.comparison = std::move(comparison);
    return made;
  }

 private:
  std::string by(const NumberStatement& stated) {
    Voice voice;
    voice.claim = stated.claim;
    voice.entry = stated.entry;
    if (const auto* item = stated.entry.empty() ? nullptr : heard_.index().find(stated.entry)) {
      voice.origin.key = item->entry->source;
      voice.kind = item->source != nullptr ? item->source->kind : SourceKind::publication;
    } else if (const StoredClaim* claim = heard_.find(stated.claim)) {
      voice.interview = claim->claim.interview;
    }
    const ShownVoice shown = words_.shown(voice);
    return fmt::format("{}: {}{}", shown.who, shown.stated, shown.proposed ? " [not reviewed]" : "");
  }

  HeardEvidence& heard_;
  QuestionWords words_;
};

}  // namespace

Result<CountsAccount> counts_account(const SiteFile& site, const Surroundings& surroundings) {
  const auto heard = HeardEvidence::load(site, surroundings);
  if (!heard) return heard.error();
  CountsAccount account;
  CountWords words(**heard);
  for (CountComparison& one : compare_counts((*heard)->index(), (*heard)->testimony(false)))
    account.reviewed.push_back(words.shown(std::move(one)));
  for (CountComparison& one : compare_counts((*heard)->index(), (*heard)->testimony(true)))
    if (has_proposal(one)) account.preview.push_back(words.shown(std::move(one)));
  account.reviewed_claims = (*heard)->reviewed_claims();
  account.withheld = (*heard)->withheld();
  return account;
}

}  // namespace witnessmark
