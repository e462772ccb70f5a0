#pragma once
#include <string>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/recall_table.h"

namespace witnessmark {

struct RecallAccount {
  RecallTable reviewed;   ///< Of reviewed claims.
  RecallTable preview;    ///< Of these and of proposals nobody has reviewed.
  std::string withheld;
};

/// How the weighed claims came out by recall distance, by basis and by presence, of what may be shown on the day. A claim
/// counts once, as foremost() has it. Never printed without kRecallTableCaution.
Result<RecallAccount> recall_account(const SiteFile& site, const Surroundings& surroundings);

}  // namespace witnessmark
