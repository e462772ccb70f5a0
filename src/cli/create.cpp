#include <fmt/ostream.h>

#include "command.h"

namespace witnessmark {

void add_create(CLI::App& program, Command& command) {
  struct Options {
    std::string file, name;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand("create", "Make a new, empty site file");
  app->add_option("FILE", options->file, "Site file to make; it must not exist")->required();
  app->add_option("--name", options->name, "Name of the site, for people");
  command.add_coder_option(*app);
  app->callback([options, &command] {
    const Surroundings around = command.surroundings();
    SiteInfo info;
    info.name = options->name.empty() ? std::filesystem::path(options->file).stem().string() : options->name;
    info.created = to_string(around.today);
    const auto site = SiteFile::create(options->file, info, {around.coder, around.random, around.wall_clock});
    if (!site) return command.fail(site.error());
    fmt::print(command.out(), "{}: a new site file for {}\n", options->file, info.name);
  });
}

}  // namespace witnessmark
