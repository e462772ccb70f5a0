#include <fmt/core.h>

#include "app/coding/desk_state.h"
#include "app/coding/report_lines.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/model/letter_figure.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/weighings.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

void field(Report& report, std::string_view name, const std::string& value) {
  if (!value.empty()) add_line(report, Weight::item, fmt::format("{}: {}", name, one_line(value)));
}

std::string keys(const std::vector<std::string>& list) {
  std::string words;
  for (const std::string& key : list) words += (words.empty() ? "" : ", ") + key;
  return words;
}

std::string date_words(const Dated& when, const std::optional<Period>& period) {
  std::string words = period ? describe(*period) : "no date";
  if (!when.written.empty() && when.written != to_string(when)) words += fmt::format(" (“{}”)", when.written);
  return words;
}

void add_source(Report& report, const RegisterIndex& evidence, const std::string& key) {
  const Source* source = evidence.source(key);
  if (source == nullptr) return field(report, "Source", key);
  field(report, "Source", fmt::format("{}, {}", in_words(source->kind), source->title));
  field(report, "By", source->creator);
  field(report, "Kept at", source->repository + (source->reference.empty() ? "" : ", " + source->reference));
  std::vector<std::string> rests_on;
  for (const std::string& other : evidence.lineage(key))
    if (other != key) rests_on.push_back(other);
  std::sort(rests_on.begin(), rests_on.end());
  field(report, "Derives from", keys(rests_on));
}

void add_entry(Report& report, const RegisterIndex::Item& item, const RecordMaker& maker) {
  const Entry& entry = *item.entry;
  report.title = fmt::format("{} {}: {}", item.source ? in_words(item.source->kind) : "entry", entry.key,
                             entry_words(entry, maker.lists()));
  field(report, "When",
        fmt::format("{}, {}", date_words(entry.when, item.period),
                    entry.reading == Reading::throughout ? "throughout" : "at some time within it"));
  add_source(report, maker.evidence(), entry.source);
  field(report, "Where in it", entry.locator);
  field(report, "Observed", entry.observation + (entry.observer.empty() ? "" : " (" + entry.observer + ")"));
  field(report, "Interpreted", entry.interpretation);
  if (entry.nature == Nature::intended)
    field(report, "Nature", "an intention: nothing here shows that it was carried out");
  field(report, "Shows this site",
        std::string(to_string(entry.identification)) +
            (entry.identification_rests_on.empty() ? ""
                                                   : ", resting on " + keys(entry.identification_rests_on)));
  if (entry.spot_visible != SpotVisible::not_stated)
    field(report, "Spot visible", std::string(to_string(entry.spot_visible)));
  field(report, "Date rests on", keys(entry.date_rests_on));
  field(report, "Caption rests on", keys(entry.caption_rests_on));
  field(report, "Lies over", keys(entry.over));
  if (entry.fabric != Fabric::unknown) field(report, "Fabric", std::string(to_string(entry.fabric)));
  if (const auto noted = parse_letter_figure(entry.letter_figure))
    field(report, "Noted by the letter-figure scale", describe(*noted));
  field(report, "Notes", entry.notes);
}

void add_stay(Report& report, const RegisterIndex::StayItem& item, const RecordMaker& maker,
              const Withholding& withholding) {
  const Stay& stay = *item.stay;
  report.title = fmt::format("stay {}: {}", stay.key, keys(stay.locations));
  field(report, "Who", stay.party.empty() ? "the site" : withholding.shown_name("", stay.party));
  field(report, "When", date_words(stay.when, item.period));
  add_source(report, maker.evidence(), stay.source);
  field(report, "Notes", stay.notes);
}

/// The claims that may have been held against an entry or a stay.
ClaimFilter claims_beside(const std::string& key, const RecordMaker& maker) {
  ClaimFilter among;
  const RegisterIndex::Item* item = maker.evidence().find(key);
  if (item == nullptr) {
    among.statements = {Statement::located};
    return among;
  }
  const AuthorityList& things = maker.lists().equipment;
  const std::string& subject = item->entry->subject;
  among.subjects = things.all_within(subject);
  for (std::string& wider : things.above(subject)) among.subjects.push_back(std::move(wider));
  if (among.subjects.empty()) among.subjects.push_back(subject);
  return among;
}

void add_claims(Report& report, const CodingDesk::State& state, const std::string& key) {
  constexpr std::size_t kMost = 200;
  Withholding counting = *state.withholding;
  add_line(report, Weight::heading, "Claims held against it");
  std::size_t shown = 0;
  for (const Comparison& comparison : comparisons_with(state.site, key, claims_beside(key, *state.maker))) {
    const auto stored = find_claim(state.site, comparison.claim);
    if (!stored || !counting.may_show(stored->claim.interview, stored->claim.quotes)) continue;
    if (++shown > kMost) continue;
    const ClaimRecord record = state.maker->make(*stored, *state.withholding);
    ReportLine line{Weight::item,
                    fmt::format("{}: {}, {} ({})", in_words(comparison.outcome), what_words(record),
                                record.narrator, record.interview),
                    comparison.claim,
                    record.claim.interview,
                    std::nullopt,
                    "",
                    ""};
    report.lines.push_back(std::move(line));
  }
  if (shown > kMost) add_line(report, Weight::caution, fmt::format("and {} more", shown - kMost));
  if (shown == 0) add_line(report, Weight::item, "none");
  if (counting.total() > 0) add_line(report, Weight::caution, counting.account());
}

}  // namespace

Result<Report> entry_report(const CodingDesk::State& state, const std::string& key) {
  Report report;
  const RegisterIndex& evidence = state.maker->evidence();
  if (const auto* item = evidence.find(key)) {
    add_entry(report, *item, *state.maker);
  } else if (const auto* stay = evidence.find_stay(key)) {
    add_stay(report, *stay, *state.maker, *state.withholding);
  } else {
    return Error{"", 0, 0, fmt::format("the register has no entry “{}”", key), ""};
  }
  add_claims(report, state, key);
  return report;
}

}  // namespace witnessmark
