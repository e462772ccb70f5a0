#include "witnessmark/app/claim_words.h"

#include <fmt/core.h>

#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/time/relations.h"

namespace witnessmark {

std::string_view in_words(ClaimStatus status) {
  if (status == ClaimStatus::said_so) return "said so";
  return status == ClaimStatus::set_aside ? "set aside" : to_string(status);
}

std::string_view in_words(Outcome outcome) {
  return outcome == Outcome::cannot_tell ? "cannot tell" : to_string(outcome);
}

std::string one_line(std::string_view text) {
  std::string line;
  for (const char c : text) {
    const bool space = c == '\n' || c == ' ' || c == '\t';
    if (!space)
      line += c;
    else if (!line.empty() && line.back() != ' ')
      line += ' ';
  }
  return visible(trim(line));
}

int weight_of(const Comparison& comparison) {
  switch (comparison.outcome) {
    case Outcome::conflicts:
      return 0;
    case Outcome::agrees:
      return 1;
    case Outcome::compatible:
      return 2;
    case Outcome::cannot_tell:
    case Outcome::silent:
      return 3;
  }
  return 3;
}

std::string grounds_words(std::int64_t reviewed_claims) {
  if (reviewed_claims == 0) return "the register alone (no claim reviewed yet)";
  return fmt::format("the register and {}", counted(reviewed_claims, "reviewed claim"));
}

std::string number_words(const Claim& claim) {
  std::string text;
  if (claim.quantity) {
    text = fmt::format("{}", claim.quantity->least);
    if (claim.quantity->most != claim.quantity->least) text += fmt::format(" to {}", claim.quantity->most);
  }
  if (!claim.attribute.empty()) text += (text.empty() ? "" : " · ") + claim.attribute;
  return one_line(text);
}

std::string date_words(const Period& period) {
  const auto day = [](Day one) { return describe(exact_period(one, one + 1)); };
  const auto first = period.earliest(), past = period.past_latest();
  if (!first && past) return "by " + day(*past - 1);
  if (first && !past) return day(*first) + " or later";
  return describe(period);
}

std::string date_words(const ClaimTime& when) {
  if (!when.period) return "";
  std::string words = date_words(*when.period);
  if (when.dated.value && is_uncertain(*when.dated.value)) words += ", uncertain";
  return words;
}

std::string when_words(const ClaimTime& when) {
  const Dated& dated = when.dated;
  if (!dated.value)
    return dated.written.empty() ? "" : one_line(fmt::format("“{}” (not resolved)", dated.written));
  std::string text = when.period ? date_words(when) : to_string(*dated.value);
  const bool same = fold(dated.written) == fold(text) || dated.written == to_string(*dated.value);
  if (!dated.written.empty() && !same) text += fmt::format(" (“{}”)", dated.written);
  return one_line(text);
}

std::string named_words(const std::string& key, const std::string& name) {
  return key.empty() && !name.empty() ? fmt::format("“{}”", name) : name;
}

std::string what_words(const ClaimRecord& record) {
  const Claim& claim = record.claim;
  std::string text = claim.polarity == Polarity::denied ? "not " : "";
  text += to_string(claim.statement);
  const auto add = [&](const std::string& words) { text += words.empty() ? "" : " · " + words; };
  const std::string subject = named_words(claim.subject, record.subject_name);
  const std::string place = named_words(claim.place, record.place_name);
  if (!subject.empty()) add(subject + (claim.subject_carried ? " (carried)" : ""));
  add(number_words(claim));
  if (!place.empty()) add(place + (claim.place_carried ? " (carried)" : ""));
  if (const std::string when = when_words(claim.when); !when.empty())
    add(when + (claim.when.carried ? " (carried)" : ""));
  return one_line(text);
}

std::string how_words(const Claim& claim) {
  std::string text(to_string(claim.basis));
  if (!claim.knower.empty()) text += fmt::format(" ({})", claim.knower);
  text += fmt::format(", {}", to_string(claim.firmness));
  if (claim.led) text += ", led by the interviewer";
  if (claim.withdrawn) text += ", taken back";
  return one_line(text);
}

std::string recall_words(const Recall& recall) {
  std::string text;
  const auto add = [&](std::string words) { text += (text.empty() ? "" : ", ") + words; };
  const auto& years = recall.recall_distance;
  if (dated_after_interview(recall))
    add("told after an unstated time (it is dated after the interview)");
  else if (years)
    add(fmt::format("told {} after", in_unit({years->least, years->most}, "year")));
  if (recall.age_at_event && recall.age_at_event->most < 0)
    add("not born then");
  else if (recall.age_at_event)
    add(fmt::format("aged {} then", to_string(*recall.age_at_event)));
  if (recall.partly_in_service)
    add("in service for part of that time");
  else if (recall.in_service == Answer::yes)
    add("in service then");
  else if (recall.in_service == Answer::no)
    add("not in service then");
  return text;
}

std::string time_words(const std::optional<TimeRange>& time, Timing timing) {
  if (!time) return "";
  return fmt::format("at {}{}", timing == Timing::interpolated ? "about " : "", to_timecode(time->begin));
}

}  // namespace witnessmark
