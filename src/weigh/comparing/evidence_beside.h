#pragma once
#include <cstdint>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "timed.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// An entry with all that is the same for every claim it is held against.
struct PreparedEntry {
  TimedEntry timed;
  const std::unordered_set<std::string>* lineage;  ///< Of its source.
};

/// Stretches of days in which the register shows something; asked whether one lies wholly between two days.
class ShownStretches {
 public:
  void add(std::int64_t first, std::int64_t past) { stretches_.emplace_back(first, past); }
  /// After the last was added.
  void sort();
  bool any_between(std::int64_t from, std::int64_t to) const;

 private:
  std::vector<std::pair<std::int64_t, std::int64_t>> stretches_;
  std::vector<std::int64_t> least_past_;  ///< Of each stretch and those after it.
};

/// The evidence a claim on a thing at a place is held against.
struct EvidenceBeside {
  std::vector<std::size_t> numbers;            ///< Of RegisterIndex::items(), in their order.
  std::vector<const PreparedEntry*> entries;   ///< The same.
  /// The thing itself is shown to have come, or to have gone, or, in both, to be there.
  ShownStretches came, went;
  bool counted_at_several_places = false;      ///< The thing itself.
};

/// Finds and prepares it when it is first asked for. May be asked by several threads.
class EvidenceFinder {
 public:
  explicit EvidenceFinder(const RegisterIndex& evidence) : evidence_(evidence) {}

  const EvidenceBeside& beside(std::string_view subject, std::string_view place);
  const std::unordered_set<std::string>& lineage(std::string_view source);
  const ShownStays* shown_stays(const std::string& subject, const std::string& place);

 private:
  std::map<std::string, std::shared_ptr<const ShownStays>> find_stays(const std::string& subject) const;
  const std::vector<std::size_t>& on(const std::string& subject);
  const PreparedEntry& prepared(std::size_t number);
  const std::unordered_set<std::string>& places_around(const std::string& place);
  const std::unordered_set<std::string>& held_lineage(const std::string& source);
  EvidenceBeside found(const std::string& subject, const std::string& place);

  const RegisterIndex& evidence_;
  std::recursive_mutex mutex_;  ///< What an entry rests on is asked for while what is beside a thing is found.
  std::unordered_map<std::string, EvidenceBeside> beside_;                    ///< By subject and place.
  std::unordered_map<std::string, std::vector<std::size_t>> on_;              ///< By subject.
  std::vector<std::unique_ptr<PreparedEntry>> prepared_;                      ///< By number of the item.
  std::unordered_map<std::string, std::unordered_set<std::string>> around_;   ///< A listed place and all it lies in.
  std::unordered_map<std::string, std::unordered_set<std::string>> lineages_;
  /// By subject and place as entries state it, where there is more than one stay.
  std::unordered_map<std::string, std::map<std::string, std::shared_ptr<const ShownStays>>> shown_stays_;
};

}  // namespace witnessmark
