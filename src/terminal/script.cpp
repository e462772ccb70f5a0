#include <fmt/ostream.h>

#include <charconv>

#include "witnessmark/base/display_width.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/terminal/player.h"
#include "witnessmark/terminal/review.h"

namespace witnessmark {
namespace {

/// "80x24".
std::optional<Size> parse_size(std::string_view text) {
  Size size;
  const std::size_t cross = text.find('x');
  if (cross == std::string_view::npos) return std::nullopt;
  const auto number = [](std::string_view digits, int& value) {
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return read.ec == std::errc{} && read.ptr == digits.data() + digits.size() && value > 0 && value < 10000;
  };
  if (!number(text.substr(0, cross), size.columns) || !number(text.substr(cross + 1), size.rows))
    return std::nullopt;
  return size;
}

class Script {
 public:
  Script(Session& session, std::string_view source, std::ostream& out)
      : session_(session), source_(source), out_(out) {}

  Result<void> line(std::string_view text, std::int64_t number) {
    number_ = number;
    text = trim(text);
    if (text.empty() || text.front() == '#') return {};
    const std::size_t blank = std::min(text.find(' '), text.size());
    const std::string_view order = text.substr(0, blank);
    const std::string_view rest = text.substr(std::min(blank + 1, text.size()));
    if (order == "show") return show();
    if (order == "say") return say();
    if (order == "key" || order == "try")
      return keys(rest, static_cast<std::int64_t>(blank) + 2, order == "try");
    if (order == "type") return type(rest);
    if (order == "size") return size(rest);
    return fault(1, fmt::format("“{}” is no order", visible(order)),
                 "orders are size, key, try, type, show and say");
  }

 private:
  Error fault(std::int64_t column, std::string message, std::string advice) const {
    return {source_, number_, column, std::move(message), std::move(advice)};
  }

  Result<void> show() {
    const Picture picture = render(view(session_.state()), session_.state().size);
    fmt::print(out_, "{}", as_text(picture));
    fmt::print(out_, "{}\n", std::string(static_cast<std::size_t>(picture.size.columns), '~'));
    return {};
  }

  Result<void> say() {
    fmt::print(out_, "{}\n", visible(session_.state().message));
    out_.flush();
    return {};
  }

  Error refused(std::int64_t column, std::string_view what) const {
    const std::string key = fmt::format("“{}”", what), why = session_.state().message;
    return fault(column, visible(why.starts_with(key) ? why : key + ": " + why),
                 "what comes before it is done and saved, what follows is not; try instead of key goes on");
  }

  Result<void> keys(std::string_view names, std::int64_t column, bool may_be_refused) {
    while (!names.empty()) {
      const std::size_t end = std::min(names.find(' '), names.size());
      const std::string_view name = names.substr(0, end);
      if (!name.empty()) {
        const auto key = parse_key(name);
        if (!key)
          return fault(column, fmt::format("“{}” is no key", visible(name)),
                       "as Down, Enter, Escape, Ctrl-z, s");
        session_.press(*key);
        if (session_.state().refused && !may_be_refused) return refused(column, name);
      }
      names.remove_prefix(std::min(end + 1, names.size()));
      column += static_cast<std::int64_t>(end) + 1;
    }
    return {};
  }

  Result<void> type(std::string_view words) {
    if (!session_.state().prompt)
      return fault(1, "nothing is asked for, so nothing can be typed", "open a question or a field first");
    for (const Grapheme& grapheme : graphemes(words))
      session_.press({Key::Name::text, std::string(grapheme.text)});
    return {};
  }

  Result<void> size(std::string_view text) {
    const auto size = parse_size(text);
    if (!size) return fault(6, fmt::format("“{}” is no size", visible(text)), "columns and rows, as 80x24");
    session_.handle(Resized{*size});
    return {};
  }

  Session& session_;
  std::string source_;
  std::ostream& out_;
  std::int64_t number_ = 0;
};

}  // namespace

Result<void> review_by_script(CodingDesk& desk, const ReviewMode& request, std::ostream& out) {
  Session session(desk, Size{80, 24}, player_program(request.player));
  Script play(session, request.script_source, out);
  std::string_view script = request.script;
  std::int64_t number = 0;
  while (!script.empty() && !session.finished()) {
    const std::size_t end = std::min(script.find('\n'), script.size());
    if (auto done = play.line(script.substr(0, end), ++number); !done) return done;
    script.remove_prefix(std::min(end + 1, script.size()));
  }
  return {};
}

}  // namespace witnessmark
