#pragma once
#include <functional>
#include <string>
#include <string_view>

#include "witnessmark/model/access.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/time/day.h"

namespace witnessmark {

/// An event as it may be shown on a day.
struct ListedEvent {
  JournalEvent event;  ///< Without content and reason where these are withheld, without content of persons,
                       ///< and without the names that releases keep back.
  Withheld withheld = Withheld::none;
  std::string interview = {};  ///< Its key; in the event stands what the interview may be called.
};

/// What was done, by whom, when and why, in the order in which it came into the file. `on` narrows it to a
/// target: the key of an interview, a person, an entry, a term, or the id of a claim or a note, with all that
/// was written about it; empty for everything. What an event says of an interview is withheld as the
/// interview is, and of a claim as its quotes are. Returns what was withheld, in words.
std::string list_journal(const SiteFile& site, std::string_view on, Day today,
                         const std::function<void(const ListedEvent&)>& visit);

}  // namespace witnessmark
