// The main job in figures: propose and weigh on the demo corpus; then a synthetic transcript, made by repeating the demo's
// talk, through reading alone and with storage, beside a bare pass of ICU's sentence rules over the same text in the same
// run. usage: propose_bench [megabytes, 10]
#include <fmt/core.h>
#include <unicode/brkiter.h>
#include <unicode/utext.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>

#include "app/whole_job.h"
#include "witnessmark/app/propose.h"
#include "witnessmark/app/take_in.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/language/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/transcripts.h"

namespace {

using namespace witnessmark;

template <typename Work>
double seconds(const Work& work) {
  const auto begin = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

/// Breaks the text into sentences, as the reader must at least do.
std::size_t bare_sentences(const std::string& text) {
  UErrorCode status = U_ZERO_ERROR;
  std::unique_ptr<icu::BreakIterator> sentences(icu::BreakIterator::createSentenceInstance(icu::Locale::getEnglish(), status));
  UText* view = utext_openUTF8(nullptr, text.data(), static_cast<std::int64_t>(text.size()), &status);
  sentences->setText(view, status);
  std::size_t count = 0;
  while (sentences->next() != icu::BreakIterator::DONE) ++count;
  utext_close(view);
  return count;
}

/// The words of all demo transcripts as one labelled plain text, repeated up to the size.
std::string synthetic_talk(const SiteFile& site, std::size_t bytes) {
  std::string once;
  for (const Interview& interview : load_interviews(site).interviews) {
    const auto stored = load_transcript(site, interview.key).value();
    const CodePointIndex index(stored.transcript.reading_text);
    for (const Utterance& turn : stored.transcript.utterances) {
      once += (turn.speaker.empty() ? "SPEAKER" : turn.speaker) + ": ";
      for (const char c : index.slice(turn.range)) once += c == '\n' ? ' ' : c;
      once += "\n\n";
    }
  }
  std::string talk;
  while (talk.size() < bytes) talk += once;
  return talk;
}

void demo_in_figures(const std::filesystem::path& folder, const SystemFileReader& files) {
  SiteFile site = whole_job(files, folder, to_day({2026, 1, 15}));
  const Surroundings around = surroundings_of(files, to_day({2026, 1, 15}));
  const double proposing = seconds([&] { (void)propose(site, {}, around).value(); });
  const double weighing = seconds([&] { (void)weigh(site, true, around).value(); });
  fmt::print("demo corpus: propose {:.3f} s, weigh {:.3f} s, {} claims\n", proposing, weighing, load_claims(site).size());
}

}  // namespace

int main(int argc, char** argv) {
  const int wanted = argc > 1 ? std::atoi(argv[1]) : 10;
  if (wanted <= 0) {
    fmt::print(stderr, "usage: propose_bench [MEGABYTES]: \"{}\" is no number of megabytes\n", argv[1]);
    return 2;
  }
  const std::size_t bytes = static_cast<std::size_t>(wanted) * 1'000'000;
  const SystemFileReader files;
  const auto folder = source_tree() / "corpus-demo";
  demo_in_figures(folder, files);

  SiteFile site = whole_job(files, folder, to_day({2026, 1, 15}));
  const Surroundings around = surroundings_of(files, to_day({2026, 1, 15}));
  MemoryFiles talk;
  const std::string text = synthetic_talk(site, bytes);
  talk.files["/synthetic/interviews.csv"] =
      "interview,transcript,narrators,date,access\nlong-1,long.txt,tarrock,1996-05-01,open\n";
  talk.files["/synthetic/long.txt"] = text;
  const Surroundings with_talk = surroundings_of(talk, around.today);
  const double megabytes = static_cast<double>(text.size()) / 1e6;
  fmt::print("synthetic transcript: {:.1f} MB\n", megabytes);
  const auto rate = [&](const char* what, double time) { fmt::print("  {:<44} {:7.2f} s {:8.1f} MB/s\n", what, time, megabytes / time); };

  const double taking_in = seconds([&] {
    const auto taken = take_in_interviews(site, "/synthetic/interviews.csv", {}, with_talk);
    if (!taken.done) fmt::print("{}\n", to_string(taken.diagnostics.back()));
  });
  const auto policy = default_date_policy();
  const auto language = Language::load(files, around.language).value();
  const InterviewFile people = load_interviews(site);
  const AuthorityLists lists = load_lists(site);
  const Register evidence = load_register(site);
  const TermFinder places(lists.places, language), equipment(lists.equipment, language);
  const auto stored = load_transcript(site, "long-1").value();
  ReadingContext context;
  context.language = &language;
  context.places = &places;
  context.equipment = &equipment;
  context.persons = people.persons;
  context.speakers = people.speakers;
  context.events = evidence.events;
  std::vector<Claim> claims;
  double bare = 0, reading = 0;  // The best of three, by turns.
  for (int round = 0; round < 3; ++round) {
    const double pass = seconds([&] { bare_sentences(text); });
    const double read = seconds([&] { claims = propose_claims(context, stored.transcript, stored.sentences); });
    bare = round == 0 ? pass : std::min(bare, pass);
    reading = round == 0 ? read : std::min(reading, read);
  }
  const double whole = seconds([&] { (void)propose(site, {"long-1"}, with_talk).value(); });
  const double weighing = seconds([&] { (void)weigh(site, false, with_talk).value(); });
  rate("bare ICU sentence pass", bare);
  rate("take-in (read, split, store, index)", taking_in);
  rate("reading claims, no storage", reading);
  rate("propose, with storage", whole);
  rate("weigh", weighing);
  fmt::print("  {} claims; reading is {:.1f} times the bare pass; storage is {:.0f} % of propose\n", claims.size(), reading / bare,
             100 * (whole - reading) / whole);
  return 0;
}
