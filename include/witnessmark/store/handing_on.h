#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// A file of claims that was handed on: what is needed to call copies of it back.
struct HandedOn {
  std::string to;      ///< The file's path, absolute; empty when it went to standard output.
  std::string format;  ///< "csv" or "jsonl".
  std::string sha256;  ///< Of its bytes, in hexadecimal.
  std::int64_t claims = 0;
  std::vector<std::string> interviews;  ///< Keys of those any claim in it is from, sorted.
  std::string by, wall_time;            ///< Who did it and when; set when it is read back.
};

/// Notes it in the journal. std::logic_error when the site file is open to be read only.
void note_handing_on(SiteFile& site, const HandedOn& what);

/// What was handed on with claims of an interview in it, in order of the journal.
std::vector<HandedOn> handed_on_of(const SiteFile& site, const std::string& interview);

}  // namespace witnessmark
