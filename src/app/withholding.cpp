#include "witnessmark/app/withholding.h"

#include <fmt/core.h>

#include <algorithm>

#include "witnessmark/store/interviews.h"

namespace witnessmark {

Withholding::Withholding(const SiteFile& site, Day today) : today_(today) {
  for (auto& [key, file] : access_files(site)) files_.emplace(key, std::move(file));
  for (Person& person : load_interviews(site).persons) persons_.emplace(person.key, std::move(person));
}

Withheld Withholding::reason(std::string_view interview, const std::vector<CodePointRange>& ranges) const {
  const auto at = files_.find(interview);
  if (at == files_.end()) return Withheld::interview_withdrawn;
  if (opened_.contains(interview)) return Withheld::none;
  if (ranges.empty()) return judge(at->second, today_);
  for (const CodePointRange& range : ranges) {
    if (const Withheld why = judge(at->second, range, today_); why != Withheld::none) return why;
  }
  return Withheld::none;
}

bool Withholding::may_show(std::string_view interview, const std::vector<CodePointRange>& ranges) {
  const Withheld why = reason(interview, ranges);
  if (why == Withheld::none) return true;
  ++counts_[why];
  return false;
}

std::string Withholding::shown_name(std::string_view interview, std::string_view person) const {
  const auto held = persons_.find(person);
  if (held == persons_.end()) return std::string(person);
  const auto file = files_.find(interview);
  if (file == files_.end()) return "a narrator";
  const auto& narrators = file->second.narrators;
  if (std::find(narrators.begin(), narrators.end(), person) == narrators.end()) return held->second.name;
  const auto& releases = file->second.releases;
  const auto release = std::find_if(releases.begin(), releases.end(),
                                    [&](const NarratorRelease& given) { return given.person == person; });
  if (release != releases.end() && release->release == Release::signed_release &&
      release->naming == Naming::name)
    return held->second.name;
  return held->second.pseudonym.empty() ? "a narrator" : held->second.pseudonym;
}

std::string Withholding::shown_key(std::string_view interview, std::string_view person) const {
  std::string name = shown_name(interview, person);
  const auto held = persons_.find(person);
  return held == persons_.end() || held->second.name == name ? std::string(person) : name;
}

std::int64_t Withholding::total() const {
  std::int64_t sum = 0;
  for (const auto& [why, count] : counts_) sum += count;
  return sum;
}

std::string Withholding::account() const {
  if (counts_.empty()) return "nothing withheld";
  std::string reasons;
  for (const auto& [why, count] : counts_)
    reasons += fmt::format("{}{} {}", reasons.empty() ? "" : ", ", to_string(why), count);
  return fmt::format("withheld: {} ({})", total(), reasons);
}

}  // namespace witnessmark
