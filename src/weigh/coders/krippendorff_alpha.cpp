// Alpha is 1 - Do / De. Do is the mean distance between pairs of values given to the same unit, each unit's
// pairs divided by the number of its values less one, so that a value counts once however many others it is
// paired with. De is the mean distance between any two values of all units. Values are first put into the
// matrix of coincidences; its rows add up to how often each value was given, and both sums run over it.

#include <map>

#include "witnessmark/weigh/coder_agreement.h"

namespace witnessmark {
namespace {

using Values = std::vector<std::vector<std::optional<double>>>;

struct Coincidences {
  std::vector<double> categories;           // ascending
  std::vector<std::vector<double>> counts;  // [i][j]
  std::vector<double> totals;               // of a category
  double pairable = 0;                      // values in units with two or more
};

std::vector<double> values_of(const Values& values, std::size_t unit) {
  std::vector<double> found;
  for (const auto& coder : values) {
    if (coder[unit]) found.push_back(*coder[unit]);
  }
  return found;
}

Coincidences coincidences_of(const Values& values, std::size_t units) {
  std::map<double, std::size_t> place;
  for (std::size_t unit = 0; unit < units; ++unit) {
    const auto given = values_of(values, unit);
    if (given.size() < 2) continue;
    for (const double value : given) place.emplace(value, 0);
  }
  Coincidences made;
  for (auto& [value, at] : place) {
    at = made.categories.size();
    made.categories.push_back(value);
  }
  made.counts.assign(place.size(), std::vector<double>(place.size(), 0.0));
  made.totals.assign(place.size(), 0.0);
  for (std::size_t unit = 0; unit < units; ++unit) {
    const auto given = values_of(values, unit);
    if (given.size() < 2) continue;
    const double share = 1.0 / static_cast<double>(given.size() - 1);
    for (std::size_t i = 0; i < given.size(); ++i) {
      made.totals[place[given[i]]] += 1;
      made.pairable += 1;
      for (std::size_t j = 0; j < given.size(); ++j) {
        if (i != j) made.counts[place[given[i]]][place[given[j]]] += share;
      }
    }
  }
  return made;
}

/// The square of the distance between two categories, i < j.
double distance(const Coincidences& all, std::size_t i, std::size_t j, Scale scale) {
  if (scale == Scale::nominal) return 1;
  double apart = 0;
  if (scale == Scale::interval) {
    apart = all.categories[j] - all.categories[i];
  } else {
    for (std::size_t g = i; g <= j; ++g) apart += all.totals[g];
    apart -= (all.totals[i] + all.totals[j]) / 2;
  }
  return apart * apart;
}

}  // namespace

Coefficient krippendorff_alpha(const Values& values, Scale scale) {
  const std::size_t units = values.empty() ? 0 : values.front().size();
  for (const auto& coder : values) {
    if (coder.size() != units) return {std::nullopt, Undefined::uneven};
  }
  const Coincidences all = coincidences_of(values, units);
  if (all.pairable == 0) return {std::nullopt, Undefined::no_pairs};
  if (all.categories.size() == 1) return {std::nullopt, Undefined::no_variation};
  double observed = 0;
  double by_chance = 0;
  for (std::size_t i = 0; i < all.categories.size(); ++i) {
    for (std::size_t j = i + 1; j < all.categories.size(); ++j) {
      const double apart = distance(all, i, j, scale);
      observed += all.counts[i][j] * apart;
      by_chance += all.totals[i] * all.totals[j] * apart;
    }
  }
  return {1 - (all.pairable - 1) * observed / by_chance, Undefined::defined};
}

}  // namespace witnessmark
