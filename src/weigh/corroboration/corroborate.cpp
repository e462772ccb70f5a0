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
#include "outlines.h"
#include "statements.h"
#include "tracing.h"
#include "witnessmark/base/parallel.h"
#include "witnessmark/weigh/agreement.h"
#include "witnessmark/weigh/corroboration.h"

namespace witnessmark {
namespace {

std::string bucket_of(const Claim& question) {
  return (question.statement == Statement::located ? "located\n" : "thing\n") + question.subject;
}

}  // namespace

class Corroborator::Work {
 public:
  Work(const Register& evidence, const RegisterIndex& index, const InterviewFile& people,
       std::vector<Testimony> testimony, const GradeTable& table)
      : index_(index),
        table_(table),
        statements_(index),
        tracing_(evidence, index, people),
        testimony_(std::move(testimony)) {
    for (const Testimony& told : testimony_) {
      const auto question = statements_.question_of(*told.claim);
      if (!question) continue;
      proposition(*question).told.push_back(&told);
      const Voice voice = voice_of(told);
      tracing_.prepare(voice.origin);
      heard_.emplace(told.claim->id, Heard{&told, voice});
      if (told.interview != nullptr)
        for (const std::string& shown : told.interview->shown_beforehand)
          tracing_.prepare({Origin::Kind::source, shown});
    }
    for (const RegisterIndex::Item& item : index_.items()) {
      if (const auto question = statements_.question_of(item)) proposition(*question).stated = true;
      tracing_.prepare({Origin::Kind::source, item.entry->source});
    }
    put_in_order();
  }

  std::vector<Corroboration> all() const {
    std::vector<Corroboration> answers(ordered_.size());
    in_parallel(ordered_.size(), [&](std::size_t i) { answers[i] = answer(*ordered_[i]->question); });
    return answers;
  }

  Corroboration answer(const CorroborationOutline& outline) const {
    return answer(*ordered_.at(outline.number)->question);
  }

  std::vector<CorroborationOutline> outlines() const {
    std::unordered_map<const Proposition*, std::size_t> numbers;
    for (std::size_t i = 0; i < ordered_.size(); ++i) numbers.emplace(ordered_[i], i);
    std::vector<const std::vector<const Proposition*>*> subjects;
    for (const auto& [key, those] : by_subject_) subjects.push_back(&those);
    std::stable_sort(subjects.begin(), subjects.end(),
                     [](const auto* a, const auto* b) { return a->size() > b->size(); });
    std::vector<CorroborationOutline> made(ordered_.size());
    in_parallel(subjects.size(), [&](std::size_t i) {
      SubjectOutlines of_subject(index_, statements_, tracing_, table_, *subjects[i]);
      for (const Proposition* each : *subjects[i]) {
        const std::size_t number = numbers.at(each);
        made[number] = of_subject.outline(*each);
        made[number].number = number;
      }
    });
    return made;
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

  /// By subject in list order, place, first day and statement.
  void put_in_order() {
    std::map<std::string, std::size_t> order;
    for (const Term& term : index_.lists().equipment.terms()) order.emplace(term.key, order.size());
    const auto place_of = [&](const Proposition& one) {
      const Claim& question = one.question->claim;
      const auto at = order.find(question.subject);
      const auto& period = *question.when.period;
      const auto first = period.earliest() ? period.earliest() : period.past_latest();
      return std::tuple(at == order.end() ? order.size() : at->second, question.subject, question.place,
                        first.value_or(Day{}), question.statement);
    };
    using Place = decltype(place_of(*ordered_.front()));
    std::vector<std::pair<Place, const Proposition*>> sorted;
    for (const auto& [key, each] : propositions_) sorted.emplace_back(place_of(each), &each);
    std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [place, each] : sorted) ordered_.push_back(each);
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
      Voice voice = voice_of(*item, index_);
      voice.stand = *stand;
      made.voices.push_back(std::move(voice));
    }
  }

  void add_stays(Corroboration& made) const {
    for (Voice& voice : stays_beside(made.question, index_, tracing_)) made.voices.push_back(std::move(voice));
  }

  std::vector<LineageLink> links_of(const Voice& voice, const std::vector<Voice>& voices) const {
    std::vector<LineageLink> links;
    const auto add = [&](const std::vector<LineageLink>& more) { links.insert(links.end(), more.begin(), more.end()); };
    if (!voice.entry.empty()) {
      if (const auto* item = index_.find(voice.entry)) add(tracing_.of_entry(*item->entry));
    } else {
      const Testimony& told = *heard_.at(voice.claim).told;
      add(tracing_.had_from(told, voice.origin));
      if (told.claim->basis == Basis::read)
        for (const Voice& other : voices)
          if (!other.entry.empty() && other.stand == voice.stand && is_written(other.kind))
            add(tracing_.had_read(voice.origin, other.origin));
      if (told.interview != nullptr)
        for (const std::string& shown : told.interview->shown_beforehand)
          if (speaks(shown, voice, voices)) add(tracing_.was_shown(told, voice.origin, shown));
    }
    add(tracing_.behind(voice.origin));
    return links;
  }

  /// Whether what was shown, or what it goes back to, has something to say on the question.
  bool speaks(const std::string& shown, const Voice& narrator, const std::vector<Voice>& voices) const {
    const std::set<Origin> reached = tracing_.reached_from(shown);
    return std::any_of(voices.begin(), voices.end(), [&](const Voice& voice) {
      if (voice.origin == narrator.origin) return false;
      return reached.contains(voice.origin) || reached.contains({Origin::Kind::source, voice.interview});
    });
  }

  void group(Corroboration& made) const {
    std::vector<TracedVoice> sides[2];
    for (std::size_t i = 0; i < made.voices.size(); ++i) {
      const Voice& voice = made.voices[i];
      if (voice.stand != Stand::for_it && voice.stand != Stand::against_it) continue;
      TracedVoice traced{i, &voice, {}, links_of(voice, made.voices)};
      traced.kinds = tracing_.kinds_behind(voice, traced.behind);
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
  const GradeTable& table_;
  Statements statements_;
  Tracing tracing_;
  std::vector<Testimony> testimony_;
  struct Heard {
    const Testimony* told;
    Voice voice;  ///< How it stands is set for each question.
  };
  std::unordered_map<Id, Heard> heard_;
  std::map<std::string, Proposition> propositions_;
  std::map<std::string, std::vector<const Proposition*>> by_subject_;
  std::vector<const Proposition*> ordered_;
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

std::vector<CorroborationOutline> Corroborator::outlines() const {
  return work_->outlines();
}

Corroboration Corroborator::answer(const CorroborationOutline& outline) const {
  return work_->answer(outline);
}

std::vector<Corroboration> Corroborator::all() const {
  return work_->all();
}
Corroboration Corroborator::ask(const Claim& claim) const {
  return work_->ask(claim);
}

}  // namespace witnessmark
