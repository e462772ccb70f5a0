#pragma once
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/time/day.h"
#include "witnessmark/weigh/stays.h"

namespace witnessmark {

/// A limit on a day and the statements it follows from, a least set of them.
struct Bound {
  std::optional<Day> day;  ///< Nothing when there is no limit.
  std::vector<StatementKey> from;
  bool operator==(const Bound&) const = default;
};

/// When one stay of a fixture at a place can have begun and ended: the four dates of CIDOC CRM P81/P82. The
/// outer ones, came_earliest to went_latest, hold all of it (P82, at some time within); the inner ones,
/// came_latest to went_earliest, where they are in that order, are the days it surely stood there (P81,
/// ongoing throughout). came_earliest is the terminus post quem of its coming, came_latest the terminus ante
/// quem. Days are inclusive; on the day it came or went it may count as there or not there.
struct StayBounds {
  Bound came_earliest, came_latest, went_earliest, went_latest;
  bool operator==(const StayBounds&) const = default;
};

enum class BoundsState {
  none,  ///< No statement limits anything.
  known,
  contradicted,  ///< The statements cannot all be true: the limits are those of a part of them, see
                 ///< Bounds::left_out.
  cannot_tell    ///< More ways to read them than are tried (BranchingNetwork::kDefaultLimit).
};
std::string_view to_string(BoundsState state);

/// What follows from a choice of statements.
struct Bounds {
  BoundsState state = BoundsState::none;
  std::vector<StayBounds> stays;  ///< One for each episode, in order of time.
  /// Where they contradict one another: of each set that cannot all be true, the statements on the weakest
  /// footing in it. Entries among themselves are all left out; beside entries the claims are, which is no
  /// finding against them.
  std::vector<StatementKey> left_out;
  bool operator==(const Bounds&) const = default;
};

/// Whether both limit alike, whatever statements the limits follow from.
bool same_limits(const Bounds& a, const Bounds& b);

/// What one claim does to the bounds from the register alone.
struct ClaimEffect {
  enum class Kind { nothing_new, narrows, contradicts, cannot_tell };
  StatementKey claim;
  Footing footing = Footing::proposed;
  Kind kind = Kind::nothing_new;
  /// Where it narrows: the days with it added to the register, each stay in order. A limit that is not the
  /// register's follows from the claim, alone or with entries; it names the claim.
  std::vector<StayBounds> with;
};

std::string_view to_string(ClaimEffect::Kind kind);

/// The bounds from the register when a source or interview, with all that rests on it, is left out. Without it there may be
/// other renewals, and so another number of stays.
struct BoundsWithout {
  std::string source;  ///< Key of a source or an interview.
  std::vector<StatementKey> left_out;
  Bounds bounds;
};

/// A statement that is of the fixture and yet limits nothing.
struct NoBound {
  StatementKey statement;
  Footing footing = Footing::evidence;
  NoLimit why = NoLimit::none;
};

/// See Renewal.
struct ShownRenewal {
  int episode = 1;
  StatementKey there, come;
  bool operator==(const ShownRenewal&) const = default;
};

struct FixtureBounds {
  std::string subject, place;
  std::string property;  ///< See FixturePlace: the bounds are of one value of a property.
  std::vector<ShownRenewal> renewals;  ///< In order of time.
  Bounds from_register;
  Bounds with_reviewed;                ///< Register and reviewed claims.
  Bounds preview;                      ///< And proposals nobody has decided on.
  std::vector<ClaimEffect> claims;     ///< Each alone beside the register, in order of presentation.
  std::vector<BoundsWithout> without;  ///< Those that differ from from_register.
  std::vector<NoBound> no_bound;
};

/// Bounds of every fixture at every place, by subject and place. Adding a statement never widens the bounds,
/// and leaving one out never narrows them, as long as all can be true and the register shows as many stays. Costs grow with the number of groups,
/// and within a group with the number of its statements times that of its sources.
std::vector<FixtureBounds> find_bounds(const StayEvidence& evidence);

/// The bounds of a fixture at a place in so far as they are counted: much quicker.
struct BoundsOutline {
  std::string subject, place, property;
  BoundsState from_register = BoundsState::none;
  bool narrowed = false;  ///< With reviewed claims the limits are others (see same_limits).
};
std::vector<BoundsOutline> outline_bounds(const StayEvidence& evidence, const StayGroup& group);

/// For one group (see StayEvidence::groups). Groups may be asked for on several threads.
std::vector<FixtureBounds> find_bounds(const StayEvidence& evidence, const StayGroup& group);

}  // namespace witnessmark
