#include "outlines.h"

#include <algorithm>
#include <tuple>

#include "witnessmark/weigh/whereabouts.h"

namespace witnessmark {
namespace {

int side_of(Stand stand) {
  return stand == Stand::for_it ? 0 : 1;
}

bool takes_a_side(Stand stand) {
  return stand == Stand::for_it || stand == Stand::against_it;
}

}  // namespace

SubjectOutlines::SubjectOutlines(const RegisterIndex& index, const Statements& statements, const Tracing& tracing,
                                 const GradeTable& table, const std::vector<const Proposition*>& propositions)
    : index_(index), statements_(statements), tracing_(tracing), table_(table) {
  const Claim& first = propositions.front()->question->claim;
  located_ = first.statement == Statement::located;
  subject_ = first.subject;
  for (const Proposition* one : propositions) {
    if (one->told.empty()) continue;
    const std::size_t begin = told_.size();
    for (const Testimony* told : one->told) add_told(*told);
    const bool proposed = std::any_of(one->told.begin(), one->told.end(), [](const Testimony* told) {
      return told->claim->status == ClaimStatus::proposed;
    });
    told_by_.push_back({one->question.get(), begin, told_.size(), proposed});
  }
  if (!located_) add_entries();
  find_ties();
  for (auto& side : spoken_) side.resize(origins_.size());
}

std::size_t SubjectOutlines::origin_of(const Voice& voice) {
  const auto [at, fresh] = origin_numbers_.try_emplace(voice.origin, origins_.size());
  if (fresh) origins_.push_back({voice.origin, true, voice.entry.empty() ? SourceKind::testimony : voice.kind});
  return at->second;
}

void SubjectOutlines::add_told(const Testimony& told) {
  Speaker speaker{voice_of(told), &told, nullptr, 0, {}};
  speaker.origin = origin_of(speaker.voice);
  speaker.links = tracing_.had_from(told, speaker.voice.origin);
  told_.push_back(std::move(speaker));
}

void SubjectOutlines::add_entries() {
  for (const PreparedEntry* entry : index_.beside(subject_, "").entries) {
    if (entry->timed.item.entry->subject != subject_) continue;
    Speaker speaker{voice_of(entry->timed.item, index_), nullptr, entry, 0, {}};
    speaker.origin = origin_of(speaker.voice);
    speaker.links = tracing_.of_entry(*entry->timed.item.entry);
    stated_numbers_.emplace(entry, stated_.size());
    stated_.push_back(std::move(speaker));
  }
}

/// Which origins rest on something, or may on some question, and what they may rest on.
void SubjectOutlines::find_ties() {
  std::set<Origin> tied;
  const auto tie = [&](const Origin& origin, const std::vector<LineageLink>& links) {
    if (links.empty()) return;
    tied.insert(origin);
    for (const LineageLink& link : links) tied.insert(link.to);
  };
  for (Speaker& speaker : stated_) {
    tie(speaker.voice.origin, speaker.links);
    const auto behind = tracing_.behind(speaker.voice.origin);
    tie(speaker.voice.origin, behind);
    speaker.links.insert(speaker.links.end(), behind.begin(), behind.end());
  }
  bool somebody_read = false;
  for (const Speaker& speaker : told_) {
    const Testimony& told = *speaker.told;
    tie(speaker.voice.origin, speaker.links);
    tie(speaker.voice.origin, tracing_.behind(speaker.voice.origin));
    if (told.interview != nullptr)
      for (const std::string& shown : told.interview->shown_beforehand) {
        tie(speaker.voice.origin, tracing_.was_shown(told, speaker.voice.origin, shown));
        if (!reached_.contains(shown)) reached_.emplace(shown, tracing_.reached_from(shown));
      }
    if (told.claim->basis != Basis::read) continue;
    somebody_read = true;
    tied.insert(speaker.voice.origin);
  }
  for (const Speaker& speaker : stated_)
    if (somebody_read && is_written(speaker.voice.kind)) {
      tied.insert(speaker.voice.origin);
      tie(speaker.voice.origin, tracing_.behind(speaker.voice.origin));
    }
  if (located_)
    for (const RegisterIndex::StayItem& item : index_.stays()) {
      const Origin source{Origin::Kind::source, item.stay->source};
      tied.insert(source);
      tie(source, tracing_.behind(source));
    }
  for (KnownOrigin& known : origins_) known.alone = !tied.contains(known.origin);
}

const std::vector<std::size_t>& SubjectOutlines::entries_beside(const std::string& place) {
  const auto [at, fresh] = beside_.try_emplace(place);
  if (fresh)
    for (const PreparedEntry* entry : index_.beside(subject_, place).entries)
      if (const auto known = stated_numbers_.find(entry); known != stated_numbers_.end())
        at->second.push_back(known->second);
  return at->second;
}

/// Whether what was shown to the narrator, or what it goes back to, has something to say on the question.
bool SubjectOutlines::said(const Speaker& narrator, const std::string& shown) const {
  const std::set<Origin>& reached = reached_.at(shown);
  const auto speaks = [&](const Voice& voice) {
    return voice.origin != narrator.voice.origin &&
           (reached.contains(voice.origin) || reached.contains({Origin::Kind::source, voice.interview}));
  };
  return std::any_of(comparable_.begin(), comparable_.end(), [&](const auto* one) { return speaks(one->voice); }) ||
         std::any_of(stays_.begin(), stays_.end(), speaks) ||
         std::any_of(told_.begin(), told_.end(), [&](const Speaker& one) { return speaks(one.voice); });
}

void SubjectOutlines::hear(const Speaker& speaker, Stand stand, CorroborationOutline& made) {
  if (!takes_a_side(stand)) return;
  made.spoken_against = made.spoken_against || stand == Stand::against_it;
  if (!origins_[speaker.origin].alone) {
    tied_.emplace_back(&speaker, stand);
    return;
  }
  heard_origins_.push_back(speaker.origin);
  Spoken& spoken = spoken_[side_of(stand)][speaker.origin];
  spoken.counted = spoken.counted || speaker.voice.worth == Worth::counted;
  spoken.second_hand = spoken.second_hand || speaker.voice.worth == Worth::second_hand;
  spoken.intention = spoken.intention || speaker.voice.worth == Worth::intention;
}

/// An origin that is alone, and says both, counts on neither side.
void SubjectOutlines::count_alone(CorroborationOutline& made, std::vector<std::set<SourceKind>>& kinds_for,
                                  std::vector<std::set<SourceKind>>& kinds_against) {
  std::set<SourceKind> kinds[2];
  for (const std::size_t origin : heard_origins_) {
    const Spoken said[2] = {spoken_[0][origin], spoken_[1][origin]};
    spoken_[0][origin] = spoken_[1][origin] = {};
    const bool divided = said[0].counted && said[1].counted;
    for (const int side : {0, 1}) {
      if (divided) break;
      if (said[side].counted) {
        ++(side == 0 ? made.tally.groups_for : made.tally.groups_against);
        kinds[side].insert(origins_[origin].kind);
      } else if (said[side].second_hand) {
        ++(side == 0 ? made.tally.second_hand_for : made.tally.second_hand_against);
      } else if (said[side].intention && side == 0) {
        ++made.tally.intentions_for;
      }
    }
  }
  heard_origins_.clear();
  for (const SourceKind kind : kinds[0]) kinds_for.push_back({kind});
  for (const SourceKind kind : kinds[1]) kinds_against.push_back({kind});
}

std::vector<TracedVoice> SubjectOutlines::traced(int side) const {
  std::vector<TracedVoice> found;
  for (const auto& [speaker, stand] : tied_) {
    if (side_of(stand) != side) continue;
    TracedVoice one{found.size(), &speaker->voice, {}, speaker->links};
    const Origin& origin = speaker->voice.origin;
    if (speaker->told != nullptr) {
      const Testimony& told = *speaker->told;
      const auto add = [&](const std::vector<LineageLink>& links) {
        one.behind.insert(one.behind.end(), links.begin(), links.end());
      };
      if (told.claim->basis == Basis::read)
        if (const auto alike = written_.find(stand); alike != written_.end())
          for (const Origin& read : alike->second) add(tracing_.had_read(origin, read));
      if (told.interview != nullptr)
        for (const std::string& shown : told.interview->shown_beforehand)
          if (said(*speaker, shown)) add(tracing_.was_shown(told, origin, shown));
      add(tracing_.behind(origin));
    }
    one.kinds = tracing_.kinds_behind(speaker->voice, one.behind);
    found.push_back(std::move(one));
  }
  return found;
}

CorroborationOutline SubjectOutlines::outline(const Proposition& asked) {
  const Question& question = *asked.question;
  CorroborationOutline made;
  made.put_by_testimony = !asked.told.empty();
  made.put_by_register = asked.stated;
  made.put_by_review = std::any_of(asked.told.begin(), asked.told.end(), [](const Testimony* told) {
    return told->claim->status == ClaimStatus::said_so;
  });
  tied_.clear();
  stays_.clear();
  comparable_.clear();
  written_.clear();
  if (located_)
    stays_ = stays_beside(question.claim, index_, tracing_);
  else
    for (const std::size_t number : entries_beside(question.claim.place)) {
      const Speaker& speaker = stated_[number];
      const auto stand = statements_.stand_of(*speaker.entry, question);
      if (!stand) continue;
      comparable_.push_back(&speaker);
      if (is_written(speaker.voice.kind)) written_[*stand].insert(speaker.voice.origin);
      hear(speaker, *stand, made);
    }
  std::vector<Speaker> at_stays;
  at_stays.reserve(stays_.size());
  for (const Voice& voice : stays_) {
    if (is_written(voice.kind)) written_[voice.stand].insert(voice.origin);
    const auto known = origin_numbers_.find(voice.origin);
    at_stays.push_back({voice, nullptr, nullptr, known != origin_numbers_.end() ? known->second : 0,
                        tracing_.behind(voice.origin)});
    if (!takes_a_side(voice.stand)) continue;
    made.spoken_against = made.spoken_against || voice.stand == Stand::against_it;
    tied_.emplace_back(&at_stays.back(), voice.stand);
  }
  for (const ToldBy& by : told_by_) {
    const Stand stand = statements_.stand_of(*by.question, question);
    if (!takes_a_side(stand)) continue;
    made.with_proposal = made.with_proposal || by.proposed;
    for (std::size_t i = by.first; i < by.past; ++i) hear(told_[i], stand, made);
  }
  std::vector<std::set<SourceKind>> kinds_for, kinds_against;
  count_alone(made, kinds_for, kinds_against);
  if (!tied_.empty()) {
    // As in a full answer: what rests on what is found in the order of voices.
    std::stable_sort(tied_.begin(), tied_.end(), [](const auto& a, const auto& b) {
      const Voice &one = a.first->voice, &other = b.first->voice;
      return std::tie(one.origin, one.entry, one.interview) < std::tie(other.origin, other.entry, other.interview);
    });
    const auto in_favour = traced(0), against = traced(1);
    const GroupedSide sides[2] = {group_side(in_favour, against), group_side(against, in_favour)};
    Tally& tally = made.tally;
    tally.groups_for += sides[0].tally.groups;
    tally.groups_against += sides[1].tally.groups;
    tally.second_hand_for += sides[0].tally.second_hand;
    tally.second_hand_against += sides[1].tally.second_hand;
    tally.intentions_for += sides[0].tally.intentions;
    for (const int side : {0, 1})
      for (const LineageGroup& group : sides[side].groups)
        if (!group.kinds.empty())
          (side == 0 ? kinds_for : kinds_against).emplace_back(group.kinds.begin(), group.kinds.end());
  }
  made.tally.kinds_for = most_kinds(kinds_for);
  made.tally.kinds_against = most_kinds(kinds_against);
  made.grade = table_.grade(made.tally).grade;
  made.dissent = made.spoken_against && made.grade != "contested" && made.grade != "contradicted";
  return made;
}

std::vector<Voice> stays_beside(const Claim& question, const RegisterIndex& index, const Tracing& tracing) {
  std::vector<Voice> voices;
  for (const Comparison& comparison : compare_whereabouts(question, index, tracing.service(question.subject))) {
    const auto* stay = index.find_stay(comparison.entry);
    const Source* source = index.source(stay->stay->source);
    Voice voice;
    voice.entry = comparison.entry;
    voice.origin = {Origin::Kind::source, stay->stay->source};
    voice.kind = source != nullptr ? source->kind : SourceKind::log;
    voice.stand = comparison.outcome == Outcome::agrees       ? Stand::for_it
                  : comparison.outcome == Outcome::conflicts  ? Stand::against_it
                  : comparison.outcome == Outcome::compatible ? Stand::consistent
                                                              : Stand::cannot_tell;
    voices.push_back(std::move(voice));
  }
  return voices;
}

}  // namespace witnessmark
