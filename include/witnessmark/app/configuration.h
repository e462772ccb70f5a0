#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/statement_line.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/time/edtf.h"
#include "witnessmark/time/period.h"
#include "witnessmark/weigh/bounds.h"

namespace witnessmark {

/// How it stands with a fixture at a place on a day, or all through a longer time.
enum class Presence {
  attested_there,   ///< A statement of that very time has it there.
  inferred_there,   ///< Between a day it had surely come by and a day it had surely not yet gone.
  attested_absent,  ///< A statement of that very time has it not there.
  inferred_absent,  ///< Before it can have come or after it must have gone.
  changed,          ///< It came or went within that time.
  cannot_tell,      ///< The statements leave it open.
  contradicted,     ///< The statements that would settle it cannot all be true.
  no_evidence       ///< Nothing dated speaks of it.
};
std::string_view to_string(Presence presence);
std::string_view in_words(Presence presence);

struct ConfigurationItem {
  std::string subject, place;
  std::string subject_name, place_name;
  Presence presence = Presence::no_evidence;
  std::vector<StatementKey> on_whose_word;
  std::string why;  ///< "had come by 20 April 1938, had not gone before 14 February 1963".
  Presence preview = Presence::no_evidence;  ///< With proposals nobody has decided on.
};

struct Configuration {
  std::string when;  ///< The date in words.
  Period period;
  std::vector<ConfigurationItem> items;  ///< By place in the order of the list, then by name.
  /// Places asked about for which no dated statement of a fixture exists at all: that is no evidence of an
  /// empty room.
  std::vector<std::string> places_without_evidence;
  StatementLines statements;
  std::string withheld;
};

/// A difference between two days.
struct ConfigurationChange {
  enum class Kind { came, went, may_have_changed };
  Kind kind = Kind::may_have_changed;
  ConfigurationItem before, after;
};

/// The date as EDTF or as people say it ("the summer of 1962"). An Error when it is no date, or lies open.
Result<Edtf> configuration_date(std::string_view text, const Surroundings& surroundings);

/// What stood where, from the register and reviewed claims; without withheld testimony and what rests on it.
/// With a place (key or name) only there and within. An Error with near names when the list has no such
/// place.
Result<Configuration> configuration(const SiteFile& site, const Edtf& when, std::string_view place,
                                    const Surroundings& surroundings);

/// What differs between two configurations of one place, in order of the first.
std::vector<ConfigurationChange> differences(const Configuration& before, const Configuration& after);

}  // namespace witnessmark
