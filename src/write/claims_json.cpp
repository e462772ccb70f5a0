#include "witnessmark/write/claims_json.h"

#include <nlohmann/json.hpp>

#include "recall_text.h"

namespace witnessmark {
namespace {

using Json = nlohmann::ordered_json;

void put(Json& object, const char* name, const std::string& text) {
  if (!text.empty()) object[name] = text;
}

Json range_json(const std::optional<YearRange>& range) {
  if (!range) return nullptr;
  return Json{{"least", range->least}, {"most", range->most}};
}

Json recall_json(const Recall& recall) {
  const bool stated = !dated_after_interview(recall);
  Json object{{"age_at_interview", range_json(recall.age_at_interview)},
              {"age_at_event", range_json(recall.age_at_event)},
              {"recall_distance", stated ? range_json(recall.recall_distance) : Json()}};
  if (!stated) object["recall_distance_unstated"] = distance_text(recall);
  object["in_service"] = service_text(recall);
  return object;
}

Json when_json(const Claim& claim) {
  const ClaimTime& when = claim.when;
  Json object = Json::object();
  put(object, "written", when.dated.written);
  if (when.dated.value) object["edtf"] = to_string(*when.dated.value);
  if (when.period) {
    if (const auto day = when.period->earliest()) object["earliest"] = to_string(*day);
    if (const auto day = when.period->past_latest()) object["latest"] = to_string(*day - 1);
  }
  object["reading"] = reading_of(claim) == Reading::within ? "within" : "throughout";
  put(object, "rule", when.rule);
  put(object, "anchor", when.anchor);
  if (when.carried) object["carried"] = true;
  if (!when.alternatives.empty()) object["alternatives"] = when.alternatives;
  return object;
}

Json quotes_json(const ClaimRecord& record) {
  Json quotes = Json::array();
  for (const QuoteRecord& quote : record.quotes) {
    Json object{{"text", quote.text}, {"begin", quote.range.begin.value}, {"end", quote.range.end.value}};
    object["said_by"] = quote.own                                ? "narrator"
                        : quote.role == SpeakerRole::interviewer ? "interviewer"
                                                                 : "other";
    put(object, "speaker", quote.speaker);
    if (quote.time) {
      object["time_begin_ms"] = quote.time->begin.value;
      object["time_end_ms"] = quote.time->end.value;
      object["timing"] = timing_text(quote.timing);
    }
    quotes.push_back(std::move(object));
  }
  return quotes;
}

Json comparisons_json(const ClaimRecord& record) {
  Json comparisons = Json::array();
  for (const Comparison& comparison : record.comparisons) {
    Json object = Json::object();
    put(object, "entry", comparison.entry);
    object["outcome"] = to_string(comparison.outcome);
    if (comparison.intention) object["intention"] = true;
    if (comparison.circular) object["circular"] = true;
    if (!comparison.relation.empty()) object["relation"] = to_string(comparison.relation);
    if (comparison.gap) {
      object["gap_days"] = Json{{"least", comparison.gap->least}, {"most", nullptr}};
      if (comparison.gap->most) object["gap_days"]["most"] = *comparison.gap->most;
    }
    put(object, "noted", comparison.noted);
    put(object, "explanation", comparison.explanation);
    comparisons.push_back(std::move(object));
  }
  return comparisons;
}

Json interview_json(const ClaimRecord& record) {
  Json object{{"key", record.interview}};
  put(object, "narrator", record.narrator);
  put(object, "date", record.interview_date);
  put(object, "accession", record.accession);
  put(object, "repository", record.repository);
  put(object, "recording", record.recording);
  object["transcript_version"] = record.transcript_version;
  put(object, "reading_text_sha256", record.reading_text_sha256);
  put(object, "original_sha256", record.original_sha256);
  return object;
}

Json mentions_json(const Claim& claim) {
  Json mentions = Json::array();
  for (const Mention& mention : claim.mentions) {
    Json object{{"kind", to_string(mention.kind)},
                {"begin", mention.range.begin.value},
                {"end", mention.range.end.value},
                {"value", mention.value}};
    put(object, "rule", mention.rule);
    if (mention.near_match) object["near_match"] = true;
    mentions.push_back(std::move(object));
  }
  return mentions;
}

}  // namespace

std::string claim_json(const ClaimRecord& record) {
  const Claim& claim = record.claim;
  Json object{{"claim", to_string(claim.id)},
              {"status", to_string(claim.status)},
              {"statement", to_string(claim.statement)}};
  put(object, "subject", record.subject);
  put(object, "subject_name", record.subject_name);
  put(object, "place", claim.place);
  put(object, "place_name", record.place_name);
  object["when"] = when_json(claim);
  if (claim.quantity)
    object["number"] = Json{{"least", claim.quantity->least}, {"most", claim.quantity->most}};
  put(object, "attribute", claim.attribute);
  object["basis"] = to_string(claim.basis);
  put(object, "knower", claim.knower);
  object["firmness"] = to_string(claim.firmness);
  object["polarity"] = to_string(claim.polarity);
  if (claim.led) object["led"] = true;
  if (claim.withdrawn) object["withdrawn"] = true;
  object["quotes"] = quotes_json(record);
  object["mentions"] = mentions_json(claim);
  put(object, "reason", claim.reason);
  object["interview"] = interview_json(record);
  put(object, "coded_by", record.coded_by);
  put(object, "coded_at", record.coded_at);
  object["recall"] = recall_json(record.recall);
  object["comparisons"] = comparisons_json(record);
  return object.dump();
}

}  // namespace witnessmark
