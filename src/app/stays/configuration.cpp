#include "witnessmark/app/configuration.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "app/said/named_terms.h"
#include "app/stays/shown_evidence.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/app/date_reading.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/time/period.h"

namespace witnessmark {
namespace {

/// A date people say; the event's name goes before what its words might be read as.
Result<Edtf> spoken_date(const SiteFile& site, std::string_view text, const Surroundings& surroundings) {
  DateQuestion question;
  question.events = load_register(site).events;
  const std::string asked = fold(text);
  for (const NamedEvent& event : question.events) {
    const bool named =
        fold(event.name) == asked || std::any_of(event.spoken.begin(), event.spoken.end(),
                                                 [&](const auto& words) { return fold(words) == asked; });
    if (named && event.when.value) return *event.when.value;
  }
  const auto read = typed_date_in_words(text, question, surroundings);
  if (read) return *read->edtf;
  Error error = read.error();
  error.advice += "; or give the name of an event of the register";
  return error;
}

class Maker {
 public:
  Maker(const ShownEvidence& evidence, Configuration& made) : evidence_(evidence), made_(made) {
    const auto& terms = evidence.lists().places.terms();
    for (std::size_t i = 0; i < terms.size(); ++i) order_.emplace(terms[i].key, i);
  }

  void add_statements(const std::set<std::string>* places) {
    for (const StayGroup& group : evidence_.stays().groups()) {
      if (std::none_of(group.fixtures.begin(), group.fixtures.end(),
                       [&](const FixturePlace& fixture) { return asked(fixture.place, places); }))
        continue;
      for (FixturePresence& found : presence(evidence_.stays(), group, made_.first, made_.last)) {
        subjects_.insert(found.subject);
        if (!asked(found.place, places)) continue;
        made_.items.push_back({found.subject, found.place, found.property,
                               value_name(evidence_.subject_name(found.subject), found.property),
                               evidence_.place_name(found.place), std::move(found.settled),
                               std::move(found.preview)});
      }
    }
  }

  /// Fixtures of the list that no statement speaks of, at the place the list has them.
  void add_unspoken(const std::set<std::string>* places) {
    for (const StayGroup& group : evidence_.stays().groups())
      for (const FixturePlace& fixture : group.fixtures) subjects_.insert(fixture.subject);
    for (const Term& term : evidence_.lists().equipment.terms())
      if (!subjects_.contains(term.key) && !term.place.empty() && asked(term.place, places))
        made_.items.push_back(
            {term.key, term.place, "", term.name, evidence_.place_name(term.place), {}, {}});
  }

  void sort() {
    std::stable_sort(made_.items.begin(), made_.items.end(), [&](const auto& a, const auto& b) {
      return std::tuple(order(a.place), a.subject_name, a.subject, a.property) <
             std::tuple(order(b.place), b.subject_name, b.subject, b.property);
    });
  }

  void add_places_without(const std::set<std::string>* places) {
    const AuthorityList& list = evidence_.lists().places;
    std::set<std::string> spoken_of;
    for (const ConfigurationItem& item : made_.items) {
      if (item.place.empty()) continue;
      spoken_of.insert(item.place);
      for (const std::string& around : list.above(item.place)) spoken_of.insert(around);
    }
    for (const Term& term : list.terms())
      if (asked(term.key, places) && !spoken_of.contains(term.key))
        made_.places_without_evidence.push_back(term.name);
  }

 private:
  static bool asked(const std::string& place, const std::set<std::string>* places) {
    return places == nullptr || places->contains(place);
  }
  std::size_t order(const std::string& place) const {
    const auto at = order_.find(place);
    return at == order_.end() ? order_.size() : at->second;
  }

  const ShownEvidence& evidence_;
  Configuration& made_;
  std::map<std::string, std::size_t> order_;
  std::set<std::string> subjects_;
};

}  // namespace

Result<Edtf> configuration_date(const SiteFile& site, std::string_view text,
                                const Surroundings& surroundings) {
  const auto value = parse_edtf(trim(text));
  const auto when = value ? Result<Edtf>(*value) : spoken_date(site, text, surroundings);
  if (!when) return when.error();
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  const Period period = to_period(*when, *policy);
  if (!period.earliest() || !period.past_latest())
    return Error{"", 0, 0, fmt::format("“{}” has no beginning or no end", text),
                 "name a day, or a time with both ends"};
  return *when;
}

Result<Configuration> configuration(const SiteFile& site, const Edtf& when, std::string_view place,
                                    const Surroundings& surroundings) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  const Period period = to_period(when, *policy);
  if (!period.earliest() || !period.past_latest())
    return Error{"", 0, 0, fmt::format("{} has no beginning or no end", to_string(when)),
                 "name a time with both ends"};
  const auto loaded = ShownEvidence::load(site, surroundings);
  if (!loaded) return loaded.error();
  const ShownEvidence& evidence = **loaded;
  std::optional<NamedTerms> names;
  if (!place.empty()) {
    auto found = named_terms(evidence.lists(), place, false);
    if (!found) return found.error();
    names = std::move(*found);
  }
  const std::set<std::string>* places = names ? &names->places : nullptr;
  Configuration made;
  made.first = *period.earliest();
  made.last = *period.past_latest() - 1;
  made.when = describe(exact_period(made.first, made.last + 1));
  Maker maker(evidence, made);
  maker.add_statements(places);
  maker.add_unspoken(places);
  maker.sort();
  maker.add_places_without(places);
  std::set<StatementKey> keys;
  for (const ConfigurationItem& item : made.items)
    for (const auto* list : {&item.settled.on_whose_word, &item.settled.against, &item.settled.yet,
                             &item.preview.on_whose_word, &item.preview.against, &item.preview.yet})
      keys.insert(list->begin(), list->end());
  auto lines = evidence.lines(keys);
  if (!lines) return lines.error();
  made.statements = std::move(*lines);
  made.reviewed_claims = evidence.reviewed_claims();
  made.withheld = evidence.withheld();
  return made;
}

bool only_another_value(const ConfigurationItem& item) {
  const auto no_news = [](Presence presence) {
    return is_absent(presence) || presence == Presence::no_evidence;
  };
  const bool open_preview = item.preview.presence == Presence::cannot_tell;
  return !item.property.empty() && no_news(item.settled.presence) &&
         (open_preview || no_news(item.preview.presence));
}

std::string_view to_string(ConfigurationChange::Kind kind) {
  switch (kind) {
    case ConfigurationChange::Kind::came:
      return "came";
    case ConfigurationChange::Kind::went:
      return "went";
    case ConfigurationChange::Kind::may_have_changed:
      return "may have changed";
  }
  return "";
}

std::vector<ConfigurationChange> differences(const Configuration& before, const Configuration& after) {
  const auto key_of = [](const ConfigurationItem& item) {
    return std::tuple(item.subject, item.place, item.property);
  };
  std::map<std::tuple<std::string, std::string, std::string>, const ConfigurationItem*> later;
  for (const ConfigurationItem& item : after.items) later.emplace(key_of(item), &item);
  std::vector<ConfigurationChange> changes;
  for (const ConfigurationItem& item : before.items) {
    const auto at = later.find(key_of(item));
    if (at == later.end()) continue;
    const Presence was = item.settled.presence, is = at->second->settled.presence;
    using Kind = ConfigurationChange::Kind;
    if (is_absent(was) && is_there(is)) changes.push_back({Kind::came, item, *at->second});
    if (is_there(was) && is_absent(is)) changes.push_back({Kind::went, item, *at->second});
    const bool known_was = is_there(was) || is_absent(was), known_is = is_there(is) || is_absent(is);
    if (known_was != known_is) changes.push_back({Kind::may_have_changed, item, *at->second});
  }
  return changes;
}

}  // namespace witnessmark
