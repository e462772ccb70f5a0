#include "witnessmark/read/list_files.h"

#include "read/tables/list_rows.h"
#include "read/tables/table.h"
#include "read/xml/skos.h"
#include "witnessmark/read/register_xml.h"

namespace witnessmark {

ListReading read_list(std::string_view bytes, std::string_view source, AuthorityList::Kind kind,
                      std::optional<ListFormat> format) {
  const ListFormat as = format ? *format : looks_like_xml(bytes) ? ListFormat::skos : ListFormat::csv;
  ListReading reading =
      as == ListFormat::skos ? read_skos_list(bytes, source, kind) : read_csv_list(bytes, source, kind);
  check_circles(reading.terms, source, reading.diagnostics);
  reading.ok = !has_errors(reading.diagnostics);
  return reading;
}

}  // namespace witnessmark
