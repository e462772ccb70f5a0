#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "witnessmark/weigh/fixture_statement.h"

namespace witnessmark {

/// How the place of a statement stands to the place asked about.
enum class PlaceRelation { same, inside, around };

/// A statement that bears on a fixture at a place.
struct Bearing {
  std::size_t statement = 0;  ///< Number among all statements.
  PlaceRelation relation = PlaceRelation::same;
  int episode = -1;  ///< From 0, of one that shows a return; -1 while which episode it means is open.
  bool shows_there = false;  ///< An event, or a change of a property, taken to show it there: see Renewal.
};

/// A coming that is taken for a return, and not for the first, because records of the time have the thing there
/// before it; no entry shows it gone between. What something happened to, what was counted, had a colour or was
/// painted, was there. Two entries of a coming are no renewal: they may be two accounts of one, and contradict.
/// Nor are later accounts (publications, testimony, what is dated or identified by them) enough for one, an event
/// that names no place, or what an object's own record says of it, which may be true of it anywhere.
struct Renewal {
  int episode = 1;        ///< Of the stay the coming begins, from 0.
  std::size_t there = 0;  ///< The last statement that has it there before.
  std::size_t come = 0;   ///< The statement of the coming.
  bool operator==(const Renewal&) const = default;
};

/// A fixture at a place, with what is said of its stays there. Places are the same thing as follows. The
/// register's places are those its entries name for the fixture, or the usual one of the list where they name
/// none. Of those that lie in the place of a statement (all of them, where it has none) the statement is
/// taken to be of the innermost, where each lies in the next; else of the one around all others; else of its
/// own place. For the rest, what is told of a part of the place counts for the place only as "was there"
/// (gone from one part is not gone from all), and what is told of a place around it only where it rules the
/// fixture out (not there, not yet come, gone).
struct FixturePlace {
  std::string subject;
  std::string place;  ///< Empty: somewhere on the site.
  /// A value of one of its properties, as first written ("colour: buff"), whose stays these are; empty for
  /// the thing itself. Values of one property exclude one another: a statement of one says that the others
  /// were not there. What is said of "red" is said of "red with white band" where that is the only fuller
  /// value.
  std::string property;
  /// One more than the times the register shows the fixture come (begins) surely no earlier than the last it
  /// had gone (ends), or surely after it was there (Renewal); of a value, as often as the register has it there, and then another value, and then
  /// again. Claims add none: that it may have come and gone once more is offered as a way out of a
  /// contradiction.
  int episodes = 1;
  std::vector<Bearing> bearings;  ///< In order of presentation.
  std::vector<Renewal> renewals{};  ///< In order of time; none of a value, which is given anew whenever it is.
};

/// An entry's trace lies over another's: it was made after what left the lower trace had come and, when both
/// are of the same spot, gone. (The law of superposition: E. C. Harris, Principles of Archaeological
/// Stratigraphy, 1979.)
struct Layering {
  std::size_t upper = 0, lower = 0;                  ///< Statements.
  std::size_t upper_fixture = 0, lower_fixture = 0;  ///< Among the fixtures of the group.
  bool same_spot = false;
};

/// Fixtures tied to one another by layered traces; most groups hold one. Different groups do not influence
/// one another.
struct StayGroup {
  std::vector<FixturePlace> fixtures;
  std::vector<Layering> layers;
};

/// Statements in order of presentation and the groups they fall into, by subject and place; after those of
/// things those of the values of their properties, for which a statement stands there once more for each
/// value it bears on. The index must outlive it.
class StayEvidence {
 public:
  StayEvidence(const RegisterIndex& evidence, const std::vector<HeldClaim>& claims);

  const std::vector<FixtureStatement>& statements() const { return statements_; }
  const std::vector<StayGroup>& groups() const { return groups_; }
  const RegisterIndex& evidence() const { return evidence_; }

 private:
  void add_properties(const std::vector<HeldClaim>& claims);

  const RegisterIndex& evidence_;
  std::vector<FixtureStatement> statements_;
  std::vector<StayGroup> groups_;
};

}  // namespace witnessmark
