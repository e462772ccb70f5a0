#pragma once
#include <cstddef>
#include <string>
#include <vector>

namespace witnessmark {

/// What saving rows did. Rows the input does not mention are left alone: taking in never deletes.
struct RowCounts {
  std::size_t added = 0;
  std::size_t changed = 0;
  std::size_t unchanged = 0;
  std::size_t written() const { return added + changed; }
  bool operator==(const RowCounts&) const = default;
};

/// A row that was there before with another content. Before and after are in the journal.
struct ChangedRow {
  std::string kind;  ///< "person", "entry" …
  std::string key;
  std::vector<std::string> fields;  ///< Names of the fields that differ.
  bool operator==(const ChangedRow&) const = default;
};

}  // namespace witnessmark
