#pragma once
#include <cstddef>
#include <string_view>

#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// What goes, or went, with an interview.
struct ErasureAccount {
  std::size_t originals = 0;      ///< Files as they came in.
  std::size_t reading_texts = 0;  ///< Versions.
  std::size_t claims = 0;
  std::size_t notes = 0;
  std::size_t events = 0;  ///< In the journal, that lose their content.
  /// Others were reading meanwhile, so that former pages are still in the side file (-wal) until they close.
  bool in_side_file = false;
};

/// What erasing would take. An Error when there is no such interview.
Result<ErasureAccount> account_of_erasure(const SiteFile& site, std::string_view interview);

/// Erases an interview for good, for a release that was withdrawn: its row, releases, speakers and passages,
/// its originals and texts, their words in the search index, its claims and all that was written about them,
/// and the content of every journal event about it. Freed pages are overwritten, the file is written anew and
/// the side file emptied. A marker stays, with the day, and the reason, which must not repeat what it erases;
/// so do the events, without content, and their hashes. Persons stay: they may be in other interviews. Copies
/// are not reached. It cannot be undone. An Error when there is no such interview or the reason is not UTF-8.
/// Not inside a SiteTransaction (std::logic_error).
Result<ErasureAccount> erase_interview(SiteFile& site, std::string_view interview, std::string_view why);

}  // namespace witnessmark
