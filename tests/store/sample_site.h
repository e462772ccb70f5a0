#pragma once
#include <doctest/doctest.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/store/verify.h"

// A small site of our own for tests of the store: the invented lighthouse tender Guillemot.

namespace witnessmark::sample {

/// A folder that goes with everything in it.
class TemporaryFolder {
 public:
  explicit TemporaryFolder(const std::filesystem::path& within = std::filesystem::temp_directory_path()) {
    std::string name = (within / "witnessmark-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;

  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }
  std::vector<std::string> files() const {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(path_)) {
      names.push_back(entry.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
  }

 private:
  std::filesystem::path path_;
};

inline Editor editor(const std::string& name = "A. Coder", std::uint64_t seed = 1) {
  return {name, seeded_random(seed), [] { return std::string("2031-05-04T10:00:00Z"); }};
}

inline SiteFile site_in_memory(std::uint64_t seed = 1) {
  auto site = SiteFile::create(":memory:", {{}, "Tender Guillemot", "2031-05-04", "built-in"},
                               editor("A. Coder", seed));
  REQUIRE(site.ok());
  return std::move(site).value();
}

template <typename T>
T must(Result<T> result) {
  if (!result.ok()) FAIL(to_string(result.error()));
  return std::move(result).value();
}
inline void must(Result<void> result) {
  if (!result.ok()) FAIL(to_string(result.error()));
}

inline Dated dated(const std::string& edtf) {
  return {"", must(parse_edtf(edtf)), Calendar::gregorian};
}

inline InterviewFile interview_file() {
  InterviewFile file;
  Person aske;
  aske.key = "aske";
  aske.name = "Marit Aske";
  aske.birth = dated("1931");
  aske.service.push_back({"aske", dated("1952-03/1958"), "deckhand", ""});
  Person brandt;
  brandt.key = "brandt";
  brandt.name = "Ole Brandt";
  file.persons = {aske, brandt};
  Interview first;
  first.key = "aske-1";
  first.narrators = {"aske"};
  first.interviewers = {"brandt"};
  first.date = dated("1998-05-04");
  first.access.access = Access::open;
  first.shown_beforehand = {"album"};
  first.recording_length = Millisecond{3600000};
  Interview second = first;
  second.key = "aske-2";
  second.session = 2;
  second.recording_length.reset();
  second.access = {Access::closed, must(parse_edtf("2040")), "until her death"};
  file.interviews = {first, second};
  file.speakers = {{"aske-1", "AT", "aske", SpeakerRole::narrator},
                   {"aske-1", "OB", "brandt", SpeakerRole::interviewer}};
  file.releases = {{"aske-1", "aske", Release::signed_release, "research", Naming::pseudonym, "",
                    must(parse_edtf("2035")), "", ""}};
  file.passages = {
      {"aske-1", "the mate was drunk", {}, {Access::restricted, std::nullopt, ""}, "a living person"}};
  return file;
}

inline const std::string kTalk =
    "We had the crane on the foredeck until the yard took it off in sixty-two.\n"
    "And the lamp?\n"
    "The lamp was brass. Once the mate was drunk, and it went over the side.\n"
    "Was that at Caf\u00e9 Skagen\u2019s quay?\n";

/// One turn for each line, one sentence for each turn, ten seconds each.
inline TranscriptFile transcript_file(const std::string& interview, const std::string& text) {
  TranscriptFile file;
  file.interview = interview;
  file.name = interview + ".txt";
  file.original = "\xef\xbb\xbf" + text;
  file.transcript.reading_text = text;
  file.transcript.reader = "text";
  file.transcript.encoding_remark = "UTF-8";
  const CodePointIndex index(text);
  std::size_t begin = 0;
  for (std::int64_t n = 0; begin < text.size(); ++n) {
    const std::size_t end = text.find('\n', begin);
    const auto range = index.to_code_points(
        {ByteOffset{static_cast<std::int64_t>(begin)}, ByteOffset{static_cast<std::int64_t>(end)}});
    const TimeRange time{Millisecond{n * 10000}, Millisecond{(n + 1) * 10000}};
    file.transcript.utterances.push_back({n % 2 == 0 ? "AT" : "OB", range, time, Timing::stated});
    file.transcript.marks.push_back({range.begin, time.begin});
    file.sentences.push_back({static_cast<std::size_t>(n), range, time, Timing::interpolated});
    begin = end + 1;
  }
  return file;
}

inline CodePointRange range_of(const std::string& text, const std::string& words) {
  const std::size_t at = text.find(words);
  REQUIRE(at != std::string::npos);
  return CodePointIndex(text).to_code_points(
      {ByteOffset{static_cast<std::int64_t>(at)}, ByteOffset{static_cast<std::int64_t>(at + words.size())}});
}

/// Every field set to something, so that a field the store forgets shows.
inline Claim claim(const std::string& interview, const std::string& text, const std::string& quote,
                   Statement statement = Statement::ends) {
  Claim c;
  c.interview = interview;
  c.speaker = "aske";
  c.knower = "the bosun";
  c.statement = statement;
  c.subject = "crane";
  c.subject_words = "the crane";
  c.place = "foredeck";
  c.place_words = "on the foredeck";
  c.when.dated = {"in sixty-two", must(parse_edtf("1962")), Calendar::gregorian};
  c.when.reading = Reading::within;
  c.when.period = to_period(*c.when.dated.value, default_date_policy());
  c.when.rule = "spoken-year";
  c.when.anchor = "the interview";
  c.when.carried = true;
  c.when.alternatives = {"1862", "196X"};
  c.quantity = Quantity{1, 2, "one or two"};
  c.attribute = "colour: buff";
  c.basis = Basis::told;
  c.firmness = Firmness::hedged;
  c.polarity = Polarity::denied;
  c.led = true;
  c.subject_carried = true;
  c.place_carried = true;
  c.withdrawn = true;
  c.quotes = {range_of(text, quote), range_of(text, "the lamp")};
  c.mentions = {{MentionKind::equipment, range_of(text, "crane"), "crane", "list", true},
                {MentionKind::cue, range_of(text, "until"), "until", "cue", false}};
  c.reason = "ends: \"took it off\"";
  c.rank = 3;
  c.ordinal = 0;
  return c;
}

inline Register evidence() {
  Register all;
  Source photo;
  photo.key = "album";
  photo.kind = SourceKind::photograph;
  photo.title = "Crew album";
  photo.date = dated("1961~");
  Source log;
  log.key = "log-1962";
  log.kind = SourceKind::log;
  log.title = "Deck log";
  all.sources = {photo, log};
  all.derivations = {{"album", "aske-1", "captions"}};
  Entry first;
  first.key = "e1";
  first.source = "album";
  first.statement = Statement::present;
  first.subject = "crane";
  first.place = "foredeck";
  first.when = {"summer 61", must(parse_edtf("1961-22")), Calendar::julian};
  first.reading = Reading::throughout;
  first.identification = Identification::probable;
  first.date_rests_on = {"crane"};
  first.caption_rests_on = {"aske-1"};
  first.identification_rests_on = {"e2"};
  first.spot_visible = SpotVisible::partly;
  first.fabric = Fabric::restored;
  first.number = 2;
  first.over = {"e2"};
  Entry second;
  second.key = "e2";
  second.source = "log-1962";
  second.nature = Nature::intended;
  all.entries = {first, second};
  Stay stay;
  stay.key = "s1";
  stay.source = "log-1962";
  stay.locations = {"Skagen", "the Skaw"};
  stay.when = dated("1962-08/1962-09");
  all.itinerary = {stay};
  NamedEvent yard;
  yard.key = "yard";
  yard.name = "Yard period";
  yard.spoken = {"the yard"};
  yard.when = dated("1962");
  all.events = {yard};
  return all;
}

inline AuthorityList places() {
  Term deck;
  deck.key = "foredeck";
  deck.name = "Foredeck";
  deck.number = "01";
  deck.scheme = NumberScheme::local;
  deck.former_names = {{"Well deck", dated("1938/1951")}};
  deck.spoken = {"up forward"};
  Term ship;
  ship.key = "ship";
  ship.name = "The tender";
  deck.broader = "ship";
  return {AuthorityList::Kind::places, {ship, deck}};
}

/// Interviews, one transcript, evidence, places and two proposals.
inline SiteFile filled_site(std::uint64_t seed = 1) {
  SiteFile site = site_in_memory(seed);
  must(save_interviews(site, interview_file()));
  must(save_transcript(site, transcript_file("aske-1", kTalk)));
  must(save_register(site, evidence()));
  must(save_list(site, places()));
  must(replace_proposals(
      site, "aske-1",
      {claim("aske-1", kTalk, "We had the crane"), claim("aske-1", kTalk, "The lamp was brass")}));
  return site;
}

inline std::vector<std::string> findings(const SiteFile& site) {
  std::vector<std::string> lines;
  for (const Finding& finding : verify(site).findings) lines.push_back(to_string(finding));
  return lines;
}

/// A file opened behind the store's back.
class RawFile {
 public:
  explicit RawFile(const std::filesystem::path& path) {
    REQUIRE(sqlite3_open(path.c_str(), &handle_) == SQLITE_OK);
  }
  ~RawFile() { sqlite3_close(handle_); }
  RawFile(const RawFile&) = delete;
  RawFile& operator=(const RawFile&) = delete;

  /// "ok", or SQLite's message.
  std::string run(const std::string& sql) {
    char* message = nullptr;
    const int code = sqlite3_exec(handle_, sql.c_str(), nullptr, nullptr, &message);
    std::string text = code == SQLITE_OK ? "ok" : message;
    sqlite3_free(message);
    return text;
  }

 private:
  sqlite3* handle_ = nullptr;
};

}  // namespace witnessmark::sample
