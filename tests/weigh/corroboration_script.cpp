#include "corroboration_script.h"

#include <fmt/core.h>

#include <deque>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "witnessmark/weigh/corroboration.h"

namespace witnessmark {
namespace {

using Words = std::vector<std::string>;

Words words_of(const std::string& line) {
  std::istringstream stream(line);
  Words words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

/// The word, or the rest of the word after "name=", taken out of the end of the line.
bool has(const Words& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}
std::string value(const Words& words, const std::string& name) {
  for (const std::string& word : words)
    if (word.starts_with(name + "=")) return word.substr(name.size() + 1);
  return "";
}

Dated dated(const std::string& edtf) {
  return {edtf, parse_edtf(edtf).value(), Calendar::gregorian};
}

Term term(const std::string& key) {
  Term made;
  made.key = key;
  made.name = key;
  return made;
}

struct Site {
  Register evidence;
  InterviewFile people;
  std::deque<Claim> claims;
  std::vector<std::pair<std::string, Answer>> tellers;
  Claim question;

  void read(const std::string& line) {
    const Words words = words_of(line);
    if (words.empty()) return;
    const std::string& what = words[0];
    if (what == "source")
      add_source(words);
    else if (what == "derives")
      evidence.derivations.push_back({words.at(1), words.at(2), words.size() > 3 ? words[3] : ""});
    else if (what == "interview")
      add_interview(words);
    else if (what == "entry")
      add_entry(words);
    else if (what == "told")
      add_told(words, claim_of(words, 3));
    else if (what == "stay")
      add_stay(words);
    else if (what == "at")
      add_told(words, located(words, 3));
    else if (what == "ask")
      question = words.at(1) == "at" ? located(words, 2) : claim_of(words, 1);
    else
      throw std::runtime_error("what is " + line);
  }

  void add_source(const Words& words) {
    Source& made = evidence.sources.emplace_back();
    made.key = words.at(1);
    made.kind = parse_source_kind(words.at(2)).value();
    made.interview = value(words, "interview");
  }

  void add_interview(const Words& words) {
    Interview& made = people.interviews.emplace_back();
    made.key = words.at(1);
    std::istringstream names(words.at(2));
    for (std::string name; std::getline(names, name, ',');) {
      made.narrators.push_back(name);
      Person person;
      person.key = name;
      person.name = "Mr " + name;
      const bool known = std::any_of(people.persons.begin(), people.persons.end(),
                                     [&](const Person& held) { return held.key == name; });
      if (!known) people.persons.push_back(person);
    }
    if (const std::string shown = value(words, "shown"); !shown.empty())
      made.shown_beforehand.push_back(shown);
  }

  void add_entry(const Words& words) {
    Entry& made = evidence.entries.emplace_back();
    made.key = words.at(1);
    made.source = words.at(2);
    made.statement = parse_statement(words.at(3)).value();
    made.when = dated(words.at(4));
    made.subject = "lamp";
    made.place = "roof";
    made.spot_visible = has(words, "hidden") ? SpotVisible::no : SpotVisible::yes;
    if (has(words, "intended")) made.nature = Nature::intended;
    if (has(words, "probable")) made.identification = Identification::probable;
    if (has(words, "possible")) made.identification = Identification::possible;
    if (has(words, "throughout")) made.reading = Reading::throughout;
    if (const auto key = value(words, "date"); !key.empty()) made.date_rests_on.push_back(key);
    if (const auto key = value(words, "caption"); !key.empty()) made.caption_rests_on.push_back(key);
    if (const auto number = value(words, "n"); !number.empty()) made.number = std::stoll(number);
  }

  void add_stay(const Words& words) {
    Stay& made = evidence.itinerary.emplace_back();
    made.key = words.at(1);
    made.source = words.at(2);
    made.locations = {words.at(3)};
    made.when = dated(words.at(4));
  }

  static Claim claim_of(const Words& words, std::size_t at) {
    Claim claim;
    claim.statement = parse_statement(words.at(at)).value();
    claim.when.dated = dated(words.at(at + 1));
    claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
    claim.subject = "lamp";
    if (has(words, "throughout")) claim.when.reading = Reading::throughout;
    if (has(words, "denied")) claim.polarity = Polarity::denied;
    if (const auto number = value(words, "n"); !number.empty())
      claim.quantity = Quantity{std::stoll(number), std::stoll(number), ""};
    return claim;
  }

  static Claim located(const Words& words, std::size_t at) {
    Claim claim;
    claim.statement = Statement::located;
    claim.place_words = words.at(at);
    claim.when.dated = dated(words.at(at + 1));
    claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
    if (has(words, "denied")) claim.polarity = Polarity::denied;
    return claim;
  }

  void add_told(const Words& words, Claim claim) {
    claim.interview = words.at(1);
    claim.speaker = words.at(2);
    claim.id.bytes[0] = static_cast<std::uint8_t>(claims.size() + 1);
    if (const auto who = value(words, "told"); !who.empty()) claim.basis = Basis::told, claim.knower = who;
    if (has(words, "read")) claim.basis = Basis::read;
    if (has(words, "inferred")) claim.basis = Basis::inferred;
    if (has(words, "guess")) claim.firmness = Firmness::guess;
    claim.led = has(words, "led");
    claims.push_back(std::move(claim));
    tellers.emplace_back(words[2], has(words, "away") ? Answer::no : Answer::cannot_tell);
  }
};

GradeTable shipped_table() {
  std::ifstream file(WITNESSMARK_SOURCE_DIR "/shared/grades.csv");
  std::ostringstream text;
  text << file.rdbuf();
  return parse_grade_table(text.str(), "grades.csv").value();
}

Corroboration answer_of(const std::string& script, Site& site) {
  std::istringstream lines(script);
  for (std::string line; std::getline(lines, line);) site.read(line);
  const AuthorityLists lists{AuthorityList(AuthorityList::Kind::places, {term("roof")}),
                             AuthorityList(AuthorityList::Kind::equipment, {term("lamp")})};
  const RegisterIndex index(site.evidence, lists, default_date_policy());
  std::vector<Testimony> testimony;
  for (std::size_t i = 0; i < site.claims.size(); ++i) {
    const auto interview =
        std::find_if(site.people.interviews.begin(), site.people.interviews.end(),
                     [&](const Interview& held) { return held.key == site.claims[i].interview; });
    if (interview == site.people.interviews.end())
      throw std::runtime_error("no interview " + site.claims[i].interview);
    testimony.push_back({&site.claims[i], &*interview, site.tellers[i].first, site.tellers[i].second});
  }
  const GradeTable table = shipped_table();
  return Corroborator(site.evidence, index, site.people, testimony, table).ask(site.question);
}

std::string name_of(const Voice& voice) {
  const std::string who = voice.entry.empty() ? voice.origin.key : voice.entry;
  return voice.worth == Worth::counted ? who : fmt::format("{} ({})", who, to_string(voice.worth));
}

}  // namespace

std::string ask(const std::string& script) {
  Site site;
  const Corroboration answer = answer_of(script, site);
  std::string text = fmt::format("{} ({}):", answer.grade, dump(answer.tally));
  bool against = false;
  bool first = true;
  for (const LineageGroup& group : answer.groups) {
    const bool other_side = answer.voices[group.voices.front()].stand == Stand::against_it;
    if (other_side && !against)
      text += " /";
    else if (!first)
      text += " |";
    against = other_side;
    first = false;
    std::string names;
    for (const std::size_t at : group.voices)
      names += (names.empty() ? "" : "+") + name_of(answer.voices[at]);
    text += group.divided ? " [" + names + "]" : " " + names;
  }
  return text;
}

std::string links(const std::string& script) {
  Site site;
  std::string text;
  const Corroboration answer = answer_of(script, site);
  for (const LineageGroup& group : answer.groups)
    for (const LineageLink& link : group.links) text += (text.empty() ? "" : "; ") + dump(link);
  return text;
}

}  // namespace witnessmark
