#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "witnessmark/store/merge.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/coder_agreement.h"

namespace witnessmark {

/// How two coders stand to one another on the claims both decided on before their copies were brought
/// together.
struct CoderPair {
  std::string first, second;  ///< Their names.
  bool blind = false;         ///< Both coded with proposals hidden; else one at least had seen them.
  std::int64_t claims = 0;
  std::int64_t same_status = 0;
  Coefficient status;  ///< Cohen's kappa of said so, misread, set aside (and undecided again).
  Coefficient alpha;   ///< Krippendorff's, nominal, of the same.
};

/// By names; those who coded blind apart from those who had seen what was proposed, whose agreement is
/// inflated.
std::vector<CoderPair> coder_agreement(const SiteFile& site);

/// Where the claims two coders hold to be said begin and end, in the interviews both have worked on.
struct SpanPair {
  std::string first, second;  ///< Their names.
  bool blind = false;         ///< All that both decided there was decided with proposals hidden.
  std::int64_t interviews = 0;
  std::int64_t first_claims = 0, second_claims = 0;
  BoundaryDifference difference;  ///< Over the sentences, windows of all interviews together.
};

/// By names, blind apart. The claims of a coder are those they added or found to be said, whatever others decided on them
/// since. Places are sentences; the window of an interview is the customary one of the coder with the closer boundaries.
/// Interviews that are withheld count too: these are numbers only, for those who coded them.
std::vector<SpanPair> span_agreement(const SiteFile& site);

}  // namespace witnessmark
