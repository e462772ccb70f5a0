#include "app/taking_in/life_check.h"

#include <fmt/core.h>

#include <algorithm>
#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <variant>

#include "witnessmark/base/counted.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/time/period.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {
namespace {

std::optional<Period> period_of_life(const Dated& dated, const DatePolicy& policy) {
  if (!dated.value) return std::nullopt;
  return to_period(*dated.value, policy);
}

std::optional<Day> last_day(const std::optional<Period>& period) {
  if (!period || !period->past_latest()) return std::nullopt;
  return *period->past_latest() - 1;
}

/// Begin and end of a stretch, each as late and as early as it can have been. A single date holds the stretch
/// somewhere within it.
struct Stretch {
  std::optional<Day> latest_begin, earliest_end;
};

Stretch stretch_of(const Edtf& when, const DatePolicy& policy) {
  const Period period = to_period(when, policy);
  if (!std::holds_alternative<EdtfInterval>(when.value)) return {last_day(period), period.earliest()};
  Stretch stretch{period.begin.latest, std::nullopt};
  if (period.end.earliest) stretch.earliest_end = *period.end.earliest - 1;
  return stretch;
}

/// A person with the cells of its dates; those of one taken in before stand in no cell.
struct Life {
  const Person* person = nullptr;
  const PersonCells* cells = nullptr;
};

class LifeCheck {
 public:
  LifeCheck(const SiteFile& site, const InterviewFilesReading& reading, const DatePolicy& policy)
      : site_(site), reading_(reading), policy_(policy), before_(load_interviews(site)) {
    for (const Person& person : before_.persons) lives_[person.key] = {&person, nullptr};
    for (std::size_t i = 0; i < reading.file.persons.size(); ++i)
      lives_[reading.file.persons[i].key] = {&reading.file.persons[i], &reading.person_cells[i]};
  }

  std::vector<Diagnostic> check() {
    for (std::size_t i = 0; i < reading_.file.persons.size(); ++i)
      check_person(reading_.file.persons[i], reading_.person_cells[i]);
    std::unordered_set<std::string_view> read;
    for (std::size_t i = 0; i < reading_.file.interviews.size(); ++i) {
      read.insert(reading_.file.interviews[i].key);
      check_interview(reading_.file.interviews[i], &reading_.date_cells[i]);
      check_claims(reading_.file.interviews[i], reading_.date_cells[i]);
    }
    for (const Interview& interview : before_.interviews)
      if (!read.contains(interview.key)) check_interview(interview, nullptr);
    return std::move(diagnostics_);
  }

 private:
  void report(const Error& cell, const std::string& what, std::string advice) {
    Error error = cell;
    error.message += ": " + what;
    error.advice = std::move(advice);
    diagnostics_.push_back({Diagnostic::Severity::error, std::move(error)});
  }

  void check_person(const Person& person, const PersonCells& cells) {
    const auto born = period_of_life(person.birth, policy_);
    const auto died = last_day(period_of_life(person.death, policy_));
    if (born && born->earliest() && died && *died < *born->earliest())
      report(cells.death, fmt::format("{} was born {}", person.name, person.birth.written),
             "correct the birth or the death");
    for (std::size_t i = 0; i < person.service.size(); ++i) {
      if (!person.service[i].when.value) continue;
      const Stretch served = stretch_of(*person.service[i].when.value, policy_);
      if (born && born->earliest() && served.latest_begin && *served.latest_begin < *born->earliest())
        report(cells.service[i],
               fmt::format("this service began before {} was born, {}", person.name, person.birth.written),
               "correct the service or the birth");
      if (died && served.earliest_end && *served.earliest_end > *died)
        report(
            cells.service[i],
            fmt::format("this service lasted beyond the death of {}, {}", person.name, person.death.written),
            "correct the service or the death; one whose end nobody knows is written 1950/");
    }
  }

  void check_interview(const Interview& interview, const Error* cell) {
    const auto told = period_of_life(interview.date, policy_);
    if (!told) return;
    for (const auto* list : {&interview.narrators, &interview.interviewers})
      for (const std::string& key : *list)
        if (const auto life = lives_.find(key); life != lives_.end())
          check_interview_with(interview, *told, cell, life->second);
  }

  void check_interview_with(const Interview& interview, const Period& told, const Error* date_cell,
                            const Life& life) {
    if (date_cell == nullptr && life.cells == nullptr) return;  // as taken in before
    const Person& person = *life.person;
    const auto at = [&](const Error* other, const std::string& what_of_date, const std::string& what_of_other,
                        const std::string& advice) {
      if (date_cell != nullptr) return report(*date_cell, what_of_date, advice);
      report(*other, what_of_other, advice);
    };
    const auto born = period_of_life(person.birth, policy_);
    const auto age = born ? completed_years_between(*born, told) : std::nullopt;
    if (age && age->most < 1) {
      const std::string_view how = age->most < 0 ? "not born" : "not a year old";
      at(life.cells ? &life.cells->birth : nullptr,
         fmt::format("{} was {} then (born {})", person.name, how, person.birth.written),
         fmt::format("{} was {} when {} was recorded, {}", person.name, how, interview.key,
                     interview.date.written),
         "correct the date of the interview or the birth");
    }
    const auto died = last_day(period_of_life(person.death, policy_));
    if (died && told.earliest() && *told.earliest() > *died)
      at(life.cells ? &life.cells->death : nullptr,
         fmt::format("{} was dead by then (died {})", person.name, person.death.written),
         fmt::format("{} was recorded only {}", interview.key, interview.date.written),
         "correct the date of the interview or the death");
  }

  void check_claims(const Interview& interview, const Error& cell) {
    const auto before = std::find_if(before_.interviews.begin(), before_.interviews.end(),
                                     [&](const Interview& one) { return one.key == interview.key; });
    if (before == before_.interviews.end() || before->date.value == interview.date.value) return;
    ClaimFilter filter;
    filter.interviews = {interview.key};
    filter.reviewed_only = true;
    filter.with_mentions = false;
    std::int64_t later = 0;
    std::string first;
    for_each_claim(site_, filter, [&](const StoredClaim& stored) {
      const Claim& claim = stored.claim;
      if (claim.basis != Basis::first_hand ||
          !dated_after_interview(recall_of(claim.when, interview, {}, policy_)))
        return;
      if (++later == 1)
        first = claim.when.dated.value ? to_string(*claim.when.dated.value) : claim.when.dated.written;
    });
    if (later == 0) return;
    Error error = cell;
    error.message +=
        fmt::format(": {} of it, reviewed and first-hand, {} dated after that ({}{})",
                    counted(later, "claim"), later == 1 ? "is" : "are", first, later == 1 ? "" : ", …");
    error.advice = "correct the date of the interview or those of the claims";
    diagnostics_.push_back({Diagnostic::Severity::warning, std::move(error)});
  }

  const SiteFile& site_;
  const InterviewFilesReading& reading_;
  const DatePolicy& policy_;
  InterviewFile before_;
  std::unordered_map<std::string, Life> lives_;
  std::vector<Diagnostic> diagnostics_;
};

}  // namespace

std::vector<Diagnostic> check_lives(const SiteFile& site, const InterviewFilesReading& reading,
                                    const DatePolicy& policy) {
  return LifeCheck(site, reading, policy).check();
}

}  // namespace witnessmark
