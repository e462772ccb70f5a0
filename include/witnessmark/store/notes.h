#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// A coder's own words about an interview, a passage of it, or a claim. Nothing is withheld here: a note may
/// quote what is restricted, so judge it by access_file() of its interview and its range or its claim's
/// quotes.
struct Note {
  Id id;                  ///< Made when nil.
  std::string interview;  ///< Key.
  Id claim;               ///< Nil when it is about no claim.
  int version = 0;        ///< Of the reading text its range lies in; set when saved, 0 without a range.
  CodePointRange range;   ///< Empty when it is about no passage.
  std::string text;
  std::string author;   ///< Who wrote it first; set when saved.
  std::string written;  ///< When, as text for people; set when saved.
  bool operator==(const Note&) const = default;
};

/// A new note; several may be about the same. Returns its id. An Error when the interview or the claim is not
/// known, the range lies outside the current reading text, or the text is empty or not UTF-8.
Result<Id> add_note(SiteFile& site, const Note& note);

/// Another text for a note. An Error when there is no such note, or the text is empty or not UTF-8.
Result<void> edit_note(SiteFile& site, const Id& id, std::string_view text);

/// An Error when there is no such note.
Result<void> remove_note(SiteFile& site, const Id& id);

/// Of an interview, on claims and passages too: by place in the text, those on the whole interview first.
std::vector<Note> notes_of_interview(const SiteFile& site, std::string_view interview);
std::vector<Note> notes_on_claim(const SiteFile& site, const Id& claim);

}  // namespace witnessmark
