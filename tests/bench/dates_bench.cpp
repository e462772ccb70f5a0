// Reading of dates beside the npm package chrono-node (pinned in tests/reference) and beside a bare ICU
// sentence pass over the same text, alternating in one run; then whether time stays linear: 1, 10 and 100 MB
// by turns, and one line of 10 MB. Figures are MB/s and ratios for people; nothing is asserted. Texts are put
// together from the lists below. Usage: dates_bench [MEGABYTES_FOR_LINEARITY]
#include <unicode/ubrk.h>
#include <unicode/utext.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <vector>

#include "witnessmark/language/date_expression.h"
#include "witnessmark/language/date_lexicon.h"
#include "witnessmark/time/edtf.h"

using namespace witnessmark;

namespace {

using Clock = std::chrono::steady_clock;
double seconds_since(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

using List = std::vector<std::string>;
const List kWho{"I",
                "we",
                "Tusk",
                "old Colley",
                "the steward",
                "the second engineer",
                "Castray",
                "the master",
                "they",
                "the yard people",
                "Norrie",
                "the lamp trimmer",
                "one of the boys",
                "the pilot",
                "my brother",
                "the cook"};
const List kDid{"painted",  "lost",    "carried",  "took down", "mended", "fitted",
                "scrubbed", "dropped", "found",    "changed",   "rigged", "stowed",
                "broke",    "oiled",   "measured", "wired up",  "cursed", "lifted"};
const List kWhat{"the old crane",     "the lamp",         "the big buoy",     "that derrick",
                 "the capstan",       "the wireless set", "the spare anchor", "the boat falls",
                 "the lens",          "the stove",        "the chart table",  "the bell",
                 "the carbide drums", "the winch",        "the ladder",       "the forward locker"};
const List kWhere{"on the foredeck",  "at Ostrey",    "in the lantern",    "by the Widow Bank",
                  "down in the hold", "at the depot", "off Farrenby",      "in the wheelhouse",
                  "alongside",        "at the pier",  "behind the funnel", "in Skarra Sound",
                  "under the bridge", "aft"};
const List kMore{"and nobody said a word",
                 "because the weather was coming up",
                 "which was a great nuisance",
                 "as far as I remember",
                 "and that was the end of it",
                 "so we had to start again",
                 "you could hear it all over the ship",
                 "but it never worked properly",
                 "and the mate was furious",
                 "with sixty fathoms of chain",
                 "and it weighed about four hundred pounds",
                 "if you see what I mean",
                 "though I may have that wrong",
                 "and the other two stood there laughing"};
const List kMonth{"January", "February", "March",     "April",   "May",      "June",
                  "July",    "August",   "September", "October", "November", "December"};
const List kSeason{"spring", "summer", "autumn", "winter"};
const List kTens{"forty", "fifty", "sixty"};
const List kOnes{"one", "two", "three", "four", "five", "six", "seven", "eight", "nine"};
const List kSince{"two years later",     "the following year",
                  "that summer",         "a couple of weeks before Christmas",
                  "the next morning",    "in the mid-fifties",
                  "when I was nineteen", "in the early sixties",
                  "that same week",      "about three years later",
                  "later that year",     "in my second year aboard",
                  "last year",           "every Sunday",
                  "for about two years"};

/// Made-up talk: no two sentences are likely to be the same.
class Talk {
 public:
  std::string sentence() {
    return capital(pick(kWho)) + " " + pick(kDid) + " " + pick(kWhat) + " " + pick(kWhere) +
           (below(2) ? ", " + pick(kMore) : "") + ".";
  }
  std::string dated() {
    const auto year = std::to_string(1940 + below(30));
    const auto spoken = pick(kTens) + "-" + pick(kOnes);
    const auto action = pick(kWho) + " " + pick(kDid) + " " + pick(kWhat) + " " + pick(kWhere);
    switch (below(9)) {
      case 0:
        return "In nineteen " + spoken + " " + action + ".";
      case 1:
        return "On the " + std::to_string(4 + below(17)) + "th of " + pick(kMonth) + " " + year + " " +
               action + ".";
      case 2:
        return capital(action) + " in " + pick(kMonth) + " " + year + ", " + pick(kMore) + ".";
      case 3:
        return "It was late in " + std::to_string(50 + below(15)) + ", " + action + ".";
      case 4:
        return "In the " + pick(kSeason) + " of " + spoken + " " + action + ".";
      case 5:
        return "By " + year + " it was gone, and " + pick(kSince) + " " + action + ".";
      case 6:
        return capital(action) + " from " + pick(kMonth) + " to " + pick(kMonth) + " of " + spoken + ".";
      default:
        return capital(pick(kSince)) + " " + action + ", " + pick(kMore) + ".";
    }
  }
  unsigned below(unsigned limit) { return static_cast<unsigned>(random_() % limit); }

 private:
  const std::string& pick(const List& list) { return list[below(static_cast<unsigned>(list.size()))]; }
  static std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 32);
    return text;
  }
  std::mt19937 random_{7};
};

/// About that many bytes of turns, one a line; one sentence in `one_in` names a date.
std::string talk(std::size_t bytes, unsigned one_in, char separator) {
  Talk speaker;
  std::string text;
  text.reserve(bytes + 512);
  while (text.size() < bytes) {
    for (unsigned sentences = 2 + speaker.below(4); sentences > 0; --sentences) {
      text += speaker.below(one_in) == 0 ? speaker.dated() : speaker.sentence();
      text += ' ';
    }
    text.back() = separator;
  }
  return text;
}

Discourse narrator() {
  Discourse talk;
  talk.policy = default_date_policy();
  talk.speech_time = parse_edtf("1998-06-15").value();
  talk.birth = parse_edtf("1932-03-02").value();
  return talk;
}

struct Timing {
  double seconds = 0;
  std::size_t found = 0;
};

/// Turn by turn, the state handed on, nothing kept: as a filter works.
Timing by_turns(const std::string& text, const DateLexicon& lexicon) {
  Timing timing;
  const auto start = Clock::now();
  DateReader reader(lexicon, narrator());
  std::vector<DateExpression> found;
  for (std::size_t begin = 0; begin < text.size();) {
    const auto end = std::min(text.find('\n', begin), text.size());
    reader.read(std::string_view(text).substr(begin, end - begin), found);
    timing.found += found.size();
    begin = end + 1;
  }
  timing.seconds = seconds_since(start);
  return timing;
}

Timing at_once(const std::string& text, const DateLexicon& lexicon) {
  const auto start = Clock::now();
  const auto reading = read_dates(text, lexicon, narrator());
  return {seconds_since(start), reading.expressions.size()};
}

Timing icu_sentences(const std::string& text) {
  Timing timing;
  UErrorCode status = U_ZERO_ERROR;
  auto* breaks = ubrk_open(UBRK_SENTENCE, "en", nullptr, 0, &status);
  const auto start = Clock::now();
  for (std::size_t begin = 0; begin < text.size();) {
    const auto end = std::min(text.find('\n', begin), text.size());
    UText* view =
        utext_openUTF8(nullptr, text.data() + begin, static_cast<std::int64_t>(end - begin), &status);
    ubrk_setUText(breaks, view, &status);
    while (ubrk_next(breaks) != UBRK_DONE) ++timing.found;
    utext_close(view);
    begin = end + 1;
  }
  timing.seconds = seconds_since(start);
  ubrk_close(breaks);
  return timing;
}

/// Nothing when node or the package is not there.
bool chrono_node(const std::filesystem::path& file, Timing& timing) {
  const auto script = std::filesystem::path(__FILE__).parent_path() / "chrono_dates.mjs";
  const auto command = "node '" + script.string() + "' '" + file.string() + "' 3 2>/dev/null";
  auto* pipe = popen(command.c_str(), "r");
  if (!pipe) return false;
  const bool read = std::fscanf(pipe, "%lf %zu", &timing.seconds, &timing.found) == 2;
  return pclose(pipe) == 0 && read;
}

void keep_best(Timing& best, const Timing& timing) {
  if (best.seconds == 0 || timing.seconds < best.seconds) best = timing;
}

void side_by_side(const char* name, unsigned one_in, const DateLexicon& lexicon) {
  constexpr std::size_t kBytes = 1'000'000;
  const auto text = talk(kBytes, one_in, '\n');
  const auto file = std::filesystem::temp_directory_path() / "witnessmark-dates-bench.txt";
  std::ofstream(file, std::ios::binary) << text;
  Timing turns, whole, icu, other;
  bool node = true;
  for (int round = 0; round < 5; ++round) {
    for (int run = 0; run < 3; ++run) {  // chrono_node() below takes the best of three as well.
      keep_best(turns, by_turns(text, lexicon));
      keep_best(whole, at_once(text, lexicon));
      keep_best(icu, icu_sentences(text));
    }
    Timing timing;
    node = node && chrono_node(file, timing);
    if (node) keep_best(other, timing);
  }
  std::filesystem::remove(file);
  const auto speed = [&](const Timing& t) { return static_cast<double>(text.size()) / 1e6 / t.seconds; };
  std::printf("%s (1 MB, %zu turns)\n", name,
              static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')));
  std::printf("  dates, turn by turn   %8.1f MB/s  %zu found\n", speed(turns), turns.found);
  std::printf("  dates, at once        %8.1f MB/s  %zu found\n", speed(whole), whole.found);
  std::printf("  ICU sentences alone   %8.1f MB/s  dates at once %.2f times as fast, by turns %.2f\n",
              speed(icu), speed(whole) / speed(icu), speed(turns) / speed(icu));
  if (node)
    std::printf(
        "  chrono-node           %8.3f MB/s  %zu found; dates at once %.1f times as fast, by turns %.1f\n",
        speed(other), other.found, speed(whole) / speed(other), speed(turns) / speed(other));
  else
    std::printf(
        "  chrono-node           skipped: node or the package is missing (npm ci in tests/reference)\n");
}

void linearity(std::size_t most, const DateLexicon& lexicon) {
  std::printf("Linearity, date-rich talk: microseconds a kilobyte\n");
  for (std::size_t megabytes = 1; megabytes <= most; megabytes *= 10) {
    const auto text = talk(megabytes * 1'000'000, 3, '\n');
    const auto timing = by_turns(text, lexicon);
    std::printf("  %3zu MB by turns        %8.2f\n", megabytes,
                timing.seconds * 1e9 / static_cast<double>(text.size()));
  }
  for (const std::size_t megabytes : {1, 10}) {
    const auto text = talk(megabytes * 1'000'000, 3, ' ');
    const auto timing = at_once(text, lexicon);
    std::printf("  %3zu MB in one line     %8.2f\n", megabytes,
                timing.seconds * 1e9 / static_cast<double>(text.size()));
  }
  const std::vector<std::pair<const char*, std::string>> hostile{
      {"\"the \"", "the "},     {"\"nineteen \"", "nineteen "},
      {"\"1957-\"", "1957-"},   {"\"two or \"", "two or "},
      {"\"early \"", "early "}, {"\"the end of \"", "the end of "},
      {"\"'\"", "'"},           {"\"a\" (one word)", "a"},
      {"digits", "7"},          {"\"May, no, \"", "May, no, "}};
  for (const auto& [name, piece] : hostile) {
    double per_kilobyte[2] = {};
    for (const std::size_t step : {0, 1}) {
      std::string text;
      while (text.size() < (step ? 4'000'000u : 400'000u)) text += piece;
      per_kilobyte[step] = at_once(text, lexicon).seconds * 1e9 / static_cast<double>(text.size());
    }
    std::printf("  %-20s 0.4 MB %8.2f   4 MB %8.2f\n", name, per_kilobyte[0], per_kilobyte[1]);
  }
}

}  // namespace

int main(int argc, char** argv) {
  const auto lexicon = DateLexicon::load(SystemFileReader(), std::filesystem::path(__FILE__).parent_path() /
                                                                 "../../shared/language/en")
                           .value();
  side_by_side("As dense as a chronicle: one sentence in two has a date", 2, lexicon);
  side_by_side("Date-rich talk: one sentence in four has a date", 4, lexicon);
  side_by_side("Date-poor prose: one sentence in fifty has a date", 50, lexicon);
  linearity(argc > 1 ? std::strtoull(argv[1], nullptr, 10) : 100, lexicon);
  return 0;
}
