#pragma once
#include <string>
#include <string_view>

#include "witnessmark/language/date_expression.h"
#include "witnessmark/language/date_lexicon.h"

namespace date_testing {

using namespace witnessmark;

inline Edtf edtf(std::string_view text) {
  return parse_edtf(text).value();
}

inline NamedEvent event(std::string key, std::string when, std::vector<std::string> spoken) {
  NamedEvent event;
  event.key = key;
  event.name = spoken.front();
  event.spoken = std::move(spoken);
  event.when.value = edtf(when);
  return event;
}

inline ServicePeriod service(std::string when) {
  ServicePeriod period;
  period.when.value = edtf(when);
  return period;
}

/// The narrators of the tables; the head of spoken-dates.tsv describes them.
inline Discourse setting(std::string_view name) {
  Discourse talk;
  talk.policy = default_date_policy();
  if (name == "prose") talk.prose = true;
  if (name == "tender" || name == "sixties") {
    talk.speech_time = edtf("1998-06-15");
    talk.birth = edtf("1932-03-02");
    talk.service = {service("1951-09-03/1964-03-28")};
    talk.events = {
        event("yard-1962", "1962-08-06/1962-11-30",
              {"the yard period", "went into the yard", "the big yard"}),
        event("light-1958", "1958-05-14", {"the new light", "changed the light", "we changed the light"}),
        event("lightship-1955", "1955-01-22", {"the lightship night"})};
  }
  if (name == "sixties") {
    talk.reference = edtf("1962-09");
    talk.reference_year = 1962;
    talk.decade = 1960;
  }
  if (name == "mill") {
    talk.speech_time = edtf("1985-11-02");
    talk.birth = edtf("1911");
    talk.service = {service("1926/1958")};
    talk.events = {event("flood-1947", "1947-03", {"the flood"})};
  }
  if (name == "keeper") {
    talk.speech_time = edtf("1998-10-06");
    talk.birth = edtf("1924-02-17");
  }
  if (name == "daughter") {
    talk.speech_time = edtf("2003-04");
    talk.birth = edtf("1931");
  }
  if (name == "late") {
    talk.speech_time = edtf("2012-05-20");
    talk.birth = edtf("1949-02");
    talk.service = {service("1972-06/1975-04"), service("1977-09/1981-04")};
  }
  return talk;
}

/// "late sixty-two | DATE 1962 END | 1962", alternatives after "or", "(taken back)" at the end: what the
/// tables hold.
inline std::string in_short(const DateExpression& e) {
  std::string text =
      e.text + " | " + std::string(to_string(e.type)) + " " + (e.timex3.empty() ? "-" : e.timex3);
  if (!e.mod.empty()) text += " " + e.mod;
  text += " | " + (e.edtf ? to_string(*e.edtf) : std::string("-"));
  for (const auto& other : e.alternatives) text += " or " + other;
  if (e.corrected) text += " (taken back)";
  return text;
}

inline std::string in_short(const DateReading& reading) {
  std::string text;
  for (const auto& e : reading.expressions) text += (text.empty() ? "" : " ; ") + in_short(e);
  return text;
}

inline DateLexicon english() {
  return DateLexicon::load(SystemFileReader(), std::string(WITNESSMARK_SOURCE_DIR) + "/shared/language/en")
      .value();
}

}  // namespace date_testing
