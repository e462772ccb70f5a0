// Outside of TEXT nothing is changed. Inside, white space and every character are kept; only the tags go and
// the five entities of XML and character references are decoded, so that the text can be read and written
// again.
#include "witnessmark/language/timeml.h"

#include <algorithm>
#include <cstdint>

#include "witnessmark/base/code_point_index.h"

namespace witnessmark {
namespace {

Error at(std::string_view file, std::size_t position, std::string_view source, std::string message,
         std::string advice) {
  Error error;
  error.source = std::string(source);
  error.line = 1 + std::count(file.begin(), file.begin() + static_cast<std::ptrdiff_t>(position), '\n');
  const auto line_begin = file.rfind('\n', position == 0 ? 0 : position - 1);
  const auto begin = line_begin == std::string_view::npos || position == 0 ? 0 : line_begin + 1;
  for (std::size_t i = begin; i <= position && i < file.size(); ++i)
    error.column += (static_cast<unsigned char>(file[i]) & 0xC0) != 0x80;
  error.message = std::move(message);
  error.advice = std::move(advice);
  return error;
}

void append_utf8(std::string& out, std::uint32_t code) {
  if (code < 0x80) {
    out += static_cast<char>(code);
  } else if (code < 0x800) {
    out += static_cast<char>(0xC0 | code >> 6);
    out += static_cast<char>(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    out += static_cast<char>(0xE0 | code >> 12);
    out += static_cast<char>(0x80 | (code >> 6 & 0x3F));
    out += static_cast<char>(0x80 | (code & 0x3F));
  } else {
    out += static_cast<char>(0xF0 | code >> 18);
    out += static_cast<char>(0x80 | (code >> 12 & 0x3F));
    out += static_cast<char>(0x80 | (code >> 6 & 0x3F));
    out += static_cast<char>(0x80 | (code & 0x3F));
  }
}

bool decode_reference(std::string_view name, std::string& out) {
  if (name == "amp") return out += '&', true;
  if (name == "lt") return out += '<', true;
  if (name == "gt") return out += '>', true;
  if (name == "quot") return out += '"', true;
  if (name == "apos") return out += '\'', true;
  if (name.size() < 2 || name[0] != '#') return false;
  const bool hex = name[1] == 'x';
  std::uint32_t code = 0;
  for (const char c : name.substr(hex ? 2 : 1)) {
    const int digit = c >= '0' && c <= '9'   ? c - '0'
                      : c >= 'a' && c <= 'f' ? c - 'a' + 10
                      : c >= 'A' && c <= 'F' ? c - 'A' + 10
                                             : 99;
    if (digit >= (hex ? 16 : 10)) return false;
    code = code * (hex ? 16 : 10) + static_cast<std::uint32_t>(digit);
    if (code > 0x10FFFF) return false;
  }
  if (code == 0 || (code >= 0xD800 && code <= 0xDFFF)) return false;
  append_utf8(out, code);
  return true;
}

void append_escaped(std::string& out, std::string_view text) {
  for (const char c : text) {
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else
      out += c;
  }
}

void append_attribute(std::string& out, std::string_view name, std::string_view value) {
  out += ' ';
  out += name;
  out += "=\"";
  for (const char c : value) {
    if (c == '"')
      out += "&quot;";
    else
      append_escaped(out, std::string_view(&c, 1));
  }
  out += '"';
}

}  // namespace

Result<TimemlDocument> parse_timeml(std::string_view file, std::string_view source) {
  const auto open = file.find("<TEXT>");
  if (open == std::string_view::npos)
    return Error{std::string(source), 1, 1, "no TEXT element",
                 "give a TimeML file, or a plain text without --timeml"};
  const auto begin = open + 6;
  const auto close = file.find("</TEXT>", begin);
  if (close == std::string_view::npos)
    return at(file, open, source, "the TEXT element is not closed", "add </TEXT>");
  TimemlDocument document;
  document.before = std::string(file.substr(0, begin));
  document.after = std::string(file.substr(close));
  const auto text = file.substr(begin, close - begin);
  for (std::size_t i = 0; i < text.size();) {
    if (text[i] == '<') {
      const auto end = text.find('>', i);
      if (end == std::string_view::npos)
        return at(file, begin + i, source, "a tag is not closed", "write &lt; for a less-than sign");
      i = end + 1;
    } else if (text[i] == '&') {
      const auto end = text.substr(i, 12).find(';');
      if (end == std::string_view::npos || !decode_reference(text.substr(i + 1, end - 1), document.text))
        return at(file, begin + i, source, "unknown entity", "write &amp; for an ampersand");
      i += end + 1;
    } else {
      document.text += text[i++];
    }
  }
  return document;
}

std::string with_timex3(std::string_view text, const std::vector<DateExpression>& expressions,
                        int first_tid) {
  const CodePointIndex index(text);
  std::string out;
  out.reserve(text.size() + expressions.size() * 64);
  std::size_t done = 0;
  int tid = first_tid;
  const auto tag = [&](const DateExpression& e) {
    const auto bytes = index.to_bytes(e.range);
    const auto begin = static_cast<std::size_t>(bytes.begin.value),
               end = static_cast<std::size_t>(bytes.end.value);
    append_escaped(out, text.substr(done, begin - done));
    out += "<TIMEX3";
    append_attribute(out, "tid", "t" + std::to_string(tid++));
    append_attribute(out, "type", to_string(e.type));
    if (!e.timex3.empty()) append_attribute(out, "value", e.timex3);
    if (!e.mod.empty()) append_attribute(out, "mod", e.mod);
    out += '>';
    append_escaped(out, text.substr(begin, end - begin));
    out += "</TIMEX3>";
    done = end;
  };
  for (const auto& e : expressions) {
    if (e.parts.empty())
      tag(e);
    else
      for (const auto& part : e.parts) tag(part);
  }
  append_escaped(out, text.substr(done));
  return out;
}

std::string timeml_around(std::string_view tagged_text, std::string_view document_id) {
  std::string out = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<TimeML>\n<DOCID>";
  append_escaped(out, document_id);
  out += "</DOCID>\n<TEXT>";
  out += tagged_text;
  out += "</TEXT>\n</TimeML>\n";
  return out;
}

}  // namespace witnessmark
