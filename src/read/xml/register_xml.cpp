// The XML form of the register has the CSV files' columns as elements, so each row element becomes a row of
// the table it belongs to, and the checks are those of the CSV files.
#include "witnessmark/read/register_xml.h"

#include <fmt/format.h>

#include <algorithm>

#include "witnessmark/base/did_you_mean.h"
#include "read/tables/register_rows.h"
#include "read/xml/xml_text.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

using Kind = ColumnDescription::Kind;

/// A row element, the table it is a row of, and the column its key attribute fills.
struct RowElement {
  std::string_view element;
  std::string_view key_column;  ///< Empty when rows have no key.
  Table* table;
};

bool may_repeat(const ColumnDescription& column) {
  return column.kind == Kind::keys || column.kind == Kind::texts || column.kind == Kind::dated_texts ||
         column.name == "location";
}

class RegisterXmlReader {
 public:
  explicit RegisterXmlReader(const XmlText& xml) : xml_(xml) {
    for (auto& [table, name] : {std::pair{&tables_.sources, "sources"},
                                {&tables_.derives, "derives"},
                                {&tables_.entries, "entries"},
                                {&tables_.itinerary, "itinerary"},
                                {&tables_.events, "named-events"}}) {
      *table = {name, xml.source(), column_descriptions(name), {}, {}};
      table->sheet_columns.assign(table->columns.size(), -1);
    }
  }

  RegisterTables read(std::vector<Diagnostic>& diagnostics) {
    diagnostics_ = &diagnostics;
    const pugi::xml_node root = xml_.root();
    if (std::string_view(root.name()) != "register") {
      fail(root, fmt::format("the outermost element is {}, not register", root.name()),
           "schemas/register.rng describes the file");
      return std::move(tables_);
    }
    if (const std::string_view version = root.attribute("version").value(); version != "1") {
      fail(root, fmt::format("the register's version is \"{}\"", version),
           "this program reads version=\"1\"");
      return std::move(tables_);
    }
    const RowElement kinds[] = {{"source", "source", &tables_.sources},
                                {"derivation", "", &tables_.derives},
                                {"entry", "entry", &tables_.entries},
                                {"stay", "stay", &tables_.itinerary},
                                {"event", "event", &tables_.events}};
    for (const pugi::xml_node& node : root.children()) {
      if (node.type() != pugi::node_element) {
        if (node.type() == pugi::node_pcdata)
          fail(node, "text stands outside any element of the register", "take it out");
        continue;
      }
      const auto kind = std::find_if(std::begin(kinds), std::end(kinds),
                                     [&](const RowElement& each) { return each.element == node.name(); });
      if (kind == std::end(kinds)) {
        const auto near = near_matches(node.name(), {"source", "derivation", "entry", "stay", "event"}, 1);
        fail(
            node, fmt::format("the element {} is not known here", node.name()),
            near.empty() ? "a register holds source, derivation, entry, stay and event" : did_you_mean(near));
        continue;
      }
      read_row(node, *kind);
    }
    return std::move(tables_);
  }

 private:
  void fail(pugi::xml_node node, std::string message, std::string advice) {
    diagnostics_->push_back(
        {Diagnostic::Severity::error, xml_.error(node, std::move(message), std::move(advice))});
  }

  void read_row(pugi::xml_node node, const RowElement& kind) {
    TableRow row;
    row.line = xml_.line(node);
    row.cells.resize(kind.table->columns.size());
    for (TableCell& cell : row.cells) cell = {"", row.line, xml_.column(node)};
    for (const pugi::xml_attribute& attribute : node.attributes()) {
      if (std::string_view(attribute.name()) == "key" && !kind.key_column.empty()) {
        row.cells[kind.table->column(kind.key_column)].text = trim(attribute.value());
      } else {
        fail(node, fmt::format("the attribute {} is not known here", attribute.name()),
             "all but the key stands in elements");
      }
    }
    for (const pugi::xml_node& child : node.children()) {
      if (child.type() == pugi::node_element) {
        read_cell(child, kind, row);
      } else if (child.type() == pugi::node_pcdata) {
        fail(child, fmt::format("text stands in {} outside any element", kind.element), "put it in notes");
      }
    }
    kind.table->rows.push_back(std::move(row));
  }

  void read_cell(pugi::xml_node node, const RowElement& kind, TableRow& row) {
    const std::string_view name = node.name();
    for (const pugi::xml_node& child : node.children()) {
      if (child.type() == pugi::node_element) {
        fail(child, fmt::format("{} holds an element, where text is wanted", name), "write plain text");
        return;
      }
    }
    const std::string text = text_of(node);
    const auto& columns = kind.table->columns;
    const auto found = std::find_if(columns.begin(), columns.end(), [&](const ColumnDescription& column) {
      return column.name == name && name != kind.key_column;
    });
    if (found == columns.end()) {
      add_extra(node, text, columns, row);
      return;
    }
    TableCell& cell = row.cells[static_cast<std::size_t>(found - columns.begin())];
    const bool first = cell.text.empty();
    if (!first && !may_repeat(*found)) {
      fail(node, fmt::format("{} stands twice in one {}", name, kind.element), "keep one of them");
      return;
    }
    if (may_repeat(*found) && text.find('|') != std::string::npos) {
      fail(node, fmt::format("{} holds |", name), fmt::format("repeat the element {} for each value", name));
      return;
    }
    cell = {first ? text : cell.text + "|" + text, xml_.line(node), xml_.column(node)};
  }

  void add_extra(pugi::xml_node node, const std::string& text, const std::vector<ColumnDescription>& columns,
                 TableRow& row) {
    std::vector<std::string> names;
    for (const ColumnDescription& column : columns) names.push_back(column.name);
    const auto near = near_matches(node.name(), names, 1);
    if (!near.empty())
      return fail(node, fmt::format("the element \"{}\" is not known", node.name()),
                  advice_on_misspelt(near));
    diagnostics_->push_back(
        {Diagnostic::Severity::note,
         xml_.error(node,
                    fmt::format("the element \"{}\" is not known and is kept in the notes", node.name()),
                    "")});
    if (text.empty()) return;
    row.extra += (row.extra.empty() ? "" : "; ") + std::string(node.name()) + ": " + text;
  }

  const XmlText& xml_;
  RegisterTables tables_;
  std::vector<Diagnostic>* diagnostics_ = nullptr;
};

}  // namespace

bool looks_like_xml(std::string_view bytes) {
  // Also in UTF-16, with or without mark.
  constexpr std::string_view kPassedOver("\xEF\xBB\xBF\xFE\xFF\0 \t\r\n", 10);
  const std::size_t first = bytes.find_first_not_of(kPassedOver);
  return first != bytes.npos && bytes[first] == '<';
}

RegisterReading read_register_xml(std::string_view bytes, std::string_view source,
                                  const AuthorityLists* lists) {
  RegisterReading reading;
  const auto xml = XmlText::parse(bytes, source);
  if (!xml) {
    reading.diagnostics.push_back({Diagnostic::Severity::error, xml.error()});
    return reading;
  }
  RegisterTables tables = RegisterXmlReader(**xml).read(reading.diagnostics);
  return read_register_tables(tables, lists, std::move(reading));
}

}  // namespace witnessmark
