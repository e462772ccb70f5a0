#include "app/weighing/grounds.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <unordered_map>

#include "witnessmark/base/sha256.h"

namespace witnessmark {
namespace {

/// Texts one after another so that no two rows of texts give the same.
class Content {
 public:
  Content& add(std::string_view text) {
    text_ += fmt::format("{}:", text.size());
    text_ += text;
    return *this;
  }
  Content& add(std::int64_t number) { return add(fmt::format("{}", number)); }
  Content& add(const std::optional<std::int64_t>& number) { return number ? add(*number) : add("-"); }
  Content& add(const Dated& dated) { return add(to_string(dated)); }
  Content& add(const std::optional<Period>& period) { return add(period ? to_string(*period) : "-"); }
  template <typename Texts>
  Content& add_all(const Texts& texts) {
    add(static_cast<std::int64_t>(texts.size()));
    for (const std::string& text : texts) add(text);
    return *this;
  }
  std::string sha256() const { return sha256_hex(text_); }

 private:
  std::string text_;
};

class GroundMaker {
 public:
  GroundMaker(const RegisterIndex& evidence, const People& people) : evidence_(evidence), people_(people) {}

  Grounds made(std::string_view rules) {
    grounds_.emplace(std::pair(GroundKind::rules, std::string()), rules);
    add_subjects();
    add_itinerary();
    add_places();
    add_people();
    return std::move(grounds_);
  }

 private:
  void put(GroundKind kind, const std::string& key, const Content& content) {
    grounds_.emplace(std::pair(kind, key), content.sha256());
  }

  /// A source and all it rests on, with the kinds of them.
  const std::string& lineage(const std::string& source) {
    const auto [at, fresh] = lineages_.try_emplace(source);
    if (!fresh) return at->second;
    const auto rests_on = evidence_.lineage(source);
    Content content;
    for (const std::string& key : std::set<std::string>(rests_on.begin(), rests_on.end())) {
      const Source* held = evidence_.source(key);
      content.add(key).add(held != nullptr ? to_string(held->kind) : "-");
    }
    at->second = content.sha256();
    return at->second;
  }

  /// What a key names that a date, an identification or a caption rests on.
  void add_beneath(const std::vector<std::string>& keys, Content& content) {
    content.add_all(keys);
    for (const std::string& key : keys) {
      const auto* entry = evidence_.find(key);
      if (entry != nullptr) content.add("entry on " + entry->entry->subject);
      content.add(lineage(entry != nullptr ? entry->entry->source : key));
    }
  }

  std::string of_entry(const RegisterIndex::Item& item) {
    const Entry& entry = *item.entry;
    Content content;
    content.add(entry.key).add(entry.source).add(lineage(entry.source));
    content.add(item.source != nullptr ? to_string(item.source->kind) : "-");
    content.add(to_string(entry.statement)).add(entry.subject).add(entry.place);
    content.add_all(evidence_.lists().places.above(entry.place));
    content.add(static_cast<std::int64_t>(evidence_.lists().places.find(entry.place) != nullptr));
    content.add(entry.when).add(item.period).add(static_cast<std::int64_t>(entry.reading));
    content.add(to_string(entry.nature)).add(entry.number).add(entry.most()).add(entry.attribute);
    content.add(to_string(entry.spot_visible)).add(to_string(entry.identification));
    add_beneath(entry.date_rests_on, content);
    add_beneath(entry.identification_rests_on, content);
    add_beneath(entry.caption_rests_on, content);
    return content.sha256();
  }

  void add_subjects() {
    std::unordered_map<std::string, std::vector<std::string>> by_subject;
    for (const RegisterIndex::Item& item : evidence_.items())
      if (item.entry->statement != Statement::located)
        by_subject[item.entry->subject].push_back(of_entry(item));
    const AuthorityList& things = evidence_.lists().equipment;
    std::set<std::string> subjects;
    for (const Term& term : things.terms()) subjects.insert(term.key);
    for (const auto& [subject, entries] : by_subject) subjects.insert(subject);
    for (const std::string& subject : subjects) {
      // The thing, what is narrower, and what is broader.
      std::vector<std::string> keys = things.all_within(subject);
      if (keys.empty()) keys.push_back(subject);
      for (std::string& key : things.above(subject)) keys.push_back(std::move(key));
      std::sort(keys.begin(), keys.end());
      Content content;
      bool any = false;
      for (const std::string& key : keys) {
        const auto at = by_subject.find(key);
        if (at == by_subject.end()) continue;
        any = true;
        content.add(key).add_all(at->second);
      }
      if (any) put(GroundKind::subject, subject, content);
    }
  }

  void add_itinerary() {
    Content content;
    for (const RegisterIndex::StayItem& item : evidence_.stays()) {
      const Stay& stay = *item.stay;
      content.add(stay.key).add(stay.party).add_all(stay.locations).add(stay.when).add(item.period);
    }
    put(GroundKind::itinerary, "", content);
  }

  void add_places() {
    const AuthorityList& places = evidence_.lists().places;
    for (const Term& term : places.terms())
      put(GroundKind::place, term.key, Content().add_all(places.above(term.key)));
  }

  void add_people() {
    for (const Interview& interview : people_.file().interviews)
      put(GroundKind::interview, interview.key,
          Content().add(interview.date).add_all(interview.narrators).add_all(interview.shown_beforehand));
    for (const Person& person : people_.file().persons) {
      Content content;
      content.add(person.birth);
      for (const ServicePeriod& served : person.service) content.add(served.when);
      put(GroundKind::person, person.key, content);
    }
  }

  const RegisterIndex& evidence_;
  const People& people_;
  std::unordered_map<std::string, std::string> lineages_;
  Grounds grounds_;
};

}  // namespace

std::string rules_sha256(std::string_view date_policy) {
  return Content().add(kRulesOfWeighing).add(date_policy).sha256();
}

Grounds grounds_of(const RegisterIndex& evidence, const People& people, std::string_view rules_sha256) {
  return GroundMaker(evidence, people).made(rules_sha256);
}

}  // namespace witnessmark
