#include "app/dates/whole_date.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/time/edtf.h"

namespace witnessmark {
namespace {

/// "1951-13", "XXXX-8", "1957~?": meant as EDTF, not as people say dates.
bool looks_like_edtf(std::string_view text) {
  constexpr std::size_t kYear = 4;
  if (text.size() < kYear || (text.size() > kYear && text[kYear] == ' ')) return false;
  return std::all_of(text.begin(), text.begin() + kYear,
                     [](char c) { return (c >= '0' && c <= '9') || c == 'X'; });
}

/// A word beside a date that says nothing the date does not.
bool says_no_more(std::string_view word, const Edtf& date) {
  constexpr std::array<std::string_view, 9> kEmpty{"in", "on", "at", "the", "during", "of", "it", "was", ","};
  const std::string folded = fold(word);
  if (folded == "from") return std::holds_alternative<EdtfInterval>(date.value);
  if (folded == "either") return std::holds_alternative<EdtfSet>(date.value);
  return std::find(kEmpty.begin(), kEmpty.end(), folded) != kEmpty.end();
}

/// What is read of words: the first date.
class TypedDateReader {
 public:
  TypedDateReader(const DateLexicon& lexicon, const Discourse& discourse)
      : lexicon_(lexicon), discourse_(discourse) {}

  std::optional<DateExpression> first(const std::string& text) const {
    for (DateExpression& expression : read_dates(text, lexicon_, discourse_).expressions)
      if (expression.edtf && expression.period) return std::move(expression);
    return std::nullopt;
  }

  /// Whether the date says all that the text does. A word outside it ("before" Easter, "not" before) belongs
  /// to it when without that word another date is read.
  bool whole(const std::string& text, const DateExpression& read) const {
    const ByteRange said = CodePointIndex(text).to_bytes(read.range);
    std::size_t begin = 0;
    while ((begin = text.find_first_not_of(' ', begin)) != std::string::npos) {
      const std::size_t end = std::min(text.find(' ', begin), text.size());
      const bool outside = static_cast<std::int64_t>(end) <= said.begin.value ||
                           static_cast<std::int64_t>(begin) >= said.end.value;
      if (outside && !counts(text, begin, end, read)) return false;
      // What hangs on the date without a blank: "1957?!".
      const bool across = !outside && (static_cast<std::int64_t>(begin) < said.begin.value ||
                                       static_cast<std::int64_t>(end) > said.end.value);
      if (across) return false;
      begin = end;
    }
    return true;
  }

 private:
  bool counts(const std::string& text, std::size_t begin, std::size_t end, const DateExpression& read) const {
    if (says_no_more(std::string_view(text).substr(begin, end - begin), *read.edtf)) return true;
    const auto without = first(text.substr(0, begin) + text.substr(end));
    return !without || without->edtf != read.edtf;
  }

  const DateLexicon& lexicon_;
  const Discourse& discourse_;
};

}  // namespace

Result<DateExpression> read_whole_date(std::string_view given, const DateLexicon& lexicon,
                                       const Discourse& discourse) {
  const std::string text(trim(given));
  if (looks_like_edtf(text)) {
    if (const auto edtf = parse_edtf(text); !edtf) {
      Error error = edtf.error();
      error.advice = "write EDTF (1957-21, 1962~, 1957/1959) or as people say it (late sixty-two)";
      return error;
    }
  }
  const TypedDateReader reader(lexicon, discourse);
  std::string words = text;
  auto read = reader.first(words);
  if (!read) {  // "fifty-eight or fifty-nine" might count something in talk; here it is a date
    words = "in " + text;
    read = reader.first(words);
  }
  if (!read)
    return Error{
        "", 0, 0, fmt::format("no date can be read from “{}”", text),
        "write it as people say it (late sixty-two, the spring of 1957, before Easter 1957) or in EDTF "
        "(1957-21, 1962~)"};
  if (!reader.whole(words, *read))
    return Error{"", 0, 0, fmt::format("only “{}” can be read of “{}”", read->text, text),
                 "write one date, without other words; two that bound a time as “from 1957 to 1959”, or as "
                 "“between 1957 and 1959” for some time in it"};
  return *std::move(read);
}

}  // namespace witnessmark
