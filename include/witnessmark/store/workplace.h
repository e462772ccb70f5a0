#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Keeps where a coder stands (screen, interview, claim, place in the text), as JSON that the caller makes
/// and reads. Not in the journal. Cheap: by itself it waits for no disk, so the last steps may be gone after
/// a power failure; inside a SiteTransaction it is as safe as the decision it goes with. An Error when the
/// text is no JSON object, or over 64 KiB.
Result<void> save_workplace(SiteFile& site, std::string_view coder, std::string_view json);

/// Nothing when none was kept.
std::optional<std::string> load_workplace(const SiteFile& site, std::string_view coder);

}  // namespace witnessmark
