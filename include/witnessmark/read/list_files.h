#pragma once
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "witnessmark/model/authority_list.h"
#include "witnessmark/read/unresolved_key.h"

namespace witnessmark {

enum class ListFormat { csv, skos };

struct ListReading {
  std::vector<Term> terms;  ///< In the order of the file; ids are nil.
  std::vector<std::int64_t> lines;  ///< Where each of them stands in the file.
  std::vector<Diagnostic> diagnostics;
  std::vector<UnresolvedKey> unresolved;  ///< Broader terms and places that the file does not define.
  bool ok = false;
};

/// Reads a list of places or equipment. The format is SKOS when the text is XML, else CSV
/// (schemas/csv/places.csv, equipment.csv).
///
/// SKOS (W3C Recommendation, 18 August 2009) in RDF/XML: a concept's key is the last part of its address;
/// prefLabel is the name, in English where there are several languages, else in the one without language,
/// else the first, and the rest are spoken forms along with altLabel and hiddenLabel; notation is the number;
/// broader and narrower give the hierarchy (of several broader concepts the first); note, scopeNote,
/// definition, historyNote and changeNote go to notes. What was chosen or left is said in diagnostics.
/// Hostile XML as in read_register_xml. Circles of broader terms and keys that come twice are errors.
ListReading read_list(std::string_view bytes, std::string_view source, AuthorityList::Kind kind,
                      std::optional<ListFormat> format = std::nullopt);

}  // namespace witnessmark
