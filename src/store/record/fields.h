#pragma once
#include <concepts>
#include <type_traits>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/conclusion.h"
#include "witnessmark/model/site.h"

// The fields of each record, named once. Whoever goes over a record (writing it as JSON, reading it back,
// binding it to the columns of its table) is a visitor called with name and field; `child` marks fields that
// live in a table of their own and are left out of the record's row. Names are those of the columns in
// schemas/sql, in their order.
//
// The journal holds hashes of what this makes of a record. A field added later must therefore leave no trace
// in the JSON while it has its default (json_text.h leaves out empty texts, lists, optionals, dates and
// false).

namespace witnessmark {

template <typename T, typename R>
concept Either = std::same_as<std::remove_const_t<T>, R>;

template <typename V, Either<ServicePeriod> R>
void fields(V& visit, R& r) {
  visit("dated", r.when);
  visit("role", r.role);
  visit("notes", r.notes);
}

template <typename V, Either<Person> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit("name", r.name);
  visit("pseudonym", r.pseudonym);
  visit("birth", r.birth);
  visit("death", r.death);
  visit.child("service", r.service);
  visit("notes", r.notes);
}

template <typename V, Either<Interview> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit.child("narrators", r.narrators);
  visit.child("interviewers", r.interviewers);
  visit("dated", r.date);
  visit("place", r.place);
  visit("session", r.session);
  visit("accession", r.accession);
  visit("repository", r.repository);
  visit("recording", r.recording);
  visit("recording_length", r.recording_length);
  visit("standing", r.standing);
  visit("access", r.access.access);
  visit("closed_until", r.access.closed_until);
  visit("closed_until_event", r.access.closed_until_event);
  visit("shown_beforehand", r.shown_beforehand);
  visit("transcript_path", r.transcript_path);
  visit("transcript_format", r.transcript_format);
  visit("notes", r.notes);
}

template <typename V, Either<Speaker> R>
void fields(V& visit, R& r) {
  visit("interview", r.interview);
  visit("label", r.label);
  visit("person", r.person);
  visit("role", r.role);
}

template <typename V, Either<NarratorRelease> R>
void fields(V& visit, R& r) {
  visit("interview", r.interview);
  visit("person", r.person);
  visit("release", r.release);
  visit("uses", r.uses);
  visit("naming", r.naming);
  visit("rights_holder", r.rights_holder);
  visit("closed_until", r.closed_until);
  visit("closed_until_event", r.closed_until_event);
  visit("notes", r.notes);
}

/// Without its range, which is found anew in each version of the text.
template <typename V, Either<RestrictedPassage> R>
void fields(V& visit, R& r) {
  visit("interview", r.interview);
  visit("quote", r.quote);
  visit("access", r.conditions.access);
  visit("closed_until", r.conditions.closed_until);
  visit("closed_until_event", r.conditions.closed_until_event);
  visit("reason", r.reason);
}

template <typename V, Either<FormerName> R>
void fields(V& visit, R& r) {
  visit("name", r.name);
  visit("dated", r.when);
}

template <typename V, Either<Term> R>
void fields(V& visit, R& r) {
  visit("id", r.id);
  visit("key", r.key);
  visit("name", r.name);
  visit("broader", r.broader);
  visit("number", r.number);
  visit("scheme", r.scheme);
  visit("former_names", r.former_names);
  visit("spoken", r.spoken);
  visit("place", r.place);
  visit("notes", r.notes);
}

template <typename V, Either<Source> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit("kind", r.kind);
  visit("title", r.title);
  visit("creator", r.creator);
  visit("dated", r.date);
  visit("repository", r.repository);
  visit("reference", r.reference);
  visit("interview", r.interview);
  visit("notes", r.notes);
}

template <typename V, Either<Derivation> R>
void fields(V& visit, R& r) {
  visit("source", r.source);
  visit("derives_from", r.derives_from);
  visit("how", r.how);
}

template <typename V, Either<Entry> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit("source", r.source);
  visit("locator", r.locator);
  visit("statement", r.statement);
  visit("subject", r.subject);
  visit("place", r.place);
  visit("dated", r.when);
  visit("reading", r.reading);
  visit("nature", r.nature);
  visit("number", r.number);
  visit("attribute", r.attribute);
  visit("spot_visible", r.spot_visible);
  visit("identification", r.identification);
  visit("identification_rests_on", r.identification_rests_on);
  visit("date_rests_on", r.date_rests_on);
  visit("caption_rests_on", r.caption_rests_on);
  visit("lies_over", r.over);
  visit("observation", r.observation);
  visit("interpretation", r.interpretation);
  visit("observer", r.observer);
  visit("fabric", r.fabric);
  visit("notes", r.notes);
  visit("number_most", r.number_most);
  visit("letter_figure", r.letter_figure);
}

template <typename V, Either<Stay> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit("source", r.source);
  visit("party", r.party);
  visit("locations", r.locations);
  visit("dated", r.when);
  visit("notes", r.notes);
}

template <typename V, Either<NamedEvent> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit("name", r.name);
  visit("spoken", r.spoken);
  visit("dated", r.when);
  visit("source", r.source);
  visit("notes", r.notes);
}

template <typename V, Either<Conclusion> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit("subject", r.subject);
  visit("place", r.place);
  visit("wording", r.wording);
  visit("reasons", r.reasons);
  visit("author", r.author);
  visit("dated", r.date);
  visit("evidence", r.evidence);
  visit("published", r.published);
  visit("replaces", r.replaces);
  visit("notes", r.notes);
}

template <typename V, Either<Enquiry> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit("question", r.question);
  visit("answer", r.answer);
  visit("sent_to", r.sent_to);
  visit("author", r.author);
  visit("dated", r.date);
  visit("conclusions", r.conclusions);
  visit("notes", r.notes);
}

template <typename V, Either<Search> R>
void fields(V& visit, R& r) {
  visit("key", r.key);
  visit("id", r.id);
  visit("source", r.source);
  visit("subject", r.subject);
  visit("place", r.place);
  visit("looked_through", r.when);
  visit("found", r.found);
  visit("author", r.author);
  visit("dated", r.date);
  visit("notes", r.notes);
}

template <typename V, Either<Mention> R>
void fields(V& visit, R& r) {
  visit("kind", r.kind);
  visit("first", r.range.begin);
  visit("past", r.range.end);
  visit("value", r.value);
  visit("rule", r.rule);
  visit("near_match", r.near_match);
}

template <typename V, Either<Claim> R>
void fields(V& visit, R& r) {
  visit("id", r.id);
  visit("interview", r.interview);
  visit("speaker", r.speaker);
  visit("knower", r.knower);
  visit("statement", r.statement);
  visit("subject", r.subject);
  visit("subject_words", r.subject_words);
  visit("place", r.place);
  visit("place_words", r.place_words);
  visit("dated", r.when.dated);
  visit("reading", r.when.reading);
  visit("period", r.when.period);
  visit("rule", r.when.rule);
  visit("anchor", r.when.anchor);
  visit("date_carried", r.when.carried);
  visit("alternatives", r.when.alternatives);
  visit("quantity", r.quantity);
  visit("attribute", r.attribute);
  visit("basis", r.basis);
  visit("firmness", r.firmness);
  visit("polarity", r.polarity);
  visit("led", r.led);
  visit("subject_carried", r.subject_carried);
  visit("place_carried", r.place_carried);
  visit("withdrawn", r.withdrawn);
  visit.child("quotes", r.quotes);
  visit.child("mentions", r.mentions);
  visit("reason", r.reason);
  visit("review_rank", r.rank);
  visit("ordinal", r.ordinal);
  visit("status", r.status);
}

}  // namespace witnessmark
