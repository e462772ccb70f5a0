#pragma once
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "witnessmark/app/coding_views.h"
#include "witnessmark/base/error.h"
#include "witnessmark/terminal/key.h"
#include "witnessmark/terminal/picture.h"

namespace witnessmark {

// What the screens want done. Whoever runs them does it and sends back what came of it as an event.

struct LoadInterviews {};
struct LoadClaims {
  ClaimQuery query;
  std::size_t first = 0;
};
struct LoadTranscript {
  std::string interview;
};
struct LoadClaim {
  Id id;
};
/// In both lists when none is given.
struct FindTerms {
  std::optional<AuthorityList::Kind> list;
  std::string typed;
};
struct ReadDate {
  std::string typed;
  Claim claim;
};
struct OpenWithheld {
  std::string interview;
};
struct Decide {
  std::vector<Id> claims;
  ClaimStatus status = ClaimStatus::said_so;
  std::string why;
  std::string what = {};  ///< The claim in a few words, for what is said when it is done.
};
struct Correct {
  Claim claim;
  std::string why;
  std::string what = {};  ///< The claim in a few words, as it will be.
};
struct Add {
  Claim claim;
  std::string what = {};
};
/// What else is coded of a claim. `entry` is for links, `other` for the claim that is joined to it.
struct CodeClaim {
  enum class Kind { note, checked, requote, join, divide, link, rule_out };
  Kind kind = Kind::note;
  Id claim;
  Id other;
  std::string entry;
  std::string text;
  std::string interview = {};  ///< Of the new quote …
  CodePointRange range = {};   ///< … and where it stands.
};
/// What is coded of a passage.
struct CodePassage {
  enum class Kind { read, restrict, lift };
  Kind kind = Kind::read;
  std::string interview;
  CodePointRange range;
  std::string text;
};
struct Undo {};
struct Redo {};
struct HideProposals {
  bool hide = true;
};
/// Settles a difference between coders: with one's own version, or the other's.
struct Settle {
  std::string difference;
  bool theirs = false;
};
struct Play {
  std::string recording;
  Millisecond at;
};
struct LoadReport {
  ReportKind kind = ReportKind::said_about;
  std::string subject;
};
struct Suspend {};
struct Quit {};

using Effect = std::variant<LoadInterviews, LoadClaims, LoadTranscript, LoadClaim, FindTerms, ReadDate,
                            OpenWithheld, Decide, Correct, Add, CodeClaim, CodePassage, Undo, Redo,
                            HideProposals, Settle, Play, LoadReport, Suspend, Quit>;

// What happens.

struct KeyPressed {
  Key key;
};
struct Resized {
  Size size;
};
struct InterviewsLoaded {
  std::vector<InterviewLine> interviews;
};
struct ClaimsLoaded {
  ClaimQuery query;
  ClaimPage page;
};
struct TranscriptLoaded {
  std::shared_ptr<const TranscriptPage> page;
};
struct ClaimLoaded {
  std::shared_ptr<const ClaimPageFull> page;
};
struct TermsFound {
  std::string typed;
  std::vector<TermMatch> matches;
};
struct DateRead {
  std::string typed;
  TypedDate date;
  std::string fault;
};
struct ReportLoaded {
  ReportKind kind;
  std::string subject;
  std::shared_ptr<const Report> report;
};
/// A decision is on the disk. `words` say what was done.
struct Done {
  std::string words;
  std::optional<Id> claim;
  bool show_it = false;  ///< Undone or done again: the claim is gone to.
};
struct Failed {
  Error error;
};
struct ProposalsHidden {
  bool hidden = false;
};

using Event = std::variant<KeyPressed, Resized, InterviewsLoaded, ClaimsLoaded, TranscriptLoaded, ClaimLoaded,
                           TermsFound, DateRead, ReportLoaded, Done, ProposalsHidden, Failed>;

}  // namespace witnessmark
