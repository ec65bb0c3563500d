// outputs_xml.cpp -- the pages and workbooks read back with libxml2 (package libxml2-dev).
#include <libxml/HTMLparser.h>
#include <libxml/parser.h>
#include <libxml/xpath.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

#include "base/text.h"
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

Tree read_page(const std::string& html) {
  return Tree(htmlReadMemory(html.data(), static_cast<int>(html.size()), "page", "UTF-8",
                             HTML_PARSE_NONET | HTML_PARSE_NOERROR | HTML_PARSE_NOWARNING));
}

std::string one_blank(const std::string& words) {
  return join(split_words(words), " ");
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
  std::map<int, std::string> numbers{
      {1, "0"}, {2, "0.00"}, {3, "#,##0"}, {4, "#,##0.00"}};  // those that need no name
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

/// A text of a workbook as it is meant: _xHHHH_ stands for a character (ECMA-376 part 1, 22.9.2.19, ST_Xstring), so the
/// writer has put _x005F_ for the mark of a text that only looks so.
std::string meant(const std::string& written) {
  static const std::string kMark = "_x005F_";
  std::string out;
  std::size_t from = 0;
  for (std::size_t at = written.find(kMark); at != std::string::npos; at = written.find(kMark, from)) {
    out += written.substr(from, at - from) + "_";
    from = at + kMark.size();
  }
  return out + written.substr(from);
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
    if (cell.text) cell.value = meant(cell.value);
    const auto& format = formats.at(static_cast<std::size_t>(number_or(attribute(node, "s"), 0)));
    cell.format = format.number;
    cell.struck = format.struck;
    sheet.cells[cell_of(attribute(node, "r"))] = cell;
  }
}

/// A heading or a figure with the unit that stands beside it in a mark of its own.
struct WithUnit {
  std::string words;
  std::string unit;
};
WithUnit with_unit(xmlDoc* tree, xmlNode* node) {
  WithUnit out;
  for (xmlNode* unit : find(tree, node, "span[@class='unit']")) out.unit = content(unit);
  out.words = content(node);
  out.words.resize(out.words.size() - out.unit.size());
  return out;
}

/// One row of figures stands as large figures by themselves: its heading, its figure, its unit.
Figures large_figures(xmlDoc* tree, xmlNode* section, const Table& table, const Style& style) {
  Figures out;
  std::vector<std::string> row;
  const auto columns = shown_columns(table);
  const auto headings = find(tree, section, "dl[@class='figures']/div/dt");
  const auto values = find(tree, section, "dl[@class='figures']/div/dd");
  if (headings.size() != columns.size() || values.size() != columns.size())
    throw std::runtime_error("html: table " + table.name + " has other columns in its figures");
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const Column& column = table.columns[columns[i]];
    const WithUnit value = with_unit(tree, values[i]);
    row.push_back(canonical(one_blank(value.words), column, style));
    const std::string& unit = row.back().empty() ? column.unit : value.unit;  // a dash has none
    out.headings.push_back(one_blank(content(headings[i]) + " " + unit));
  }
  out.rows.push_back(std::move(row));
  out.struck.push_back(false);
  return out;
}

std::vector<std::string> cells_of(xmlDoc* tree, xmlNode* row, const Table& table, bool foot,
                                  const Style& style) {
  std::vector<std::string> cells;
  const auto columns = shown_columns(table);
  for (xmlNode* cell : find(tree, row, "td")) {
    const std::string words = content(cell);
    if (table.grid) {
      cells.push_back(canonical(words, style));
      continue;
    }
    if (cells.size() >= columns.size())
      throw std::runtime_error("html: a row of " + table.name + " is longer");
    const Column& column = table.columns[columns[cells.size()]];
    const bool label = foot && words == "Total" && column.total == TotalKind::none;
    cells.push_back(label ? "" : canonical(words, column, style));
  }
  return cells;
}

Figures html_table(xmlDoc* tree, xmlNode* section, const Table& table, const Style& style) {
  Figures out;
  const auto words = find(tree, section, "p[@class='note']");
  if (table.rows.empty()) {
    if (words.empty() || content(words.front()) != table.when_empty)
      throw std::runtime_error("html: table " + table.name + " does not say that it is empty");
    return out;
  }
  if (!find(tree, section, "dl[@class='figures']").empty()) return large_figures(tree, section, table, style);
  const std::string body = "div/table[not(@class='sums')]/";
  for (xmlNode* head : find(tree, section, body + "thead/tr/th")) {
    const WithUnit heading = with_unit(tree, head);
    out.headings.push_back(one_blank(heading.words + " " + heading.unit));
  }
  if (table.grid) out.headings = canonical_heads(out.headings, style);
  for (xmlNode* row : find(tree, section, body + "tbody/tr")) {
    if (!find(tree, row, "td[@colspan]").empty()) continue;  // a grid's struck lines stand below it in words
    out.rows.push_back(cells_of(tree, row, table, false, style));
    out.struck.push_back(attribute(row, "class") == "struck");
  }
  for (xmlNode* row : find(tree, section, body + "tfoot/tr")) {
    out.feet.push_back(cells_of(tree, row, table, true, style));
  }
  return out;
}

std::string joined_cells(xmlDoc* tree, xmlNode* row, const std::string& path) {
  std::vector<std::string> words;
  for (xmlNode* cell : find(tree, row, path)) {
    const WithUnit heading = with_unit(tree, cell);
    words.push_back(one_blank(heading.words + " " + heading.unit));
  }
  return join(words, " | ");
}

/// One block of a page on one line; tables and charts say what they are.
std::string block_words(xmlDoc* tree, xmlNode* node) {
  const std::string name = reinterpret_cast<const char*>(node->name);
  const std::string kind = attribute(node, "class");
  if (name == "tr") {
    const std::string part = reinterpret_cast<const char*>(node->parent->name);
    const std::string mark = part == "thead" ? "head" : part == "tfoot" ? "foot" : "row";
    return mark + (kind.empty() ? "" : "." + kind) + " " + joined_cells(tree, node, "th|td");
  }
  if (name == "svg") {
    const auto marks = find(tree, node, ".//rect|.//circle|.//path").size();
    return "chart " + joined_cells(tree, node, "title|desc") + " | " + std::to_string(marks) + " marks";
  }
  if (name == "div") return "figure " + joined_cells(tree, node, "dt|dd");
  return name + (kind.empty() ? "" : "." + kind) + " " + one_blank(content(node));
}

}  // namespace

std::string words_of_page(const std::string& html) {
  const Tree tree = read_page(html);
  std::string out;
  const std::string blocks =
      "//body//h1|//body//h2|//body//p|//body//tr|//body//svg|//body//dl[@class='figures']/div";
  for (xmlNode* node : find(tree.get(), xmlDocGetRootElement(tree.get()), blocks))
    out += block_words(tree.get(), node) + "\n";
  return out;
}

std::vector<Figures> from_html(const std::string& html, const Document& document) {
  const Tree tree = read_page(html);
  const auto sections = find(tree.get(), xmlDocGetRootElement(tree.get()), "//section");
  if (sections.size() != document.tables.size()) throw std::runtime_error("html: other sections than tables");
  std::vector<Figures> out;
  for (std::size_t i = 0; i < sections.size(); ++i)
    out.push_back(html_table(tree.get(), sections[i], document.tables[i], document.style));
  return out;
}

std::vector<Sheet> read_workbook(const std::string& bytes) {
  std::vector<Sheet> sheets = read_any_workbook(bytes);
  check_strict(bytes, sheets);
  keep_for_second_reader(bytes);
  return sheets;
}

std::vector<Sheet> read_any_workbook(const std::string& bytes) {
  const auto parts = zip_parts(bytes);
  const auto part = [&](const std::string& name) { return part_of(parts, name); };
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

}  // namespace kerfbook::render
