#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/report.h"
#include "witnessmark/app/statement_line.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/time/day.h"
#include "witnessmark/time/edtf.h"
#include "witnessmark/weigh/presence.h"

namespace witnessmark {

/// A fixture at a place. Without place: nothing says where.
struct ConfigurationItem {
  std::string subject, place;
  std::string property;  ///< "colour: buff" where a value of a property is meant (FixturePlace).
  std::string subject_name, place_name;  ///< "Funnel, colour: buff" of a value.
  PresenceAnswer settled;  ///< By the register and reviewed claims.
  PresenceAnswer preview;  ///< With proposals nobody has decided on.
};

/// A value it did not have, or of which nothing is known then: no line for people, who ask what it was like.
bool only_another_value(const ConfigurationItem& item);

struct Configuration {
  std::string when;  ///< The days asked about, in words.
  Day first, last;
  /// Every fixture some statement, or the list, has at the place asked about; by place in the order of the
  /// list, then by name. Where nothing dated speaks of one it is there with no_evidence.
  std::vector<ConfigurationItem> items;
  /// Places asked about of which nothing says that any fixture was ever there: no evidence of an empty room.
  std::vector<std::string> places_without_evidence;
  StatementLines statements;
  std::int64_t reviewed_claims = 0;  ///< None: what is settled is what the register says alone.
  std::string withheld;
};

/// A difference between two days.
struct ConfigurationChange {
  enum class Kind {
    came,             ///< Not there, then there.
    went,             ///< There, then not there.
    may_have_changed  ///< Known of one of the days only.
  };
  Kind kind = Kind::may_have_changed;
  ConfigurationItem before, after;
};

/// The date as EDTF, as people say it ("the summer of 1962"), or by the name of an event of the register
/// ("the crane refit"). An Error when it is no date, or one without beginning or end.
Result<Edtf> configuration_date(const SiteFile& site, std::string_view text,
                                const Surroundings& surroundings);

/// What stood where, from the register and reviewed claims; without withheld testimony and what rests on it.
/// With a place (key or name) only there and within. An Error with near names when the list has no such
/// place.
Result<Configuration> configuration(const SiteFile& site, const Edtf& when, std::string_view place,
                                    const Surroundings& surroundings);

/// Why, and on whose word: "between dates; on the word of e1 and e2". May be empty; safe to print.
std::string answer_words(const PresenceAnswer& answer);
/// "Electric crane · Foredeck"; safe to print.
std::string item_name(const ConfigurationItem& item);

/// By how sure it is, what stood there first; then where nothing is known.
Report configuration_report(const Configuration& made);

std::string_view to_string(ConfigurationChange::Kind kind);

/// What differs between two configurations of one place, in order of the first.
std::vector<ConfigurationChange> differences(const Configuration& before, const Configuration& after);

}  // namespace witnessmark
