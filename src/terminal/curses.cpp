// The only file that knows the terminal: it reads keys and paints pictures.
#include <ncurses.h>
#include <termios.h>
#include <unistd.h>

#include <array>
#include <clocale>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <string>

#include "witnessmark/base/append_utf8.h"
#include "witnessmark/base/display_width.h"
#include "witnessmark/terminal/player.h"
#include "witnessmark/terminal/review.h"

// Last, for it makes macros of everyday words.
#include <term.h>
#undef columns
#undef lines
#undef tab
#undef back_tab

namespace witnessmark {
namespace {

// What a crash needs to give the terminal back. A signal handler can be told nothing, so this is the one
// place that keeps anything outside a value; it is written once, before the handlers are set.
termios given_back{};
std::array<char, 128> leaving{};
std::size_t leaving_size = 0;
bool handlers_set = false;

constexpr int kFatal[] = {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT, SIGTERM, SIGHUP};

extern "C" void give_terminal_back(int signal_number) {
  if (write(STDOUT_FILENO, leaving.data(), leaving_size) < 0) _exit(128 + signal_number);
  tcsetattr(STDOUT_FILENO, TCSANOW, &given_back);
  std::signal(signal_number, SIG_DFL);
  std::raise(signal_number);
}

void set_handlers() {
  if (handlers_set) return;
  tcgetattr(STDOUT_FILENO, &given_back);
  handlers_set = true;
}

/// After the terminal is known: the sequences that show the cursor, end all attributes and leave the other
/// screen.
void arm_handlers() {
  for (const char* name : {"cnorm", "sgr0", "rmcup"}) {
    const char* sequence = tigetstr(name);
    if (sequence == nullptr || sequence == reinterpret_cast<char*>(-1)) continue;
    const std::size_t size = std::strlen(sequence);
    if (leaving_size + size > leaving.size()) break;
    std::memcpy(leaving.data() + leaving_size, sequence, size);
    leaving_size += size;
  }
  for (const int signal_number : kFatal) std::signal(signal_number, give_terminal_back);
}

enum Colour : short { kGood = 1, kBad, kWarning, kMark };

attr_t look(Role role, bool colour) {
  const auto pair = [colour](short number) {
    return colour ? static_cast<attr_t>(COLOR_PAIR(number)) : A_NORMAL;
  };
  switch (role) {
    case Role::heading:
      return A_REVERSE;
    case Role::label:
    case Role::key:
      return A_BOLD;
    case Role::faint:
      return A_DIM;
    case Role::quote:
      return A_NORMAL;
    case Role::mark:
      return A_UNDERLINE | pair(kMark);
    case Role::chosen:
      return A_BOLD | A_REVERSE;
    case Role::picked:
      return A_REVERSE;
    case Role::good:
      return A_BOLD | pair(kGood);
    case Role::bad:
      return A_BOLD | pair(kBad);
    case Role::warning:
      return pair(kWarning);
    case Role::input:
      return A_UNDERLINE;
    case Role::plain:
      return A_NORMAL;
  }
  return A_NORMAL;
}

class Screen {
 public:
  explicit Screen(const ReviewMode& request) {
    if (std::setlocale(LC_CTYPE, "") == nullptr || MB_CUR_MAX == 1) std::setlocale(LC_CTYPE, "C.UTF-8");
    set_handlers();
    initscr();
    arm_handlers();
    raw();
    noecho();
    keypad(stdscr, TRUE);
    // What terminals send for Home and End besides what their description says.
    for (const char* home : {"\033[1~", "\033[7~", "\033[H", "\033OH"}) define_key(home, KEY_HOME);
    for (const char* end : {"\033[4~", "\033[8~", "\033[F", "\033OF"}) define_key(end, KEY_END);
    set_escdelay(50);
    colour_ = request.colour && has_colors();
    if (colour_) {
      start_color();
      use_default_colors();
      // Of the eight every terminal has, those that read on light and on dark.
      init_pair(kGood, COLOR_GREEN, -1);
      init_pair(kBad, COLOR_RED, -1);
      init_pair(kWarning, COLOR_MAGENTA, -1);
      init_pair(kMark, COLOR_CYAN, -1);
    }
    if (request.mouse) mousemask(BUTTON4_PRESSED | BUTTON5_PRESSED, nullptr);
  }
  Screen(const Screen&) = delete;  // there is one terminal
  Screen& operator=(const Screen&) = delete;
  ~Screen() { endwin(); }

  static Size size() { return {std::max(1, getmaxx(stdscr)), std::max(1, getmaxy(stdscr))}; }

  void paint(const Picture& picture) const {
    erase();
    for (std::size_t row = 0; row < picture.lines.size(); ++row) {
      int column = 0;
      for (const Span& span : picture.lines[row]) {
        attrset(look(span.role, colour_));
        mvaddstr(static_cast<int>(row), column, span.text.c_str());
        column += display_width(span.text);
      }
    }
    attrset(A_NORMAL);
    curs_set(picture.cursor ? 1 : 0);
    if (picture.cursor) move(picture.cursor->rows, picture.cursor->columns);
    refresh();
  }

  static void suspend() {
    def_prog_mode();
    endwin();
    std::raise(SIGTSTP);
    reset_prog_mode();
    refresh();
  }

 private:
  bool colour_ = false;
};

std::optional<Event> function_key(wint_t code) {
  using Name = Key::Name;
  switch (code) {
    case KEY_RESIZE:
      return Resized{Screen::size()};
    case KEY_UP:
      return KeyPressed{{Name::up, ""}};
    case KEY_DOWN:
      return KeyPressed{{Name::down, ""}};
    case KEY_LEFT:
      return KeyPressed{{Name::left, ""}};
    case KEY_RIGHT:
      return KeyPressed{{Name::right, ""}};
    case KEY_PPAGE:
      return KeyPressed{{Name::page_up, ""}};
    case KEY_NPAGE:
      return KeyPressed{{Name::page_down, ""}};
    case KEY_HOME:
      return KeyPressed{{Name::home, ""}};
    case KEY_END:
      return KeyPressed{{Name::end, ""}};
    case KEY_BTAB:
      return KeyPressed{{Name::back_tab, ""}};
    case KEY_BACKSPACE:
      return KeyPressed{{Name::backspace, ""}};
    case KEY_DC:
      return KeyPressed{{Name::del, ""}};
    case KEY_ENTER:
      return KeyPressed{{Name::enter, ""}};
    case KEY_MOUSE: {
      MEVENT mouse;
      if (getmouse(&mouse) != OK) return std::nullopt;
      return KeyPressed{{(mouse.bstate & BUTTON4_PRESSED) != 0 ? Name::up : Name::down, ""}};
    }
    default:
      return std::nullopt;
  }
}

/// Nothing for what is no key to us; the screen has ended when the terminal is gone.
std::optional<Event> read_event(bool& gone) {
  wint_t code = 0;
  const int kind = get_wch(&code);
  using Name = Key::Name;
  if (kind == ERR) {
    gone = true;
    return std::nullopt;
  }
  if (kind == KEY_CODE_YES) return function_key(code);
  switch (code) {
    case '\r':
    case '\n':
      return KeyPressed{{Name::enter, ""}};
    case '\t':
      return KeyPressed{{Name::tab, ""}};
    case 27:
      return KeyPressed{{Name::escape, ""}};
    case 8:
    case 127:
      return KeyPressed{{Name::backspace, ""}};
    default:
      break;
  }
  if (code < 27) return KeyPressed{{Name::control, std::string(1, static_cast<char>('a' + code - 1))}};
  if (code < 32) return std::nullopt;
  std::string typed;
  append_utf8(typed, static_cast<std::uint32_t>(code));
  return KeyPressed{{Name::text, std::move(typed)}};
}

}  // namespace

Result<void> review_on_terminal(CodingDesk& desk, const ReviewMode& request) {
  if (isatty(STDIN_FILENO) == 0 || isatty(STDOUT_FILENO) == 0)
    return Error{"", 0, 0, "there is no terminal to draw on", "use --plain, or --script FILE"};
  int fault = 0;
  if (setupterm(nullptr, STDOUT_FILENO, &fault) != OK || tigetstr("cup") == nullptr)
    return Error{"", 0, 0, "this terminal cannot move its cursor", "set TERM, or use --plain"};
  Screen screen(request);
  Session session(desk, Screen::size(), player_program(request.player));
  session.while_working([&screen](const State& state) { screen.paint(render(view(state), state.size)); });
  bool gone = false;
  while (!session.finished() && !gone) {
    screen.paint(render(view(session.state()), session.state().size));
    if (const auto event = read_event(gone)) session.handle(*event);
    if (session.take_suspend()) {
      Screen::suspend();
      session.handle(Resized{Screen::size()});
    }
  }
  return {};
}

}  // namespace witnessmark
