#include <fmt/ostream.h>

#include <iterator>
#include <nlohmann/json.hpp>

#include "command.h"
#include "witnessmark/app/date_reading.h"
#include "witnessmark/base/decode.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/language/timeml.h"

namespace witnessmark {
namespace {

struct DatesOptions {
  std::vector<std::string> text;
  std::string transcript, format = "text", reference, interview, born;
  bool prose = false;
};

std::string day_cell(const std::optional<Day>& day) {
  return day ? to_string(*day) : "…";
}

void print_for_people(Command& command, const DateExpression& one) {
  auto& out = command.out();
  fmt::print(out, "{}-{} “{}”  {} {}{}", one.range.begin.value, one.range.end.value, visible(one.text),
             to_string(one.type), one.timex3.empty() ? "unresolved" : one.timex3,
             one.mod.empty() ? "" : " " + one.mod);
  if (one.edtf) fmt::print(out, "  {}", to_string(*one.edtf));
  if (one.period) {
    const auto last =
        one.period->past_latest() ? std::optional<Day>(*one.period->past_latest() - 1) : std::nullopt;
    fmt::print(out, "  {} to {}", day_cell(one.period->earliest()), day_cell(last));
  }
  fmt::print(out, "\n    {}", one.rule);
  if (!one.anchor.empty()) fmt::print(out, "; from {}", visible(one.anchor));
  if (!one.alternatives.empty()) fmt::print(out, "; or {}", fmt::join(one.alternatives, ", "));
  if (one.corrected) fmt::print(out, "; taken back");
  fmt::print(out, "\n");
}

void print_json(Command& command, const DateExpression& one) {
  nlohmann::ordered_json object{
      {"begin", one.range.begin.value}, {"end", one.range.end.value}, {"text", one.text},
      {"type", to_string(one.type)},    {"timex3", one.timex3},       {"mod", one.mod}};
  object["edtf"] = nullptr;
  object["earliest"] = nullptr;
  object["latest"] = nullptr;
  if (one.edtf) object["edtf"] = to_string(*one.edtf);
  if (one.period && one.period->earliest()) object["earliest"] = to_string(*one.period->earliest());
  if (one.period && one.period->past_latest()) object["latest"] = to_string(*one.period->past_latest() - 1);
  object["rule"] = one.rule;
  object["anchor"] = one.anchor;
  object["alternatives"] = one.alternatives;
  if (one.corrected) object["corrected"] = true;
  fmt::print(command.out(), "{}\n", object.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace));
}

void print_all(Command& command, const DatesOptions& options, std::string_view text,
               const std::vector<DateExpression>& expressions) {
  if (options.format == "timex3") {
    command.out() << with_timex3(text, expressions);
    if (!text.ends_with('\n')) command.out() << '\n';
    return;
  }
  for (const DateExpression& one : expressions)
    options.format == "jsonl" ? print_json(command, one) : print_for_people(command, one);
}

Result<DateQuestion> question_of(const DatesOptions& options) {
  DateQuestion question;
  question.prose = options.prose;
  const auto take = [](const std::string& text, std::string_view option,
                       std::optional<Edtf>& into) -> Result<void> {
    if (text.empty()) return {};
    auto value = parse_edtf(text);
    if (!value) {
      Error error = value.error();
      error.source = option;
      return error;
    }
    into = std::move(value).value();
    return {};
  };
  if (const auto done = take(options.reference, "--reference-date", question.reference); !done)
    return done.error();
  if (const auto done = take(options.interview, "--interview-date", question.interview); !done)
    return done.error();
  if (const auto done = take(options.born, "--born", question.birth); !done) return done.error();
  return question;
}

/// Standard input: a TimeML document keeps what stands around its text; anything else is text.
Result<void> filter(Command& command, const DatesOptions& options, const DateQuestion& question) {
  const std::string bytes{std::istreambuf_iterator<char>(command.in()), std::istreambuf_iterator<char>()};
  if (bytes.find("<TimeML") == std::string::npos) {
    const auto decoded = decode_text(bytes, "standard input");
    if (!decoded) return decoded.error();
    const auto found = dates_in_text(decoded->text, question, command.surroundings());
    if (!found) return found.error();
    print_all(command, options, decoded->text, *found);
    return {};
  }
  const auto document = parse_timeml(bytes, "standard input");
  if (!document) return document.error();
  const auto found = dates_in_text(document->text, question, command.surroundings());
  if (!found) return found.error();
  if (options.format == "timex3") {
    command.out() << document->before << with_timex3(document->text, *found) << document->after;
    return {};
  }
  print_all(command, options, document->text, *found);
  return {};
}

Result<void> run_dates(Command& command, const DatesOptions& options) {
  const auto question = question_of(options);
  if (!question) return question.error();
  if (!options.transcript.empty()) {
    const auto dates = dates_in_transcript(options.transcript, *question, command.surroundings());
    if (!dates) return dates.error();
    print_all(command, options, dates->reading_text, dates->expressions);
    return {};
  }
  if (options.text.empty()) return filter(command, options, *question);
  const std::string text = fmt::format("{}", fmt::join(options.text, " "));
  const auto found = dates_in_text(text, *question, command.surroundings());
  if (!found) return found.error();
  print_all(command, options, text, *found);
  return {};
}

}  // namespace

void add_dates(CLI::App& program, Command& command) {
  auto options = std::make_shared<DatesOptions>();
  CLI::App* app = program.add_subcommand("dates", "Date expressions in text and what they mean; a filter");
  command.add_words(*app, "TEXT…", "Text; without it standard input is read, plain or TimeML");
  app->add_option("--transcript", options->transcript, "Read a transcript file instead");
  app->add_option("--format", options->format, "text, jsonl, or timex3: the text with TIMEX3 tags")
      ->check(CLI::IsMember({"text", "jsonl", "timex3"}));
  app->add_option("--reference-date", options->reference, "EDTF: the date under discussion");
  app->add_option("--interview-date", options->interview,
                  "EDTF: when it was said; anchors 'seventy years ago'");
  app->add_option("--born", options->born, "EDTF: the speaker's birth; anchors 'when I was nineteen'");
  app->add_flag("--prose", options->prose, "Written narrative rather than talk");
  command.add_data_options(*app);
  app->callback([app, options, &command] {
    auto words = command.words_of(*app);
    if (!words) return command.fail(words.error());
    options->text = std::move(words).value();
    if (const auto checked = only_with(*app, "--transcript", options->text.empty(), "no text of its own");
        !checked)
      return command.fail(checked.error());
    if (const auto done = run_dates(command, *options); !done) command.fail(done.error());
  });
}

}  // namespace witnessmark
