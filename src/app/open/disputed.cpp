#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <set>

#include "app/open/open_finders.h"
#include "app/weighing/question_words.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

struct Sides {
  std::set<std::string> narrators_for;
  std::int64_t evidence_for = 0, evidence_against = 0, testimony_against = 0;
  bool reviewed = false, proposed = false;
};

/// Testimony is what narrators tell and what only retells it.
bool is_testimony(const Corroboration& answer, std::size_t voice) {
  if (answer.voices[voice].entry.empty() || answer.voices[voice].kind == SourceKind::testimony) return true;
  for (const LineageGroup& group : answer.groups) {
    if (std::find(group.voices.begin(), group.voices.end(), voice) == group.voices.end()) continue;
    return group.kinds == std::vector<SourceKind>{SourceKind::testimony};
  }
  return false;
}

Sides sides_of(const Corroboration& answer, const HeardEvidence& heard) {
  Sides sides;
  for (std::size_t i = 0; i < answer.voices.size(); ++i) {
    const Voice& voice = answer.voices[i];
    if (voice.stand != Stand::for_it && voice.stand != Stand::against_it) continue;
    if (voice.entry.empty()) {
      const bool reviewed = heard.find(voice.claim)->claim.status == ClaimStatus::said_so;
      (reviewed ? sides.reviewed : sides.proposed) = true;
    }
    if (voice.worth == Worth::intention || voice.worth == Worth::circular) continue;
    const bool told = is_testimony(answer, i);
    if (voice.stand == Stand::against_it)
      ++(told ? sides.testimony_against : sides.evidence_against);
    else if (!told)
      ++sides.evidence_for;
    else if (voice.entry.empty())
      sides.narrators_for.insert(voice.origin.key);
  }
  return sides;
}

std::string lines_in_words(const Tally& tally) {
  std::string text = fmt::format("{} independent {} for it, {} against", tally.groups_for,
                                 tally.groups_for == 1 ? "line" : "lines", tally.groups_against);
  if (tally.second_hand_for > 0) text += fmt::format(", {} for it at second hand", tally.second_hand_for);
  if (tally.second_hand_against > 0)
    text += fmt::format(", {} against at second hand", tally.second_hand_against);
  if (tally.intentions_for > 0) text += fmt::format(", {} intended", tally.intentions_for);
  return text;
}

/// Whether something done, and not only meant, says the same of a time that may be the one meant.
bool done_at_some_time(const Corroboration& answer, const RegisterIndex& index) {
  return std::any_of(answer.voices.begin(), answer.voices.end(), [&](const Voice& voice) {
    const auto* item =
        voice.entry.empty() || voice.stand != Stand::consistent ? nullptr : index.find(voice.entry);
    return item != nullptr && item->entry->statement == answer.question.statement &&
           item->entry->nature == Nature::done;
  });
}

std::optional<OpenBecause> because_of(const Corroboration& answer, const Sides& sides,
                                      const RegisterIndex& index) {
  const Tally& tally = answer.tally;
  const bool only_told = sides.evidence_for == 0 && !sides.narrators_for.empty();
  if (only_told && sides.evidence_against > 0) return OpenBecause::contradicted_story;
  const bool against = tally.groups_against + tally.second_hand_against > 0;
  const bool spoken_for = tally.groups_for + tally.second_hand_for > 0;
  if (against && spoken_for && tally.kinds_for < 2 && tally.kinds_against < 2)
    return OpenBecause::sources_disagree;
  if (tally.kinds_for > 1 && tally.kinds_against > 1) return OpenBecause::sources_disagree;
  if (tally.intentions_for > 0 && !spoken_for && tally.groups_against == 0 &&
      !done_at_some_time(answer, index))
    return OpenBecause::intention_only;
  return std::nullopt;
}

}  // namespace

std::string photograph_of(const std::string& place_name, const std::string& when) {
  const std::string spot = place_name.empty() ? "the spot" : place_name;
  return fmt::format("a photograph that shows {}, of {}", spot, when);
}

std::vector<std::string> deciding_evidence(const Claim& question, const AuthorityLists& lists) {
  const std::string when = question.when.period ? describe(*question.when.period) : "that time";
  const std::string place = thing_words(lists, "", "", question.place, question.place_words);
  switch (question.statement) {
    case Statement::begins:
    case Statement::ends:
      return {fmt::format("a log, workshop book or letter that enters the work, of {}", when),
              photograph_of(place, when + " or soon before or after")};
    case Statement::count:
      return {fmt::format("a stores book or inventory of {}", when), photograph_of(place, when)};
    case Statement::attribute:
      return {photograph_of(place, when) + ", in which it can be made out",
              fmt::format("a paint layer or another trace on the fabric that can be dated to {}", when)};
    case Statement::located:
      return {fmt::format("a log, a port's book or a newspaper of {}", when)};
    case Statement::happened:
      return {fmt::format("a log, report or letter of {}", when)};
    case Statement::present:
    case Statement::absent:
      return {photograph_of(place, when), fmt::format("a log or letter that speaks of it, of {}", when)};
  }
  return {};
}

namespace {

/// A question with what two datings of one thing are compared by.
struct Disputed {
  Claim question;
  OpenQuestion open;
  std::set<std::string> narrators, against;
};

/// One thing told with dates that overlap, and the same entries against it: one question with several
/// datings.
bool same_but_for_the_date(const Disputed& a, const Disputed& b) {
  const Claim &one = a.question, &other = b.question;
  return a.open.because == b.open.because && one.subject == other.subject && one.place == other.place &&
         one.place_words == other.place_words && one.statement == other.statement &&
         one.polarity == other.polarity && one.attribute == other.attribute &&
         one.quantity.has_value() == other.quantity.has_value() &&
         (!one.quantity ||
          (one.quantity->least == other.quantity->least && one.quantity->most == other.quantity->most)) &&
         overlap(*one.when.period, *other.when.period) != Answer::no && a.against == b.against;
}

/// The dating most narrators tell stands for all.
void join(Disputed& kept, Disputed other) {
  if (other.narrators.size() > kept.narrators.size()) std::swap(kept, other);
  kept.open.also_told.push_back(one_line(when_words(other.question.when.dated, other.question.when.period)));
  for (std::string& more : other.open.also_told) kept.open.also_told.push_back(std::move(more));
  kept.narrators.insert(other.narrators.begin(), other.narrators.end());
  kept.open.told_by = static_cast<std::int64_t>(kept.narrators.size());
  const auto add = [](auto& list, const auto& more) {
    for (const auto& one : more)
      if (std::find(list.begin(), list.end(), one) == list.end()) list.push_back(one);
  };
  add(kept.open.claims, other.open.claims);
  add(kept.open.entries, other.open.entries);
}

}  // namespace

void add_disputed(const OpenGround& ground, bool preview, std::vector<OpenQuestion>& found) {
  const HeardEvidence& heard = ground.heard;
  const Corroborator asked(heard.evidence(), heard.index(), heard.people().file(), heard.testimony(preview),
                           ground.table);
  std::vector<Disputed> all;
  std::map<std::string, std::vector<std::size_t>> by_subject;
  for (const CorroborationOutline& outline : asked.outlines()) {
    if (outline.with_proposal != preview || !(outline.spoken_against || outline.tally.intentions_for > 0)) continue;
    const Corroboration answer = asked.answer(outline);
    const Sides sides = sides_of(answer, heard);
    const auto because = because_of(answer, sides, heard.index());
    if (!because) continue;
    Disputed disputed{answer.question, {}, sides.narrators_for, {}};
    OpenQuestion& open = disputed.open;
    open.because = *because;
    open.preview = preview;
    open.subject = answer.question.subject;
    open.place = answer.question.place;
    open.question = question_words(answer, heard);
    open.standing = lines_in_words(answer.tally);
    open.told_by = static_cast<std::int64_t>(sides.narrators_for.size());
    open.would_decide = deciding_evidence(answer.question, heard.lists());
    for (const Voice& voice : answer.voices) {
      if (voice.stand != Stand::for_it && voice.stand != Stand::against_it) continue;
      if (voice.entry.empty())
        open.claims.push_back(voice.claim);
      else
        open.entries.push_back(voice.entry);
      if (!voice.entry.empty() && voice.stand == Stand::against_it) disputed.against.insert(voice.entry);
    }
    auto& of_subject = by_subject[answer.question.subject];
    const auto same = std::find_if(of_subject.begin(), of_subject.end(), [&](std::size_t held) {
      return same_but_for_the_date(all[held], disputed);
    });
    if (same == of_subject.end()) {
      of_subject.push_back(all.size());
      all.push_back(std::move(disputed));
    } else {
      join(all[*same], std::move(disputed));
    }
  }
  for (Disputed& disputed : all) found.push_back(std::move(disputed.open));
}

}  // namespace witnessmark
