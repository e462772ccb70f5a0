#include "witnessmark/app/bounds.h"

#include <fmt/ostream.h>

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "cli/weigh/section.h"
#include "cli/weigh/statement_text.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/remedies.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

using Json = nlohmann::ordered_json;

std::string from_words(const Bound& bound) {
  return bound.from.empty() ? "" : fmt::format(" ({})", short_keys(bound.from));
}

/// "20 April 1938 (e-003)", "between 14 February 1963 (e-077) and 29 April 1963 (e-079)".
std::string limits_words(const Bound& earliest, const Bound& latest) {
  if (!earliest.day && !latest.day) return "nothing says when";
  if (!latest.day) return fmt::format("{} or later{}", day_words(*earliest.day), from_words(earliest));
  if (!earliest.day) return fmt::format("by {}{}", day_words(*latest.day), from_words(latest));
  if (earliest.day == latest.day) {
    std::vector<StatementKey> both = earliest.from;
    for (const StatementKey& key : latest.from)
      if (std::find(both.begin(), both.end(), key) == both.end()) both.push_back(key);
    return fmt::format("{} ({})", day_words(*earliest.day), short_keys(both));
  }
  return fmt::format("between {}{} and {}{}", day_words(*earliest.day), from_words(earliest),
                     day_words(*latest.day), from_words(latest));
}

/// All of them when they are few.
std::string few_keys(const std::vector<StatementKey>& keys) {
  constexpr std::size_t kFew = 8;
  return keys.size() <= kFew ? short_keys(keys)
                             : fmt::format("{} statements (see contradictions)", keys.size());
}

bool same_days(const Bounds& a, const Bounds& b) {
  const auto same = [](const StayBounds& x, const StayBounds& y) {
    return x.came_earliest.day == y.came_earliest.day && x.came_latest.day == y.came_latest.day &&
           x.went_earliest.day == y.went_earliest.day && x.went_latest.day == y.went_latest.day;
  };
  return a.state != BoundsState::cannot_tell && b.state != BoundsState::cannot_tell &&
         std::equal(a.stays.begin(), a.stays.end(), b.stays.begin(), b.stays.end(), same);
}

void print_bounds(std::ostream& out, const Bounds& bounds) {
  if (bounds.state == BoundsState::none) return fmt::print(out, "    nothing dated limits it\n");
  if (bounds.state == BoundsState::cannot_tell)
    return fmt::print(out, "    cannot tell: there are more ways to read the statements than are tried\n");
  if (bounds.state == BoundsState::contradicted)
    fmt::print(out, "    these cannot all be true; without {}:\n", few_keys(bounds.left_out));
  for (std::size_t i = 0; i < bounds.stays.size(); ++i) {
    const StayBounds& stay = bounds.stays[i];
    const std::string which = bounds.stays.size() > 1 ? fmt::format("stay {}: ", i + 1) : "";
    fmt::print(out, "    {}came {}\n", which, limits_words(stay.came_earliest, stay.came_latest));
    fmt::print(out, "    {}gone {}\n", which, limits_words(stay.went_earliest, stay.went_latest));
    if (stay.came_latest.day && stay.went_earliest.day && *stay.came_latest.day < *stay.went_earliest.day)
      fmt::print(out, "    {}so there all the time from {} to {}\n", which, day_words(*stay.came_latest.day),
                 day_words(*stay.went_earliest.day));
  }
}

/// What claims add to what was known before; not said again when they add nothing.
void print_with_claims(std::ostream& out, std::string_view heading, const Bounds& with,
                       const Bounds& before) {
  if (with == before) return;
  if (!same_days(with, before)) {
    fmt::print(out, "  {}\n", heading);
    return print_bounds(out, with);
  }
  if (with.state == BoundsState::contradicted && with.left_out != before.left_out)
    fmt::print(out, "  {}: not all can be true; those that can add nothing\n", heading);
}

/// The days of each stay in one line.
std::string stays_words(const std::vector<StayBounds>& stays) {
  std::string text;
  for (const StayBounds& stay : stays)
    text += fmt::format("{}came {}; gone {}", text.empty() ? "" : "; then ",
                        limits_words(stay.came_earliest, stay.came_latest),
                        limits_words(stay.went_earliest, stay.went_latest));
  return text;
}

/// What changes when a source is left out, a line each; where the register contradicts itself only those
/// sources without which it does not.
void print_without(std::ostream& out, const FixtureBounds& bounds) {
  for (const BoundsWithout& without : bounds.without) {
    const Bounds& rest = without.bounds;
    if (rest.state == BoundsState::contradicted) continue;
    if (rest.state == BoundsState::none) {
      fmt::print(out, "  all of it rests on {}\n", without.source);
      continue;
    }
    fmt::print(out, "  without {} ({}): {}\n", without.source, short_keys(without.left_out),
               rest.state == BoundsState::cannot_tell ? "cannot tell" : stays_words(rest.stays));
  }
}

void print_claims(std::ostream& out, const FixtureBounds& bounds, const StatementLines& statements) {
  constexpr std::size_t kMost = 5;
  const auto list = [&](ClaimEffect::Kind kind, std::string_view words) {
    std::size_t count = 0;
    for (const ClaimEffect& effect : bounds.claims) {
      if (effect.kind != kind || ++count > kMost) continue;
      if (count == 1) fmt::print(out, "  {}\n", words);
      const auto at = statements.find(effect.claim);
      if (at == statements.end()) continue;
      fmt::print(out, "    {}{}: {}; {}; {}\n", short_key(effect.claim),
                 effect.footing == Footing::proposed ? " [proposed]" : "", one_line(at->second.says),
                 one_line(at->second.by), one_line(at->second.telling));
      if (!effect.with.empty()) fmt::print(out, "      with it {}\n", stays_words(effect.with));
    }
    if (count > kMost) fmt::print(out, "    … and {} more\n", count - kMost);
  };
  list(ClaimEffect::Kind::narrows, "claims that would each narrow it");
  list(ClaimEffect::Kind::contradicts, "claims that each contradict it");
}

void print_fixture(std::ostream& out, const ShownBounds& shown, const StatementLines& statements) {
  const FixtureBounds& bounds = shown.bounds;
  fmt::print(out, "\n{}{}\n", one_line(shown.subject_name),
             shown.place_name.empty() ? "" : " · " + one_line(shown.place_name));
  fmt::print(out, "  from the register alone\n");
  print_bounds(out, bounds.from_register);
  for (const ShownRenewal& one : bounds.renewals)
    fmt::print(out,
               "    stay {} is taken to begin with {}, for it was there before ({}) and no entry shows it gone "
               "between\n",
               one.episode + 1, short_key(one.come), short_key(one.there));
  print_with_claims(out, "with reviewed claims", bounds.with_reviewed, bounds.from_register);
  print_with_claims(out, "preview, with claims nobody has reviewed", bounds.preview, bounds.with_reviewed);
  print_claims(out, bounds, statements);
  print_without(out, bounds);
  std::map<NoLimit, std::vector<StatementKey>> none;
  for (const NoBound& one : bounds.no_bound)
    if (one.footing == Footing::evidence) none[one.why].push_back(one.statement);
  for (const auto& [why, keys] : none)
    fmt::print(out, "  no limit from {}: {}\n", short_keys(keys), in_words(why));
}

Result<void> bounds_text(Command& command, const WeighRequest& request) {
  const auto account = bounds_account(request.site, request.of, request.most, request.surroundings);
  if (!account) return account.error();
  auto& out = command.out();
  fmt::print(
      out,
      "When each fixture can have come and gone, and each value of its properties ({} at a place, {}):\n",
      account->total - account->properties, counted(account->properties, "value"));
  for (const ShownBounds& fixture : account->fixtures) print_fixture(out, fixture, account->statements);
  if (account->total > static_cast<std::int64_t>(account->fixtures.size()))
    fmt::print(out, "\n… and {} more (--most, --of)\n",
               account->total - static_cast<std::int64_t>(account->fixtures.size()));
  fmt::print(out, "\n{}\n", account->withheld);
  return {};
}

Json bound_json(const Bound& bound) {
  if (!bound.day) return nullptr;
  return {{"day", to_string(*bound.day)}, {"from", keys_json(bound.from)}};
}

Json stays_json(const std::vector<StayBounds>& bounds) {
  Json stays = Json::array();
  for (const StayBounds& stay : bounds)
    stays.push_back({{"came_earliest", bound_json(stay.came_earliest)},
                     {"came_latest", bound_json(stay.came_latest)},
                     {"went_earliest", bound_json(stay.went_earliest)},
                     {"went_latest", bound_json(stay.went_latest)}});
  return stays;
}

Json bounds_json(const Bounds& bounds) {
  Json object{{"state", to_string(bounds.state)}, {"stays", stays_json(bounds.stays)}};
  if (!bounds.left_out.empty()) object["left_out"] = keys_json(bounds.left_out);
  return object;
}

/// Comings taken for returns: stays are counted from 1, as in the text.
Json renewals_json(const std::vector<ShownRenewal>& renewals) {
  Json array = Json::array();
  for (const ShownRenewal& one : renewals)
    array.push_back({{"stay", one.episode + 1}, {"there_before", key_json(one.there)}, {"come", key_json(one.come)}});
  return array;
}

Json fixture_json(const ShownBounds& shown) {
  const FixtureBounds& bounds = shown.bounds;
  Json object{{"section", "bounds"},
              {"subject", bounds.subject},
              {"subject_name", shown.subject_name},
              {"property", bounds.property},
              {"place", bounds.place},
              {"place_name", shown.place_name},
              {"returns", renewals_json(bounds.renewals)},
              {"register", bounds_json(bounds.from_register)},
              {"reviewed", bounds_json(bounds.with_reviewed)},
              {"preview", bounds_json(bounds.preview)}};
  Json claims = Json::array();
  for (const ClaimEffect& effect : bounds.claims) {
    claims.push_back({{"claim", effect.claim.key},
                      {"footing", to_string(effect.footing)},
                      {"effect", to_string(effect.kind)}});
    if (!effect.with.empty()) claims.back()["with"] = stays_json(effect.with);
  }
  object["claims"] = std::move(claims);
  Json without = Json::array();
  for (const BoundsWithout& one : bounds.without) {
    Json made{{"source", one.source}, {"left_out", keys_json(one.left_out)}};
    made["bounds"] = bounds_json(one.bounds);
    without.push_back(std::move(made));
  }
  object["without"] = std::move(without);
  Json none = Json::array();
  for (const NoBound& one : bounds.no_bound) {
    Json made = key_json(one.statement);
    made["why"] = in_words(one.why);
    none.push_back(std::move(made));
  }
  object["no_limit"] = std::move(none);
  return object;
}

Result<void> bounds_jsonl(Command& command, const WeighRequest& request) {
  const auto account =
      bounds_account(request.site, request.of, static_cast<std::size_t>(-1), request.surroundings);
  if (!account) return account.error();
  for (const ShownBounds& fixture : account->fixtures)
    fmt::print(command.out(), "{}\n", fixture_json(fixture).dump());
  fmt::print(command.err(), "{}\n", account->withheld);
  return {};
}

Result<std::string> bounds_total(const WeighRequest& request) {
  const auto account = bounds_account(request.site, request.of, 0, request.surroundings);
  if (!account) return account.error();
  return fmt::format("{} at a place, {} of their properties; the register contradicts itself about {}; {}",
                     counted(account->total - account->properties, "fixture"),
                     counted(account->properties, "value"), account->contradicted,
                     account->reviewed_claims == 0
                         ? "no claim is reviewed yet"
                         : fmt::format("reviewed claims narrow those of {}", counted(account->narrowed, "fixture")));
}

}  // namespace

const WeighSection kBoundsSection{"bounds",     "when each fixture can have come and gone, and on whose word",
                                  bounds_text,  bounds_jsonl,
                                  bounds_total, true};

}  // namespace witnessmark
