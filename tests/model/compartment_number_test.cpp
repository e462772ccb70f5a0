// Worked examples with their published sources. Sources: NAVEDTRA 14325 (Basic Military Requirements), U.S.
// Naval Institute Naval History December 2018 and February 2019, the curriculum text of the Surface Warfare
// Officers School (SWOS), the summary citing Blank, Bock and Richardson, Introduction to Naval Engineering
// (BBR), the Damage Controlman training course (DC).
#include "witnessmark/model/compartment_number.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <string>

using namespace witnessmark;

namespace {

std::string one_line(std::string_view text) {
  const auto number = parse_compartment_number(text);
  if (!number.ok()) return "error: " + number.error().message;
  return fmt::format("{} deck {} section {} frame {} order {} {} use {} {} remarks {}",
                     to_string(number->scheme), number->deck, number->section.empty() ? "-" : number->section,
                     number->frame.empty() ? "-" : number->frame,
                     number->order ? std::to_string(*number->order) : "-", to_string(number->side),
                     number->use.empty() ? "-" : number->use,
                     number->use_words.empty() ? "-" : number->use_words, number->remarks.size());
}

struct Row {
  std::string_view source;
  std::string_view text;
  std::string_view expected;
};

}  // namespace

TEST_CASE("compartment numbers are read as the published worked examples read them") {
  const Row rows[] = {
      {"NAVEDTRA 14325", "3-75-4-M",
       "since-1949 deck 3 section - frame 75 order 2 port use M ammunition remarks 1"},
      {"published guide; side by rule", "4-95-3-M",
       "since-1949 deck 4 section - frame 95 order 2 starboard use M ammunition remarks 1"},
      {"SWOS", "6-150-0-E",
       "since-1949 deck 6 section - frame 150 order 0 centreline use E engineering remarks 1"},
      {"BBR", "1-75-4-M", "since-1949 deck 1 section - frame 75 order 2 port use M ammunition remarks 1"},
      {"Naval History Dec 2018", "1-123-1-L",
       "since-1949 deck 1 section - frame 123 order 1 starboard use L living remarks 1"},
      {"SWOS: A, B forward of the forward perpendicular", "2-A-0-V",
       "since-1949 deck 2 section - frame A order 0 centreline use V void remarks 0"},
      {"SWOS: AA, BB aft of the after perpendicular", "2-BB-1-Q",
       "since-1949 deck 2 section - frame BB order 1 starboard use Q not otherwise designated remarks 0"},
      {"several on the centreline: sources disagree", "02-37-01-C",
       "since-1949 deck 02 section - frame 37 order 1 centreline use C ship control remarks 2"},
      {"fraction: sources disagree", "2-75.5-1-L",
       "since-1949 deck 2 section - frame 75.5 order 1 starboard use L living remarks 1"},
      {"NAVEDTRA 14325: double letters are cargo", "4-40-0-AA",
       "since-1949 deck 4 section - frame 40 order 0 centreline use AA cargo remarks 1"},
      {"letter without a source keeps no words", "4-40-2-T",
       "since-1949 deck 4 section - frame 40 order 1 port use T - remarks 1"},
      {"Naval History Feb 2019", "C-207 A",
       "before-1949 deck 2 section C frame - order - starboard use A - remarks 0"},
      {"Naval History Feb 2019", "C-207-A",
       "before-1949 deck 2 section C frame - order - starboard use A - remarks 0"},
      {"DC: always 900 for the double bottom", "B-902-F",
       "before-1949 deck 9 section B frame - order - port use F - remarks 0"},
      {"Naval History Feb 2019: a zero for the levels above", "A-0304-C",
       "before-1949 deck 03 section A frame - order - port use C - remarks 0"},
      {"some ships have a section D", "D-301-L",
       "before-1949 deck 3 section D frame - order - starboard use L - remarks 1"},
      {"dashes of a word processor, small letters", "3\u201375\u20134\u2013m",
       "since-1949 deck 3 section - frame 75 order 2 port use M ammunition remarks 1"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.source);
    CAPTURE(row.text);
    CHECK(one_line(row.text) == row.expected);
  }
}

TEST_CASE("a malformed compartment number says which part is wrong") {
  const Row rows[] = {
      {"", "", "error: no compartment number"},
      {"", "3-75-4", "error: 3 parts where four are wanted"},
      {"", "123-75-4-M", "error: deck \"123\" is not 1, 2, 3 or 01, 02"},
      {"", "00-75-4-M", "error: deck \"00\" is not 1, 2, 3 or 01, 02"},
      {"", "3-AB-4-M", "error: frame \"AB\" is neither a number nor a letter frame"},
      {"", "3-7500-4-M", "error: frame \"7500\" is neither a number nor a letter frame"},
      {"", "3-75-P-M", "error: side \"P\" is not 0, an odd or an even number"},
      {"", "3-75-4-7", "error: use \"7\" is not one or two letters"},
      {"", "E-207-A", "error: section \"E\" is not A, B, C or D"},
      {"", "C-27-A", "error: number \"27\" has neither three digits nor four with a 0 before"},
      {"", "C-200-A", "error: number \"200\" names a deck and no compartment"},
      {"", "C", "error: no number after the section"},
      {"", "C-207-A-B", "error: 4 parts where two or three are wanted"},
      {"", "#12", "error: neither a deck nor a section at the start"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(one_line(row.text) == row.expected);
    CHECK_FALSE(parse_compartment_number(row.text).error().advice.empty());
  }
}

TEST_CASE("a compartment number is described in the words of its own scheme") {
  CHECK(describe(*parse_compartment_number("3-75-4-M")) ==
        "third deck, frame 75, second compartment outboard to port, ammunition (numbered since 1949)");
  CHECK(describe(*parse_compartment_number("01-38-0-L")) ==
        "01 level, frame 38, on the centreline, living (numbered since 1949)");
  CHECK(describe(*parse_compartment_number("C-207-A")) ==
        "section C, second deck, starboard side, use A (numbered before 1949)");
  CHECK(describe(*parse_compartment_number("B-902")) ==
        "section B, double bottom, port side (numbered before 1949)");
}
