#include <fmt/core.h>

#include <charconv>

#include "app/coding/desk_state.h"
#include "app/coding/report_lines.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/coder_agreement_report.h"
#include "witnessmark/app/journal_words.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/store/claims.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

std::string decided_words(std::string_view where, const Decided& decided) {
  std::string words = fmt::format("{}, {} {}{}", where, decided.who, decided.when.substr(0, 16),
                                  decided.blind ? ", blind" : "");
  if (!decided.why.empty()) words += ": " + decided.why;
  return one_line(words);
}

std::string coefficient_words(const Coefficient& coefficient) {
  return coefficient.value ? fmt::format("{:.3f}", *coefficient.value)
                           : fmt::format("undefined ({})", to_string(coefficient.why));
}

std::string_view seeing(bool blind) {
  return blind ? "coding blind" : "having seen what was proposed, which inflates agreement";
}

void add_spans(Report& report, const SiteFile& site) {
  const auto pairs = span_agreement(site);
  if (pairs.empty()) return;
  add_line(report, Weight::heading, "Where their claims begin and end, by sentences (WindowDiff: 0 alike, 1 nowhere alike)");
  for (const SpanPair& pair : pairs) {
    const auto share = pair.difference.share();
    add_line(report, Weight::item,
             fmt::format("{} ({}) and {} ({}), {}: {} of {} windows differ, {}, in {}", pair.first,
                         counted(pair.first_claims, "claim"), pair.second,
                         counted(pair.second_claims, "claim"), seeing(pair.blind), pair.difference.misses,
                         pair.difference.windows, share ? fmt::format("{:.3f}", *share) : "undefined",
                         counted(pair.interviews, "interview")));
  }
}

void add_agreement(Report& report, const SiteFile& site) {
  const auto pairs = coder_agreement(site);
  if (pairs.empty()) return;
  add_line(report, Weight::heading, "Agreement of coders, on claims both decided on");
  for (const CoderPair& pair : pairs)
    add_line(
        report, Weight::item,
        fmt::format("{} and {}, {}: {} of {} alike in status; Cohen's kappa {}, Krippendorff's alpha {}",
                    pair.first, pair.second, seeing(pair.blind), pair.same_status, pair.claims, coefficient_words(pair.status),
                    coefficient_words(pair.alpha)));
}

}  // namespace

Report difference_report(const CodingDesk::State& state) {
  Report report;
  std::size_t open = 0;
  Withholding counting = *state.withholding;
  for (const DoubleDecision& difference : open_differences(state.site)) {
    ++open;
    ReportLine line{Weight::item,
                    "",
                    std::nullopt,
                    difference.interview,
                    std::nullopt,
                    std::to_string(difference.number),
                    ""};
    if (difference.target_kind == "claim") line.claim = parse_id(difference.target);
    const bool shown = difference.interview.empty() || counting.may_show(difference.interview, {});
    std::string about = difference.target_kind;
    if (const auto stored = line.claim && shown ? find_claim(state.site, *line.claim) : std::nullopt)
      about = what_words(state.maker->make(*stored, *state.withholding));
    line.text = fmt::format("{}. {}, {}{}", difference.number, about, difference.interview,
                            shown ? "" : ": withheld");
    report.lines.push_back(line);
    if (!shown) continue;
    line.weight = Weight::detail;
    for (const std::string& words :
         {decided_words("here", difference.here), decided_words("there", difference.there)}) {
      line.text = words;
      report.lines.push_back(line);
    }
    for (const std::string& words : difference_words(difference, state.maker->lists())) {
      line.text = words;
      report.lines.push_back(line);
    }
  }
  report.title = open == 0 ? "Nothing to settle"
                           : fmt::format("{} to settle: s keeps what stands here, o takes the other's", open);
  if (open == 0)
    add_line(report, Weight::item,
             "No decision of another copy stands against one made here (witnessmark merge brings copies "
             "together).");
  add_agreement(report, state.site);
  add_spans(report, state.site);
  return report;
}

Result<void> CodingDesk::settle(const std::string& difference, bool theirs) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may;
  std::int64_t number = 0;
  const auto read = std::from_chars(difference.data(), difference.data() + difference.size(), number);
  if (read.ec != std::errc{}) return Error{"", 0, 0, "there is no such difference", "look at them again"};
  const auto open = open_differences(state.site);
  const auto at =
      std::find_if(open.begin(), open.end(), [&](const DoubleDecision& one) { return one.number == number; });
  const auto claim = at != open.end() && at->target_kind == "claim" ? parse_id(at->target) : std::nullopt;
  if (auto done = settle_difference(state.site, number, theirs ? Side::there : Side::here, ""); !done)
    return done;
  return claim ? state.weigh(*claim) : Result<void>{};
}

}  // namespace witnessmark
