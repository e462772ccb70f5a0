#include "witnessmark/app/withholding.h"

#include <fmt/core.h>

#include <algorithm>

#include "witnessmark/base/counted.h"
#include "witnessmark/store/interviews.h"

namespace witnessmark {

namespace {

using Counts = std::map<Withheld, std::int64_t>;

std::int64_t sum_of(const Counts& counts) {
  std::int64_t sum = 0;
  for (const auto& [why, count] : counts) sum += count;
  return sum;
}

/// "2 passages (closed 1, restricted 1)".
std::string counted_with_reasons(const Counts& counts, std::string_view what) {
  std::string reasons;
  for (const auto& [why, count] : counts)
    reasons += fmt::format("{}{} {}", reasons.empty() ? "" : ", ", to_string(why), count);
  return fmt::format("{} ({})", counted(sum_of(counts), what), reasons);
}

}  // namespace

Withholding::Withholding(const SiteFile& site, Day today) : today_(today) {
  for (auto& [key, file] : access_files(site)) {
    for (const NarratorRelease& release : file.releases) {
      if (release.naming == Naming::pseudonym) under_pseudonym_.insert(release.person);
      if (release.naming == Naming::name && release.release == Release::signed_release)
        named_in_[key].insert(release.person);
    }
    files_.emplace(key, std::move(file));
  }
  InterviewFile held = load_interviews(site);
  for (Person& person : held.persons) {
    if (under_pseudonym_.contains(person.key)) names_.add(person);
    persons_.emplace(person.key, std::move(person));
  }
  constexpr auto kAny = WithheldNames::Capitals::not_needed;
  for (const Interview& interview : held.interviews) {
    if (without_names(interview.key, interview.key, kAny).names == 0) continue;
    const bool plain = without_names(interview.key, interview.accession, kAny).names == 0;
    constexpr std::size_t kBriefId = 8;
    plain_interviews_.emplace(interview.key,
                              plain && !interview.accession.empty()
                                  ? interview.accession
                                  : "interview " + to_string(interview.id).substr(0, kBriefId));
  }
}

WithheldNames::Text Withholding::without_names(std::string_view interview, std::string_view text,
                                               WithheldNames::Capitals capitals) const {
  static const std::set<std::string, std::less<>> kNobody;
  const auto named = named_in_.find(interview);
  return names_.without(text, named == named_in_.end() ? kNobody : named->second, capitals);
}

std::string Withholding::shown_interview(std::string_view interview) const {
  const auto at = plain_interviews_.find(interview);
  return at == plain_interviews_.end() ? std::string(interview) : at->second;
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
  const std::string other = held->second.pseudonym.empty() ? "a narrator" : held->second.pseudonym;
  const auto file = files_.find(interview);
  if (file == files_.end())
    return interview.empty() && !under_pseudonym_.contains(person) ? held->second.name : other;
  const auto& narrators = file->second.narrators;
  if (std::find(narrators.begin(), narrators.end(), person) == narrators.end())
    return under_pseudonym_.contains(person) ? other : held->second.name;
  const auto named = named_in_.find(interview);
  return named != named_in_.end() && named->second.contains(person) ? held->second.name : other;
}

std::string Withholding::shown_key(std::string_view interview, std::string_view person) const {
  std::string name = shown_name(interview, person);
  const auto held = persons_.find(person);
  return held == persons_.end() || held->second.name == name ? std::string(person) : name;
}

std::map<std::string, std::string> Withholding::shown_names() const {
  std::map<std::string, std::string> names;
  for (const auto& [key, person] : persons_) names.emplace(key, shown_name("", key));
  return names;
}

std::int64_t Withholding::total() const {
  return sum_of(counts_);
}

std::string Withholding::withheld_in_file(std::string_view interview) const {
  Counts interviews, passages;
  for (const auto& [key, file] : files_) {
    if (opened_.contains(key) || file.withdrawn || (!interview.empty() && key != interview)) continue;
    const Withheld whole = judge(file, today_);
    if (whole != Withheld::none) {
      ++interviews[whole];
      continue;
    }
    for (const RestrictedPassage& passage : file.passages)
      if (const Withheld why = judge(passage.conditions, today_); why != Withheld::none) ++passages[why];
  }
  std::string words;
  if (!interviews.empty()) words = counted_with_reasons(interviews, "interview");
  if (!passages.empty()) words += (words.empty() ? "" : ", ") + counted_with_reasons(passages, "passage");
  return words;
}

std::string Withholding::account(std::string_view what) const {
  const std::string in_file = withheld_in_file();
  if (counts_.empty() && in_file.empty()) return "nothing withheld";
  const std::string asked =
      counts_.empty() ? fmt::format("no {}", what) : counted_with_reasons(counts_, what);
  return fmt::format("withheld: {}{}{}", asked, in_file.empty() ? "" : "; ", in_file);
}

}  // namespace witnessmark
