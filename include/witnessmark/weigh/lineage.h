#pragma once
#include <compare>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/interview.h"
#include "witnessmark/model/site.h"

namespace witnessmark {

/// What knowledge can come from: a source or an interview (by key), or a person.
struct Origin {
  enum class Kind { source, person };   ///< Interviews share the keys of sources: what derives from either says so alike.
  Kind kind = Kind::source;
  std::string key;
  auto operator<=>(const Origin&) const = default;
};

/// `from` owes what it says, or when it says it was, to `to`.
struct LineageLink {
  enum class Why {
    derives_from,          ///< As the register says (derives.csv), with the words it says it in.
    dated_by,              ///< The entry's date rests on it.
    identified_by,         ///< What it shows was told by it.
    captioned_by,          ///< Its caption rests on it.
    is_interview,          ///< A source that is an interview, entered in the register.
    narrated_by,           ///< An interview is its narrators'.
    interviewed_together,  ///< Two narrators at one table; `how` is the interview.
    had_it_from,           ///< A narrator names who told it.
    had_read,              ///< A narrator read it, and this is written and says the same.
    was_shown              ///< A narrator had it before them.
  };
  Origin from, to;
  Why why = Why::derives_from;
  std::string how;
  auto operator<=>(const LineageLink&) const = default;
};
std::string_view to_string(LineageLink::Why why);

/// "book derives from wt (retells)", for tests.
std::string dump(const LineageLink& link);

/// Who and what goes back to whom and what: derivations, sources that are interviews, narrators of interviews, narrators
/// who were interviewed together.
class Lineage {
 public:
  Lineage(const Register& evidence, const std::vector<Interview>& interviews);

  /// The links by which everything the origin rests on is reached, nearest first; circles are cut.
  std::vector<LineageLink> behind(const Origin& origin) const;

 private:
  std::map<Origin, std::vector<LineageLink>> links_;
};

/// The person a knower's words ("Colley", "Bram Colley") name: the only one of that full name, or of that last word of a
/// name, compared folded. Empty when nobody or several.
std::string person_named(std::string_view words, const std::vector<Person>& persons);

}  // namespace witnessmark
