#include <fmt/core.h>

#include "app/coding/report_lines.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/configuration.h"
#include "witnessmark/app/remedies.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

constexpr Presence kOrder[] = {Presence::attested_there,  Presence::inferred_there, Presence::changed,
                               Presence::contradicted,    Presence::cannot_tell,    Presence::attested_absent,
                               Presence::inferred_absent, Presence::no_evidence};

std::string keys_words(const std::vector<StatementKey>& keys) {
  std::vector<std::string> words;
  for (const StatementKey& key : keys) words.push_back(short_key(key));
  return joined(words, "and");
}

std::string answer_words(const PresenceAnswer& answer) {
  std::string words = one_line(answer.why);
  if (!answer.on_whose_word.empty())
    words += (words.empty() ? "on the word of " : "; on the word of ") + keys_words(answer.on_whose_word);
  if (!answer.against.empty())
    words += (words.empty() ? "against: " : "; against: ") + keys_words(answer.against);
  if (!answer.yet.empty())
    words += (words.empty() ? "" : "; ") + ("yet something is said to have happened to it then: " + keys_words(answer.yet));
  return words;
}

/// Leads to the first statement it rests on.
ReportLine line_of(const ConfigurationItem& item) {
  std::string text = item.subject_name + (item.place_name.empty() ? "" : " · " + item.place_name);
  if (const std::string words = answer_words(item.settled); !words.empty()) text += ": " + words;
  ReportLine line{Weight::item, one_line(text), std::nullopt, "", std::nullopt, "", ""};
  if (item.settled.on_whose_word.empty()) return line;
  const StatementKey& first = item.settled.on_whose_word.front();
  if (first.kind == StatementKey::Kind::claim)
    line.claim = parse_id(first.key);
  else
    line.entry = first.key;
  return line;
}

}  // namespace

Result<Report> configuration_report(const SiteFile& site, const std::string& date,
                                    const Surroundings& surroundings) {
  const auto when = configuration_date(site, date, surroundings);
  if (!when) return when.error();
  const auto made = configuration(site, *when, "", surroundings);
  if (!made) return made.error();
  Report report;
  report.title =
      fmt::format("What stood where, {}, by {}", one_line(made->when), grounds_words(made->reviewed_claims));
  for (const Presence presence : kOrder) {
    bool headed = false;
    for (const ConfigurationItem& item : made->items) {
      if (item.settled.presence != presence || only_another_value(item)) continue;
      if (!headed) add_line(report, Weight::heading, std::string(in_words(presence)));
      headed = true;
      report.lines.push_back(line_of(item));
      if (item.preview.presence != item.settled.presence)
        add_line(report, Weight::detail,
                 fmt::format("with claims nobody has reviewed: {}", in_words(item.preview.presence)));
    }
  }
  add_line(report, Weight::caution,
           "No evidence is no evidence of absence: a place without fixtures here was not therefore empty.");
  add_line(report, Weight::caution, made->withheld);
  return report;
}

}  // namespace witnessmark
