#include "witnessmark/model/claim.h"

#include <fmt/format.h>

#include "model/names.h"

namespace witnessmark {
namespace {

constexpr std::pair<Basis, std::string_view> kBases[] = {
    {Basis::unstated, "unstated"}, {Basis::first_hand, "first-hand"}, {Basis::told, "told"},
    {Basis::read, "read"},         {Basis::inferred, "inferred"},
};
constexpr std::pair<Firmness, std::string_view> kFirmness[] = {
    {Firmness::firm, "firm"},
    {Firmness::hedged, "hedged"},
    {Firmness::guess, "guess"},
};
constexpr std::pair<Polarity, std::string_view> kPolarities[] = {
    {Polarity::affirmed, "affirmed"},
    {Polarity::denied, "denied"},
};
constexpr std::pair<ClaimStatus, std::string_view> kStatus[] = {
    {ClaimStatus::proposed, "proposed"},
    {ClaimStatus::said_so, "said-so"},
    {ClaimStatus::misread, "misread"},
    {ClaimStatus::set_aside, "set-aside"},
};

std::string key_or_words(const std::string& key, const std::string& words) {
  if (!key.empty()) return key;
  return words.empty() ? "-" : "\"" + words + "\"";
}

std::string dump(const Quantity& quantity) {
  return quantity.least == quantity.most ? fmt::format("{}", quantity.least)
                                         : fmt::format("{}..{}", quantity.least, quantity.most);
}

}  // namespace

std::string_view to_string(Basis basis) {
  return word_of(kBases, basis);
}
std::string_view to_string(Firmness firmness) {
  return word_of(kFirmness, firmness);
}
std::string_view to_string(Polarity polarity) {
  return word_of(kPolarities, polarity);
}
std::string_view to_string(ClaimStatus status) {
  return word_of(kStatus, status);
}
std::optional<Basis> parse_basis(std::string_view text) {
  return value_of(kBases, text);
}
std::optional<Firmness> parse_firmness(std::string_view text) {
  return value_of(kFirmness, text);
}
std::optional<Polarity> parse_polarity(std::string_view text) {
  return value_of(kPolarities, text);
}
std::optional<ClaimStatus> parse_claim_status(std::string_view text) {
  return value_of(kStatus, text);
}

Reading reading_of(const Claim& claim) {
  switch (claim.statement) {
    case Statement::begins:
    case Statement::ends:
    case Statement::happened:
      return Reading::within;
    case Statement::absent:
      return claim.polarity == Polarity::denied ? Reading::within : Reading::throughout;
    case Statement::present:
    case Statement::count:
    case Statement::attribute:
    case Statement::located:
      break;
  }
  constexpr std::string_view kBothEndsTold = "range";
  const bool named = !claim.when.rule.empty() && claim.when.rule != kBothEndsTold && claim.when.rule != kThroughout;
  return named ? Reading::within : claim.when.reading;
}

std::string_view what_it_needs(const Claim& claim) {
  if (claim.statement == Statement::count && !claim.quantity) return "a count needs its number";
  if (claim.statement == Statement::attribute && claim.attribute.empty())
    return "an attribute needs its property, as “colour: buff” or “rusted”";
  return "";
}

std::string dump(const Claim& claim) {
  std::string line(to_string(claim.statement));
  line += " " + key_or_words(claim.subject, claim.subject_words);
  if (!claim.place.empty() || !claim.place_words.empty()) {
    line += "@" + key_or_words(claim.place, claim.place_words);
  }
  line += " " + to_string(claim.when.dated);
  if (claim.quantity) line += " n=" + dump(*claim.quantity);
  if (!claim.attribute.empty()) line += " {" + claim.attribute + "}";
  line +=
      fmt::format(" {} {} {}", to_string(claim.basis), to_string(claim.firmness), to_string(claim.polarity));
  if (claim.led) line += " led";
  if (claim.withdrawn) line += " withdrawn";
  return line;
}

}  // namespace witnessmark
