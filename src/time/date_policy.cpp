#include "witnessmark/time/date_policy.h"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

#include "time/month_names.h"

namespace witnessmark {
namespace {

using Json = nlohmann::json;

constexpr std::array<const char*, 4> kSeasons{"spring", "summer", "autumn", "winter"};
constexpr std::int64_t kLargestWidth = 100'000;

/// Walks one JSON object, noting the first fault with the path of its key.
class PolicyReader {
 public:
  explicit PolicyReader(std::string_view source) : source_(source) {}

  const std::optional<Error>& fault() const { return fault_; }

  void refuse(const std::string& key, std::string message, std::string advice) {
    if (fault_) return;
    fault_ = Error{std::string(source_), 0, 0, fmt::format("key `{}`: {}", key, message), std::move(advice)};
  }

  void check_keys(const Json& object, const std::string& path, const std::vector<std::string>& known) {
    for (const auto& item : object.items()) {
      if (std::find(known.begin(), known.end(), item.key()) != known.end()) continue;
      refuse(path + item.key(), "is not known", fmt::format("the keys here are {}", fmt::join(known, ", ")));
    }
  }

  /// The member, when it is there and is an object; keys left out keep what is built in.
  const Json* object(const Json& parent, const std::string& key, const std::string& path) {
    const auto found = parent.find(key);
    if (found == parent.end()) return nullptr;
    if (found->is_object()) return &*found;
    refuse(path + key, "is not an object", "write it as { … }");
    return nullptr;
  }

  void number(const Json& parent, const std::string& key, const std::string& path, std::int64_t least,
              std::int64_t most, std::int64_t& value) {
    const auto found = parent.find(key);
    if (found == parent.end()) return;
    const bool whole = found->is_number_integer();
    if (whole &&
        (!found->is_number_unsigned() || found->get<std::uint64_t>() <= static_cast<std::uint64_t>(most))) {
      const auto number = found->get<std::int64_t>();
      if (number >= least && number <= most) {
        value = number;
        return;
      }
    }
    refuse(path + key, fmt::format("is not a whole number from {} to {}", least, most), "correct the number");
  }

 private:
  std::string_view source_;
  std::optional<Error> fault_;
};

void read_margin(PolicyReader& reader, const Json& parent, const std::string& key, const std::string& path,
                 Margin& margin) {
  const Json* object = reader.object(parent, key, path);
  if (object == nullptr) return;
  const std::string inside = path + key + ".";
  reader.check_keys(*object, inside, {"days", "months", "years"});
  Margin read;
  reader.number(*object, "days", inside, 0, kLargestWidth, read.days);
  reader.number(*object, "months", inside, 0, kLargestWidth, read.months);
  reader.number(*object, "years", inside, 0, kLargestWidth, read.years);
  margin = read;
}

void read_widths(PolicyReader& reader, const Json& parent, const std::string& key,
                 DatePolicy::Widths& widths) {
  const Json* object = reader.object(parent, key, "widths.");
  if (object == nullptr) return;
  const std::string inside = "widths." + key + ".";
  reader.check_keys(*object, inside, {"day", "month", "year"});
  read_margin(reader, *object, "day", inside, widths.day);
  read_margin(reader, *object, "month", inside, widths.month);
  read_margin(reader, *object, "year", inside, widths.year);
}

void read_seasons(PolicyReader& reader, const Json& root, DatePolicy& policy) {
  const Json* seasons = reader.object(root, "season_first_months", "");
  if (seasons == nullptr) return;
  reader.check_keys(*seasons, "season_first_months.", {kSeasons.begin(), kSeasons.end()});
  for (std::size_t i = 0; i < kSeasons.size(); ++i) {
    std::int64_t month = policy.season_begins[i];
    reader.number(*seasons, kSeasons[i], "season_first_months.", 1, 12, month);
    policy.season_begins[i] = static_cast<int>(month);
  }
}

struct UnitParts {
  const char* name;     ///< The key, and the word for people.
  const char* counted;  ///< What its parts are counted in.
  int low, high;
  DatePolicy::Parts DatePolicy::*parts;
};
constexpr std::array<UnitParts, 5> kUnitParts{{{"year", "months", 1, 12, &DatePolicy::of_year},
                                               {"season", "months", 1, 3, &DatePolicy::of_season},
                                               {"month", "days", 1, 31, &DatePolicy::of_month},
                                               {"decade", "years", 0, 9, &DatePolicy::of_decade},
                                               {"century", "years", 0, 99, &DatePolicy::of_century}}};

struct PartWord {
  const char* name;
  DatePolicy::Part DatePolicy::Parts::*part;
};
constexpr std::array<PartWord, 5> kPartWords{{{"early", &DatePolicy::Parts::early},
                                              {"mid", &DatePolicy::Parts::mid},
                                              {"late", &DatePolicy::Parts::late},
                                              {"beginning", &DatePolicy::Parts::beginning},
                                              {"end", &DatePolicy::Parts::end}}};

/// [9, 12]
void read_part(PolicyReader& reader, const Json& parent, const UnitParts& unit, const PartWord& word,
               DatePolicy::Part& part) {
  const auto found = parent.find(word.name);
  if (found == parent.end()) return;
  const auto number = [&](const Json& value, int low) -> std::optional<int> {
    if (!value.is_number_unsigned()) return std::nullopt;
    const auto read = value.get<std::uint64_t>();
    if (read > static_cast<std::uint64_t>(unit.high) || static_cast<int>(read) < low) return std::nullopt;
    return static_cast<int>(read);
  };
  const bool pair = found->is_array() && found->size() == 2;
  const auto first = pair ? number((*found)[0], unit.low) : std::nullopt;
  const auto last = first ? number((*found)[1], *first) : std::nullopt;
  if (last) {
    part = {*first, *last};
    return;
  }
  reader.refuse(
      fmt::format("parts.{}.{}", unit.name, word.name),
      fmt::format("is not the first and the last of the {} {} to {}", unit.counted, unit.low, unit.high),
      fmt::format("write it like [{}, {}]", unit.low, unit.high));
}

void read_parts(PolicyReader& reader, const Json& root, DatePolicy& policy) {
  const Json* parts = reader.object(root, "parts", "");
  if (parts == nullptr) return;
  reader.check_keys(*parts, "parts.", {"year", "season", "month", "decade", "century"});
  for (const UnitParts& unit : kUnitParts) {
    const Json* words = reader.object(*parts, unit.name, "parts.");
    if (words == nullptr) continue;
    reader.check_keys(*words, fmt::format("parts.{}.", unit.name),
                      {"early", "mid", "late", "beginning", "end"});
    for (const PartWord& word : kPartWords)
      read_part(reader, *words, unit, word, policy.*unit.parts.*word.part);
  }
}

void read_root(PolicyReader& reader, const Json& root, DatePolicy& policy) {
  reader.check_keys(
      root, "",
      {"about", "name", "hemisphere", "season_first_months", "winter_begins_year_before", "widths", "parts"});
  if (const auto name = root.find("name"); name != root.end()) {
    if (name->is_string() && !name->get_ref<const std::string&>().empty())
      policy.name = name->get<std::string>();
    else
      reader.refuse("name", "is not a text", "write a name that people will see beside the dates");
  }
  if (const auto hemisphere = root.find("hemisphere"); hemisphere != root.end()) {
    if (*hemisphere == "northern")
      policy.hemisphere = DatePolicy::Hemisphere::northern;
    else if (*hemisphere == "southern")
      policy.hemisphere = DatePolicy::Hemisphere::southern;
    else
      reader.refuse("hemisphere", "is neither \"northern\" nor \"southern\"", "write one of the two");
  }
  if (const auto before = root.find("winter_begins_year_before"); before != root.end()) {
    if (before->is_boolean())
      policy.winter_begins_year_before = before->get<bool>();
    else
      reader.refuse("winter_begins_year_before", "is neither true nor false", "write one of the two");
  }
  read_seasons(reader, root, policy);
  if (const Json* widths = reader.object(root, "widths", "")) {
    reader.check_keys(*widths, "widths.", {"approximate", "uncertain", "both"});
    read_widths(reader, *widths, "approximate", policy.approximate);
    read_widths(reader, *widths, "uncertain", policy.uncertain);
    read_widths(reader, *widths, "both", policy.both);
  }
  read_parts(reader, root, policy);
}

std::string in_words(const Margin& margin) {
  std::string text;
  const auto append = [&text](std::int64_t number, std::string_view unit) {
    if (number == 0) return;
    text += fmt::format("{}{} {}{}", text.empty() ? "" : " ", number, unit, number == 1 ? "" : "s");
  };
  append(margin.years, "year");
  append(margin.months, "month");
  append(margin.days, "day");
  return text.empty() ? "nothing" : text;
}

std::string in_words(const DatePolicy::Widths& widths) {
  if (widths == DatePolicy::Widths{}) return "by nothing";
  return fmt::format("a day by {}, a month or season by {}, a year by {}", in_words(widths.day),
                     in_words(widths.month), in_words(widths.year));
}

}  // namespace

DatePolicy default_date_policy() {
  DatePolicy policy;
  policy.approximate.day.days = 3;
  policy.approximate.month.months = 1;
  policy.approximate.year.years = 1;
  policy.both = policy.approximate;
  return policy;
}

Result<DatePolicy> parse_date_policy(std::string_view json, std::string_view source) {
  Json root;
  try {
    root = Json::parse(json);
  } catch (const Json::parse_error& fault) {
    Error error{std::string(source), 1, 1, "the file is not valid JSON",
                "check the commas, quotes and brackets here"};
    const std::size_t at = std::min(json.size(), fault.byte > 0 ? fault.byte - 1 : 0);
    for (const char c : json.substr(0, at)) {
      const bool continues_code_point = (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
      if (c == '\n') {
        ++error.line;
        error.column = 1;
      } else if (!continues_code_point) {
        ++error.column;
      }
    }
    return error;
  } catch (const Json::out_of_range&) {
    return Error{std::string(source), 0, 0, "a number in the file is too large",
                 "write widths of at most 100000"};
  }
  if (!root.is_object())
    return Error{std::string(source), 1, 1, "the file holds no object", "write it as { … }"};
  DatePolicy policy = default_date_policy();
  PolicyReader reader(source);
  read_root(reader, root, policy);
  if (reader.fault()) return *reader.fault();
  return policy;
}

std::string describe(const DatePolicy& policy) {
  const bool southern = policy.hemisphere == DatePolicy::Hemisphere::southern;
  std::string seasons;
  for (std::size_t i = 0; i < kSeasons.size(); ++i) {
    const int first = policy.season_begins[southern ? (i + 2) % 4 : i];
    seasons += fmt::format("{}{} {} to {}", i == 0 ? "" : ", ", kSeasons[i],
                           kMonthNames[static_cast<std::size_t>(first - 1)],
                           kMonthNames[static_cast<std::size_t>((first + 1) % 12)]);
  }
  return fmt::format(
      "Date policy \"{}\": {} hemisphere, {}; the season over New Year is named after the year it {} in; `~` "
      "widens {}; "
      "`?` widens {}; `%` widens {}.",
      policy.name, southern ? "southern" : "northern", seasons,
      policy.winter_begins_year_before ? "ends" : "begins", in_words(policy.approximate),
      in_words(policy.uncertain), in_words(policy.both));
}

}  // namespace witnessmark
