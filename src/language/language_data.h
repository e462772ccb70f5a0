#pragma once
#include "language/traits/weights.h"
#include "language/words.h"
#include "witnessmark/language/language.h"

namespace witnessmark {

struct Language::Data {
  DateLexicon dates;
  Abbreviations abbreviations;
  Words words;
  TraitWeights weights;
};

}  // namespace witnessmark
