#include "witnessmark/app/corroboration.h"

#include <fmt/ostream.h>

#include "cli/weigh/question_text.h"
#include "cli/weigh/section.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

std::int64_t total_of(const std::vector<GradedQuestions>& grades) {
  std::int64_t total = 0;
  for (const GradedQuestions& graded : grades) total += graded.total;
  return total;
}

void print_by_grade(std::ostream& out, const std::vector<GradedQuestions>& grades) {
  for (const GradedQuestions& graded : grades) {
    if (graded.total == 0) continue;
    fmt::print(out, "\n{} ({}): {}\n", graded.grade, graded.total, graded.meaning);
    for (const ShownQuestion& shown : graded.shown) print_question(out, shown);
    const auto more = graded.total - graded.put_by_one_entry - static_cast<std::int64_t>(graded.shown.size());
    if (more > 0) fmt::print(out, "  … and {} more (--most)\n", more);
    if (graded.put_by_one_entry > 0)
      fmt::print(out, "  {} put by one entry of the register alone, not written out here\n", graded.put_by_one_entry);
  }
}

Result<void> corroboration_text(Command& command, const WeighRequest& request) {
  const auto account = corroboration_account(request.site, request.most, request.surroundings);
  if (!account) return account.error();
  auto& out = command.out();
  fmt::print(
      out, "Corroboration. A bullet is one independent line of sources; = is told again and not counted.\n");
  fmt::print(out, "\nBy {}: {}\n", grounds_words(account->reviewed_claims),
             counted(total_of(account->reviewed), "question"));
  print_by_grade(out, account->reviewed);
  fmt::print(out, "\nPreview, with proposals nobody has reviewed ({} they put or speak to):\n",
             counted(total_of(account->preview), "question"));
  print_by_grade(out, account->preview);
  fmt::print(out, "\nclaims that put no question, having no date or no subject the lists know: {}\n{}\n",
             account->without_question, account->withheld);
  return {};
}

Result<void> corroboration_jsonl(Command& command, const WeighRequest& request) {
  const auto withheld =
      for_each_question(request.site, request.surroundings, [&](const ShownQuestion& shown, bool preview) {
        fmt::print(command.out(), "{}\n", question_json(shown, preview));
      });
  if (!withheld) return withheld.error();
  fmt::print(command.err(), "{}\n", *withheld);
  return {};
}

std::string in_a_line(const std::map<std::string, std::int64_t>& counts) {
  std::string line;
  for (const auto& [grade, count] : counts)
    line += fmt::format("{}{} {}", line.empty() ? "" : ", ", count, grade);
  return line.empty() ? "none" : line;
}

Result<std::string> corroboration_total(const WeighRequest& request) {
  const auto counts = count_grades(request.site, request.surroundings);
  if (!counts) return counts.error();
  return fmt::format("by {}: {}; preview, with proposals: {}", grounds_words(counts->reviewed_claims),
                     in_a_line(counts->reviewed), in_a_line(counts->preview));
}

}  // namespace

const WeighSection kCorroborationSection{
    "corroboration", "who says so and who says otherwise, by independent sources, with a grade",
    corroboration_text, corroboration_jsonl, corroboration_total};

}  // namespace witnessmark
