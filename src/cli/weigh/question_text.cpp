#include "cli/weigh/question_text.h"

#include <fmt/ostream.h>
#include <fmt/ranges.h>

#include <nlohmann/json.hpp>
#include <set>

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

using Json = nlohmann::ordered_json;

std::string_view not_counted(Worth worth) {
  switch (worth) {
    case Worth::counted:
      return "";
    case Worth::second_hand:
      return " [at second hand]";
    case Worth::intention:
      return " [an intention]";
    case Worth::led:
      return " [not counted: the interviewer supplied it]";
    case Worth::inferred:
      return " [not counted: inferred]";
    case Worth::guess:
      return " [not counted: a guess]";
    case Worth::circular:
      return " [not counted: dated or identified by the thing itself]";
  }
  return "";
}

void print_voice(std::ostream& out, const ShownVoice& shown, bool first) {
  fmt::print(out, "      {} {}: {}{}\n", first ? "•" : "=", visible(shown.who), visible(shown.stated),
             not_counted(shown.voice.worth));
  if (!shown.words.empty()) fmt::print(out, "        “{}”\n", visible(shown.words));
  if (!shown.others.empty()) fmt::print(out, "        {}\n", visible(shown.others));
}

std::string kinds_of(const ShownQuestion& shown, Stand side) {
  std::set<SourceKind> kinds;
  for (const LineageGroup& group : shown.answer.groups) {
    if (shown.answer.voices[group.voices.front()].stand == side)
      kinds.insert(group.kinds.begin(), group.kinds.end());
  }
  std::string text;
  for (const SourceKind kind : kinds) text += (text.empty() ? "" : ", ") + std::string(in_words(kind));
  return text;
}

void print_side(std::ostream& out, const ShownQuestion& shown, Stand side) {
  const Tally& tally = shown.answer.tally;
  const bool in_favour = side == Stand::for_it;
  const std::int64_t groups = in_favour ? tally.groups_for : tally.groups_against;
  const std::int64_t second_hand = in_favour ? tally.second_hand_for : tally.second_hand_against;
  std::string counted = fmt::format("{} independent", groups);
  if (const std::string kinds = kinds_of(shown, side); groups > 0) counted += fmt::format(" ({})", kinds);
  if (second_hand > 0) counted += fmt::format(", {} at second hand", second_hand);
  if (in_favour && tally.intentions_for > 0)
    counted += fmt::format(", {} intended only", tally.intentions_for);
  fmt::print(out, "    {}: {}\n", in_favour ? "for" : "against", counted);
  for (std::size_t g = 0; g < shown.answer.groups.size(); ++g) {
    const LineageGroup& group = shown.answer.groups[g];
    if (shown.answer.voices[group.voices.front()].stand != side) continue;
    for (std::size_t i = 0; i < group.voices.size(); ++i)
      print_voice(out, shown.voices[group.voices[i]], i == 0);
    if (group.divided) fmt::print(out, "        counts on neither side: it speaks on both\n");
    if (group.voices.size() > 1 && !shown.links[g].empty())
      fmt::print(out, "        one, counted once: {}\n",
                 visible(fmt::format("{}", fmt::join(shown.links[g], "; "))));
  }
}

std::int64_t count(const ShownQuestion& shown, Stand stand) {
  return std::count_if(shown.answer.voices.begin(), shown.answer.voices.end(),
                       [&](const Voice& voice) { return voice.stand == stand; });
}

Json voice_json(const ShownVoice& shown) {
  Json object{{"stand", to_string(shown.voice.stand)},
              {"counts_as", to_string(shown.voice.worth)},
              {"kind", in_words(shown.voice.kind)}};
  if (shown.voice.entry.empty()) {
    object["claim"] = to_string(shown.voice.claim);
    object["interview"] = shown.interview;
    object["reviewed"] = !shown.proposed;
  } else {
    object["entry"] = shown.voice.entry;
    object["source"] = shown.voice.origin.key;
  }
  object["who"] = shown.who;
  object["stated"] = shown.stated;
  if (!shown.words.empty()) object["words"] = shown.words;
  if (!shown.others.empty()) object["words_of_others"] = shown.others;
  return object;
}

Json groups_json(const ShownQuestion& shown) {
  Json groups = Json::array();
  for (std::size_t g = 0; g < shown.answer.groups.size(); ++g) {
    const LineageGroup& group = shown.answer.groups[g];
    Json object{{"side", to_string(shown.answer.voices[group.voices.front()].stand)},
                {"voices", group.voices},
                {"divided", group.divided}};
    if (!shown.links[g].empty()) object["links"] = shown.links[g];
    groups.push_back(std::move(object));
  }
  return groups;
}

}  // namespace

void print_question(std::ostream& out, const ShownQuestion& shown) {
  fmt::print(out, "  {}\n", visible(shown.question));
  print_side(out, shown, Stand::for_it);
  if (count(shown, Stand::against_it) > 0) print_side(out, shown, Stand::against_it);
  if (shown.answer.dissent())
    fmt::print(out, "    there is dissent: {} against; the curator decides\n",
               count(shown, Stand::against_it));
  const std::int64_t consistent = count(shown, Stand::consistent);
  const std::int64_t open = count(shown, Stand::cannot_tell);
  if (consistent + open > 0)
    fmt::print(out, "    beside these: {} can be true as well, {} cannot be told\n", consistent, open);
}

std::string question_json(const ShownQuestion& shown, bool preview) {
  const Claim& asked = shown.answer.question;
  const Tally& tally = shown.answer.tally;
  Json object{{"question", shown.question}, {"statement", to_string(asked.statement)}};
  if (asked.polarity == Polarity::denied) object["denied"] = true;
  if (!asked.subject.empty()) object["subject"] = asked.subject;
  if (!asked.place.empty()) object["place"] = asked.place;
  object["when"] = to_string(asked.when.dated);
  object["preview"] = preview;
  object["grade"] = shown.answer.grade;
  object["meaning"] = shown.answer.meaning;
  object["dissent"] = shown.answer.dissent();
  object["for"] = {{"groups", tally.groups_for},
                   {"kinds", tally.kinds_for},
                   {"second_hand", tally.second_hand_for},
                   {"intentions", tally.intentions_for}};
  object["against"] = {{"groups", tally.groups_against},
                       {"kinds", tally.kinds_against},
                       {"second_hand", tally.second_hand_against}};
  object["groups"] = groups_json(shown);
  Json voices = Json::array();
  for (const ShownVoice& voice : shown.voices) voices.push_back(voice_json(voice));
  object["voices"] = std::move(voices);
  return object.dump();
}

}  // namespace witnessmark
