#include "cli/command.h"
#include "witnessmark/app/coding_desk.h"

namespace witnessmark {

void add_review(CLI::App& program, Command& command) {
  struct Options {
    std::string file, script;
    ReviewMode request;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app =
      program.add_subcommand("review", "Go through claims and transcripts at the terminal, and decide");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_flag("--plain", options->request.plain, "By prompts, line by line: for screen readers");
  app->add_option("--script", options->script,
                  "Plays the orders of a file and prints the screens it asks for");
  app->add_option(
      "--player", options->request.player,
      "Program that plays recordings, with its arguments; {recording} and {seconds} are filled in");
  app->add_flag("--mouse", options->request.mouse,
                "The wheel moves; text is then not selected by the terminal");
  command.add_coder_option(*app);
  command.add_today_option(*app);
  command.add_data_options(*app);
  app->callback([options, &command] {
    if (!command.setting().review)
      return command.fail(
          {"", 0, 0, "this program has no terminal user interface", "build it with the terminal layer"});
    const Surroundings surroundings = command.surroundings();
    ReviewMode request = options->request;
    if (!options->script.empty()) {
      const auto script = surroundings.files.read(options->script);
      if (!script) return command.fail(script.error());
      request.script = *script;
      request.script_source = options->script;
    }
    auto desk = CodingDesk::open(options->file, surroundings);
    if (!desk) return command.fail(desk.error());
    if (const auto done = command.setting().review(*desk, request); !done) return command.fail(done.error());
  });
}

}  // namespace witnessmark
