#pragma once
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "witnessmark/model/site.h"
#include "witnessmark/time/date_policy.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

struct EvidenceBeside;
class EvidenceFinder;
class ShownStays;

/// The register prepared for weighing: entries with their periods, found by subject and by place. What was found once is
/// kept; several threads may ask at a time.
class RegisterIndex {
 public:
  struct Item {
    const Entry* entry;
    const Source* source;              ///< May be null when the register names a source it does not hold.
    std::optional<Period> period;      ///< Nothing when undated.
  };
  struct StayItem {
    const Stay* stay;
    std::optional<Period> period;
    std::vector<std::string> folded_locations;
  };

  /// The register and the lists must outlive the index.
  RegisterIndex(const Register& evidence, const AuthorityLists& lists, const DatePolicy& policy);
  ~RegisterIndex();
  RegisterIndex(const RegisterIndex&) = delete;  // what was found points into it
  RegisterIndex& operator=(const RegisterIndex&) = delete;

  const DatePolicy& policy() const { return policy_; }
  const AuthorityLists& lists() const { return lists_; }
  const std::vector<Item>& items() const { return items_; }
  const std::vector<StayItem>& stays() const { return stays_; }

  /// Entries on the subject (or something broader or narrower) at the place (or one that contains it or lies in it; an
  /// empty place matches all). With an empty subject: entries without subject at the place. In register order.
  std::vector<const Item*> on(std::string_view subject, std::string_view place) const;
  /// The same with what is worked out from them once for all claims; for this layer.
  const EvidenceBeside& beside(std::string_view subject, std::string_view place) const;
  /// The stays of a thing at a place as entries state it, where they show it come again; else null. For this layer.
  const ShownStays* shown_stays(const std::string& subject, const std::string& place) const;

  const Item* find(std::string_view entry_key) const;
  const StayItem* find_stay(std::string_view stay_key) const;
  const Source* source(std::string_view key) const;

  /// The names, folded, of the location that words mean: of the stay one of whose names they are or, where
  /// they are but the end of names ("the infirmary" of "Pellhaven Infirmary"), of the one location they can
  /// mean. The words themselves where no location fits, or several do.
  std::vector<std::string> location_names(std::string_view words) const;

  /// The source and all it rests on, directly or through others; circles are cut.
  const std::unordered_set<std::string>& lineage(std::string_view source_key) const;

  /// Whether two places are the same or one lies in the other; an empty one matches.
  bool places_meet(std::string_view a, std::string_view b) const;

 private:
  void add_locations();
  friend class EvidenceFinder;
  const std::vector<std::size_t>& entries_on(const std::string& subject) const;
  std::unordered_set<std::string> trace_lineage(std::string_view source_key) const;

  const AuthorityLists& lists_;
  DatePolicy policy_;
  std::vector<Item> items_;
  std::vector<StayItem> stays_;
  std::unordered_map<std::string, std::vector<std::size_t>> by_subject_;
  std::unordered_map<std::string, std::size_t> by_key_;
  std::unordered_map<std::string, std::size_t> stay_by_key_;
  std::unordered_map<std::string, std::size_t> stay_by_location_;  ///< The first stay of each name.
  std::unordered_map<std::string, std::optional<std::size_t>>
      stay_by_name_end_;  ///< Nothing where several fit.
  std::unordered_map<std::string, const Source*> sources_;
  std::unordered_map<std::string, std::vector<std::string>> derives_from_;
  std::unique_ptr<EvidenceFinder> finder_;
};

}  // namespace witnessmark
