// Reading: the token window moves over the text; where a token can begin a date the grammar reads the longest
// one, the talk gives it a value and is moved on, and reading goes on behind it. No token is read as a
// beginning twice and every rule looks at a bounded number of tokens, so that time is linear in the text.
#include "witnessmark/language/date_expression.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cstring>
#include <map>

#include "language/dates/grammar/grammar.h"
#include "language/dates/talk/talk.h"
#include "language/dates/two_dates.h"
#include "language/dates/words/tokens.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {

std::string_view to_string(TimexType type) {
  switch (type) {
    case TimexType::date:
      return "DATE";
    case TimexType::time:
      return "TIME";
    case TimexType::duration:
      return "DURATION";
    case TimexType::set:
      return "SET";
  }
  return "";
}

bool year_from_talk(const DateExpression& expression) {
  return expression.anchor.starts_with(dates::kTalkOf);
}

std::string dump(const DateExpression& e) {
  std::string text = e.text + " | " + std::string(to_string(e.type)) + " " + e.timex3;
  if (!e.mod.empty()) text += " " + e.mod;
  text += " | " + (e.edtf ? to_string(*e.edtf) : std::string("-"));
  text += " | " + (e.period ? to_string(*e.period) : std::string("-"));
  for (const auto& other : e.alternatives) text += " or " + other;
  if (e.corrected) text += " (taken back)";
  return text;
}

namespace dates {
namespace {

std::vector<Phrase> event_phrases(const std::vector<NamedEvent>& events) {
  std::vector<Phrase> phrases;
  for (std::size_t i = 0; i < events.size(); ++i) {
    const auto add = [&](const std::string& name) {
      Phrase phrase;
      phrase.words = phrase_words(fold(name));
      if (phrase.words.size() > 1 && phrase.words[0] == hash_word("the"))
        phrase.words.erase(phrase.words.begin());
      if (phrase.words.empty()) return;
      phrase.event = static_cast<int>(i);
      phrase.name = name;
      phrases.push_back(std::move(phrase));
    };
    add(events[i].name);
    for (const auto& spoken : events[i].spoken) add(spoken);
  }
  std::stable_sort(phrases.begin(), phrases.end(), [](const Phrase& a, const Phrase& b) {
    return a.words[0] != b.words[0] ? a.words[0] < b.words[0] : a.words.size() > b.words.size();
  });
  return phrases;
}

}  // namespace

/// Code points up to a byte, counted onward from the last place asked for.
class CodePointCounter {
 public:
  explicit CodePointCounter(std::string_view text) : text_(text) {}
  CodePoint at(std::size_t byte) {
    if (byte < byte_) byte_ = 0, count_ = 0;
    std::size_t i = byte_;
    auto count = static_cast<std::int64_t>(byte - byte_);
    constexpr std::uint64_t kHigh = 0x8080808080808080u;
    for (; i + 32 <= byte; i += 32) {  // Less the continuation bytes, 10xxxxxx; mostly there are none.
      std::array<std::uint64_t, 4> groups;
      std::memcpy(groups.data(), text_.data() + i, sizeof groups);
      if (((groups[0] | groups[1] | groups[2] | groups[3]) & kHigh) == 0) continue;
      for (const auto group : groups) count -= std::popcount(group & ~(group << 1) & kHigh);
    }
    for (; i < byte; ++i) count -= (static_cast<unsigned char>(text_[i]) & 0xC0) == 0x80;
    count_ += count;
    byte_ = byte;
    return {count_};
  }

 private:
  std::string_view text_;
  std::size_t byte_ = 0;
  std::int64_t count_ = 0;
};

/// Reads one text after the other; what one leaves behind is the next one's beginning.
class Reader {
 public:
  Reader(const DateLexicon& lexicon, Discourse before)
      : discourse_(std::move(before)),
        talk_(discourse_),
        events_(event_phrases(discourse_.events)),
        tokens_(lexicon.data(), events_.empty() ? nullptr : &events_, discourse_.prose),
        grammar_(tokens_, talk_.setting()) {}
  Reader(const Reader&) = delete;  // Its parts point to one another.
  Reader& operator=(const Reader&) = delete;

  Discourse& discourse() { return discourse_; }

  void go_on_with(std::string speaker, std::optional<Edtf> birth, std::vector<ServicePeriod> service) {
    told_coming_[discourse_.speaker] = std::move(discourse_.told_coming);
    discourse_.told_coming = std::move(told_coming_[speaker]);
    discourse_.speaker = std::move(speaker);
    discourse_.birth = std::move(birth);
    discourse_.service = std::move(service);
    talk_.take_life();
  }

  /// Adds the expressions of the text to `found`.
  void read(std::string_view text, std::vector<DateExpression>& found) {
    tokens_.begin(text);
    counter_ = CodePointCounter(text);
    text_ = text;
    found_ = &found;
    run();
    if (found.empty() && !discourse_.prose) return;
    talk_.put_state(discourse_);
    talk_.take_state();
  }

 private:
  void run() {
    for (std::size_t i = tokens_.refill(0); i < tokens_.size(); i = tokens_.refill(i)) {
      const auto limit = tokens_.safe_end();
      while (i < limit) {
        auto rules = tokens_[i].rules;
        if (rules == 0) {
          ++i;
          continue;
        }
        if ((rules & kLineBegins) != 0) begin_line(i);
        if ((rules & kBehindDeterminer) != 0) rules |= grammar_.rules_behind_determiner(i + 1);
        if ((rules & kLooksAhead) != 0 && !grammar_.worth_a_look(i)) rules &= kLineBegins | kEventMayBegin;
        i = (rules & ~(kBehindDeterminer | kLineBegins)) != 0 ? read_at(i, rules) : i + 1;
      }
    }
  }

  /// Reads what begins at token i; the token to go on with.
  std::size_t read_at(std::size_t i, RuleSet rules) {
    Spec spec;
    if (!grammar_.read(i, rules, spec) || spec.end <= i) return i + 1;
    take(spec);
    return spec.end;
  }

  /// Prose: a short line without a full stop is a heading; the one year in it, if there is one, holds for its
  /// section.
  void begin_line(std::size_t i) {
    constexpr std::size_t kHeadingTokens = 12;
    std::size_t j = i, years = 0;
    std::int64_t year = 0;
    while (tokens_[j].kind != Token::Kind::end && (j == i || !tokens_[j].newline) &&
           j - i <= kHeadingTokens) {
      if (tokens_[j].is_number() && tokens_[j].digits == 4 && tokens_[j].number >= 1000 &&
          tokens_[j].number <= 2199)
        ++years, year = tokens_[j].number;
      ++j;
    }
    const bool heading = j - i <= kHeadingTokens && tokens_[j - 1].sign != '.';
    if (!heading) return talk_.begin_paragraph();
    if (years == 1)
      talk_.begin_section(year);
    else if (years > 1)
      talk_.end_section();
  }

  bool negates(std::size_t i) const {
    const auto& word = tokens_[i];
    if (!word.is_word()) return false;
    const auto said = tokens_.text(word);
    return word.hash == w("not") || word.hash == w("never") ||
           (said.size() > 3 &&
            (said.substr(said.size() - 2) == "'t" || said.substr(said.size() - 4) == "\xE2\x80\x99t"));
  }
  /// "It wasn't", "can't have been", up to i: then "before 1954" is not before it. "We hadn't one before
  /// 1954" is.
  bool denied_being(std::size_t i) const {
    const auto is = [&](std::size_t at, std::uint64_t hash) {
      return tokens_[at].hash == hash && tokens_[at].is_word();
    };
    const auto said = tokens_[i].is_word() ? tokens_.text(tokens_[i]) : std::string_view();
    if (said.starts_with("wasn") || said.starts_with("weren") || said.starts_with("isn")) return negates(i);
    if (!is(i, w("been")) && !is(i, w("be"))) return false;
    for (std::size_t back = 1; back <= 3 && back <= i; ++back)
      if (negates(i - back)) return true;
    return false;
  }

  /// The limit a preposition before the expression sets on it.
  Mod limit_before(const Spec& spec) const {
    if (spec.kind != Spec::Kind::calendar && spec.kind != Spec::Kind::relative &&
        spec.kind != Spec::Kind::event && spec.kind != Spec::Kind::service_edge &&
        spec.kind != Spec::Kind::offset && spec.kind != Spec::Kind::service_year &&
        ((spec.kind != Spec::Kind::era && spec.kind != Spec::Kind::day_word) || talk_.setting().prose) &&
        (spec.kind != Spec::Kind::age || spec.rule != "age"))
      return Mod::none;
    const auto is = [&](std::size_t at, std::uint64_t hash) {
      return tokens_[at].hash == hash && tokens_[at].is_word();
    };
    // "Till the October of 1960."
    const auto i = spec.rule == "month" && is(spec.begin - 1, w("the")) ? spec.begin - 1 : spec.begin;
    if (is(i - 1, w("than"))) {  // no later than, no earlier than, not later than
      if (is(i - 2, w("later"))) return Mod::on_or_before;
      if (is(i - 2, w("earlier")) || is(i - 2, w("sooner"))) return Mod::on_or_after;
      return Mod::none;
    }
    if (is(i - 1, w("to")) && (is(i - 2, w("prior")) || is(i - 2, w("previous")))) return Mod::before;
    if (is(i - 1, w("to")) && is(i - 2, w("up")))  // not: it was coming up to Christmas
      return is(i - 3, w("coming")) || is(i - 3, w("getting")) ? Mod::none : Mod::until;
    if (is(i - 1, w("from")))
      return is(spec.end, w("on")) || is(spec.end, w("onwards")) || is(spec.end, w("onward"))
                 ? Mod::on_or_after
                 : Mod::none;
    if (is(spec.end, w("onwards")) || is(spec.end, w("onward"))) return Mod::on_or_after;
    if (is(spec.end, w("or")) && is(spec.end + 1, w("earlier"))) return Mod::on_or_before;
    if (is(spec.end, w("or")) && is(spec.end + 1, w("later"))) return Mod::on_or_after;
    if (is(spec.end, w("at")) && is(spec.end + 1, w("the")) &&
        !talk_.setting().prose) {  // 1953 at the (very) latest
      const auto at = is(spec.end + 2, w("very")) ? spec.end + 3 : spec.end + 2;
      if (is(at, w("latest"))) return Mod::on_or_before;
      if (is(at, w("earliest"))) return Mod::not_before;
    }
    const auto& before = tokens_[i - 1];
    if (!before.is(Role::limit)) return Mod::none;
    const auto limit = static_cast<Mod>(before.value(Role::limit));
    if (is(i - 2, w("or")) && is(i - 3, w("on"))) {  // on or before the tenth of May
      if (limit == Mod::before) return Mod::on_or_before;
      if (limit == Mod::after) return Mod::not_before;
    }
    const bool denied = is(i - 2, w("not")) || is(i - 2, w("never")) || denied_being(i - 2);
    if (denied && limit == Mod::before) return Mod::not_before;
    if (denied && limit == Mod::after) return Mod::on_or_before;
    const bool stretch = spec.when && std::holds_alternative<EdtfInterval>(spec.when->value);
    if (is(i - 1, w("through")) && stretch) return Mod::none;  // through the war: the whole of it
    if (is(i - 1, w("through")))                               // all through 1957: the whole of it
      for (const auto word : {w("all"), w("right"), w("straight"), w("clear"), w("halfway"), w("midway"),
                              w("partway"), w("way"), w("half-way")})
        if (is(i - 2, word)) return Mod::none;
    if (limit == Mod::until) {
      // "it wasn't until 1963": the thing came then.
      constexpr std::size_t kReach = 9;  // we didn't get one till the spring of '53
      for (std::size_t back = 2; back <= kReach && back <= i; ++back) {
        if (!tokens_[i - back].is_word() || tokens_[i - back + 1].newline) break;
        if (negates(i - back)) return Mod::none;
      }
      return Mod::until;
    }
    return limit;
  }

  /// Fills an expression; takes the meaning's texts.
  void fill(DateExpression& e, const Spec& spec, Meaning& meaning, Mod limit) {
    const auto& first = tokens_[spec.begin];
    const auto& last = tokens_[spec.end - 1];
    const auto end = spec.full_end ? last.full_end() : last.end();
    e.range = {counter_.at(first.begin), counter_.at(end)};
    e.text.assign(text_, first.begin, end - first.begin);
    e.type = meaning.type;
    if (meaning.timex.empty())
      e.timex3 = to_timex(meaning.value).view();
    else
      e.timex3 = std::move(meaning.timex);
    e.mod = mod_name(meaning.mod != Mod::none ? meaning.mod : limit);
    if (meaning.narrowed) {
      auto whole = meaning;
      whole.narrowed.reset();
      whole.part.reset();
      std::optional<Edtf> edtf;
      talk_.put_edtf_of(whole, limit, edtf);
      if (edtf) e.whole = std::move(*edtf);
    }
    talk_.put_edtf_of(meaning, limit, e.edtf);
    if (e.edtf) e.period = talk_.period_of(meaning, limit, *e.edtf);
    e.rule = spec.rule;
    e.anchor = std::move(meaning.anchor);
    e.alternatives = std::move(meaning.alternatives);
    e.corrected = spec.taken_back;
  }

  void take(Spec& spec) {
    constexpr std::size_t kBytesADate = 120, kMost = 16384;
    auto& found = *found_;
    if (found.empty()) found.reserve(std::min(text_.size() / kBytesADate + 1, kMost));
    if (!spec.first) {
      spec.limit = limit_before(spec);
      const auto limit =
          spec.kind == Spec::Kind::age ? Mod::none : spec.limit;  // A limit set by an age is its own.
      auto meaning = talk_.meaning(spec);
      fill(found.emplace_back(), spec, meaning, limit);
      talk_.move_to(meaning, spec, limit);
      talk_.list_year(meaning, tokens_[spec.end - 1].end());
      const bool dated = spec.kind == Spec::Kind::calendar && limit == Mod::none && meaning.value.year_known;
      if (dated && talk_.asks_for_coming() && grammar_.tells_coming(spec)) talk_.put_coming(meaning.value);
      return;
    }
    take_pair(spec, spec.join == Spec::Join::either ? limit_before(spec) : Mod::none, false, found);
  }

  /// Adds the two dates of a spec to `out`, as one expression if they make one. Under a limit: what stands
  /// for it, "by 1957 or 1958" by the later, "after" them after the earlier.
  std::optional<Edtf> take_pair(const Spec& spec, Mod limit, bool nested, std::vector<DateExpression>& out) {
    std::vector<DateExpression> parts;
    parts.reserve(2);
    std::array<std::optional<EdtfDate>, 2> ends;
    std::optional<Edtf> limited;
    const bool by_last = limit == Mod::before || limit == Mod::on_or_before;
    const bool by_first = limit == Mod::after || limit == Mod::not_before;
    std::size_t number = 0;
    for (const auto* part : {spec.first.get(), spec.second.get()}) {
      const bool decides = number == 0 ? by_first : by_last;
      if (part->first) {
        if (auto edge = take_pair(*part, decides ? limit : Mod::none, true, parts)) limited = std::move(edge);
        ++number;
        continue;
      }
      auto meaning = talk_.meaning(*part);
      ends[number++] = talk_.end_of(meaning);
      if (decides) {
        auto copy = meaning;
        talk_.put_edtf_of(copy, limit, limited);
      }
      fill(parts.emplace_back(), *part, meaning, Mod::none);
      talk_.move_to(meaning, *part, Mod::none);
      talk_.list_year(meaning, tokens_[part->end - 1].end());
    }
    if (talk_.setting().prose || spec.join == Spec::Join::none || parts.size() != 2 ||
        !join(spec, parts, ends, nested ? std::nullopt : limited, out))
      for (auto& part : parts) out.push_back(std::move(part));
    return limited;
  }

  /// One expression of two parts; false when they make none.
  bool join(const Spec& spec, std::vector<DateExpression>& parts,
            const std::array<std::optional<EdtfDate>, 2>& ends, const std::optional<Edtf>& limited,
            std::vector<DateExpression>& out) {
    DateExpression e;
    e.range = {parts[0].range.begin, parts[1].range.end};
    const auto& last = tokens_[spec.end - 1];
    const auto begin = tokens_[spec.begin].begin;
    const auto end = spec.second->full_end ? last.full_end() : last.end();
    e.text = std::string(text_.substr(begin, end - begin));
    if (!join_dates({spec, ends, limited, talk_.policy()}, parts, e)) return false;
    out.push_back(std::move(e));
    return true;
  }

  Discourse discourse_;
  std::map<std::string, std::optional<Edtf>, std::less<>> told_coming_;  ///< Of those who spoke before.
  Talk talk_;
  std::vector<Phrase> events_;
  TokenWindow tokens_;
  Grammar grammar_;
  CodePointCounter counter_{{}};
  std::string_view text_;
  std::vector<DateExpression>* found_ = nullptr;
};

}  // namespace dates

DateReading read_dates(std::string_view text, const DateLexicon& lexicon, Discourse before) {
  DateReading reading;
  dates::Reader reader(lexicon, std::move(before));
  reader.read(text, reading.expressions);
  reading.after = std::move(reader.discourse());
  return reading;
}

class DateReader::Impl : public dates::Reader {
 public:
  using Reader::Reader;
};

DateReader::DateReader(const DateLexicon& lexicon, Discourse before)
    : impl_(std::make_unique<Impl>(lexicon, std::move(before))) {}
DateReader::DateReader(DateReader&&) noexcept = default;
DateReader& DateReader::operator=(DateReader&&) noexcept = default;
DateReader::~DateReader() = default;

void DateReader::read(std::string_view text, std::vector<DateExpression>& expressions) {
  expressions.clear();
  impl_->read(text, expressions);
}

void DateReader::go_on_with(std::string speaker, std::optional<Edtf> birth,
                            std::vector<ServicePeriod> service) {
  impl_->go_on_with(std::move(speaker), std::move(birth), std::move(service));
}

const Discourse& DateReader::talk() const {
  return impl_->discourse();
}

}  // namespace witnessmark
