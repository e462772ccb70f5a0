#pragma once
#include <string_view>

#include "witnessmark/model/access.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Puts a passage of the current reading text under conditions of its own, or changes those of one known by
/// the same words; Access::open lifts them. Its quote is set from its range. One whose words were lost in a
/// revision, and which covers the whole text since, gets its place again. Nothing is written when all of it stood
/// so before. An Error when there is no transcript, the range is empty or outside the text, the same words are
/// marked at another place, or a text is not UTF-8.
Result<void> mark_passage(SiteFile& site, const RestrictedPassage& passage, std::string_view why);

}  // namespace witnessmark
