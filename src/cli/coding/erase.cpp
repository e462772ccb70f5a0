#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/erasure.h"
#include "witnessmark/store/handing_on.h"

#include <fmt/ostream.h>

#include "cli/command.h"

namespace witnessmark {

void add_erase(CLI::App& program, Command& command) {
  struct Options {
    std::string file, interview, confirm, why;
  };
  auto options = std::make_shared<Options>();
  CLI::App* app = program.add_subcommand(
      "erase",
      "Erase an interview for good, when its release was withdrawn; asks twice, and cannot be undone");
  app->add_option("FILE", options->file, "Site file")->required();
  app->add_option("INTERVIEW", options->interview, "Key of the interview")->required();
  app->add_option("--confirm", options->confirm, "The key once more; without it you are told what would go");
  app->add_option(
      "--why", options->why,
      "Reason for the journal, needed with --confirm; it stays, so it must not repeat what is erased");
  command.add_coder_option(*app);
  app->callback([options, &command] {
    const auto told = [&command](const ErasureAccount& account) {
      fmt::print(command.out(), "  {}, {}, {}, {}, the content of {}\n",
                 counted(account.originals, "original"), counted(account.reading_texts, "reading text"),
                 counted(account.claims, "claim"), counted(account.notes, "note"),
                 counted(account.events, "journal event"));
    };
    const auto print_what_stays = [&command] {
      fmt::print(command.out(),
                 "  what stays: the key of the interview, the day and the reason; the events of the journal\n"
                 "  without their content; the persons, who may be in other interviews; the register\n");
    };
    const auto print_handed_on = [&command](const std::vector<HandedOn>& handed) {
      for (const HandedOn& one : handed)
        fmt::print(command.out(), "  handed on {} by {}: {} to {} (SHA-256 {})\n", one.wall_time, one.by,
                   counted(one.claims, "claim"), one.to.empty() ? "standard output" : one.to, one.sha256);
      fmt::print(command.out(), "Copies, exports and backups are not reached: see to them.\n");
    };
    if (options->confirm != options->interview) {
      const auto site = command.open_to_read(options->file);
      if (!site) return command.fail(site.error());
      const auto account = account_of_erasure(*site, options->interview);
      if (!account) return command.fail(account.error());
      fmt::print(command.out(), "{}: erasing it would take, for good:\n", options->interview);
      told(*account);
      print_what_stays();
      print_handed_on(handed_on_of(*site, options->interview));
      return command.fail({"", 0, 0,
                           options->confirm.empty() ? "nothing was erased"
                                                    : fmt::format("nothing was erased: “{}” is not “{}”",
                                                                  options->confirm, options->interview),
                           fmt::format("to erase it, add --confirm {} and --why with the reason, which stays",
                                       options->interview)});
    }
    auto site = command.open_to_edit(options->file);
    if (!site) return command.fail(site.error());
    if (const auto known = account_of_erasure(*site, options->interview); !known)
      return command.fail(known.error());
    if (trim(options->why).empty())
      return command.fail({"", 0, 0,
                           "nothing was erased: it needs its reason, and none can be added afterwards",
                           "add --why with the reason; it stays, so it must not repeat what is erased"});
    const std::vector<HandedOn> handed = handed_on_of(*site, options->interview);
    const auto account = erase_interview(*site, options->interview, options->why);
    if (!account) return command.fail(account.error());
    fmt::print(command.out(), "{}: erased, a marker stays\n", options->interview);
    told(*account);
    print_what_stays();
    print_handed_on(handed);
    if (account->in_side_file)
      fmt::print(command.err(),
                 "Somebody is reading {}: its side file (-wal) holds the text until all have closed it.\n",
                 options->file);
  });
}

}  // namespace witnessmark
