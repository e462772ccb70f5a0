#pragma once
#include "language/passage/finders.h"
#include "witnessmark/language/claims.h"

namespace witnessmark {

struct SiteNames::Data {
  claims::Finders finders;
};

}  // namespace witnessmark
