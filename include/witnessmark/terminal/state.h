#pragma once
#include <deque>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "witnessmark/app/coding_views.h"
#include "witnessmark/terminal/effects.h"
#include "witnessmark/terminal/picture.h"
#include "witnessmark/terminal/view.h"

namespace witnessmark {

// Where one can be. Each holds what was loaded for it: windows on the site file, never all of it.

struct InterviewsPlace {
  std::size_t at = 0;
};

/// Claims of the site in review order, or those of a query.
struct ClaimsPlace {
  ClaimQuery query;
  ClaimPage page;
  std::size_t at = 0;  ///< Number in the whole list.
};

/// A sentence of the talk, or a turn without sentences.
struct SentencePlace {
  std::size_t turn = 0;
  CodePointRange range;
  std::optional<TimeAt> at;
};

struct TranscriptPlace {
  std::string interview;
  std::shared_ptr<const TranscriptPage> page;
  std::vector<SentencePlace> sentences;
  std::size_t at = 0;                      ///< Index into sentences.
  std::optional<std::size_t> picked_from;  ///< Sentences from here to `at` are selected.
  std::size_t claim = 0;                   ///< Index into the page's claims.
  bool on_claims = false;                  ///< The keys go to the list of claims.
  std::optional<CodePoint> wanted;         ///< Go there once it is loaded.
};

struct ClaimPlace {
  Id id = {};
  std::shared_ptr<const ClaimPageFull> page = nullptr;
  int scroll = 0;
  bool to_correct = false;  ///< The form is opened once it is loaded.
};

/// A claim being corrected or added, or a query being made, field by field.
struct FormPlace {
  enum class Purpose { correct, add, filter };
  Purpose purpose = Purpose::correct;
  Claim draft;
  Claim original;                        ///< What draft was when the form was opened to correct it.
  std::string subject_name, place_name;  ///< For people, of draft or query.
  ClaimQuery query;
  std::size_t at = 0;
  std::string quote;
  bool changed = false;  ///< Something was filled in that is not saved.
  bool leaving = false;  ///< Escape, q or 1 was pressed once over changes.
};

struct ReportPlace {
  ReportKind kind = ReportKind::said_about;
  std::string subject;
  std::shared_ptr<const Report> report;
  std::size_t at = 0;
};

struct KeysPlace {
  int scroll = 0;
};

using Place = std::variant<InterviewsPlace, ClaimsPlace, TranscriptPlace, ClaimPlace, FormPlace, ReportPlace,
                           KeysPlace>;

/// What is asked for in the line that is being typed.
enum class Ask {
  why,  ///< Of the pending decision.
  search,
  go_to_time,
  said_about,
  configuration,
  open_withheld,  ///< The name of the interview has to be typed.
  field,
  decide_all,  ///< A letter for the decision on all that are shown.
  note,
  checked,
  restrict,
  lift,
  entry,
  link,
  rule_out
};

struct Prompt {
  Ask ask = Ask::search;
  std::string label;
  std::string text;
  std::size_t cursor = 0;          ///< Byte offset.
  std::string now;                 ///< What the field holds; an empty answer keeps it.
  std::vector<TermMatch> matches;  ///< For names of a list.
  std::optional<std::size_t> chosen;        ///< Of these; none until something is typed or moved to.
  std::optional<AuthorityList::Kind> list;  ///< Names of this list are offered.
  bool reads_date = false;
  std::string meaning, fault;  ///< What the text means so far.
  std::optional<TypedDate> date;
  Decide pending;           ///< The decision whose reason is asked for.
  std::optional<Id> claim;  ///< What it is about.
  std::string interview;
  CodePointRange range;
};

/// All that the screens know.
struct State {
  Size size;
  std::string site, coder;
  bool can_edit = true;
  std::string why_reading;
  bool blind = false;     ///< Proposals are hidden.
  bool can_play = false;  ///< A player was named.
  std::vector<InterviewLine> interviews;
  /// Where one came through; the last is shown. Never empty. A deque, so that a place stays where it is while
  /// another is opened from it.
  std::deque<Place> places = {InterviewsPlace{}};
  std::optional<Prompt> prompt;
  std::string message;
  Role message_role = Role::plain;
  bool refused = false;         ///< What the last key asked for was not understood or could not be done.
  std::optional<Decide> last;  ///< The last decision, to be made again on another claim.
  bool finished = false;

  Place& place() { return places.back(); }
  const Place& place() const { return places.back(); }
};

/// The form with changes that are not saved, shown or under the screens opened from it; nothing when there is
/// none.
const FormPlace* unsaved_form(const State& state);

/// Whether a claim is only proposed, and the coder works without seeing what was proposed.
bool hidden(const State& state, const ClaimLine& claim);

/// What follows from an event: the new state, and what is to be done.
struct Update {
  State state;
  std::vector<Effect> effects;
};

/// Nothing but its arguments enters into it.
Update update(State state, const Event& event);

/// What is loaded to begin with: the first screen, or where a coder stood.
Update begin(State state, std::string_view stood);

/// Where one stands, for begin() another time. One line a place.
std::string standing_text(const State& state);

View view(const State& state);

}  // namespace witnessmark
