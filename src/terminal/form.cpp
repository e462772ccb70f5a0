#include "terminal/form.h"

#include <fmt/core.h>

#include <array>
#include <charconv>
#include <optional>

#include "witnessmark/app/claim_words.h"

namespace witnessmark {
namespace {

using FieldKind = Field::Kind;

enum ClaimField : std::size_t {
  kStatement,
  kSubject,
  kPlace,
  kWhen,
  kNumber,
  kAttribute,
  kBasis,
  kKnower,
  kFirmness,
  kPolarity,
  kLed
};
enum QueryField : std::size_t { kNarrator, kEquipment, kWhere, kStatementIs, kStatus, kOutcome, kToldAfter };

/// The value `steps` further among the `count` values of an enumeration.
template <typename Enumeration>
void turn(Enumeration& value, int count, int steps) {
  value = static_cast<Enumeration>((static_cast<int>(value) + steps + count) % count);
}

/// The same with none as one more value.
template <typename Enumeration>
void turn(std::optional<Enumeration>& value, int count, int steps) {
  int at = value ? static_cast<int>(*value) + 1 : 0;
  at = (at + steps + count + 1) % (count + 1);
  value = at == 0 ? std::nullopt : std::optional(static_cast<Enumeration>(at - 1));
}

template <typename Enumeration>
std::string word(const std::optional<Enumeration>& value) {
  return value ? std::string(to_string(*value)) : "";
}

std::optional<std::int64_t> number_of(std::string_view text) {
  std::int64_t number = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
  if (read.ec != std::errc{} || read.ptr != text.data() + text.size() || number < 0) return std::nullopt;
  return number;
}

/// "4", "10 to 14" or "10-14".
std::optional<Quantity> quantity_of(const std::string& words) {
  std::size_t divide = words.find(" to ");
  std::size_t length = 4;
  if (divide == std::string::npos) divide = words.find('-'), length = 1;
  const auto least = number_of(words.substr(0, divide));
  const auto most = divide == std::string::npos ? least : number_of(words.substr(divide + length));
  if (!least || !most || *most < *least) return std::nullopt;
  return Quantity{*least, *most, words};
}

std::string number_text(const std::optional<Quantity>& quantity) {
  if (!quantity) return "";
  if (quantity->least == quantity->most) return fmt::format("{}", quantity->least);
  return fmt::format("{} to {}", quantity->least, quantity->most);
}

std::vector<Field> claim_fields(const FormPlace& form) {
  const Claim& claim = form.draft;
  return {{"Statement", std::string(to_string(claim.statement)), FieldKind::choice},
          {"Equipment", form.subject_name, FieldKind::equipment},
          {"Place", form.place_name, FieldKind::place},
          {"When", when_words(claim.when), FieldKind::date},
          {"Number", number_text(claim.quantity), FieldKind::words},
          {"Attribute", claim.attribute, FieldKind::words},
          {"Knows it", std::string(to_string(claim.basis)), FieldKind::choice},
          {"From whom", claim.knower, FieldKind::words},
          {"Firmness", std::string(to_string(claim.firmness)), FieldKind::choice},
          {"Polarity", std::string(to_string(claim.polarity)), FieldKind::choice},
          {"Supplied by", claim.led ? "the interviewer" : "the narrator", FieldKind::choice}};
}

std::vector<Field> query_fields(const FormPlace& form) {
  const ClaimQuery& query = form.query;
  return {{"Narrator", query.speaker, FieldKind::words},
          {"Equipment", form.subject_name.empty() ? query.subject : form.subject_name, FieldKind::equipment},
          {"Place", form.place_name.empty() ? query.place : form.place_name, FieldKind::place},
          {"Statement", word(query.statement), FieldKind::choice},
          {"Status", word(query.status), FieldKind::choice},
          {"Outcome", word(query.outcome), FieldKind::choice},
          {"Told at least … years after", query.recall_least ? fmt::format("{}", *query.recall_least) : "",
           FieldKind::words}};
}

bool turn_claim(Claim& claim, std::size_t field, int steps) {
  switch (field) {
    case kStatement:
      turn(claim.statement, 8, steps);
      return true;
    case kBasis:
      turn(claim.basis, 5, steps);
      return true;
    case kFirmness:
      turn(claim.firmness, 3, steps);
      return true;
    case kPolarity:
      turn(claim.polarity, 2, steps);
      return true;
    case kLed:
      claim.led = !claim.led;
      return true;
    default:
      return false;
  }
}

bool turn_query(ClaimQuery& query, std::size_t field, int steps) {
  switch (field) {
    case kStatementIs:
      turn(query.statement, 8, steps);
      return true;
    case kStatus:
      turn(query.status, 4, steps);
      return true;
    case kOutcome:
      turn(query.outcome, 5, steps);
      return true;
    default:
      return false;
  }
}

bool is_filter(const FormPlace& form) {
  return form.purpose == FormPlace::Purpose::filter;
}

}  // namespace

std::vector<Field> fields_of(const FormPlace& form) {
  return is_filter(form) ? query_fields(form) : claim_fields(form);
}

std::string words_of(const FormPlace& form) {
  const Claim& claim = form.draft;
  std::string words =
      (claim.polarity == Polarity::denied ? "not " : "") + std::string(to_string(claim.statement));
  for (const std::string& part :
       {form.subject_name, number_words(claim), form.place_name, date_words(claim.when)})
    if (!part.empty()) words += " · " + part;
  return words;
}

std::size_t field_to_fill(const Claim& claim) {
  if (what_it_needs(claim).empty()) return kStatement;
  return claim.statement == Statement::count ? kNumber : kAttribute;
}

bool turn_choice(FormPlace& form, std::size_t field, int steps) {
  return is_filter(form) ? turn_query(form.query, field, steps) : turn_claim(form.draft, field, steps);
}

void fill_term(FormPlace& form, std::size_t field, const std::string& key, const std::string& name) {
  const bool subject =
      field == (is_filter(form) ? static_cast<std::size_t>(kEquipment) : static_cast<std::size_t>(kSubject));
  (subject ? form.subject_name : form.place_name) = name;
  Claim& draft = form.draft;
  const Claim& original = form.original;
  if (is_filter(form)) {
    (subject ? form.query.subject : form.query.place) = key;
  } else if (subject) {
    const bool as_it_was = !key.empty() && key == original.subject;
    draft.subject = key;
    draft.subject_words = as_it_was ? original.subject_words : name;
    draft.subject_carried = as_it_was && original.subject_carried;
  } else {
    const bool as_it_was = !key.empty() && key == original.place;
    draft.place = key;
    draft.place_words = as_it_was ? original.place_words : name;
    draft.place_carried = as_it_was && original.place_carried;
  }
}

std::string fill_words(FormPlace& form, std::size_t field, const std::string& words) {
  if (is_filter(form)) {
    if (field == kNarrator) form.query.speaker = words;
    if (field != kToldAfter) return "";
    form.query.recall_least = number_of(words);
    return words.empty() || form.query.recall_least ? "" : "a number of years was asked for";
  }
  if (field == kAttribute) form.draft.attribute = words;
  if (field == kKnower) form.draft.knower = words;
  if (field != kNumber) return "";
  const auto quantity = quantity_of(words);
  if (!words.empty() && !quantity) return "a number is written 4, or 10 to 14";
  form.draft.quantity = quantity;
  return "";
}

void fill_date(FormPlace& form, const ClaimTime& when) {
  const Reading reading = form.draft.when.reading;
  form.draft.when = when.dated == form.original.when.dated ? form.original.when : when;
  form.draft.when.reading = reading;
}

void note_change(FormPlace& form) {
  form.changed = form.purpose != FormPlace::Purpose::correct || !(form.draft == form.original);
}

void empty_field(FormPlace& form, std::size_t field) {
  const auto fields = fields_of(form);
  if (field >= fields.size()) return;
  switch (fields[field].kind) {
    case FieldKind::equipment:
    case FieldKind::place:
      return fill_term(form, field, "", "");
    case FieldKind::date:
      return fill_date(form, {});
    case FieldKind::words:
      fill_words(form, field, "");
      return;
    case FieldKind::choice:
      break;
  }
  if (!is_filter(form)) return;
  if (field == kStatementIs) form.query.statement.reset();
  if (field == kStatus) form.query.status.reset();
  if (field == kOutcome) form.query.outcome.reset();
}

}  // namespace witnessmark
