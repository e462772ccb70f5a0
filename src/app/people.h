#pragma once
#include <map>
#include <string>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/site.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Interviews and persons of a site file, found by key.
class People {
 public:
  explicit People(const SiteFile& site);
  People(const People&) = delete;  // the maps point into the file

  const InterviewFile& file() const { return file_; }

  bool knows_interview(const std::string& key) const { return interviews_.contains(key); }
  /// An empty one when it is not known.
  const Interview& interview(const std::string& key) const;

  /// Of a person by key; none when it is not known.
  const std::vector<ServicePeriod>& service(const std::string& person) const;

  /// The person who speaks; the only narrator when the transcript names nobody; else an empty one.
  const Person& narrator(const Claim& claim) const;

 private:
  InterviewFile file_;
  std::map<std::string, const Interview*> interviews_;
  std::map<std::string, const Person*> persons_;
};

}  // namespace witnessmark
