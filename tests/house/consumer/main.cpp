#include <fmt/format.h>

#include "witnessmark/base/csv.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/base/sha256.h"

int main() {
  const auto file =
      witnessmark::parse_csv("name;alias\nFo\u2019c\u2019sle;\"Quarter  Deck\"\n", "places.csv");
  if (!file || witnessmark::sha256_hex("abc").size() != 64) return 1;
  fmt::print("{}|{}\n", witnessmark::fold(file->rows[1].cells[0].text),
             witnessmark::fold(file->rows[1].cells[1].text));
  return 0;
}
