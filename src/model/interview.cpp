#include "witnessmark/model/interview.h"

#include "model/names.h"

namespace witnessmark {
namespace {

constexpr std::pair<SpeakerRole, std::string_view> kRoles[] = {
    {SpeakerRole::narrator, "narrator"},
    {SpeakerRole::interviewer, "interviewer"},
    {SpeakerRole::other, "other"},
    {SpeakerRole::unknown, "unknown"},
};

constexpr std::pair<Standing, std::string_view> kStandings[] = {
    {Standing::draft, "draft"},
    {Standing::audited, "audited"},
    {Standing::narrator_reviewed, "narrator-reviewed"},
};

}  // namespace

std::string_view to_string(SpeakerRole role) {
  return word_of(kRoles, role);
}
std::string_view to_string(Standing standing) {
  return word_of(kStandings, standing);
}

}  // namespace witnessmark
