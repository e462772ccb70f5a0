#include <fmt/core.h>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/configuration.h"
#include "witnessmark/app/remedies.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

/// What stood there first; what nothing is known of last.
constexpr Presence kPresences[] = {Presence::attested_there,  Presence::inferred_there, Presence::changed,
                                   Presence::contradicted,    Presence::cannot_tell,    Presence::attested_absent,
                                   Presence::inferred_absent, Presence::no_evidence};

std::string with_words(std::string head, const PresenceAnswer& answer) {
  const std::string words = answer_words(answer);
  return words.empty() ? head : head + ": " + words;
}

/// Leads to the first statement it rests on.
ReportLine item_line(const ConfigurationItem& item) {
  ReportLine line{Weight::item, with_words(item_name(item), item.settled)};
  if (item.settled.on_whose_word.empty()) return line;
  const StatementKey& first = item.settled.on_whose_word.front();
  if (first.kind == StatementKey::Kind::claim)
    line.claim = parse_id(first.key);
  else
    line.entry = first.key;
  return line;
}

}  // namespace

std::string answer_words(const PresenceAnswer& answer) {
  std::string text = answer.why;
  const auto add = [&](std::string_view heading, const std::vector<StatementKey>& keys) {
    std::vector<std::string> words;
    for (const StatementKey& key : keys) words.push_back(short_key(key));
    if (!keys.empty()) text += fmt::format("{}{}{}", text.empty() ? "" : "; ", heading, joined(words, "and"));
  };
  add(answer.presence == Presence::contradicted ? "there: " : "on the word of ", answer.on_whose_word);
  add("not there: ", answer.against);
  add("yet something is said to have happened to it then: ", answer.yet);
  return one_line(text);
}

std::string item_name(const ConfigurationItem& item) {
  return one_line(item.subject_name + (item.place_name.empty() ? "" : " · " + item.place_name));
}

Report configuration_report(const Configuration& made) {
  Report report;
  report.title = fmt::format("What stood where, {}, by {}", one_line(made.when), grounds_words(made.reviewed_claims));
  if (made.items.empty())
    add_line(report, Weight::caution, "Nothing in the register, the claims or the list speaks of any fixture there.");
  for (const Presence presence : kPresences) {
    Report under;
    std::size_t count = 0;
    for (const ConfigurationItem& item : made.items) {
      if (item.settled.presence != presence || only_another_value(item)) continue;
      ++count;
      under.lines.push_back(item_line(item));
      if (item.preview.presence != item.settled.presence)
        add_line(under, Weight::detail,
                 with_words(fmt::format("preview, with claims nobody has reviewed: {}", in_words(item.preview.presence)),
                            item.preview));
    }
    if (count > 0) add_line(report, Weight::heading, fmt::format("{} ({})", in_words(presence), count));
    report.lines.insert(report.lines.end(), under.lines.begin(), under.lines.end());
  }
  if (!made.places_without_evidence.empty()) {
    std::string places;
    for (const std::string& place : made.places_without_evidence) places += (places.empty() ? "" : ", ") + place;
    add_line(report, Weight::caution, one_line(fmt::format("Nothing at all is said of fixtures at: {}.", places)));
  }
  add_line(report, Weight::caution,
           "No evidence is no evidence of absence: what is not listed may have stood there, and a place without "
           "fixtures here was not therefore empty.");
  add_line(report, Weight::caution, made.withheld);
  return report;
}

}  // namespace witnessmark
