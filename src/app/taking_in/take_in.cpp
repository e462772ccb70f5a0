#include "witnessmark/app/take_in.h"

#include <algorithm>
#include <map>

#include "app/taking_in/life_check.h"
#include "app/taking_in/passages.h"
#include "app/taking_in/shared_names.h"
#include "app/taking_in/speaker_check.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/app/key_check.h"
#include "witnessmark/base/did_you_mean.h"
#include "witnessmark/language/sentences.h"
#include "witnessmark/read/list_files.h"
#include "witnessmark/read/register_xml.h"
#include "witnessmark/read/transcript_reader.h"

namespace witnessmark {
namespace {

bool has_error(const std::vector<Diagnostic>& diagnostics) {
  return std::any_of(diagnostics.begin(), diagnostics.end(),
                     [](const Diagnostic& one) { return one.severity == Diagnostic::Severity::error; });
}

void add_error(std::vector<Diagnostic>& diagnostics, const Error& error) {
  diagnostics.push_back({Diagnostic::Severity::error, error});
}

void append(std::vector<Diagnostic>& all, std::vector<Diagnostic> more) {
  all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

std::size_t count_words(std::string_view text) {
  std::size_t words = 0;
  bool inside = false;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\n' || c == '\t';
    words += !space && !inside;
    inside = !space;
  }
  return words;
}

/// Reads the transcripts of one interviews.csv; what is wrong with them goes into the diagnostics.
class TranscriptReading {
 public:
  TranscriptReading(const InterviewFilesReading& reading, std::filesystem::path folder,
                    const Abbreviations& abbreviations, const Surroundings& surroundings,
                    std::vector<Diagnostic>& diagnostics)
      : reading_(reading),
        folder_(std::move(folder)),
        abbreviations_(abbreviations),
        surroundings_(surroundings),
        diagnostics_(diagnostics) {}

  std::vector<TranscriptFile> read_all() {
    std::vector<TranscriptFile> files;
    const auto& interviews = reading_.file.interviews;
    for (std::size_t i = 0; i < interviews.size(); ++i)
      if (!interviews[i].transcript_path.empty()) read(interviews[i], reading_.transcript_cells[i], files);
    return files;
  }

 private:
  void read(const Interview& interview, const Error& cell, std::vector<TranscriptFile>& files) {
    const auto path = folder_ / interview.transcript_path;
    auto bytes = surroundings_.files.read(path);
    if (!bytes) return add_error(diagnostics_, unreadable(cell, interview.transcript_path, bytes.error()));
    ReadingRules rules;
    for (const Speaker& speaker : reading_.file.speakers) {
      if (speaker.interview == interview.key) rules.speaker_labels.push_back(speaker.label);
    }
    auto transcript =
        read_transcript(*bytes, path.string(), parse_transcript_format(interview.transcript_format),
                        interview.recording_length, rules);
    if (!transcript) return add_error(diagnostics_, transcript.error());
    append(diagnostics_, transcript->diagnostics);
    transcript->diagnostics.clear();
    TranscriptFile file;
    file.interview = interview.key;
    file.name = std::filesystem::path(interview.transcript_path).filename().string();
    file.original = std::move(bytes).value();
    file.sentences = split_sentences(*transcript, abbreviations_);
    file.transcript = std::move(transcript).value();
    files.push_back(std::move(file));
  }

  /// What the file system says, where the cell stands, with the names there that are spelt nearly so.
  Error unreadable(const Error& cell, const std::filesystem::path& named, const Error& why) const {
    Error error = cell;
    error.message += ": " + why.message;
    error.advice = why.advice;
    if (surroundings_.files.exists(folder_ / named)) return error;
    const auto names = surroundings_.files.names_in((folder_ / named).parent_path());
    std::vector<std::string> near = near_matches(named.filename().string(), names);
    for (std::string& name : near) name = (named.parent_path() / name).string();
    if (!near.empty()) error.advice = did_you_mean(near);
    return error;
  }

  const InterviewFilesReading& reading_;
  std::filesystem::path folder_;
  const Abbreviations& abbreviations_;
  const Surroundings& surroundings_;
  std::vector<Diagnostic>& diagnostics_;
};

/// What is wrong with the words of a passage that stands at none or at several places.
Error no_one_place(const Error& cell, const std::string& interview, bool several) {
  Error error = cell;
  if (several) {
    error.message += ": the transcript of " + interview + " has these words at more than one place";
    error.advice = "give more of its first and last words, so that they mean one place only";
  } else {
    error.message += ": these words are not in the transcript of " + interview;
    error.advice = "copy its first and last words exactly, with … for what lies between";
  }
  return error;
}

/// Finds the passages under conditions of their own. One that is not found, or that may be any of several places, is an
/// error: a restriction is never lost because of a slip in its words.
std::map<std::string, std::vector<RestrictedPassage>> locate(const InterviewFilesReading& reading,
                                                             const std::vector<TranscriptFile>& transcripts,
                                                             const SiteFile& site,
                                                             std::vector<Diagnostic>& diagnostics) {
  std::map<std::string, std::vector<RestrictedPassage>> located;
  for (std::size_t i = 0; i < reading.file.passages.size(); ++i) {
    RestrictedPassage passage = reading.file.passages[i];
    std::optional<std::string> text;
    for (const TranscriptFile& transcript : transcripts) {
      if (transcript.interview == passage.interview) text = transcript.transcript.reading_text;
    }
    if (!text) text = load_reading_text(site, passage.interview);
    const auto places = text ? find_passage(*text, passage.quote) : std::vector<CodePointRange>();
    if (places.size() != 1) {
      add_error(diagnostics, no_one_place(reading.quote_cells[i], passage.interview, !places.empty()));
      continue;
    }
    passage.range = places.front();
    located[passage.interview].push_back(std::move(passage));
  }
  return located;
}

/// Entries whose nature depends on the kind of a source that only the site file has.
void settle_natures(const SiteFile& site, RegisterReading& reading) {
  if (reading.nature_by_source.empty()) return;
  std::map<std::string, SourceKind> kinds;
  for (const Source& source : load_register(site).sources) kinds.emplace(source.key, source.kind);
  for (const std::size_t index : reading.nature_by_source) {
    Entry& entry = reading.evidence.entries.at(index);
    if (const auto at = kinds.find(entry.source); at != kinds.end()) entry.nature = default_nature(at->second);
  }
}

}  // namespace

InterviewsTakenIn take_in_interviews(SiteFile& site, const std::filesystem::path& interviews,
                                     const InterviewFilePaths& paths, const Surroundings& surroundings) {
  InterviewsTakenIn account;
  InterviewFilesReading reading = read_interview_files(surroundings.files, interviews, paths);
  account.diagnostics = std::move(reading.diagnostics);
  append(account.diagnostics, check_keys(site, reading.unresolved, {KeyKind::source}));
  const auto policy = load_date_policy(surroundings);
  if (!policy) {
    add_error(account.diagnostics, policy.error());
    return account;
  }
  append(account.diagnostics, check_lives(site, reading, *policy));
  const auto abbreviations = Abbreviations::load(surroundings.files, surroundings.language);
  if (!abbreviations) {
    add_error(account.diagnostics, abbreviations.error());
    return account;
  }
  const auto transcripts =
      TranscriptReading(reading, interviews.parent_path(), *abbreviations, surroundings, account.diagnostics)
          .read_all();
  append(account.diagnostics, check_speakers(site, reading, transcripts, surroundings));
  const auto passages = locate(reading, transcripts, site, account.diagnostics);
  if (!reading.ok || has_error(account.diagnostics)) return account;

  SiteTransaction work(site);
  auto changes = save_interviews(site, reading.file);
  if (!changes) {
    add_error(account.diagnostics, changes.error());
    return account;
  }
  account.changes = std::move(changes).value();
  for (const TranscriptFile& file : transcripts) {
    const auto saved = save_transcript(site, file);
    if (!saved) {
      add_error(account.diagnostics, saved.error());
      return account;
    }
    account.transcripts.push_back({file.interview, file.transcript.reader, file.transcript.encoding_remark,
                                   count_words(file.transcript.reading_text),
                                   file.transcript.utterances.size(), *saved});
  }
  for (const auto& [interview, found] : passages) {
    if (const auto placed = place_passages(site, interview, found); !placed) {
      add_error(account.diagnostics, placed.error());
      return account;
    }
  }
  work.commit();
  account.done = true;
  return account;
}

EvidenceTakenIn take_in_evidence(SiteFile& site, const std::filesystem::path& entries,
                                 const RegisterFilePaths& paths, const Surroundings& surroundings) {
  EvidenceTakenIn account;
  const AuthorityLists lists = load_lists(site);
  const auto bytes = surroundings.files.read(entries);
  if (!bytes) {
    add_error(account.diagnostics, bytes.error());
    return account;
  }
  if (looks_like_xml(*bytes) && (paths.sources || paths.derives || paths.itinerary || paths.events)) {
    add_error(account.diagnostics, {entries.string(), 0, 0, "a register in XML holds all its parts",
                                    "leave out the other files, or give the entries as CSV"});
    return account;
  }
  RegisterReading reading = looks_like_xml(*bytes)
                                ? read_register_xml(*bytes, entries.string(), &lists)
                                : read_register_files(surroundings.files, entries, &lists, paths);
  account.diagnostics = std::move(reading.diagnostics);
  append(account.diagnostics, check_keys(site, reading.unresolved, {KeyKind::interview}));
  if (!reading.ok || has_error(account.diagnostics)) return account;
  settle_natures(site, reading);
  auto changes = save_register(site, reading.evidence);
  if (!changes) {
    add_error(account.diagnostics, changes.error());
    return account;
  }
  account.changes = std::move(changes).value();
  account.done = true;
  return account;
}

ConclusionsTakenIn take_in_conclusions(SiteFile& site, const ConclusionFilePaths& paths,
                                       const Surroundings& surroundings) {
  ConclusionsTakenIn account;
  const AuthorityLists lists = load_lists(site);
  ConclusionFilesReading reading = read_conclusion_files(surroundings.files, lists, paths);
  account.diagnostics = std::move(reading.diagnostics);
  append(account.diagnostics, check_keys(site, reading.unresolved, {}));
  if (!reading.ok || has_error(account.diagnostics)) return account;
  auto changes = save_conclusions(site, reading.file);
  if (!changes) {
    add_error(account.diagnostics, changes.error());
    return account;
  }
  account.changes = std::move(changes).value();
  account.done = true;
  return account;
}

ListTakenIn take_in_list(SiteFile& site, AuthorityList::Kind kind, const std::filesystem::path& path,
                         const Surroundings& surroundings) {
  ListTakenIn account;
  const auto bytes = surroundings.files.read(path);
  if (!bytes) {
    add_error(account.diagnostics, bytes.error());
    return account;
  }
  ListReading reading = read_list(*bytes, path.string(), kind);
  account.diagnostics = std::move(reading.diagnostics);
  append(account.diagnostics, check_keys(site, reading.unresolved, {KeyKind::place}));
  append(account.diagnostics, shared_names(load_lists(site), kind, reading, path.string()));
  if (!reading.ok || has_error(account.diagnostics)) return account;
  auto changes = save_list(site, AuthorityList(kind, std::move(reading.terms)));
  if (!changes) {
    add_error(account.diagnostics, changes.error());
    return account;
  }
  account.changes = std::move(changes).value();
  account.done = true;
  return account;
}

}  // namespace witnessmark
