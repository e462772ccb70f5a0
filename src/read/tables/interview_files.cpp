#include "witnessmark/read/interview_files.h"

#include <fmt/format.h>

#include <set>
#include <utility>

#include "read/tables/references.h"
#include "read/tables/table_files.h"

namespace witnessmark {
namespace {

Access access_of(std::string_view word, Access when_empty) {
  if (word.empty()) return when_empty;
  return word == "open" ? Access::open : word == "closed" ? Access::closed : Access::restricted;
}

class InterviewFilesReader {
 public:
  InterviewFilesReader(const FileReader& files, const std::filesystem::path& main,
                       const InterviewFilePaths& paths)
      : tables_(files, out_.diagnostics, out_.files_read), main_(main), paths_(paths) {}

  InterviewFilesReading read() {
    const Table interviews = tables_.read(main_, "interviews", true);
    const Table persons = tables_.read_beside(main_, paths_.persons, "persons", true);
    const Table service = tables_.read_beside(main_, paths_.service, "service", true);
    const Table speakers = tables_.read_beside(main_, paths_.speakers, "speakers", false);
    const Table releases = tables_.read_beside(main_, paths_.releases, "releases", true);
    const Table passages = tables_.read_beside(main_, paths_.passages, "passages", true);
    each(persons, [this](RowReader& row) { read_person(row); });
    each(interviews, [this](RowReader& row) { read_interview(row); });
    each(service, [this](RowReader& row) { read_service(row); });
    each(speakers, [this](RowReader& row) { read_speaker(row); });
    each(releases, [this](RowReader& row) { read_release(row); });
    each(passages, [this](RowReader& row) { read_passage(row); });
    out_.unresolved = references_.unresolved();
    out_.ok = !has_errors(out_.diagnostics);
    return std::move(out_);
  }

 private:
  template <typename ReadRow>
  void each(const Table& table, ReadRow read_row) {
    for_each_row(table, out_.diagnostics, read_row);
  }

  void read_person(RowReader& row) {
    Person person;
    person.key = row.key("person");
    references_.define(KeyKind::person, person.key, "person", row);
    person.name = row.text("name");
    person.pseudonym = row.text("pseudonym");
    person.birth = row.dated("birth");
    person.death = row.dated("death");
    person.notes = row.with_extra(row.text("notes"));
    if (!row.ok()) return;
    person_at_[person.key] = out_.file.persons.size();
    out_.file.persons.push_back(std::move(person));
    out_.person_cells.push_back({row.at("birth"), row.at("death"), {}});
  }

  void read_interview(RowReader& row) {
    Interview interview;
    interview.key = row.key("interview");
    references_.define(KeyKind::interview, interview.key, "interview", row);
    interview.transcript_path = row.text("transcript");
    interview.transcript_format = row.choice("format");
    interview.narrators = row.keys("narrators");
    interview.interviewers = row.keys("interviewers");
    interview.date = row.dated("date");
    interview.place = row.text("place");
    read_session(row, interview);
    interview.accession = row.text("accession");
    interview.repository = row.text("repository");
    interview.recording = row.text("recording");
    interview.recording_length = row.duration("recording_length");
    const std::string standing = row.choice("standing");
    interview.standing = standing == "audited"             ? Standing::audited
                         : standing == "narrator-reviewed" ? Standing::narrator_reviewed
                                                           : Standing::draft;
    interview.access = read_conditions(row, Access::restricted);
    interview.access.closed_until_event = row.text("closed_until_event");
    interview.shown_beforehand = row.keys("shown_beforehand");
    interview.notes = row.with_extra(row.text("notes"));
    check_path(row, interview.transcript_path);
    references_.use({KeyKind::person}, interview.narrators, "narrators", row);
    references_.use({KeyKind::person}, interview.interviewers, "interviewers", row);
    references_.use({KeyKind::source, KeyKind::interview}, interview.shown_beforehand, "shown_beforehand",
                    row);
    if (!row.ok()) return;
    out_.file.interviews.push_back(std::move(interview));
    out_.transcript_cells.push_back(row.at("transcript"));
    out_.date_cells.push_back(row.at("date"));
  }

  void read_session(RowReader& row, Interview& interview) {
    const auto session = row.number("session");
    if (session && (*session < 1 || *session > 100'000)) {
      row.fail("session", "is out of range", "sessions count from 1");
      return;
    }
    interview.session = static_cast<int>(session.value_or(1));
  }

  /// A transcript lies in the folder of the table or below it: no path leaves it.
  void check_path(RowReader& row, const std::string& path) {
    if (path.empty()) return;
    const std::filesystem::path given(path);
    bool leaves =
        given.is_absolute() || path.find('\0') != std::string::npos || path.find('\\') != std::string::npos;
    for (const auto& part : given) leaves |= part == "..";
    if (leaves) {
      row.fail("transcript", "leads out of the folder of this file",
               "put the transcript beside this file or in a folder below it, and write the path with /");
    }
  }

  AccessConditions read_conditions(RowReader& row, Access when_empty) {
    AccessConditions conditions;
    conditions.access = access_of(row.choice("access"), when_empty);
    conditions.closed_until = row.dated("closed_until").value;
    return conditions;
  }

  void read_service(RowReader& row) {
    ServicePeriod period;
    period.person = row.key("person");
    period.when = row.dated("when");
    period.role = row.text("role");
    period.notes = row.with_extra(row.text("notes"));
    if (!row.ok()) return;
    const auto found = person_at_.find(period.person);
    if (found == person_at_.end()) {
      // A row of that person with an error has been told of.
      if (!references_.defines(KeyKind::person, period.person)) {
        row.fail("person", fmt::format("names \"{}\", who has no row in persons.csv", period.person),
                 "add the person there, or correct the key");
      }
      return;
    }
    out_.file.persons[found->second].service.push_back(std::move(period));
    out_.person_cells[found->second].service.push_back(row.at("when"));
  }

  void read_speaker(RowReader& row) {
    Speaker speaker;
    speaker.interview = row.key("interview");
    speaker.label = row.text("label");
    speaker.person = row.key("person");
    const std::string role = row.choice("role");
    speaker.role = role == "narrator"      ? SpeakerRole::narrator
                   : role == "interviewer" ? SpeakerRole::interviewer
                                           : SpeakerRole::other;
    if (row.ok() && !speakers_.insert({speaker.interview, speaker.label}).second) {
      row.fail("label", fmt::format("gives \"{}\" of this interview twice", speaker.label),
               "keep one of the rows");
    }
    references_.use(KeyKind::interview, speaker.interview, "interview", row);
    references_.use(KeyKind::person, speaker.person, "person", row);
    if (!row.ok()) return;
    out_.file.speakers.push_back(std::move(speaker));
    out_.label_cells.push_back(row.at("label"));
  }

  void read_release(RowReader& row) {
    NarratorRelease release;
    release.interview = row.key("interview");
    release.person = row.key("person");
    const std::string state = row.choice("release");
    release.release = state == "signed"      ? Release::signed_release
                      : state == "withdrawn" ? Release::withdrawn
                                             : Release::none;
    release.uses = row.text("uses");
    release.naming = row.choice("naming") == "pseudonym" ? Naming::pseudonym : Naming::name;
    release.rights_holder = row.text("rights_holder");
    release.closed_until = row.dated("closed_until").value;
    release.closed_until_event = row.text("closed_until_event");
    release.notes = row.with_extra(row.text("notes"));
    if (row.ok() && !releases_.insert({release.interview, release.person}).second) {
      row.fail("person", fmt::format("gives a second release of \"{}\" for this interview", release.person),
               "keep the row that holds now");
    }
    check_pseudonym(row, release);
    references_.use(KeyKind::interview, release.interview, "interview", row);
    references_.use(KeyKind::person, release.person, "person", row);
    if (row.ok()) out_.file.releases.push_back(std::move(release));
  }

  void check_pseudonym(RowReader& row, const NarratorRelease& release) {
    const auto found = person_at_.find(release.person);
    if (release.naming != Naming::pseudonym || found == person_at_.end()) return;
    if (!out_.file.persons[found->second].pseudonym.empty()) return;
    row.warn("naming", "asks for a pseudonym, and persons.csv has none for this person",
             "add one; until then the narrator is not named at all");
  }

  void read_passage(RowReader& row) {
    RestrictedPassage passage;
    passage.interview = row.key("interview");
    passage.quote = row.text("quote");
    passage.conditions = read_conditions(row, Access::restricted);
    passage.reason = row.with_extra(row.text("reason"));
    references_.use(KeyKind::interview, passage.interview, "interview", row);
    if (!row.ok()) return;
    out_.file.passages.push_back(std::move(passage));
    out_.quote_cells.push_back(row.at("quote"));
  }

  InterviewFilesReading out_;
  TableFiles tables_;
  std::filesystem::path main_;
  const InterviewFilePaths& paths_;
  References references_;
  std::unordered_map<std::string, std::size_t> person_at_;
  std::set<std::pair<std::string, std::string>> speakers_;
  std::set<std::pair<std::string, std::string>> releases_;
};

}  // namespace

InterviewFilesReading read_interview_files(const FileReader& files, const std::filesystem::path& interviews,
                                           const InterviewFilePaths& paths) {
  return InterviewFilesReader(files, interviews, paths).read();
}

}  // namespace witnessmark
