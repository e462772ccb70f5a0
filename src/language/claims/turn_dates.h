#pragma once
#include <optional>
#include <vector>

#include "language/claims/talkers.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/language/date_expression.h"

namespace witnessmark::claims {

/// The dates of an interview, turn by turn. They are read for many turns at once, as long as the same
/// narrator's life stands behind them.
class TurnDates {
 public:
  TurnDates(const ReadingContext& context, const Transcript& transcript, const CodePointIndex& index,
            Talkers& talkers);

  /// Those of a turn, with ranges in its code points. Turns are asked for in order, each once.
  std::vector<DateExpression> take(std::size_t turn);

  /// The speaker's birth and time of service, as of the turn taken last.
  const std::optional<Edtf>& birth() const { return reader_.talk().birth; }
  const std::optional<ChosenDate>& served() const { return served_; }
  /// The day of the interview.
  const std::optional<ChosenDate>& today() const { return today_; }

 private:
  void set_life(const std::string& key);
  void read_from(std::size_t first);

  const ReadingContext& context_;
  const Transcript& transcript_;
  const CodePointIndex& index_;
  Talkers& talkers_;
  DateReader reader_;
  std::optional<ChosenDate> today_, served_;
  std::size_t first_ = 0;             ///< The first turn that was read.
  std::vector<DateExpression> read_;  ///< Dates of turns from that one on.
  std::vector<std::ptrdiff_t> past_;  ///< For each of these turns, where its dates end.
};

}  // namespace witnessmark::claims
