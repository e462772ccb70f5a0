// What is stated of what: words that only look like verbs, pronouns, words that stand for a name, places said
// of another thing. Readings are common practice, no source.
#include <doctest/doctest.h>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

const ClaimTable& lists() {
  static const ClaimTable table =
      lists_of({"lamp", "winch", "stove", "boiler", "turbine", "crane", "wireless cabin clock"},
               {"galley", "mess room", "foredeck", "Tolbeck"});
  return table;
}

using Row = ShortRow;

template <std::size_t N>
void check(const Row (&rows)[N]) {
  check_rows(rows, lists());
}

}  // namespace

TEST_CASE("a word that ends like a past form is none if it is a number or a name") {
  const Row rows[] = {
      {"We had several hundred lamps.", "present lamp first-hand"},
      {"He showed Alfred the winch.", ""},
      {"They varnished the winch.", "happened winch {varnished}"},
      {"Varnished the winch in 1950.", "happened winch 1950 {Varnished}"},
  };
  check(rows);
}

TEST_CASE("what is moved ends where it was said to be itself") {
  const Row rows[] = {
      {"The stove was in the galley. They moved it to the mess room.",
       "present stove@galley; ends stove@galley; begins stove@mess room"},
      // The galley is where the stove was.
      {"The wireless cabin clock was old. The stove was in the galley. They moved the clock to the mess "
       "room.",
       "attribute wireless cabin clock {condition: old}; present stove@galley; ends wireless cabin clock; "
       "begins wireless cabin clock@mess room"},
      // Too long ago.
      {"The stove was in the galley. We had tea. It was cold. Nobody came. They moved the stove to the mess "
       "room.",
       "present stove@galley; ends stove; begins stove@mess room"},
  };
  check(rows);
}

TEST_CASE("what something is changed for stands in the same clause") {
  const Row rows[] = {
      {"They changed the boiler for a turbine.", "ends boiler; begins turbine"},
      {"They changed the boiler, in the end, for a turbine.", "ends boiler; begins turbine"},
      {"They changed the boiler and the crane for a turbine.", "ends boiler; ends crane; begins turbine"},
      {"They swapped that boiler with the turbine.", "ends boiler; begins turbine"},
      {"They changed the boiler to please the mate.", "happened boiler {changed}"},
      {"They changed the boiler, and I went to Tolbeck with my mother.",
       "happened boiler {changed}; located @Tolbeck first-hand"},
      {"They changed the boiler and they went away with the crane.", "happened boiler {changed}"},
      {"They changed the boiler and I went to Tolbeck with my mother.",
       "happened boiler {changed}; located @Tolbeck first-hand"},
      // A colour, too.
      {"They stripped the winch of its grey paint.", "ends winch {colour: grey}"},
      {"They stripped the winch, and the walls were grey.", "happened winch {stripped}"},
  };
  check(rows);
}

TEST_CASE("without marks a question has its verb before its subject") {
  const Row rows[] = {
      {"what we did was we took off the winch in 1950", "ends winch 1950 first-hand"},
      {"what happened was they took off the winch in 1950", "ends winch 1950"},
      {"what there was was a winch on the foredeck", "present winch@foredeck"},
      {"what colour was the winch on the foredeck", ""},
      {"which winch was it they took off in 1950", ""},
      {"what did they do when they took off the winch", ""},
      {"where was the winch on the foredeck", ""},
  };
  check(rows);
}

TEST_CASE("\"the oil one\" is the one of that name that was named last") {
  ClaimTable lanterns;
  lanterns.equipment = {"port oil lantern", "starboard oil lantern", "electric lantern", "mast oil lantern"};
  lanterns.places = {"foredeck"};
  const auto last_of = [&](const std::string& text) {
    const std::string line = in_short(claims_of(text, lanterns));
    const std::size_t from = line.find("ends");
    return from == std::string::npos ? line : line.substr(from);
  };
  const std::string taken = " The oil one was taken off.";
  CHECK(last_of("There was a starboard oil lantern and a port oil lantern." + taken) ==
        "ends port oil lantern");
  CHECK(last_of("There was a port oil lantern and a starboard oil lantern." + taken) ==
        "ends starboard oil lantern");
  CHECK(last_of("There was a port oil lantern, and an electric lantern." + taken) == "ends port oil lantern");
  // None was named: it may be any of them.
  CHECK(last_of("There was an electric lantern." + taken) ==
        "ends port oil lantern; ends starboard oil lantern; ends mast oil lantern");
}

TEST_CASE("it is what was brought in last, of the lists or not") {
  const Row rows[] = {
      {"The winch was there and they brought a sewing machine. It was white.", "present winch"},
      {"They brought a sewing machine and the winch was there. It was white.",
       "present winch; attribute winch {colour: white}"},
      // A part, a comparison and what it was are nothing else.
      {"The winch had a brass plate. It was white.",
       "attribute winch {with: a brass plate}; attribute winch {colour: white}"},
      {"The winch was there, with a sheet over it. It was white.",
       "present winch; attribute winch {with: a sheet over it}; attribute winch {colour: white}"},
      {"The winch was there, like a great spider. It was white.",
       "present winch; attribute winch {colour: white}"},
      {"The winch was there and it was a lovely thing. It was white.",
       "present winch; attribute winch {is: a lovely thing}; attribute winch {colour: white}"},
  };
  check(rows);
}

TEST_CASE("a name in front of a thing is where it was, unless an article leads both in") {
  const Row rows[] = {
      {"In Hallam lamps were fitted in 1950.", "begins lamp 1950"},
      {"In Hallam the lamps were fitted in 1950.", "begins lamp 1950"},
      {"They fitted Hallam lamps in the galley.", "begins lamp@galley"},
      // Where something else was.
      {"In the Hallam lamp there was a crack.", ""},
      {"In Mr Hallam's lamp there was a crack.", ""},
  };
  check(rows);
}
