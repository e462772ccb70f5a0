#pragma once
#include <cstdint>
#include <string>
#include <string_view>

#include "app/people.h"
#include "witnessmark/app/withholding.h"
#include "witnessmark/model/site.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// The register without the entries of a testimony that is withheld as a whole, or whose date, identification or
/// caption rests on one: numbers and grades would tell of it. How many were left out comes back in `left_out`.
Register shown_register(const SiteFile& site, const People& people, const Withholding& withholding,
                        std::int64_t& left_out);

/// "withheld: 3 (closed 3); 1 entry that rests on withheld testimony left out", "nothing withheld".
std::string withheld_words(const Withholding& withholding, std::int64_t entries_left_out,
                           std::string_view what = "claim");

}  // namespace witnessmark
