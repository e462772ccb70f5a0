#pragma once
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

#include "witnessmark/base/file_system.h"
#include "witnessmark/base/id.h"
#include "witnessmark/time/day.h"

namespace witnessmark {

/// What a job takes from outside itself. Nothing below this layer asks the clock, the environment or the user's name.
struct Surroundings {
  const FileReader& files;
  std::filesystem::path shared;               ///< Folder of the data installed with the program.
  std::filesystem::path language;             ///< Folder of the language data; shared/language/en unless told otherwise.
  Day today;                                  ///< Access is judged on this day.
  std::string coder;                          ///< Goes into the journal.
  RandomBytes random = system_random();
  std::function<std::string()> wall_clock;    ///< ISO 8601, for people only.
  std::function<void(std::string_view)> progress;   ///< Told what is being worked on; may be empty.
};

}  // namespace witnessmark
