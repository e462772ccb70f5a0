#include "app/weighing/question_words.h"

#include <fmt/core.h>

#include <algorithm>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

/// Without the subject: "taken away, 29 April 1963", "24, 31 March 1959".
std::string bare(std::string words) {
  const auto first = words.find_first_not_of(" :");
  return first == std::string::npos ? "" : words.substr(first);
}

/// A state told of all the days, not of some day among them.
std::string throughout_words(const Claim& claim) {
  const bool state = claim.statement != Statement::absent;  // what was not there was not there at all
  return state && reading_of(claim) == Reading::throughout ? ", throughout" : "";
}

std::string stated_by_claim(Claim claim, const RegisterIndex& index) {
  const bool located = claim.statement == Statement::located;
  claim.subject.clear();
  claim.subject_words.clear();
  if (!located) {
    claim.place.clear();
    claim.place_words.clear();
  }
  std::string text = statement_words(claim, index) + throughout_words(claim);
  if (located) text = text.substr(std::string_view("the site").size());
  text = bare(std::move(text));
  return claim.polarity == Polarity::denied ? "not: " + text : text;
}

std::string stated_by_entry(const RegisterIndex::Item& item, const RegisterIndex& index) {
  Entry entry = *item.entry;
  entry.subject.clear();
  entry.place.clear();
  const std::string text = bare(statement_words({&entry, item.source, item.period}, index));
  return entry.nature == Nature::intended ? "meant to be: " + text : text;
}

}  // namespace

namespace {

/// With the name of whom a question of whereabouts is of as the release in the interview allows.
Claim named_question(Claim question, const std::string& interview, const Withholding& withholding) {
  if (question.statement != Statement::located || question.subject.empty()) return question;
  const bool own = question.subject == question.speaker || question.subject_words.empty();
  const bool renamed = withholding.shown_key(interview, question.subject) != question.subject;
  if (own || renamed) question.subject_words = withholding.shown_name(interview, question.subject);
  question.speaker.clear();
  return question;
}

std::string question_words(const Claim& question, const RegisterIndex& index) {
  std::string text = statement_words(question, index) + throughout_words(question);
  if (question.polarity == Polarity::denied)
    text = "not: " + text;
  else if (question.statement == Statement::located && text.starts_with("the "))
    text.front() = 'T';
  return one_line(text);
}

}  // namespace

std::string question_words(const Claim& claim, const HeardEvidence& heard) {
  const std::string words =
      question_words(named_question(claim, claim.interview, heard.withholding()), heard.index());
  return heard.withholding().without_names(claim.interview, words).text;
}

std::string question_words(const Corroboration& answer, const HeardEvidence& heard) {
  const auto told = std::find_if(answer.voices.begin(), answer.voices.end(),
                                 [](const Voice& voice) { return voice.entry.empty(); });
  const std::string interview = told == answer.voices.end() ? "" : told->interview;
  const std::string words =
      question_words(named_question(answer.question, interview, heard.withholding()), heard.index());
  return heard.withholding().without_names(interview, words).text;
}

std::string source_words(const Source* source, const std::string& key, const std::string& locator) {
  std::string text = source != nullptr && !source->title.empty() ? source->title : key;
  if (!locator.empty()) text += ", " + locator;
  return one_line(text);
}

std::string QuestionWords::entry_words(const Voice& voice, ShownVoice& made) const {
  const Source* source = heard_.index().source(voice.origin.key);
  const std::string kind(in_words(voice.kind));
  if (const auto* item = heard_.index().find(voice.entry)) {
    made.stated = stated_by_entry(*item, heard_.index());
    made.words = one_line(item->entry->observation);
    const std::string& noted = item->entry->letter_figure;
    return fmt::format("{} {}, {}{}", kind, voice.entry,
                       source_words(source, voice.origin.key, item->entry->locator),
                       noted.empty() ? "" : one_line(", noted " + noted));
  }
  if (const auto* stay = heard_.index().find_stay(voice.entry)) {
    made.stated =
        fmt::format("at {}, {}", stay->stay->locations.front(), when_words(stay->stay->when, stay->period));
    made.words = one_line(stay->stay->notes);
  }
  return fmt::format("{} {}, {}", kind, voice.entry, source_words(source, voice.origin.key, ""));
}

ShownVoice QuestionWords::shown(const Voice& voice) {
  ShownVoice made;
  made.voice = voice;
  if (!voice.entry.empty()) {
    made.who = entry_words(voice, made);
    return made;
  }
  const StoredClaim* stored = heard_.find(voice.claim);
  if (stored == nullptr) return made;
  const ClaimRecord record = heard_.record(*stored);
  const QuoteRecord quote = record.quotes.empty() ? QuoteRecord{} : record.quotes.front();
  const std::string time = time_words(quote.time, quote.timing);
  made.who =
      one_line(fmt::format("{} ({}{}{})", record.narrator, record.interview, time.empty() ? "" : ", ", time));
  made.interview = record.interview;
  made.stated = one_line(stated_by_claim(record.claim, heard_.index()));
  made.words = one_line(own_words(record));
  made.others = one_line(words_of_others(record));
  made.proposed = stored->claim.status == ClaimStatus::proposed;
  return made;
}

std::string QuestionWords::name_of(const Origin& origin, const std::string& interview) const {
  if (origin.kind == Origin::Kind::person) return heard_.withholding().shown_name(interview, origin.key);
  const Source* source = heard_.index().source(origin.key);
  return source != nullptr && !source->title.empty() ? source->title
                                                     : heard_.withholding().shown_interview(origin.key);
}

std::vector<std::string> QuestionWords::link_words(const Corroboration& answer,
                                                   const LineageGroup& group) const {
  std::vector<std::string> words;
  for (const LineageLink& link : group.links) {
    // A person is named as in the interview the link is of.
    std::string interview = link.how;
    if (link.why == LineageLink::Why::narrated_by) interview = link.from.key;
    for (const std::size_t at : group.voices) {
      const Voice& voice = answer.voices[at];
      if (link.why != LineageLink::Why::interviewed_together && voice.origin == link.from)
        interview = voice.interview;
    }
    std::string text = fmt::format("{} {} {}", name_of(link.from, interview), to_string(link.why),
                                   name_of(link.to, interview));
    if (!link.how.empty()) text += fmt::format(" ({})", heard_.withholding().shown_interview(link.how));
    words.push_back(one_line(text));
  }
  return words;
}

ShownQuestion QuestionWords::shown(Corroboration answer) {
  ShownQuestion made;
  made.question = question_words(answer, heard_);
  for (const Voice& voice : answer.voices) made.voices.push_back(shown(voice));
  for (const LineageGroup& group : answer.groups) made.links.push_back(link_words(answer, group));
  made.answer = std::move(answer);
  made.answer.question.subject = heard_.withholding().shown_key("", made.answer.question.subject);
  return made;
}

}  // namespace witnessmark
