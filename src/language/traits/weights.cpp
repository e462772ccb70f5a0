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

/// The hash of "pair:the boiler", as a TraitBook makes it. Endings are no words: they have no other spelling.
std::uint64_t hash_of(std::string_view trait, const Words& words) {
  const std::size_t colon = std::min(trait.find(':'), trait.size());
  const std::string_view kind = trait.substr(0, colon);
  std::uint64_t hash = TraitWeights::begin(dates::hash_word(kind));
  std::string_view rest = colon < trait.size() ? trait.substr(colon + 1) : std::string_view();
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    const std::uint64_t form = word_form(rest.substr(0, end));
    hash = TraitWeights::next(hash, kind == "ending" ? form : words.common_form(form));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return hash;
}

}  // namespace

void TraitWeights::insert(std::uint64_t trait, const Row& row) {
  std::uint64_t i = trait & mask_;
  while (slots_[i].row >= 0 && slots_[i].mark != mark_of(trait)) i = (i + 1) & mask_;
  if (slots_[i].row >= 0) return;  // The first of two spellings that are one.
  slots_[i] = {mark_of(trait), static_cast<std::int32_t>(rows_.size())};
  rows_.push_back(row);
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
    const std::string_view line = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    if (number == 1 || line.empty()) continue;  // The header.
    std::size_t at = std::min(line.find('\t'), line.size());
    Row row{};
    for (std::int16_t& weight : row) {
      const char* from = line.data() + std::min(at + 1, line.size());
      const auto [past, fault] = std::from_chars(from, line.data() + line.size(), weight);
      const auto column = static_cast<std::size_t>(past - line.data());
      const bool whole = fault == std::errc() && (column >= line.size() || line[column] == '\t');
      if (!whole || weight < -kMost || weight > kMost) {
        return Error{path.string(), number, static_cast<std::int64_t>(at) + 2,
                     fmt::format("no whole number from {} to {}", -kMost, kMost),
                     fmt::format("a line is a trait and {} whole numbers, set apart by tabs", kStatements)};
      }
      at = column;
    }
    weights.insert(hash_of(line.substr(0, line.find('\t')), words), row);
  }
  return weights;
}

}  // namespace witnessmark
