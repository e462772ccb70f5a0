#pragma once
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "witnessmark/language/discourse.h"
#include "witnessmark/language/language.h"
#include "witnessmark/language/term_finder.h"
#include "witnessmark/model/claim.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/model/transcript.h"

namespace witnessmark {

class SiteNames;

/// What reading one interview needs besides its transcript. A view: everything it points to must outlive the
/// call.
struct ReadingContext {
  const Language* language = nullptr;  ///< Must be set, as must both finders.
  const TermFinder* places = nullptr;
  const TermFinder* equipment = nullptr;
  const Interview* interview = nullptr;  ///< May be missing: then there is no date to reckon from.
  std::span<const Person> persons;       ///< All that may speak or be named; found by their keys.
  std::span<const Speaker> speakers;     ///< Of any interview; those of others are passed over.
  std::span<const NamedEvent> events;
  std::span<const std::vector<std::string>> locations;  ///< Of the itinerary: preferred name first.
  /// Made of a context with the same language, finders, persons and locations. May be missing: then they are
  /// made for the call.
  const SiteNames* names = nullptr;
  DatePolicy policy = default_date_policy();
  CenturyPolicy century;
  /// Whether claims are found by the weights of traits, too, where no rule reads one.
  bool by_weights = true;
};

/// The names of a site's lists, persons and locations, made ready to be looked for. They depend on nothing of an
/// interview: whoever reads many of one site makes them once. Reading changes nothing in them.
class SiteNames {
 public:
  /// The context's language, finders, persons and locations must outlive it.
  explicit SiteNames(const ReadingContext& context);
  SiteNames(SiteNames&&) noexcept;
  SiteNames& operator=(SiteNames&&) noexcept;
  ~SiteNames();

  struct Data;
  const Data& data() const { return *data_; }

 private:
  std::unique_ptr<Data> data_;
};

/// What was read from one transcript.
struct Proposals {
  std::vector<Claim> claims;      ///< In order of the text; ids are nil, rank orders them for review.
  std::vector<Mention> mentions;  ///< Everything read as something, in order of the text; they may overlap.
};

/// Reads the claims of a transcript. Utterances of interviewers make no claims of their own; what they ask
/// carries into the answer. Without speaker labels a single narrator is assumed and sentences that end in a
/// question mark are taken for the interviewer's. A claim has a statement and at least a subject or a place.
/// The same input gives the same output; time grows linearly with the text.
Proposals read_claims(const ReadingContext& context, const Transcript& transcript,
                      const std::vector<Sentence>& sentences);

/// The claims alone.
std::vector<Claim> propose_claims(const ReadingContext& context, const Transcript& transcript,
                                  const std::vector<Sentence>& sentences);

/// Role and person behind an utterance's label: the speakers' table, else a label that is or begins an
/// interviewer's or narrator's name or gives their initials ("Q", "INT" and the like are in the language's
/// words), else the only narrator.
struct SpeakerIdentity {
  SpeakerRole role = SpeakerRole::unknown;
  std::string person;
};
SpeakerIdentity identify_speaker(const ReadingContext& context, std::string_view label);

}  // namespace witnessmark
