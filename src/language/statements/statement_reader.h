#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "language/clauses/whereabouts.h"
#include "language/statements/arguments.h"

namespace witnessmark::claims {

/// Makes drafts of one predicate after the other; what each verb kind states is in of_verbs.cpp,
/// what "to be" and "to have" state in of_states.cpp and of_having.cpp.
class StatementReader {
 public:
  explicit StatementReader(const StatementContext& context)
      : c_(context), passage_(context.passage), arguments_(context) {}

  std::vector<Draft> run();
  std::vector<Draft> run(const Finding& finding);

 private:
  struct Subject {
    std::optional<Referent> referent;
    const Thing* thing = nullptr;
    std::string words{};  ///< Somebody of no list.
  };

  // Findings.
  Draft& add_located(const Predicate* p, const Finding& finding, bool negated);
  Referent narrator_in(const Finding& finding) const;
  std::string somebody_else_in(const Finding& finding) const;
  Span unlisted_in(Span span) const;
  bool of_something_else(const Finding& finding, std::uint32_t property) const;
  std::string property_in(const Finding& finding) const;
  Span said_of(const Finding& finding, const Predicate* p) const;
  bool count_in(const Finding& finding, Draft& draft) const;

  // Verbs.
  void verb(const Predicate& p);
  void begins_or_ends(const Predicate& p, Statement statement);
  void move(const Predicate& p);
  void replace(const Predicate& p);
  void swap(const Predicate& p);
  void takeover(const Predicate& p);
  void paint(const Predicate& p);
  void unpaint(const Predicate& p);
  void name(const Predicate& p);
  void happened(const Predicate& p);
  void located(const Predicate& p);
  const Thing* lying_off(Span span) const;
  std::string they_before(const Predicate& p) const;
  Subject person_before(const Predicate& p) const;
  bool is_of_site(const Predicate& p) const;
  bool located_in_words(const Predicate& p, const Subject& who, bool towards);
  bool would(const Predicate& p) const;
  bool was_somewhere(const Predicate& p);
  void been_at_location();
  void was_elsewhere();
  void built(const Predicate& p);
  void does(const Predicate& p);
  bool is_habit(const Predicate& p) const;
  bool in_past_form(const Predicate& p) const;
  void seen(const Predicate& p);
  void never_saw(const Predicate& p);
  bool says_never(const Predicate& p) const;
  bool only_where_and_when(Span span) const;
  std::optional<Referent> one_spoken_of(std::uint32_t at) const;
  void stands(const Predicate& p);
  void instead_of(const Predicate& p);

  // States.
  void exists(const Predicate& p);
  void has(const Predicate& p);
  bool had_done(const Predicate& p, const Subject& subject, bool negated);
  bool had_off(const Predicate& p);
  bool lived_at(const Predicate& p);
  bool place_has(const Predicate& p);
  bool complement_is_named(const Predicate& p, std::uint32_t limit) const;
  void part_of(const Predicate& p);
  void is(const Predicate& p);
  bool is_gone(const Predicate& p, const std::vector<Subject>& subjects);
  bool is_attribute(const Predicate& p, const std::vector<Subject>& subjects);
  bool had_been_there(const Predicate& p, const std::vector<Subject>& subjects);
  bool is_somewhere(const Predicate& p, const std::vector<Subject>& subjects);
  void is_dated(const Predicate& p, const std::vector<Subject>& subjects);
  void event(const Predicate& p);
  bool unlisted(const Predicate& p);
  bool bare_count(const Predicate* p, Span where);
  void recounted();
  Draft said_again(const Draft& before) const;
  void said_of_more(const Predicate& p, std::size_t first);
  void add_counted_elsewhere(const Predicate& p, Span clause, const std::vector<Subject>& subjects);
  bool points_at(const Predicate& p);
  bool it_was(const Predicate& p, bool another);
  bool had_one(const Predicate& p);
  bool absent_in_service();
  std::optional<Referent> place_of_unlisted(const Predicate& p, const Thing*& named) const;
  bool is_said_of(const Predicate& p, const std::vector<Subject>& subjects);
  bool is_like(const Predicate& p, const std::vector<Subject>& subjects);
  bool again_and_again(const Span& clause) const;
  void named_in_passing();
  void used_with_pronoun();
  void drop_repeated();
  void fragment();
  bool bare_name(const Thing& thing) const;
  bool opens_with(const Thing& thing) const;
  void unlisted_name(Span name);
  Span opening_name() const;
  void inventory_item();
  bool colour_of_topic();
  bool gone_of_topic();
  void is_of(Draft& draft, const Thing& place) const;
  void carry_place(Draft& draft, const Referent& place) const;
  void with_part(std::size_t of);
  void called_in_passing(std::size_t of);
  bool taken_back_after(const Predicate& p) const;
  std::string in_words(std::string_view name, Span words) const;
  std::string property_at(std::uint32_t from, std::uint32_t past, std::uint32_t* end) const;

  /// Things as subjects, or what a pronoun stands for.
  std::vector<Subject> things(const std::vector<const Thing*>& found) const;
  std::vector<Subject> objects_or_pronoun(const Predicate& p) const;
  std::vector<Subject> subjects_or_pronoun(const Predicate& p) const;

  /// Adds a state as present, absent or a count, as negation and number say.
  void add_state(const Predicate* p, const Subject& subject, bool negated);
  Draft& add(const Predicate* p, Statement statement, const Subject& subject, bool negated);
  std::optional<Referent> place_in_name(const Draft& draft) const;
  void place_it(Draft& draft, const Predicate* p, bool ending);
  void set_number(Draft& draft, const Subject& subject) const;
  void settle_date(const DateUse& use, Draft& dated) const;
  void put_dates(const Predicate* p, std::size_t first_draft, Span quoted = {});
  bool joined_by_mark(Span date) const;
  bool tells_leaving(const Predicate* p, Span quoted) const;
  bool rough_measure_in(Span span) const;
  bool does_it_himself(const Predicate& p) const;
  void put_cues(const Predicate* p, std::uint32_t clause, std::size_t first_draft, Span quoted = {});
  std::uint32_t clause_of(const Predicate* p) const { return p ? p->clause : 0; }
  bool things_between_negated(const Predicate& p, const Thing* thing) const;

  const StatementContext& c_;
  const Passage& passage_;
  Arguments arguments_;
  std::vector<Draft> drafts_;
};

}  // namespace witnessmark::claims
