// The word table is an open-addressing hash table from 64-bit word hashes to roles; phrases are kept sorted
// by the hash of their first word so that a scan asks for them only where that word stands.
#include "witnessmark/language/date_lexicon.h"

#include <algorithm>
#include <charconv>
#include <unordered_map>

#include "language/dates/words/words.h"
#include "witnessmark/base/csv.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace dates {
namespace {

constexpr std::array<std::string_view, kRoleCount> kRoleNames{"month",         "month_short",
                                                              "weekday",       "weekdays",
                                                              "weekday_short", "number",
                                                              "multiplier",    "year_zero",
                                                              "ordinal",       "ordinal_ending",
                                                              "decade",        "season",
                                                              "seasons",       "unit",
                                                              "units",         "day_part",
                                                              "day_parts",     "clock_word",
                                                              "watch",         "watch_noun",
                                                              "day_word",      "present",
                                                              "past",          "future",
                                                              "part",          "part_noun",
                                                              "portion",       "portion_place",
                                                              "approx",        "degree",
                                                              "vague",         "following",
                                                              "later",         "long",
                                                              "frequency",     "every",
                                                              "determiner",    "era",
                                                              "place_in_time", "limit",
                                                              "range_word",    "era_sign",
                                                              "half_day",      "label",
                                                              "counted",       "after_year",
                                                              "pronoun",       "verb_may",
                                                              "service_place", "workplace",
                                                              "join",          "leave",
                                                              "correct",       "filler",
                                                              "elder",         "descendant",
                                                              "death",         "amount",
                                                              "participle",    "title",
                                                              "happening",     "belonging",
                                                              "yarn",          ""};

struct Named {
  std::string_view name;
  int value;
};
constexpr Named kUnits[]{{"second", 0}, {"minute", 1},  {"hour", 2},      {"day", 3},
                         {"week", 4},   {"weekend", 5}, {"fortnight", 6}, {"month", 7},
                         {"year", 8},   {"decade", 9},  {"century", 10}};
constexpr Named kSeasons[]{{"SP", 1}, {"SU", 2}, {"FA", 3}, {"WI", 4}};
constexpr Named kDayParts[]{{"MO", 1}, {"MI", 2}, {"AF", 3}, {"EV", 4}, {"NI", 5}, {"DT", 6}};
constexpr Named kMods[]{{"", 0},
                        {"START", 1},
                        {"MID", 2},
                        {"END", 3},
                        {"APPROX", 4},
                        {"BEFORE", 5},
                        {"AFTER", 6},
                        {"ON_OR_BEFORE", 7},
                        {"ON_OR_AFTER", 8},
                        {"LESS_THAN", 9},
                        {"MORE_THAN", 10},
                        {"EQUAL_OR_LESS", 11},
                        {"EQUAL_OR_MORE", 12},
                        {"UNTIL", 13},
                        {"ON_OR_AFTER", 14}};
constexpr Named kFollowing[]{{"next", 1}, {"previous", 2}, {"last", 3}, {"same", 4}, {"between", 5}};
constexpr Named kLater[]{{"after", 1}, {"before", 2}, {"ago", 3}};
constexpr Named kFrequencies[]{{"XXXX-XX-XXTXX", 0}, {"XXXX-XX-XX", 1}, {"XXXX-XX-XXTNI", 2}, {"XXXX-WXX", 3},
                               {"XXXX-XX", 4},       {"XXXX-QX", 5},    {"XXXX", 6}};
constexpr Named kEras[]{{"BC", 1}, {"AD", 2}};
constexpr Named kHalfDays[]{{"AM", 1}, {"PM", 2}};

template <std::size_t N>
bool look_up(const Named (&table)[N], std::string_view name, int& out) {
  for (const auto& row : table)
    if (row.name == name) return out = row.value, true;
  return false;
}

bool read_number(std::string_view text, int low, int high, int& out) {
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), out);
  return fault == std::errc{} && end == text.data() + text.size() && out >= low && out <= high;
}

bool read_clock(std::string_view text, int& out) {
  int hour = 0, minute = 0;
  if (text.size() != 5 || text[2] != ':' || !read_number(text.substr(0, 2), 0, 24, hour) ||
      !read_number(text.substr(3), 0, 59, minute))
    return false;
  out = hour * 60 + minute;
  return true;
}

/// The number a class keeps for a value; false when the value is not one the class knows.
bool role_value(Role role, std::string_view text, int& out) {
  switch (role) {
    case Role::month:
    case Role::month_short:
      return read_number(text, 1, 12, out);
    case Role::weekday:
    case Role::weekdays:
    case Role::weekday_short:
      return read_number(text, 1, 7, out);
    case Role::number:
    case Role::ordinal:
    case Role::decade:
      return read_number(text, 0, 99, out);
    case Role::multiplier:
      return read_number(text, 100, 1000, out);
    case Role::day_word:
      return read_number(text, -30, 30, out);
    case Role::season:
    case Role::seasons:
      return look_up(kSeasons, text, out);
    case Role::unit:
    case Role::units:
      return look_up(kUnits, text, out);
    case Role::day_part:
    case Role::day_parts:
    case Role::watch:
      return look_up(kDayParts, text, out);
    case Role::clock_word:
      return read_clock(text, out);
    case Role::part:
    case Role::part_noun:
    case Role::portion_place:
    case Role::approx:
    case Role::degree:
    case Role::limit:
      return look_up(kMods, text, out);
    case Role::following:
      return look_up(kFollowing, text, out);
    case Role::later:
      return look_up(kLater, text, out);
    case Role::frequency:
      return look_up(kFrequencies, text, out);
    case Role::era_sign:
      return look_up(kEras, text, out);
    case Role::half_day:
      return look_up(kHalfDays, text, out);
    default:
      out = 0;
      return text.empty();
  }
}

std::optional<Role> role_named(std::string_view name) {
  for (std::size_t i = 0; i < kRoleCount; ++i)
    if (!kRoleNames[i].empty() && kRoleNames[i] == name) return static_cast<Role>(i);
  return std::nullopt;
}

bool has_non_ascii(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) { return (c & 0x80) != 0; });
}

class Builder {
 public:
  Builder() : data_(std::make_unique<DateLexicon::Data>()) {}

  Result<void> take_words(const CsvFile& file) {
    if (auto ok = check_header(file, {"class", "word", "value"}); !ok) return ok;
    for (std::size_t i = 1; i < file.rows.size(); ++i) {
      const auto& row = file.rows[i];
      if (row.cells.size() < 3) return short_row(file, row);
      const auto role = role_named(row.cells[0].text);
      if (!role)
        return fault(file, row.cells[0], "unknown class \"" + row.cells[0].text + "\"",
                     "use one of the classes in README.dates.md");
      const auto word = fold(row.cells[1].text);
      if (word.empty() || word.find(' ') != std::string::npos)
        return fault(file, row.cells[1], "a word is missing or has a space",
                     "write one word; names of several words "
                     "belong to named-days.csv or named-times.csv");
      int value = 0;
      if (!role_value(*role, row.cells[2].text, value))
        return fault(file, row.cells[2],
                     "\"" + row.cells[2].text + "\" is not a value of class " + row.cells[0].text,
                     "see the class in README.dates.md");
      add(word, *role, value);
    }
    return {};
  }

  Result<void> take_named_days(const CsvFile& file) {
    if (auto ok = check_header(file, {"name", "rule"}); !ok) return ok;
    for (std::size_t i = 1; i < file.rows.size(); ++i) {
      const auto& row = file.rows[i];
      if (row.cells.size() < 2) return short_row(file, row);
      auto named = parse_named_day(row.cells[1].text);
      if (!named) return fault(file, row.cells[1], named.error().message, named.error().advice);
      Phrase phrase;
      phrase.day = named.value();
      if (auto ok = add_phrase(file, row.cells[0], std::move(phrase)); !ok) return ok;
    }
    return {};
  }

  Result<void> take_named_times(const CsvFile& file) {
    if (auto ok = check_header(file, {"name", "when"}); !ok) return ok;
    for (std::size_t i = 1; i < file.rows.size(); ++i) {
      const auto& row = file.rows[i];
      if (row.cells.size() < 2) return short_row(file, row);
      auto when = parse_edtf(row.cells[1].text);
      if (!when) return fault(file, row.cells[1], when.error().message, when.error().advice);
      Phrase phrase;
      phrase.when = when.value();
      if (auto ok = add_phrase(file, row.cells[0], std::move(phrase)); !ok) return ok;
    }
    return {};
  }

  std::unique_ptr<DateLexicon::Data> finish() {
    for (const auto word : kFunctionWords) word_for(hash_word(word));
    for (auto& word : data_->words) {
      word.rules = rules_at(word.roles, word.hash) | (word.is(Role::determiner) ? kBehindDeterminer : 0) |
                   (word.hash == hash_word("at") || word.hash == hash_word("i") ? kLooksAhead : 0);
      word.rules_after_determiner = rules_after_determiner(word.roles, word.hash);
    }
    auto& phrases = data_->phrases;
    std::stable_sort(phrases.begin(), phrases.end(), [](const Phrase& a, const Phrase& b) {
      if (a.words[0] != b.words[0]) return a.words[0] < b.words[0];
      return a.words.size() > b.words.size();
    });
    std::size_t size = 64;
    while (size < data_->words.size() * 4) size *= 2;
    data_->mask = size - 1;
    data_->slots.assign(size, {});
    for (std::size_t i = 0; i < data_->words.size(); ++i) {
      const auto& word = data_->words[i];
      std::size_t slot = word.hash & data_->mask;
      while (data_->slots[slot].hash != 0) slot = (slot + 1) & data_->mask;
      data_->slots[slot] = {word.hash, &word, word.rules};
    }
    return std::move(data_);
  }

 private:
  static Error fault(const CsvFile& file, const CsvCell& cell, std::string message, std::string advice) {
    return {file.source, cell.line, cell.column, std::move(message), std::move(advice)};
  }
  static Result<void> short_row(const CsvFile& file, const CsvRow& row) {
    return Error{file.source, row.line, 1, "the row has too few columns",
                 "fill all columns of the header row"};
  }
  static Result<void> check_header(const CsvFile& file, std::initializer_list<std::string_view> names) {
    std::size_t i = 0;
    for (const auto name : names) {
      if (file.rows.empty() || file.rows[0].cells.size() <= i || file.rows[0].cells[i].text != name)
        return Error{file.source, 1, 1,
                     "column " + std::to_string(i + 1) + " must be \"" + std::string(name) + "\"",
                     "see README.dates.md for the columns"};
      ++i;
    }
    return {};
  }

  Word& word_for(std::uint64_t hash) {
    const auto [at, fresh] = index_.try_emplace(hash, data_->words.size());
    if (fresh) {
      data_->words.emplace_back();
      data_->words.back().hash = hash;
    }
    return data_->words[at->second];
  }
  void add(std::string_view word, Role role, int value) {
    data_->has_non_ascii |= has_non_ascii(word);
    auto& entry = word_for(hash_word(word));
    entry.roles |= bit(role);
    entry.values[static_cast<std::size_t>(role)] = static_cast<std::int16_t>(value);
  }
  Result<void> add_phrase(const CsvFile& file, const CsvCell& cell, Phrase phrase) {
    phrase.name = cell.text;
    const auto folded = fold(cell.text);
    data_->has_non_ascii |= has_non_ascii(folded);
    phrase.words = phrase_words(folded);
    if (phrase.words.empty() || phrase.words.size() > 8)
      return fault(file, cell, "a name has one to eight words", "shorten it or fill it in");
    if (phrase.words.size() > 1 && phrase.words[0] == hash_word("the"))
      phrase.words.erase(phrase.words.begin());
    word_for(phrase.words[0]).roles |= bit(Role::phrase);
    if (phrase.words[0] == hash_word("saint")) {
      Phrase short_form = phrase;
      short_form.words[0] = hash_word("st");
      word_for(short_form.words[0]).roles |= bit(Role::phrase);
      data_->phrases.push_back(std::move(short_form));
    }
    data_->phrases.push_back(std::move(phrase));
    return {};
  }

  std::unique_ptr<DateLexicon::Data> data_;
  std::unordered_map<std::uint64_t, std::size_t> index_;
};

Result<CsvFile> read_csv(const FileReader& files, const std::filesystem::path& path) {
  auto bytes = files.read(path);
  if (!bytes) return bytes.error();
  return parse_csv(bytes.value(), path.string());
}

}  // namespace

std::string_view day_part_time(DayPart part) {
  static constexpr std::string_view kTimes[] = {"", "TMO", "TMI", "TAF", "TEV", "TNI", "TDT"};
  return kTimes[static_cast<std::size_t>(part)];
}
std::string_view season_code(Season season) {
  return season == Season::none ? "" : kSeasons[static_cast<std::size_t>(season) - 1].name;
}
std::string_view mod_name(Mod mod) {
  return mod == Mod::until ? "" : kMods[static_cast<std::size_t>(mod)].name;
}

}  // namespace dates

DateLexicon::DateLexicon(std::unique_ptr<Data> data) : data_(std::move(data)) {}
DateLexicon::DateLexicon(DateLexicon&&) noexcept = default;
DateLexicon& DateLexicon::operator=(DateLexicon&&) noexcept = default;
DateLexicon::~DateLexicon() = default;

Result<DateLexicon> DateLexicon::load(const FileReader& files, const std::filesystem::path& folder) {
  dates::Builder builder;
  auto words = dates::read_csv(files, folder / "date-words.csv");
  if (!words) return words.error();
  if (auto ok = builder.take_words(words.value()); !ok) return ok.error();
  auto days = dates::read_csv(files, folder / "named-days.csv");
  if (!days) return days.error();
  if (auto ok = builder.take_named_days(days.value()); !ok) return ok.error();
  if (files.exists(folder / "named-times.csv")) {
    auto times = dates::read_csv(files, folder / "named-times.csv");
    if (!times) return times.error();
    if (auto ok = builder.take_named_times(times.value()); !ok) return ok.error();
  }
  return DateLexicon(builder.finish());
}

}  // namespace witnessmark
