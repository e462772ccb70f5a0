#include <fmt/core.h>

#include <cctype>

#include "app/stays/shown_evidence.h"
#include "witnessmark/app/claim_records.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

std::string capital(std::string text) {
  if (!text.empty()) text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  return text;
}

std::string source_in_full(const Source* source, const std::string& key, const std::string& locator) {
  std::string text = source != nullptr ? capital(std::string(in_words(source->kind))) : "Source";
  if (source != nullptr && !source->title.empty()) text += fmt::format(" “{}”", source->title);
  text += fmt::format(" ({}{})", key, locator.empty() ? "" : ", " + locator);
  return text;
}

StatementLine of_entry(const RegisterIndex::Item& item, const RegisterIndex& index) {
  StatementLine line;
  line.key = {StatementKey::Kind::entry, item.entry->key};
  line.source = item.entry->source;
  line.by = source_in_full(item.source, item.entry->source, item.entry->locator);
  line.says = statement_words(item, index);
  if (!item.entry->letter_figure.empty()) line.by += ", noted " + item.entry->letter_figure;
  if (item.entry->nature == Nature::intended) line.says = "intended: " + line.says;
  return line;
}

StatementLine of_stay(const RegisterIndex::StayItem& item, const RegisterIndex& index,
                      const Withholding& withholding) {
  StatementLine line;
  line.key = {StatementKey::Kind::stay, item.stay->key};
  line.source = item.stay->source;
  line.by = source_in_full(index.source(item.stay->source), item.stay->source, "");
  line.says = fmt::format(
      "{} at {}, {}", item.stay->party.empty() ? "the site" : withholding.shown_name("", item.stay->party),
      item.stay->locations.front(), when_words(item.stay->when, item.period));
  return line;
}

std::string telling_words(const ClaimRecord& record) {
  Claim said = record.claim;
  said.polarity = Polarity::affirmed;  // stands in what is said
  const std::string recall = recall_words(record.recall);
  return how_words(said) + (recall.empty() ? "" : "; " + recall);
}

StatementLine of_claim(const ClaimRecord& record, const RegisterIndex& index) {
  const Claim& claim = record.claim;
  StatementLine line;
  line.key = {StatementKey::Kind::claim, to_string(claim.id)};
  line.footing = claim.status == ClaimStatus::said_so ? Footing::reviewed : Footing::proposed;
  line.source = record.interview;
  line.by = fmt::format("{} ({}, {}", record.narrator, record.interview, record.interview_date);
  if (!record.quotes.empty()) {
    const QuoteRecord& main = record.quotes.front();
    line.quote = own_words(record);
    line.others = words_of_others(record);
    if (const std::string time = time_words(main.time, main.timing); !time.empty()) line.by += ", " + time;
  }
  line.by += ")";
  line.says = (claim.polarity == Polarity::denied ? "denied: " : "") + statement_words(claim, index);
  line.telling = telling_words(record);
  return line;
}

}  // namespace

Result<StatementLines> ShownEvidence::lines(const std::set<StatementKey>& keys) const {
  StatementLines lines;
  ClaimFilter filter;
  filter.with_mentions = false;
  for (const StatementKey& key : keys) {
    if (key.kind == StatementKey::Kind::claim) {
      if (const auto id = parse_id(key.key)) filter.ids.push_back(*id);
    } else if (key.kind == StatementKey::Kind::stay) {
      if (const auto* stay = index_.find_stay(key.key))
        lines.emplace(key, of_stay(*stay, index_, withholding_));
    } else if (const auto* item = index_.find(key.key)) {
      lines.emplace(key, of_entry(*item, index_));
    }
  }
  if (filter.ids.empty()) return lines;
  Withholding counted = withholding_;
  const auto seen = for_each_record(site_, filter, surroundings_, counted, [&](const ClaimRecord& record) {
    StatementLine line = of_claim(record, index_);
    const StatementKey key = line.key;
    lines.emplace(key, std::move(line));
  });
  if (!seen) return seen.error();
  return lines;
}

}  // namespace witnessmark
