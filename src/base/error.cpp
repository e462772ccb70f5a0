#include "witnessmark/base/error.h"

namespace witnessmark {

std::string to_string(const Error& error) {
  std::string place = error.source;
  if (error.line > 0) {
    if (!place.empty()) place += ':';
    place += std::to_string(error.line);
    if (error.column > 0) place += ':' + std::to_string(error.column);
  }
  std::string text = place.empty() ? error.message : place + ": " + error.message;
  if (!error.advice.empty()) text += " (" + error.advice + ")";
  return text;
}

std::string to_string(const Diagnostic& diagnostic) {
  switch (diagnostic.severity) {
    case Diagnostic::Severity::note:
      return "note: " + to_string(diagnostic.what);
    case Diagnostic::Severity::warning:
      return "warning: " + to_string(diagnostic.what);
    case Diagnostic::Severity::error:
      break;
  }
  return "error: " + to_string(diagnostic.what);
}

}  // namespace witnessmark
