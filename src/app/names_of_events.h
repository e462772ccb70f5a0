#pragma once
#include <string>
#include <utility>
#include <vector>

#include "witnessmark/app/withholding.h"
#include "witnessmark/store/journal.h"

namespace witnessmark {

/// Takes the names that releases keep back, and keys that hold them, out of events of the journal.
class NamesOfEvents {
 public:
  explicit NamesOfEvents(const Withholding& withholding);

  /// Out of its interview, target, reason and content.
  void take_out(JournalEvent& event) const;

 private:
  void take_out_keys(std::string& text, const std::string& interview) const;

  const Withholding& withholding_;
  std::vector<std::pair<std::string, std::string>> keys_;  ///< With what stands for them.
};

}  // namespace witnessmark
