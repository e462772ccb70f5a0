#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/statement_line.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/bounds.h"

namespace witnessmark {

/// The bounds of one fixture at one place, with the names to show.
struct ShownBounds {
  FixtureBounds bounds;
  std::string subject_name, place_name;  ///< Of a value "Funnel, colour: buff"; place: may be empty.
};

struct BoundsAccount {
  std::vector<ShownBounds> fixtures;  ///< By name of fixture and place; at most so many as were asked for.
  std::int64_t total = 0;             ///< Fixtures at a place and values of their properties, all of them.
  std::int64_t properties = 0;        ///< Of these, the values.
  std::int64_t contradicted = 0;      ///< Of these, those the register contradicts itself about.
  std::int64_t narrowed = 0;          ///< And those that reviewed claims narrow.
  std::int64_t reviewed_claims = 0;
  StatementLines statements;          ///< Every statement a bound or an effect names.
  std::string withheld;               ///< In words.
};

/// Computed without withheld testimony and without entries that rest on it, for bounds tell of what they come
/// from; what was left out is counted. With a name only fixtures or places of that name and within them; an
/// Error with near names when neither list has it. Fixtures about which no statement limits anything are
/// counted and given last.
Result<BoundsAccount> bounds_account(const SiteFile& site, std::string_view name, std::size_t most,
                                     const Surroundings& surroundings);

}  // namespace witnessmark
