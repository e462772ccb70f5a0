#include "read/transcripts/line_opening.h"

#include <algorithm>

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

std::size_t skip_spaces(std::string_view line, std::size_t at) {
  while (at < line.size() && (line[at] == ' ' || line[at] == '\t')) ++at;
  // A no-break space, as word processors leave them.
  if (line.substr(at).starts_with("\u00A0")) return skip_spaces(line, at + 2);
  return at;
}

/// A bare time: alone on the line, or with hours and followed by a space.
std::optional<StampReading> read_bare_stamp(std::string_view text) {
  const auto stamp = read_stamp(text);
  if (!stamp || !stamp->time) return std::nullopt;
  const std::string_view after = text.substr(stamp->length);
  if (trim(after).empty()) return stamp;
  if (stamp->has_hours && (after.front() == ' ' || after.front() == '\t')) return stamp;
  return std::nullopt;
}

/// A name without colon that takes up the line, but for a time.
bool take_name(std::string_view line, std::string_view name, Millisecond time, LineOpening& opening) {
  const auto shape = label_shape(std::string(name) + ":");
  if (!shape || !shape->aside.empty()) return false;
  opening.label = LabelShape{name, {}, line.size()};
  opening.label_stamp = time;
  opening.after_label = line.size();
  return true;
}

/// "AMORY  0:14": a name and a time alone on a line, as some machines write it.
bool read_name_and_time(std::string_view line, std::size_t at, LineOpening& opening) {
  const std::string_view rest = trim(line.substr(at));
  const std::size_t space = rest.find_last_of(" \t");
  if (space == rest.npos || rest.find(':') < space) return false;
  const auto stamp = read_stamp(rest.substr(space + 1));
  if (!stamp || !stamp->time || stamp->length != rest.size() - space - 1) return false;
  return take_name(line, trim(rest.substr(0, space)), *stamp->time, opening);
}

void read_label(std::string_view line, std::size_t at, LineOpening& opening) {
  opening.label_begin = at;
  opening.label = label_shape(line.substr(at));
  if (!opening.label) {
    read_name_and_time(line, at, opening);
    return;
  }
  opening.label->words_at += at;
  opening.after_label = opening.label->words_at;
  std::optional<StampReading> stamp = read_bracketed_stamp(opening.label->aside);
  if (stamp && stamp->time && stamp->length == opening.label->aside.size()) {
    opening.label_stamp = stamp->time;
    opening.label->aside = {};
    return;
  }
  stamp = read_bracketed_stamp(line.substr(opening.after_label));
  if (!stamp || !stamp->time) return;
  opening.label_stamp = stamp->time;
  opening.after_label = skip_spaces(line, opening.after_label + stamp->length);
}

}  // namespace

std::optional<StampReading> read_bracketed_stamp(std::string_view text) {
  if (text.empty() || (text.front() != '[' && text.front() != '(')) return std::nullopt;
  const char close = text.front() == '[' ? ']' : ')';
  std::size_t at = skip_spaces(text, 1);
  auto stamp = read_stamp(text.substr(at));
  if (!stamp) return std::nullopt;
  at = skip_spaces(text, at + stamp->length);
  for (const std::string_view dash : {"-->", "-", "\u2013", "\u2014"}) {
    if (!text.substr(at).starts_with(dash)) continue;
    const std::size_t second = skip_spaces(text, at + dash.size());
    const auto end = read_stamp(text.substr(second));
    if (!end) return std::nullopt;
    at = skip_spaces(text, second + end->length);
    break;
  }
  if (at >= text.size() || text[at] != close) return std::nullopt;
  stamp->length = at + 1;
  return stamp;
}

bool take_time_below(std::string_view name_line, const LineOpening& below, std::size_t below_size,
                     LineOpening& opening) {
  if (!below.stamp || below.after_stamp < below_size || opening.stamp || opening.label) return false;
  const std::string_view name = trim(name_line);
  opening.label_begin = static_cast<std::size_t>(name.data() - name_line.data());
  return name.find(':') == name.npos && take_name(name_line, name, *below.stamp, opening);
}

LineOpening read_line_opening(std::string_view line) {
  LineOpening opening;
  std::size_t at = skip_spaces(line, 0);
  opening.stamp_begin = opening.after_stamp = at;
  std::optional<StampReading> stamp = read_bracketed_stamp(line.substr(at));
  if (!stamp) stamp = read_bare_stamp(line.substr(at));
  if (stamp && stamp->time) {
    opening.stamp = stamp->time;
    at = skip_spaces(line, at + stamp->length);
    opening.after_stamp = at;
  } else if (stamp) {
    opening.bad_stamp_end = at + stamp->length;
    at = skip_spaces(line, opening.bad_stamp_end);
  }
  read_label(line, at, opening);
  return opening;
}

}  // namespace witnessmark
