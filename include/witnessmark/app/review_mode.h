#pragma once
#include <string>

namespace witnessmark {

/// How a coder wants to work at the desk.
struct ReviewMode {
  bool plain = false;  ///< By prompts, line by line.
  /// Answers to prompts are typed by a person, who sees what came of each. Else they are from a file, and the
  /// first that is not understood ends it: those after it would be for other claims than was meant.
  bool typed = false;
  std::string script =
      {};  ///< Orders played instead of keys; none unless script_source says where they are from.
  std::string script_source = {};
  std::string player = {};  ///< Program with its arguments; {recording} and {seconds} are filled in.
  bool mouse = false;       ///< The wheel moves; off, the terminal's own selecting of text works.
  bool colour = true;       ///< Colours where the terminal has them; nothing is said by them alone.
};

}  // namespace witnessmark
