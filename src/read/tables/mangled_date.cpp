#include "read/tables/mangled_date.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "read/tables/date_in_words.h"
#include "witnessmark/base/ascii.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/time/day.h"

namespace witnessmark {
namespace {

constexpr std::string_view kKeepText = "format the column as text before typing";

/// A cell cut into runs of digits, runs of letters and single other characters; spaces are dropped.
struct Piece {
  enum class Kind { digits, letters, other } kind;
  std::string text;
};

std::vector<Piece> pieces_of(std::string_view cell) {
  std::vector<Piece> pieces;
  for (const char c : cell) {
    if (c == ' ') {
      pieces.push_back({Piece::Kind::other, " "});
      continue;
    }
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    const auto kind = is_digit(c) ? Piece::Kind::digits : letter ? Piece::Kind::letters : Piece::Kind::other;
    if (kind != Piece::Kind::other && !pieces.empty() && pieces.back().kind == kind) {
      pieces.back().text += c;
    } else {
      pieces.push_back({kind, std::string(1, c)});
    }
  }
  std::erase_if(pieces, [](const Piece& piece) { return piece.text == " "; });
  return pieces;
}

/// d digits, l letters, and other characters as they are: "d/d/d", "d-l-d".
std::string shape_of(const std::vector<Piece>& pieces) {
  std::string shape;
  for (const Piece& piece : pieces) {
    shape += piece.kind == Piece::Kind::digits ? "d" : piece.kind == Piece::Kind::letters ? "l" : piece.text;
  }
  return shape;
}

int number(const Piece& piece) {
  return piece.text.size() > 4 ? 9999 : std::stoi(piece.text);
}

/// The year in full, two digits as 19dd.
std::string year_text(const Piece& piece) {
  return piece.text.size() == 2 ? "19" + piece.text : fmt::format("{:0>4}", piece.text);
}

std::string century(const Piece& year) {
  return year.text.size() == 2 ? " (in the century it belongs to)" : "";
}

MangledDate changed(std::string advice) {
  return {"looks like a date changed by a spreadsheet", std::move(advice) + "; " + std::string(kKeepText)};
}

/// Three numbers: year first, or day and month in either order and the year last.
std::optional<MangledDate> three_numbers(const Piece& a, const Piece& b, const Piece& c) {
  if (a.text.size() == 4) {
    if (number(b) < 1 || number(b) > 12 || number(c) < 1 || number(c) > 31) return std::nullopt;
    return changed(fmt::format("write {}-{:02}-{:02}", a.text, number(b), number(c)));
  }
  if (a.text.size() > 2 || b.text.size() > 2 || (c.text.size() != 2 && c.text.size() != 4))
    return std::nullopt;
  const std::string year = year_text(c);
  std::vector<std::string> readings;
  if (number(b) >= 1 && number(b) <= 12)
    readings.push_back(fmt::format("{}-{:02}-{:02}", year, number(b), number(a)));
  if (number(a) >= 1 && number(a) <= 12 && number(a) != number(b)) {
    readings.push_back(fmt::format("{}-{:02}-{:02}", year, number(a), number(b)));
  }
  if (readings.empty()) return std::nullopt;
  if (readings.size() == 1) return changed("write " + readings[0] + century(c));
  return changed(fmt::format("write {} or {}, whichever the source says", readings[0], readings[1]) +
                 century(c));
}

/// 03/1958, and 1958-1960 for a range.
std::optional<MangledDate> two_numbers(const Piece& a, char between, const Piece& b) {
  if (a.text.size() <= 2 && b.text.size() == 4 && number(a) >= 1 && number(a) <= 12) {
    return MangledDate{"is a date, but not in EDTF", fmt::format("write {}-{:02}", b.text, number(a))};
  }
  if (between != '/' && a.text.size() == 4 && b.text.size() == 4 && number(a) < number(b)) {
    return MangledDate{"is a range, but not in EDTF", fmt::format("write {}/{}", a.text, b.text)};
  }
  return std::nullopt;
}

std::optional<MangledDate> with_month_name(const std::vector<Piece>& pieces) {
  const Piece* month = nullptr;
  std::vector<const Piece*> numbers;
  for (const Piece& piece : pieces) {
    if (piece.kind == Piece::Kind::letters) month = &piece;
    if (piece.kind == Piece::Kind::digits) numbers.push_back(&piece);
  }
  const int m = month ? month_named(month->text) : 0;
  if (m == 0) return std::nullopt;
  if (numbers.size() == 1) {
    const Piece& year = *numbers[0];
    if (year.text.size() != 2 && year.text.size() != 4) return std::nullopt;
    if (year.text.size() == 4)
      return MangledDate{"is a date in words", fmt::format("write {}-{:02}", year.text, m)};
    return changed(fmt::format("write {}-{:02}, or the day it stands for", year_text(year), m) +
                   century(year));
  }
  if (numbers.size() != 2) return std::nullopt;
  const bool year_first = numbers[0]->text.size() == 4;
  const Piece& year = *numbers[year_first ? 0 : 1];
  const Piece& day = *numbers[year_first ? 1 : 0];
  if (number(day) < 1 || number(day) > 31 || (year.text.size() != 2 && year.text.size() != 4))
    return std::nullopt;
  const std::string advice =
      fmt::format("write {}-{:02}-{:02}", year_text(year), m, number(day)) + century(year);
  return year.text.size() == 4 && pieces.size() <= 4 ? MangledDate{"is a date in words", advice}
                                                     : changed(advice);
}

/// Days since 30 December 1899 (spreadsheets' usual count, right from March 1900 on) and since 1 January 1904
/// (the other).
std::optional<MangledDate> day_count(const std::string& digits) {
  const std::int64_t count = std::stoll(digits);
  const std::string usual = to_string(Day{to_day({1899, 12, 30}).value + count});
  const std::string other = to_string(Day{to_day({1904, 1, 1}).value + count});
  return changed(fmt::format(
      "as a spreadsheet's day count it is {}, or {} in a file that counts from 1904; write the date "
      "the source gives, as 1958-12-03",
      usual, other));
}

}  // namespace

std::optional<MangledDate> mangled_date(std::string_view cell) {
  cell = trim(cell);
  if (cell.size() > 40) return std::nullopt;
  const std::vector<Piece> pieces = pieces_of(cell);
  const std::string shape = shape_of(pieces);
  if (shape == "d/d/d" || shape == "d.d.d") return three_numbers(pieces[0], pieces[2], pieces[4]);
  if (shape == "d-d-d" && pieces[0].text.size() <= 2) return three_numbers(pieces[0], pieces[2], pieces[4]);
  if (shape.starts_with("d/d/dd:d") || shape.starts_with("d-d-dd:d")) {
    return three_numbers(pieces[0], pieces[2], pieces[4]);
  }
  if (shape == "d.d" && pieces[0].text.size() == 4 &&
      pieces[2].text.find_first_not_of('0') == std::string::npos) {
    return changed("write " + pieces[0].text);
  }
  if (shape == "d/d" || shape == "d-d" || shape == "d.d") {
    if (auto found = two_numbers(pieces[0], shape[1], pieces[2])) return found;
  }
  if (shape == "d" && pieces[0].text.size() == 5) return day_count(pieces[0].text);
  if (std::count(shape.begin(), shape.end(), 'l') == 1 && shape.size() <= 6) return with_month_name(pieces);
  return std::nullopt;
}

}  // namespace witnessmark
