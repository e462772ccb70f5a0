#pragma once
#include <string>

#include "witnessmark/app/coding_desk.h"
#include "witnessmark/app/coding_views.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// An entry or a stay of the register in full, and the claims it was held against. An Error when it is not
/// known.
Result<Report> entry_report(const CodingDesk::State& state, const std::string& key);

/// What stood where on a day. An Error when the date is none.
Result<Report> configuration_report_on(const SiteFile& site, const std::string& date,
                                       const Surroundings& surroundings);

/// What coders decided otherwise in two copies, and how far they agree.
Report difference_report(const CodingDesk::State& state);

/// What cannot all be true.
Result<Report> contradiction_report(const SiteFile& site, const Surroundings& surroundings);

}  // namespace witnessmark
