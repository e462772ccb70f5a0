#pragma once
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

#include <pugixml.hpp>

#include "read/transcripts/text_lines.h"
#include "witnessmark/base/result.h"

namespace witnessmark {

/// A parsed XML document with the text it is from. Nothing outside is ever opened; documents that declare
/// entities, nest deeper than 64, have more than 100 attributes on one element or are over 256 MB are
/// refused.
class XmlText {
 public:
  static Result<std::unique_ptr<XmlText>> parse(std::string_view bytes, std::string_view source);

  pugi::xml_node root() const { return document_.document_element(); }
  const std::string& source() const { return source_; }
  std::int64_t line(pugi::xml_node node) const { return lines_->line(offset(node)); }
  std::int64_t column(pugi::xml_node node) const { return lines_->column(offset(node)); }
  Error error(pugi::xml_node node, std::string message, std::string advice) const {
    return {source_, line(node), column(node), std::move(message), std::move(advice)};
  }

 private:
  XmlText() = default;
  /// Byte of the '<' that opens an element.
  static std::size_t offset(pugi::xml_node node);

  std::string source_;
  std::string text_;
  std::unique_ptr<TextLines> lines_;
  pugi::xml_document document_;
};

/// A name with its namespace (Namespaces in XML 1.0), from the declarations around the node.
struct XmlName {
  std::string_view space;
  std::string_view local;
  bool is(std::string_view of_space, std::string_view name) const {
    return space == of_space && local == name;
  }
};
XmlName element_name(pugi::xml_node node);
XmlName attribute_name(pugi::xml_node node, pugi::xml_attribute attribute);

/// All text directly inside the element, ends trimmed.
std::string text_of(pugi::xml_node node);

}  // namespace witnessmark
