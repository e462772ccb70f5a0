#include "witnessmark/app/configuration.h"

#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "cli/report_text.h"
#include "cli/weigh/statement_text.h"
#include "witnessmark/app/claim_words.h"

namespace witnessmark {
namespace {

using Json = nlohmann::ordered_json;

void print_differences(std::ostream& out, const Configuration& before, const Configuration& after) {
  fmt::print(out, "{}, and then {}:\n", before.when, after.when);
  const auto changes = differences(before, after);
  if (changes.empty()) fmt::print(out, "  no difference is known\n");
  for (const auto kind : {ConfigurationChange::Kind::came, ConfigurationChange::Kind::went,
                          ConfigurationChange::Kind::may_have_changed}) {
    for (const ConfigurationChange& change : changes) {
      if (change.kind != kind) continue;
      fmt::print(out, "  {}: {}\n    {}: {}{}{}\n    {}: {}{}{}\n", to_string(kind), item_name(change.before),
                 before.when, in_words(change.before.settled.presence),
                 answer_words(change.before.settled).empty() ? "" : ": ", answer_words(change.before.settled),
                 after.when, in_words(change.after.settled.presence),
                 answer_words(change.after.settled).empty() ? "" : ": ", answer_words(change.after.settled));
    }
  }
}

Json answer_json(const PresenceAnswer& answer) {
  Json object{{"presence", to_string(answer.presence)}, {"on_whose_word", keys_json(answer.on_whose_word)}};
  if (!answer.against.empty()) object["against"] = keys_json(answer.against);
  if (!answer.why.empty()) object["why"] = answer.why;
  if (!answer.yet.empty()) object["yet"] = keys_json(answer.yet);
  return object;
}

Json item_json(const ConfigurationItem& item, const Configuration& made) {
  Json object{{"subject", item.subject}, {"subject_name", item.subject_name}};
  if (!item.property.empty()) object["property"] = item.property;
  object["place"] = item.place;
  object["place_name"] = item.place_name;
  object["first"] = to_string(made.first);
  object["last"] = to_string(made.last);
  object["settled"] = answer_json(item.settled);
  object["preview"] = answer_json(item.preview);
  return object;
}

struct ConfigurationOptions {
  std::string file, on, against, place, format = "text";
};

Result<Configuration> make(const SiteFile& site, const std::string& date, const ConfigurationOptions& options,
                           const Surroundings& surroundings) {
  const auto when = configuration_date(site, date, surroundings);
  if (!when) return when.error();
  return configuration(site, *when, options.place, surroundings);
}

void print_json(Command& command, const Configuration& made, const std::optional<Configuration>& other) {
  for (const ConfigurationItem& item : made.items)
    fmt::print(command.out(), "{}\n", item_json(item, made).dump());
  if (other) {
    for (const ConfigurationChange& change : differences(made, *other)) {
      Json object{{"change", to_string(change.kind)}};
      object["before"] = item_json(change.before, made);
      object["after"] = item_json(change.after, *other);
      fmt::print(command.out(), "{}\n", object.dump());
    }
  }
  fmt::print(command.err(), "{}\n", made.withheld);
}

}  // namespace

void add_configuration(CLI::App& program, Command& command) {
  auto options = std::make_shared<ConfigurationOptions>();
  CLI::App* app = program.add_subcommand("configuration", "What stood where on a day, and on whose word");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("PLACE", options->place, "Only this place and what lies in it, by key, name or number");
  app->add_option("--on", options->on,
                  "The day or time: EDTF, as people say it, or the name of an event of the register")
      ->required();
  app->add_option("--against", options->against, "Another day: what differs between the two");
  app->add_option("--format", options->format, "text or jsonl")->check(CLI::IsMember({"text", "jsonl"}));
  command.add_today_option(*app);
  command.add_data_options(*app);
  app->callback([options, &command] {
    const auto site = command.open_to_read(options->file);
    if (!site) return command.fail(site.error());
    const Surroundings surroundings = command.surroundings();
    const auto made = make(*site, options->on, *options, surroundings);
    if (!made) return command.fail(made.error());
    std::optional<Configuration> other;
    if (!options->against.empty()) {
      auto second = make(*site, options->against, *options, surroundings);
      if (!second) return command.fail(second.error());
      other = std::move(*second);
    }
    if (options->format == "jsonl") return print_json(command, *made, other);
    if (!other) return print_report(command.out(), configuration_report(*made));
    print_differences(command.out(), *made, *other);
    fmt::print(command.out(), "{}\n", made->withheld);
  });
}

}  // namespace witnessmark
