#pragma once
#include "language/words.h"
#include "witnessmark/language/language.h"

namespace witnessmark {

struct Language::Data {
  DateLexicon dates;
  Abbreviations abbreviations;
  Words words;
};

}  // namespace witnessmark
