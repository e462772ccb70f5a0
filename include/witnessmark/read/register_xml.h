#pragma once
#include <string_view>

#include "witnessmark/read/register_files.h"

namespace witnessmark {

/// Whether decoded text or bytes look like XML: the first character but for white space and a mark is `<`.
bool looks_like_xml(std::string_view bytes);

/// Reads the dated evidence from XML as schemas/register.rng describes it: elements named as the columns of
/// the CSV files, repeated where a cell would hold several values. The same checks as read_register_files;
/// errors name line and column of the element. External entities are never opened: a document type with
/// declarations is refused, as is nesting deeper than 64 or a file over 256 MB.
RegisterReading read_register_xml(std::string_view bytes, std::string_view source,
                                  const AuthorityLists* lists);

}  // namespace witnessmark
