#pragma once
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/app/withholding.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/model/claim_record.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/merge.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// A transcript in one version, with its interview: what the claims of that version have in common.
struct OpenTranscript {
  std::string interview;
  int version = 0;
  StoredTranscript stored;
  std::optional<CodePointIndex> index;  ///< Of stored's reading text.
  Interview held;
  WithheldNames::Capitals capitals = WithheldNames::Capitals::needed;

  OpenTranscript() = default;
  OpenTranscript(const OpenTranscript&) = delete;  // the index points into the text
  OpenTranscript& operator=(const OpenTranscript&) = delete;
};

/// Makes records of claims. Keeps the register and the lists as they were when it was made, and the
/// transcript it was last turned to.
class RecordMaker {
 public:
  RecordMaker(const SiteFile& site, const DatePolicy& policy);

  /// Whether the words may be handed on, without the names releases keep back, or are for whoever codes them.
  enum class Names { as_released, as_said };

  /// Everything but what the release allows is asked of `withholding` by the caller.
  ClaimRecord make(const StoredClaim& stored, const Withholding& withholding,
                   Names names = Names::as_released);

  /// The words of a claim turn by turn, in the transcript it was turned to: its speaker's own first, the main
  /// one before all. Where there is no turn the quotes as they are.
  std::vector<CodePointRange> pieces_of(const Claim& claim) const;

  const OpenTranscript& turn_to(const std::string& interview, int version);

  /// What coders decided otherwise is read once and not for each claim: for many records in one go.
  void hold_differences() { differences_ = open_differences(site_); }

  /// The transcript it was turned to is read again next time.
  void forget_transcript() { open_.interview.clear(); }

  const RegisterIndex& evidence() const { return index_; }
  const AuthorityLists& lists() const { return lists_; }
  const Register& entries() const { return evidence_; }

 private:
  QuoteRecord quote(const CodePointRange& range) const;
  std::vector<QuoteRecord> quotes_of(const Claim& claim) const;
  /// What a label of the open transcript stands for.
  Speaker speaker_of(const std::string& label) const;
  void add_coder(const StoredClaim& stored, ClaimRecord& record) const;
  void add_subject(const Withholding& withholding, Names names, ClaimRecord& record) const;
  /// Takes names out of all words of the record.
  void withhold_names(const Withholding& withholding, ClaimRecord& record) const;
  void add_weighing(const Withholding& withholding, ClaimRecord& record) const;

  const SiteFile& site_;
  std::vector<Speaker> speakers_;
  Register evidence_;
  AuthorityLists lists_;
  RegisterIndex index_;
  OpenTranscript open_;
  std::optional<std::vector<DoubleDecision>> differences_;
};

/// The preferred name of a term, or the words said when the list has no such key.
std::string term_name(const AuthorityList& list, const std::string& key, const std::string& words);

}  // namespace witnessmark
