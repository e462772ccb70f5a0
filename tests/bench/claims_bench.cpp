// How fast claims are read, beside a bare ICU sentence pass over the same text in the same run, and the share of each
// stage. Usage: claims_bench [CORPUS [MEGABYTES]]; the transcripts of the corpus folder are repeated to the size wanted.
#include <unicode/brkiter.h>
#include <unicode/utext.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "gold/corpus.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/language/claims.h"
#include "witnessmark/language/date_expression.h"
#include "witnessmark/language/tokens.h"
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

/// All transcripts of the corpus one after the other, as often as needed.
Transcript long_talk(const gold::Corpus& corpus, std::size_t wanted) {
  const SystemFileReader files;
  std::vector<Transcript> transcripts;
  for (const Interview& interview : corpus.file.interviews) {
    const std::string path = corpus.folder + interview.transcript_path;
    transcripts.push_back(read_transcript(files.read(path).value(), path).value());
  }
  Transcript all;
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
  return all;
}

}  // namespace

int main(int argc, char** argv) {
  const std::string folder = argc > 1 ? argv[1] : "corpus-demo";
  const double megabytes = argc > 2 ? std::atof(argv[2]) : 10;
  if (megabytes <= 0) {
    std::fprintf(stderr, "usage: claims_bench [CORPUS [MEGABYTES]]: \"%s\" is no size\n", argv[2]);
    return 2;
  }
  const gold::Corpus corpus = gold::read_corpus(folder + "/");
  if (corpus.file.interviews.empty()) {
    std::fprintf(stderr, "%s has no interviews\n", folder.c_str());
    return 2;
  }
  const Transcript transcript = long_talk(corpus, static_cast<std::size_t>(megabytes * 1e6));
  const Language language =
      std::move(Language::load(SystemFileReader(), folder + "/../shared/language/en")).value();
  const TermFinder places(corpus.lists.places, language);
  const TermFinder equipment(corpus.lists.equipment, language);
  ReadingContext context = gold::context_of(corpus, language, places, equipment);
  context.interview = &corpus.file.interviews.front();

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
  Discourse talk;
  talk.speech_time = context.interview->date.value;
  talk.events = corpus.evidence.events;
  // As the reader of claims does it: many turns in one call.
  std::vector<std::string> batches(1);
  each_turn([&](std::string_view text) {
    if (batches.back().size() > (1U << 16)) batches.emplace_back();
    batches.back().append(text).append(" | ");
  });
  const double dates = seconds([&] {
    DateReader reader(language.dates(), talk);
    std::vector<DateExpression> expressions;
    for (const std::string& batch : batches) reader.read(batch, expressions);
  });
  const double terms = seconds([&] {
    each_turn([&](std::string_view text) {
      places.find(text);
      equipment.find(text);
    });
  });
  context.by_weights = false;
  const double by_rules = seconds([&] { claims = propose_claims(context, transcript, sentences); });
  context.by_weights = true;
  const double reading = seconds([&] { claims = propose_claims(context, transcript, sentences); });
  std::int64_t words = 0;
  each_turn([&](std::string_view text) {
    for (const Token& token : tokenize(text)) words += token.kind != Token::Kind::mark;
  });

  std::printf("%.1f MB, %lld words, %zu sentences (ICU %lld), %zu claims\n", size, static_cast<long long>(words),
              sentences.size(), static_cast<long long>(count), claims.size());
  const double whole = split + reading;
  const auto line = [&](const char* name, double time) {
    std::printf("%-48s %7.1f MB/s %6.2f of the ICU pass %5.1f %% of the whole\n", name, size / time, time / icu,
                time / whole * 100);
  };
  line("bare ICU sentence pass", icu);
  line("sentences with abbreviations and remarks", split);
  line("tokens alone", token_pass);
  line("dates alone", dates);
  line("terms of two lists alone, as mentions", terms);
  line("claims by rules alone, dates and terms included", by_rules);
  line("claims, by weights too", reading);
  line("the whole: sentences and claims", whole);
  std::printf("an hour's interview of 10000 words: %.2f ms\n", whole / static_cast<double>(words) * 10000 * 1000);
  return 0;
}
