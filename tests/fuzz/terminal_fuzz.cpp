// Keys, typed text and sizes as they come, at a desk with a small site: nothing may crash, leak, or draw
// outside the screen, and the site file must be sound afterwards. The data sets read by the desk are those of
// the source tree.
#include <cstdint>
#include <cstdlib>
#include <iostream>

#include "../app/whole_job.h"
#include "witnessmark/app/coding_desk.h"
#include "witnessmark/base/display_width.h"
#include "witnessmark/store/verify.h"
#include "witnessmark/terminal/session.h"

using namespace witnessmark;

namespace {

void insist(bool holds, const char* what) {
  if (holds) return;
  std::cerr << what << "\n";
  std::abort();
}

/// One site for many inputs: what was decided before is part of what is tried. It is made anew now and then.
class Desk {
 public:
  Desk() : files_(files_of(folder())), around_(surroundings_of(files_, to_day({2026, 1, 15}))) { renew(); }

  CodingDesk& get() {
    if (++used_ % 200 == 0) renew();
    return *desk_;
  }

 private:
  static std::filesystem::path folder() {
    return source_tree() / "tests" / "golden" / "small-site" / "input";
  }
  void renew() {
    if (desk_) insist(verify(desk_->site()).accepted(), "the site file has a fault");
    auto made = CodingDesk::at(whole_job(files_, folder(), around_.today), around_);
    insist(made.ok(), "no desk");
    desk_.emplace(std::move(made).value());
  }

  MemoryFiles files_;
  Surroundings around_;
  std::optional<CodingDesk> desk_;
  std::size_t used_ = 0;
};

constexpr Key::Name kNames[] = {
    Key::Name::enter, Key::Name::escape, Key::Name::tab,       Key::Name::back_tab, Key::Name::up,
    Key::Name::down,  Key::Name::left,   Key::Name::right,     Key::Name::page_up,  Key::Name::page_down,
    Key::Name::home,  Key::Name::end,    Key::Name::backspace, Key::Name::del};
const char* const kTyped[] = {"\u706F", "e\u0301", "\u05D0", "\u0000", "\U0001F44D"};

/// A byte is a key; a few stand for another size or for what one may paste.
void step(Session& session, std::uint8_t byte, std::uint8_t next) {
  if (byte < std::size(kNames)) {
    session.press({kNames[byte], ""});
  } else if (byte < 32) {
    session.handle(Resized{{1 + next % 160, 1 + next / 5}});
  } else if (byte < 127) {
    session.press({Key::Name::text, std::string(1, static_cast<char>(byte))});
  } else if (byte < 160) {
    session.press({Key::Name::control, std::string(1, static_cast<char>('d' + byte % 20))});
  } else {
    session.press({Key::Name::text, kTyped[byte % std::size(kTyped)]});
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static Desk desk;
  Session session(desk.get(), Size{80, 24});
  for (std::size_t i = 0; i < size && !session.finished(); ++i) {
    step(session, data[i], i + 1 < size ? data[i + 1] : 0);
    const Size screen = session.state().size;
    const Picture picture = render(view(session.state()), screen);
    insist(picture.lines.size() == static_cast<std::size_t>(screen.rows), "as many lines as rows");
    for (const Line& line : picture.lines)
      insist(display_width(as_text(line)) <= screen.columns, "no line wider than the screen");
    insist(!session.state().places.empty(), "one is somewhere");
  }
  return 0;
}
