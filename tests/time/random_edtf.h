#pragma once
#include <random>
#include <string>

#include "witnessmark/time/edtf.h"

namespace witnessmark::testing {

/// Expressions of every level, in the forms of the specification, that are valid more often than not. The
/// same seed gives the same sequence on every machine.
class RandomEdtf {
 public:
  explicit RandomEdtf(std::uint32_t seed) : engine_(seed) {}

  int below(int limit) { return static_cast<int>(engine_() % static_cast<std::uint32_t>(limit)); }
  bool chance(int percent) { return below(100) < percent; }

  std::string date() {
    if (chance(6)) return long_year();
    std::string text = qualifier(8) + year();
    if (chance(5)) return text + "S" + std::to_string(1 + below(4)) + qualifier(10);
    text += qualifier(8);
    if (chance(25)) return text;
    if (chance(15)) return text + "-" + two(21 + below(21)) + qualifier(10);
    text += "-" + qualifier(6) + component(12) + qualifier(8);
    if (chance(35)) return text;
    return text + "-" + qualifier(6) + component(28) + qualifier(10);
  }

  std::string plain_date() {
    std::string text = plain_year();
    if (chance(30)) return text;
    text += "-" + two(1 + below(12));
    return chance(40) ? text : text + "-" + two(1 + below(28));
  }

  std::string interval() {
    const auto end = [this] { return chance(10) ? std::string("..") : chance(10) ? std::string() : date(); };
    return end() + "/" + end();
  }

  std::string set() {
    const bool one_of = chance(50);
    std::string text = one_of ? "[" : "{";
    const int count = 1 + below(4);
    for (int i = 0; i < count; ++i) {
      if (i > 0) text += ",";
      text += chance(25) ? span(i == 0, i == count - 1) : date();
    }
    return text + (one_of ? "]" : "}");
  }

  std::string expression() {
    const int kind = below(10);
    if (kind < 6) return chance(5) ? plain_day() + time() : date();
    return kind < 8 ? interval() : set();
  }

 private:
  static std::string two(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }
  static std::string four(int number) {
    const std::string digits = std::to_string(number);
    return std::string(4 - digits.size(), '0') + digits;
  }

  std::string qualifier(int percent) { return chance(percent) ? std::string(1, "?~%"[below(3)]) : ""; }

  std::string plain_year() {
    const int year = chance(80) ? 1600 + below(450) : below(10000);
    return (year > 0 && chance(5) ? "-" : "") + four(year);
  }

  std::string year() {
    std::string text = plain_year();
    if (!chance(20)) return text;
    for (int times = 1 + below(2); times > 0; --times)
      text[text.size() - 1 - static_cast<std::size_t>(below(4))] = 'X';
    return text;
  }

  std::string long_year() {
    std::string text = std::string("Y") + (chance(30) ? "-" : "") + std::to_string(10000 + below(900000000));
    if (chance(30)) text += "E" + std::to_string(1 + below(6));
    if (chance(30)) text += "S" + std::to_string(1 + below(5));
    return text;
  }

  std::string component(int largest) {
    std::string text = two(1 + below(largest));
    if (chance(12))
      text = "XX";
    else if (chance(8))
      text[static_cast<std::size_t>(below(2))] = 'X';
    return text;
  }

  std::string plain_day() { return plain_year() + "-" + two(1 + below(12)) + "-" + two(1 + below(28)); }

  std::string time() {
    std::string text = "T" + two(below(24)) + ":" + two(below(60)) + ":" + two(below(60));
    if (chance(30)) return text + "Z";
    if (chance(50)) return text + "+" + two(below(13)) + (chance(50) ? ":" + two(below(60)) : "");
    return text;
  }

  std::string span(bool first, bool last) {
    std::string a = plain_year();
    std::string b = plain_year();
    if (chance(50)) {
      const std::string rest = "-" + two(1 + below(12));
      a += rest;
      b += rest;
    }
    if (first && chance(20)) return ".." + b;
    if (last && chance(20)) return a + "..";
    return std::min(a, b) + qualifier(10) + ".." + std::max(a, b) + qualifier(10);
  }

  std::mt19937 engine_;
};

}  // namespace witnessmark::testing
