// Reads EDTF expressions from standard input, one a line, and prints what each means, tab-separated:
//   expression  valid|invalid  level  first day  last day        (inclusive; nothing where there is no limit)
// Usage: edtf_dump POLICY.json < expressions        edtf_dump --generate COUNT SEED
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>

#include "time/random_edtf.h"
#include "witnessmark/time/period.h"

using namespace witnessmark;

namespace {

int generate(int count, std::uint32_t seed) {
  testing::RandomEdtf random(seed);
  for (int i = 0; i < count; ++i) std::cout << random.expression() << '\n';
  return 0;
}

std::string day_text(const std::optional<Day>& day) {
  return day ? to_string(*day) : "";
}

void print(const std::string& expression, const DatePolicy& policy) {
  std::cout << expression << '\t';
  const auto value = parse_edtf(expression);
  if (!value) {
    std::cout << "invalid\t\t\t\n";
    return;
  }
  const Period period = to_period(*value, policy);
  std::optional<Day> last = period.past_latest();
  if (last) last = *last - 1;
  std::cout << "valid\t" << edtf_level(*value) << '\t' << day_text(period.earliest()) << '\t'
            << day_text(last) << '\n';
}

}  // namespace

int main(int argc, char** argv) {
  std::ios::sync_with_stdio(false);
  const std::string first = argc > 1 ? argv[1] : "";
  if (first == "--generate" && argc == 4) {
    return generate(std::atoi(argv[2]), static_cast<std::uint32_t>(std::atoi(argv[3])));
  }
  std::ifstream file(first, std::ios::binary);
  const std::string json((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
  const auto policy = parse_date_policy(json, first);
  if (!policy) {
    std::cerr << to_string(policy.error()) << '\n';
    return 2;
  }
  for (std::string line; std::getline(std::cin, line);) print(line, *policy);
  return 0;
}
