// A file belongs to the layer its folder is named after. Each of its include lines must then be one of
//   - a header of the C++ standard library: a name in angle brackets without dot and slash;
//   - a header of an outside library in kLibraries that lists the layer;
//   - a public header "witnessmark/<layer>/x.h" of a layer that kLayers lets it see;
//   - in src/, a private header of its own layer, "<layer>/x.h" or "x.h" beside it.
// Public headers see no outside library but fmt, so that who uses them needs none. Anything else is a fault,
// an unknown library too: a new one is a decision, made by a line in the table.
#include "layering.h"

#include <algorithm>
#include <initializer_list>
#include <optional>

namespace witnessmark::house {
namespace {

using Names = std::vector<std::string_view>;

struct Layer {
  std::string_view name;
  Names sees;  ///< Besides itself.
};

const std::vector<Layer>& layers() {
  static const std::vector<Layer> kLayers = {
      {"base", {}},
      {"time", {"base"}},
      {"model", {"base", "time"}},
      {"read", {"base", "time", "model"}},
      {"language", {"base", "time", "model"}},
      {"weigh", {"base", "time", "model"}},
      {"store", {"base", "time", "model"}},
      {"write", {"base", "time", "model"}},
      {"app", {"base", "time", "model", "read", "language", "weigh", "store", "write"}},
      {"cli", {"base", "time", "model", "read", "language", "weigh", "store", "write", "app"}},
      {"terminal", {"base", "time", "model", "app"}},
      {"main", {"base", "app", "cli", "terminal"}},
  };
  return kLayers;
}

struct Library {
  std::string_view prefix;  ///< Of the name in the include line.
  Names layers;             ///< That may use it; empty for all.
};

const std::vector<Library>& libraries() {
  static const std::vector<Library> kLibraries = {
      {"fmt/", {}},
      {"unicode/", {"base", "language"}},
      {"openssl/", {"base"}},
      {"pugixml.hpp", {"read", "write"}},
      {"zip.h", {"read"}},
      {"re2/", {"language"}},
      {"sqlite3.h", {"store"}},
      {"nlohmann/", {"time", "store", "write", "app", "cli"}},
      {"CLI/", {"cli"}},
      {"curses.h", {"terminal"}},
      {"ncurses.h", {"terminal"}},
      {"ncursesw/", {"terminal"}},
      {"term.h", {"terminal"}},
      {"spawn.h", {"terminal"}},
      // POSIX: files and locks, what a terminal is, who is at it.
      {"fcntl.h", {"base", "store", "terminal"}},
      {"sys/", {"base", "store", "terminal"}},
      {"unistd.h", {"base", "store", "cli", "terminal", "main"}},
      {"pwd.h", {"main"}},
      {"termios.h", {"terminal"}},
      {"poll.h", {"terminal"}},
  };
  return kLibraries;
}

bool holds(const Names& names, std::string_view name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

const Layer* find_layer(std::string_view name) {
  const auto found =
      std::find_if(layers().begin(), layers().end(), [&](const Layer& layer) { return layer.name == name; });
  return found == layers().end() ? nullptr : &*found;
}

/// The text between two slashes after the prefix; empty when there is none.
std::string_view folder_after(std::string_view path, std::string_view prefix) {
  if (!path.starts_with(prefix)) return {};
  path.remove_prefix(prefix.size());
  const std::size_t slash = path.find('/');
  return slash == std::string_view::npos ? std::string_view{} : path.substr(0, slash);
}

/// What is wrong with including `name`; empty when nothing is.
std::string quoted_fault(const Layer& layer, bool is_public, std::string_view name) {
  if (const std::string_view other = folder_after(name, "witnessmark/"); !other.empty()) {
    if (find_layer(other) == nullptr) return "there is no layer " + std::string(other);
    if (other == layer.name || holds(layer.sees, other)) return {};
    return std::string(layer.name) + " must not include " + std::string(other);
  }
  const std::string_view folder = folder_after(name, "");
  if (is_public) return "a public header includes public headers only, by \"witnessmark/<layer>/x.h\"";
  if (folder == layer.name || name.find('/') == std::string_view::npos) return {};
  if (find_layer(folder) != nullptr) {
    return std::string(layer.name) + " must not include private headers of " + std::string(folder);
  }
  return "include by \"witnessmark/<layer>/x.h\" or \"" + std::string(layer.name) + "/x.h\"";
}

std::string bracketed_fault(const Layer& layer, bool is_public, std::string_view name) {
  if (name.find_first_of("./") == std::string_view::npos) return {};
  for (const Library& library : libraries()) {
    if (!name.starts_with(library.prefix)) continue;
    if (library.layers.empty()) return {};
    if (!holds(library.layers, layer.name))
      return std::string(layer.name) + " must not use <" + std::string(name) + ">";
    return is_public ? "a public header must not need <" + std::string(name) + ">" : std::string();
  }
  return "<" + std::string(name) + "> is in no library the project has chosen";
}

std::string_view without_space(std::string_view text) {
  return text.substr(std::min(text.find_first_not_of(" \t\r"), text.size()));
}

/// What follows `#include` (or one of its relatives) in the line; nothing when it is another line.
std::optional<std::string_view> included_by(std::string_view line) {
  line = without_space(line);
  if (!line.starts_with('#')) return std::nullopt;
  line = without_space(line.substr(1));
  for (const std::string_view directive : {"include_next", "include", "import"}) {
    if (line.starts_with(directive)) return without_space(line.substr(directive.size()));
  }
  return std::nullopt;
}

}  // namespace

std::vector<std::string> layering_faults(std::string_view path, std::string_view text) {
  const bool is_public = path.starts_with("include/");
  std::string_view name = folder_after(path, is_public ? "include/witnessmark/" : "src/");
  if (path == "src/main.cpp") name = "main";
  const Layer* layer = find_layer(name);
  if (layer == nullptr) return {std::string(path) + ":1: stands in no layer"};

  std::vector<std::string> faults;
  for (int line = 1; !text.empty(); ++line) {
    const std::size_t length = std::min(text.find('\n'), text.size());
    const auto included = included_by(text.substr(0, length));
    text.remove_prefix(std::min(length + 1, text.size()));
    if (!included) continue;
    std::string fault = "an include line that names no file";
    const std::string_view name_and_rest = included->substr(std::min<std::size_t>(1, included->size()));
    if (included->starts_with('"')) {
      fault = quoted_fault(*layer, is_public, name_and_rest.substr(0, name_and_rest.find('"')));
    } else if (included->starts_with('<')) {
      fault = bracketed_fault(*layer, is_public, name_and_rest.substr(0, name_and_rest.find('>')));
    }
    if (!fault.empty()) faults.push_back(std::string(path) + ":" + std::to_string(line) + ": " + fault);
  }
  return faults;
}

}  // namespace witnessmark::house
