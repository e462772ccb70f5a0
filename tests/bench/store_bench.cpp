#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <functional>
#include <string>

#include "bench/must.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/review_rows.h"
#include "witnessmark/store/search.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/store/undo.h"
#include "witnessmark/store/verify.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/store/workplace.h"

// A synthetic site: so many interviews of so many turns, a claim in every tenth turn or so, entries,
// weighings. Prints what each kind of writing and reading costs, on the disk of the folder given (or the
// temporary one).
//
//   store_bench [INTERVIEWS [CLAIMS-PER-INTERVIEW [FOLDER [keep]]]]      keep: leaves the file, for terminal_bench

using namespace witnessmark;

namespace {

constexpr int kTurns = 400;

/// Of the processor, so that what else the machine does matters less.
double seconds(const std::function<void()>& work) {
  const std::clock_t begin = std::clock();
  work();
  return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

/// By the clock on the wall: for what waits for the disk.
double wall_seconds(const std::function<void()>& work) {
  const auto begin = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

std::string key_of(int n) {
  return fmt::format("interview-{:04}", n);
}

TranscriptFile transcript(int n) {
  static constexpr const char* kWords[] = {"crane", "lamp",   "davit", "boat", "mast",  "galley",
                                           "winch", "paint",  "yard",  "buoy", "chain", "fog",
                                           "bell",  "signal", "quay",  "storm"};
  TranscriptFile file;
  file.interview = key_of(n);
  file.name = file.interview + ".txt";
  std::uint32_t state = static_cast<std::uint32_t>(n) * 2654435761U + 1;
  std::string& text = file.transcript.reading_text;
  for (int turn = 0; turn < kTurns; ++turn) {
    const auto begin = static_cast<std::int64_t>(text.size());
    for (int word = 0; word < 25; ++word) {
      state = state * 1664525U + 1013904223U;
      text += fmt::format("{}{}{}", word == 0 ? "" : " ", kWords[(state >> 16) % 16],
                          (state >> 24) % 12 == 0 ? "s" : "");
    }
    const CodePointRange range{CodePoint{begin}, CodePoint{static_cast<std::int64_t>(text.size())}};
    const TimeRange time{Millisecond{turn * 9000}, Millisecond{turn * 9000 + 9000}};
    file.transcript.utterances.push_back({turn % 2 == 0 ? "AT" : "OB", range, time, Timing::stated});
    file.transcript.marks.push_back({range.begin, time.begin});
    for (int part = 0; part < 2; ++part) {
      const std::int64_t middle = begin + range.length() / 2;
      file.sentences.push_back({static_cast<std::size_t>(turn),
                                part == 0 ? CodePointRange{range.begin, CodePoint{middle}}
                                          : CodePointRange{CodePoint{middle}, range.end},
                                time, Timing::interpolated});
    }
    text += ".\n";
  }
  file.original = text;
  return file;
}

std::vector<Claim> claims(int n, int count) {
  std::vector<Claim> all;
  const Edtf year = edtf_year(1962);
  for (int i = 0; i < count; ++i) {
    Claim claim;
    claim.interview = key_of(n);
    claim.speaker = "aske";
    claim.statement = static_cast<Statement>(i % 7);
    claim.subject = fmt::format("thing-{}", i % 120);
    claim.subject_words = "the crane";
    claim.place = fmt::format("place-{}", i % 80);
    claim.place_words = "on the foredeck";
    claim.when.dated = {"in sixty-two", year, Calendar::gregorian};
    claim.when.period = to_period(year, default_date_policy());
    claim.when.rule = "spoken-year";
    const std::int64_t at = i * 37;
    claim.quotes = {{CodePoint{at}, CodePoint{at + 90}}};
    claim.mentions = {
        {MentionKind::equipment, {CodePoint{at}, CodePoint{at + 5}}, "crane", "list", false},
        {MentionKind::place, {CodePoint{at + 9}, CodePoint{at + 14}}, "foredeck", "list", false},
        {MentionKind::date, {CodePoint{at + 20}, CodePoint{at + 30}}, "1962", "spoken-year", false}};
    claim.reason = "ends: \"took it off\"";
    claim.ordinal = i;
    all.push_back(std::move(claim));
  }
  return all;
}

/// The same turns straight into SQLite: as an index of the words alone, and as rows alone.
void compare_with_bare_sqlite(const std::vector<TranscriptFile>& transcripts, double taking) {
  sqlite3* handle = nullptr;
  sqlite3_open(":memory:", &handle);
  sqlite3_exec(handle,
               "CREATE VIRTUAL TABLE f USING fts5 (w, content = '', columnsize = 0, tokenize = 'unicode61 "
               "remove_diacritics 2'); CREATE TABLE t (a, b, "
               "c, d, e, f, g);"
               "INSERT INTO f (f, rank) VALUES ('hashsize', 8388608); BEGIN",
               nullptr, nullptr, nullptr);
  const auto insert = [&](const char* sql,
                          const std::function<void(sqlite3_stmt*, const TranscriptFile&)>& each) {
    sqlite3_stmt* statement = nullptr;
    sqlite3_prepare_v2(handle, sql, -1, &statement, nullptr);
    const double spent = seconds([&] {
      for (const TranscriptFile& file : transcripts) each(statement, file);
      sqlite3_exec(handle, "COMMIT; BEGIN", nullptr, nullptr, nullptr);
    });
    sqlite3_finalize(statement);
    return spent;
  };
  std::int64_t number = 0;
  const double index =
      insert("INSERT INTO f (w, rowid) VALUES (?, ?)",
             [&number](sqlite3_stmt* statement, const TranscriptFile& file) {
               for (const Utterance& u : file.transcript.utterances) {
                 const char* words = file.original.data() + u.range.begin.value;  // the talk is ASCII
                 sqlite3_bind_text(statement, 1, words, static_cast<int>(u.range.length()), SQLITE_STATIC);
                 sqlite3_bind_int64(statement, 2, ++number);
                 if (sqlite3_step(statement) != SQLITE_DONE) std::exit(1);
                 sqlite3_reset(statement);
               }
             });
  const double rows = insert(
      "INSERT INTO t VALUES (?, ?, ?, ?, ?, ?, ?)", [](sqlite3_stmt* statement, const TranscriptFile& file) {
        const std::size_t count = file.transcript.utterances.size() * 3 + file.sentences.size();
        for (std::size_t i = 0; i < count; ++i) {
          for (int column = 1; column <= 7; ++column)
            sqlite3_bind_int64(statement, column, static_cast<int>(i) + column);
          sqlite3_step(statement);
          sqlite3_reset(statement);
        }
      });
  sqlite3_close(handle);
  fmt::print(
      "          bare FTS5 of the same turns {:.2f} s ({:.0f} % of taking in), as many bare rows {:.2f} s "
      "({:.0f} %)\n",
      index, 100 * index / taking, rows, 100 * rows / taking);
}

void fill(SiteFile& site, int interviews, int per_interview) {
  InterviewFile file;
  Person person;
  person.key = "aske";
  person.name = "Marit Aske";
  file.persons = {person};
  for (int n = 0; n < interviews; ++n) {
    Interview interview;
    interview.key = key_of(n);
    interview.narrators = {"aske"};
    interview.date.value = edtf_year(1998);
    interview.access.access = Access::open;
    file.interviews.push_back(interview);
    NarratorRelease release;
    release.interview = interview.key;
    release.person = "aske";
    release.release = Release::signed_release;
    file.releases.push_back(release);
  }
  must(save_interviews(site, file));

  std::vector<TranscriptFile> transcripts;
  std::size_t bytes = 0;
  for (int n = 0; n < interviews; ++n) bytes += transcripts.emplace_back(transcript(n)).original.size();
  const double megabytes = static_cast<double>(bytes) / 1e6;
  const double taking = seconds([&] {
    SiteTransaction transaction(site);
    for (const TranscriptFile& each : transcripts) must(save_transcript(site, each));
    transaction.commit();
  });
  fmt::print("take in   {:7.1f} MB, {} turns, {} sentences: {:.2f} s, {:.1f} MB/s\n", megabytes,
             interviews * kTurns, interviews * kTurns * 2, taking, megabytes / taking);
  compare_with_bare_sqlite(transcripts, taking);

  Register evidence;
  Source source;
  source.key = "log";
  evidence.sources = {source};
  for (int i = 0; i < 20000; ++i) {
    Entry entry;
    entry.key = fmt::format("e{}", i);
    entry.source = "log";
    entry.subject = fmt::format("thing-{}", i % 120);
    entry.when.value = edtf_year(1950 + i % 30);
    evidence.entries.push_back(std::move(entry));
  }
  const double entering = seconds([&] { must(save_register(site, evidence)); });
  fmt::print("evidence  20000 entries: {:.2f} s, {:.0f} rows/s\n", entering, 20000 / entering);

  std::vector<std::vector<Claim>> proposals;
  for (int n = 0; n < interviews; ++n) proposals.push_back(claims(n, per_interview));
  const int total = interviews * per_interview;
  const auto propose = [&] {
    SiteTransaction transaction(site);
    for (int n = 0; n < interviews; ++n)
      must(replace_proposals(site, key_of(n), proposals[static_cast<std::size_t>(n)]));
    transaction.commit();
  };
  const double proposing = seconds(propose);
  fmt::print("propose   {} claims: {:.2f} s, {:.0f} claims/s ({:.0f} rows/s)\n", total, proposing,
             total / proposing, total * 4 / proposing);
  const double again = seconds(propose);
  fmt::print("again     nothing changed: {:.2f} s, {:.2f} of the first time\n", again, again / proposing);
}

void weigh(SiteFile& site) {
  std::vector<Weighing> weighings;
  for (const Id& id : claims_to_weigh(site)) {
    Weighing weighing;
    weighing.claim = id;
    for (int i = 0; i < 5; ++i) {
      Comparison comparison;
      comparison.claim = id;
      comparison.entry = fmt::format("e{}", (id.bytes[0] * 7 + i * 131) % 20000);
      comparison.outcome = Outcome::compatible;
      weighing.comparisons.push_back(std::move(comparison));
    }
    weighings.push_back(std::move(weighing));
  }
  const double saving = seconds([&] { must(save_weighings(site, weighings)); });
  fmt::print("weigh     {} comparisons: {:.2f} s, {:.0f} rows/s\n", weighings.size() * 5, saving,
             static_cast<double>(weighings.size()) * 6 / saving);
  const double asking = seconds([&] { claims_to_weigh(site); });
  fmt::print("nothing to weigh, found out in {:.1f} ms\n", asking * 1e3);
  const double one = seconds([&] { must(save_weighings(site, {weighings[weighings.size() / 2]})); });
  fmt::print("one claim weighed anew: {:.2f} ms\n", one * 1e3);
}

/// One synced write of 4 KiB, on the average.
double synced_write(const std::filesystem::path& path) {
  const int file = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  const std::string page(4096, 'x');
  const double spent = wall_seconds([&] {
    for (int i = 0; i < 100; ++i) {
      if (::pwrite(file, page.data(), page.size(), i * 4096) < 0 || ::fdatasync(file) != 0) std::exit(1);
    }
  });
  ::close(file);
  std::filesystem::remove(path);
  return spent / 100;
}

void decide(SiteFile& site) {
  const std::vector<Id> ids = [&] {
    std::vector<Id> found;
    for_each_claim(site, {.interviews = {key_of(0)}, .with_mentions = false},
                   [&](const StoredClaim& stored) { found.push_back(stored.claim.id); });
    return found;
  }();
  const std::size_t count = std::min<std::size_t>(200, ids.size());
  const double deciding = wall_seconds([&] {
    for (std::size_t i = 0; i < count; ++i) {
      Claim claim = find_claim(site, ids[i])->claim;
      claim.status = ClaimStatus::said_so;
      must(decide_claim(site, claim, ""));
    }
  });
  const double one = deciding / static_cast<double>(count);
  const double bare = synced_write(site.path().string() + ".probe");
  fmt::print(
      "decide    {} times, each on the disk: {:.2f} ms each, {:.1f} times a bare synced write of 4 KiB "
      "({:.2f} ms)\n",
      count, one * 1e3, one / bare, bare * 1e3);
}

/// What a list in the terminal asks for, against a bare read of the same rows by their numbers.
void page(const SiteFile& site, const std::filesystem::path& path) {
  struct Asked {
    const char* what;
    ReviewRequest request;
  };
  const std::vector<ReviewRow> all = review_rows(site, {.limit = 1000000});
  const ReviewRow& middle = all[all.size() / 2];
  const Asked asked[] = {
      {"first page", {}},
      {"after a row in the middle", {.after = middle}},
      {"before it", {.before = middle}},
      {"by offset, the last", {.offset = all.size() - 100}},
      {"one interview", {.interview = key_of(0)}},
      {"one thing", {.subjects = {"thing-7"}}},
      {"two things", {.subjects = {"thing-7", "thing-8"}}},
      {"one place", {.places = {"place-3"}}},
      {"one speaker and statement", {.speakers = {"aske"}, .statement = Statement::count}},
      {"said so", {.status = ClaimStatus::said_so}},
      {"misread: none", {.status = ClaimStatus::misread}},
      {"thing, place, status: few",
       {.subjects = {"thing-7"}, .places = {"place-7"}, .status = ClaimStatus::proposed}},
      {"outcome", {.outcome = Outcome::compatible}},
  };
  sqlite3* bare = nullptr;
  if (sqlite3_open_v2(path.c_str(), &bare, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK) std::exit(1);
  for (const Asked& each : asked) {
    constexpr int kTimes = 20;
    std::vector<ReviewRow> rows;
    const double paging = seconds([&] {
      for (int i = 0; i < kTimes; ++i) rows = review_rows(site, each.request);
    });
    std::string sql = "SELECT * FROM claims WHERE claim IN (0";
    for (const ReviewRow& row : rows) sql += "," + std::to_string(row.row);
    sql += ")";
    const double reading = seconds([&] {
      for (int i = 0; i < kTimes; ++i)
        sqlite3_exec(
            bare, sql.c_str(), [](void*, int, char**, char**) { return 0; }, nullptr, nullptr);
    });
    fmt::print("page      {}, {} rows of {}: {:.2f} ms, {:.1f} times a bare read of these rows\n", each.what,
               rows.size(), all.size(), paging / kTimes * 1e3, paging / reading);
  }
  sqlite3_close(bare);
  const double counting = seconds([&] { count_claims(site); });
  fmt::print("count     claims by interview, status and statement: {:.1f} ms\n", counting * 1e3);
  const double matching = seconds([&] { count_review_rows(site, {.statement = Statement::count}); });
  fmt::print("count     of one statement: {:.1f} ms\n", matching * 1e3);
}

/// What a coder does, each on the disk, in times of one decision; the workplace waits for no disk.
void undo_and_stand(SiteFile& site) {
  constexpr int kTimes = 100;
  const double undoing = wall_seconds([&] {
    for (int i = 0; i < kTimes; ++i) must(undo(site));
  });
  const double redoing = wall_seconds([&] {
    for (int i = 0; i < kTimes; ++i) must(redo(site));
  });
  const double standing = wall_seconds([&] {
    for (int i = 0; i < kTimes; ++i) must(save_workplace(site, "Bench", fmt::format("{{\"step\":{}}}", i)));
  });
  const double bare = synced_write(site.path().string() + ".probe");
  fmt::print(
      "undo      {:.2f} ms, redo {:.2f} ms, workplace {:.3f} ms each; {:.1f}, {:.1f}, {:.2f} times a bare "
      "synced write\n",
      undoing / kTimes * 1e3, redoing / kTimes * 1e3, standing / kTimes * 1e3, undoing / kTimes / bare,
      redoing / kTimes / bare, standing / kTimes / bare);
}

void read(const std::filesystem::path& path) {
  std::optional<SiteFile> site;
  const double opening = wall_seconds([&] { site.emplace(must(SiteFile::read(path))); });
  fmt::print("open      {:.1f} ms\n", opening * 1e3);
  std::size_t count = 0;
  const double loading =
      seconds([&] { for_each_claim(*site, {}, [&count](const StoredClaim&) { ++count; }); });
  fmt::print("load      {} claims with mentions: {:.2f} s\n", count, loading);
  const double by_subject = seconds([&] { count = load_claims(*site, {.subjects = {"thing-7"}}).size(); });
  fmt::print("one thing {} claims: {:.1f} ms\n", count, by_subject * 1e3);
  page(*site, path);
  const double searching = seconds([&] { count = search_talk(*site, {"\"crane lamp\" buoy"}).size(); });
  fmt::print("search    phrase and word, first {} hits: {:.1f} ms\n", count, searching * 1e3);
  const double verifying = seconds([&] { count = verify(*site).findings.size(); });
  fmt::print("verify    {} findings: {:.2f} s\n", count, verifying);
}

}  // namespace

int main(int count, char** arguments) {
  const int interviews = count > 1 ? std::atoi(arguments[1]) : 100;
  const int per_interview = count > 2 ? std::atoi(arguments[2]) : 100;
  const std::filesystem::path folder = count > 3 ? arguments[3] : std::filesystem::temp_directory_path();
  const auto path = folder / "witnessmark-bench.site";
  std::filesystem::remove(path);
  {
    SiteFile site = must(SiteFile::create(path, {{}, "Bench", "", ""}, {"Bench", seeded_random(1), {}}));
    fill(site, interviews, per_interview);
    weigh(site);
    decide(site);
    undo_and_stand(site);
    const double closing = seconds([&] { const SiteFile closed = std::move(site); });
    fmt::print("close     {:.2f} s\n", closing);
  }
  fmt::print("size      {:.1f} MB\n", static_cast<double>(std::filesystem::file_size(path)) / 1e6);
  read(path);
  if (count <= 4) std::filesystem::remove(path);
}
