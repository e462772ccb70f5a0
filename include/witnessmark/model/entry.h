#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/model/dated.h"
#include "witnessmark/model/statement.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

enum class SourceKind {
  physical_trace, photograph, drawing, order, log, correspondence, publication, testimony, object_record
};
enum class Nature { done, intended };
enum class Identification { certain, probable, possible };
enum class SpotVisible { not_stated, yes, no, partly };
enum class Fabric { unknown, original, restored };

std::string_view to_string(SourceKind);
std::string_view to_string(Nature);
std::string_view to_string(Identification);
std::string_view to_string(SpotVisible);
std::string_view to_string(Fabric);
std::optional<SourceKind> parse_source_kind(std::string_view);
std::optional<Nature> parse_nature(std::string_view);
std::optional<Identification> parse_identification(std::string_view);
std::optional<SpotVisible> parse_spot_visible(std::string_view);
std::optional<Fabric> parse_fabric(std::string_view);
/// For people: "photograph", "physical trace".
std::string_view in_words(SourceKind);

struct Source {
  Id id;
  std::string key;
  SourceKind kind = SourceKind::publication;
  std::string title, creator;
  Dated date;
  std::string repository, reference;
  std::string interview;   ///< For testimony in the register.
  std::string notes;
  bool operator==(const Source&) const = default;
};

/// `source` rests on `derives_from`, a source or an interview.
struct Derivation {
  std::string source, derives_from, how;
  bool operator==(const Derivation&) const = default;
};

/// One dated statement of the register.
struct Entry {
  Id id;
  std::string key;
  std::string source;
  std::string locator;
  Statement statement = Statement::present;
  std::string subject;           ///< Equipment key, or for `located` empty for the site or a person's key.
  std::string place;             ///< Place key; for `located` a location in words.
  Dated when;
  Reading reading = Reading::within;
  Nature nature = Nature::done;
  std::optional<std::int64_t> number;        ///< The least, where number_most is given.
  std::optional<std::int64_t> number_most;   ///< Where the number is not certain.
  std::string attribute;
  SpotVisible spot_visible = SpotVisible::not_stated;
  Identification identification = Identification::certain;
  std::vector<std::string> identification_rests_on, date_rests_on, caption_rests_on;
  std::vector<std::string> over;     ///< Entries whose trace lies beneath this one's.
  std::string observation, interpretation, observer;
  Fabric fabric = Fabric::unknown;
  std::string letter_figure;                 ///< See letter_figure.h; mostly empty.
  std::string notes;

  /// The most the number can be.
  std::optional<std::int64_t> most() const { return number_most ? number_most : number; }
  bool operator==(const Entry&) const = default;
};

/// A stay of the site (party empty) or a person at a location.
struct Stay {
  Id id;
  std::string key, source, party;
  std::vector<std::string> locations;   ///< Preferred name first.
  Dated when;
  std::string notes;
  bool operator==(const Stay&) const = default;
};

/// A dated event people refer to: "the yard period".
struct NamedEvent {
  Id id;
  std::string key, name;
  std::vector<std::string> spoken;
  Dated when;
  std::string source, notes;
  bool operator==(const NamedEvent&) const = default;
};

/// "begins crane@foredeck 1962-10-04 (photograph)".
std::string dump(const Entry& entry);

}  // namespace witnessmark
