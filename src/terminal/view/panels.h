#pragma once
#include <string>
#include <vector>

#include "witnessmark/terminal/state.h"

namespace witnessmark {

// What each place shows.
std::vector<Panel> panels_of(const State& state, const InterviewsPlace& place);
std::vector<Panel> panels_of(const State& state, const ClaimsPlace& place);
std::vector<Panel> panels_of(const State& state, const TranscriptPlace& place);
std::vector<Panel> panels_of(const State& state, const ClaimPlace& place);
std::vector<Panel> panels_of(const State& state, const FormPlace& place);
std::vector<Panel> panels_of(const State& state, const ReportPlace& place);
std::vector<Panel> panels_of(const State& state, const KeysPlace& place);

/// The item a place is about, for the heading: an interview, a name asked for.
std::string item_of(const State& state, const Place& place);

/// One sign for how a claim stands with the coder: "." proposed, "+" said so, "-" misread, "x" set aside.
char sign_of(ClaimStatus status);

/// A claim in a line, as lists show it.
Line claim_line(const ClaimLine& line);
/// Its words after it.
void add_words(Line& line, const ClaimLine& claim);

Block paragraph(std::string text, Role role = Role::plain, int indent = 0);

}  // namespace witnessmark
