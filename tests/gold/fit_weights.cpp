// Learns shared/language/en/trait-weights.tsv from the coded interviews: for each statement a logistic
// regression (liblinear; L2-regularised, primal) over the traits of every stretch of talk and of everything
// it may speak of. What coders took for a claim is the stretch most like their quote; stretches nearly as
// like are left out. Held-out interviews are not read.
//
// usage: fit_weights OUT.tsv        all coded interviews
//        fit_weights --by-site [N]  N parts of the sites (4 unless told), each read with weights from the
//        others
#include <fmt/format.h>
#include <linear.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <set>
#include <unordered_map>

#include "corpus.h"
#include "language/claims/propose.h"
#include "language/language_data.h"
#include "scoring.h"

using namespace witnessmark;
using namespace witnessmark::gold;

namespace {

namespace fs = std::filesystem;

const std::string kSource = WITNESSMARK_SOURCE_DIR;
const std::string kLanguage = kSource + "/shared/language/en";

constexpr double kCost = 0.1;            ///< liblinear's C.
constexpr std::size_t kSeenInSites = 2;  ///< A trait of one site alone teaches nothing of others.
constexpr std::size_t kSeen = 3;
constexpr int kLeastHundredths = 8;

struct CodedInterview {
  std::string site, key, coding;
};

std::vector<CodedInterview> coded_interviews() {
  std::vector<CodedInterview> all;
  const auto add = [&](const std::string& folder, std::initializer_list<const char*> keys) {
    for (const char* key : keys)
      all.push_back({kSource + folder, key, fmt::format("{}/tests/gold/{}.tsv", kSource, key)});
  };
  add("/corpus-demo/", {"lc-2001", "eb-2015", "tc-2006", "js-2012"});
  add("/tests/gold/station/", {"np-1999", "dv-2014", "hm-1989"});
  add("/tests/gold/quarry/", {"wh-1987", "rk-2011"});
  std::set<fs::path> codings;
  for (const auto& file : fs::recursive_directory_iterator(kSource + "/tests/gold/sites")) {
    if (file.path().extension() == ".tsv") codings.insert(file.path());
  }
  for (const fs::path& coding : codings)
    all.push_back({coding.parent_path().string() + "/", coding.stem().string(), coding.string()});
  return all;
}

/// Traits numbered from 1 on, as liblinear wants them; those that are one when read are one here.
class Vocabulary {
 public:
  explicit Vocabulary(const Words& words) : words_(words) {}
  int number(const std::string& trait) {
    const auto [known, is_new] =
        numbers_.try_emplace(TraitWeights::hash_of(trait, words_), static_cast<int>(names_.size()));
    if (is_new) names_.push_back(trait);
    return known->second;
  }
  std::size_t size() const { return names_.size() - 1; }
  /// By number, as first spelled.
  const std::vector<std::string>& names() const { return names_; }

 private:
  const Words& words_;
  std::unordered_map<std::uint64_t, int> numbers_;
  std::vector<std::string> names_{1};
};

using Counts = std::vector<feature_node>;  ///< By number, without liblinear's end.

Counts counts_of(const std::vector<std::string>& traits, Vocabulary& vocabulary) {
  std::map<int, int> counted;
  for (const std::string& trait : traits) ++counted[vocabulary.number(trait)];
  Counts counts;
  for (const auto& [number, count] : counted) counts.push_back({number, static_cast<double>(count)});
  return counts;
}

using Statements = std::array<bool, kStatements>;

struct SubjectSeen {
  claims::ThingKind kind = claims::ThingKind::equipment;
  std::string key;
  Counts traits;
  Statements stated{}, unclear{};
};
struct StretchSeen {
  CodePointRange range;
  Counts traits;
  Statements located{}, unclear{};
  std::vector<SubjectSeen> subjects;
};

struct Material {
  std::string site;
  std::vector<StretchSeen> stretches;
};

class Collector final : public claims::TraitObserver {
 public:
  Collector(Vocabulary& vocabulary, Material& material) : vocabulary_(vocabulary), material_(material) {}
  void stretch(CodePointRange range, const std::vector<std::string>& traits) override {
    material_.stretches.push_back({range, counts_of(traits, vocabulary_), {}, {}, {}});
  }
  void subject(claims::ThingKind kind, const std::string& key,
               const std::vector<std::string>& traits) override {
    material_.stretches.back().subjects.push_back({kind, key, counts_of(traits, vocabulary_), {}, {}});
  }

 private:
  Vocabulary& vocabulary_;
  Material& material_;
};

/// Marks what the coded claims state.
void mark(const std::vector<CodedClaim>& coded, Material& material) {
  for (const CodedClaim& claim : coded) {
    const auto statement = static_cast<std::size_t>(parse_statement(claim.statement).value());
    const bool located = claim.statement == "located";
    const auto kind = claim.subject.empty() ? claims::ThingKind::place : claims::ThingKind::equipment;
    const std::string& key = claim.subject.empty() ? claim.place : claim.subject;
    double best = 0;
    for (const StretchSeen& stretch : material.stretches)
      best = std::max(best, stretch.range.shared_with(claim.quote));
    if (best < claims::kAlike) continue;
    for (StretchSeen& stretch : material.stretches) {
      const double shared = stretch.range.shared_with(claim.quote);
      if (shared < claims::kAlike) continue;
      const bool is_it = shared >= best;
      if (located) (is_it ? stretch.located : stretch.unclear)[statement] = true;
      for (SubjectSeen& subject : stretch.subjects) {
        if (!located && subject.kind == kind && subject.key == key)
          (is_it ? subject.stated : subject.unclear)[statement] = true;
      }
    }
  }
}

/// Weights of one statement, by number of the trait.
std::vector<double> fit(const std::vector<const Material*>& materials, std::size_t statement,
                        const std::vector<bool>& kept) {
  std::vector<Counts> rows;
  std::vector<double> labels;
  const bool located = static_cast<Statement>(statement) == Statement::located;
  const auto row_of = [&](const Counts& traits, Counts row) {
    for (const feature_node& node : traits) {
      if (kept[static_cast<std::size_t>(node.index)]) row.push_back(node);
    }
    return row;
  };
  const auto add = [&](Counts row, bool stated) {
    row.push_back({-1, 0});
    rows.push_back(std::move(row));
    labels.push_back(stated ? 1 : 0);
  };
  for (const Material* material : materials) {
    for (const StretchSeen& stretch : material->stretches) {
      const Counts own = row_of(stretch.traits, {});
      if (located) {
        if (stretch.located[statement] || !stretch.unclear[statement]) add(own, stretch.located[statement]);
        continue;
      }
      for (const SubjectSeen& subject : stretch.subjects) {
        if (!subject.stated[statement] && subject.unclear[statement]) continue;
        Counts row = row_of(subject.traits, own);
        std::sort(row.begin(), row.end(), [](const auto& a, const auto& b) { return a.index < b.index; });
        add(std::move(row), subject.stated[statement]);
      }
    }
  }
  std::vector<feature_node*> pointers;
  for (Counts& row : rows) pointers.push_back(row.data());
  problem task{};
  task.l = static_cast<int>(rows.size());
  task.n = static_cast<int>(kept.size()) - 1;
  task.y = labels.data();
  task.x = pointers.data();
  task.bias = -1;
  parameter how{};
  how.solver_type = L2R_LR;
  how.C = kCost;
  how.eps = 0.001;
  set_print_string_function([](const char*) {});
  model* made = train(&task, &how);
  // liblinear's first label is that of the first row; weights are for it.
  const double sign = made->label[0] == 1 ? 1 : -1;
  std::vector<double> weights(kept.size(), 0);
  for (std::size_t i = 1; i < kept.size(); ++i) weights[i] = sign * made->w[i - 1];
  free_and_destroy_model(&made);
  return weights;
}

/// Traits seen in a few stretches of more than one site.
std::vector<bool> worth_keeping(const std::vector<const Material*>& materials, std::size_t traits) {
  std::vector<std::size_t> seen(traits + 1, 0);
  std::vector<std::set<std::string>> sites(traits + 1);
  for (const Material* material : materials) {
    const auto count = [&](const Counts& counts) {
      for (const feature_node& node : counts) {
        const auto i = static_cast<std::size_t>(node.index);
        ++seen[i];
        if (sites[i].size() < kSeenInSites) sites[i].insert(material->site);
      }
    };
    for (const StretchSeen& stretch : material->stretches) {
      count(stretch.traits);
      for (const SubjectSeen& subject : stretch.subjects) count(subject.traits);
    }
  }
  std::vector<bool> kept(traits + 1, false);
  for (std::size_t i = 1; i <= traits; ++i) kept[i] = seen[i] >= kSeen && sites[i].size() >= kSeenInSites;
  return kept;
}

void learn(const std::vector<const Material*>& materials, const Vocabulary& vocabulary, const fs::path& to) {
  const std::vector<bool> kept = worth_keeping(materials, vocabulary.size());
  std::vector<std::vector<double>> weights;
  for (std::size_t s = 0; s < kStatements; ++s) weights.push_back(fit(materials, s, kept));
  std::map<std::string, std::string> lines;  // In order of the traits.
  for (std::size_t i = 1; i < kept.size(); ++i) {
    std::string line;
    bool any = false;
    for (const std::vector<double>& of_statement : weights) {
      int hundredths = static_cast<int>(std::lround(of_statement[i] * 100));
      if (std::abs(hundredths) < kLeastHundredths) hundredths = 0;
      any = any || hundredths != 0;
      line += fmt::format("\t{}", hundredths);
    }
    if (any) lines.emplace(vocabulary.names()[i], line);
  }
  std::ofstream out(to);
  out << "trait";
  for (std::size_t s = 0; s < kStatements; ++s) out << '\t' << to_string(static_cast<Statement>(s));
  out << '\n';
  for (const auto& [trait, line] : lines) out << trait << line << '\n';
}

struct Score {
  std::size_t proposed = 0, coded = 0, paired = 0;
  void print(const std::string& name) const {
    const auto share = [](std::size_t part, std::size_t whole) {
      return whole ? static_cast<double>(part) / static_cast<double>(whole) : 0.0;
    };
    fmt::print("{:14} proposed {} coded {} paired {}: precision {:.3f} recall {:.3f} F1 {:.3f}\n", name,
               proposed, coded, paired, share(paired, proposed), share(paired, coded),
               share(2 * paired, proposed + coded));
    std::fflush(stdout);
  }
};

Score score(const CodedInterview& interview, const Language& language) {
  Score score;
  with_interview(read_corpus(interview.site), language, interview.key,
                 [&](const ReadingContext& context, const Transcript& transcript,
                     const std::vector<Sentence>& sentences) {
                   std::vector<Claim> claims = propose_claims(context, transcript, sentences);
                   std::erase_if(claims, [](const Claim& claim) { return claim.withdrawn; });
                   std::vector<std::string> missing;
                   const auto coded = read_coded(interview.coding, transcript.reading_text, missing);
                   score = {claims.size(), coded.size(), pair_up(claims, coded).size()};
                 });
  return score;
}

Language language_in(const fs::path& folder) {
  return std::move(Language::load(SystemFileReader(), folder)).value();
}

void by_site(const std::vector<CodedInterview>& interviews, const std::vector<Material>& materials,
             const Vocabulary& vocabulary, std::size_t parts) {
  std::vector<std::string> sites;
  for (const Material& material : materials) {
    if (sites.empty() || sites.back() != material.site) sites.push_back(material.site);
  }
  const fs::path folder = fs::temp_directory_path() / fmt::format("weights-by-site-{}", ::getpid());
  fs::copy(kLanguage, folder);
  Score all;
  for (std::size_t part = 0; part < parts; ++part) {
    std::set<std::string> apart;
    for (std::size_t s = part; s < sites.size(); s += parts) apart.insert(sites[s]);
    std::vector<const Material*> others;
    for (const Material& material : materials) {
      if (!apart.contains(material.site)) others.push_back(&material);
    }
    learn(others, vocabulary, folder / "trait-weights.tsv");
    const Language language = language_in(folder);
    for (const CodedInterview& interview : interviews) {
      if (!apart.contains(interview.site)) continue;
      const Score own = score(interview, language);
      own.print(interview.key);
      all.proposed += own.proposed;
      all.coded += own.coded;
      all.paired += own.paired;
    }
    all.print(fmt::format("parts 1 to {}", part + 1));
  }
  fs::remove_all(folder);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) {
    std::cerr << "usage: fit_weights OUT.tsv | --by-site [PARTS]\n";
    return 2;
  }
  const std::string what = argv[1];
  const std::vector<CodedInterview> interviews = coded_interviews();
  const Language language = language_in(kLanguage);
  Vocabulary vocabulary(language.data().words);
  std::vector<Material> materials;
  for (const CodedInterview& interview : interviews) {
    Material& material = materials.emplace_back();
    material.site = interview.site;
    with_interview(read_corpus(interview.site), language, interview.key,
                   [&](const ReadingContext& context, const Transcript& transcript,
                       const std::vector<Sentence>& sentences) {
                     Collector collector(vocabulary, material);
                     claims::observe_traits(context, transcript, sentences, collector);
                     std::vector<std::string> missing;
                     mark(read_coded(interview.coding, transcript.reading_text, missing), material);
                     for (const std::string& quote : missing)
                       std::cerr << interview.coding << ": quote not found: " << quote << '\n';
                   });
  }
  if (what == "--by-site") {
    by_site(interviews, materials, vocabulary, argc > 2 ? std::stoul(argv[2]) : 4);
  } else {
    std::vector<const Material*> all;
    for (const Material& material : materials) all.push_back(&material);
    learn(all, vocabulary, what);
  }
}
