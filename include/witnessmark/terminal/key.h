#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace witnessmark {

/// A key as the screens know it.
struct Key {
  enum class Name {
    text,     ///< Something typed: `text` holds it, in UTF-8.
    control,  ///< With the control key: `text` holds the lower-case letter.
    enter,
    escape,
    tab,
    back_tab,
    up,
    down,
    left,
    right,
    page_up,
    page_down,
    home,
    end,
    backspace,
    del
  };
  Name name = Name::text;
  std::string text = {};

  bool is(std::string_view typed) const { return name == Name::text && text == typed; }
  bool operator==(const Key&) const = default;
};

/// "s", "Space", "Enter", "Down", "Ctrl-r": what scripts and the line mode write.
std::string to_string(const Key& key);
/// The same names, in any case but for single letters; nothing for other words.
std::optional<Key> parse_key(std::string_view name);

}  // namespace witnessmark
