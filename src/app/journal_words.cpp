#include "witnessmark/app/journal_words.h"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>

#include "witnessmark/app/claim_words.h"

namespace witnessmark {
namespace {

using Json = nlohmann::json;

struct Row {
  std::string_view kind, target_kind;
  std::string_view words;  ///< {} stands for the target.
};

/// Empty target kinds fit every other; the first that fits counts.
constexpr Row kRows[] = {
    {"created", "site", "created the site file"},
    {"taken-in", "evidence", "took in the register"},
    {"taken-in", "list", "took in the list of {}"},
    {"taken-in", "conclusions", "took in conclusions"},
    {"taken-in", "", "took in the {kind} {}"},
    {"changed", "passage", "changed a restricted passage of {}"},
    {"changed", "speaker", "changed a speaker of {}"},
    {"changed", "release", "changed a release of {}"},
    {"changed", "derivation", "changed what {} derives from"},
    {"changed", "", "changed the {kind} {}"},
    {"transcript-read", "", "took in the transcript of {}"},
    {"transcript-revised", "", "took in a revised transcript of {}"},
    {"proposed", "", "proposed claims of {}"},
    {"weighed", "", "weighed the claims"},
    {"carried", "claim", "carried a claim over to the revised transcript"},
    {"merged", "", "brought in what was done in another copy"},
    {"erased", "", "erased the {kind} {}"},
    {"handed-on", "export", "handed claims on to {}"},
    {"decided", "claim", "decided on a claim"},
    {"added", "claim", "added a claim"},
    {"noted", "note", "wrote a note"},
    {"linked", "entry-link", "linked an entry"},
    {"ruled-out", "entry-link", "ruled an entry out"},
    {"unlinked", "entry-link", "took a link to an entry off"},
    {"checked", "quote-check", "checked a quote against the recording"},
    {"read", "passages-read", "marked a passage as read"},
    {"unread", "passages-read", "marked a passage as not read"},
    {"restricted", "passage", "restricted a passage"},
    {"related", "claim-origin", "joined or divided claims"},
    {"undone", "", "undid what was done on a {kind}"},
    {"redone", "", "did again what was done on a {kind}"},
    {"taken-over", "", "took over another copy's work on a {kind}"},
    {"both-decided", "", "met another copy's decision on a {kind}"},
    {"settled", "", "settled a difference on a {kind}"},
};

/// What the journal calls a kind of target, in words.
std::string_view kind_words(std::string_view kind) {
  constexpr std::pair<std::string_view, std::string_view> kWords[] = {
      {"named-event", "named event"},
      {"entry-link", "link to an entry"},
      {"quote-check", "check against the recording"},
      {"passages-read", "passage read"},
      {"claim-origin", "joined or divided claim"}};
  for (const auto& [word, words] : kWords)
    if (word == kind) return words;
  return kind;
}

const Row* row_of(const JournalEvent& event) {
  for (const Row& row : kRows)
    if (row.kind == event.kind && (row.target_kind.empty() || row.target_kind == event.target_kind))
      return &row;
  return nullptr;
}

void put(std::string& words, std::string_view what, std::string_view with) {
  if (const auto at = words.find(what); at != std::string::npos) words.replace(at, what.size(), with);
}

// Values of a claim, as its JSON has them: a patch holds only what differs, and null for what is missing.

std::string text_of(const Json& claim, const char* name) {
  const auto at = claim.find(name);
  return at != claim.end() && at->is_string() ? at->get<std::string>() : "";
}

std::string or_none(std::string words) {
  return words.empty() ? "none" : words;
}

std::string when_of(const Json& claim) {
  const auto dated = claim.find("dated");
  if (dated == claim.end() || !dated->is_object()) return "none";
  const std::string edtf = text_of(*dated, "edtf"), written = text_of(*dated, "written");
  if (written.empty() || written == edtf) return or_none(edtf);
  return edtf.empty() ? fmt::format("“{}”", written) : fmt::format("{} (“{}”)", edtf, written);
}

std::string number_of(const Json& claim) {
  const auto number = claim.find("quantity");
  if (number == claim.end() || !number->is_object()) return "none";
  const auto least = number->value("least", std::int64_t{0}), most = number->value("most", least);
  return least == most ? fmt::format("{}", least) : fmt::format("{} to {}", least, most);
}

std::string name_of(const AuthorityList& list, const Json& claim, const char* key, const char* words) {
  if (const Term* term = list.find(text_of(claim, key))) return term->name;
  if (const std::string said = text_of(claim, words); !said.empty()) return fmt::format("“{}”", said);
  // The key of a person is not for everybody.
  return text_of(claim, key).empty() ? "none" : "not in the list";
}

std::string status_of(const Json& claim) {
  const auto status = parse_claim_status(text_of(claim, "status"));
  return status ? std::string(in_words(*status)) : "none";
}

std::string value_of(const Json& claim, std::string_view name, const AuthorityLists& lists) {
  if (name == "status") return status_of(claim);
  if (name == "dated") return when_of(claim);
  if (name == "quantity") return number_of(claim);
  if (name == "subject" || name == "subject_words")
    return name_of(lists.equipment, claim, "subject", "subject_words");
  if (name == "place" || name == "place_words") return name_of(lists.places, claim, "place", "place_words");
  if (name == "led") return claim.value("led", Json()).is_boolean() ? "yes" : "no";
  return or_none(text_of(claim, std::string(name).c_str()));
}

struct Value {
  std::string_view name, label;
};
constexpr Value kValues[] = {{"status", "status"},       {"statement", "statement"},
                             {"subject", "equipment"},   {"subject_words", "equipment"},
                             {"place", "place"},         {"place_words", "place"},
                             {"dated", "when"},          {"quantity", "number"},
                             {"attribute", "attribute"}, {"basis", "basis"},
                             {"knower", "from whom"},    {"firmness", "firmness"},
                             {"polarity", "polarity"},   {"led", "supplied by the interviewer"}};

Json object_or_null(const std::string& content) {
  Json object = Json::parse(content, nullptr, false);
  return object.is_object() ? object : Json();
}

std::string plain_words(const Json& object, const std::string& name) {
  const auto at = object.find(name);
  if (at == object.end() || at->is_null()) return "none";
  return or_none(at->is_string() ? at->get<std::string>() : at->dump());
}

void add_claim_differences(const Json& here, const Json& there, const AuthorityLists& lists,
                           std::vector<std::string>& lines) {
  std::string_view last;
  for (const auto& [name, label] : kValues) {
    const std::string a = value_of(here, name, lists), b = value_of(there, name, lists);
    if (a == b || label == last) continue;
    last = label;
    lines.push_back(one_line(fmt::format("{}: here {}, there {}", label, a, b)));
  }
  if (here.value("quotes", Json()) != there.value("quotes", Json())) lines.push_back("other words quoted");
}

void add_plain_differences(const Json& here, const Json& there, std::vector<std::string>& lines) {
  std::set<std::string> names;
  for (const Json* side : {&here, &there})
    for (const auto& item : side->items()) names.insert(item.key());
  for (const std::string& name : names) {
    const std::string a = plain_words(here, name), b = plain_words(there, name);
    if (a != b) lines.push_back(one_line(fmt::format("{}: here {}, there {}", name, a, b)));
  }
}

/// A value of a row as a person reads it; what is no text, number or date is not told.
std::optional<std::string> plain_value(const Json& row, const std::string& name) {
  const auto at = row.find(name);
  if (at == row.end() || at->is_null()) return "none";
  if (at->is_string()) return or_none(at->get<std::string>());
  if (at->is_number() || at->is_boolean()) return at->dump();
  if (at->is_array()) {
    std::string words;
    for (const Json& part : *at) {
      if (!part.is_string()) return std::nullopt;
      words += (words.empty() ? "" : ", ") + part.get<std::string>();
    }
    return or_none(words);
  }
  if (!at->is_object() || (!at->contains("edtf") && !at->contains("written"))) return std::nullopt;
  const std::string edtf = text_of(*at, "edtf");
  return or_none(edtf.empty() ? text_of(*at, "written") : edtf);
}

/// What a row of the register that was taken in anew has otherwise, by the names of its columns; of an
/// interview these names alone. What is said of people and of passages under conditions is not told.
std::string fields_words(const JournalEvent& event) {
  constexpr std::string_view kRegister[] = {"entry", "stay", "source", "derivation", "named-event"};
  const bool of_register =
      std::find(std::begin(kRegister), std::end(kRegister), event.target_kind) != std::end(kRegister);
  if (event.kind != "changed" || (!of_register && event.target_kind != "interview")) return "";
  const Json before = object_or_null(event.before), after = object_or_null(event.after);
  if (before.is_null() || after.is_null()) return "";
  Json names = before;
  names.update(after);
  std::string words;
  for (const auto& [name, unused] : names.items()) {
    if (before.value(name, Json()) == after.value(name, Json())) continue;
    std::string label = name == "dated" ? "when" : name;
    std::replace(label.begin(), label.end(), '_', ' ');
    const auto was = plain_value(before, name), is = plain_value(after, name);
    words += (words.empty() ? "" : "; ") + label;
    if (of_register && was && is && *was != *is) words += fmt::format(" {} → {}", *was, *is);
  }
  return one_line(words);
}

}  // namespace

std::string event_words(const JournalEvent& event) {
  const Row* row = row_of(event);
  if (row == nullptr) return fmt::format("{} {} {}", event.kind, kind_words(event.target_kind), event.target);
  std::string words(row->words);
  // A restriction is lifted by giving the passage other conditions; where they are withheld, either is
  // possible.
  if (event.kind == "restricted") {
    const Json after = object_or_null(event.after);
    if (after.is_null()) words = "restricted a passage or lifted its restriction";
    if (text_of(after, "access") == "open") words = "lifted the restriction of a passage";
  }
  put(words, "{kind}", kind_words(event.target_kind));
  const bool names_target = row->words.find("{}") != std::string_view::npos;
  put(words, "{}", event.target);
  if (!event.interview.empty() && !(names_target && event.target == event.interview))
    words += " in " + event.interview;
  return words;
}

std::string target_words(const JournalEvent& event) {
  const bool has_id = event.target_kind == "claim" || event.target_kind == "note" ||
                      event.target_kind == "entry-link" || event.target_kind == "quote-check" ||
                      event.target_kind == "claim-origin";
  return has_id ? event.target : "";
}

std::string change_words(const JournalEvent& event, const AuthorityLists& lists) {
  if (event.target_kind != "claim") return fields_words(event);
  const Json before = object_or_null(event.before), after = object_or_null(event.after);
  if (before.is_null() || after.is_null()) return "";
  // The first decision has the whole claim before and only what differs after.
  Json now = before;
  for (const auto& [name, value] : after.items()) now[name] = value;
  std::string words;
  std::string_view last;
  for (const auto& [name, label] : kValues) {
    if (!after.contains(name) || label == last) continue;
    const std::string was = value_of(before, name, lists), is = value_of(now, name, lists);
    if (was == is) continue;
    last = label;
    words += fmt::format("{}{} {} → {}", words.empty() ? "" : "; ", label, was, is);
  }
  if (after.contains("quotes")) words += words.empty() ? "other words quoted" : "; other words quoted";
  return one_line(words);
}

std::vector<std::string> difference_words(const DoubleDecision& difference, const AuthorityLists& lists) {
  const Json here = object_or_null(difference.here.state), there = object_or_null(difference.there.state);
  if (here.empty()) return {"here left undecided or taken away"};
  if (there.empty()) return {"there left undecided or taken away"};
  std::vector<std::string> lines;
  if (difference.target_kind == "claim")
    add_claim_differences(here, there, lists, lines);
  else
    add_plain_differences(here, there, lines);
  return lines;
}

}  // namespace witnessmark
