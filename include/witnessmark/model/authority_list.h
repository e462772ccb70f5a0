#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/model/dated.h"

namespace witnessmark {

enum class NumberScheme { none, since_1949, before_1949, local };
std::string_view to_string(NumberScheme scheme);
std::optional<NumberScheme> parse_number_scheme(std::string_view text);

/// A name with the years it applied.
struct FormerName {
  std::string name;
  Dated when;
  bool operator==(const FormerName&) const = default;
};

/// A term of an authority list: a place or a piece of equipment.
struct Term {
  Id id;
  std::string key;
  std::string name;            ///< Preferred.
  std::string broader;         ///< Key of the place it lies in, or of the broader term or larger whole.
  std::string number;          ///< As painted or drawn; stays text.
  NumberScheme scheme = NumberScheme::none;
  std::vector<FormerName> former_names;
  std::vector<std::string> spoken;
  std::string place;           ///< Equipment: key of where it normally is.
  std::string notes;
  bool operator==(const Term&) const = default;
};

/// A list with its hierarchy.
class AuthorityList {
 public:
  enum class Kind { places, equipment };

  AuthorityList() = default;
  /// Terms in the given order; broader keys that are not in the list count as none.
  AuthorityList(Kind kind, std::vector<Term> terms);

  Kind kind() const { return kind_; }
  const std::vector<Term>& terms() const { return terms_; }
  bool empty() const { return terms_.empty(); }

  const Term* find(std::string_view key) const;

  /// Terms that bear the name: preferred, former, spoken or number, compared folded. In list order.
  std::vector<const Term*> named(std::string_view name) const;

  /// Whether `inner` is `outer` or lies within it.
  bool within(std::string_view inner, std::string_view outer) const;

  /// The key and those of everything within it.
  std::vector<std::string> all_within(std::string_view key) const;

  /// Keys from the term's broader upward; a circle is cut.
  std::vector<std::string> above(std::string_view key) const;

 private:
  Kind kind_ = Kind::places;
  std::vector<Term> terms_;
  std::unordered_map<std::string, std::size_t> by_key_;
  std::unordered_map<std::string, std::vector<std::size_t>> by_name_;
  std::vector<std::vector<std::size_t>> narrower_;  ///< Of each term those directly beneath it.
};

}  // namespace witnessmark
