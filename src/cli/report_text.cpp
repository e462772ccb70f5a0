#include "cli/report_text.h"

#include <fmt/ostream.h>

namespace witnessmark {

void print_lines(std::ostream& out, const Report& report) {
  for (const ReportLine& line : report.lines) {
    switch (line.weight) {
      case ReportLine::Weight::heading:
        fmt::print(out, "\n{}:\n", line.text);
        break;
      case ReportLine::Weight::item:
        fmt::print(out, "  {}\n", line.text);
        break;
      case ReportLine::Weight::detail:
        fmt::print(out, "    {}\n", line.text);
        break;
      case ReportLine::Weight::caution:
        fmt::print(out, "{}\n", line.text);
        break;
    }
  }
}

}  // namespace witnessmark
