#pragma once
#include <cstdint>
#include <string>

namespace witnessmark {

/// What a user got wrong and how to put it right. Exceptions are kept for broken invariants and a failing
/// machine; everything a user can cause comes back as an Error in a Result.
struct Error {
  std::string source;       ///< File, table or option the fault lies in; may be empty.
  std::int64_t line = 0;    ///< From 1; 0 when it does not apply.
  std::int64_t column = 0;  ///< From 1, in code points; 0 when it does not apply.
  std::string message;      ///< What is wrong, without full stop.
  std::string advice;       ///< What to do about it, without full stop; may be empty.

  bool operator==(const Error&) const = default;
};

/// "source:line:column: message (advice)", leaving out what is not known.
std::string to_string(const Error& error);

/// A remark on input that was taken in all the same, or the reason why a row was not.
struct Diagnostic {
  enum class Severity { note, warning, error };
  Severity severity = Severity::note;
  Error what;

  bool operator==(const Diagnostic&) const = default;
};

/// "note: source:line:column: message (advice)".
std::string to_string(const Diagnostic& diagnostic);

}  // namespace witnessmark
