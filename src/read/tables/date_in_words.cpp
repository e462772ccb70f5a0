#include "read/tables/date_in_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "witnessmark/base/ascii.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/time/edtf.h"

namespace witnessmark {
namespace {

using Words = std::vector<std::string>;
using Word = std::pair<std::string_view, std::string_view>;

/// Codes of the standard for seasons.
constexpr Word kSeasons[] = {
    {"spring", "21"}, {"summer", "22"}, {"autumn", "23"}, {"fall", "23"}, {"winter", "24"}};
/// Marks of the standard for what is said before a date.
constexpr Word kMarks[] = {{"c", "~"},       {"ca", "~"},      {"circa", "~"},         {"about", "~"},
                           {"around", "~"},  {"approx", "~"},  {"approximately", "~"}, {"probably", "?"},
                           {"perhaps", "?"}, {"possibly", "?"}};

constexpr std::string_view kEmpty[] = {"the", "of", "in", "year"};

bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}

template <typename Table>
std::string_view look_up(const Table& table, std::string_view word) {
  for (const auto& [name, value] : table)
    if (name == word) return value;
  return {};
}

/// Runs of letters, runs of digits with what fills a year up to four places ("195-", "19??") or makes it a
/// decade ("1950s"), and hyphens; blanks and full stops divide.
Words words_of(std::string_view cell) {
  std::string text = fold(cell);
  for (const std::string_view dash : {"\u2013", "\u2014"})
    for (auto at = text.find(dash); at != std::string::npos; at = text.find(dash))
      text.replace(at, dash.size(), "-");
  Words words;
  for (std::size_t i = 0; i < text.size();) {
    std::size_t end = i + 1;
    if (is_letter(text[i])) {
      while (end < text.size() && is_letter(text[end])) ++end;
    } else if (is_digit(text[i])) {
      while (end < text.size() && is_digit(text[end])) ++end;
      const std::size_t digits = end - i;
      const auto fills = [](char c) { return c == '-' || c == '?'; };
      std::size_t filled = end;
      while (filled < text.size() && filled - i < 4 && fills(text[filled])) ++filled;
      if ((digits == 2 || digits == 3) && filled - i == 4) end = filled;
      if (digits == 4 && end < text.size() && text[end] == 's') ++end;
    } else if (text[i] == ' ' || text[i] == '.' || text[i] == ',') {
      ++i;
      continue;
    }
    const std::string word = text.substr(i, end - i);
    if (std::find(std::begin(kEmpty), std::end(kEmpty), word) == std::end(kEmpty)) words.push_back(word);
    i = end;
  }
  return words;
}

bool is_year(const std::string& word) {
  return word.size() == 4 && std::all_of(word.begin(), word.end(), is_digit);
}

/// "195-" and "1950s" as 195X.
std::string year_of(const std::string& word) {
  if (is_year(word)) return word;
  if (word.size() == 5 && word[4] == 's' && word[3] == '0') return word.substr(0, 3) + "X";
  if (word.size() != 4 || !is_digit(word[0]) || !is_digit(word[1])) return "";
  std::string year = word;
  std::replace_if(
      year.begin(), year.end(), [](char c) { return !is_digit(c); }, 'X');
  return year;
}

std::string unmarked(const Words& words) {
  if (words.size() == 1) return year_of(words[0]);
  if (words.size() != 2) return "";
  const bool year_first = is_year(words[0]);
  const std::string& year = words[year_first ? 0 : 1];
  const std::string& part = words[year_first ? 1 : 0];
  if (!is_year(year)) return "";
  if (const auto season = look_up(kSeasons, part); !season.empty()) return fmt::format("{}-{}", year, season);
  const int month = month_named(part);
  return month == 0 ? "" : fmt::format("{}-{:02}", year, month);
}

/// One date with what marks it.
std::string one_date(Words words) {
  std::string mark;
  if (!words.empty())
    if (const auto said = look_up(kMarks, words.front()); !said.empty())
      mark = said, words.erase(words.begin());
  if (!words.empty() && words.back() == "?") {
    mark = mark == "~" ? "%" : "?";
    words.pop_back();
  }
  const std::string date = unmarked(words);
  return date.empty() ? "" : date + mark;
}

std::string year_beside(const std::string& word, int steps) {
  return is_year(word) ? fmt::format("{:04}", std::stoi(word) + steps) : "";
}

/// "1957 - 59", "1957 to 1959": the words around the one at `at`.
std::string two_dates(const Words& words, std::size_t at, std::string_view pattern) {
  const Words first(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(at));
  Words last(words.begin() + static_cast<std::ptrdiff_t>(at) + 1, words.end());
  const bool short_year = last.size() == 1 && last[0].size() == 2 && first.size() == 1 && is_year(first[0]) &&
                          std::all_of(last[0].begin(), last[0].end(), is_digit);
  if (short_year) last[0] = first[0].substr(0, 2) + last[0];
  const std::string a = one_date(first), b = one_date(last);
  return a.empty() || b.empty() ? "" : fmt::format(fmt::runtime(pattern), a, b);
}

std::string with_relation(const Words& words) {
  if (words.size() < 2) return "";
  const Words rest(words.begin() + 1, words.end());
  const auto between = [&](std::string_view word, std::string_view pattern) {
    const auto at = std::find(rest.begin(), rest.end(), word);
    return at == rest.end() ? "" : two_dates(rest, static_cast<std::size_t>(at - rest.begin()), pattern);
  };
  if (words[0] == "between") return between("and", "[{}..{}]");
  if (words[0] == "either") return between("or", "[{},{}]");
  if (words[0] == "from")
    if (const std::string range = between("to", "{}/{}"); !range.empty()) return range;
  if (rest.size() == 1 && words[0] == "before" && is_year(rest[0]))
    return "[.." + year_beside(rest[0], -1) + "]";
  if (rest.size() == 1 && words[0] == "after" && is_year(rest[0]))
    return "[" + year_beside(rest[0], 1) + "..]";
  const std::string date = one_date(rest);
  if (date.empty()) return "";
  if (words[0] == "by") return "[.." + date + "]";
  if (words[0] == "since") return date + "/..";
  return words[0] == "until" || words[0] == "till" ? "../" + date : "";
}

std::string any_date(const Words& words) {
  if (std::string date = one_date(words); !date.empty()) return date;
  if (std::string date = with_relation(words); !date.empty()) return date;
  constexpr Word kPatterns[] = {{"-", "{}/{}"}, {"to", "{}/{}"}, {"or", "[{},{}]"}};
  for (std::size_t i = 1; i + 1 < words.size(); ++i)
    if (const auto pattern = look_up(kPatterns, words[i]); !pattern.empty())
      return two_dates(words, i, pattern);
  return "";
}

}  // namespace

int month_named(std::string_view word) {
  static constexpr std::array<std::string_view, 12> kMonths = {
      "january", "february", "march",     "april",   "may",      "june",
      "july",    "august",   "september", "october", "november", "december"};
  const std::string folded = fold(word);
  if (folded == "sept") return 9;
  for (std::size_t i = 0; i < kMonths.size(); ++i) {
    if (folded == kMonths[i] || (folded.size() == 3 && kMonths[i].starts_with(folded)))
      return static_cast<int>(i) + 1;
  }
  return 0;
}

std::optional<std::string> date_in_words(std::string_view cell) {
  constexpr std::size_t kLongest = 60;
  if (cell.size() > kLongest) return std::nullopt;
  const std::string date = any_date(words_of(cell));
  // A range that runs backwards, and the like, is no advice.
  if (date.empty() || !parse_edtf(date)) return std::nullopt;
  return date;
}

}  // namespace witnessmark
