#include "cli/report_text.h"

#include <fmt/ostream.h>

namespace witnessmark {

void print_lines(std::ostream& out, const Report& report) {
  const ReportLine* before = nullptr;
  for (const ReportLine& line : report.lines) {
    const bool closes = line.weight == ReportLine::Weight::caution &&
                        (before == nullptr || before->weight != ReportLine::Weight::caution);
    if (closes) fmt::print(out, "\n");
    before = &line;
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

void print_report(std::ostream& out, const Report& report) {
  fmt::print(out, "{}\n", report.title);
  print_lines(out, report);
}

}  // namespace witnessmark
