// Any bytes as a SKOS list and as a register in XML.
#include <cstdint>
#include <cstdlib>

#include "witnessmark/read/list_files.h"
#include "witnessmark/read/register_xml.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace witnessmark;
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  const auto list = read_list(bytes, "list.rdf", AuthorityList::Kind::places, ListFormat::skos);
  if (list.ok && list.terms.empty()) std::abort();
  for (const Term& term : list.terms) {
    if (term.key.empty() || term.name.empty()) std::abort();
  }
  const auto evidence = read_register_xml(bytes, "register.xml", nullptr);
  for (const Entry& entry : evidence.evidence.entries) {
    if (entry.key.empty()) std::abort();
  }
  return 0;
}
