#include "app/taking_in/speaker_check.h"

#include <fmt/core.h>

#include <algorithm>
#include <set>

#include "witnessmark/base/did_you_mean.h"
#include "witnessmark/language/claims.h"
#include "witnessmark/store/interviews.h"

namespace witnessmark {
namespace {

using Labels = std::vector<std::string>;

/// As they first occur.
Labels labels_of(const Transcript& transcript) {
  Labels labels;
  std::set<std::string_view> seen;
  for (const Utterance& utterance : transcript.utterances)
    if (!utterance.speaker.empty() && seen.insert(utterance.speaker).second)
      labels.push_back(utterance.speaker);
  return labels;
}

bool has(const Labels& labels, const std::string& label) {
  return std::find(labels.begin(), labels.end(), label) != labels.end();
}

std::string quoted(const Labels& labels) {
  constexpr std::size_t kMost = 8;
  std::string list;
  for (std::size_t i = 0; i < std::min(kMost, labels.size()); ++i)
    list += fmt::format("{}“{}”", i == 0 ? "" : ", ", labels[i]);
  return labels.size() > kMost ? list + " …" : list;
}

Diagnostic nobody_speaks(const Error& cell, const std::string& label, const std::string& file,
                         const Labels& labels) {
  Error error = cell;
  error.message += fmt::format(": nobody speaks under this label in {}", file);
  std::string advice = did_you_mean(near_matches(label, labels));
  const std::string there =
      labels.empty() ? "it has no labels" : fmt::format("its labels are {}", quoted(labels));
  error.advice = advice.empty() ? there : advice + " " + there;
  return {Diagnostic::Severity::warning, error};
}

/// Whose words the labels without a row are.
class Names {
 public:
  Names(const SiteFile& site, const InterviewFilesReading& reading, const Surroundings& surroundings)
      : speakers_(reading.file.speakers),
        persons_(reading.file.persons),
        language_(Language::load(surroundings.files, surroundings.language)) {
    const InterviewFile before = load_interviews(site);
    speakers_.insert(speakers_.end(), before.speakers.begin(), before.speakers.end());
    persons_.insert(persons_.end(), before.persons.begin(), before.persons.end());
  }

  bool known(const Interview& interview, const std::string& label) const {
    if (!language_) return true;  // told of where claims are proposed
    Interview asked = interview;
    asked.narrators.emplace_back();  // with one narrator, every strange label would be taken for that one
    ReadingContext context;
    context.language = &*language_;
    context.interview = &asked;
    context.persons = persons_;
    context.speakers = speakers_;
    return identify_speaker(context, label).role != SpeakerRole::unknown;
  }

 private:
  std::vector<Speaker> speakers_;
  std::vector<Person> persons_;
  Result<Language> language_;
};

Diagnostic nobody_known(const Interview& interview, const Labels& labels) {
  const bool one = labels.size() == 1;
  std::string message = fmt::format("nothing says who speaks as {}", quoted(labels));
  if (interview.narrators.size() == 1)
    message += fmt::format("; {} taken for the narrator", one ? "the label is" : "they are");
  return {Diagnostic::Severity::warning,
          {interview.transcript_path, 0, 0, std::move(message),
           fmt::format("give {} a row in speakers.csv", one ? "it" : "each")}};
}

}  // namespace

std::vector<Diagnostic> check_speakers(const SiteFile& site, const InterviewFilesReading& reading,
                                       const std::vector<TranscriptFile>& transcripts,
                                       const Surroundings& surroundings) {
  std::vector<Diagnostic> diagnostics;
  std::optional<Names> names;
  for (const TranscriptFile& file : transcripts) {
    const Labels labels = labels_of(file.transcript);
    Labels rows;
    for (std::size_t i = 0; i < reading.file.speakers.size(); ++i) {
      const Speaker& speaker = reading.file.speakers[i];
      if (speaker.interview != file.interview) continue;
      rows.push_back(speaker.label);
      if (!has(labels, speaker.label))
        diagnostics.push_back(nobody_speaks(reading.label_cells[i], speaker.label, file.name, labels));
    }
    const auto interview = std::find_if(reading.file.interviews.begin(), reading.file.interviews.end(),
                                        [&](const Interview& one) { return one.key == file.interview; });
    if (interview == reading.file.interviews.end()) continue;
    Labels strange;
    for (const std::string& label : labels) {
      if (has(rows, label)) continue;
      if (!names) names.emplace(site, reading, surroundings);
      if (!names->known(*interview, label)) strange.push_back(label);
    }
    if (!strange.empty()) diagnostics.push_back(nobody_known(*interview, strange));
  }
  return diagnostics;
}

}  // namespace witnessmark
