#pragma once
#include <fmt/core.h>

#include <algorithm>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "witnessmark/weigh/stays.h"

namespace witnessmark::testing {

/// A small site whose statements are written a line each:
///   e1 log begins crane@foredeck 1956-12-11 [throughout] [intended] [probable] [hidden] [over=e2]
///   [rests=KEY] [n=2] [a=colour:red_with_band] c1 reviewed ends crane@foredeck 1962 [denied] [carried]
///   [told] [led] [date-carried]
/// The source of an entry is its kind, or KIND:KEY; c… lines are claims, reviewed or proposed, of interview
/// i1 or i2 (reviewed:i2). Subjects without @ have no place; `-` is no date. A photograph shows the spot
/// unless `hidden`.
class StaySite {
 public:
  explicit StaySite(const std::string& lines, const std::string& derivations = "") {
    lists_ = {AuthorityList(AuthorityList::Kind::places,
                            {place("ship", ""), place("deck", "ship"), place("foredeck", "deck"),
                             place("afterdeck", "deck"), place("hatch", "foredeck"),
                             place("rail", "foredeck"), place("bridge", "ship")}),
              AuthorityList(AuthorityList::Kind::equipment,
                            {place("crane", ""), place("winch", ""), place("bell", "")})};
    std::istringstream stream(lines);
    for (std::string line; std::getline(stream, line);) add(line);
    std::istringstream rests(derivations);
    for (std::string source, from; rests >> source >> from;)
      register_.derivations.push_back({source, from, ""});
    index_ = std::make_unique<RegisterIndex>(register_, lists_, default_date_policy());
    evidence_ = std::make_unique<StayEvidence>(*index_, claims_);
  }

  const StayEvidence& evidence() const { return *evidence_; }
  const std::vector<HeldClaim>& claims() const { return claims_; }

  /// "c1" of a claim, else the key.
  std::string name(const StatementKey& key) const {
    if (key.kind != StatementKey::Kind::claim) return key.key;
    for (std::size_t i = 0; i < claims_.size(); ++i)
      if (to_string(claims_[i].claim.id) == key.key) return claim_names_[i];
    return "?";
  }
  std::string names(const std::vector<StatementKey>& keys) const {
    std::string text;
    for (const StatementKey& key : keys) text += (text.empty() ? "" : " ") + name(key);
    return text;
  }

 private:
  static std::string spaced(std::string text) {
    std::replace(text.begin(), text.end(), '_', ' ');
    return text;
  }

  static Term place(std::string key, std::string broader) {
    Term made;
    made.key = key;
    made.name = std::move(key);
    made.broader = std::move(broader);
    return made;
  }

  void add(const std::string& line) {
    std::istringstream stream(line);
    std::string key, source, statement, thing, when;
    if (!(stream >> key >> source >> statement >> thing >> when)) {
      if (key.empty()) return;
      throw std::runtime_error("a statement lacks a word: " + line);
    }
    const auto at = thing.find('@');
    const std::string subject = thing.substr(0, at);
    const std::string where = at == std::string::npos ? "" : thing.substr(at + 1);
    std::optional<Edtf> value;
    if (when != "-") value = parse_edtf(when).value();
    std::vector<std::string> extras;
    for (std::string extra; stream >> extra;) extras.push_back(extra);
    if (key.front() == 'c')
      add_claim(key, source, *parse_statement(statement), subject, where, value, extras);
    else
      add_entry(key, source, *parse_statement(statement), subject, where, value, extras);
  }

  void add_entry(const std::string& key, const std::string& source, Statement statement,
                 const std::string& subject, const std::string& where, const std::optional<Edtf>& value,
                 const std::vector<std::string>& extras) {
    const auto colon = source.find(':');
    const std::string source_key = colon == std::string::npos ? source : source.substr(colon + 1);
    Source made;
    made.key = source_key;
    made.kind = parse_source_kind(source.substr(0, colon)).value();
    register_.sources.push_back(made);
    Entry entry;
    entry.key = key;
    entry.source = source_key;
    entry.statement = statement;
    entry.subject = subject;
    entry.place = where;
    entry.when.value = value;
    entry.spot_visible = SpotVisible::yes;
    for (const std::string& extra : extras) {
      if (extra == "throughout")
        entry.reading = Reading::throughout;
      else if (extra == "intended")
        entry.nature = Nature::intended;
      else if (extra == "probable")
        entry.identification = Identification::probable;
      else if (extra == "hidden")
        entry.spot_visible = SpotVisible::no;
      else if (extra.starts_with("over="))
        entry.over.push_back(extra.substr(5));
      else if (extra.starts_with("rests="))
        entry.date_rests_on.push_back(extra.substr(6));
      else if (extra.starts_with("n="))
        entry.number = std::stoll(extra.substr(2));
      else if (extra.starts_with("a="))
        entry.attribute = spaced(extra.substr(2));
      else
        throw std::runtime_error("unknown word " + extra);
    }
    register_.entries.push_back(std::move(entry));
  }

  void add_claim(const std::string& key, const std::string& footing, Statement statement,
                 const std::string& subject, const std::string& where, const std::optional<Edtf>& value,
                 const std::vector<std::string>& extras) {
    HeldClaim held;
    Claim& claim = held.claim;
    const auto colon = footing.find(':');
    held.footing = footing.starts_with("reviewed") ? Footing::reviewed : Footing::proposed;
    claim.interview = colon == std::string::npos ? "i1" : footing.substr(colon + 1);
    claim.id.bytes[15] = static_cast<std::uint8_t>(claims_.size() + 1);
    claim.statement = statement;
    claim.subject = subject;
    claim.place = where;
    claim.when.dated.value = value;
    if (value) claim.when.period = to_period(*value, default_date_policy());
    for (const std::string& extra : extras) {
      if (extra == "throughout")
        claim.when.reading = Reading::throughout;
      else if (extra == "denied")
        claim.polarity = Polarity::denied;
      else if (extra == "carried")
        claim.place_carried = true;
      else if (extra == "told")
        claim.basis = Basis::told;
      else if (extra == "led")
        claim.led = true;
      else if (extra == "date-carried")
        claim.when.carried = true;
      else if (extra.starts_with("n="))
        claim.quantity = Quantity{std::stoll(extra.substr(2)), std::stoll(extra.substr(2)), ""};
      else if (extra.starts_with("a="))
        claim.attribute = spaced(extra.substr(2));
      else if (extra.starts_with("or="))
        claim.when.alternatives.push_back(extra.substr(3));
      else
        throw std::runtime_error("unknown word " + extra);
    }
    claims_.push_back(std::move(held));
    claim_names_.push_back(key);
  }

  Register register_;
  AuthorityLists lists_;
  std::vector<HeldClaim> claims_;
  std::vector<std::string> claim_names_;
  std::unique_ptr<RegisterIndex> index_;
  std::unique_ptr<StayEvidence> evidence_;
};

}  // namespace witnessmark::testing
