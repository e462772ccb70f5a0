#pragma once
#include <map>
#include <set>
#include <string>
#include <vector>

#include "store/merge/parting.h"
#include "witnessmark/store/merge.h"

namespace witnessmark {

/// What the parts of merge_site_file() share.
struct Merging {
  SiteFile& site;
  const SiteFile& other;
  StoreConnection& here;
  StoreConnection& there;
  Parting parting;
  std::vector<OwnEvent> brought = {};  ///< The other's events that were new here.
  std::map<Id, Id> same_claim = {};    ///< Claims that have another id there: theirs to ours.
  MergeReport report = {};

  /// The other's new events on one target, of the kinds asked for.
  template <typename Kinds>
  std::vector<OwnEvent> brought_on(std::string_view target_kind, std::string_view target, Kinds kinds) const {
    std::vector<OwnEvent> events;
    for (const OwnEvent& event : brought) {
      if (event.target_kind == target_kind && event.target == target && kinds(event.kind))
        events.push_back(event);
    }
    return events;
  }
  bool is_erased_here(const std::string& interview) const;
  void skip(std::string what, std::string which, std::string why) {
    report.not_taken.push_back({std::move(what), std::move(which), std::move(why)});
  }
};

/// Events in which somebody decided on a claim or a record.
bool is_decision(std::string_view kind);

/// Rows of interviews, evidence and lists.
Result<void> merge_rows(Merging& merging);

/// Transcripts of interviews that have none here, and later versions; then what is proposed from them.
Result<void> merge_transcripts(Merging& merging);
Result<void> merge_proposals(Merging& merging);

/// Places of restricted passages that have none here.
Result<void> place_merged_passages(Merging& merging);

/// Claims and what was written beside them.
Result<void> merge_decisions(Merging& merging);

/// Whether the reading text of that version is the same in both.
bool same_reading(const Merging& merging, const std::string& interview, int version);

}  // namespace witnessmark
