#include "tracing.h"

#include <algorithm>

#include "weigh/comparing/circularity.h"

namespace witnessmark {
namespace {

Worth worth_of(const Testimony& told) {
  const Claim& claim = *told.claim;
  if (claim.led) return Worth::led;
  if (claim.basis == Basis::inferred) return Worth::inferred;
  if (claim.firmness == Firmness::guess) return Worth::guess;
  if (claim.basis == Basis::told || claim.basis == Basis::read) return Worth::second_hand;
  if (told.in_service == Answer::no && claim.basis != Basis::first_hand) return Worth::second_hand;
  return Worth::counted;
}

/// Links by which what is said was taken over, not only its date or its caption.
bool retold(LineageLink::Why why) {
  return why == LineageLink::Why::derives_from || why == LineageLink::Why::is_interview ||
         why == LineageLink::Why::narrated_by;
}

}  // namespace

Voice voice_of(const Testimony& told) {
  Voice voice;
  voice.claim = told.claim->id;
  voice.interview = told.claim->interview;
  const std::string who = told.person.empty() ? voice.interview + "/" + told.claim->speaker : told.person;
  voice.origin = {Origin::Kind::person, who};
  voice.worth = worth_of(told);
  return voice;
}

Voice voice_of(const RegisterIndex::Item& item, const RegisterIndex& index) {
  Voice voice;
  voice.entry = item.entry->key;
  voice.origin = {Origin::Kind::source, item.entry->source};
  voice.kind = item.source != nullptr ? item.source->kind : SourceKind::publication;
  Claim of_subject;
  of_subject.subject = item.entry->subject;
  const Circle circle = circle_between(of_subject, Interview{}, item, index);
  if (circle == Circle::date_rests_on_subject || circle == Circle::identity_rests_on_subject)
    voice.worth = Worth::circular;
  else if (item.entry->nature == Nature::intended)
    voice.worth = Worth::intention;
  return voice;
}

bool is_written(SourceKind kind) {
  return kind == SourceKind::publication || kind == SourceKind::log || kind == SourceKind::order ||
         kind == SourceKind::correspondence || kind == SourceKind::object_record;
}

Tracing::Tracing(const Register& evidence, const RegisterIndex& index, const InterviewFile& people)
    : index_(index), people_(people), lineage_(evidence, people.interviews) {}

void Tracing::prepare(const Origin& origin) {
  const auto [at, fresh] = behind_.try_emplace(origin);
  if (fresh) at->second = lineage_.behind(origin);
}

std::vector<LineageLink> Tracing::behind(const Origin& origin) const {
  const auto known = behind_.find(origin);
  return known != behind_.end() ? known->second : lineage_.behind(origin);
}

std::vector<LineageLink> Tracing::link(const Origin& from, const Origin& to, LineageLink::Why why,
                                       const std::string& how) const {
  std::vector<LineageLink> links{{from, to, why, how}};
  const auto further = behind(to);
  links.insert(links.end(), further.begin(), further.end());
  return links;
}

std::vector<LineageLink> Tracing::of_entry(const Entry& entry) const {
  std::vector<LineageLink> links;
  const Origin from{Origin::Kind::source, entry.source};
  const auto add = [&](const std::vector<std::string>& keys, LineageLink::Why why) {
    for (const std::string& key : keys) {
      if (index_.lists().equipment.find(key) != nullptr) continue;
      const auto* other = index_.find(key);
      const auto more = link(from, {Origin::Kind::source, other != nullptr ? other->entry->source : key}, why);
      links.insert(links.end(), more.begin(), more.end());
    }
  };
  add(entry.date_rests_on, LineageLink::Why::dated_by);
  add(entry.identification_rests_on, LineageLink::Why::identified_by);
  add(entry.caption_rests_on, LineageLink::Why::captioned_by);
  return links;
}

std::vector<LineageLink> Tracing::had_from(const Testimony& told, const Origin& narrator) const {
  const std::string knower = person_named(told.claim->knower, people_.persons);
  if (knower.empty()) return {};
  return link(narrator, {Origin::Kind::person, knower}, LineageLink::Why::had_it_from);
}

std::vector<LineageLink> Tracing::had_read(const Origin& narrator, const Origin& read) const {
  return link(narrator, read, LineageLink::Why::had_read);
}

std::vector<LineageLink> Tracing::was_shown(const Testimony& told, const Origin& narrator,
                                            const std::string& shown) const {
  return link(narrator, {Origin::Kind::source, shown}, LineageLink::Why::was_shown, told.interview->key);
}

const std::vector<ServicePeriod>& Tracing::service(const std::string& person) const {
  static const std::vector<ServicePeriod> kNone;
  const auto at = std::find_if(people_.persons.begin(), people_.persons.end(),
                               [&](const Person& one) { return one.key == person; });
  return at == people_.persons.end() ? kNone : at->service;
}

std::set<Origin> Tracing::reached_from(const std::string& shown) const {
  std::set<Origin> reached{{Origin::Kind::source, shown}};
  for (const LineageLink& further : behind({Origin::Kind::source, shown})) reached.insert(further.to);
  return reached;
}

std::set<SourceKind> Tracing::kinds_behind(const Voice& voice, const std::vector<LineageLink>& links) const {
  if (links.empty() && voice.origin.kind == Origin::Kind::person) return {SourceKind::testimony};
  std::set<Origin> reached{voice.origin};
  std::set<Origin> retells;
  for (const LineageLink& each : links) {
    if (!retold(each.why) || !reached.contains(each.from)) continue;
    reached.insert(each.to);
    retells.insert(each.from);
  }
  std::set<SourceKind> kinds;
  for (const Origin& origin : reached) {
    if (retells.contains(origin)) continue;
    const Source* source = origin.kind == Origin::Kind::source ? index_.source(origin.key) : nullptr;
    const bool person = origin.kind == Origin::Kind::person;
    if (person)
      kinds.insert(SourceKind::testimony);
    else
      kinds.insert(source != nullptr ? source->kind : voice.kind);
  }
  return kinds;
}

}  // namespace witnessmark
