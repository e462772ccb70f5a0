#include "witnessmark/app/open_questions.h"

#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "changes_json.h"
#include "command.h"
#include "report_text.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

void print_jsonl(Command& command, const OpenQuestions& open) {
  for (const OpenQuestion& one : open.questions) {
    nlohmann::ordered_json object{{"because", to_string(one.because)},
                                  {"preview", one.preview},
                                  {"question", one.question},
                                  {"standing", one.standing},
                                  {"told_by", one.told_by}};
    if (!one.subject.empty()) object["subject"] = one.subject;
    if (!one.place.empty()) object["place"] = one.place;
    if (!one.also_told.empty()) object["also_told"] = one.also_told;
    object["would_decide"] = one.would_decide;
    if (!one.looked_at.empty()) object["looked_at"] = one.looked_at;
    object["claims"] = nlohmann::ordered_json::array();
    for (const Id& claim : one.claims) object["claims"].push_back(to_string(claim));
    object["entries"] = one.entries;
    fmt::print(command.out(), "{}\n", object.dump());
  }
  for (const ConclusionHistory& history : open.to_correct) {
    nlohmann::ordered_json object{{"because", "replaced-conclusion"},
                                  {"conclusion", history.conclusion.key},
                                  {"wording", history.conclusion.wording},
                                  {"published", history.conclusion.published},
                                  {"answers", history.answers.size()}};
    for (const Conclusion& by : history.replaced_by) object["replaced_by"].push_back(by.key);
    fmt::print(command.out(), "{}\n", object.dump());
  }
  for (const ConclusionHistory& history : open.to_look_at) {
    nlohmann::ordered_json object{{"because", "evidence-changed"},
                                  {"conclusion", history.conclusion.key},
                                  {"wording", history.conclusion.wording}};
    object["changed_since"] = changes_json(history.changed_since);
    fmt::print(command.out(), "{}\n", object.dump());
  }
  fmt::print(command.err(), "{}\n", open.withheld);
}

}  // namespace

void add_open_questions(CLI::App& program, Command& command) {
  struct Options {
    std::string file, format = "text";
    std::size_t most = 20;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app =
      program.add_subcommand("open-questions", "What the evidence leaves open, and what would decide it");
  app->add_option("FILE", options->file, "Site file, weighed before")->required();
  app->add_option("--format", options->format, "text or jsonl")->check(CLI::IsMember({"text", "jsonl"}));
  command.add_most_option(*app, options->most, "How many to print under each heading");
  command.add_today_option(*app);
  command.add_data_options(*app);
  app->callback([app, options, &command] {
    if (const auto checked = only_with(*app, "--most", options->format == "text", "--format text"); !checked)
      return command.fail(checked.error());
    const auto site = command.open_to_read(options->file);
    if (!site) return command.fail(site.error());
    const auto open = open_questions(*site, command.surroundings());
    if (!open) return command.fail(open.error());
    if (options->format == "text")
      print_report(command.out(), question_report(*open, options->most, "--most"));
    else
      print_jsonl(command, *open);
  });
}

}  // namespace witnessmark
