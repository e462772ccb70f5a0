#include "store/transcript/carry.h"

#include <algorithm>

#include "store/claim/claim_patch.h"
#include "store/claim/claim_rows.h"
#include "store/journal_writer.h"
#include "store/transcript/anchors.h"

namespace witnessmark {
namespace {

/// Mentions inside a quote move with it; others are looked for by themselves and left out when not found:
/// what the claim says stays, only where it was read from is no longer known.
std::vector<Mention> carried_mentions(const Claim& claim, const std::vector<CodePointRange>& quotes,
                                      AnchorCarrier& carrier) {
  std::vector<Mention> carried;
  for (Mention mention : claim.mentions) {
    std::optional<CodePointRange> found;
    for (std::size_t i = 0; i < quotes.size() && !found; ++i) {
      const CodePointRange& old_quote = claim.quotes[i];
      if (mention.range.begin < old_quote.begin || old_quote.end < mention.range.end) continue;
      const std::int64_t shift = quotes[i].begin.value - old_quote.begin.value;
      found = CodePointRange{CodePoint{mention.range.begin.value + shift},
                             CodePoint{mention.range.end.value + shift}};
    }
    if (!found) found = carrier.find_again(mention.range);
    if (!found) continue;
    mention.range = *found;
    carried.push_back(std::move(mention));
  }
  return carried;
}

}  // namespace

bool carry_claim(Claim& claim, AnchorCarrier& carrier) {
  std::vector<CodePointRange> quotes;
  for (const CodePointRange& quote : claim.quotes) {
    const auto found = carrier.find_again(quote);
    if (!found) return false;
    quotes.push_back(*found);
  }
  claim.mentions = carried_mentions(claim, quotes, carrier);
  claim.quotes = std::move(quotes);
  return true;
}

namespace {

class Carrying {
 public:
  Carrying(StoreConnection& connection, AnchorCarrier& carrier, const CodePointIndex& before,
           TranscriptChanges& changes)
      : connection_(connection), carrier_(carrier), before_(before), changes_(changes) {}

  void carry(ClaimRow row) {
    if (row.stored.lost || row.stored.version != changes_.version - 1) return;
    const std::string before_json = claim_json(row.stored.claim, row.stored.version);
    const std::string words(before_.slice(row.stored.claim.quotes[0]));
    if (!carry_claim(row.stored.claim, carrier_)) {
      changes_.lost.push_back({row.stored.claim.id, words, row.stored.decided});
      connection_.prepared("UPDATE claims SET lost = 1 WHERE claim = ?").bind(row.row).run();
      return;
    }
    row.stored.version = changes_.version;
    if (row.stored.decided) {
      const ClaimPatch patch = patch_between(before_json, claim_json(row.stored.claim, row.stored.version));
      append_event(connection_, {.kind = "carried",
                                 .target_kind = "claim",
                                 .target = to_string(row.stored.claim.id),
                                 .interview = row.stored.claim.interview,
                                 .before = patch.before,
                                 .after = patch.after});
      carry_proposal(row);
    }
    rewrite_claim_row(connection_, row);
    ++changes_.carried;
  }

 private:
  void carry_proposal(ClaimRow& row) {
    if (row.proposal.empty()) return;
    ClaimState proposal = claim_from_json(row.proposal);
    if (proposal.version != changes_.version - 1 || !carry_claim(proposal.claim, carrier_)) return;
    row.proposal = claim_json(proposal.claim, changes_.version);
  }

  StoreConnection& connection_;
  AnchorCarrier& carrier_;
  const CodePointIndex& before_;
  TranscriptChanges& changes_;
};

void carry_passages(StoreConnection& connection, std::string_view interview, std::int64_t reading,
                    AnchorCarrier& carrier, TranscriptChanges& changes) {
  struct Placed {
    std::string quote;
    CodePointRange range;
  };
  std::vector<Placed> placed;
  SqlStatement& select = connection.prepared(
      "SELECT quote, first, past FROM passages WHERE interview = ? AND first IS NOT NULL");
  select.bind(interview);
  while (select.step()) {
    placed.push_back({select.text(0), {CodePoint{select.integer(1)}, CodePoint{select.integer(2)}}});
  }
  select.reset();
  for (const Placed& passage : placed) {
    const auto found = carrier.find_again(passage.range);
    if (found) {
      connection
          .prepared("UPDATE passages SET reading = ?, first = ?, past = ? WHERE interview = ? AND quote = ?")
          .bind(reading)
          .bind(found->begin.value)
          .bind(found->end.value)
          .bind(interview)
          .bind(passage.quote)
          .run();
    } else {
      changes.lost.push_back({Id{}, passage.quote, false});
      connection
          .prepared(
              "UPDATE passages SET reading = NULL, first = NULL, past = NULL WHERE interview = ? AND quote = "
              "?")
          .bind(interview)
          .bind(passage.quote)
          .run();
    }
  }
}

}  // namespace

void carry_anchors(StoreConnection& connection, std::string_view interview, const std::string& before,
                   const std::string& after, std::int64_t reading, TranscriptChanges& changes) {
  AnchorCarrier carrier(before, after);
  const CodePointIndex before_index(before);
  Carrying carrying(connection, carrier, before_index, changes);
  for (ClaimRow& row : load_claim_rows(connection, interview)) carrying.carry(std::move(row));
  carry_passages(connection, interview, reading, carrier, changes);
}

}  // namespace witnessmark
