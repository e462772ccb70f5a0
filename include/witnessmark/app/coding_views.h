#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/report.h"
#include "witnessmark/model/access.h"
#include "witnessmark/model/authority_list.h"
#include "witnessmark/model/claim_record.h"
#include "witnessmark/model/entry.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/model/transcript.h"

namespace witnessmark {

// What a coder has before them: values made from the site file, for a screen or for prompts.

/// One interview and how far its coding has come.
struct InterviewLine {
  std::string key;
  std::string narrators;  ///< As the releases let them be named, joined by commas.
  std::string date;       ///< EDTF, "-" when undated.
  std::string place;
  Standing standing = Standing::draft;
  std::optional<Millisecond> length;
  Withheld withheld = Withheld::none;  ///< Why it is not shown; it may be opened for coding.
  bool opened = false;                 ///< Withheld, and opened by the coder.
  bool has_transcript = false;
  std::array<std::int64_t, 4> claims{};  ///< By ClaimStatus.
  std::int64_t code_points = 0;          ///< Of the reading text.
  std::int64_t read = 0;                 ///< Of these, in passages somebody has marked as read.

  std::int64_t all_claims() const { return claims[0] + claims[1] + claims[2] + claims[3]; }
  std::int64_t decided() const { return claims[1] + claims[2] + claims[3]; }
};

/// A claim in a list.
struct ClaimLine {
  Id id;
  std::string interview;
  std::string speaker;  ///< As the release lets the person be named.
  std::vector<CodePointRange> quotes;
  std::optional<TimeAt> at;  ///< Of the main quote.
  Statement statement = Statement::present;
  /// Names and words, marked where they are carried from the talk before; empty when there are none.
  std::string subject, place, number, when;
  /// Of the main quote, shortened where it is long; empty where nothing of it may be shown.
  std::string words;
  ClaimStatus status = ClaimStatus::proposed;
  Polarity polarity = Polarity::affirmed;
  std::optional<Outcome> outcome;  ///< The foremost one; nothing before it was weighed.
  std::optional<YearRange> recall_distance;
  bool decided = false;
  bool by_coder = false;
  bool withdrawn = false;
  bool gone = false;
  bool lost = false;
  bool proposed_otherwise = false;
  std::string_view needs;  ///< what_it_needs() before it can be said so; empty when nothing.
  int rank = 0;
  Withheld withheld = Withheld::none;  ///< A restricted passage: nothing of it is shown.
  bool operator==(const ClaimLine&) const = default;
};

/// Which claims a list shows. What is empty does not narrow.
struct ClaimQuery {
  std::string interview;
  std::string speaker;  ///< Part of a name.
  std::string subject;  ///< Key of the list of equipment; what lies within it counts.
  std::string place;    ///< Key of the list of places; what lies within it counts.
  std::optional<Statement> statement;
  std::optional<ClaimStatus> status;
  std::optional<Outcome> outcome;
  std::optional<std::int64_t> recall_least;  ///< Told at least so many years after.
  bool operator==(const ClaimQuery&) const = default;
  bool narrows() const;
};

/// A part of such a list, in review order.
struct ClaimPage {
  std::size_t first = 0;  ///< Number of its first line in the whole list.
  std::size_t total = 0;
  std::vector<ClaimLine> lines;
  std::string withheld;  ///< What was not shown, counted.
};

struct SentenceLine {
  CodePointRange range;
  std::optional<TimeAt> at;
};

/// One turn of a transcript.
struct TurnLine {
  std::string speaker;  ///< Label as written.
  SpeakerRole role = SpeakerRole::unknown;
  CodePointRange range;
  std::string text;  ///< As in the reading text: make it visible() before it is shown.
  std::optional<TimeAt> at;
  std::vector<SentenceLine> sentences;
  bool read = false;  ///< All of it in passages marked as read.
};

/// A transcript opened for coding.
struct TranscriptPage {
  InterviewLine interview;
  int version = 1;
  std::string recording;  ///< Locator of the recording.
  std::vector<TurnLine> turns;
  std::vector<ClaimLine> claims;  ///< By position.
  std::vector<RestrictedPassage> passages;
  bool hides_passages = false;       ///< Some are withheld: blocks stand in the place of their letters.
  std::vector<std::string> remarks;  ///< On its coding: notes on the interview.
};

/// An entry of the register beside a claim.
struct EvidenceLine {
  Comparison comparison;
  std::string statement;  ///< "ends · Cargo derrick · Foredeck".
  std::string source;     ///< Title.
  std::string kind;       ///< "log", "photograph".
  std::string reference;  ///< Where it is kept.
  std::string when;
  std::optional<Period> period;
  std::string link;  ///< What a coder found of the pair: "linked", "ruled out"; empty.
};

/// Words it was read from.
struct CueLine {
  MentionKind kind = MentionKind::cue;
  std::string words, value, rule;
};

/// A note somebody wrote.
struct NoteLine {
  Id id;
  std::string by, when, text;
};

/// When the register alone lets a fixture have come and gone.
struct BoundLine {
  std::string label;  ///< "bounds", with a question mark where the register contradicts itself.
  std::string place;
  Period period;
};

/// One claim in full.
struct ClaimPageFull {
  ClaimRecord record;
  ClaimLine line;
  std::string before, after;  ///< The talk around the main quote.
  std::string meaning;        ///< Its time in words: "September to November 1962".
  std::vector<EvidenceLine> evidence;
  std::vector<BoundLine> bounds;
  std::vector<CueLine> cues;
  std::vector<NoteLine> notes;
  std::string checked;               ///< "against the recording, by Anna, 1998-03-02"; empty.
  std::vector<std::string> history;  ///< One line an act on it, oldest first.
};

enum class ReportKind {
  said_about,
  search,
  contradictions,
  open_questions,
  configuration,
  journal,
  differences,
  cautions,
  entry
};

/// A term of a list that bears what was typed in one of its names.
struct TermMatch {
  std::string key, name, by;  ///< `by`: the name that matched, when another than the preferred one.
};

/// A date as typed, and what it means.
struct TypedDate {
  ClaimTime when;
  std::string meaning;  ///< For people.
};

}  // namespace witnessmark
