#include "terminal/key_table.h"

namespace witnessmark {
namespace {

using Keys = std::vector<KeyHelp>;

const Keys& everywhere() {
  static const Keys kKeys = {
      {"Escape", "back", "Back to where you came from."},
      {"?", "keys", "The keys of this screen."},
      {"1", "", "The interviews and how far their coding has come."},
      {"2", "", "All claims in review order: first those that say most."},
      {"3", "", "Statements that cannot all be true."},
      {"4", "", "What the evidence leaves open."},
      {"5", "", "The journal: who decided what, when and why."},
      {"6", "", "Where another coder decided otherwise, to be settled."},
      {"a", "about", "Everything said about a place or a piece of equipment, by any of its names."},
      {"w", "", "What stood where on a day."},
      {"/", "search", "Words in what was said."},
      {"u", "undo", "Undoes your last act, as often as you like.", true},
      {"U", "", "Does again what was undone.", true},
      {"!", "", "Cautions: whom this may touch, and what it is no ground for."},
      {"q", "quit", "Ends. Every decision is saved; over a form that is not, it asks first."},
  };
  return kKeys;
}

const Keys& interviews() {
  static const Keys kKeys = {
      {"Enter", "open",
       "Opens the transcript with its claims. A withheld interview is opened only after asking."},
      {"c", "claims", "The claims of this interview in review order."},
      {"Up Down PageUp PageDown Home End", "", "Moves."},
  };
  return kKeys;
}

const Keys& deciding() {
  static const Keys kKeys = {
      {"s", "said so", "The narrator did say it. That is not yet that it is true.", true},
      {"m", "misread", "The narrator did not say it; asks for the reason, which it needs.", true},
      {"x", "set aside", "Said, but of no use here; asks for a reason, and Enter alone gives none.", true},
      {"e", "correct", "Corrects any part of it.", true},
      {".", "repeat", "Makes your last decision again on this one.", true},
      {"n", "note", "A note.", true},
      {"k", "checked", "The quote was checked against the recording.", true},
      {"j", "join", "Joins it with the next claim, which is set aside.", true},
      {"d", "divide", "Divides it: a second claim with the same quote, to be corrected.", true},
      {"p", "play", "Plays the recording from here, in the player you named with --player."},
  };
  return kKeys;
}

const Keys& claims() {
  static const Keys kKeys = {
      {"Enter", "open", "Opens the claim in full."},
      {"f", "narrow",
       "Shows only some: by narrator, equipment, place, statement, status, outcome, recall distance."},
      {"t", "talk", "The place in the transcript."},
      {"A", "", "Decides on all that are shown; says first how many they are.", true},
      {"Up Down PageUp PageDown Home End", "", "Moves."},
  };
  return kKeys;
}

const Keys& transcript() {
  static const Keys kKeys = {
      {"Tab", "claims", "Between the talk and the list of claims."},
      {"Enter", "open", "Opens the claim that rests on this sentence."},
      {"v", "select", "Begins or ends a selection of sentences."},
      {"i", "add claim", "Adds a claim of your own over the sentence or the selection.", true},
      {"r", "read", "Marks the sentence or selection as read through.", true},
      {"Q", "", "Gives the claim at the cursor of the list the sentence or selection as its quote.", true},
      {"z", "restrict", "Marks the sentence or selection as restricted; asks for the reason.", true},
      {"Z", "",
       "Lifts the restriction of the passage at the cursor or in the selection; asks for the reason.", true},
      {"O", "", "Opens what is withheld in this interview, to you at this sitting; asks first."},
      {"h", "blind", "Hides what was proposed, to code without having seen it; the decisions say so."},
      {"g", "time", "Goes to a time in the recording."},
      {"Up Down PageUp PageDown Home End", "", "Moves."},
  };
  return kKeys;
}

const Keys& claim() {
  static const Keys kKeys = {
      {"Right Left", "next", "The next or the previous claim of the list you came from."},
      {"Enter", "entry", "Opens an entry it was held against, by its number."},
      {"l", "link",
       "Links the claim to an entry, by its number here or its key in the register: they speak of the same.",
       true},
      {"L", "rule out", "Rules an entry out: it speaks of something else.", true},
      {"t", "talk", "The place in the transcript."},
      {"b", "", "Everything said about its subject."},
      {"Up Down PageUp PageDown", "", "Reads on."},
  };
  return kKeys;
}

const Keys& form() {
  static const Keys kKeys = {
      {"Enter", "change",
       "Changes the field: type a name or a part of it, a date as people say it or in EDTF. Ctrl-U clears "
       "what is typed."},
      {"Right Left", "next value", "The next or the previous of the values a field can have."},
      {"s", "save", "Saves it, or shows what was asked for."},
      {"Delete", "empty", "Empties the field."},
      {"Up Down", "", "Moves."},
  };
  return kKeys;
}

const Keys& differences() {
  static const Keys kKeys = {
      {"s", "as here", "Settles the difference: what stands here stays.", true},
      {"o", "the other's", "Settles the difference: the other coder's decision is taken.", true},
  };
  return kKeys;
}

const Keys& report() {
  static const Keys kKeys = {
      {"Enter", "go there",
       "Opens the claim, the entry or the place in the transcript that the line is about."},
      {"Up Down PageUp PageDown Home End", "", "Moves."},
  };
  return kKeys;
}

struct KeysOfPlace {
  Keys operator()(const InterviewsPlace&) const { return interviews(); }
  Keys operator()(const ClaimsPlace&) const { return joined(deciding(), claims()); }
  Keys operator()(const TranscriptPlace&) const { return joined(transcript(), deciding()); }
  Keys operator()(const ClaimPlace&) const { return joined(deciding(), claim()); }
  Keys operator()(const FormPlace&) const { return form(); }
  Keys operator()(const ReportPlace& place) const {
    return place.kind == ReportKind::differences ? joined(differences(), report()) : report();
  }
  Keys operator()(const KeysPlace&) const { return {{"Up Down PageUp PageDown", "", "Reads on."}}; }

  static Keys joined(Keys first, const Keys& second) {
    first.insert(first.end(), second.begin(), second.end());
    return first;
  }
};

struct NameOfPlace {
  std::string_view operator()(const InterviewsPlace&) const { return "Interviews"; }
  std::string_view operator()(const ClaimsPlace&) const { return "Claims"; }
  std::string_view operator()(const TranscriptPlace&) const { return "Transcript"; }
  std::string_view operator()(const ClaimPlace&) const { return "Claim"; }
  std::string_view operator()(const FormPlace& place) const {
    if (place.purpose == FormPlace::Purpose::filter) return "Which claims";
    return place.purpose == FormPlace::Purpose::add ? "A new claim" : "Correcting";
  }
  std::string_view operator()(const ReportPlace& place) const {
    switch (place.kind) {
      case ReportKind::said_about:
        return "Said about";
      case ReportKind::search:
        return "Words found";
      case ReportKind::contradictions:
        return "Contradictions";
      case ReportKind::open_questions:
        return "Open questions";
      case ReportKind::configuration:
        return "Configuration";
      case ReportKind::journal:
        return "Journal";
      case ReportKind::differences:
        return "Differences";
      case ReportKind::cautions:
        return "Cautions";
      case ReportKind::entry:
        return "Entry";
    }
    return "";
  }
  std::string_view operator()(const KeysPlace&) const { return "Keys"; }
};

}  // namespace

std::vector<KeyHelp> keys_of(const State& state) {
  Keys all = std::visit(KeysOfPlace{}, state.place());
  const bool form = std::holds_alternative<FormPlace>(state.place());
  for (const KeyHelp& help : everywhere())
    if (!form || help.key == "Escape" || help.key == "?" || help.key == "q") all.push_back(help);
  if (!state.can_edit) std::erase_if(all, [](const KeyHelp& help) { return help.decides; });
  return all;
}

std::string_view name_of(const Place& place) {
  return std::visit(NameOfPlace{}, place);
}

}  // namespace witnessmark
