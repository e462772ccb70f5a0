#pragma once
#include <filesystem>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "witnessmark/base/file_system.h"
#include "witnessmark/base/result.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/model/transcript.h"

namespace witnessmark {

/// Words that show where a clause begins when nobody wrote full stops, from clause-words.csv. All folded.
struct ClauseWords {
  std::unordered_set<std::string> cuts;      ///< "and", "you know": a long stretch may be cut before them.
  std::unordered_set<std::string> openers;   ///< "oh", "and": stand before a subject and belong to its clause.
  std::unordered_set<std::string> subjects;  ///< "they", "there's", "was there": a clause begins.
  std::unordered_set<std::string> weak;      ///< "it", "that": a clause begins when a verb follows.
  std::unordered_set<std::string> verbs;
  std::unordered_set<std::string> closed;    ///< "because", "said": no clause begins right after them.
};

/// Words ending in a full stop that do not end a sentence ("Mr.", "Lt.", "No."), from
/// shared/language/<code>/.
struct Abbreviations {
  std::unordered_set<std::string> never_end;      ///< Folded, without the stop.
  std::unordered_set<std::string> before_number;  ///< "No." and the like: no end only before a digit.
  std::unordered_set<std::string> before_lower;   ///< "Ltd.": no end before a word in small letters.
  std::unordered_set<std::string> initials;  ///< Letters that, as a single capital with a stop, begin a name.
  ClauseWords clause_words;
  static Result<Abbreviations> load(const FileReader& files, const std::filesystem::path& folder);
};

/// Sentence ranges of a text: ICU's rules (UAX #29), but no break after an abbreviation. Where machine
/// captions have no full stops, a stretch longer than most_words is cut at the next clause word or time mark
/// instead (callers pass 0 for no cutting).
std::vector<CodePointRange> split_sentences(std::string_view text, const Abbreviations& abbreviations,
                                            std::size_t most_words = 0);

/// Words a sentence of a transcript may have before it is taken for captions without full stops.
inline constexpr std::size_t kMostWords = 45;

/// The sentences of all utterances, placed in time. Remarks in brackets are never broken.
std::vector<Sentence> split_sentences(const Transcript& transcript, const Abbreviations& abbreviations);

}  // namespace witnessmark
