#include "told_statement.h"

namespace witnessmark {

Told told_by(const Claim& claim) {
  const bool denied = claim.polarity == Polarity::denied;
  if (denied && claim.statement == Statement::present) return {Statement::absent, Reading::throughout, false};
  if (denied && claim.statement == Statement::absent) return {Statement::present, Reading::within, false};
  if (claim.statement == Statement::absent) return {Statement::absent, Reading::throughout, false};
  if (claim.statement == Statement::count && claim.quantity && claim.quantity->most == 0)
    return {Statement::absent, Reading::throughout, false};
  return {claim.statement, reading_of(claim), denied};
}

Statement stated_by(const Entry& entry) {
  return entry.statement == Statement::count && entry.number && *entry.number == 0 ? Statement::absent
                                                                                   : entry.statement;
}

}  // namespace witnessmark
