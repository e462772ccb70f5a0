#include "witnessmark/app/corroboration.h"

#include <fmt/ostream.h>

#include <algorithm>

#include "cli/weigh/question_text.h"
#include "cli/weigh/section.h"
#include "witnessmark/app/claim_words.h"

namespace witnessmark {
namespace {

/// Grades in the order of the table, each once; with the meanings of all the rules that give it.
std::vector<std::pair<std::string, std::string>> grades_of(const GradeTable& table) {
  std::vector<std::pair<std::string, std::string>> grades;
  for (const GradeRule& rule : table.rules()) {
    const auto same = [&](const auto& held) { return held.first == rule.grade; };
    const auto held = std::find_if(grades.begin(), grades.end(), same);
    if (held == grades.end())
      grades.emplace_back(rule.grade, rule.meaning);
    else
      held->second += "; or " + rule.meaning;
  }
  return grades;
}

/// What one entry of the register says alone is no question to anybody yet.
bool worth_reading(const ShownQuestion& shown) {
  const Tally& tally = shown.answer.tally;
  return shown.answer.put_by_testimony || tally.groups_for > 1 || shown.answer.dissent() ||
         tally.groups_against + tally.second_hand_against > 0;
}

void print_by_grade(Command& command, const GradeTable& table, const std::vector<ShownQuestion>& questions,
                    std::size_t most) {
  auto& out = command.out();
  for (const auto& [grade, meaning] : grades_of(table)) {
    std::vector<const ShownQuestion*> graded;
    std::size_t alone = 0;
    for (const ShownQuestion& shown : questions) {
      if (shown.answer.grade != grade) continue;
      if (worth_reading(shown))
        graded.push_back(&shown);
      else
        ++alone;
    }
    if (graded.size() + alone == 0) continue;
    fmt::print(out, "\n{} ({}): {}\n", grade, graded.size() + alone, meaning);
    for (std::size_t i = 0; i < std::min(most, graded.size()); ++i) print_question(out, *graded[i]);
    if (graded.size() > most) fmt::print(out, "  … and {} more (--most)\n", graded.size() - most);
    if (alone > 0)
      fmt::print(out, "  {} put by one entry of the register alone, not written out here\n", alone);
  }
}

Result<void> text(Command& command, const WeighRequest& request) {
  const auto account = corroboration_account(request.site, request.surroundings);
  if (!account) return account.error();
  auto& out = command.out();
  fmt::print(
      out, "Corroboration. A bullet is one independent line of sources; = is told again and not counted.\n");
  fmt::print(out, "\nBy {}: {} questions\n", grounds_words(account->reviewed_claims),
             account->reviewed.size());
  print_by_grade(command, account->table, account->reviewed, request.most);
  fmt::print(out, "\nPreview, with proposals nobody has reviewed ({} questions they put or speak to):\n",
             account->preview.size());
  print_by_grade(command, account->table, account->preview, request.most);
  fmt::print(out, "\n{} claims have no date or no subject the lists know, and put no question\n{}\n",
             account->without_question, account->withheld);
  return {};
}

Result<void> jsonl(Command& command, const WeighRequest& request) {
  const auto account = corroboration_account(request.site, request.surroundings);
  if (!account) return account.error();
  for (const ShownQuestion& shown : account->reviewed)
    fmt::print(command.out(), "{}\n", question_json(shown, false));
  for (const ShownQuestion& shown : account->preview)
    fmt::print(command.out(), "{}\n", question_json(shown, true));
  fmt::print(command.err(), "{}\n", account->withheld);
  return {};
}

std::string in_a_line(const std::map<std::string, std::int64_t>& counts) {
  std::string line;
  for (const auto& [grade, count] : counts)
    line += fmt::format("{}{} {}", line.empty() ? "" : ", ", count, grade);
  return line.empty() ? "none" : line;
}

Result<std::string> total(const WeighRequest& request) {
  const auto counts = count_grades(request.site, request.surroundings);
  if (!counts) return counts.error();
  return fmt::format("by {}: {}; preview, with proposals: {}", grounds_words(counts->reviewed_claims),
                     in_a_line(counts->reviewed), in_a_line(counts->preview));
}

}  // namespace

const WeighSection kCorroborationSection{
    "corroboration", "who says so and who says otherwise, by independent sources, with a grade", text, jsonl,
    total};

}  // namespace witnessmark
