// Date expressions in any text. The first byte chooses what is known of the narrator; the rest is the text.
// Whatever stands there: no crash, ranges in order and apart, every EDTF value valid and printed canonically,
// the same answer twice, and the TIMEX3 output gives the text back.
#include <cstdlib>
#include <filesystem>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/language/date_expression.h"
#include "witnessmark/language/date_lexicon.h"
#include "witnessmark/language/timeml.h"
#include "witnessmark/time/edtf.h"
#include "witnessmark/time/period.h"

using namespace witnessmark;

namespace {

const DateLexicon& english() {
  static const DateLexicon lexicon =
      DateLexicon::load(SystemFileReader(),
                        std::filesystem::path(__FILE__).parent_path() / "../../shared/language/en")
          .value();
  return lexicon;
}

Discourse narrator(unsigned char known) {
  Discourse talk;
  talk.policy = default_date_policy();
  talk.prose = (known & 1) != 0;
  if (known & 2) talk.speech_time = parse_edtf(known & 4 ? "1998-06-15" : "1985").value();
  if (known & 8) talk.birth = parse_edtf(known & 4 ? "1932-02-29" : "1911").value();
  if (known & 16) {
    ServicePeriod service;
    service.when.value = parse_edtf("1951-09/1964-03-28").value();
    talk.service = {service, service};
    service.when.value = parse_edtf("1970").value();
    talk.service.push_back(service);
  }
  if (known & 32) {
    NamedEvent event;
    event.key = "yard";
    event.name = "the yard period";
    event.spoken = {"went into the yard", "the big ice"};
    event.when.value = parse_edtf("1962-08-06/1962-11-30").value();
    talk.events = {event};
  }
  if (known & 64) {
    talk.reference = parse_edtf(known & 4 ? "1962-09-30" : "-0479-22").value();
    talk.reference_year = known & 4 ? 1962 : -479;
  }
  return talk;
}

void require(bool holds) {
  if (!holds) std::abort();
}

void check(const DateExpression& e, CodePoint& last, std::string_view text, const DatePolicy& policy) {
  require(e.range.begin >= last && e.range.end > e.range.begin && !e.text.empty());
  require(CodePointIndex(text).slice(e.range) == e.text);
  last = e.range.end;
  if (e.edtf) {
    const auto printed = to_string(*e.edtf);
    const auto again = parse_edtf(printed);
    require(again.ok() && *again == *e.edtf);
    require(e.period && *e.period == to_period(*e.edtf, policy));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const auto talk = narrator(data[0]);
  const std::string text(reinterpret_cast<const char*>(data + 1), size - 1);
  const auto reading = read_dates(text, english(), talk);
  if (!is_valid_utf8(text)) return 0;
  CodePoint last{0};
  for (const auto& e : reading.expressions) {
    check(e, last, text, talk.policy);
    CodePoint inner = e.range.begin;
    for (const auto& part : e.parts) check(part, inner, text, talk.policy);
  }
  require(read_dates(text, english(), talk).expressions == reading.expressions);
  if (text.find('\0') != std::string::npos) return 0;
  const auto tagged = timeml_around(with_timex3(text, reading.expressions), "fuzz");
  const auto back = parse_timeml(tagged, "fuzz");
  require(back.ok() && back->text == text);
  return 0;
}
