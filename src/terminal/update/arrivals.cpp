#include "terminal/update/work.h"
#include "witnessmark/app/claim_words.h"

namespace witnessmark {
namespace {

/// The places that wait for what came. All of them, not only the one shown: another may lie under it.
template <typename Kind, typename Visit>
void each(State& state, Visit visit) {
  for (Place& place : state.places)
    if (auto* held = std::get_if<Kind>(&place)) visit(*held);
}

template <typename Kind>
void keep_inside(std::size_t& at, const std::vector<Kind>& items) {
  at = items.empty() ? 0 : std::min(at, items.size() - 1);
}

std::vector<SentencePlace> sentences_of(const TranscriptPage& page) {
  std::vector<SentencePlace> sentences;
  for (std::size_t turn = 0; turn < page.turns.size(); ++turn) {
    for (const SentenceLine& line : page.turns[turn].sentences)
      sentences.push_back({turn, line.range, line.at});
    if (page.turns[turn].sentences.empty())
      sentences.push_back({turn, page.turns[turn].range, page.turns[turn].at});
  }
  return sentences;
}

struct Arrival {
  Work& work;

  void operator()(const KeyPressed&) const {}
  void operator()(const Resized&) const {}

  void operator()(const InterviewsLoaded& loaded) const {
    work.state.interviews = loaded.interviews;
    each<InterviewsPlace>(work.state,
                          [&](InterviewsPlace& place) { keep_inside(place.at, loaded.interviews); });
  }

  void operator()(const ClaimsLoaded& loaded) const {
    each<ClaimsPlace>(work.state, [&](ClaimsPlace& place) {
      if (!(place.query == loaded.query)) return;
      place.page = loaded.page;
      place.at = loaded.page.total == 0 ? 0 : std::min(place.at, loaded.page.total - 1);
    });
  }

  void operator()(const TranscriptLoaded& loaded) const {
    each<TranscriptPlace>(work.state, [&](TranscriptPlace& place) {
      if (place.interview != loaded.page->interview.key) return;
      place.page = loaded.page;
      place.sentences = sentences_of(*loaded.page);
      keep_inside(place.at, place.sentences);
      keep_inside(place.claim, loaded.page->claims);
      if (place.picked_from && *place.picked_from >= place.sentences.size()) place.picked_from.reset();
      if (place.wanted) go_to(place, *place.wanted);
      place.wanted.reset();
    });
  }

  void operator()(const ClaimLoaded& loaded) const {
    each<ClaimPlace>(work.state, [&](ClaimPlace& place) {
      if (place.id == loaded.page->line.id) place.page = loaded.page;
    });
    auto* shown = std::get_if<ClaimPlace>(&work.state.place());
    if (!shown || shown->id != loaded.page->line.id || !shown->to_correct) return;
    shown->to_correct = false;
    open_form(work, *loaded.page);
  }

  void operator()(const ReportLoaded& loaded) const {
    each<ReportPlace>(work.state, [&](ReportPlace& place) {
      if (place.kind != loaded.kind || place.subject != loaded.subject) return;
      place.report = loaded.report;
      const auto& lines = loaded.report->lines;
      if (place.at == 0)
        while (place.at + 1 < lines.size() && lines[place.at].weight == ReportLine::Weight::heading)
          ++place.at;
      keep_inside(place.at, lines);
    });
  }

  void operator()(const TermsFound& found) const {
    auto& prompt = work.state.prompt;
    if (!prompt || prompt->text != found.typed) return;
    prompt->matches = found.matches;
    prompt->chosen = found.typed.empty() || found.matches.empty() ? std::nullopt : std::optional<std::size_t>(0);
  }

  void operator()(const DateRead& read) const {
    auto& prompt = work.state.prompt;
    if (!prompt || prompt->text != read.typed) return;
    prompt->fault = read.fault;
    prompt->meaning = read.fault.empty() ? read.date.meaning : "";
    prompt->date = read.fault.empty() ? std::optional(read.date) : std::nullopt;
  }

  void operator()(const Done& done) const {
    work.say(done.words, Role::good);
    if (done.show_it && done.claim) go_to_claim(work.state, *done.claim);
    if (auto effect = loading(work.state.place())) work.want(std::move(*effect));
  }

  void operator()(const ProposalsHidden& change) const {
    work.state.blind = change.hidden;
    work.say(change.hidden ? "coding blind: what was proposed is hidden, and your decisions say so"
                           : "proposals are shown");
    if (auto effect = loading(work.state.place())) work.want(std::move(*effect));
  }

  /// A place whose content could not be loaded is left again.
  void operator()(const Failed& failed) const {
    const State& state = work.state;
    const auto* talk = std::get_if<TranscriptPlace>(&state.place());
    const auto* claim = std::get_if<ClaimPlace>(&state.place());
    const auto* report = std::get_if<ReportPlace>(&state.place());
    const bool empty = (talk && !talk->page) || (claim && !claim->page) || (report && !report->report);
    if (empty) work.back();
    work.refuse(one_line(to_string(failed.error)));
  }
};

}  // namespace

void arrive(Work& work, const Event& event) {
  std::visit(Arrival{work}, event);
}

}  // namespace witnessmark
