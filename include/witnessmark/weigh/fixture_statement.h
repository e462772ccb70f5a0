#pragma once
#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/weigh/episode.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// Where a statement stands: an entry or a stay of the register, or a claim.
struct StatementKey {
  enum class Kind { entry, stay, claim };
  Kind kind = Kind::entry;
  std::string key;  ///< Of the entry or stay; of a claim its id as text.
  auto operator<=>(const StatementKey&) const = default;
};
std::string_view to_string(StatementKey::Kind kind);

/// On what footing a statement is taken up. Reviewed claims come first; proposals are only ever a preview.
enum class Footing { evidence, reviewed, proposed };
std::string_view to_string(Footing footing);

/// Why a statement puts no limit on when a fixture came and went.
enum class NoLimit {
  none,              ///< It does.
  undated,           ///< It says nothing of any day.
  intention,         ///< An order or a drawing shows what was meant.
  identification,    ///< That it shows this site, or this thing, is less than certain.
  spot_not_visible,  ///< Not in a picture that does not surely show the spot.
  rests_on_itself,   ///< Dated or identified by the very thing: it cannot then date it.
  event,             ///< Something happened to it: too little to contradict anybody, but see Renewal.
  property,          ///< A property came or went, not the thing; but see Renewal.
  denial             ///< Denies a number, a property or an undated change.
};
/// "no date", "an intention" …
std::string_view in_words(NoLimit why);

/// A claim with the facts of its telling, as taken up for weighing.
struct HeldClaim {
  Claim claim;
  Footing footing = Footing::proposed;  ///< reviewed or proposed.
  Recall recall;
};

/// What one statement says of the coming and going of a fixture at a place.
struct FixtureStatement {
  StatementKey key;
  Footing footing = Footing::evidence;
  std::string source;  ///< Key of the source, or of the interview.
  std::vector<std::string>
      rests_on;  ///< Keys of all sources and interviews it or its date rests on, its own included.
  std::string subject;
  std::string place;  ///< As stated; empty when none was, or when it was carried over from the talk.
  Statement statement = Statement::present;  ///< With a denial or a count of none taken into it.
  Reading reading = Reading::within;
  bool denied = false;           ///< begins or ends on other days than these.
  /// One of these. Throughout: a low above the high where no day is certain. Also of an event, or a change of a property,
  /// that is surely of the thing.
  std::vector<DaySpan> days;
  std::optional<Period> period;  ///< As read; nothing when undated.
  std::string attribute;         ///< "colour: buff".
  std::optional<Quantity> number;
  NoLimit no_limit = NoLimit::none;
  std::vector<std::string> over;  ///< Entries whose trace lies beneath this one's.
  bool may_show_return = false;  ///< An entry of a record of the time (Renewal).
  int rank = 0;                   ///< Kind of source, for presentation.
};

/// The statements of the properties of things (a colour, a type): a value given, lost or seen, as the coming,
/// going or being there of that value. A seen value that is denied was not there; their `attribute` says
/// which value. In the order of fixture_statements.
std::vector<FixtureStatement> property_statements(const RegisterIndex& evidence,
                                                  const std::vector<HeldClaim>& claims);

/// Those of these entries (numbers of RegisterIndex::items()) that are of a fixture, in the order of fixture_statements.
std::vector<FixtureStatement> entry_statements(const RegisterIndex& evidence, const std::vector<std::size_t>& items);

/// Every statement of a fixture among entries and claims, in the order they are presented in: entries before
/// reviewed claims before proposals; entries by kind of source (log, photograph, physical trace,
/// correspondence, object record, order, drawing, publication, testimony) and identification, claims by how
/// the narrator knows (first-hand, unstated, inferred, told, read) and recall distance, shortest first; then
/// by first day and key. The order is for reading only: it decides nothing (common practice, no source).
/// Claims taken back in the same breath and statements without a subject are not among them.
std::vector<FixtureStatement> fixture_statements(const RegisterIndex& evidence,
                                                 const std::vector<HeldClaim>& claims);

}  // namespace witnessmark
