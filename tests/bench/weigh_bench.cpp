// How weighing grows with the site file: claims, a fifth as many entries, and 5, 20 or 167 entries to a thing.
// Printed for each size: weighing from cold, beside a bare SQLite insert of as many rows as there are
// comparisons, in the same run; one changed claim and one changed entry weighed anew; the report; and the peak
// of memory of the whole, in a process of its own.
//
//   weigh_bench [CLAIMS ...]        default 1000 10000 100000
#include <fmt/format.h>
#include <sqlite3.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <random>
#include <string>

#include "witnessmark/app/bounds.h"
#include "witnessmark/app/coding_desk.h"
#include "witnessmark/app/contradictions.h"
#include "witnessmark/app/corroboration.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/store/claim_acts.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/store/weighings.h"

using namespace witnessmark;

namespace {

constexpr int kClaimsToAnInterview = 500;
constexpr int kPlaces = 80;
constexpr std::int64_t kTurn = 30;  // code points

template <typename T>
T must(Result<T> result) {
  if (!result.ok()) {
    fmt::print(stderr, "{}\n", to_string(result.error()));
    std::exit(1);
  }
  return std::move(result).value();
}
void must(Result<void> result) {
  if (!result.ok()) {
    fmt::print(stderr, "{}\n", to_string(result.error()));
    std::exit(1);
  }
}

struct Spent {
  double wall = 0, processor = 0;
};
Spent spent(const std::function<void()>& work) {
  const auto begin = std::chrono::steady_clock::now();
  const std::clock_t processor = std::clock();
  work();
  return {std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count(),
          static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC};
}

/// Things come and go on days of their own; most statements fit them, one in ten is years wrong.
class MadeUp {
 public:
  MadeUp(int claims, int entries_to_a_thing)
      : claims_(claims), entries_(claims / 5), things_(std::max(1, entries_ / entries_to_a_thing)) {
    for (int i = 0; i < things_; ++i) stays_.emplace_back(number(1930, 1950), number(1960, 1980));
  }

  void fill(SiteFile& site) {
    SiteTransaction transaction(site);
    must(save_list(site, places()));
    must(save_list(site, equipment()));
    must(save_register(site, evidence()));
    fill_interviews(site);
    transaction.commit();
  }

 private:
  int number(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
  std::string thing(int n) const { return fmt::format("thing-{}", n); }
  std::string place(int n) const { return fmt::format("place-{}", n % kPlaces); }

  AuthorityList places() {
    std::vector<Term> terms;
    for (int i = 0; i < kPlaces; ++i) {
      Term term;
      term.key = place(i);
      term.name = fmt::format("Place {}", i);
      if (i >= 8) term.broader = place(i % 8);
      terms.push_back(std::move(term));
    }
    return {AuthorityList::Kind::places, std::move(terms)};
  }

  AuthorityList equipment() {
    std::vector<Term> terms;
    for (int i = 0; i < things_; ++i) {
      Term term;
      term.key = thing(i);
      term.name = fmt::format("Thing {}", i);
      terms.push_back(std::move(term));
    }
    return {AuthorityList::Kind::equipment, std::move(terms)};
  }

  Edtf when(int year) {
    const int kind = number(0, 9);
    std::string text = fmt::format("{}", year);
    if (kind < 4) text += fmt::format("-{:02}", number(1, 12));
    if (kind < 2) text += fmt::format("-{:02}", number(1, 28));
    if (kind == 4) text += "~";
    if (kind == 5) text = fmt::format("{}/{}", year, year + number(1, 3));
    if (kind == 6) text = fmt::format("[..{}]", year);
    return must(parse_edtf(text));
  }

  std::pair<Statement, int> statement(int thing) {
    constexpr Statement kKinds[] = {Statement::begins, Statement::ends,   Statement::present,
                                    Statement::present, Statement::absent, Statement::count};
    const auto [came, went] = stays_[static_cast<std::size_t>(thing)];
    const Statement kind = kKinds[number(0, 5)];
    int year = kind == Statement::begins   ? came
               : kind == Statement::ends   ? went
               : kind == Statement::absent ? (number(0, 1) == 0 ? came - number(1, 5) : went + number(1, 5))
                                           : number(came, went);
    if (number(0, 9) == 0) year += number(-15, 15);
    return {kind, year};
  }

  Register evidence() {
    Register made;
    for (int i = 0; i < 60; ++i) {
      Source source;
      source.key = fmt::format("source-{}", i);
      source.title = fmt::format("Source {}", i);
      source.kind = static_cast<SourceKind>(i % 9);
      made.sources.push_back(std::move(source));
      if (i % 10 == 9)
        made.derivations.push_back({fmt::format("source-{}", i), fmt::format("source-{}", i - 3), ""});
    }
    for (int i = 0; i < entries_; ++i) {
      const int of = i % things_;
      const auto [kind, year] = statement(of);
      Entry entry;
      entry.key = fmt::format("e{}", i);
      entry.source = fmt::format("source-{}", number(0, 59));
      entry.subject = thing(of);
      entry.place = place(of + (number(0, 9) == 0 ? 8 : 0));
      entry.statement = kind;
      entry.when.value = when(year);
      if (kind == Statement::count) entry.number = number(1, 3);
      if (number(0, 19) == 0) entry.nature = Nature::intended;
      if (number(0, 9) == 0) entry.identification = Identification::probable;
      made.entries.push_back(std::move(entry));
    }
    return made;
  }

  void fill_interviews(SiteFile& site) {
    InterviewFile file;
    const int interviews = (claims_ + kClaimsToAnInterview - 1) / kClaimsToAnInterview;
    for (int n = 0; n < interviews; ++n) {
      Person person;
      person.key = fmt::format("narrator-{}", n);
      person.name = fmt::format("Narrator {}", n);
      person.birth.value = edtf_year(1915 + n % 25);
      ServicePeriod served;
      served.person = person.key;
      served.when.value = must(parse_edtf("1940/1975"));
      person.service.push_back(served);
      file.persons.push_back(std::move(person));
      Interview interview;
      interview.key = fmt::format("interview-{:04}", n);
      interview.narrators = {fmt::format("narrator-{}", n)};
      interview.date.value = edtf_year(1998);
      interview.access.access = Access::open;
      if (n % 10 == 0) interview.shown_beforehand = {"source-3"};
      file.interviews.push_back(interview);
      NarratorRelease release;
      release.interview = interview.key;
      release.person = interview.narrators.front();
      release.release = Release::signed_release;
      file.releases.push_back(release);
    }
    must(save_interviews(site, file));
    for (int n = 0; n < interviews; ++n) {
      const int count = std::min(kClaimsToAnInterview, claims_ - n * kClaimsToAnInterview);
      must(save_transcript(site, transcript(n, count)));
      const std::string key = fmt::format("interview-{:04}", n);
      must(replace_proposals(site, key, claims_of(n, count)));
      std::vector<Claim> reviewed;
      for (StoredClaim& stored : load_claims(site, {.interviews = {key}})) {
        stored.claim.status = ClaimStatus::said_so;
        if (number(0, 1) == 0) reviewed.push_back(std::move(stored.claim));
      }
      must(decide_many(site, reviewed, ""));
    }
  }

  TranscriptFile transcript(int n, int turns) {
    TranscriptFile file;
    file.interview = fmt::format("interview-{:04}", n);
    file.name = file.interview + ".txt";
    for (int turn = 0; turn < turns; ++turn) {
      const CodePointRange range{{turn * kTurn}, {(turn + 1) * kTurn - 1}};
      const TimeRange time{Millisecond{turn * 9000}, Millisecond{turn * 9000 + 9000}};
      file.transcript.utterances.push_back({fmt::format("narrator-{}", n), range, time, Timing::stated});
      file.sentences.push_back({static_cast<std::size_t>(turn), range, time, Timing::stated});
      file.transcript.reading_text += fmt::format("{:<29}\n", fmt::format("We had it in turn {}.", turn));
    }
    file.original = file.transcript.reading_text;
    return file;
  }

  std::vector<Claim> claims_of(int n, int count) {
    std::vector<Claim> all;
    for (int i = 0; i < count; ++i) {
      const int of = number(0, things_ - 1);
      const auto [kind, year] = statement(of);
      Claim claim;
      claim.interview = fmt::format("interview-{:04}", n);
      claim.speaker = fmt::format("narrator-{}", n);
      claim.statement = kind;
      claim.subject = thing(of);
      claim.subject_words = "it";
      if (number(0, 1) == 0) claim.place = place(of);
      claim.when.dated.value = when(year);
      claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
      if (kind == Statement::count) claim.quantity = Quantity{number(1, 3), 3, ""};
      if (number(0, 19) == 0) claim.polarity = Polarity::denied;
      const CodePointRange turn{{i * kTurn}, {(i + 1) * kTurn - 1}};
      claim.quotes = {turn};
      all.push_back(std::move(claim));
    }
    return all;
  }

  int claims_, entries_, things_;
  std::mt19937 random_{5};
  std::vector<std::pair<int, int>> stays_;
};

/// As many rows of eight numbers straight into SQLite, with an index as one would need it.
double bare_insert(const std::filesystem::path& path, std::int64_t rows) {
  std::filesystem::remove(path);
  sqlite3* handle = nullptr;
  if (sqlite3_open(path.c_str(), &handle) != SQLITE_OK) std::exit(1);
  sqlite3_exec(handle,
               "PRAGMA journal_mode = WAL; CREATE TABLE t (a, b, c, d, e, f, g, h, PRIMARY KEY (a, b)) "
               "WITHOUT ROWID; BEGIN",
               nullptr, nullptr, nullptr);
  sqlite3_stmt* insert = nullptr;
  sqlite3_prepare_v2(handle, "INSERT INTO t VALUES (?, ?, ?, ?, ?, ?, ?, ?)", -1, &insert, nullptr);
  const Spent time = spent([&] {
    for (std::int64_t i = 0; i < rows; ++i) {
      sqlite3_bind_int64(insert, 1, i / 20);
      for (int column = 2; column <= 8; ++column) sqlite3_bind_int64(insert, column, i % 20 + column);
      if (sqlite3_step(insert) != SQLITE_DONE) std::exit(1);
      sqlite3_reset(insert);
    }
    sqlite3_exec(handle, "COMMIT", nullptr, nullptr, nullptr);
  });
  sqlite3_finalize(insert);
  sqlite3_close(handle);
  std::filesystem::remove(path);
  return time.wall;
}

double peak_megabytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

void run(int claims, int entries_to_a_thing, const Surroundings& surroundings) {
  const auto path = std::filesystem::temp_directory_path() / fmt::format("weigh-bench-{}.site", getpid());
  std::filesystem::remove(path);
  const Editor editor{"Bench", seeded_random(1), {}};
  {
    SiteFile site = must(SiteFile::create(path, {{}, "Bench", "", ""}, editor));
    MadeUp(claims, entries_to_a_thing).fill(site);
  }
  const double filled = peak_megabytes();
  const auto size_before = std::filesystem::file_size(path);
  std::optional<SiteFile> site(must(SiteFile::edit(path, editor)));
  std::int64_t weighed = 0;
  const Spent cold = spent([&] { weighed = must(weigh(*site, false, surroundings)); });
  const double peak = peak_megabytes();
  std::int64_t comparisons = 0;
  for (const OutcomeCount& count : count_outcomes(*site))
    if (count.outcome != Outcome::silent) comparisons += count.count;
  const double bare = bare_insert(path.string() + ".bare", comparisons);
  fmt::print("{:>6} claims x {:>5} entries, {:>3} to a thing: {:>8} comparisons in {:6.2f} s ({:.2f} s of the "
             "processor), {:.2f} of a bare insert of as many rows\n",
             weighed, claims / 5, entries_to_a_thing, comparisons, cold.wall, cold.processor, cold.wall / bare);

  const auto stored = load_claims(*site, {.statuses = {ClaimStatus::said_so}, .with_mentions = false});
  Claim claim = stored[stored.size() / 2].claim;
  claim.when.dated.value = edtf_year(1955);
  claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
  must(decide_claim(*site, claim, ""));
  const Spent one = spent([&] { weighed = must(weigh(*site, false, surroundings)); });
  fmt::print("       one claim's date changed: {} weighed in {:.1f} ms\n", weighed, one.wall * 1e3);
  Register changed;
  changed.entries = {load_register(*site).entries[7]};
  changed.entries[0].when.value = edtf_year(1954);
  must(save_register(*site, changed));
  const Spent entry = spent([&] { weighed = must(weigh(*site, false, surroundings)); });
  fmt::print("       one entry's date changed: {} weighed in {:.1f} ms\n", weighed, entry.wall * 1e3);
  fmt::print("       site file {:.1f} MB before, {:.1f} MB after; peak of memory {:.0f} MB, {:.0f} MB before weighing\n",
             static_cast<double>(size_before) / 1e6, static_cast<double>(std::filesystem::file_size(path)) / 1e6,
             peak, filled);
  const Spent account = spent([&] { must(weighing_account(*site, surroundings)); });
  fmt::print("       report of claims {:.2f} s", account.wall);
  std::fflush(stdout);
  const Spent grades = spent([&] { must(count_grades(*site, surroundings)); });
  fmt::print(", corroboration {:.2f} s", grades.wall);
  std::fflush(stdout);
  const Spent bounds = spent([&] { must(bounds_account(*site, "", 0, surroundings)); });
  fmt::print(", bounds {:.2f} s", bounds.wall);
  std::fflush(stdout);
  const Spent sets = spent([&] { must(contradiction_account(*site, "", 0, surroundings)); });
  fmt::print(", contradictions {:.2f} s; peak {:.0f} MB\n", sets.wall, peak_megabytes());
  std::fflush(stdout);
  {
    site.reset();
    CodingDesk desk = must(CodingDesk::open(path, surroundings, false));
    claim.when.dated.value = edtf_year(1956);
    claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
    const Spent decided = spent([&] { must(desk.correct(claim, "")); });
    fmt::print("       at the desk: a corrected claim decided, weighed and on the disk in {:.1f} ms\n",
               decided.wall * 1e3);
  }
  std::filesystem::remove(path);
}

}  // namespace

int main(int count, char** arguments) {
  std::vector<int> sizes;
  for (int i = 1; i < count; ++i) sizes.push_back(std::atoi(arguments[i]));
  if (sizes.empty()) sizes = {1000, 10'000, 100'000};
  const SystemFileReader files;
  const std::filesystem::path shared = WITNESSMARK_SOURCE_DIR "/shared";
  const Surroundings surroundings{files,   shared,           shared / "language" / "en", Day{22'000},
                                  "Bench", seeded_random(2), {},                         {}};
  for (const int to_a_thing : {5, 20, 167}) {
    for (const int size : sizes) {
      std::fflush(stdout);
      const pid_t child = fork();
      if (child == 0) {
        run(size, to_a_thing, surroundings);
        std::fflush(stdout);
        _exit(0);
      }
      int status = 0;
      if (child < 0 || waitpid(child, &status, 0) < 0 || status != 0) {
        fmt::print(stderr, "a measurement ended with status {}\n", status);
        return 1;
      }
    }
  }
  return 0;
}
