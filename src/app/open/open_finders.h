#pragma once
#include <string>
#include <vector>

#include "app/stays/shown_evidence.h"
#include "app/weighing/heard_evidence.h"
#include "witnessmark/app/open_questions.h"
#include "witnessmark/model/conclusion.h"

namespace witnessmark {

/// What all that look for open questions work on.
struct OpenGround {
  HeardEvidence& heard;
  const GradeTable& table;
  const std::vector<Search>& searches;
};

// Each adds what it finds.
void add_disputed(const OpenGround& ground, bool preview, std::vector<OpenQuestion>& found);
void add_counts(const OpenGround& ground, bool preview, std::vector<OpenQuestion>& found);
void add_doubtful_entries(const OpenGround& ground, std::vector<OpenQuestion>& found);
void add_silent(const SiteFile& site, const OpenGround& ground, std::vector<OpenQuestion>& found);
/// When fixtures came and went, where two dated statements of the register and reviewed claims leave a stretch.
void add_between(const ShownEvidence& shown, std::vector<OpenQuestion>& found);

/// "a photograph that shows Wheelhouse top, of September to November 1962".
std::string photograph_of(const std::string& place_name, const std::string& when);
/// What would decide a statement of the kind: evidence, with place and time.
std::vector<std::string> deciding_evidence(const Claim& question, const AuthorityLists& lists);

}  // namespace witnessmark
