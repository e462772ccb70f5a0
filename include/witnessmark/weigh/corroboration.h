#pragma once
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/entry.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/grades.h"
#include "witnessmark/weigh/lineage.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// A claim that may be heard, and what is known of who tells it. The claim must outlive what is made of it.
struct Testimony {
  const Claim* claim = nullptr;
  const Interview* interview = nullptr;
  std::string person;                          ///< Key of who speaks; empty when not known.
  Answer in_service = Answer::cannot_tell;     ///< Was the speaker there at the time?
};

/// How a statement stands to a question.
enum class Stand { for_it, against_it, consistent, cannot_tell };
std::string_view to_string(Stand stand);

/// Whether a voice counts, and if not, why.
enum class Worth {
  counted,
  second_hand,   ///< Told or read, or the narrator was surely not there: counted apart.
  intention,     ///< An order or a drawing: that it was meant.
  led,           ///< The interviewer supplied the fact.
  inferred,      ///< The narrator reasons, and says so.
  guess,         ///< The narrator guesses, and says so.
  circular       ///< The entry is dated or identified by the very thing.
};
std::string_view to_string(Worth worth);

/// One statement that speaks to a question.
struct Voice {
  Id claim;                    ///< Nil for an entry or a stay.
  std::string entry;           ///< Key of an entry or a stay; empty for a claim.
  Origin origin;               ///< The narrator, or the source of the entry.
  std::string interview;       ///< Of a claim.
  SourceKind kind = SourceKind::testimony;
  Stand stand = Stand::for_it;
  Worth worth = Worth::counted;
};

/// Voices that go back to one another, and why: they count once.
struct LineageGroup {
  std::vector<std::size_t> voices;    ///< Places in Corroboration::voices.
  std::vector<LineageLink> links;
  std::vector<SourceKind> kinds;      ///< Of what it goes back to; empty when it does not count in full.
  bool divided = false;               ///< Speaks on both sides, and so counts on neither.
};

/// A question put by a claim or an entry, and everything that speaks to it.
struct Corroboration {
  Claim question;              ///< Nobody's: only statement, polarity, subject, place, time, number and property are set.
  bool put_by_testimony = false;
  bool put_by_register = false;
  bool put_by_review = false;  ///< By a claim a coder found to be said.
  std::vector<Voice> voices;   ///< For, against, consistent, cannot tell; each by origin.
  std::vector<LineageGroup> groups;   ///< Of the voices for and against, in order of their first voice.
  Tally tally;
  std::string grade;           ///< By the table.
  std::string meaning;         ///< What the table says of it.

  /// Whether anything speaks against a statement that is not itself called contested: to be shown beside the grade.
  bool dissent() const;
};

/// "ends derrick@foredeck 1957-03: corroborated (for 2 of 2, against 0 of 0)", for tests.
std::string dump(const Corroboration& answer);

/// What a question comes to, without who speaks to it.
struct CorroborationOutline {
  std::size_t number = 0;        ///< For Corroborator::answer().
  bool put_by_testimony = false;
  bool put_by_register = false;
  bool put_by_review = false;
  bool with_proposal = false;    ///< A claim nobody has reviewed puts it, or speaks for or against it.
  bool spoken_against = false;   ///< By anybody, counted or not.
  bool dissent = false;          ///< As of the answer.
  Tally tally;
  std::string grade;
};

/// Answers each question that a claim or a dated entry puts: who and what says so, who and what says otherwise, how many
/// of them are independent, and the grade the table gives. Statements of one meaning are one question; one without a place is
/// taken to be of the only place the register has for its subject.
///
/// Not independent, and so one group: sources that derive from one another, through any number of steps and through interviews;
/// an entry and what its date, identification or caption rests on; the sessions of one narrator; narrators interviewed together;
/// a narrator and the one named as having told it; a narrator and what they read or were shown that speaks to the question.
/// A group that speaks on both sides counts on neither. Its kind is that of what it goes back to: a book that retells an interview
/// is testimony. An entry dated or identified by the very thing does not count.
class Corroborator {
 public:
  /// Everything given must outlive it.
  Corroborator(const Register& evidence, const RegisterIndex& index, const InterviewFile& people,
               std::vector<Testimony> testimony, const GradeTable& table);
  ~Corroborator();
  Corroborator(Corroborator&&) noexcept;

  /// Every question, by subject in list order, place, statement and time.
  std::vector<Corroboration> all() const;

  /// The same in outline: much quicker where many speak to one question, and small.
  std::vector<CorroborationOutline> outlines() const;
  /// The answer of which one of outlines() is the outline.
  Corroboration answer(const CorroborationOutline& outline) const;

  /// One question: the statement of the claim, whoever made it.
  Corroboration ask(const Claim& claim) const;

 private:
  class Work;
  std::unique_ptr<Work> work_;
};

}  // namespace witnessmark
