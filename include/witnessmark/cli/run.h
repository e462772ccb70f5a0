#pragma once
#include <filesystem>
#include <functional>
#include <iosfwd>
#include <string>
#include <vector>

#include "witnessmark/app/review_mode.h"
#include "witnessmark/base/file_system.h"
#include "witnessmark/base/id.h"
#include "witnessmark/base/result.h"
#include "witnessmark/time/day.h"

namespace witnessmark {

class CodingDesk;

/// What the command line takes from the process it runs in.
struct CommandSetting {
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
  const FileReader& files;
  std::filesystem::path shared;               ///< Unless --shared says otherwise.
  Day today;                                  ///< Unless --today says otherwise.
  std::string coder;                          ///< Unless --coder says otherwise.
  RandomBytes random = system_random();
  std::function<std::string()> wall_clock;
  bool err_is_terminal = false;               ///< Progress is shown only then.
  /// Lets a coder work at the desk; none where there is no terminal user interface.
  std::function<Result<void>(CodingDesk&, const ReviewMode&)> review;
};

/// Exit codes: 0 done; 1 faults were found (verify); 2 wrong use or bad input; 3 the machine failed.
enum ExitCode : int { kDone = 0, kFaultsFound = 1, kBadInput = 2, kMachineFailed = 3 };

/// Runs one command. `arguments` does not hold the program's name.
int run(const std::vector<std::string>& arguments, const CommandSetting& setting);

}  // namespace witnessmark
