#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/model/dated.h"
#include "witnessmark/model/mention.h"
#include "witnessmark/model/statement.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

/// How the narrator knows.
enum class Basis { unstated, first_hand, told, read, inferred };
/// How firmly it is put.
enum class Firmness { firm, hedged, guess };
enum class Polarity { affirmed, denied };
/// `said_so`: a coder found the narrator did say it, not that it is true.
enum class ClaimStatus { proposed, said_so, misread, set_aside };

std::string_view to_string(Basis);
std::string_view to_string(Firmness);
std::string_view to_string(Polarity);
std::string_view to_string(ClaimStatus);
std::optional<Basis> parse_basis(std::string_view);
std::optional<Firmness> parse_firmness(std::string_view);
std::optional<Polarity> parse_polarity(std::string_view);
std::optional<ClaimStatus> parse_claim_status(std::string_view);

/// A number as spoken: least and most ("a dozen or so" 10 to 14 is the language layer's setting).
struct Quantity {
  std::int64_t least = 0;
  std::int64_t most = 0;
  std::string written;
  bool operator==(const Quantity&) const = default;
};

/// The time a claim is about, as said and as read.
/// Rule of a date that a state lasted through as told: "all through 1957".
inline constexpr std::string_view kThroughout = "throughout";

struct ClaimTime {
  Dated dated;
  Reading reading = Reading::within;
  std::optional<Period> period;   ///< Under the policy in force when read.
  std::string rule;               ///< How the date was read.
  std::string anchor;             ///< What a relative date was reckoned from.
  bool carried = false;           ///< Taken from the talk before, not from the quote.
  std::vector<std::string> alternatives;  ///< Other EDTF values it may mean.
  bool operator==(const ClaimTime&) const = default;
};

/// What a narrator said of the site, as a statement that can be weighed.
struct Claim {
  Id id;
  std::string interview;             ///< Key.
  std::string speaker;               ///< Person key or label of who says it.
  std::string knower;                ///< Whose knowledge it is when told: a name or words; empty for the speaker.
  Statement statement = Statement::present;
  std::string subject;               ///< Equipment key; empty when none was named.
  std::string subject_words;         ///< As said.
  std::string place;                 ///< Place key; may be empty.
  std::string place_words;
  ClaimTime when;
  std::optional<Quantity> quantity;
  std::string attribute;             ///< "colour: buff".
  Basis basis = Basis::unstated;
  Firmness firmness = Firmness::firm;
  Polarity polarity = Polarity::affirmed;
  bool led = false;                  ///< The interviewer supplied the fact, or the date that is the fact.
  bool subject_carried = false;      ///< Subject taken from an earlier mention.
  bool place_carried = false;
  bool withdrawn = false;            ///< The narrator corrected it in the same breath.
  std::vector<CodePointRange> quotes;   ///< First is the main one; in the reading text version proposed from.
  std::vector<Mention> mentions;        ///< Spans it was read from, cues among them.
  std::string reason;                   ///< For people: why it was proposed.
  int rank = 0;                         ///< Review order, smaller first.
  int ordinal = 0;                      ///< Among claims of the same quote span and statement, from 0.
  ClaimStatus status = ClaimStatus::proposed;
  bool operator==(const Claim&) const = default;
};

/// How the time of a claim is to be read, by its statement: a change or an event fell within it; an absence
/// holds throughout; a state holds throughout a stretch told with both its ends ("from 1950 to 1955"), and
/// for some part of any other time ("in 1955", "in the yard period", "last week").
Reading reading_of(const Claim& claim);

/// What a claim must be given before it can be said so: a count its number, an attribute its property; empty
/// when nothing. A sentence: "a count needs its number".
std::string_view what_it_needs(const Claim& claim);

/// One line for tests: "begins crane@foredeck 1962-21 told hedged affirmed".
std::string dump(const Claim& claim);

}  // namespace witnessmark
