// outputs_xml.cpp -- the pages and workbooks read back with libxml2 (package libxml2-dev) and unzip (package unzip).
#include <libxml/HTMLparser.h>
#include <libxml/parser.h>
#include <libxml/xpath.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

#include "render/cell.h"
#include "render/outputs.h"

namespace kerfbook::render {
namespace {

struct FreeDocument {
  void operator()(xmlDoc* document) const { xmlFreeDoc(document); }
};
using Tree = std::unique_ptr<xmlDoc, FreeDocument>;

Tree read_xml(const std::string& xml) {
  Tree tree(xmlReadMemory(xml.data(), static_cast<int>(xml.size()), "part", nullptr, XML_PARSE_NONET));
  if (!tree) throw std::runtime_error("a part of the workbook is not well formed");
  return tree;
}

/// Nodes below `from` by a path that may leave name spaces out: every step is a local name.
std::vector<xmlNode*> find(xmlDoc* tree, xmlNode* from, const std::string& path) {
  xmlXPathContext* const context = xmlXPathNewContext(tree);
  context->node = from;
  xmlXPathObject* const result =
      xmlXPathEvalExpression(reinterpret_cast<const xmlChar*>(path.c_str()), context);
  std::vector<xmlNode*> nodes;
  if (result != nullptr && result->nodesetval != nullptr) {
    for (int i = 0; i < result->nodesetval->nodeNr; ++i) nodes.push_back(result->nodesetval->nodeTab[i]);
  }
  xmlXPathFreeObject(result);
  xmlXPathFreeContext(context);
  return nodes;
}

std::string step(const std::string& name) {
  return "*[local-name()='" + name + "']";
}

std::string content(xmlNode* node) {
  xmlChar* const words = xmlNodeGetContent(node);
  std::string out = words == nullptr ? "" : reinterpret_cast<const char*>(words);
  xmlFree(words);
  return out;
}

std::string attribute(xmlNode* node, const char* name) {
  xmlChar* const words = xmlGetProp(node, reinterpret_cast<const xmlChar*>(name));
  std::string out = words == nullptr ? "" : reinterpret_cast<const char*>(words);
  xmlFree(words);
  return out;
}

int number_or(const std::string& words, int otherwise) {
  return words.empty() ? otherwise : std::stoi(words);
}

struct FormatOfCell {
  std::string number;
  bool struck = false;
};

std::vector<FormatOfCell> read_styles(const std::string& xml) {
  const Tree tree = read_xml(xml);
  xmlNode* const root = xmlDocGetRootElement(tree.get());
  std::map<int, std::string> numbers;
  for (xmlNode* one : find(tree.get(), root, ".//" + step("numFmt"))) {
    numbers[std::stoi(attribute(one, "numFmtId"))] = attribute(one, "formatCode");
  }
  std::vector<bool> struck;
  for (xmlNode* font : find(tree.get(), root, step("fonts") + "/" + step("font"))) {
    struck.push_back(!find(tree.get(), font, step("strike")).empty());
  }
  std::vector<FormatOfCell> out;
  for (xmlNode* one : find(tree.get(), root, step("cellXfs") + "/" + step("xf"))) {
    const auto font = static_cast<std::size_t>(number_or(attribute(one, "fontId"), 0));
    out.push_back({numbers[number_or(attribute(one, "numFmtId"), 0)], struck.at(font)});
  }
  return out;
}

/// "C12" is row 11, column 2.
std::pair<int, int> place_of(const std::string& name) {
  int column = 0;
  std::size_t i = 0;
  for (; i < name.size() && name[i] >= 'A'; ++i) column = column * 26 + (name[i] - 'A' + 1);
  return {std::stoi(name.substr(i)) - 1, column - 1};
}

void read_cells(Sheet& sheet, const std::vector<std::string>& strings,
                const std::vector<FormatOfCell>& formats) {
  const Tree tree = read_xml(sheet.xml);
  for (xmlNode* node : find(tree.get(), xmlDocGetRootElement(tree.get()), ".//" + step("c"))) {
    SheetCell cell;
    const std::string type = attribute(node, "t");
    for (xmlNode* part : find(tree.get(), node, step("v") + "|" + step("is"))) cell.value = content(part);
    for (xmlNode* part : find(tree.get(), node, step("f"))) cell.formula = content(part);
    cell.text = type == "s" || type == "inlineStr" || type == "str";
    if (type == "s") cell.value = strings.at(static_cast<std::size_t>(std::stoi(cell.value)));
    const auto& format = formats.at(static_cast<std::size_t>(number_or(attribute(node, "s"), 0)));
    cell.format = format.number;
    cell.struck = format.struck;
    sheet.cells[place_of(attribute(node, "r"))] = cell;
  }
}

}  // namespace

const SheetCell& Sheet::at(int row, int column) const {
  static const SheetCell nothing;
  const auto found = cells.find({row, column});
  return found == cells.end() ? nothing : found->second;
}

int Sheet::row_of(const std::string& words) const {
  for (const auto& [place, cell] : cells) {
    if (place.second == 0 && cell.value == words) return place.first;
  }
  return -1;
}

std::vector<Sheet> read_workbook(const std::string& bytes) {
  const Folder folder;
  write_file(folder / "book.xlsx", bytes);
  const auto part = [&](const std::string& name) {
    return output_of("unzip -p '" + (folder / "book.xlsx") + "' '" + name + "' 2>/dev/null");
  };
  std::vector<std::string> strings;
  if (const std::string xml = part("xl/sharedStrings.xml"); !xml.empty()) {
    const Tree tree = read_xml(xml);
    for (xmlNode* one : find(tree.get(), xmlDocGetRootElement(tree.get()), step("si")))
      strings.push_back(content(one));
  }
  const auto formats = read_styles(part("xl/styles.xml"));
  const Tree book = read_xml(part("xl/workbook.xml"));
  std::vector<Sheet> sheets;
  for (xmlNode* one : find(book.get(), xmlDocGetRootElement(book.get()), ".//" + step("sheet"))) {
    Sheet sheet;
    sheet.name = attribute(one, "name");
    sheet.xml = part("xl/worksheets/sheet" + std::to_string(sheets.size() + 1) + ".xml");
    read_cells(sheet, strings, formats);
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

namespace {

Tree read_page(const std::string& html) {
  return Tree(htmlReadMemory(html.data(), static_cast<int>(html.size()), "page", "UTF-8",
                             HTML_PARSE_NONET | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING));
}

}  // namespace

std::vector<Element> elements_of(const std::string& html) {
  const Tree tree = read_page(html);
  std::vector<Element> out;
  for (xmlNode* node : find(tree.get(), xmlDocGetRootElement(tree.get()), "//*")) {
    Element element{reinterpret_cast<const char*>(node->name), {}};
    for (const xmlAttr* one = node->properties; one != nullptr; one = one->next) {
      const auto* name = reinterpret_cast<const char*>(one->name);
      element.attributes[name] = attribute(node, name);
    }
    out.push_back(std::move(element));
  }
  return out;
}

std::string words_of(const std::string& html) {
  const Tree tree = read_page(html);
  std::string words;
  for (xmlNode* node : find(tree.get(), xmlDocGetRootElement(tree.get()), "//body")) words += content(node);
  return words;
}

Figures from_html(const std::string& html, const Table& table) {
  Figures out = figures_of(table);
  out.rows.clear();
  out.struck.clear();
  for (std::string& total : out.totals) total.clear();
  const Tree tree = read_page(html);
  const auto columns = shown_columns(table);
  const auto cells_of = [&](xmlNode* row) {
    std::vector<std::string> cells;
    const auto nodes = find(tree.get(), row, "td");
    for (std::size_t i = 0; i < columns.size(); ++i) {
      cells.push_back(i < nodes.size() ? canonical(content(nodes[i]), table.columns[columns[i]]) : "missing");
    }
    return cells;
  };
  xmlNode* const root = xmlDocGetRootElement(tree.get());
  for (xmlNode* row : find(tree.get(), root, "//section[1]//table/tbody/tr")) {
    out.rows.push_back(cells_of(row));
    out.struck.push_back(attribute(row, "class") == "struck");
  }
  for (xmlNode* row : find(tree.get(), root, "//section[1]//table/tfoot/tr")) {
    const auto cells = cells_of(row);
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (table.columns[columns[i]].total != TotalKind::none) out.totals[i] = cells[i];
    }
  }
  return out;
}

}  // namespace kerfbook::render
