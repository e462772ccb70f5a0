#include "language/claims/site_names.h"

#include <stdexcept>
#include <unordered_map>

#include "language/language_data.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// Locations by their preferred names; those of several stays are one.
AuthorityList list_of_locations(const ReadingContext& context) {
  std::vector<Term> terms;
  std::unordered_map<std::string, std::size_t> known;  // By folded name.
  for (const std::vector<std::string>& names : context.locations) {
    if (names.empty()) continue;
    const auto [at, made] = known.emplace(fold(names.front()), terms.size());
    if (made) {
      Term term;
      term.key = term.name = names.front();
      terms.push_back(std::move(term));
    }
    std::vector<std::string>& spoken = terms[at->second].spoken;
    spoken.insert(spoken.end(), names.begin() + 1, names.end());
  }
  return AuthorityList(AuthorityList::Kind::places, std::move(terms));
}

/// Persons by their whole names and pseudonyms, and by surname with the first name's place taken by anything
/// ("Mr").
AuthorityList list_of_persons(const ReadingContext& context) {
  std::vector<Term> terms;
  for (const Person& person : context.persons) {
    Term term;
    term.key = person.key;
    term.name = person.name;
    if (!person.pseudonym.empty()) term.spoken.push_back(person.pseudonym);
    const std::size_t space = person.name.rfind(' ');
    if (space != std::string::npos) term.spoken.push_back(person.name.substr(space + 1));
    terms.push_back(std::move(term));
  }
  return AuthorityList(AuthorityList::Kind::places, std::move(terms));
}

}  // namespace

SiteNames::SiteNames(const ReadingContext& context) : data_(std::make_unique<Data>()) {
  if (!context.language || !context.places || !context.equipment)
    throw std::logic_error("a reading context needs a language and both finders");
  claims::Finders& finders = data_->finders;
  finders.equipment = context.equipment;
  finders.places = context.places;
  if (!context.locations.empty()) finders.locations.emplace(list_of_locations(context), *context.language);
  if (!context.persons.empty()) finders.persons.emplace(list_of_persons(context), *context.language);
  if (finders.locations) finders.locations->look_for_misspellings(false);
  if (finders.persons) finders.persons->look_for_misspellings(false);
  finders.heads.emplace(context.equipment->list(), context.language->data().words);
}

SiteNames::SiteNames(SiteNames&&) noexcept = default;
SiteNames& SiteNames::operator=(SiteNames&&) noexcept = default;
SiteNames::~SiteNames() = default;

}  // namespace witnessmark
