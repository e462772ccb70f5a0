#pragma once
#include <fmt/format.h>

#include <algorithm>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "bench/must.h"
#include "witnessmark/store/claim_acts.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

/// A site of so many claims and a fifth as many entries. Things come and go on days of their own; most statements fit
/// them, one in ten is years wrong. All kinds of statements occur; the site lies in one harbour after another.
class MadeSite {
 public:
  MadeSite(int claims, int entries_to_a_thing)
      : claims_(claims), entries_(claims / 5), things_(std::max(1, entries_ / entries_to_a_thing)) {
    for (int i = 0; i < things_; ++i) stays_.emplace_back(number(1930, 1950), number(1960, 1980));
  }

  void fill(SiteFile& site) {
    SiteTransaction transaction(site);
    must(save_list(site, places()));
    must(save_list(site, equipment()));
    must(save_register(site, evidence()));
    fill_interviews(site);
    transaction.commit();
  }

 private:
  static constexpr int kClaimsToAnInterview = 500;
  static constexpr int kPlaces = 80;
  static constexpr int kHarbours = 12;
  static constexpr int kStays = 200;
  static constexpr std::int64_t kTurn = 30;  ///< Code points.

  int number(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
  std::string thing(int n) const { return fmt::format("thing-{}", n); }
  std::string place(int n) const { return fmt::format("place-{}", n % kPlaces); }

  AuthorityList places() {
    std::vector<Term> terms;
    for (int i = 0; i < kPlaces; ++i) {
      Term term;
      term.key = place(i);
      term.name = fmt::format("Place {}", i);
      if (i >= 8) term.broader = place(i % 8);
      terms.push_back(std::move(term));
    }
    return {AuthorityList::Kind::places, std::move(terms)};
  }

  AuthorityList equipment() {
    std::vector<Term> terms;
    for (int i = 0; i < things_; ++i) {
      Term term;
      term.key = thing(i);
      term.name = fmt::format("Thing {}", i);
      terms.push_back(std::move(term));
    }
    return {AuthorityList::Kind::equipment, std::move(terms)};
  }

  Edtf when(int year) {
    const int kind = number(0, 9);
    std::string text = fmt::format("{}", year);
    if (kind < 4) text += fmt::format("-{:02}", number(1, 12));
    if (kind < 2) text += fmt::format("-{:02}", number(1, 28));
    if (kind == 4) text += "~";
    if (kind == 5) text = fmt::format("{}/{}", year, year + number(1, 3));
    if (kind == 6) text = fmt::format("[..{}]", year);
    return must(parse_edtf(text));
  }

  std::pair<Statement, int> statement(int thing) {
    constexpr Statement kKinds[] = {Statement::begins,    Statement::begins,    Statement::ends,    Statement::ends,
                                    Statement::present,   Statement::present,   Statement::present, Statement::absent,
                                    Statement::attribute, Statement::attribute, Statement::count,   Statement::happened};
    const auto [came, went] = stays_[static_cast<std::size_t>(thing)];
    const Statement kind = kKinds[number(0, 11)];
    int year = kind == Statement::begins   ? came
               : kind == Statement::ends   ? went
               : kind == Statement::absent ? (number(0, 1) == 0 ? came - number(1, 5) : went + number(1, 5))
                                           : number(came, went);
    if (number(0, 9) == 0) year += number(-15, 15);
    return {kind, year};
  }

  std::string detail(Statement kind) {
    constexpr const char* kColours[] = {"colour: buff", "colour: white", "colour: grey", "type: steam"};
    constexpr const char* kEvents[] = {"burned", "flooded", "repaired", ""};
    if (kind == Statement::attribute) return kColours[number(0, 3)];
    return kind == Statement::happened ? kEvents[number(0, 3)] : "";
  }

  void add_itinerary(Register& made) {
    for (int i = 0; i < kStays; ++i) {
      Stay stay;
      stay.key = fmt::format("stay-{}", i);
      stay.source = "source-4";
      stay.locations = {fmt::format("Harbour {}", i * 7 % kHarbours)};
      const int year = 1930 + i / 4, month = 1 + i % 4 * 3;
      stay.when.value = must(parse_edtf(fmt::format("{}-{:02}-01/{}-{:02}-28", year, month, year, month + 2)));
      made.itinerary.push_back(std::move(stay));
    }
  }

  Register evidence() {
    Register made;
    for (int i = 0; i < 60; ++i) {
      Source source;
      source.key = fmt::format("source-{}", i);
      source.title = fmt::format("Source {}", i);
      source.kind = static_cast<SourceKind>(i % 9);
      made.sources.push_back(std::move(source));
      if (i % 10 == 9)
        made.derivations.push_back({fmt::format("source-{}", i), fmt::format("source-{}", i - 3), ""});
    }
    for (int i = 0; i < entries_; ++i) {
      const int of = i % things_;
      const auto [kind, year] = statement(of);
      Entry entry;
      entry.key = fmt::format("e{}", i);
      entry.source = fmt::format("source-{}", number(0, 59));
      entry.subject = thing(of);
      entry.place = place(of + (number(0, 9) == 0 ? 8 : 0));
      entry.statement = kind;
      entry.when.value = when(year);
      if (kind == Statement::count) entry.number = number(1, 3);
      entry.attribute = detail(kind);
      if (number(0, 19) == 0) entry.nature = Nature::intended;
      if (number(0, 9) == 0) entry.identification = Identification::probable;
      made.entries.push_back(std::move(entry));
    }
    add_itinerary(made);
    return made;
  }

  void fill_interviews(SiteFile& site) {
    InterviewFile file;
    const int interviews = (claims_ + kClaimsToAnInterview - 1) / kClaimsToAnInterview;
    for (int n = 0; n < interviews; ++n) {
      Person person;
      person.key = fmt::format("narrator-{}", n);
      person.name = fmt::format("Narrator {}", n);
      person.birth.value = edtf_year(1915 + n % 25);
      ServicePeriod served;
      served.person = person.key;
      served.when.value = must(parse_edtf("1940/1975"));
      person.service.push_back(served);
      file.persons.push_back(std::move(person));
      Interview interview;
      interview.key = fmt::format("interview-{:04}", n);
      interview.narrators = {fmt::format("narrator-{}", n)};
      interview.date.value = edtf_year(1998);
      interview.access.access = Access::open;
      if (n % 10 == 0) interview.shown_beforehand = {"source-3"};
      file.interviews.push_back(interview);
      NarratorRelease release;
      release.interview = interview.key;
      release.person = interview.narrators.front();
      release.release = Release::signed_release;
      file.releases.push_back(release);
    }
    must(save_interviews(site, file));
    for (int n = 0; n < interviews; ++n) {
      const int count = std::min(kClaimsToAnInterview, claims_ - n * kClaimsToAnInterview);
      must(save_transcript(site, transcript(n, count)));
      const std::string key = fmt::format("interview-{:04}", n);
      must(replace_proposals(site, key, claims_of(n, count)));
      std::vector<Claim> reviewed;
      for (StoredClaim& stored : load_claims(site, {.interviews = {key}})) {
        stored.claim.status = ClaimStatus::said_so;
        if (number(0, 1) == 0) reviewed.push_back(std::move(stored.claim));
      }
      must(decide_many(site, reviewed, ""));
    }
  }

  TranscriptFile transcript(int n, int turns) {
    TranscriptFile file;
    file.interview = fmt::format("interview-{:04}", n);
    file.name = file.interview + ".txt";
    for (int turn = 0; turn < turns; ++turn) {
      const CodePointRange range{{turn * kTurn}, {(turn + 1) * kTurn - 1}};
      const TimeRange time{Millisecond{turn * 9000}, Millisecond{turn * 9000 + 9000}};
      file.transcript.utterances.push_back({fmt::format("narrator-{}", n), range, time, Timing::stated});
      file.sentences.push_back({static_cast<std::size_t>(turn), range, time, Timing::stated});
      file.transcript.reading_text += fmt::format("{:<29}\n", fmt::format("We had it in turn {}.", turn));
    }
    file.original = file.transcript.reading_text;
    return file;
  }

  std::vector<Claim> claims_of(int n, int count) {
    std::vector<Claim> all;
    for (int i = 0; i < count; ++i) {
      const int of = number(0, things_ - 1);
      const auto [kind, year] = statement(of);
      Claim claim;
      claim.interview = fmt::format("interview-{:04}", n);
      claim.speaker = fmt::format("narrator-{}", n);
      claim.statement = kind;
      claim.subject = thing(of);
      claim.subject_words = "it";
      if (number(0, 1) == 0) claim.place = place(of);
      claim.attribute = detail(kind);
      claim.when.dated.value = when(year);
      claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
      if (kind == Statement::count) claim.quantity = Quantity{number(1, 3), 3, ""};
      if (number(0, 19) == 0) claim.polarity = Polarity::denied;
      if (number(0, 19) == 0) {
        claim.statement = Statement::located;
        claim.subject = number(0, 1) == 0 ? claim.speaker : "";
        claim.place = "";
        claim.place_words = fmt::format("Harbour {}", number(0, kHarbours - 1));
        claim.quantity.reset();
        claim.attribute = "";
      }
      const CodePointRange turn{{i * kTurn}, {(i + 1) * kTurn - 1}};
      claim.quotes = {turn};
      all.push_back(std::move(claim));
    }
    return all;
  }

  int claims_, entries_, things_;
  std::mt19937 random_{5};
  std::vector<std::pair<int, int>> stays_;
};

}  // namespace witnessmark
