#include "read/xml/xml_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "witnessmark/base/decode.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::size_t kLargest = std::size_t{256} << 20;
constexpr int kDeepestElement = 64;
constexpr std::ptrdiff_t kMostAttributes = 100;

/// Finds the first node that goes past a limit.
class LimitWalker : public pugi::xml_tree_walker {
 public:
  bool for_each(pugi::xml_node& node) override {
    if (depth() >= kDeepestElement) fault = "elements are nested deeper than 64";
    const auto attributes = node.attributes();
    if (std::distance(attributes.begin(), attributes.end()) > kMostAttributes)
      fault = "an element has more than 100 attributes";
    if (!fault.empty()) at = node;
    return fault.empty();
  }
  std::string fault;
  pugi::xml_node at;
};

/// What a prefix stands for at the node.
std::string_view space_of(pugi::xml_node node, std::string_view prefix) {
  if (prefix == "xml") return "http://www.w3.org/XML/1998/namespace";
  for (; node; node = node.parent()) {
    for (const pugi::xml_attribute& attribute : node.attributes()) {
      const std::string_view name = attribute.name();
      if (!name.starts_with("xmlns")) continue;
      const bool found = prefix.empty()
                             ? name == "xmlns"
                             : name.size() == prefix.size() + 6 && name[5] == ':' && name.substr(6) == prefix;
      if (found) return attribute.value();
    }
  }
  return {};
}

}  // namespace

std::size_t XmlText::offset(pugi::xml_node node) {
  const std::ptrdiff_t at = node.offset_debug();
  if (at <= 0) return 0;
  return static_cast<std::size_t>(node.type() == pugi::node_element ? at - 1 : at);
}

Result<std::unique_ptr<XmlText>> XmlText::parse(std::string_view bytes, std::string_view source) {
  const auto fault = [&](std::string message, std::string advice) {
    return Error{std::string(source), 0, 0, std::move(message), std::move(advice)};
  };
  if (bytes.size() > kLargest) return fault("the XML file is over 256 MB", "split it");
  auto decoded = decode_text(bytes, source);
  if (!decoded) return decoded.error();
  auto xml = std::unique_ptr<XmlText>(new XmlText);
  xml->source_ = source;
  xml->text_ = std::move(decoded->text);
  xml->lines_ = std::make_unique<TextLines>(xml->text_);
  const pugi::xml_parse_result parsed = xml->document_.load_buffer(
      xml->text_.data(), xml->text_.size(), pugi::parse_default | pugi::parse_doctype, pugi::encoding_utf8);
  if (!parsed) {
    const auto at = static_cast<std::size_t>(std::max<std::ptrdiff_t>(parsed.offset, 0));
    return Error{xml->source_, xml->lines_->line(at), xml->lines_->column(at),
                 fmt::format("the XML is not well formed: {}", parsed.description()),
                 "mend it there or just before"};
  }
  int roots = 0;
  for (const pugi::xml_node& node : xml->document_.children()) {
    if (node.type() == pugi::node_doctype &&
        std::string_view(node.value()).find('[') != std::string_view::npos) {
      return fault("the XML declares entities of its own, which are not read",
                   "save it without them, every entity replaced by its text");
    }
    roots += node.type() == pugi::node_element ? 1 : 0;
  }
  if (roots != 1) return fault("the XML has more than one outermost element", "put all in one");
  LimitWalker walker;
  xml->document_.traverse(walker);
  if (!walker.fault.empty())
    return xml->error(walker.at, walker.fault, "no such file comes from a list or register program");
  return xml;
}

XmlName element_name(pugi::xml_node node) {
  const std::string_view name = node.name();
  const std::size_t colon = name.find(':');
  if (colon == name.npos) return {space_of(node, ""), name};
  return {space_of(node, name.substr(0, colon)), name.substr(colon + 1)};
}

XmlName attribute_name(pugi::xml_node node, pugi::xml_attribute attribute) {
  const std::string_view name = attribute.name();
  const std::size_t colon = name.find(':');
  if (colon == name.npos) return {{}, name};
  return {space_of(node, name.substr(0, colon)), name.substr(colon + 1)};
}

std::string text_of(pugi::xml_node node) {
  std::string text;
  for (const pugi::xml_node& child : node.children()) {
    if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) text += child.value();
  }
  return std::string(trim(text));
}

}  // namespace witnessmark
