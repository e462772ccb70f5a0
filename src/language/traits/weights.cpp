#include "language/traits/weights.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <charconv>

#include "language/words.h"
#include "witnessmark/language/tokens.h"

namespace witnessmark {
namespace {

constexpr const char* kFile = "trait-weights.tsv";
constexpr std::int16_t kMost = 30'000;  ///< No weight is beyond this, three hundred in the exponent.

std::string_view without_return(std::string_view line) {
  return line.substr(0, line.size() - (line.ends_with('\r') ? 1 : 0));
}

/// "trait", then the statements in their order.
std::string header() {
  std::string line = "trait";
  for (std::size_t s = 0; s < kStatements; ++s)
    line.append("\t").append(to_string(static_cast<Statement>(s)));
  return line;
}

}  // namespace

std::uint64_t TraitWeights::hash_of(std::string_view trait, const Words& words) {
  const std::size_t colon = std::min(trait.find(':'), trait.size());
  const std::string_view kind = trait.substr(0, colon);
  // Endings and the names of classes are no words: they have no other spelling.
  const bool of_words = kind != "ending" && kind != "class";
  std::uint64_t hash = begin(dates::hash_word(kind));
  std::string_view rest = colon < trait.size() ? trait.substr(colon + 1) : std::string_view();
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    const std::uint64_t form = word_form(rest.substr(0, end));
    hash = next(hash, of_words ? words.common_form(form) : form);
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return hash;
}

bool TraitWeights::insert(std::uint64_t trait, const Row& row) {
  std::uint64_t i = trait & mask_;
  while (slots_[i].row >= 0 && slots_[i].mark != mark_of(trait)) i = (i + 1) & mask_;
  if (slots_[i].row >= 0) return false;
  slots_[i] = {mark_of(trait), static_cast<std::int32_t>(rows_.size())};
  rows_.push_back(row);
  return true;
}

Result<TraitWeights> TraitWeights::load(const FileReader& files, const std::filesystem::path& folder,
                                        const Words& words) {
  TraitWeights weights;
  const std::filesystem::path path = folder / kFile;
  if (!files.exists(path)) return weights;
  const Result<std::string> bytes = files.read(path);
  if (!bytes) return bytes.error();
  std::string_view rest = *bytes;
  const auto lines = static_cast<std::size_t>(std::count(rest.begin(), rest.end(), '\n')) + 1;
  weights.slots_.assign(std::bit_ceil(2 * lines), {});
  weights.mask_ = weights.slots_.size() - 1;
  for (std::int64_t number = 1; !rest.empty(); ++number) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    const std::string_view line = without_return(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
    const auto fault = [&](std::size_t column, std::string what, std::string advice) {
      return Error{path.string(), number, static_cast<std::int64_t>(column) + 1, std::move(what),
                   std::move(advice)};
    };
    if (number == 1) {
      if (line == header()) continue;
      return fault(0, "not the header of a file of weights",
                   "the first line is \"" + header() + "\", with tabs");
    }
    if (line.empty()) continue;
    std::size_t at = std::min(line.find('\t'), line.size());
    Row row{};
    for (std::int16_t& weight : row) {
      const char* from = line.data() + std::min(at + 1, line.size());
      const auto [past, wrong] = std::from_chars(from, line.data() + line.size(), weight);
      const auto column = static_cast<std::size_t>(past - line.data());
      const bool whole = wrong == std::errc() && (column >= line.size() || line[column] == '\t');
      if (!whole || weight < -kMost || weight > kMost) {
        return fault(at + 1, fmt::format("no whole number from {} to {}", -kMost, kMost),
                     fmt::format("a line is a trait and {} whole numbers, set apart by tabs", kStatements));
      }
      at = column;
    }
    if (at < line.size())
      return fault(at + 1, "more than eight numbers", "a line is a trait and a number for each statement");
    const std::string_view trait = line.substr(0, line.find('\t'));
    if (!weights.insert(hash_of(trait, words), row)) {
      return fault(0, fmt::format("\"{}\" has stood before, perhaps in another spelling", trait),
                   "leave one of the two lines");
    }
  }
  return weights;
}

}  // namespace witnessmark
