#include <vector>

#include "cli/weigh/section.h"

namespace witnessmark {

std::span<const WeighSection> weigh_sections() {
  static const std::vector<WeighSection> kSections = {
      kClaimsSection,        kBoundsSection, kContradictionsSection,
      kCorroborationSection, kCountsSection, kRecallSection,
  };
  return kSections;
}

}  // namespace witnessmark
