#pragma once
#include <random>
#include <string>

#include "store/sample_site.h"
#include "witnessmark/store/claim_acts.h"
#include "witnessmark/store/entry_links.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/notes.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/quote_checks.h"
#include "witnessmark/store/restricted_passages.h"

namespace witnessmark::sample {

/// Makes decisions of every kind, in an order that the seed gives.
class RandomCoder {
 public:
  RandomCoder(SiteFile& site, std::uint64_t seed, std::string interview = "aske-1", std::string text = kTalk)
      : site_(site), random_(seed), interview_(std::move(interview)), text_(std::move(text)) {}

  /// One act. False when what was drawn could not be done: nothing is written then.
  bool act() {
    const auto events = count_events(site_);
    switch (below(13)) {
      case 0:
      case 1:
      case 2:
        decide();
        break;
      case 3:
        (void)split_claim(site_, changed(), changed(), words());
        break;
      case 4:
        (void)merge_claims(site_, changed(), any_claim().id, words());
        break;
      case 5:
        (void)decide_many(site_, {changed(), changed()}, words());
        break;
      case 6:
        add();
        break;
      case 7:
        note();
        break;
      case 8:
        edit_or_remove_note();
        break;
      case 9:
        link();
        break;
      case 10:
        (void)check_quote(site_, any_claim().id, words());
        break;
      case 11:
        read();
        break;
      default:
        restrict();
        break;
    }
    return count_events(site_) > events;
  }

  std::size_t below(std::size_t bound) { return static_cast<std::size_t>(random_() % bound); }

 private:
  std::string words() { return "words " + std::to_string(below(1000)); }
  Claim any_claim() {
    const auto claims = load_claims(site_, {.interviews = {interview_}});
    return claims.at(below(claims.size())).claim;
  }
  CodePointRange any_range() {
    const auto size = static_cast<std::size_t>(CodePointIndex(text_).size().value);
    const auto begin = static_cast<std::int64_t>(below(size - 1));
    const auto length = static_cast<std::int64_t>(1 + below(20));
    return {CodePoint{begin},
            CodePoint{std::min<std::int64_t>(begin + length, static_cast<std::int64_t>(size))}};
  }
  Claim changed() {
    Claim claim = any_claim();
    claim.status = static_cast<ClaimStatus>(below(4));
    if (below(2) == 0) claim.subject = "subject-" + std::to_string(below(5));
    if (below(3) == 0) claim.quotes[0] = any_range();
    if (below(4) == 0) claim.quantity.reset();
    if (below(4) == 0) claim.mentions.clear();
    if (below(4) == 0) claim.when.dated = dated(std::to_string(1940 + below(30)));
    return claim;
  }
  void decide() {
    (void)decide_claim(site_, changed(), words(), below(2) == 0 ? ProposalView::hidden : ProposalView::shown);
  }
  void add() {
    Claim claim = changed();
    claim.id = {};
    (void)add_claim(site_, claim, words());
  }
  void note() {
    Note note;
    note.interview = interview_;
    note.text = words();
    if (below(2) == 0) note.claim = any_claim().id;
    if (below(2) == 0) note.range = any_range();
    (void)add_note(site_, note);
  }
  void edit_or_remove_note() {
    const auto notes = notes_of_interview(site_, interview_);
    if (notes.empty()) return;
    const Id id = notes[below(notes.size())].id;
    if (below(3) == 0) {
      (void)remove_note(site_, id);
    } else {
      (void)edit_note(site_, id, words());
    }
  }
  void link() {
    const Id claim = any_claim().id;
    const std::string entry = below(2) == 0 ? "e1" : "s1";
    if (below(3) == 0) {
      (void)unlink_entry(site_, claim, entry, words());
    } else {
      (void)link_entry(site_, {claim, entry, "", static_cast<LinkVerdict>(below(2)), words(), ""});
    }
  }
  void read() {
    if (below(3) == 0) {
      (void)mark_unread(site_, interview_, any_range());
    } else {
      (void)mark_read(site_, interview_, any_range());
    }
  }
  void restrict() {
    const RestrictedPassage passage{
        interview_, "", any_range(), {static_cast<Access>(below(3)), std::nullopt, ""}, words()};
    (void)mark_passage(site_, passage, words());
  }

  SiteFile& site_;
  std::mt19937_64 random_;
  std::string interview_;
  std::string text_;
};

}  // namespace witnessmark::sample
