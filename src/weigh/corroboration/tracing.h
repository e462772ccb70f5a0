#pragma once
#include <functional>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "witnessmark/weigh/corroboration.h"
#include "witnessmark/weigh/lineage.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// What voices rest on. Several threads may ask.
class Tracing {
 public:
  /// Everything given must outlive it.
  Tracing(const Register& evidence, const RegisterIndex& index, const InterviewFile& people);

  /// Works out once what an origin rests on, before anybody asks.
  void prepare(const Origin& origin);
  std::vector<LineageLink> behind(const Origin& origin) const;

  /// What the date, the identification and the caption of an entry rest on, as far as it is not the thing itself.
  std::vector<LineageLink> of_entry(const Entry& entry) const;

  /// Whom the narrator had it from, as far as one person is named.
  std::vector<LineageLink> had_from(const Testimony& told, const Origin& narrator) const;
  std::vector<LineageLink> had_read(const Origin& narrator, const Origin& read) const;
  std::vector<LineageLink> was_shown(const Testimony& told, const Origin& narrator, const std::string& shown) const;

  /// Of a person by key.
  const std::vector<ServicePeriod>& service(const std::string& person) const;

  /// What was shown, and what it goes back to.
  std::set<Origin> reached_from(const std::string& shown) const;

  /// What a voice goes back to in the end, by kind: an interview or a narrator is testimony.
  std::set<SourceKind> kinds_behind(const Voice& voice, const std::vector<LineageLink>& links) const;

 private:
  std::vector<LineageLink> link(const Origin& from, const Origin& to, LineageLink::Why why,
                                const std::string& how = {}) const;

  const RegisterIndex& index_;
  const InterviewFile& people_;
  Lineage lineage_;
  std::map<Origin, std::vector<LineageLink>> behind_;
};

/// Of a claim: who speaks, and what it counts for.
Voice voice_of(const Testimony& told);
/// Of an entry on the thing asked about.
Voice voice_of(const RegisterIndex::Item& item, const RegisterIndex& index);

bool is_written(SourceKind kind);

}  // namespace witnessmark
