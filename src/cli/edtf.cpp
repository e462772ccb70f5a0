#include <fmt/ostream.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "command.h"
#include "witnessmark/app/date_meaning.h"

namespace witnessmark {
namespace {

std::string day_text(const std::optional<Day>& day) {
  return day ? to_string(*day) : "no limit";
}

void print_meaning(Command& command, const EdtfMeaning& meaning) {
  auto& out = command.out();
  const Period& period = meaning.period;
  const auto last = period.past_latest() ? std::optional<Day>(*period.past_latest() - 1) : std::nullopt;
  fmt::print(out, "{}  (level {})\n", meaning.canonical, meaning.level);
  fmt::print(out, "  means     {}\n", meaning.words);
  fmt::print(out, "  earliest  {}\n  latest    {}\n", day_text(period.earliest()), day_text(last));
  fmt::print(out, "  begins within | ends within: {}\n", to_string(period));
  if (meaning.too_many_candidates) fmt::print(out, "  stands for more dates than can be listed\n");
  if (meaning.candidates.size() > 1) {
    constexpr std::size_t kShown = 12;
    fmt::print(out, "  stands for {} of these:\n", meaning.canonical.starts_with('{') ? "all" : "one");
    for (std::size_t i = 0; i < std::min(kShown, meaning.candidates.size()); ++i)
      fmt::print(out, "    {}\n", describe(meaning.candidates[i]));
    if (meaning.candidates.size() > kShown) fmt::print(out, "    … {} in all\n", meaning.candidates.size());
  }
}

void print_json(Command& command, const std::string& expression, const EdtfMeaning& meaning,
                const DatePolicy& policy) {
  nlohmann::ordered_json object{
      {"expression", expression}, {"edtf", meaning.canonical}, {"level", meaning.level}};
  const Period& period = meaning.period;
  object["earliest"] = nullptr;
  object["latest"] = nullptr;
  if (period.earliest()) object["earliest"] = to_string(*period.earliest());
  if (period.past_latest()) object["latest"] = to_string(*period.past_latest() - 1);
  object["period"] = to_string(period);
  object["policy"] = policy.name;
  fmt::print(command.out(), "{}\n", object.dump());
}

}  // namespace

void add_edtf(CLI::App& program, Command& command) {
  struct Options {
    std::string format = "text";
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("edtf", "What an EDTF expression means, day by day");
  command.add_words(*app, "EXPRESSION…", "EDTF, such as 1962-21~ or [1962,1964]");
  app->add_option("--format", options->format, "text or jsonl")->check(CLI::IsMember({"text", "jsonl"}));
  command.add_data_options(*app);
  app->callback([app, options, &command] {
    const auto expressions = command.words_of(*app);
    if (!expressions) return command.fail(expressions.error());
    if (expressions->empty())
      return command.fail({"", 0, 0, "no expression is given", "write one, such as 1962-21"});
    const auto policy = load_date_policy(command.surroundings());
    if (!policy) return command.fail(policy.error());
    bool explained = false;
    for (const std::string& expression : *expressions) {
      const auto meaning = edtf_meaning(expression, *policy);
      if (!meaning) {
        command.fail(meaning.error());
        continue;
      }
      explained = true;
      if (options->format == "text")
        print_meaning(command, *meaning);
      else
        print_json(command, expression, *meaning, *policy);
    }
    if (explained && options->format == "text") fmt::print(command.out(), "{}\n", describe(*policy));
  });
}

}  // namespace witnessmark
