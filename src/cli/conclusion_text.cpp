#include "conclusion_text.h"

#include <fmt/ostream.h>
#include <fmt/ranges.h>

#include "witnessmark/app/claim_words.h"

namespace witnessmark {

void print_conclusion(std::ostream& out, const ConclusionHistory& history) {
  const Conclusion& made = history.conclusion;
  fmt::print(out, "  {}{}: “{}”\n", history.stands() ? "" : "once concluded, ", made.key,
             one_line(made.wording));
  std::string about = history.subject_name;
  if (!history.place_name.empty()) about += (about.empty() ? "" : " · ") + history.place_name;
  if (!about.empty()) fmt::print(out, "    about: {}\n", one_line(about));
  fmt::print(out, "    {}, {}; because: {}\n", one_line(made.author), to_string(made.date),
             one_line(made.reasons));
  if (!made.evidence.empty()) fmt::print(out, "    known then: {}\n", fmt::join(made.evidence, ", "));
  fmt::print(out, "    {}\n",
             made.published.empty() ? "not published" : "published: " + one_line(made.published));
  for (const Conclusion& by : history.replaced_by)
    fmt::print(out, "    replaced by {} ({}): “{}”\n", by.key, to_string(by.date), one_line(by.wording));
  for (const Conclusion& earlier : history.replaces)
    fmt::print(out, "    replaces {} ({}){}\n", earlier.key, to_string(earlier.date),
               earlier.published.empty() ? "" : ", published: " + one_line(earlier.published));
  if (!history.answers.empty() && !history.stands())
    fmt::print(out, "    {} answered on it and to be told: see the command conclusions\n",
               history.answers.size());
}

}  // namespace witnessmark
