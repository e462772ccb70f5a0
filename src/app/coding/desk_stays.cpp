// What the desk shows of comings and goings: the register's bounds beside a claim, and statements that cannot
// all be true.
#include <fmt/core.h>

#include "app/coding/desk_state.h"
#include "app/coding/report_lines.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/contradictions.h"
#include "witnessmark/app/remedies.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

/// The days on which a stay can have begun and ended.
Period period_of(const StayBounds& stay) {
  const auto past = [](const std::optional<Day>& day) {
    return day ? std::optional(*day + 1) : std::nullopt;
  };
  return {{Boundary::Kind::known, stay.came_earliest.day, stay.came_latest.day},
          {Boundary::Kind::known, past(stay.went_earliest.day), past(stay.went_latest.day)}};
}

void add_statement(Report& report, const StatementLine& line) {
  ReportLine made{Weight::item,
                  fmt::format("{}: {}{}", short_key(line.key), one_line(line.says),
                              line.footing == Footing::proposed ? " [proposed]" : ""),
                  std::nullopt,
                  "",
                  std::nullopt,
                  "",
                  ""};
  if (line.key.kind == StatementKey::Kind::claim)
    made.claim = parse_id(line.key.key);
  else
    made.entry = line.key.key;
  report.lines.push_back(made);
  std::string more = one_line(line.by);
  if (!line.telling.empty()) more += "; " + one_line(line.telling);
  if (!line.quote.empty()) more += fmt::format("; “{}”", one_line(line.quote));
  if (!line.others.empty()) more += "; " + one_line(line.others);
  made.weight = Weight::detail;
  made.text = std::move(more);
  report.lines.push_back(std::move(made));
}

void add_disputes(Report& report, const std::vector<ShownDispute>& disputes, std::int64_t total,
                  const StatementLines& statements) {
  for (const ShownDispute& one : disputes) {
    add_line(report, Weight::heading, one_line(one.sentence));
    for (const StatementKey& key : one.dispute.statements)
      if (const auto at = statements.find(key); at != statements.end()) add_statement(report, at->second);
    const auto sets = set_lines(one.dispute);
    if (!sets.empty()) add_line(report, Weight::detail, "which cannot be true together");
    for (const std::string& set : sets) add_line(report, Weight::detail, "  " + set);
    add_line(report, Weight::detail, "What would resolve it:");
    for (const Remedy& remedy : remedies(one.resolution))
      add_line(report, Weight::detail,
               remedy.heading.empty() ? remedy.words : fmt::format("{}: {}", remedy.heading, remedy.words));
  }
  if (disputes.empty()) add_line(report, Weight::item, "none found");
  if (total > static_cast<std::int64_t>(disputes.size()))
    add_line(report, Weight::caution,
             fmt::format("and {} more: witnessmark weigh --section contradictions",
                         total - static_cast<std::int64_t>(disputes.size())));
}

}  // namespace

std::vector<BoundLine> CodingDesk::State::bounds_beside(const Claim& claim) {
  std::vector<BoundLine> lines;
  if (claim.subject.empty()) return lines;
  if (!stays) stays = std::make_unique<StayEvidence>(maker->evidence(), std::vector<HeldClaim>{});
  for (const StayGroup& group : stays->groups()) {
    const bool speaks =
        std::any_of(group.fixtures.begin(), group.fixtures.end(), [&](const FixturePlace& fixture) {
          return fixture.subject == claim.subject &&
                 maker->evidence().places_meet(fixture.place, claim.place);
        });
    if (!speaks) continue;
    for (const FixtureBounds& fixture : find_bounds(*stays, group)) {
      if (fixture.subject != claim.subject || !maker->evidence().places_meet(fixture.place, claim.place))
        continue;
      if (fixture.from_register.state == BoundsState::none) continue;
      if (!fixture.property.empty() && fixture.property != claim.attribute) continue;
      for (const StayBounds& stay : fixture.from_register.stays)
        lines.push_back(
            {fmt::format("bounds{}", fixture.from_register.state == BoundsState::contradicted ? "?" : ""),
             term_name(maker->lists().places, fixture.place, fixture.place), period_of(stay)});
    }
  }
  return lines;
}

Result<Report> contradiction_report(const SiteFile& site, const Surroundings& surroundings) {
  constexpr std::size_t kMost = 100;
  const auto account = contradiction_account(site, "", kMost, surroundings);
  if (!account) return account.error();
  Report report;
  report.title = fmt::format("{} that cannot all be true; {} more with proposals; by {}",
                             counted(account->reviewed_sets, "set"), account->preview_sets,
                             grounds_words(account->reviewed_claims));
  add_disputes(report, account->reviewed, account->reviewed_total, account->statements);
  if (account->returns_total > 0)
    add_line(report, Weight::heading, fmt::format("{} ({}):", kReturnsHeading, account->returns_total));
  for (const ShownReturn& one : account->returns)
    for (const StatementKey& key : {one.there, one.come})
      if (const auto at = account->statements.find(key); at != account->statements.end())
        add_statement(report, at->second);
  add_line(report, Weight::heading, "Preview, with claims nobody has reviewed:");
  add_disputes(report, account->preview, account->preview_total, account->statements);
  if (!account->limits.empty()) add_line(report, Weight::heading, std::string(kLimitsHeading));
  for (const SearchLimit& limit : account->limits) add_line(report, Weight::item, limit_words(limit));
  add_line(report, Weight::caution,
           "The order is for reading only, and none of this is a finding about a person.");
  add_line(report, Weight::caution, account->withheld);
  return report;
}

}  // namespace witnessmark
