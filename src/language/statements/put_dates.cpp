// The dates of a sentence as they bear on what it states.
#include <algorithm>

#include "language/statements/statement_reader.h"

namespace witnessmark::claims {

/// "until", "since", "by", "before" and "after" mean different things of states and of events.
void StatementReader::settle_date(const DateUse& use, Draft& dated) const {
  DateExpression& expression = dated.date->expression;
  if (use.or_date) expression.edtf = either(expression.edtf, passage_.dates[*use.or_date].edtf);
  if (use.or_date) dated.firmness = Firmness::guess;
  if (!expression.edtf) return;
  if (dated.by_then) {
    expression.edtf = at_the_latest(*expression.edtf);
    return;
  }
  const bool denied = dated.polarity == Polarity::denied;
  if (use.until) {
    if (dated.statement == Statement::present) {
      dated.statement = Statement::ends;
      expression.edtf = end_of_until(*expression.edtf);
    } else if (dated.statement == Statement::absent) {
      dated.statement = Statement::begins;
      expression.edtf = end_of_until(*expression.edtf);
    } else if (denied && is_change(dated.statement)) {
      // "didn't fit it until spring": it was fitted then.
      dated.polarity = Polarity::affirmed;
      expression.edtf = end_of_until(*expression.edtf);
    }
    return;
  }
  if (is_state(dated.statement)) expression.edtf = date_of_state(expression, use.by);
}

/// "He left in 1957", "retired in October", "October", asked when he finished: he was there until then.
bool StatementReader::tells_leaving(const Predicate* p, Span quoted) const {
  if (c_.asked_leaving || (p && arguments_.has(p->at, WordClass::leaving))) return true;
  for (std::uint32_t i = quoted.first; i < quoted.past; ++i)
    if (arguments_.has(i, WordClass::leaving)) return true;
  return false;
}

/// ", and 1937"
bool StatementReader::joined_by_mark(Span date) const {
  const std::uint32_t begin = c_.reading.span.first;
  return date.first >= begin + 2 && arguments_.is_mark(date.first - 2) &&
         arguments_.has(date.first - 1, WordClass::coordinator);
}

void StatementReader::put_dates(const Predicate* p, std::size_t first_draft, Span quoted) {
  const std::vector<DateUse> uses = dates_for(passage_, c_.reading, p, clause_of(p));
  if (uses.empty()) return;
  const auto first = drafts_.begin() + static_cast<std::ptrdiff_t>(first_draft);
  std::vector<Draft> undated(std::make_move_iterator(first), std::make_move_iterator(drafts_.end()));
  drafts_.erase(first, drafts_.end());
  const bool one_usable = std::any_of(uses.begin(), uses.end(),
                                      [](const DateUse& use) { return !use.corrected && !use.negated; });
  for (Draft& draft : undated) {
    if (draft.no_joined_date && joined_by_mark(passage_.date_spans[uses.front().date])) {
      drafts_.push_back(std::move(draft));
      continue;
    }
    const bool state = draft.statement == Statement::present || draft.statement == Statement::absent;
    for (const DateUse& use : uses) {
      const DateExpression& expression = passage_.dates[use.date];
      Draft dated = &use == &uses.back() ? std::move(draft) : draft;
      dated.date = ChosenDate{expression, false};
      dated.throughout = use.throughout;
      if (use.corrected && one_usable) dated.withdrawn = true;
      settle_date(use, dated);
      const bool leaves =
          dated.statement == Statement::located && !use.until && tells_leaving(p, quoted);
      if (leaves && expression.edtf)
        dated.date->expression.edtf = as_interval(at_the_latest(*expression.edtf));
      if (use.negated && !state && one_usable && uses.size() > 1) dated.polarity = Polarity::denied;
      drafts_.push_back(std::move(dated));
    }
  }
}

}  // namespace witnessmark::claims
