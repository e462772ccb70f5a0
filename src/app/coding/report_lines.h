#pragma once
#include <string>

#include "witnessmark/app/coding_views.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// A line that leads nowhere.
void add_line(Report& report, ReportLine::Weight weight, std::string text);

/// What cannot all be true.
Result<Report> contradiction_report(const SiteFile& site, const Surroundings& surroundings);

}  // namespace witnessmark
