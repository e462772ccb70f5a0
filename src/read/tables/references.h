#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "read/tables/row_reader.h"
#include "witnessmark/read/unresolved_key.h"

namespace witnessmark {

/// Near matches take a pass over all keys or names, so only the first few unknown ones of a file get them.
inline constexpr std::size_t kMostWithAdvice = 50;

/// Which keys the files define and which they use, so that what is not defined anywhere can be told at the
/// end, whatever the order of the files.
class References {
 public:
  // Tables, rows and column names told of must outlive it.
  /// A row that defines a key. A key that stands already is an error at the row.
  void define(KeyKind kind, const std::string& key, std::string_view column, RowReader& row);
  /// A key known from elsewhere.
  void define(KeyKind kind, const std::string& key);
  bool defines(KeyKind kind, const std::string& key) const;

  /// A row that uses keys, each of any of the kinds.
  void use(const std::vector<KeyKind>& may_be, const std::vector<std::string>& keys, std::string_view column,
           const RowReader& row);
  void use(KeyKind kind, const std::string& key, std::string_view column, const RowReader& row);

  /// What was used and not defined, in the order of use, with near matches in the advice.
  std::vector<UnresolvedKey> unresolved() const;

 private:
  /// Nearly all uses are resolved, so what to say of one is worked out only when it is not.
  struct Use {
    std::vector<KeyKind> may_be;
    std::string key;
    std::string_view column;
    const Table* table;
    const TableRow* row;
  };
  struct Definition {
    std::string source;
    std::int64_t line = 0;
  };
  static constexpr std::size_t kKinds = static_cast<std::size_t>(KeyKind::claim) + 1;
  std::array<std::unordered_map<std::string, Definition>, kKinds> defined_;
  std::array<std::vector<std::string>, kKinds> order_;  // keys as they came
  std::vector<Use> uses_;
};

}  // namespace witnessmark
