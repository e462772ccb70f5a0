#include "witnessmark/app/contradictions.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "app/said/named_terms.h"
#include "app/stays/shown_evidence.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

std::string number_words(std::size_t number) {
  constexpr std::array kWords = {"",    "one",   "two",   "three", "four", "five",
                                 "six", "seven", "eight", "nine",  "ten"};
  return number < kWords.size() ? kWords[number] : std::to_string(number);
}

/// "These two cannot both be true", "6 sets among these five cannot be true".
std::string subject_of_sentence(const Dispute& dispute) {
  const std::size_t statements = dispute.statements.size();
  if (dispute.sets.size() > 1) return fmt::format("These {} cannot all be true", number_words(statements));
  if (statements == 1) return "This one cannot be true as it stands";
  if (statements == 2) return "These two cannot both be true";
  return fmt::format("These {} cannot all be true, though any {} can", number_words(statements),
                     number_words(statements - 1));
}

std::string sentence_of(const Dispute& dispute, const ShownEvidence& evidence) {
  const std::string which = subject_of_sentence(dispute);
  const std::string what = thing_words(evidence.lists(), dispute.subject, "", dispute.place, "");
  switch (dispute.kind) {
    case Contradiction::Kind::stay: {
      int episodes = 1;
      for (const FixturePlace& fixture : evidence.stays().groups()[dispute.group].fixtures)
        if (fixture.subject == dispute.subject) episodes = std::max(episodes, fixture.episodes);
      if (episodes == 1) return fmt::format("{} of one stay of {}", which, what);
      return fmt::format("{} of the {} stays the register shows of {}", which,
                         number_words(static_cast<std::size_t>(episodes)), what);
    }
    case Contradiction::Kind::property:
      if (!dispute.property.empty()) return fmt::format("{} of {} and its {}", which, what, dispute.property);
      return fmt::format("{} of {} at one time", which, what);
    case Contradiction::Kind::whereabouts:
      return fmt::format("{} of where {} was", which,
                         dispute.subject.empty() ? "the site" : evidence.subject_name(dispute.subject));
  }
  return which;
}

bool named(const std::string& subject, const std::string& place, const NamedTerms& names) {
  return names.equipment.contains(subject) || names.places.contains(place);
}

std::vector<ShownDispute> shown(std::vector<const Dispute*> found, std::size_t most,
                                const ShownEvidence& evidence) {
  if (found.size() > most) found.resize(most);
  std::vector<ShownDispute> made;
  for (const Dispute* dispute : found) {
    made.push_back({*dispute, evidence.subject_name(dispute->subject), evidence.place_name(dispute->place),
                    sentence_of(*dispute, evidence), resolve(*dispute, evidence.stays(), evidence.claims())});
    for (std::string& source : made.back().resolution.set_aside_sources)
      source = evidence.source_name(source);
    made.back().dispute.subject = evidence.subject_key(dispute->subject);
  }
  return made;
}

void add_returns(const ShownEvidence& evidence, const std::optional<NamedTerms>& names, std::size_t most,
                 ContradictionAccount& account) {
  const auto key_of = [&](std::size_t statement) { return evidence.stays().statements()[statement].key; };
  for (const StayGroup& group : evidence.stays().groups())
    for (const FixturePlace& fixture : group.fixtures) {
      if (names && !named(fixture.subject, fixture.place, *names)) continue;
      account.returns_total += static_cast<std::int64_t>(fixture.renewals.size());
      for (const Renewal& one : fixture.renewals)
        if (account.returns.size() < most)
          account.returns.push_back({fixture.subject, fixture.place,
                                     thing_words(evidence.lists(), fixture.subject, "", fixture.place, ""),
                                     key_of(one.there), key_of(one.come)});
    }
}

}  // namespace

Result<ContradictionAccount> contradiction_account(const SiteFile& site, std::string_view name,
                                                   std::size_t most, const Surroundings& surroundings) {
  const auto loaded = ShownEvidence::load(site, surroundings);
  if (!loaded) return loaded.error();
  const ShownEvidence& evidence = **loaded;
  std::optional<NamedTerms> names;
  if (!name.empty()) {
    auto found = named_terms(evidence.lists(), name, true);
    if (!found) return found.error();
    names = std::move(*found);
  }
  const Contradictions found = find_contradictions(evidence.stays(), evidence.claims());
  const auto all = disputes(found, evidence.stays());
  ContradictionAccount account;
  std::vector<const Dispute*> reviewed, preview;
  for (const Dispute& dispute : all) {
    if (names && !named(dispute.subject, dispute.place, *names)) continue;
    const bool proposed = dispute.footing == Footing::proposed;
    (proposed ? preview : reviewed).push_back(&dispute);
    (proposed ? account.preview_sets : account.reviewed_sets) +=
        static_cast<std::int64_t>(dispute.sets.size());
  }
  for (const SearchLimit& limit : found.limits)
    if (!names || named(limit.subject, limit.place, *names)) account.limits.push_back(limit);
  account.reviewed_total = static_cast<std::int64_t>(reviewed.size());
  account.preview_total = static_cast<std::int64_t>(preview.size());
  account.reviewed = shown(std::move(reviewed), most, evidence);
  account.preview = shown(std::move(preview), most, evidence);
  add_returns(evidence, names, most, account);
  std::set<StatementKey> keys;
  for (const ShownReturn& one : account.returns) keys.insert({one.there, one.come});
  for (const auto* list : {&account.reviewed, &account.preview})
    for (const ShownDispute& one : *list)
      keys.insert(one.dispute.statements.begin(), one.dispute.statements.end());
  auto lines = evidence.lines(keys);
  if (!lines) return lines.error();
  account.statements = std::move(*lines);
  account.reviewed_claims = evidence.reviewed_claims();
  account.withheld = evidence.withheld();
  return account;
}

}  // namespace witnessmark
