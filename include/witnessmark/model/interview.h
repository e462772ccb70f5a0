#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/model/access.h"
#include "witnessmark/model/dated.h"

namespace witnessmark {

/// A stretch of service or work at the site.
struct ServicePeriod {
  std::string person;
  Dated when;
  std::string role;
  std::string notes;
  bool operator==(const ServicePeriod&) const = default;
};

struct Person {
  Id id;
  std::string key;        ///< Stable text id from the spreadsheets.
  std::string name;
  std::string pseudonym;
  Dated birth;
  Dated death;
  std::vector<ServicePeriod> service;
  std::string notes;
  bool operator==(const Person&) const = default;
};

enum class SpeakerRole { narrator, interviewer, other, unknown };
std::string_view to_string(SpeakerRole role);

/// What a label in a transcript stands for.
struct Speaker {
  std::string interview;
  std::string label;
  std::string person;   ///< Key; may be empty.
  SpeakerRole role = SpeakerRole::unknown;
  bool operator==(const Speaker&) const = default;
};

enum class Standing { draft, audited, narrator_reviewed };
std::string_view to_string(Standing standing);

struct Interview {
  Id id;
  std::string key;
  std::vector<std::string> narrators;      ///< Keys of persons.
  std::vector<std::string> interviewers;   ///< Keys of persons.
  Dated date;
  std::string place;
  int session = 1;
  std::string accession;
  std::string repository;
  std::string recording;
  std::optional<Millisecond> recording_length;
  Standing standing = Standing::draft;
  AccessConditions access;
  std::vector<std::string> shown_beforehand;  ///< Keys of sources or interviews.
  std::string transcript_path;                ///< As in the spreadsheet.
  std::string transcript_format;              ///< Empty: detected.
  std::string notes;
  bool operator==(const Interview&) const = default;
};

}  // namespace witnessmark
