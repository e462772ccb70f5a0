#include "language/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <functional>
#include <optional>

#include "language/lexicon_file.h"
#include "witnessmark/base/did_you_mean.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::array<std::string_view, static_cast<std::size_t>(WordClass::count_)> kWordClasses{
    "determiner",
    "indefinite",
    "be",
    "present_be",
    "have",
    "had_or_would",
    "do",
    "modal",
    "would",
    "we",
    "us",
    "they",
    "it",
    "she",
    "this",
    "them",
    "pronoun",
    "new_one",
    "exist",
    "there",
    "in_there",
    "at",
    "from",
    "to",
    "of",
    "by",
    "with",
    "for",
    "relation",
    "relation_degree",
    "side",
    "numbered_place",
    "coordinator",
    "subordinator",
    "relative",
    "when",
    "where",
    "as",
    "before",
    "after",
    "until",
    "if",
    "then",
    "terminator",
    "terminator_soft",
    "question_word",
    "how_many",
    "both",
    "old",
    "only",
    "more",
    "number_sign",
    "everything",
    "nothing",
    "negative",
    "negative_determiner",
    "no_longer",
    "yet",
    "never",
    "gone",
    "person",
    "activity",
    "people_count",
    "of_them",
    "colour",
    "shade",
    "material",
    "type",
    "condition",
    "event_noun",
    "life_event",
    "along",
    "in_place",
    "instead_of",
    "had_been",
    "used_to",
    "used_word",
    "still",
    "already",
    "adverb",
    "got",
    "interviewer_label",
    "narrator_label",
    "filler",
    "off",
    "self",
    "whereabouts",
    "quality",
    "abstract",
    "new",
    "mental",
    "when_noun",
    "my_time",
    "measure",
    "one",
    "habit",
    "past_form",
    "journey",
    "leaving",
    "article",
    "like",
    "way",
    "throughout",
    "you",
    "than",
    "past_help",
    "our",
    "any",
    "exception",
    "other_time",
    "either",
    "source"};

constexpr std::array<std::string_view, 19> kCueClasses{
    "hedge",    "told",       "told_order",     "told_own",   "read",
    "inferred", "would_have", "own_would_have", "first_hand", "memory",
    "pseudo",   "doubt",      "correction",     "nonfactual", "yes",
    "maybe",    "no",         "unknown",        "before_time"};

constexpr std::array<std::string_view, 23> kCueValues{
    "",         "hedged",    "guess",    "sound",     "alone",   "shown",  "not",
    "grounds",  "dating",    "blocks",   "when",      "general", "affirm", "aside",
    "contrary", "not_as_if", "not_only", "not_until", "child",
    "elsewhere", "blocks_when", "agrees", "states"};

/// The values a class of cues may have.
std::vector<std::string> values_of(CueClass cue) {
  switch (cue) {
    case CueClass::hedge:
      return {"", "hedged", "guess"};
    case CueClass::told:
      return {"", "sound"};
    case CueClass::read:
      return {"", "alone", "shown"};
    case CueClass::inferred:
      return {"", "not", "grounds", "dating"};
    case CueClass::memory:
      return {"blocks", "blocks_when", "when", "general"};
    case CueClass::pseudo:
      return {"affirm", "aside", "contrary", "not_as_if", "not_only", "not_until"};
    case CueClass::before_time:
      return {"", "child", "elsewhere"};
    case CueClass::yes:
      return {"", "agrees", "states"};
    default:
      return {""};
  }
}

constexpr std::array<std::string_view, 11> kQuantityClasses{
    "unit",  "ten",       "times", "phrase",    "about",      "about_before",
    "least", "more_than", "most",  "less_than", "not_a_count"};
constexpr std::array<std::string_view, 14> kVerbKinds{"begins",   "ends",    "move",  "replace", "swap",
                                                      "takeover", "present", "paint", "unpaint", "name",
                                                      "happened", "located", "built", "does"};
constexpr std::array<std::string_view, 2> kFrames{"object", "subject"};
constexpr std::array<std::string_view, 18> kNeeds{
    "",     "place", "returned", "toplace", "fromplace", "weobject", "past",    "move",   "swap",
    "seen", "sight", "colour",   "name",    "thing",     "location", "counted", "aboard", "newthing"};

template <typename Value, std::size_t N>
std::optional<Value> index_of(const std::array<std::string_view, N>& names, std::string_view text) {
  const auto found = std::find(names.begin(), names.end(), text);
  if (found == names.end()) return std::nullopt;
  return static_cast<Value>(found - names.begin());
}

/// What may have been meant, else what there is.
std::string advice_of(const std::vector<std::string>& names, const std::string& text) {
  const std::string near = did_you_mean(near_matches(text, names));
  if (!near.empty()) return near;
  std::vector<std::string> said;
  for (const std::string& name : names) said.push_back(name.empty() ? "nothing" : name);
  return said.size() == 1 ? "leave it empty" : "give " + one_of_words(said);
}

/// A name of a list that is not known.
template <std::size_t N>
Error unknown(const LexiconFile& file, const LexiconFile::Row& row, std::size_t column, std::string_view what,
              const std::array<std::string_view, N>& names) {
  return file.error(row, column, fmt::format("{} \"{}\" is not known", what, row[column]),
                    advice_of({names.begin(), names.end()}, row[column]));
}

Result<void> load_equal(Words& words, const FileReader& files, const std::filesystem::path& folder) {
  const auto file = LexiconFile::load(files, folder / "equivalents.csv", {"word", "same_as"});
  if (!file) return file.error();
  for (const LexiconFile::Row& row : file->rows()) {
    const std::string from = fold(row[0]);
    const std::string to = fold(row[1]);
    if (from.empty() || to.empty() || tokenize(from).size() != 1 || tokenize(to).size() != 1) {
      return file->error(row, 0, fmt::format("\"{}\" and \"{}\" are not one word each", row[0], row[1]),
                         "give one word in each column");
    }
    words.equal[tokenize(from)[0].form] = tokenize(to)[0].form;
  }
  return {};
}

Result<void> load_plurals(Words& words, const FileReader& files, const std::filesystem::path& folder) {
  const auto file = LexiconFile::load(files, folder / "inflections.csv", {"ending", "plural"});
  if (!file) return file.error();
  for (const LexiconFile::Row& row : file->rows()) {
    if (row[1] == "+") {
      words.going_endings.push_back(row[0]);
    } else if (row[1] == "-") {
      words.past_endings.push_back(row[0]);
    } else {
      words.plural_endings.emplace_back(row[0], row[1]);
    }
  }
  words.any_doing.kind = VerbKind::happened;
  words.any_doing.needs = VerbNeeds::thing;
  words.any_does.kind = VerbKind::does;
  words.any_does.frame = VerbFrame::subject;
  words.any_going.kind = VerbKind::located;
  words.any_going.frame = VerbFrame::subject;
  return {};
}

/// Adds a phrase: one word to its info, several to the trie.
void add_phrase(Words& words, std::string_view phrase, const std::function<void(WordInfo&)>& single,
                std::uint32_t value) {
  const std::vector<std::uint64_t> forms = words.forms_of(phrase);
  if (forms.size() == 1) {
    single(words.at(forms[0]));
  } else if (!forms.empty()) {
    WordInfo& first = words.at(forms[0]);
    first.starts_phrase = true;
    if (Words::kind_of(value) == Words::PhraseKind::quantity) first.starts_quantity = true;
    words.phrases.add(forms, value);
  }
}

Result<void> load_quantities(Words& words, const FileReader& files, const std::filesystem::path& folder) {
  const auto file = LexiconFile::load(files, folder / "quantities.csv", {"phrase", "class", "least", "most"});
  if (!file) return file.error();
  for (const LexiconFile::Row& row : file->rows()) {
    const auto what = index_of<QuantityClass>(kQuantityClasses, row[1]);
    if (!what) return unknown(*file, row, 1, "class", kQuantityClasses);
    QuantityWord word{*what, 0, 0};
    for (const auto& [cell, value] : {std::pair{2, &word.least}, std::pair{3, &word.most}}) {
      const std::string& text = row[static_cast<std::size_t>(cell)];
      if (text.empty() || text.size() > 9 ||
          !std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; })) {
        return file->error(row, static_cast<std::size_t>(cell),
                           fmt::format("\"{}\" is not a whole number", text), "write digits");
      }
      *value = std::stoll(text);
    }
    const std::size_t index = words.quantities.size();
    words.quantities.push_back(word);
    if (*what == QuantityClass::unit || *what == QuantityClass::ten) {
      const std::vector<Token> tokens = tokenize(fold(row[0]));
      // "two" and "2" become one form, wherever words are compared.
      if (tokens.size() == 1) {
        words.digits_of[tokens[0].form] = std::to_string(word.least);
        words.equal[tokens[0].form] = word_form(std::to_string(word.least));
      }
    }
    add_phrase(
        words, row[0], [index](WordInfo& info) { info.quantity = static_cast<std::int32_t>(index); },
        Words::phrase_value(Words::PhraseKind::quantity, index));
  }
  return {};
}

Result<void> load_grammar(Words& words, const FileReader& files, const std::filesystem::path& folder) {
  const auto file = LexiconFile::load(files, folder / "words.csv", {"phrase", "class"});
  if (!file) return file.error();
  for (const LexiconFile::Row& row : file->rows()) {
    const auto what = index_of<WordClass>(kWordClasses, row[1]);
    if (!what) return unknown(*file, row, 1, "class", kWordClasses);
    if (*what == WordClass::source && row[0].find(' ') != std::string::npos)
      return file->error(row, 0, "a source is one word", "name it by its last word");
    add_phrase(
        words, row[0],
        [&](WordInfo& info) {
          if (*what == WordClass::source) {
            info.source = true;
          } else {
            info.flags.set(*what);
          }
        },
        Words::phrase_value(Words::PhraseKind::word, static_cast<std::size_t>(*what)));
  }
  return {};
}

Result<void> load_cues(Words& words, const FileReader& files, const std::filesystem::path& folder) {
  const auto file = LexiconFile::load(files, folder / "cues.csv", {"phrase", "class", "value"});
  if (!file) return file.error();
  for (const LexiconFile::Row& row : file->rows()) {
    const auto what = index_of<CueClass>(kCueClasses, row[1]);
    if (!what) return unknown(*file, row, 1, "class", kCueClasses);
    const std::vector<std::string> values = values_of(*what);
    if (std::find(values.begin(), values.end(), row[2]) == values.end()) {
      return file->error(row, 2, fmt::format("\"{}\" is no value of class {}", row[2], row[1]),
                         advice_of(values, row[2]));
    }
    const std::size_t index = words.cues.size();
    words.cues.push_back({*what, *index_of<CueValue>(kCueValues, row[2]), fold(row[0])});
    const auto single = [&](WordInfo& info) {
      if (info.cue < 0) {
        info.cue = static_cast<std::int32_t>(words.cue_lists.size());
        words.cue_lists.emplace_back();
      }
      words.cue_lists[static_cast<std::size_t>(info.cue)].push_back(static_cast<std::uint32_t>(index));
    };
    add_phrase(words, row[0], single, Words::phrase_value(Words::PhraseKind::cue, index));
  }
  return {};
}

Result<void> load_verb_forms(Words& words, const LexiconFile& file, const LexiconFile::Row& row,
                             std::int32_t group) {
  std::size_t begin = 0;
  for (int form = 0; form < 5; ++form) {
    const std::size_t end = std::min(row[1].find(';', begin), row[1].size());
    if (form < 4 && end == row[1].size()) {
      return file.error(row, 1, "five forms are wanted",
                        "base;third person;past;participle;ing form, variants by |");
    }
    std::string part = row[1].substr(begin, end - begin);
    for (std::size_t from = 0; from <= part.size();) {
      const std::size_t to = std::min(part.find('|', from), part.size());
      const std::vector<std::uint64_t> forms = words.forms_of(part.substr(from, to - from));
      if (forms.size() == 1) {
        WordInfo& info = words.at(forms[0]);
        const int slot = info.verb_group[0] < 0 || info.verb_group[0] == group ? 0 : 1;
        info.verb_forms[slot] = static_cast<std::uint8_t>(info.verb_forms[slot] | (1U << form));
        info.verb_group[slot] = group;
      }
      from = to + 1;
    }
    begin = end + 1;
  }
  return {};
}

Result<void> load_verbs(Words& words, const FileReader& files, const std::filesystem::path& folder) {
  const auto file = LexiconFile::load(files, folder / "verbs.csv",
                                      {"verb", "forms", "particle", "statement", "frame", "needs"});
  if (!file) return file.error();
  std::unordered_map<std::string, std::int32_t> groups;
  for (const LexiconFile::Row& row : file->rows()) {
    Verb verb;
    verb.base = fold(row[0]);
    verb.particle = fold(row[2]);
    verb.name = verb.particle.empty() ? verb.base : verb.base + " " + verb.particle;
    verb.particle_forms = words.forms_of(verb.particle);
    const auto kind = index_of<VerbKind>(kVerbKinds, row[3]);
    const auto frame = index_of<VerbFrame>(kFrames, row[4]);
    const auto needs = index_of<VerbNeeds>(kNeeds, row[5]);
    if (!kind) return unknown(*file, row, 3, "statement", kVerbKinds);
    if (!frame) return unknown(*file, row, 4, "frame", kFrames);
    if (!needs) return unknown(*file, row, 5, "need", kNeeds);
    verb.kind = *kind;
    verb.frame = *frame;
    verb.needs = *needs;
    auto [group, made] = groups.emplace(verb.base, static_cast<std::int32_t>(words.verb_groups.size()));
    if (made) words.verb_groups.emplace_back();
    if (const auto read = load_verb_forms(words, *file, row, group->second); !read) return read.error();
    words.verb_groups[static_cast<std::size_t>(group->second)].push_back(
        static_cast<std::uint32_t>(words.verbs.size()));
    words.verbs.push_back(std::move(verb));
  }
  for (std::vector<std::uint32_t>& group : words.verb_groups) {
    std::stable_sort(group.begin(), group.end(), [&words](std::uint32_t a, std::uint32_t b) {
      const Verb& x = words.verbs[a];
      const Verb& y = words.verbs[b];
      if (x.particle_forms.size() != y.particle_forms.size())
        return x.particle_forms.size() > y.particle_forms.size();
      const auto weight = [](VerbNeeds needs) {
        // The more a row asks for, the earlier it is tried.
        if (needs == VerbNeeds::nothing) return 3;
        if (needs == VerbNeeds::colour) return 0;
        return needs == VerbNeeds::location || needs == VerbNeeds::newthing || needs == VerbNeeds::move ||
                       needs == VerbNeeds::swap
                   ? 1
                   : 2;
      };
      return weight(x.needs) < weight(y.needs);
    });
  }
  return {};
}

}  // namespace

std::string_view to_string(CueClass cue) {
  return kCueClasses[static_cast<std::size_t>(cue)];
}
std::string_view to_string(CueValue value) {
  return kCueValues[static_cast<std::size_t>(value)];
}
std::string value_of(const Cue& cue) {
  std::string value(to_string(cue.cue));
  if (cue.value != CueValue::none) value.append(" ").append(to_string(cue.value));
  return value;
}
std::string_view to_string(WordClass word) {
  return kWordClasses[static_cast<std::size_t>(word)];
}

WordInfo& Words::at(std::uint64_t form) {
  const auto slot_of = [this](std::uint64_t f) {
    std::uint64_t i = (f * 0x9E3779B97F4A7C15ULL >> 20) & mask;
    while (table[i].second >= 0 && table[i].first != f) i = (i + 1) & mask;
    return i;
  };
  std::uint64_t slot = slot_of(form);
  if (table[slot].second >= 0) return infos[static_cast<std::size_t>(table[slot].second)];
  if ((infos.size() + 1) * 4 > table.size()) {
    const auto old = std::move(table);
    table.assign(old.size() * 4, {0, -1});
    mask = table.size() - 1;
    for (const auto& entry : old) {
      if (entry.second >= 0) table[slot_of(entry.first)] = entry;
    }
    slot = slot_of(form);
  }
  table[slot] = {form, static_cast<std::int32_t>(infos.size())};
  infos.emplace_back();
  return infos.back();
}

void Words::drop_number_stops(std::vector<Token>& tokens) const {
  const auto before_number = [](const Token& stop, const Token& next) {
    return stop.mark == '.' && next.kind == Token::Kind::number;
  };
  const auto first = std::adjacent_find(tokens.begin(), tokens.end(), before_number);
  if (first == tokens.end()) return;
  auto kept = static_cast<std::size_t>(first - tokens.begin());
  for (std::size_t i = kept; i < tokens.size(); ++i) {
    if (tokens[i].mark == '.' && kept > 0 && i + 1 < tokens.size() &&
        tokens[i + 1].kind == Token::Kind::number) {
      const WordInfo* before = find(tokens[kept - 1].form);
      if (before && before->flags.has(WordClass::number_sign)) continue;
    }
    if (kept != i) tokens[kept] = tokens[i];
    ++kept;
  }
  tokens.resize(kept);
}

void Words::normalize(std::vector<Token>& tokens) const {
  drop_number_stops(tokens);
  for (Token& token : tokens) {
    if (token.kind != Token::Kind::word) continue;
    const std::uint64_t form = common_form(token.form);
    if (token.stem == token.form) token.stem = form;
    token.form = form;
  }
}

std::vector<std::uint64_t> Words::forms_of(std::string_view phrase) const {
  std::vector<Token> tokens = tokenize(fold(phrase));
  normalize(tokens);
  std::vector<std::uint64_t> forms;
  forms.reserve(tokens.size());
  for (const Token& token : tokens) forms.push_back(token.form);
  return forms;
}

bool Words::is_going(std::string_view word) const {
  constexpr std::size_t kLongestShort = 4;
  return word.size() > kLongestShort &&
         std::any_of(going_endings.begin(), going_endings.end(),
                     [&](const std::string& ending) { return word.ends_with(ending); });
}

bool Words::is_past(std::string_view word) const {
  constexpr std::size_t kLongestShort = 4;
  return word.size() > kLongestShort &&
         std::any_of(past_endings.begin(), past_endings.end(),
                     [&](const std::string& ending) { return word.ends_with(ending); });
}

std::string Words::plural_of(std::string_view word) const {
  for (const auto& [ending, plural] : plural_endings) {
    if (word.size() > ending.size() && word.substr(word.size() - ending.size()) == ending) {
      return std::string(word.substr(0, word.size() - ending.size())) + plural;
    }
  }
  return std::string(word);
}

Result<Words> load_words(const FileReader& files, const std::string& folder) {
  Words words;
  const std::filesystem::path path(folder);
  for (const auto load : {load_equal, load_plurals, load_quantities, load_grammar, load_cues, load_verbs}) {
    if (const Result<void> loaded = load(words, files, path); !loaded) return loaded.error();
  }
  return words;
}

}  // namespace witnessmark
