// An interview from beginning to end. Each utterance is annotated once; each of its sentences is read in the
// light of the focus: what was last spoken of, the date last said, the question just asked. The interviewer's
// sentences change the focus and set the question, the narrator's make claims. Drafts become claims here: one
// for each meaning of a name, with quotes, mentions, a reason in words and a rank.
#include "language/claims/propose.h"

#include <algorithm>

#include "language/claims/answers/completion.h"
#include "language/claims/answers/exchange.h"
#include "language/claims/answers/opening.h"
#include "language/claims/from_talk.h"
#include "language/claims/last_sentence.h"
#include "language/claims/quotes.h"
#include "language/claims/site_names.h"
#include "language/claims/turn_dates.h"
#include "language/claims/write_claim.h"
#include "witnessmark/language/claims.h"

namespace witnessmark {
namespace claims {
namespace {

/// An answer to when somebody came goes on for so many sentences.
constexpr int kAnswerReach = 4;

/// Of what rules read and no stretch is quoted like: coders took about one in four of what rules read for a
/// claim.
constexpr double kOddsOfRules = -1;

/// Sentences in which a date said dates what came or went, too.
constexpr int kNearDate = 3;

/// A picture or writing named so many sentences ago is still what "you can see" and "he's put" are of.
constexpr int kSourceReach = 4;

class InterviewReader {
 public:
  InterviewReader(const ReadingContext& context, const Transcript& transcript,
                  TraitObserver* observer = nullptr)
      : context_(context),
        transcript_(transcript),
        index_(transcript.reading_text),
        positions_{&index_},
        words_(context.language->data().words),
        finders_(context.names ? context.names->data().finders : own_names_.emplace(context).data().finders),
        annotator_(*context.language, finders_),
        heads_(*finders_.heads),
        talkers_(context, finders_),
        dates_(context, transcript, index_, talkers_),
        judge_(context.language->data().weights, observer) {
    if (finders_.equipment != context.equipment || finders_.places != context.places ||
        (finders_.persons ? finders_.persons->list().terms().size() : 0) != context.persons.size())
      throw std::logic_error("the names are of other lists than the reading context");
    labelled_ = std::any_of(transcript.utterances.begin(), transcript.utterances.end(),
                            [](const Utterance& u) { return !u.speaker.empty(); });
  }

  Proposals run(const std::vector<Sentence>& sentences) {
    // More than most talk has; what is not used is never touched.
    constexpr std::size_t kBytesAClaim = 200, kBytesAMention = 32, kMost = 1U << 24;
    const std::size_t bytes = std::min(transcript_.reading_text.size(), kMost);
    proposals_.claims.reserve(bytes / kBytesAClaim);
    proposals_.mentions.reserve(bytes / kBytesAMention);
    std::size_t s = 0;
    for (std::size_t u = 0; u < transcript_.utterances.size(); ++u) {
      while (s < sentences.size() && sentences[s].utterance < u) ++s;
      std::size_t past = s;
      while (past < sentences.size() && sentences[past].utterance == u) ++past;
      utterance(u, std::span(sentences).subspan(s, past - s));
      s = past;
    }
    number_ordinals(proposals_.claims);
    return std::move(proposals_);
  }

 private:
  std::string place_key(const Referent& place) const {
    if (place.kind != ThingKind::place) return {};
    return finders_.places->list().terms()[place.terms.front()].key;
  }

  void annotate(std::size_t u) {
    const Utterance& utterance = transcript_.utterances[u];
    const ByteRange bytes = index_.to_bytes(utterance.range);
    const std::string_view text =
        std::string_view(transcript_.reading_text)
            .substr(static_cast<std::size_t>(bytes.begin.value), static_cast<std::size_t>(bytes.length()));
    passage_.base_byte = bytes.begin.value;
    passage_.base_code_point = utterance.range.begin.value;
    passage_.ascii = bytes.length() == utterance.range.length();
    std::vector<ByteRange> remarks;
    while (remark_ < transcript_.remarks.size() &&
           transcript_.remarks[remark_].range.end <= utterance.range.begin) {
      ++remark_;
    }
    for (std::size_t r = remark_;
         r < transcript_.remarks.size() && transcript_.remarks[r].range.begin < utterance.range.end; ++r) {
      const ByteRange inside = index_.to_bytes(transcript_.remarks[r].range);
      remarks.push_back({{inside.begin.value - bytes.begin.value}, {inside.end.value - bytes.begin.value}});
    }
    std::vector<DateExpression> dates = dates_.take(u);
    std::vector<ByteRange> date_bytes;
    for (const DateExpression& date : dates) {
      const CodePoint base = utterance.range.begin;
      date_bytes.push_back({{byte_in_passage({base.value + date.range.begin.value})},
                            {byte_in_passage({base.value + date.range.end.value})}});
    }
    annotator_.annotate(text, remarks, std::move(dates), date_bytes, heads_, passage_);
  }

  /// Byte of the passage's text where a code point of the reading text begins.
  std::int64_t byte_in_passage(CodePoint position) const {
    return passage_.ascii ? position.value - passage_.base_code_point
                          : index_.to_byte(position).value - passage_.base_byte;
  }

  void utterance(std::size_t u, std::span<const Sentence> sentences) {
    const Utterance& utterance = transcript_.utterances[u];
    const SpeakerIdentity& speaker = talkers_.at(utterance.speaker);
    annotate(u);
    const std::size_t first_mention = proposals_.mentions.size();
    collect_mentions(passage_, positions_, finders_, words_, proposals_.mentions);
    const bool interviewer = speaker.role == SpeakerRole::interviewer;
    if (interviewer) {
      asked_.answered = true;
      focus_.date_age += 1;
      focus_.begin_exchange();
    }
    const std::optional<Referent> narrator = talkers_.as_referent(speaker);
    std::uint32_t token = 0;
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    for (const Sentence& sentence : sentences) {
      const std::int64_t begin = byte_in_passage(sentence.range.begin);
      const std::int64_t end = byte_in_passage(sentence.range.end);
      while (token < count && passage_.tokens[token].begin < begin) ++token;
      Span span{token, token};
      while (span.past < count && passage_.tokens[span.past].begin < end) ++span.past;
      token = span.past;
      if (span.empty()) continue;
      read(sentence, span, interviewer, utterance, speaker, narrator);
    }
    mention_order_.put_in_order(proposals_.mentions, first_mention);
  }

  void read(const Sentence& sentence, Span span, bool interviewer, const Utterance& utterance,
            const SpeakerIdentity& speaker, const std::optional<Referent>& narrator) {
    SentenceReading reading = read_sentence(passage_, words_, span);
    source_age_ = passage_.names_source(span) ? 0 : std::min(source_age_ + 1, kSourceReach + 1);
    reading.of_source = source_age_ <= kSourceReach;
    const bool asks = interviewer || (!labelled_ && reading.question);
    StatementContext context{passage_, words_, finders_, reading, positions_, &context_.policy, focus_, asks};
    if (dates_.today()) context.today = &*dates_.today();
    if (narrator && !asks) context.narrator = &*narrator;
    collect_actions(reading, context, proposals_.mentions);
    if (asks) {
      if (!interviewer) focus_.begin_exchange();
      if (context_.by_weights) judge_.interviewer(context);
      ask(context, sentence.range, asked_);
      focus_.bring_up_to_date(context, asked_.drafts);
      if (asked_.place) {
        focus_.place = asked_.place;
        focus_.place_sentence = focus_.sentences;
      }
      if (asked_.place) heads_.go_to(place_key(*asked_.place));
      return;
    }
    const bool first = !asked_.answered;
    if (first) asked_age_ = 0;
    context.asked_what = first && !asked_.yes_no && !asked_.when && !asked_.where && !asked_.how_many;
    context.answering = asked_age_ < 3;
    context.asked_when = first && asked_.when;
    context.supposing = context.answering && asked_.supposes;
    context.asked_leaving = context.answering && asked_.when && asked_.journey && asked_.journey->leaving;
    context.inventory = asked_.inventory && asked_age_ < (asked_.yes_no ? 3 : 12);
    heads_.go_to(asked_.place   ? place_key(*asked_.place)
                 : focus_.place ? place_key(*focus_.place)
                                : std::string());
    if (asked_.place && (asked_age_ < 2 || context.inventory)) context.asked_place = &*asked_.place;
    const bool answers_no = !labelled_ && opens_with_no(context);
    const Denial denial = answers_no ? Denial::of_what_was_said : only_denies(context);
    if (denial != Denial::none) last_.deny(sentence.range, denial);
    std::vector<Draft> drafts = read_statements(context);
    // "Nineteen thirty-five. I was four. It must have been August.": when is told in more than one sentence.
    const bool goes_on = ((asked_.journey && asked_.when) || !asked_.event.empty()) &&
                         asked_age_ < kAnswerReach && only_dates(context);
    const bool qualifies = !first && last_.qualify(context, sentence.range);
    const bool only_adds = qualifies || last_.narrow(context, sentence.range);
    if (only_adds) {
      drafts.clear();
    } else if (first || goes_on) {
      drafts = answer(context, asked_, std::move(drafts));
    }
    if (first) {
      // "Oh, well." does not yet answer.
      const bool empty =
          drafts.empty() && ((span.past - span.first <= 2 && opening_of(context) == Opening::other) ||
                             (reading.question && span.past - span.first <= 4));
      if (!empty && !leaves_open(context, drafts)) asked_.answered = true;
    }
    const TalkTraits asked = asked_traits();
    ++asked_age_;
    const bool of_several = speak_of_several(reading, drafts);
    for (Draft& draft : drafts) {
      if (draft.quotes.empty()) draft.quotes = {quote_of(context, draft, sentence.range, of_several)};
      carry(context, {focus_, dates_.served(), dates_.birth(), asked_}, draft);
    }
    if (drafts.empty() && !only_adds) last_.round_off(sentence.range, span);
    const Writer writer{context_, finders_, utterance, speaker};
    if (!first) last_.unsay(context, sentence.range);
    if (!first) last_.take_back(context, drafts);
    if (!qualifies) last_.begin(sentence.range, span);
    write(context, asked, sentence, drafts, writer, only_adds);
    focus_.bring_up_to_date(context, std::move(drafts));
    // The narrator goes on to another place.
    if (asked_.place && focus_.place && focus_.place_sentence == focus_.sentences)
      asked_.place = focus_.place;
  }

  /// "Not in 1950. It was later.", "There was none?" "Yes. There was.": more of an answer may follow.
  bool leaves_open(const StatementContext& context, const std::vector<Draft>& drafts) const {
    if (asked_.yes_no) return drafts.empty() && asked_.put_negative && opening_of(context) == Opening::yes;
    return !drafts.empty() && !pieces_of(context).ruled_out.empty() && context.reading.predicates.empty() &&
           std::all_of(drafts.begin(), drafts.end(), [](const Draft& draft) {
             return draft.statement == Statement::absent || draft.polarity == Polarity::denied;
           });
  }

  void settle(const StatementContext& context, Draft& draft) const {
    settle_basis(context, draft);
    carry(context, {focus_, dates_.served(), dates_.birth(), asked_}, draft);
  }

  /// What was asked, as traits tell of it.
  TalkTraits asked_traits() const {
    TalkTraits traits;
    traits.answer_age = asked_age_;
    traits.yes_no = asked_.yes_no;
    traits.when = asked_.when;
    traits.where = asked_.where;
    traits.how_many = asked_.how_many;
    traits.of_people = asked_.of_people;
    traits.inventory = asked_.inventory;
    return traits;
  }

  /// What rules read but the weights doubt is not written. What the weights find besides is; it does not
  /// change what the talk is about.
  void write(const StatementContext& context, const TalkTraits& asked, const Sentence& sentence,
             std::vector<Draft>& drafts, const Writer& writer, bool only_adds) {
    Judgement judgement;
    if (context_.by_weights) judgement = judge_.narrator(context, asked, sentence.range, drafts);
    if (only_adds) judgement.found.clear();
    for (std::size_t d = 0; d < drafts.size(); ++d) {
      drafts[d].odds.reset();
      if (!judgement.odds.empty()) drafts[d].odds = judgement.odds[d].value_or(kOddsOfRules);
      if (!judgement.quotes.empty() && judgement.quotes[d]) drafts[d].quotes.front() = *judgement.quotes[d];
      settle_basis(context, drafts[d]);
      if (judgement.doubted.empty() || !judgement.doubted[d]) write(drafts[d], writer);
    }
    std::vector<Stated> stated;
    for (const Judged& judged : judgement.found) {
      std::vector<Draft> found = drafts_of(context, judged.finding);
      if (found.empty()) continue;
      const Stated one = stated_by(found.front());
      if (!passage_.is_listed(judged.finding.thing) && of_one_thing(one.statement) &&
          (std::find(stated.begin(), stated.end(), one) != stated.end() ||
           likelier_by_rule(drafts, one, judged.odds)))
        continue;
      stated.push_back(one);
      for (Draft& draft : found) {
        settle(context, draft);
        // The date of talk some way before is that of a state more often than of what changed it.
        const bool change = is_change(draft.statement);
        if (change && draft.date && draft.date->carried && focus_.date_age > kNearDate) {
          draft.date.reset();
          draft.date_led = false;
        }
        draft.odds = judged.odds;
        draft.by_weights = true;
        draft.because.push_back(reason_of(judged));
        write(draft, writer);
      }
    }
  }

  /// In which words what is stated.
  struct Stated {
    CodePointRange quote;
    Statement statement;
    bool operator==(const Stated&) const = default;
  };
  static Stated stated_by(const Draft& draft) { return {draft.quotes.front(), draft.statement}; }

  /// What something was like, what happened to it, where somebody was, that something came, the same words
  /// say of one thing; the likeliest comes first. There can have been many things in one place, and many can
  /// go.
  static bool of_one_thing(Statement statement) {
    return statement == Statement::attribute || statement == Statement::happened ||
           statement == Statement::located || statement == Statement::begins;
  }
  static bool likelier_by_rule(const std::vector<Draft>& drafts, const Stated& one, double odds) {
    return std::any_of(drafts.begin(), drafts.end(), [&](const Draft& draft) {
      return stated_by(draft) == one && draft.odds && *draft.odds >= odds;
    });
  }

  void write(const Draft& draft, const Writer& writer) {
    writer.write(draft, proposals_.claims);
    last_.stated(draft.agent);
  }

  static std::string reason_of(const Judged& judged) {
    std::string reason = "put like what coders took for " + std::string(to_string(judged.finding.statement));
    for (std::size_t w = 0; w < judged.telling.size(); ++w)
      reason += (w == 0 ? " ('" : ", '") + judged.telling[w] + "'";
    return judged.telling.empty() ? reason : reason + ")";
  }

  const ReadingContext& context_;
  const Transcript& transcript_;
  CodePointIndex index_;
  Positions positions_;
  const Words& words_;
  std::optional<SiteNames> own_names_;
  const Finders& finders_;
  Annotator annotator_;
  HeadMemory heads_;
  Talkers talkers_;
  TurnDates dates_;
  Passage passage_;
  Focus focus_;
  Asked asked_;
  int asked_age_ = 0;
  int source_age_ = kSourceReach + 1;  ///< Sentences since a picture or a writing was named.
  bool labelled_ = false;
  std::size_t remark_ = 0;
  Judge judge_;
  MentionOrder mention_order_;
  Proposals proposals_;
  LastSentence last_{proposals_.claims};
};

}  // namespace

void observe_traits(const ReadingContext& context, const Transcript& transcript,
                    const std::vector<Sentence>& sentences, TraitObserver& observer) {
  InterviewReader(context, transcript, &observer).run(sentences);
}

}  // namespace claims

Proposals read_claims(const ReadingContext& context, const Transcript& transcript,
                      const std::vector<Sentence>& sentences) {
  if (!context.language || !context.places || !context.equipment)
    throw std::logic_error("a reading context needs a language and both finders");
  return claims::InterviewReader(context, transcript).run(sentences);
}

std::vector<Claim> propose_claims(const ReadingContext& context, const Transcript& transcript,
                                  const std::vector<Sentence>& sentences) {
  return read_claims(context, transcript, sentences).claims;
}

}  // namespace witnessmark
