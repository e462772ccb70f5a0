#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/result.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/time/day.h"
#include "witnessmark/time/edtf.h"

namespace witnessmark {

enum class Access { open, restricted, closed };
enum class Release { none, signed_release, withdrawn };
enum class Naming { name, pseudonym };

/// Conditions of an interview or a passage.
struct AccessConditions {
  Access access = Access::restricted;
  std::optional<Edtf> closed_until;       ///< Closed until the end of it.
  std::string closed_until_event;         ///< Withheld while this is not empty.
  bool operator==(const AccessConditions&) const = default;
};

/// A narrator's release for one session.
struct NarratorRelease {
  std::string interview;
  std::string person;
  Release release = Release::none;
  std::string uses;
  Naming naming = Naming::name;
  std::string rights_holder;
  std::optional<Edtf> closed_until;
  std::string closed_until_event;
  std::string notes;
  bool operator==(const NarratorRelease&) const = default;
};

/// A passage under conditions of its own. Found by its words when taken in.
struct RestrictedPassage {
  std::string interview;
  std::string quote;
  CodePointRange range;        ///< In the version of the reading text it was found in.
  AccessConditions conditions;
  std::string reason;
  bool operator==(const RestrictedPassage&) const = default;
};

/// Why something is withheld; `none` when it may go out.
enum class Withheld { none, closed, restricted, no_release, release_withdrawn, closed_until_event, interview_withdrawn };
std::string_view to_string(Withheld why);

/// Whether the conditions let a passage out on that day. A date in closed_until binds until its latest day is past;
/// `open` with a closed_until still ahead is withheld.
Withheld judge(const AccessConditions& conditions, Day today);
Withheld judge(const NarratorRelease& release, Day today);

/// The first reason that holds among an interview's conditions, the releases of all narrators who speak in it (a missing
/// release counts as none given) and, for a range, the passages that overlap it. One rule for every output.
struct AccessFile {
  AccessConditions interview;
  std::vector<std::string> narrators;
  std::vector<NarratorRelease> releases;
  std::vector<RestrictedPassage> passages;
  bool withdrawn = false;
};
Withheld judge(const AccessFile& file, Day today);
Withheld judge(const AccessFile& file, CodePointRange range, Day today);

}  // namespace witnessmark
