#pragma once
#include <string>
#include <string_view>

#include "read/tables/references.h"
#include "read/tables/row_reader.h"
#include "witnessmark/model/site.h"

namespace witnessmark {

/// Finds the terms that cells name by key or by name. Without lists the cell is kept and noted as used.
class Terms {
 public:
  Terms(const AuthorityLists* lists, References& references) : lists_(lists), references_(references) {}

  /// The key; an error at the row when the list has no such term or several.
  std::string find(AuthorityList::Kind kind, std::string_view column, RowReader& row);

  /// Whether the text names a place that lies in no other: the site.
  bool is_site(std::string_view text) const;

 private:
  const AuthorityLists* lists_;
  References& references_;
  std::size_t advised_ = 0;
};

}  // namespace witnessmark
