#include "witnessmark/base/id.h"

#include <doctest/doctest.h>

#include <set>
#include <unordered_set>

using namespace witnessmark;

TEST_CASE("an id is written as 32 hexadecimal digits and read back") {
  const std::string text = "00112233445566778899aabbccddeeff";
  const auto id = parse_id(text);
  REQUIRE(id);
  CHECK(id->bytes[1] == 0x11);
  CHECK(id->bytes[15] == 0xff);
  CHECK(to_string(*id) == text);
  CHECK(parse_id("00112233445566778899AABBCCDDEEFF") == id);
  CHECK_FALSE(id->is_nil());
  CHECK(parse_id(std::string(32, '0'))->is_nil());
}

TEST_CASE("text that is not 32 hexadecimal digits is no id") {
  for (const char* text : {"", "0", "00112233445566778899aabbccddeef", "00112233445566778899aabbccddeeff0",
                           "0011223g445566778899aabbccddeeff", "00112233-4455-6677-8899-aabbccddeeff",
                           " 0112233445566778899aabbccddeeff"}) {
    CHECK_MESSAGE(!parse_id(text), text);
  }
}

TEST_CASE("seeded randomness is SplitMix64 and can be repeated") {
  // First outputs for seed 1234567, as published with the task "Pseudo-random numbers/Splitmix64" of Rosetta
  // Code.
  const RandomBytes random = seeded_random(1234567);
  for (const std::uint64_t expected : {6457827717110365317u, 3203168211198807973u, 9817491932198370423u,
                                       4593380528125082431u, 16408922859458223821u}) {
    std::array<std::uint8_t, 8> bytes{};
    random(bytes);
    std::uint64_t word = 0;
    for (int i = 7; i >= 0; --i) word = word << 8 | bytes[static_cast<std::size_t>(i)];
    CHECK(word == expected);
  }
  CHECK(make_id(seeded_random(7)) == make_id(seeded_random(7)));
  CHECK(make_id(seeded_random(7)) != make_id(seeded_random(8)));
}

TEST_CASE("copies of a source of randomness never make the same id") {
  const RandomBytes first = seeded_random(7);
  const RandomBytes copy = first;
  CHECK(make_id(first) != make_id(copy));
}

TEST_CASE("ids from the machine's randomness differ and hash apart") {
  std::set<std::string> texts;
  std::unordered_set<Id> ids;
  std::set<std::size_t> hashes;
  const RandomBytes random = system_random();
  for (int i = 0; i < 1000; ++i) {
    const Id id = make_id(random);
    CHECK_FALSE(id.is_nil());
    texts.insert(to_string(id));
    ids.insert(id);
    hashes.insert(std::hash<Id>{}(id));
  }
  CHECK(texts.size() == 1000);
  CHECK(ids.size() == 1000);
  CHECK(hashes.size() == 1000);
}
