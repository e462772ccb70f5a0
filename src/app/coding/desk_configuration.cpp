#include "app/coding/report_lines.h"
#include "witnessmark/app/configuration.h"

namespace witnessmark {

Result<Report> configuration_report_on(const SiteFile& site, const std::string& date,
                                       const Surroundings& surroundings) {
  const auto when = configuration_date(site, date, surroundings);
  if (!when) return when.error();
  const auto made = configuration(site, *when, "", surroundings);
  if (!made) return made.error();
  return configuration_report(*made);
}

}  // namespace witnessmark
