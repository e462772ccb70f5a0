#include "witnessmark/terminal/session.h"
#include "witnessmark/base/counted.h"

#include <fmt/core.h>

#include <deque>
#include <utility>

#include "witnessmark/app/claim_words.h"

namespace witnessmark {
namespace {

constexpr std::size_t kWindow = 300;  // lines of a list held at a time
constexpr std::size_t kOffered = 12;  // names offered for what was typed

/// Does one effect at the desk.
struct Perform {
  CodingDesk& desk;
  const Session::Player& player;

  Event operator()(const LoadInterviews&) const { return InterviewsLoaded{desk.interviews()}; }

  Event operator()(const LoadClaims& wanted) const {
    return ClaimsLoaded{wanted.query, desk.claims(wanted.query, wanted.first, kWindow)};
  }

  Event operator()(const LoadTranscript& wanted) const {
    auto page = desk.transcript(wanted.interview);
    if (!page) return Failed{page.error()};
    return TranscriptLoaded{std::make_shared<const TranscriptPage>(std::move(page).value())};
  }

  Event operator()(const LoadClaim& wanted) const {
    auto page = desk.claim(wanted.id);
    if (!page) return Failed{page.error()};
    return ClaimLoaded{std::make_shared<const ClaimPageFull>(std::move(page).value())};
  }

  Event operator()(const LoadReport& wanted) const {
    auto report = desk.report(wanted.kind, wanted.subject);
    if (!report) return Failed{report.error()};
    return ReportLoaded{wanted.kind, wanted.subject,
                        std::make_shared<const Report>(std::move(report).value())};
  }

  Event operator()(const FindTerms& wanted) const {
    if (wanted.list) return TermsFound{wanted.typed, desk.terms(*wanted.list, wanted.typed, kOffered)};
    auto matches = desk.terms(AuthorityList::Kind::equipment, wanted.typed, kOffered / 2);
    for (TermMatch& match : desk.terms(AuthorityList::Kind::places, wanted.typed, kOffered / 2))
      matches.push_back(std::move(match));
    return TermsFound{wanted.typed, std::move(matches)};
  }

  Event operator()(const ReadDate& wanted) const {
    auto date = desk.typed_date(wanted.typed, wanted.claim);
    if (!date)
      return DateRead{wanted.typed, {}, fmt::format("{}: {}", date.error().message, date.error().advice)};
    return DateRead{wanted.typed, std::move(date).value(), ""};
  }

  Event operator()(const OpenWithheld& wanted) const {
    return done(desk.open_withheld(wanted.interview),
                wanted.interview + " is open to you at this sitting; it stays withheld everywhere else");
  }

  Event operator()(const Decide& wanted) const {
    const std::string_view status = in_words(wanted.status);
    const auto decided = desk.decide(wanted.claims, wanted.status, wanted.why);
    if (!decided) return Failed{decided.error()};
    if (wanted.claims.size() == 1) return Done{saved(status, wanted.what), wanted.claims.front()};
    std::string words = fmt::format("{}: {}", status, counted(*decided, "claim"));
    if (const std::size_t left = wanted.claims.size() - *decided; left > 0)
      words += fmt::format("; {} without number or property left as {}: e corrects", counted(left, "claim"),
                           left == 1 ? "it was" : "they were");
    return Done{words + ". Saved; u undoes.", std::nullopt};
  }

  Event operator()(const Correct& wanted) const {
    return done(desk.correct(wanted.claim, wanted.why), saved("corrected, and said so", wanted.what),
                wanted.claim.id);
  }

  Event operator()(const Add& wanted) const {
    const auto id = desk.add(wanted.claim, "");
    if (!id) return Failed{id.error()};
    return Done{saved("claim added", wanted.what), *id};
  }

  Event operator()(const CodeClaim& wanted) const {
    const std::string before = desk.last_act();
    using Kind = CodeClaim::Kind;
    switch (wanted.kind) {
      case Kind::note:
        return written(before, desk.note(wanted.claim, wanted.text), "note written. Saved; u undoes.", wanted.claim);
      case Kind::checked:
        return written(before, desk.check_quote(wanted.claim, wanted.text),
                    "quote checked against the recording. Saved; u undoes.", wanted.claim);
      case Kind::requote:
        return written(before, desk.requote(wanted.claim, wanted.range),
                    "its quote is now what was selected. Saved; u undoes.", wanted.claim);
      case Kind::join:
        return written(before, desk.join(wanted.claim, wanted.other),
                    "joined with the next claim, which is set aside. Saved; u undoes.", wanted.claim);
      case Kind::divide:
        return written(before, desk.divide(wanted.claim),
                    "divided: the second claim stands after it, correct it with e. Saved; u undoes.",
                    wanted.claim);
      case Kind::link:
        return written(before, desk.link(wanted.claim, wanted.entry, true),
                    fmt::format("linked with {}. Saved; u undoes.", wanted.entry), wanted.claim);
      case Kind::rule_out:
        return written(before, desk.link(wanted.claim, wanted.entry, false),
                    fmt::format("{} ruled out. Saved; u undoes.", wanted.entry), wanted.claim);
    }
    return Failed{};
  }

  Event operator()(const CodePassage& wanted) const {
    const std::string before = desk.last_act();
    if (wanted.kind == CodePassage::Kind::read)
      return written(before, desk.mark_read(wanted.interview, wanted.range), "marked as read. Saved; u undoes.");
    if (wanted.kind == CodePassage::Kind::lift)
      return written(before, desk.lift_restriction(wanted.interview, wanted.range, wanted.text),
                  "restriction lifted. Saved; u undoes.");
    return written(before, desk.restrict_passage(wanted.interview, wanted.range, wanted.text),
                "passage restricted. Saved; u undoes.");
  }

  Event operator()(const Undo&) const { return undone(desk.undo(), "nothing of yours is left to undo"); }
  Event operator()(const Redo&) const { return undone(desk.redo(), "nothing was undone"); }

  Event operator()(const HideProposals& wanted) const {
    desk.code_blind(wanted.hide);
    return ProposalsHidden{wanted.hide};
  }

  Event operator()(const Settle& wanted) const {
    return done(desk.settle(wanted.difference, wanted.theirs), wanted.theirs
                                                                   ? "settled: the other's decision. Saved."
                                                                   : "settled: as it stood here. Saved.");
  }

  Event operator()(const Play& wanted) const {
    if (player && player(wanted.recording, wanted.at))
      return Done{"playing " + wanted.recording + " at " + to_timecode(wanted.at), std::nullopt};
    return Failed{{"", 0, 0, "the player could not be started", "see review --player"}};
  }

  Event operator()(const Suspend&) const { return Done{"", std::nullopt}; }
  Event operator()(const Quit&) const { return Done{"", std::nullopt}; }

 private:
  static Event done(const Result<void>& result, std::string words, std::optional<Id> claim = std::nullopt) {
    if (!result) return Failed{result.error()};
    return Done{std::move(words), claim};
  }

  /// The same of an act that may find everything as it is to be: then u would undo an earlier one.
  Event written(const std::string& before, const Result<void>& result, std::string words,
                std::optional<Id> claim = std::nullopt) const {
    if (result && desk.last_act() == before) words = "it stood so already; nothing was written";
    return done(result, std::move(words), claim);
  }

  /// The claim comes last: on a narrow screen the line is cut.
  static std::string saved(std::string_view done, const std::string& what) {
    return fmt::format("{}. Saved; u undoes{}{}", done, what.empty() ? "." : ": ", what);
  }

  static Event undone(const Result<CodingDesk::TakenBack>& result, const char* nothing) {
    if (!result) return Failed{result.error()};
    return Done{result->words.empty() ? std::string(nothing) : result->words + ". Saved.", result->claim, true};
  }
};

}  // namespace

Session::Session(CodingDesk& desk, Size size, Player player) : desk_(desk), player_(std::move(player)) {
  State state;
  state.size = size;
  state.site = desk.site_name();
  state.coder = desk.coder();
  state.can_edit = desk.can_edit();
  state.why_reading = desk.why_reading();
  state.can_play = static_cast<bool>(player_);
  kept_ = desk.standing();
  run(begin(std::move(state), kept_));
}

bool Session::take_suspend() {
  return std::exchange(suspend_, false);
}

void Session::handle(const Event& event) {
  run(update(std::move(state_), event));
  const std::string stands = standing_text(state_);
  if (stands == kept_) return;
  desk_.keep_standing(stands);
  kept_ = stands;
}

void Session::run(Update made) {
  std::deque<Effect> waiting(made.effects.begin(), made.effects.end());
  state_ = std::move(made.state);
  while (!waiting.empty()) {
    const Effect effect = std::move(waiting.front());
    waiting.pop_front();
    if (std::holds_alternative<Quit>(effect)) continue;
    if (std::holds_alternative<Suspend>(effect)) {
      suspend_ = true;
      continue;
    }
    if (show_working_ && std::holds_alternative<LoadReport>(effect)) {
      State working = state_;
      working.message = "working …";
      working.message_role = Role::faint;
      show_working_(working);
    }
    Update next = update(std::move(state_), std::visit(Perform{desk_, player_}, effect));
    state_ = std::move(next.state);
    waiting.insert(waiting.end(), next.effects.begin(), next.effects.end());
  }
}

}  // namespace witnessmark
