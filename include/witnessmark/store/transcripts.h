#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"
#include "witnessmark/model/transcript.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// One interview's transcript as it comes in.
struct TranscriptFile {
  std::string interview;  ///< Key.
  std::string name;       ///< File name, for people.
  std::string original;   ///< Its bytes, kept as they are.
  Transcript transcript;
  std::vector<Sentence> sentences;
};

/// A claim or passage whose words could not be found again in a revised transcript.
struct LostAnchor {
  Id claim;              ///< Nil for a passage.
  std::string quote;     ///< Its words in the version before.
  bool decided = false;  ///< A coder had decided on the claim.
};

struct TranscriptChanges {
  enum class Kind {
    unchanged,  ///< Same bytes, same reading: nothing written.
    first,      ///< The interview had none.
    read_anew,  ///< Same reading text, but turns, sentences or times were read otherwise.
    revised     ///< Another text: a new version.
  };
  Kind kind = Kind::unchanged;
  int version = 1;
  std::size_t carried = 0;       ///< Claims whose quotes were found again.
  std::vector<LostAnchor> lost;  ///< They stay, anchored in the version they were made from, and are marked.
};

/// Keeps the original byte for byte with its SHA-256, the reading text as a version with its own, its turns,
/// sentences, time marks and remarks, and the full-text index. When the text is a revision, anchors are
/// carried over: a quote is found again where its words, or its words with those around them, stand exactly
/// once. All in one transaction and in the journal. An Error when the interview is not known, a range lies
/// outside the text or the order is broken, or the original is over 256 MiB.
Result<TranscriptChanges> save_transcript(SiteFile& site, const TranscriptFile& file);

/// One version of a reading text, as the journal and exports cite it.
struct ReadingVersion {
  int version = 1;
  std::string text_sha256;
  std::string original_sha256;
  std::string original_name;
  std::string reader;
  std::string encoding_remark;
  std::int64_t code_points = 0;
  bool operator==(const ReadingVersion&) const = default;
};
/// Oldest first; empty when there is no transcript.
std::vector<ReadingVersion> reading_versions(const SiteFile& site, std::string_view interview);

/// A transcript as it was saved, without diagnostics. Version 0 is the current one.
struct StoredTranscript {
  ReadingVersion version;
  Transcript transcript;
  std::vector<Sentence> sentences;
};
std::optional<StoredTranscript> load_transcript(const SiteFile& site, std::string_view interview,
                                                int version = 0);

/// Only the reading text.
std::optional<std::string> load_reading_text(const SiteFile& site, std::string_view interview,
                                             int version = 0);

/// The bytes as they came in.
std::optional<std::string> load_original(const SiteFile& site, std::string_view interview, int version = 0);

}  // namespace witnessmark
