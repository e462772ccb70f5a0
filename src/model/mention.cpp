#include "witnessmark/model/mention.h"

#include <fmt/format.h>

#include "model/names.h"

namespace witnessmark {
namespace {

constexpr std::pair<MentionKind, std::string_view> kMentionKinds[] = {
    {MentionKind::date, "date"},           {MentionKind::place, "place"},
    {MentionKind::equipment, "equipment"}, {MentionKind::quantity, "quantity"},
    {MentionKind::action, "action"},       {MentionKind::cue, "cue"},
};

}  // namespace

std::string_view to_string(MentionKind kind) {
  return word_of(kMentionKinds, kind);
}

std::string to_string(const Mention& mention) {
  return fmt::format("{} {}-{} {}{}{}{}", to_string(mention.kind), mention.range.begin.value,
                     mention.range.end.value, mention.value, mention.rule.empty() ? "" : " by ", mention.rule,
                     mention.near_match ? " near-match" : "");
}

}  // namespace witnessmark
