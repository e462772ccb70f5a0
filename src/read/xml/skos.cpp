// SKOS as RDF/XML (W3C: RDF 1.1 XML Syntax; SKOS Reference). Node elements give statements about an address;
// the same concept may be described in several places, and a concept may stand inside a property of another.
// So all statements are gathered by address first, in the order concepts are first described, and terms are
// made of them at the end. Read of RDF/XML: typed node elements, rdf:Description with rdf:type, rdf:about,
// rdf:ID, rdf:nodeID, rdf:resource, xml:base, xml:lang, properties as attributes, nested node elements.
// Passed over, and said so: rdf:parseType and properties that SKOS does not give a concept.
#include "read/xml/skos.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <unordered_map>

#include "read/tables/table.h"
#include "read/xml/xml_text.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::string_view kRdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
constexpr std::string_view kSkos = "http://www.w3.org/2004/02/skos/core#";

struct Label {
  std::string text;
  std::string language;  ///< Folded; empty when none is given.
};

struct Concept {
  std::string address;
  pugi::xml_node node;  ///< Where it is first described.
  bool typed = false;   ///< Said to be a skos:Concept.
  std::vector<Label> preferred;
  std::vector<Label> alternative;  ///< altLabel and hiddenLabel.
  std::vector<std::string> notations;
  std::vector<std::string> broader;
  std::vector<Label> notes;
};

bool is_english(const std::string& language) {
  return language == "en" || language.starts_with("en-");
}

std::string nearest_attribute(pugi::xml_node node, std::string_view local) {
  for (; node; node = node.parent()) {
    for (const pugi::xml_attribute& attribute : node.attributes()) {
      const std::string_view name = attribute.name();
      if (name.size() == local.size() + 4 && name.starts_with("xml:") && name.substr(4) == local)
        return attribute.value();
    }
  }
  return {};
}

/// What stands after the last '#' or '/' of an address; without either, all of it.
std::string last_part(std::string_view address) {
  while (address.size() > 1 && (address.back() == '/' || address.back() == '#')) address.remove_suffix(1);
  const std::size_t cut = address.find_last_of("#/");
  return std::string(cut == address.npos ? address : address.substr(cut + 1));
}

class SkosReader {
 public:
  SkosReader(const XmlText& xml, AuthorityList::Kind kind) : xml_(xml), kind_(kind) {}

  ListReading read() {
    const pugi::xml_node root = xml_.root();
    if (!element_name(root).is(kRdf, "RDF")) {
      fail(root, fmt::format("the outermost element is {}, not rdf:RDF", root.name()),
           "a list in XML is SKOS in RDF/XML; other lists are read from CSV");
      return std::move(out_);
    }
    for (const pugi::xml_node& node : root.children()) {
      if (node.type() == pugi::node_element) read_node(node);
    }
    make_terms();
    return std::move(out_);
  }

 private:
  void report(Diagnostic::Severity severity, pugi::xml_node node, std::string message, std::string advice) {
    out_.diagnostics.push_back({severity, xml_.error(node, std::move(message), std::move(advice))});
  }
  void fail(pugi::xml_node node, std::string message, std::string advice) {
    report(Diagnostic::Severity::error, node, std::move(message), std::move(advice));
  }

  /// An address as written in an attribute. A relative one is joined to xml:base plainly: fragments and last
  /// parts are all that keys are made of.
  std::string resolve(pugi::xml_node node, std::string_view written) const {
    if (written.find(':') != written.npos) return std::string(written);
    const std::string base = nearest_attribute(node, "base");
    if (base.empty()) return std::string(written);
    if (written.starts_with('#')) return base.substr(0, base.find('#')) + std::string(written);
    const std::size_t slash = base.rfind('/');
    return base.substr(0, slash == base.npos ? 0 : slash + 1) + std::string(written);
  }

  std::optional<std::string> address_of(pugi::xml_node node) const {
    for (const pugi::xml_attribute& attribute : node.attributes()) {
      const XmlName name = attribute_name(node, attribute);
      if (name.is(kRdf, "about")) return resolve(node, attribute.value());
      if (name.is(kRdf, "ID")) return resolve(node, std::string("#") + attribute.value());
      if (name.is(kRdf, "nodeID")) return std::string("_:") + attribute.value();
    }
    return std::nullopt;
  }

  Concept& concept_at(const std::string& address, pugi::xml_node node) {
    const auto [found, is_new] = at_.try_emplace(address, concepts_.size());
    if (is_new) {
      concepts_.push_back({});
      concepts_.back().address = address;
      concepts_.back().node = node;
    }
    return concepts_[found->second];
  }

  /// Reads a node element; gives its address, empty when it has none.
  std::string read_node(pugi::xml_node node) {
    const auto address = address_of(node);
    if (!address || address->empty()) {
      if (element_name(node).is(kSkos, "Concept")) {
        report(Diagnostic::Severity::warning, node, "a concept without address is left out",
               "give it rdf:about");
      }
      return {};
    }
    Concept& item = concept_at(*address, node);
    item.typed |= element_name(node).is(kSkos, "Concept");
    for (const pugi::xml_attribute& attribute : node.attributes()) {
      const XmlName name = attribute_name(node, attribute);
      if (name.space == kSkos)
        add_literal(*address, node, name.local, {attribute.value(), language_of(node)});
    }
    for (const pugi::xml_node& property : node.children()) {
      if (property.type() == pugi::node_element) read_property(*address, property);
    }
    return *address;
  }

  static std::string language_of(pugi::xml_node node) { return fold(nearest_attribute(node, "lang")); }

  void read_property(const std::string& address, pugi::xml_node property) {
    const XmlName name = element_name(property);
    std::string target;
    for (const pugi::xml_attribute& attribute : property.attributes()) {
      const XmlName attribute_is = attribute_name(property, attribute);
      if (attribute_is.is(kRdf, "resource")) target = resolve(property, attribute.value());
      if (attribute_is.is(kRdf, "nodeID")) target = std::string("_:") + attribute.value();
      if (attribute_is.is(kRdf, "parseType")) {
        report(Diagnostic::Severity::warning, property,
               fmt::format("{} with rdf:parseType is passed over", property.name()), "");
        return;
      }
    }
    for (const pugi::xml_node& inner : property.children()) {
      if (inner.type() == pugi::node_element) add_link(address, property, name, read_node(inner));
    }
    if (!target.empty()) {
      add_link(address, property, name, target);
    } else if (name.space == kSkos) {
      add_literal(address, property, name.local, {text_of(property), language_of(property)});
    }
  }

  void add_link(const std::string& address, pugi::xml_node property, const XmlName& name,
                const std::string& target) {
    if (target.empty()) return;
    if (name.is(kRdf, "type")) {
      concept_at(address, property).typed |= target == std::string(kSkos) + "Concept";
    } else if (name.is(kSkos, "broader") || name.is(kSkos, "broaderTransitive")) {
      concept_at(address, property).broader.push_back(target);
    } else if (name.is(kSkos, "narrower")) {
      narrower_.push_back({target, address});
    }
  }

  void add_literal(const std::string& address, pugi::xml_node node, std::string_view property, Label label) {
    if (label.text.empty()) return;
    Concept& item = concept_at(address, node);
    if (property == "prefLabel") {
      item.preferred.push_back(std::move(label));
    } else if (property == "altLabel" || property == "hiddenLabel") {
      item.alternative.push_back(std::move(label));
    } else if (property == "notation") {
      item.notations.push_back(std::move(label.text));
    } else if (property == "note" || property == "scopeNote" || property == "definition" ||
               property == "historyNote" || property == "changeNote" || property == "example" ||
               property == "editorialNote") {
      item.notes.push_back(std::move(label));
    }
  }

  void make_terms() {
    for (const auto& [narrow, broad] : narrower_) {
      const auto found = at_.find(narrow);
      if (found == at_.end()) continue;
      std::vector<std::string>& broader = concepts_[found->second].broader;
      if (std::find(broader.begin(), broader.end(), broad) == broader.end()) broader.push_back(broad);
    }
    for (const Concept& item : concepts_) {
      if (item.typed) make_term(item);  // a scheme or collection has labels too
    }
    if (out_.terms.empty() && !has_errors(out_.diagnostics)) {
      fail(xml_.root(), "no skos:Concept is described", "check that this is a SKOS list");
    }
    find_unresolved();
  }

  void make_term(const Concept& item) {
    Term term;
    term.key = last_part(item.address);
    const auto [known, is_new] = keys_.try_emplace(term.key, item.address);
    if (!is_new) {
      fail(item.node,
           fmt::format("the concepts {} and {} would both have the key {}", known->second, item.address,
                       term.key),
           "the last part of an address is the key; give them different ones");
      return;
    }
    if (term.key.empty() || term.key.find('|') != std::string::npos || term.key.size() > 200) {
      fail(item.node, fmt::format("the last part of {} is no key", item.address),
           "a key is a short text without |");
      return;
    }
    choose_name(item, term);
    if (term.name.empty()) {
      fail(item.node, fmt::format("the concept {} has no prefLabel", term.key), "give it one");
      return;
    }
    choose_number(item, term);
    choose_broader(item, term);
    for (const Label& note : item.notes) term.notes += (term.notes.empty() ? "" : "; ") + note.text;
    out_.terms.push_back(std::move(term));
    out_.lines.push_back(xml_.line(item.node));
  }

  void choose_name(const Concept& item, Term& term) {
    const auto chosen = [&]() -> const Label* {
      for (const Label& label : item.preferred) {
        if (is_english(label.language)) return &label;
      }
      for (const Label& label : item.preferred) {
        if (label.language.empty()) return &label;
      }
      return item.preferred.empty() ? nullptr : &item.preferred.front();
    }();
    if (!chosen) return;
    term.name = chosen->text;
    if (item.preferred.size() > 1) {
      report(Diagnostic::Severity::note, item.node,
             fmt::format("{} has {} preferred names; \"{}\" ({}) is taken, the others as spoken forms",
                         term.key, item.preferred.size(), term.name,
                         chosen->language.empty() ? "no language" : chosen->language),
             "");
    }
    for (const auto* labels : {&item.preferred, &item.alternative}) {
      for (const Label& label : *labels) {
        const bool known = label.text == term.name ||
                           std::find(term.spoken.begin(), term.spoken.end(), label.text) != term.spoken.end();
        if (!known) term.spoken.push_back(label.text);
      }
    }
  }

  void choose_number(const Concept& item, Term& term) {
    if (item.notations.empty()) return;
    term.number = item.notations.front();
    if (item.notations.size() > 1) {
      report(Diagnostic::Severity::note, item.node,
             fmt::format("{} has {} notations; {} is taken as the number", term.key, item.notations.size(),
                         term.number),
             "");
    }
  }

  void choose_broader(const Concept& item, Term& term) {
    if (item.broader.empty()) return;
    term.broader = last_part(item.broader.front());
    if (item.broader.size() > 1) {
      report(Diagnostic::Severity::warning, item.node,
             fmt::format("{} has {} broader terms; {} is taken", term.key, item.broader.size(), term.broader),
             "a term lies in one place of the hierarchy here");
    }
  }

  void find_unresolved() {
    const KeyKind kind = kind_ == AuthorityList::Kind::places ? KeyKind::place : KeyKind::equipment;
    for (const Term& term : out_.terms) {
      if (term.broader.empty() || keys_.contains(term.broader)) continue;
      const Concept& item = concepts_[at_.at(keys_.at(term.key))];
      out_.unresolved.push_back({{kind},
                                 term.broader,
                                 xml_.error(item.node,
                                            fmt::format("{} has the broader term {}, which is not described",
                                                        term.key, term.broader),
                                            "describe it, or take the link out")});
    }
  }

  const XmlText& xml_;
  AuthorityList::Kind kind_;
  ListReading out_;
  std::vector<Concept> concepts_;
  std::unordered_map<std::string, std::size_t> at_;
  std::vector<std::pair<std::string, std::string>> narrower_;  // narrow, broad
  std::unordered_map<std::string, std::string> keys_;          // key, address
};

}  // namespace

ListReading read_skos_list(std::string_view bytes, std::string_view source, AuthorityList::Kind kind) {
  const auto xml = XmlText::parse(bytes, source);
  if (!xml) {
    ListReading reading;
    reading.diagnostics.push_back({Diagnostic::Severity::error, xml.error()});
    return reading;
  }
  return SkosReader(**xml, kind).read();
}

}  // namespace witnessmark
