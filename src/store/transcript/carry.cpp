#include "store/transcript/carry.h"

#include <map>
#include <memory>

#include "store/claim/claim_patch.h"
#include "store/claim/claim_rows.h"
#include "store/coding/claim_changes.h"
#include "store/journal_writer.h"
#include "store/transcript/anchors.h"

namespace witnessmark {
namespace {

/// Mentions inside a quote move with it; others are looked for by themselves and left out when not found:
/// what the claim says stays, only where it was read from is no longer known.
std::vector<Mention> carried_mentions(const Claim& claim, AnchorCarrier& carrier) {
  std::vector<Mention> carried;
  for (Mention mention : claim.mentions) {
    std::optional<CodePointRange> found;
    for (const CodePointRange& quote : claim.quotes) {
      if (found || mention.range.begin < quote.begin || quote.end < mention.range.end) continue;
      found = carrier.find_part(quote, mention.range);
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
  claim.mentions = carried_mentions(claim, carrier);
  claim.quotes = std::move(quotes);
  return true;
}

namespace {

/// The versions of a text that came before the current one, read when they are asked for.
class FormerTexts {
 public:
  FormerTexts(StoreConnection& connection, std::string_view interview, const std::string& after)
      : connection_(connection), interview_(interview), after_(after) {}

  struct Former {
    Former(std::string words, const std::string& after)
        : text(std::move(words)), index(text), carrier(text, after) {}
    std::string text;
    CodePointIndex index;
    AnchorCarrier carrier;
  };

  Former& of(int version) {
    std::unique_ptr<Former>& former = by_version_[version];
    if (!former) former = std::make_unique<Former>(text_of_version(connection_, interview_, version), after_);
    return *former;
  }

 private:
  StoreConnection& connection_;
  std::string_view interview_;
  const std::string& after_;
  std::map<int, std::unique_ptr<Former>> by_version_;
};

/// Carries the claims of an interview. One that was not found in the version before is looked for again, with
/// the words of the version it lies in: a slip in one version loses nothing for those that follow.
class Carrying {
 public:
  Carrying(StoreConnection& connection, FormerTexts& texts, TranscriptChanges& changes)
      : connection_(connection), texts_(texts), changes_(changes) {}

  void carry(ClaimRow row) {
    const bool was_lost = row.stored.lost;
    const int from = row.stored.version;
    if (!was_lost && from != changes_.version - 1) return;
    const std::string before_json = claim_json(row.stored.claim, from);
    if (!carry_claim(row.stored.claim, texts_.of(from).carrier)) {
      if (was_lost) return;
      const std::string words(texts_.of(from).index.slice(row.stored.claim.quotes[0]));
      changes_.lost.push_back({row.stored.claim.id, words, row.stored.decided});
      connection_.prepared("UPDATE claims SET lost = 1 WHERE claim = ?").bind(row.row).run();
      return;
    }
    row.stored.version = changes_.version;
    row.stored.lost = false;
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
    carried_.push_back({std::move(row), was_lost});
  }

  /// After the last: what was proposed afresh of words whose decision has been found again is proposed no
  /// more.
  void drop_what_is_decided() {
    for (const Carried& found : carried_) {
      if (!found.was_lost || !found.row.stored.decided || found.row.stored.by_coder) continue;
      const ClaimState decided = proposal_of(found.row);
      if (decided.version != changes_.version) continue;
      for (Carried& other : carried_) {
        if (other.row.row == 0 || other.row.stored.decided || other.row.stored.by_coder ||
            !same_proposal(other.row.stored.claim, decided.claim) ||
            is_written_about(connection_, other.row.stored.claim.id))
          continue;
        delete_claim_row(connection_, other.row.row);
        other.row.row = 0;
        --changes_.carried;
        connection_.prepared("UPDATE claims SET gone = 0 WHERE claim = ?").bind(found.row.row).run();
      }
    }
  }

 private:
  struct Carried {
    ClaimRow row;
    bool was_lost = false;
  };

  void carry_proposal(ClaimRow& row) {
    if (row.proposal.empty()) return;
    ClaimState proposal = claim_from_json(row.proposal);
    if (proposal.version == changes_.version ||
        !carry_claim(proposal.claim, texts_.of(proposal.version).carrier))
      return;
    row.proposal = claim_json(proposal.claim, changes_.version);
  }

  StoreConnection& connection_;
  FormerTexts& texts_;
  TranscriptChanges& changes_;
  std::vector<Carried> carried_;
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

void carry_anchors(StoreConnection& connection, std::string_view interview, const std::string& after,
                   std::int64_t reading, TranscriptChanges& changes) {
  FormerTexts texts(connection, interview, after);
  Carrying carrying(connection, texts, changes);
  for (ClaimRow& row : load_claim_rows(connection, interview)) carrying.carry(std::move(row));
  carrying.drop_what_is_decided();
  carry_passages(connection, interview, reading, texts.of(changes.version - 1).carrier, changes);
}

}  // namespace witnessmark
