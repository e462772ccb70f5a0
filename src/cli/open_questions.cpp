#include "witnessmark/app/open_questions.h"

#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "command.h"
#include "report_text.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

void print_question(std::ostream& out, const OpenQuestion& open) {
  fmt::print(out, "  {}{}\n", visible(open.question), open.preview ? " [preview: not reviewed]" : "");
  std::string also;
  for (const std::string& told : open.also_told) also += (also.empty() ? "" : "; ") + told;
  if (!also.empty()) fmt::print(out, "    also told of: {}\n", visible(also));
  std::string standing = open.standing;
  if (open.told_by > 1 && open.because != OpenBecause::silent)
    standing += fmt::format("; told by {} narrators", open.told_by);
  fmt::print(out, "    {}\n", visible(standing));
  for (const std::string& looked : open.looked_at) fmt::print(out, "    {}\n", visible(looked));
  for (const std::string& evidence : open.would_decide)
    fmt::print(out, "    would decide: {}\n", visible(evidence));
  std::string entries;
  for (const std::string& entry : open.entries) entries += (entries.empty() ? "" : ", ") + entry;
  if (!entries.empty()) fmt::print(out, "    see: {}\n", visible(entries));
}

void print_text(Command& command, const OpenQuestions& open, std::size_t most) {
  auto& out = command.out();
  if (open.questions.empty()) fmt::print(out, "no question is open on what is dated and reviewed\n");
  for (std::size_t i = 0; i < open.questions.size();) {
    const OpenBecause because = open.questions[i].because;
    std::size_t past = i;
    while (past < open.questions.size() && open.questions[past].because == because) ++past;
    fmt::print(out, "{}{} ({}):\n", i == 0 ? "" : "\n", in_words(because), past - i);
    for (std::size_t j = i; j < std::min(past, i + most); ++j) print_question(out, open.questions[j]);
    if (past - i > most) fmt::print(out, "  … and {} more (--most)\n", past - i - most);
    i = past;
  }
  if (!open.to_correct.empty())
    fmt::print(out, "\nOnce concluded and said, replaced since ({}):\n", open.to_correct.size());
  Report replaced;
  for (const ConclusionHistory& history : open.to_correct) add_conclusion(replaced, history);
  print_lines(out, replaced);
  fmt::print(out, "\n");
  for (const std::string& interview : open.unread)
    fmt::print(out, "{}: no transcript, so nothing in it was read\n", interview);
  fmt::print(out, "{}\n", open.withheld);
}

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
  app->add_option("--most", options->most, "How many to print under each heading")->capture_default_str();
  command.add_today_option(*app);
  command.add_data_options(*app);
  app->callback([options, &command] {
    const auto site = command.open_to_read(options->file);
    if (!site) return command.fail(site.error());
    const auto open = open_questions(*site, command.surroundings());
    if (!open) return command.fail(open.error());
    if (options->format == "text")
      print_text(command, *open, options->most);
    else
      print_jsonl(command, *open);
  });
}

}  // namespace witnessmark
