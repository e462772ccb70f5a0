#include "witnessmark/terminal/key.h"

#include <algorithm>
#include <array>
#include <utility>

namespace witnessmark {
namespace {

using Name = Key::Name;

constexpr std::array<std::pair<Name, std::string_view>, 14> kNames = {{{Name::enter, "Enter"},
                                                                       {Name::escape, "Escape"},
                                                                       {Name::tab, "Tab"},
                                                                       {Name::back_tab, "BackTab"},
                                                                       {Name::up, "Up"},
                                                                       {Name::down, "Down"},
                                                                       {Name::left, "Left"},
                                                                       {Name::right, "Right"},
                                                                       {Name::page_up, "PageUp"},
                                                                       {Name::page_down, "PageDown"},
                                                                       {Name::home, "Home"},
                                                                       {Name::end, "End"},
                                                                       {Name::backspace, "Backspace"},
                                                                       {Name::del, "Delete"}}};

std::string lower(std::string_view text) {
  std::string made(text);
  std::transform(made.begin(), made.end(), made.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return made;
}

}  // namespace

std::string to_string(const Key& key) {
  if (key.name == Name::text) return key.text == " " ? "Space" : key.text;
  if (key.name == Name::control) return "Ctrl-" + key.text;
  const auto at =
      std::find_if(kNames.begin(), kNames.end(), [&](const auto& row) { return row.first == key.name; });
  return at == kNames.end() ? "" : std::string(at->second);
}

std::optional<Key> parse_key(std::string_view name) {
  const std::string wanted = lower(name);
  if (wanted == "space") return Key{Name::text, " "};
  if (wanted.size() == 6 && wanted.starts_with("ctrl-")) return Key{Name::control, wanted.substr(5)};
  const auto at = std::find_if(kNames.begin(), kNames.end(),
                               [&](const auto& row) { return lower(row.second) == wanted; });
  if (at != kNames.end()) return Key{at->first, ""};
  if (name.size() == 1 && name[0] > ' ' && name[0] < 0x7F) return Key{Name::text, std::string(name)};
  return std::nullopt;
}

}  // namespace witnessmark
