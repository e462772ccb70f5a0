#include "witnessmark/app/coding_desk.h"

#include <fmt/core.h>

#include <algorithm>

#include "app/coding/desk_state.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/weigh/agreement.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {

CodingDesk::State::State(SiteFile opened_site, const Surroundings& given, DatePolicy held_policy,
                         DateLexicon held_lexicon)
    : site(std::move(opened_site)),
      surroundings(given),
      policy(std::move(held_policy)),
      lexicon(std::move(held_lexicon)) {
  read_anew();
}

void CodingDesk::State::read_anew() {
  people = std::make_unique<People>(site);
  withholding = std::make_unique<Withholding>(site, surroundings.today);
  for (const std::string& interview : opened) withholding->open(interview);
  stays.reset();
  maker = std::make_unique<RecordMaker>(site, policy);
}

Result<void> CodingDesk::State::weigh(const Id& id) {
  const auto stored = find_claim(site, id);
  if (!stored) return {};
  const Claim& claim = stored->claim;
  const Interview& interview = people->interview(claim.interview);
  return save_weighings(site, {{id, recall_of(claim.when, interview, people->narrator(claim), policy),
                                compare(claim, interview, maker->evidence(), people->service(claim.subject))}});
}

std::string CodingDesk::State::person_of(const std::string& interview, const std::string& label) const {
  for (const Speaker& speaker : people->file().speakers)
    if (speaker.interview == interview && speaker.label == label && !speaker.person.empty())
      return speaker.person;
  return label;
}

std::vector<CodePointRange> CodingDesk::State::by_turn(const Claim& claim) const {
  maker->turn_to(claim.interview, 0);
  return maker->pieces_of(claim);
}

int CodingDesk::State::free_ordinal(const Claim& claim) const {
  ClaimFilter filter;
  filter.interviews = {claim.interview};
  filter.with_mentions = false;
  int free = 0;
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    const Claim& other = stored.claim;
    if (other.statement == claim.statement && other.quotes.front() == claim.quotes.front())
      free = std::max(free, other.ordinal + 1);
  });
  return free;
}

CodingDesk::CodingDesk(std::unique_ptr<State> state) : state_(std::move(state)) {}
CodingDesk::CodingDesk(CodingDesk&&) noexcept = default;
CodingDesk& CodingDesk::operator=(CodingDesk&&) noexcept = default;
CodingDesk::~CodingDesk() = default;

Result<CodingDesk> CodingDesk::open(const std::filesystem::path& path, const Surroundings& surroundings,
                                    bool may_read) {
  auto site = SiteFile::edit(path, {surroundings.coder, surroundings.random, surroundings.wall_clock});
  if (site) return at(std::move(site).value(), surroundings);
  const Error refused = site.error();
  if (may_read) site = SiteFile::read(path);
  if (!site) return refused;
  auto desk = at(std::move(site).value(), surroundings);
  if (desk) desk->state_->why_reading = refused.message;
  return desk;
}

Result<CodingDesk> CodingDesk::at(SiteFile site, const Surroundings& surroundings) {
  auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  auto lexicon = DateLexicon::load(surroundings.files, surroundings.language);
  if (!lexicon) return lexicon.error();
  return CodingDesk(std::make_unique<State>(std::move(site), surroundings, std::move(policy).value(),
                                            std::move(lexicon).value()));
}

const SiteFile& CodingDesk::site() const {
  return state_->site;
}

std::string CodingDesk::site_name() const {
  return state_->site.info().name;
}

std::string CodingDesk::coder() const {
  return state_->surroundings.coder;
}

bool CodingDesk::can_edit() const {
  return state_->site.can_edit();
}

std::string CodingDesk::why_reading() const {
  return state_->why_reading;
}

Result<void> CodingDesk::open_withheld(const std::string& interview) {
  if (state_->people->interview(interview).key.empty())
    return Error{"", 0, 0, fmt::format("the site file has no interview “{}”", interview), ""};
  state_->opened.insert(interview);
  state_->withholding->open(interview);
  return {};
}

}  // namespace witnessmark
