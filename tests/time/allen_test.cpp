// The published composition table: J. F. Allen, Maintaining Knowledge about Temporal Intervals, CACM 26(11),
// 1983, in the notation and with the worked examples of T. Alspaugh's page on Allen's interval algebra.
#include "witnessmark/time/allen.h"

#include <doctest/doctest.h>

#include <map>
#include <set>
#include <string>

using namespace witnessmark;

namespace {

const std::string kLetters = "pmoFDseSdfOMP";

AllenSet set(std::string_view text) {
  return *parse_allen(text);
}
AllenSet basic(int number) {
  return AllenSet::of(static_cast<Allen>(number));
}

/// Relations of x and z for all integer intervals within [0, size], by brute force.
std::map<std::pair<int, int>, std::set<int>> compositions_by_brute_force(int size) {
  std::map<std::pair<int, int>, std::set<int>> found;
  const auto each = [size](const auto& use) {
    for (int begin = 0; begin < size; ++begin) {
      for (int end = begin + 1; end <= size; ++end) use(Day{begin}, Day{end});
    }
  };
  each([&](Day xb, Day xe) {
    each([&](Day yb, Day ye) {
      each([&](Day zb, Day ze) {
        const int xy = static_cast<int>(relation_of(xb, xe, yb, ye));
        const int yz = static_cast<int>(relation_of(yb, ye, zb, ze));
        found[{xy, yz}].insert(static_cast<int>(relation_of(xb, xe, zb, ze)));
      });
    });
  });
  return found;
}

}  // namespace

TEST_CASE("two intervals stand in the relation whose picture they draw") {
  struct Row {
    int a_begin, a_end, b_begin, b_end;
    char letter;
  };
  const Row rows[] = {{0, 2, 3, 5, 'p'}, {0, 3, 3, 5, 'm'}, {0, 4, 3, 5, 'o'}, {0, 5, 3, 5, 'F'},
                      {0, 6, 3, 5, 'D'}, {3, 4, 3, 5, 's'}, {3, 5, 3, 5, 'e'}, {3, 6, 3, 5, 'S'},
                      {3, 4, 2, 5, 'd'}, {4, 5, 3, 5, 'f'}, {4, 6, 3, 5, 'O'}, {5, 6, 3, 5, 'M'},
                      {6, 7, 3, 5, 'P'}};
  for (const Row& row : rows) {
    CAPTURE(row.letter);
    const Allen relation = relation_of(Day{row.a_begin}, Day{row.a_end}, Day{row.b_begin}, Day{row.b_end});
    CHECK(to_string(AllenSet::of(relation)) == std::string("(") + row.letter + ")");
    CHECK(AllenSet::of(relation_of(Day{row.b_begin}, Day{row.b_end}, Day{row.a_begin}, Day{row.a_end})) ==
          converse(AllenSet::of(relation)));
  }
}

TEST_CASE("the 169 compositions are those of integer intervals") {
  for (const auto& [pair, results] : compositions_by_brute_force(7)) {
    AllenSet expected;
    for (const int result : results) expected = expected | basic(result);
    CHECK(to_string(compose(basic(pair.first), basic(pair.second))) == to_string(expected));
  }
}

TEST_CASE("the composition table has its published shape") {
  int sum = 0;
  int singletons = 0;
  std::set<std::string> full;
  std::set<std::uint16_t> distinct;
  for (int i = 0; i < 13; ++i) {
    for (int j = 0; j < 13; ++j) {
      const AllenSet result = compose(basic(i), basic(j));
      sum += result.size();
      singletons += result.certain() ? 1 : 0;
      if (result == AllenSet::full()) {
        full.insert({kLetters[static_cast<std::size_t>(i)], kLetters[static_cast<std::size_t>(j)]});
      }
      distinct.insert(result.bits);
      const bool published_size = result.size() == 1 || result.size() == 3 || result.size() == 5 ||
                                  result.size() == 9 || result.size() == 13;
      CHECK(published_size);
    }
  }
  CHECK(sum == 409);
  CHECK(singletons == 97);
  CHECK(full == std::set<std::string>{"pP", "Pp", "dD"});
  CHECK(distinct.size() == 27);
}

TEST_CASE("single compositions are the published ones") {
  struct Row {
    const char* a;
    const char* b;
    const char* result;
  };
  const Row rows[] = {
      {"(p)", "(d)", "(pmosd)"}, {"(m)", "(d)", "(osd)"},           {"(m)", "(f)", "(osd)"},
      {"(o)", "(o)", "(pmo)"},   {"(o)", "(O)", "(oFDseSdfO)"},     {"(D)", "(d)", "(oFDseSdfO)"},
      {"(m)", "(M)", "(Fef)"},   {"(s)", "(S)", "(seS)"},           {"(M)", "(m)", "(seS)"},
      {"(s)", "(D)", "(pmoFD)"}, {"(d)", "(D)", "(pmoFDseSdfOMP)"}, {"(oFD)", "(oFDseS)", "(pmoFD)"}};
  for (const Row& row : rows) {
    INFO(std::string(row.a));
    INFO(std::string(row.b));
    CHECK(to_string(compose(set(row.a), set(row.b))) == row.result);
  }
  for (int i = 0; i < 13; ++i) CHECK(compose(basic(6), basic(i)) == basic(i));
}

TEST_CASE("converse, complement and intersection are the page's examples") {
  CHECK(to_string(converse(set("(pmoFD)"))) == "(dfOMP)");
  CHECK(to_string(~set("(pmoFD)")) == "(seSdfOMP)");
  CHECK(to_string(set("(pFsSf)") & set("(pmoFD)")) == "(pF)");
  // a p b, b p c and c p a: the relation of a to c leaves nothing of the converse.
  CHECK((compose(set("(p)"), set("(p)")) & converse(set("(p)"))).empty());
}

TEST_CASE("the converse of a composition is the composition of the converses turned round") {
  for (int i = 0; i < 13; ++i) {
    for (int j = 0; j < 13; ++j) {
      CHECK(converse(compose(basic(i), basic(j))) == compose(converse(basic(j)), converse(basic(i))));
    }
  }
}

TEST_CASE("sets of relations are read as they are printed") {
  for (int bits = 0; bits < 8192; ++bits) {
    const AllenSet relations{static_cast<std::uint16_t>(bits)};
    REQUIRE(*parse_allen(to_string(relations)) == relations);
    REQUIRE(converse(converse(relations)) == relations);
  }
  CHECK(parse_allen("pm").error().column == 1);
  CHECK(parse_allen("(pxm)").error().column == 3);
}

TEST_CASE("with half-open days the year 1951 meets 1952") {
  const Day y1951 = to_day({1951, 1, 1});
  const Day y1952 = to_day({1952, 1, 1});
  const Day y1953 = to_day({1953, 1, 1});
  CHECK(in_words(relation_of(y1951, y1952, y1952, y1953)) == "meets");
}
