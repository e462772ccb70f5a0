// Any bytes as a transcript, cut into utterances at line ends, read under a small site's lists. Claims must stay inside
// the text, have a subject or a place, and come out the same twice.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/decode.h"
#include "witnessmark/language/claims.h"

using namespace witnessmark;

namespace {

#ifndef WITNESSMARK_SOURCE_DIR
#define WITNESSMARK_SOURCE_DIR "."
#endif

Term term(const char* name, const char* number = "") {
  Term made;
  made.key = made.name = name;
  made.number = number;
  return made;
}

/// Loaded once: WITNESSMARK_LANGUAGE names the folder, else it is looked for in the source tree.
const Language& language() {
  static const Language loaded = [] {
    const char* folder = std::getenv("WITNESSMARK_LANGUAGE");
    const std::string path = folder ? folder : WITNESSMARK_SOURCE_DIR "/shared/language/en";
    return std::move(Language::load(SystemFileReader(), path)).value();
  }();
  return loaded;
}

void require(bool truth) {
  if (!truth) std::abort();
}

Transcript transcript_of(const std::string& text) {
  Transcript transcript;
  transcript.reading_text = text;
  const CodePointIndex index(transcript.reading_text);
  std::size_t begin = 0;
  bool question = true;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    if (end > begin) {
      transcript.utterances.push_back({question ? "Q" : "A",
                                       index.to_code_points({{static_cast<std::int64_t>(begin)}, {static_cast<std::int64_t>(end)}}),
                                       std::nullopt, Timing::none});
    }
    question = !question;
    begin = end + 1;
  }
  const std::size_t open = text.find('[');
  const std::size_t close = open == std::string::npos ? open : text.find(']', open);
  if (close != std::string::npos) {
    transcript.remarks.push_back({index.to_code_points({{static_cast<std::int64_t>(open)}, {static_cast<std::int64_t>(close + 1)}})});
  }
  return transcript;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const TermFinder places(
      AuthorityList(AuthorityList::Kind::places, {term("Lamp room", "2-10-1-L"), term("No. 2 hold"), term("Yard")}), language());
  static const TermFinder equipment(
      AuthorityList(AuthorityList::Kind::equipment, {term("Crane"), term("Fog bell"), term("300 mm lamp"), term("Funnel")}),
      language());
  const auto decoded = decode_text({reinterpret_cast<const char*>(data), size}, "fuzz");
  if (!decoded) return 0;
  const Transcript transcript = transcript_of(decoded->text);
  static const std::vector<std::vector<std::string>> locations{{"Port Hennet"}};
  Interview interview;
  interview.narrators = {"n"};
  interview.date.value = edtf_year(1995);
  ReadingContext context;
  context.language = &language();
  context.places = &places;
  context.equipment = &equipment;
  context.interview = &interview;
  context.locations = locations;
  const auto sentences = split_sentences(transcript, language().abbreviations());
  const Proposals first = read_claims(context, transcript, sentences);
  const std::int64_t length = CodePointIndex(transcript.reading_text).size().value;
  const auto inside = [length](CodePointRange range) {
    return range.begin.value >= 0 && range.begin.value <= range.end.value && range.end.value <= length;
  };
  for (const Claim& claim : first.claims) {
    require(!claim.quotes.empty() && !claim.reason.empty());
    require(!claim.subject.empty() || !claim.place.empty() || !claim.place_words.empty());
    for (const CodePointRange& quote : claim.quotes) require(inside(quote) && !quote.empty());
    for (const Mention& mention : claim.mentions) require(inside(mention.range));
  }
  for (const Mention& mention : first.mentions) require(inside(mention.range));
  require(read_claims(context, transcript, sentences).claims == first.claims);
  return 0;
}
