#include "witnessmark/app/export_claims.h"

#include "witnessmark/app/claim_records.h"
#include "witnessmark/write/claims_json.h"

namespace witnessmark {

Result<ExportAccount> export_claims(const SiteFile& site, const ExportRequest& request,
                                    const std::function<void(std::string_view)>& write,
                                    const Surroundings& surroundings) {
  ExportAccount account;
  Withholding withholding(site, surroundings.today);
  ClaimFilter filter;
  filter.reviewed_only = request.reviewed_only;
  if (request.format == ExportFormat::csv) write(claims_csv_header());
  const auto done = for_each_record(site, filter, surroundings, withholding, [&](const ClaimRecord& record) {
    write(request.format == ExportFormat::csv ? claim_csv_row(record, request.guard)
                                              : claim_json(record) + "\n");
    ++account.claims;
    account.interviews.insert(record.claim.interview);
    account.names_withheld += record.names_withheld;
    account.proposals += record.claim.status == ClaimStatus::proposed;
  });
  if (!done) return done.error();
  account.withheld = withholding.account();
  return account;
}

}  // namespace witnessmark
