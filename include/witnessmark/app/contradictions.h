#pragma once
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/statement_line.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/contradictions.h"

namespace witnessmark {

/// Statements that cannot all be true, with the names to show.
struct ShownDispute {
  Dispute dispute;
  std::string subject_name, place_name;
  std::string
      sentence;  ///< "These three cannot all be true of one stay of Arc searchlight (Wheelhouse top)".
  Resolution resolution;
};

/// Entries that can both be true only if the thing went and came again between them, which no entry shows; they are
/// taken so (Renewal).
struct ShownReturn {
  std::string subject, place;  ///< Keys.
  std::string thing;           ///< "Dock gates (Dry dock)".
  StatementKey there, come;
};

/// Stands over them in every list.
inline constexpr std::string_view kReturnsHeading =
    "Both true only if it went and came again between, which no entry shows; taken so";

struct ContradictionAccount {
  std::int64_t reviewed_sets = 0;   ///< Irreducible sets of entries and reviewed claims.
  std::int64_t preview_sets = 0;    ///< Sets that hold a claim nobody has reviewed: a preview.
  std::int64_t reviewed_total = 0;  ///< Disputes they make up.
  std::int64_t reviewed_claims = 0;  ///< None: `reviewed` is what the register says alone.
  std::int64_t preview_total = 0;
  /// Smallest sets first; at most so many of each as were asked for.
  std::vector<ShownDispute> reviewed, preview;
  std::int64_t returns_total = 0;
  std::vector<ShownReturn> returns;  ///< By subject and place; at most so many as were asked for.
  std::vector<SearchLimit> limits;   ///< Of the fixtures asked for.
  StatementLines statements;         ///< Every statement of the disputes and returns given.
  std::string withheld;
};

/// Which of the statements clash, where not all of them do together; pairs with the same partners in one line: "each of
/// e-077 and e-079 with each of e-086 and e-089".
std::vector<std::string> set_lines(const Dispute& dispute);

/// Stands over what limit_words() says.
inline constexpr std::string_view kLimitsHeading = "Where not every set was looked for";
/// "Electric crane at Foredeck: all sets of up to 3 were looked for, larger ones may be missing".
std::string limit_words(const SearchLimit& limit);

/// What cannot all be true among what may be shown (see bounds_account for what is left out, and for `name`).
Result<ContradictionAccount> contradiction_account(const SiteFile& site, std::string_view name,
                                                   std::size_t most, const Surroundings& surroundings);

}  // namespace witnessmark
