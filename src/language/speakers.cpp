#include <algorithm>

#include "language/language_data.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/language/claims.h"

namespace witnessmark {
namespace {

/// Whether a label is the name, a part of it, or its initials.
bool label_names(const std::string& label, const std::string& name) {
  if (name.empty()) return false;
  std::string initials;
  std::string part;
  bool is_part = false;
  for (std::size_t i = 0; i <= name.size(); ++i) {
    if (i < name.size() && name[i] != ' ' && name[i] != '.') {
      part += name[i];
      continue;
    }
    if (!part.empty()) {
      initials += part[0];
      is_part = is_part || part == label;
    }
    part.clear();
  }
  return label == name || is_part || (label.size() >= 2 && label == initials) || label.ends_with(" " + name);
}

const Person* person_of(const ReadingContext& context, const std::string& key) {
  for (const Person& person : context.persons) {
    if (person.key == key) return &person;
  }
  return nullptr;
}

}  // namespace

SpeakerIdentity identify_speaker(const ReadingContext& context, std::string_view label) {
  const Interview* interview = context.interview;
  for (const Speaker& speaker : context.speakers) {
    if (interview && speaker.interview != interview->key) continue;
    if (speaker.label == label) return {speaker.role, speaker.person};
  }
  const std::string folded = fold(label);
  if (!folded.empty()) {
    const auto among = [&](const std::vector<std::string>& keys,
                           SpeakerRole role) -> std::optional<SpeakerIdentity> {
      for (const std::string& key : keys) {
        const Person* person = person_of(context, key);
        if (folded == fold(key) || (person && (label_names(folded, fold(person->name)) ||
                                               label_names(folded, fold(person->pseudonym))))) {
          return SpeakerIdentity{role, key};
        }
      }
      return std::nullopt;
    };
    if (interview) {
      if (auto found = among(interview->narrators, SpeakerRole::narrator)) return *found;
      if (auto found = among(interview->interviewers, SpeakerRole::interviewer)) return *found;
    }
    const Words& words = context.language->data().words;
    const std::vector<std::uint64_t> forms = words.forms_of(folded);
    const WordInfo* info = forms.size() == 1 ? words.find(forms[0]) : nullptr;
    if (info && info->flags.has(WordClass::interviewer_label)) return {SpeakerRole::interviewer, {}};
    if (!(info && info->flags.has(WordClass::narrator_label)) && interview &&
        interview->narrators.size() != 1) {
      return {SpeakerRole::unknown, {}};
    }
  }
  if (interview && interview->narrators.size() == 1)
    return {SpeakerRole::narrator, interview->narrators.front()};
  return {SpeakerRole::narrator, {}};
}

}  // namespace witnessmark
