// How fast claims are read, beside a bare ICU sentence pass over the same text in the same run, and the share of each
// stage. Usage: claims_bench [CORPUS [MEGABYTES]]; the transcripts of the corpus folder are repeated to the size wanted.
#include <unicode/brkiter.h>
#include <unicode/utext.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/language/claims.h"
#include "witnessmark/language/date_expression.h"
#include "witnessmark/language/tokens.h"
#include "witnessmark/read/interview_files.h"
#include "witnessmark/read/list_files.h"
#include "witnessmark/read/register_files.h"
#include "witnessmark/read/transcript_reader.h"

using namespace witnessmark;

namespace {

/// The best of three runs, in seconds.
double seconds(const std::function<void()>& work) {
  double best = 1e9;
  for (int run = 0; run < 3; ++run) {
    const auto start = std::chrono::steady_clock::now();
    work();
    best = std::min(best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  return best;
}

std::int64_t icu_sentences(const Transcript& transcript) {
  UErrorCode status = U_ZERO_ERROR;
  const std::unique_ptr<icu::BreakIterator> breaks(
      icu::BreakIterator::createSentenceInstance(icu::Locale::getRoot(), status));
  const CodePointIndex index(transcript.reading_text);
  UText* text = nullptr;
  std::int64_t count = 0;
  for (const Utterance& utterance : transcript.utterances) {
    const ByteRange bytes = index.to_bytes(utterance.range);
    text = utext_openUTF8(text, transcript.reading_text.data() + bytes.begin.value, bytes.length(), &status);
    breaks->setText(text, status);
    breaks->first();
    while (breaks->next() != icu::BreakIterator::DONE) ++count;
  }
  utext_close(text);
  return count;
}

struct Material {
  InterviewFile file;
  AuthorityLists lists;
  Register evidence;
  std::vector<std::vector<std::string>> locations;
  Transcript transcript;
  Interview interview;
};

/// All transcripts of the corpus one after the other, as often as needed.
Material load(const std::string& corpus, std::size_t wanted) {
  const SystemFileReader files;
  Material material;
  material.file = read_interview_files(files, corpus + "/interviews.csv").file;
  const auto list = [&](const char* name, AuthorityList::Kind kind) {
    return AuthorityList(kind, read_list(files.read(corpus + "/" + name).value(), name, kind).terms);
  };
  material.lists = {list("places.csv", AuthorityList::Kind::places), list("equipment.csv", AuthorityList::Kind::equipment)};
  material.evidence = read_register_files(files, corpus + "/entries.csv", &material.lists).evidence;
  for (const Stay& stay : material.evidence.itinerary) material.locations.push_back(stay.locations);
  material.interview = material.file.interviews.front();
  std::vector<Transcript> transcripts;
  for (const Interview& interview : material.file.interviews) {
    const std::string path = corpus + "/" + interview.transcript_path;
    transcripts.push_back(read_transcript(files.read(path).value(), path).value());
  }
  Transcript& all = material.transcript;
  std::int64_t base = 0;
  while (all.reading_text.size() < wanted) {
    for (const Transcript& one : transcripts) {
      for (Utterance utterance : one.utterances) {
        utterance.range = {{utterance.range.begin.value + base}, {utterance.range.end.value + base}};
        utterance.time.reset();
        all.utterances.push_back(std::move(utterance));
      }
      for (Remark remark : one.remarks) {
        remark.range = {{remark.range.begin.value + base}, {remark.range.end.value + base}};
        all.remarks.push_back(remark);
      }
      all.reading_text += one.reading_text;
      base += CodePointIndex(one.reading_text).size().value;
    }
  }
  return material;
}

}  // namespace

int main(int argc, char** argv) {
  const std::string corpus = argc > 1 ? argv[1] : "corpus-demo";
  const double megabytes = argc > 2 ? std::atof(argv[2]) : 10;
  const Material material = load(corpus, static_cast<std::size_t>(megabytes * 1e6));
  const Transcript& transcript = material.transcript;
  const Language language =
      std::move(Language::load(SystemFileReader(), corpus + "/../shared/language/en")).value();
  const TermFinder places(material.lists.places, language);
  const TermFinder equipment(material.lists.equipment, language);
  ReadingContext context;
  context.language = &language;
  context.places = &places;
  context.equipment = &equipment;
  context.interview = &material.interview;
  context.persons = material.file.persons;
  context.speakers = material.file.speakers;
  context.events = material.evidence.events;
  context.locations = material.locations;

  const double size = static_cast<double>(transcript.reading_text.size()) / 1e6;
  std::int64_t count = 0;
  std::vector<Sentence> sentences;
  std::vector<Claim> claims;
  const CodePointIndex index(transcript.reading_text);
  const auto each_turn = [&](const std::function<void(std::string_view)>& work) {
    for (const Utterance& utterance : transcript.utterances) work(index.slice(utterance.range));
  };
  const double icu = seconds([&] { count = icu_sentences(transcript); });
  const double split = seconds([&] { sentences = split_sentences(transcript, language.abbreviations()); });
  std::vector<Token> tokens;
  const double token_pass = seconds([&] { each_turn([&](std::string_view text) { tokenize(text, tokens); }); });
  Discourse discourse;
  discourse.speech_time = material.interview.date.value;
  discourse.events = material.evidence.events;
  // As the reader of claims does it: many turns in one call.
  std::vector<std::string> batches(1);
  each_turn([&](std::string_view text) {
    if (batches.back().size() > (1U << 16)) batches.emplace_back();
    batches.back().append(text).append(" | ");
  });
  const double dates = seconds([&] {
    for (const std::string& batch : batches) discourse = read_dates(batch, language.dates(), discourse).after;
  });
  const double terms = seconds([&] {
    each_turn([&](std::string_view text) {
      places.find(text);
      equipment.find(text);
    });
  });
  const double reading = seconds([&] { claims = propose_claims(context, transcript, sentences); });
  std::int64_t words = 0;
  each_turn([&](std::string_view text) {
    for (const Token& token : tokenize(text)) words += token.kind != Token::Kind::mark;
  });

  std::printf("%.1f MB, %lld words, %zu sentences (ICU %lld), %zu claims\n", size, static_cast<long long>(words),
              sentences.size(), static_cast<long long>(count), claims.size());
  const double whole = split + reading;
  const auto line = [&](const char* name, double time) {
    std::printf("%-44s %7.1f MB/s %6.2f of the ICU pass %5.1f %% of the whole\n", name, size / time, time / icu,
                time / whole * 100);
  };
  line("bare ICU sentence pass", icu);
  line("sentences with abbreviations and remarks", split);
  line("tokens alone", token_pass);
  line("dates alone", dates);
  line("terms of two lists alone, as mentions", terms);
  line("claims, dates and terms included", reading);
  line("the whole: sentences and claims", whole);
  std::printf("an hour's interview of 10000 words: %.2f ms\n", whole / static_cast<double>(words) * 10000 * 1000);
  return 0;
}
