#include "app/shown_register.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <set>

#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"

namespace witnessmark {
namespace {

/// The interviews an entry tells of: a testimony's own, and those its date or identification rests on.
std::set<std::string> interviews_beneath(const Entry& entry,
                                         const std::map<std::string, const Source*>& sources) {
  std::set<std::string> interviews;
  const auto add = [&](const std::string& key) {
    const auto source = sources.find(key);
    if (source == sources.end())
      interviews.insert(key);
    else if (!source->second->interview.empty())
      interviews.insert(source->second->interview);
  };
  if (const auto source = sources.find(entry.source);
      source != sources.end() && source->second->kind == SourceKind::testimony)
    add(entry.source);
  for (const auto* keys : {&entry.date_rests_on, &entry.identification_rests_on, &entry.caption_rests_on})
    for (const std::string& key : *keys) add(key);
  return interviews;
}

}  // namespace

Register shown_register(const SiteFile& site, const People& people, const Withholding& withholding,
                        std::int64_t& left_out) {
  Register evidence = load_register(site);
  std::map<std::string, const Source*> sources;
  for (const Source& source : evidence.sources) sources.emplace(source.key, &source);
  std::set<std::string> erased;
  for (const ErasedInterview& one : erased_interviews(site)) erased.insert(one.interview);
  const auto may_not_go_out = [&](const std::string& key) {
    const bool known = people.knows_interview(key) || erased.contains(key);
    return known && withholding.reason(key, {}) != Withheld::none;
  };
  left_out = static_cast<std::int64_t>(std::erase_if(evidence.entries, [&](const Entry& entry) {
    const auto interviews = interviews_beneath(entry, sources);
    return std::any_of(interviews.begin(), interviews.end(), may_not_go_out);
  }));
  return evidence;
}

std::string withheld_words(const Withholding& withholding, std::int64_t entries_left_out,
                           std::string_view what) {
  std::string text = withholding.account(what);
  if (entries_left_out > 0)
    text += fmt::format("; {} {} on withheld testimony left out", entries_left_out,
                        entries_left_out == 1 ? "entry that rests" : "entries that rest");
  return text;
}

}  // namespace witnessmark
