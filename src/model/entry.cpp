#include "witnessmark/model/entry.h"

#include <fmt/format.h>

#include "model/names.h"

namespace witnessmark {
namespace {

constexpr std::pair<SourceKind, std::string_view> kSourceKinds[] = {
    {SourceKind::physical_trace, "physical-trace"},
    {SourceKind::photograph, "photograph"},
    {SourceKind::drawing, "drawing"},
    {SourceKind::order, "order"},
    {SourceKind::log, "log"},
    {SourceKind::correspondence, "correspondence"},
    {SourceKind::publication, "publication"},
    {SourceKind::testimony, "testimony"},
    {SourceKind::object_record, "object-record"},
};
constexpr std::pair<Nature, std::string_view> kNatures[] = {
    {Nature::done, "done"},
    {Nature::intended, "intended"},
};
constexpr std::pair<Identification, std::string_view> kIdentifications[] = {
    {Identification::certain, "certain"},
    {Identification::probable, "probable"},
    {Identification::possible, "possible"},
};
constexpr std::pair<SpotVisible, std::string_view> kVisible[] = {
    {SpotVisible::not_stated, "not-stated"},
    {SpotVisible::yes, "yes"},
    {SpotVisible::no, "no"},
    {SpotVisible::partly, "partly"},
};
constexpr std::pair<Fabric, std::string_view> kFabrics[] = {
    {Fabric::unknown, "unknown"},
    {Fabric::original, "original"},
    {Fabric::restored, "restored"},
};

}  // namespace

std::string_view to_string(SourceKind kind) {
  return word_of(kSourceKinds, kind);
}
std::string_view to_string(Nature nature) {
  return word_of(kNatures, nature);
}
std::string_view to_string(Identification identification) {
  return word_of(kIdentifications, identification);
}
std::string_view to_string(SpotVisible visible) {
  return word_of(kVisible, visible);
}
std::string_view to_string(Fabric fabric) {
  return word_of(kFabrics, fabric);
}
std::optional<SourceKind> parse_source_kind(std::string_view text) {
  return value_of(kSourceKinds, text);
}
std::optional<Nature> parse_nature(std::string_view text) {
  return value_of(kNatures, text);
}
std::optional<Identification> parse_identification(std::string_view text) {
  return value_of(kIdentifications, text);
}
std::optional<SpotVisible> parse_spot_visible(std::string_view text) {
  return value_of(kVisible, text);
}
std::optional<Fabric> parse_fabric(std::string_view text) {
  return value_of(kFabrics, text);
}

std::string_view in_words(SourceKind kind) {
  switch (kind) {
    case SourceKind::physical_trace:
      return "physical trace";
    case SourceKind::object_record:
      return "object record";
    default:
      return to_string(kind);
  }
}

std::string dump(const Entry& entry) {
  std::string line(to_string(entry.statement));
  line += " " + (entry.subject.empty() ? std::string("-") : entry.subject);
  if (!entry.place.empty()) line += "@" + entry.place;
  line += " " + to_string(entry.when);
  if (entry.number) line += fmt::format(" n={}", *entry.number);
  if (!entry.attribute.empty()) line += " {" + entry.attribute + "}";
  if (entry.nature == Nature::intended) line += " intended";
  if (entry.identification != Identification::certain) {
    line += " " + std::string(to_string(entry.identification));
  }
  return line + " (" + entry.source + ")";
}

}  // namespace witnessmark
