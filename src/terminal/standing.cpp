// Where a coder stands, as text: one line a place, the fields divided by tabs. Forms and the list of keys are
// left out.
#include <fmt/core.h>

#include <charconv>
#include <string_view>

#include "terminal/update/work.h"

namespace witnessmark {
namespace {

using Fields = std::vector<std::string>;

std::string plain(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '\t' || c == '\n'; }, ' ');
  return text;
}

struct LineOf {
  std::string operator()(const InterviewsPlace& place) const {
    return fmt::format("interviews\t{}", place.at);
  }
  std::string operator()(const ClaimsPlace& place) const {
    const ClaimQuery& query = place.query;
    const auto word = [](const auto& value) { return value ? std::string(to_string(*value)) : ""; };
    return fmt::format("claims\t{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}\t{}", place.at, plain(query.interview),
                       plain(query.speaker), plain(query.subject), plain(query.place), word(query.statement),
                       word(query.status), word(query.outcome), query.recall_least.value_or(-1));
  }
  std::string operator()(const TranscriptPlace& place) const {
    const std::int64_t position = place.at < place.sentences.size()
                                      ? place.sentences[place.at].range.begin.value
                                      : place.wanted.value_or(CodePoint{}).value;
    return fmt::format("transcript\t{}\t{}\t{}", position, plain(place.interview),
                       place.on_claims ? "claims" : "talk");
  }
  std::string operator()(const ClaimPlace& place) const {
    return fmt::format("claim\t{}", to_string(place.id));
  }
  std::string operator()(const ReportPlace& place) const {
    return fmt::format("report\t{}\t{}\t{}", place.at, static_cast<int>(place.kind), plain(place.subject));
  }
  std::string operator()(const FormPlace&) const { return ""; }
  std::string operator()(const KeysPlace&) const { return ""; }
};

Fields split(std::string_view text, char by) {
  Fields fields;
  while (true) {
    const std::size_t end = std::min(text.find(by), text.size());
    fields.emplace_back(text.substr(0, end));
    if (end == text.size()) return fields;
    text.remove_prefix(end + 1);
  }
}

std::optional<std::int64_t> number(const std::string& text) {
  std::int64_t value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  if (read.ec != std::errc{} || read.ptr != text.data() + text.size()) return std::nullopt;
  return value;
}

std::size_t place_in_list(const std::string& text) {
  return static_cast<std::size_t>(std::max<std::int64_t>(0, number(text).value_or(0)));
}

std::optional<Place> claims_of(const Fields& fields) {
  if (fields.size() != 10) return std::nullopt;
  ClaimsPlace place;
  place.at = place_in_list(fields[1]);
  place.query.interview = fields[2];
  place.query.speaker = fields[3];
  place.query.subject = fields[4];
  place.query.place = fields[5];
  place.query.statement = parse_statement(fields[6]);
  place.query.status = parse_claim_status(fields[7]);
  place.query.outcome = parse_outcome(fields[8]);
  if (const auto years = number(fields[9]); years && *years >= 0) place.query.recall_least = years;
  place.page.first = place.at - std::min<std::size_t>(place.at, 100);
  return place;
}

/// Nothing for a line that is not understood: then one stands where the lines before it lead.
std::optional<Place> place_of(const Fields& fields) {
  const std::string& kind = fields.front();
  if (kind == "claims") return claims_of(fields);
  if (kind == "interviews" && fields.size() == 2) return InterviewsPlace{place_in_list(fields[1])};
  if (kind == "transcript" && fields.size() == 4) {
    TranscriptPlace place;
    place.wanted = CodePoint{static_cast<std::int64_t>(place_in_list(fields[1]))};
    place.interview = fields[2];
    place.on_claims = fields[3] == "claims";
    return place;
  }
  if (kind == "claim" && fields.size() == 2)
    if (const auto id = parse_id(fields[1])) return ClaimPlace{*id};
  if (kind == "report" && fields.size() == 4) {
    const auto report = number(fields[2]);
    if (report && *report >= 0 && *report <= static_cast<int>(ReportKind::entry))
      return ReportPlace{static_cast<ReportKind>(*report), fields[3], nullptr, place_in_list(fields[1])};
  }
  return std::nullopt;
}

}  // namespace

std::string standing_text(const State& state) {
  std::string text = state.blind ? "blind\n" : "";
  // The first place and the last few: nobody goes back further after starting again.
  constexpr std::size_t kLast = 20;
  for (std::size_t i = 0; i < state.places.size(); ++i) {
    if (i > 0 && i + kLast < state.places.size()) continue;
    const std::string line = std::visit(LineOf{}, state.places[i]);
    if (!line.empty()) text += line + "\n";
  }
  return text;
}

Update begin(State state, std::string_view stood) {
  Update made{std::move(state), {LoadInterviews{}}};
  std::deque<Place> places;
  for (const std::string& line : split(stood, '\n'))
    if (line == "blind")
      made.effects.push_back(HideProposals{true});
    else if (auto place = place_of(split(line, '\t')))
      places.push_back(std::move(*place));
  if (places.empty() || !std::holds_alternative<InterviewsPlace>(places.front()))
    places.push_front(InterviewsPlace{});
  made.state.places = std::move(places);
  for (std::size_t i = 1; i < made.state.places.size(); ++i)
    if (auto effect = loading(made.state.places[i])) made.effects.push_back(std::move(*effect));
  return made;
}

}  // namespace witnessmark
