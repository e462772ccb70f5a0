// Statements of one meaning are one question. For each question everything on its subject is asked how it
// stands to it: an entry by the rule for a claim and an entry, what was told by the same rule with what was
// told taken for a fact. What speaks for it and what against it is then put into groups (groups.cpp),
// counted, and graded by the table.

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <unordered_map>

#include "groups.h"
#include "statements.h"
#include "weigh/circularity.h"
#include "witnessmark/base/parallel.h"
#include "witnessmark/weigh/agreement.h"
#include "witnessmark/weigh/corroboration.h"
#include "witnessmark/weigh/whereabouts.h"

namespace witnessmark {
namespace {

/// Statements of one meaning with those who make them.
struct Proposition {
  std::unique_ptr<Question> question;
  std::vector<const Testimony*> told;
  bool stated = false;  ///< By an entry.
};

std::string bucket_of(const Claim& question) {
  return (question.statement == Statement::located ? "located\n" : "thing\n") + question.subject;
}

Worth worth_of(const Testimony& told) {
  const Claim& claim = *told.claim;
  if (claim.led) return Worth::led;
  if (claim.basis == Basis::inferred) return Worth::inferred;
  if (claim.firmness == Firmness::guess) return Worth::guess;
  if (claim.basis == Basis::told || claim.basis == Basis::read) return Worth::second_hand;
  if (told.in_service == Answer::no && claim.basis != Basis::first_hand) return Worth::second_hand;
  return Worth::counted;
}

/// Links by which what is said was taken over, not only its date or its caption.
bool retold(LineageLink::Why why) {
  return why == LineageLink::Why::derives_from || why == LineageLink::Why::is_interview ||
         why == LineageLink::Why::narrated_by;
}

bool is_written(SourceKind kind) {
  return kind == SourceKind::publication || kind == SourceKind::log || kind == SourceKind::order ||
         kind == SourceKind::correspondence || kind == SourceKind::object_record;
}

}  // namespace

class Corroborator::Work {
 public:
  Work(const Register& evidence, const RegisterIndex& index, const InterviewFile& people,
       std::vector<Testimony> testimony, const GradeTable& table)
      : index_(index),
        people_(people),
        table_(table),
        statements_(index),
        lineage_(evidence, people.interviews),
        testimony_(std::move(testimony)) {
    for (const Testimony& told : testimony_) {
      const auto question = statements_.question_of(*told.claim);
      if (!question) continue;
      proposition(*question).told.push_back(&told);
      const Voice voice = voice_of(told);
      behind_.try_emplace(voice.origin, lineage_.behind(voice.origin));
      heard_.emplace(told.claim->id, Heard{&told, voice});
    }
    for (const RegisterIndex::Item& item : index_.items()) {
      if (const auto question = statements_.question_of(item)) proposition(*question).stated = true;
      const Origin source{Origin::Kind::source, item.entry->source};
      behind_.try_emplace(source, lineage_.behind(source));
    }
  }

  /// The answers one after another, on all processors: `use` is told which of the slices an answer is of, and
  /// those of one slice come in order.
  template <typename Use>
  void answer_all(const Use& use) const {
    std::vector<const Proposition*> asked;
    for (const auto& [key, each] : propositions_) asked.push_back(&each);
    in_parallel(kSlices, [&](std::size_t slice) {
      const std::size_t past = asked.size() * (slice + 1) / kSlices;
      for (std::size_t i = asked.size() * slice / kSlices; i < past; ++i) use(slice, answer(*asked[i]->question));
    });
  }

  std::map<std::string, std::int64_t> count(const std::function<bool(const Corroboration&)>& among) const {
    std::vector<std::map<std::string, std::int64_t>> counts(kSlices);
    answer_all([&](std::size_t slice, const Corroboration& made) {
      if (among(made)) ++counts[slice][made.grade];
    });
    std::map<std::string, std::int64_t> sums;
    for (const auto& of_slice : counts)
      for (const auto& [grade, number] : of_slice) sums[grade] += number;
    return sums;
  }

  std::vector<Corroboration> all() const {
    std::vector<std::vector<Corroboration>> parts(kSlices);
    answer_all([&](std::size_t slice, Corroboration made) { parts[slice].push_back(std::move(made)); });
    std::vector<Corroboration> answers;
    for (std::vector<Corroboration>& part : parts)
      for (Corroboration& made : part) answers.push_back(std::move(made));
    std::map<std::string, std::size_t> order;
    for (const Term& term : index_.lists().equipment.terms()) order.emplace(term.key, order.size());
    const auto place_of = [&](const Corroboration& made) {
      const Claim& question = made.question;
      const auto at = order.find(question.subject);
      const auto& period = *question.when.period;
      const auto first = period.earliest() ? period.earliest() : period.past_latest();
      return std::tuple(at == order.end() ? order.size() : at->second, question.subject, question.place,
                        first.value_or(Day{}), question.statement);
    };
    std::stable_sort(answers.begin(), answers.end(), [&](const Corroboration& a, const Corroboration& b) {
      return place_of(a) < place_of(b);
    });
    return answers;
  }

  Corroboration ask(const Claim& claim) const {
    const auto question = statements_.question_of(claim);
    if (question) return answer(*statements_.prepared(*question));
    Corroboration none;
    none.question = claim;
    grade(none);
    return none;
  }

 private:
  Proposition& proposition(const Claim& question) {
    const std::string key = statements_.key_of(question);
    const auto [at, fresh] = propositions_.try_emplace(key);
    if (fresh) {
      at->second.question = statements_.prepared(question);
      by_subject_[bucket_of(question)].push_back(&at->second);
    }
    return at->second;
  }

  Corroboration answer(const Question& question) const {
    Corroboration made;
    made.question = question.claim;
    if (const auto own = propositions_.find(question.key); own != propositions_.end()) {
      made.put_by_testimony = !own->second.told.empty();
      made.put_by_register = own->second.stated;
      made.put_by_review =
          std::any_of(own->second.told.begin(), own->second.told.end(),
                      [](const auto* told) { return told->claim->status == ClaimStatus::said_so; });
    }
    add_told(question, made);
    if (question.claim.statement == Statement::located)
      add_stays(made);
    else
      add_stated(question, made);
    std::stable_sort(made.voices.begin(), made.voices.end(), [](const Voice& a, const Voice& b) {
      return std::tie(a.stand, a.origin, a.entry, a.interview) <
             std::tie(b.stand, b.origin, b.entry, b.interview);
    });
    group(made);
    grade(made);
    return made;
  }

  static Voice voice_of(const Testimony& told) {
    Voice voice;
    voice.claim = told.claim->id;
    voice.interview = told.claim->interview;
    const std::string who = told.person.empty() ? voice.interview + "/" + told.claim->speaker : told.person;
    voice.origin = {Origin::Kind::person, who};
    voice.worth = worth_of(told);
    return voice;
  }

  void add_told(const Question& question, Corroboration& made) const {
    const auto at = by_subject_.find(bucket_of(made.question));
    if (at == by_subject_.end()) return;
    for (const Proposition* other : at->second) {
      if (other->told.empty()) continue;
      const Stand stand = statements_.stand_of(*other->question, question);
      for (const Testimony* told : other->told) {
        made.voices.push_back(heard_.at(told->claim->id).voice);
        made.voices.back().stand = stand;
      }
    }
  }

  void add_stated(const Question& question, Corroboration& made) const {
    for (const PreparedEntry* entry : index_.beside(made.question.subject, made.question.place).entries) {
      const RegisterIndex::Item* item = &entry->timed.item;
      if (item->entry->subject != made.question.subject) continue;
      const auto stand = statements_.stand_of(*entry, question);
      if (!stand) continue;
      Voice voice;
      voice.entry = item->entry->key;
      voice.origin = {Origin::Kind::source, item->entry->source};
      voice.kind = item->source != nullptr ? item->source->kind : SourceKind::publication;
      voice.stand = *stand;
      const Circle circle = circle_between(made.question, Interview{}, *item, index_);
      if (circle == Circle::date_rests_on_subject || circle == Circle::identity_rests_on_subject)
        voice.worth = Worth::circular;
      else if (item->entry->nature == Nature::intended)
        voice.worth = Worth::intention;
      made.voices.push_back(std::move(voice));
    }
  }

  void add_stays(Corroboration& made) const {
    for (const Comparison& comparison : compare_whereabouts(made.question, index_)) {
      const auto* stay = index_.find_stay(comparison.entry);
      const Source* source = index_.source(stay->stay->source);
      Voice voice;
      voice.entry = comparison.entry;
      voice.origin = {Origin::Kind::source, stay->stay->source};
      voice.kind = source != nullptr ? source->kind : SourceKind::log;
      voice.stand = comparison.outcome == Outcome::agrees       ? Stand::for_it
                    : comparison.outcome == Outcome::conflicts  ? Stand::against_it
                    : comparison.outcome == Outcome::compatible ? Stand::consistent
                                                                : Stand::cannot_tell;
      made.voices.push_back(std::move(voice));
    }
  }

  void add_link(TracedVoice& traced, const Origin& to, LineageLink::Why why,
                const std::string& how = {}) const {
    traced.behind.push_back({traced.voice->origin, to, why, how});
    const auto further = lineage_.behind(to);
    traced.behind.insert(traced.behind.end(), further.begin(), further.end());
  }

  /// What the date, the identification and the caption of an entry rest on, as far as it is not the thing
  /// itself.
  void trace_entry(TracedVoice& traced) const {
    const auto* item = index_.find(traced.voice->entry);
    if (item == nullptr) return;
    const auto add = [&](const std::vector<std::string>& keys, LineageLink::Why why) {
      for (const std::string& key : keys) {
        if (index_.lists().equipment.find(key) != nullptr) continue;
        const auto* other = index_.find(key);
        add_link(traced, {Origin::Kind::source, other != nullptr ? other->entry->source : key}, why);
      }
    };
    add(item->entry->date_rests_on, LineageLink::Why::dated_by);
    add(item->entry->identification_rests_on, LineageLink::Why::identified_by);
    add(item->entry->caption_rests_on, LineageLink::Why::captioned_by);
  }

  void trace_claim(TracedVoice& traced, const Testimony& told, const std::vector<Voice>& voices) const {
    if (const std::string knower = person_named(told.claim->knower, people_.persons); !knower.empty())
      add_link(traced, {Origin::Kind::person, knower}, LineageLink::Why::had_it_from);
    if (told.claim->basis == Basis::read) {
      for (const Voice& voice : voices) {
        if (!voice.entry.empty() && voice.stand == traced.voice->stand && is_written(voice.kind))
          add_link(traced, voice.origin, LineageLink::Why::had_read);
      }
    }
    if (told.interview == nullptr) return;
    for (const std::string& shown : told.interview->shown_beforehand) {
      if (speaks(shown, traced, voices))
        add_link(traced, {Origin::Kind::source, shown}, LineageLink::Why::was_shown, told.interview->key);
    }
  }

  /// Whether what was shown, or what it goes back to, has something to say on the question.
  bool speaks(const std::string& shown, const TracedVoice& traced, const std::vector<Voice>& voices) const {
    std::set<Origin> reached{{Origin::Kind::source, shown}};
    for (const LineageLink& link : lineage_.behind({Origin::Kind::source, shown})) reached.insert(link.to);
    return std::any_of(voices.begin(), voices.end(), [&](const Voice& voice) {
      if (voice.origin == traced.voice->origin) return false;
      return reached.contains(voice.origin) || reached.contains({Origin::Kind::source, voice.interview});
    });
  }

  /// What a voice goes back to in the end, by kind: an interview or a narrator is testimony.
  std::set<SourceKind> kinds_behind(const TracedVoice& traced) const {
    if (traced.behind.empty() && traced.voice->origin.kind == Origin::Kind::person)
      return {SourceKind::testimony};
    std::set<Origin> reached{traced.voice->origin};
    std::set<Origin> retells;
    for (const LineageLink& link : traced.behind) {
      if (!retold(link.why) || !reached.contains(link.from)) continue;
      reached.insert(link.to);
      retells.insert(link.from);
    }
    std::set<SourceKind> kinds;
    for (const Origin& origin : reached) {
      if (retells.contains(origin)) continue;
      const Source* source = origin.kind == Origin::Kind::source ? index_.source(origin.key) : nullptr;
      const bool person = origin.kind == Origin::Kind::person;
      if (person)
        kinds.insert(SourceKind::testimony);
      else
        kinds.insert(source != nullptr ? source->kind : traced.voice->kind);
    }
    return kinds;
  }

  void group(Corroboration& made) const {
    std::vector<TracedVoice> sides[2];
    for (std::size_t i = 0; i < made.voices.size(); ++i) {
      const Voice& voice = made.voices[i];
      if (voice.stand != Stand::for_it && voice.stand != Stand::against_it) continue;
      TracedVoice traced{i, &voice, {}, {}};
      if (voice.entry.empty())
        trace_claim(traced, *heard_.at(voice.claim).told, made.voices);
      else
        trace_entry(traced);
      if (const auto known = behind_.find(voice.origin); known != behind_.end()) {
        traced.behind.insert(traced.behind.end(), known->second.begin(), known->second.end());
      } else {
        const auto general = lineage_.behind(voice.origin);
        traced.behind.insert(traced.behind.end(), general.begin(), general.end());
      }
      traced.kinds = kinds_behind(traced);
      sides[voice.stand == Stand::for_it ? 0 : 1].push_back(std::move(traced));
    }
    GroupedSide in_favour = group_side(sides[0], sides[1]);
    GroupedSide against = group_side(sides[1], sides[0]);
    made.tally = {in_favour.tally.groups,    in_favour.tally.kinds,       against.tally.groups,
                  against.tally.kinds,       in_favour.tally.second_hand, against.tally.second_hand,
                  in_favour.tally.intentions};
    made.groups = std::move(in_favour.groups);
    made.groups.insert(made.groups.end(), against.groups.begin(), against.groups.end());
  }

  void grade(Corroboration& made) const {
    const GradeRule& rule = table_.grade(made.tally);
    made.grade = rule.grade;
    made.meaning = rule.meaning;
  }

  const RegisterIndex& index_;
  const InterviewFile& people_;
  const GradeTable& table_;
  Statements statements_;
  Lineage lineage_;
  std::vector<Testimony> testimony_;
  struct Heard {
    const Testimony* told;
    Voice voice;  ///< How it stands is set for each question.
  };
  std::unordered_map<Id, Heard> heard_;
  std::map<Origin, std::vector<LineageLink>> behind_;  ///< Of each origin of what was told or stated.
  static constexpr std::size_t kSlices = 64;  ///< Of the questions, for several threads.
  std::map<std::string, Proposition> propositions_;
  std::map<std::string, std::vector<const Proposition*>> by_subject_;
};

std::string_view to_string(Stand stand) {
  switch (stand) {
    case Stand::for_it:
      return "for";
    case Stand::against_it:
      return "against";
    case Stand::consistent:
      return "consistent";
    case Stand::cannot_tell:
      return "cannot tell";
  }
  return "";
}

std::string_view to_string(Worth worth) {
  switch (worth) {
    case Worth::counted:
      return "counted";
    case Worth::second_hand:
      return "second hand";
    case Worth::intention:
      return "intention";
    case Worth::led:
      return "led";
    case Worth::inferred:
      return "inferred";
    case Worth::guess:
      return "guess";
    case Worth::circular:
      return "circular";
  }
  return "";
}

bool Corroboration::dissent() const {
  const bool spoken = std::any_of(voices.begin(), voices.end(),
                                  [](const Voice& voice) { return voice.stand == Stand::against_it; });
  return spoken && grade != "contested" && grade != "contradicted";
}

std::string dump(const Corroboration& answer) {
  const Claim& question = answer.question;
  const std::string& where = question.place.empty() ? question.place_words : question.place;
  return fmt::format("{}{} {}{} {}: {} ({})", question.polarity == Polarity::denied ? "not " : "",
                     to_string(question.statement), question.subject, where.empty() ? "" : "@" + where,
                     to_string(question.when.dated), answer.grade, dump(answer.tally));
}

Corroborator::Corroborator(const Register& evidence, const RegisterIndex& index, const InterviewFile& people,
                           std::vector<Testimony> testimony, const GradeTable& table)
    : work_(std::make_unique<Work>(evidence, index, people, std::move(testimony), table)) {}
Corroborator::~Corroborator() = default;
Corroborator::Corroborator(Corroborator&&) noexcept = default;

std::map<std::string, std::int64_t> Corroborator::count_grades(
    const std::function<bool(const Corroboration&)>& among) const {
  return work_->count(among);
}

std::vector<Corroboration> Corroborator::all() const {
  return work_->all();
}
Corroboration Corroborator::ask(const Claim& claim) const {
  return work_->ask(claim);
}

}  // namespace witnessmark
