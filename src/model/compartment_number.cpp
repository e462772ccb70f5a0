// Two schemes, read by their shape and never converted into one another: a ship of before March 1949 that was
// renumbered carries labels of both.
//
// Since March 1949: deck-frame-side-use, such as 3-75-4-M. The main deck is 1, decks below 2, 3 and so on,
// levels above 01, 02; a space over several decks carries its lowest. Frame of the foremost bulkhead; letters
// forward of the forward perpendicular (A, B) and double letters aft of the after one (AA, BB). Side: 0 on
// the centreline, odd to starboard, even to port, counted from the centreline outboard. Sources: NAVEDTRA
// 14325 (Basic Military Requirements), chapter on compartment designation; U.S. Naval Institute, Naval
// History, December 2018; the Surface Warfare Officers School curriculum text on compartment numbering
// (SWOS); the summary citing Blank, Bock and Richardson, Introduction to Naval Engineering, 2nd edition
// (BBR).
//
// Before March 1949: section, number, use, such as C-207-A. Section A forward of the machinery, B over it, C
// abaft, some ships D; 100 is the main deck, 200 and 300 the second and third deck, 900 always the double
// bottom, a 0 before the number the levels above. Even to port, odd to starboard, numbered from the forward
// end of the section. Sources: U.S. Naval Institute, Naval History, February 2019; Damage Controlman training
// course, Compartment Numbering.
//
// Where the sources differ both are told in a remark. Letters of use are those of the sources named; for
// others use_words stays empty.
#include "witnessmark/model/compartment_number.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/names.h"
#include "witnessmark/base/ascii.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::pair<Side, std::string_view> kSides[] = {
    {Side::centreline, "centreline"},
    {Side::starboard, "starboard"},
    {Side::port, "port"},
};

// NAVEDTRA 14325 and SWOS. Double letters are cargo spaces (NAVEDTRA 14325).
constexpr std::pair<char, std::string_view> kUses[] = {
    {'C', "ship control"},
    {'E', "engineering"},
    {'L', "living"},
    {'M', "ammunition"},
    {'Q', "not otherwise designated"},
    {'V', "void"},
};

bool is_letter(char c) {
  return c >= 'A' && c <= 'Z';
}
bool all_digits(std::string_view part) {
  return !part.empty() && std::all_of(part.begin(), part.end(), is_digit);
}
bool all_letters(std::string_view part) {
  return !part.empty() && std::all_of(part.begin(), part.end(), is_letter);
}

std::vector<std::string> parts_of(std::string_view text) {
  std::string plain = fold(text);
  std::vector<std::string> parts(1);
  for (char c : plain) {
    if (c == '-' || c == ' ') {
      if (c == ' ' && parts.back().empty()) continue;
      parts.emplace_back();
    } else {
      parts.back() += c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    }
  }
  // "3 - 75" leaves an empty part between the space and the dash.
  std::erase(parts, std::string());
  return parts;
}

Error malformed(std::string_view text, std::string message, std::string advice) {
  return Error{.source = std::string(text),
               .line = 0,
               .column = 0,
               .message = std::move(message),
               .advice = std::move(advice)};
}

constexpr std::string_view kSince = "numbers since 1949 are deck-frame-side-use, such as 3-75-4-M";
constexpr std::string_view kBefore = "numbers before 1949 are section-number-use, such as C-207-A";

void read_use(CompartmentNumber& number, std::string_view use) {
  number.use = use;
  const bool cargo = use.size() == 2 && use[0] == use[1];
  if (number.scheme != NumberScheme::since_1949 || (use.size() == 2 && !cargo)) return;
  const std::string_view words = word_of(kUses, use[0]);
  number.use_words = words.empty() ? "" : std::string(words);
  if (cargo) number.use_words += number.use_words.empty() ? "cargo" : ", cargo";
}

bool read_frame(CompartmentNumber& number, std::string_view frame) {
  number.frame = frame;
  if (all_letters(frame)) {
    return frame.size() == 1 || (frame.size() == 2 && frame[0] == frame[1]);
  }
  const std::size_t dot = frame.find('.');
  if (dot != std::string_view::npos) {
    number.remarks.push_back(
        "a fraction of a frame: never used according to BBR, used where frames stand more than 4 feet apart "
        "according to SWOS");
    return all_digits(frame.substr(0, dot)) && all_digits(frame.substr(dot + 1)) && dot <= 3;
  }
  return all_digits(frame) && frame.size() <= 3;
}

bool read_side(CompartmentNumber& number, std::string_view side) {
  if (!all_digits(side) || side.size() > 3) return false;
  const int value = std::stoi(std::string(side));
  if (value == 0 || side[0] == '0') {
    number.side = Side::centreline;
    number.order = value;
    if (side.size() > 1) {
      number.remarks.push_back(
          "one of several on the centreline: numbered 0, 01, 02 according to NAVEDTRA 14325, 01, 02, 03 in "
          "any "
          "sequence according to BBR");
    }
    return side.size() <= 2;
  }
  number.side = value % 2 == 0 ? Side::port : Side::starboard;
  number.order = (value + 1) / 2;
  return true;
}

Result<CompartmentNumber> read_since_1949(std::string_view text, const std::vector<std::string>& parts) {
  const std::string advice(kSince);
  if (parts.size() != 4) {
    return malformed(text, fmt::format("{} parts where four are wanted", parts.size()), advice);
  }
  CompartmentNumber number;
  number.scheme = NumberScheme::since_1949;
  number.written = text;
  number.deck = parts[0];
  if (!all_digits(number.deck) || number.deck.size() > 2 || std::stoi(number.deck) == 0) {
    return malformed(text, fmt::format("deck \"{}\" is not 1, 2, 3 or 01, 02", parts[0]), advice);
  }
  if (!read_frame(number, parts[1])) {
    return malformed(text, fmt::format("frame \"{}\" is neither a number nor a letter frame", parts[1]),
                     advice);
  }
  if (!read_side(number, parts[2])) {
    return malformed(text, fmt::format("side \"{}\" is not 0, an odd or an even number", parts[2]), advice);
  }
  if (!all_letters(parts[3]) || parts[3].size() > 2) {
    return malformed(text, fmt::format("use \"{}\" is not one or two letters", parts[3]), advice);
  }
  read_use(number, parts[3]);
  if (all_digits(number.frame)) {
    number.remarks.push_back(
        "where the foremost bulkhead lies between frames: the frame farthest forward within the compartment "
        "according to NAVEDTRA 14325 and SWOS, the frame forward of the bulkhead according to BBR");
  }
  return number;
}

Result<CompartmentNumber> read_before_1949(std::string_view text, const std::vector<std::string>& parts) {
  const std::string advice(kBefore);
  if (parts.size() > 3) {
    return malformed(text, fmt::format("{} parts where two or three are wanted", parts.size()), advice);
  }
  CompartmentNumber number;
  number.scheme = NumberScheme::before_1949;
  number.written = text;
  number.section = parts[0];
  if (number.section.size() != 1 || number.section[0] > 'D') {
    return malformed(text, fmt::format("section \"{}\" is not A, B, C or D", parts[0]), advice);
  }
  if (parts.size() < 2) return malformed(text, "no number after the section", advice);
  const std::string& digits = parts[1];
  const bool above = digits.size() == 4 && digits[0] == '0';
  if (!all_digits(digits) || !(above || (digits.size() == 3 && digits[0] != '0')) ||
      digits[above ? 1 : 0] == '0') {
    return malformed(
        text, fmt::format("number \"{}\" has neither three digits nor four with a 0 before", digits), advice);
  }
  number.deck = digits.substr(0, digits.size() - 2);
  const int last = std::stoi(digits.substr(digits.size() - 2));
  if (last == 0) {
    return malformed(text, fmt::format("number \"{}\" names a deck and no compartment", digits), advice);
  }
  // Counted from the forward end of the section, so it is no outboard order.
  number.side = last % 2 == 0 ? Side::port : Side::starboard;
  if (number.section == "D") {
    number.remarks.push_back(
        "section D: many ships have none; where it is used its limits differ from ship to ship");
  }
  if (parts.size() == 3) {
    if (!all_letters(parts[2]) || parts[2].size() > 2) {
      return malformed(text, fmt::format("use \"{}\" is not one or two letters", parts[2]), advice);
    }
    read_use(number, parts[2]);
  }
  return number;
}

std::string ordinal(int value) {
  static constexpr std::string_view kWords[] = {"", "first", "second", "third", "fourth", "fifth", "sixth"};
  return value < 7 ? std::string(kWords[value]) : fmt::format("number {}", value);
}

std::string deck_in_words(const CompartmentNumber& number) {
  if (number.deck[0] == '0') return number.deck + " level";
  if (number.scheme == NumberScheme::before_1949 && number.deck == "9") return "double bottom";
  const int deck = std::stoi(number.deck);
  return deck == 1 ? "main deck" : ordinal(deck) + " deck";
}

}  // namespace

std::string_view to_string(Side side) {
  return word_of(kSides, side);
}

Result<CompartmentNumber> parse_compartment_number(std::string_view text) {
  const std::vector<std::string> parts = parts_of(text);
  if (parts.empty()) {
    return malformed(text, "no compartment number", fmt::format("{}; {}", kSince, kBefore));
  }
  if (is_digit(parts[0][0])) return read_since_1949(text, parts);
  if (is_letter(parts[0][0])) return read_before_1949(text, parts);
  return malformed(text, "neither a deck nor a section at the start", fmt::format("{}; {}", kSince, kBefore));
}

std::string describe(const CompartmentNumber& number) {
  std::string words = deck_in_words(number);
  if (number.scheme == NumberScheme::before_1949) {
    words = fmt::format("section {}, {}, {} side", number.section, words, to_string(number.side));
  } else {
    words += ", frame " + number.frame;
    if (number.side == Side::centreline) {
      words += ", on the centreline";
    } else {
      words += fmt::format(", {} compartment outboard to {}", ordinal(*number.order), to_string(number.side));
    }
  }
  if (!number.use_words.empty()) {
    words += ", " + number.use_words;
  } else if (!number.use.empty()) {
    words += ", use " + number.use;
  }
  return words +
         (number.scheme == NumberScheme::before_1949 ? " (numbered before 1949)" : " (numbered since 1949)");
}

}  // namespace witnessmark
