#pragma once
#include <string>

#include "witnessmark/terminal/session.h"

namespace witnessmark {

/// Starts the program named, beside this one, with its output thrown away. `command` is divided at blanks; in
/// each word {recording} stands for the locator of the recording and {seconds} for the time. No shell sees
/// any of it. Without {recording} in it, the recording comes last. A locator that begins with a hyphen becomes
/// a path ("./-a.wav"): the program does not take it for an option. Nothing for an empty command.
Session::Player player_program(const std::string& command);

/// The words that are run.
std::vector<std::string> player_words(const std::string& command, const std::string& recording,
                                      Millisecond at);

}  // namespace witnessmark
