#pragma once
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/coding_views.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"

namespace witnessmark {

class SiteFile;

/// One coder at one site file: what is shown, and what is decided. Every decision is on the disk and in the
/// journal when the function returns. Withheld interviews stay withheld until they are opened one by one;
/// nothing here goes out of the site file.
///
/// A failing machine is an exception. Not for use from several threads at once.
class CodingDesk {
 public:
  struct State;  // inside the app layer only

  /// Opens to edit or, when somebody else is editing and `may_read` is set, to read; why_reading() then says
  /// so. The surroundings must outlive it.
  static Result<CodingDesk> open(const std::filesystem::path& path, const Surroundings& surroundings,
                                 bool may_read = true);

  /// At a site file that is open already.
  static Result<CodingDesk> at(SiteFile site, const Surroundings& surroundings);

  CodingDesk(CodingDesk&&) noexcept;
  CodingDesk& operator=(CodingDesk&&) noexcept;
  ~CodingDesk();

  const SiteFile& site() const;
  std::string site_name() const;
  std::string coder() const;
  bool can_edit() const;
  std::string why_reading() const;  ///< Empty when it can edit.

  // What is shown.

  std::vector<InterviewLine> interviews() const;
  /// In review order.
  ClaimPage claims(const ClaimQuery& query, std::size_t first, std::size_t most) const;
  /// An Error when it is not known, has no transcript, or is withheld and not opened.
  Result<TranscriptPage> transcript(const std::string& interview) const;
  Result<ClaimPageFull> claim(const Id& id) const;
  /// Terms that bear what was typed in one of their names; those by their preferred name first.
  std::vector<TermMatch> terms(AuthorityList::Kind kind, std::string_view typed, std::size_t most) const;
  /// EDTF, or words as people say them, read in the light of the claim's interview and its speaker.
  Result<TypedDate> typed_date(std::string_view text, const Claim& claim) const;

  /// What is read rather than worked through. `subject` is the name, the words or the date asked for. An
  /// Error when the name or the date is not understood.
  Result<Report> report(ReportKind kind, const std::string& subject) const;

  /// A withheld interview is shown from now on, to this coder at this desk.
  Result<void> open_withheld(const std::string& interview);

  // What is decided. An Error when the file is opened to read, and for what the store refuses.

  /// One act, however many claims; how many. Of several to be said so those are left as they are that lack
  /// what_it_needs(); one alone is an Error.
  Result<std::size_t> decide(const std::vector<Id>& claims, ClaimStatus status, const std::string& why);
  /// The claim with other values; it counts as said so.
  Result<void> correct(const Claim& claim, const std::string& why);
  Result<Id> add(Claim claim, const std::string& why);
  /// The second is set aside, its quotes go to the first.
  Result<void> join(const Id& claim, const Id& other);
  /// A second claim with the same values, to be corrected.
  Result<void> divide(const Id& claim);
  Result<void> note(const Id& claim, const std::string& text);
  /// That the coder compared its quote with the recording, and what was heard.
  Result<void> check_quote(const Id& claim, const std::string& heard);
  /// The claim rests on other words of the current reading text.
  Result<void> requote(const Id& claim, CodePointRange range);
  /// Whether an entry or a stay speaks of the same: linked, or ruled out. What was said before is taken back
  /// when it is said again.
  Result<void> link(const Id& claim, const std::string& entry, bool speaks_of_it);
  Result<void> mark_read(const std::string& interview, CodePointRange range);
  Result<void> restrict_passage(const std::string& interview, CodePointRange range, const std::string& why);
  /// Of every restricted passage that overlaps the range. An Error where there is none.
  Result<void> lift_restriction(const std::string& interview, CodePointRange range, const std::string& why);
  /// A difference with another coder's copy, by its key.
  Result<void> settle(const std::string& difference, bool theirs);

  /// What was undone or done again, in words, and the claim it was about, if it was one; no words when nothing
  /// is left. An Error when somebody else changed the same since.
  struct TakenBack {
    std::string words;
    std::optional<Id> claim;
  };
  Result<TakenBack> undo();
  /// The act that undo() takes back, by an id; empty when there is none. The same before and after where nothing
  /// was written.
  std::string last_act() const;
  Result<TakenBack> redo();

  /// From now on decisions say that proposals were hidden while they were made.
  void code_blind(bool blind);

  /// Where the coder stood last, as the terminal wrote it; empty when nowhere yet.
  std::string standing() const;
  void keep_standing(const std::string& text);

 private:
  explicit CodingDesk(std::unique_ptr<State> state);
  std::unique_ptr<State> state_;
};

}  // namespace witnessmark
