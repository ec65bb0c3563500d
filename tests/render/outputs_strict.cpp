// outputs_strict.cpp -- a workbook as a strict reader takes it: what the file format's schema asks of its parts (ECMA-376,
// Office Open XML File Formats, part 1, 18.2 to 18.8), and no cell that belongs to two merged ranges.
#include <doctest/doctest.h>
#include <libxml/parser.h>

#include <algorithm>
#include <memory>
#include <set>
#include <stdexcept>

#include "base/text.h"
#include "render/outputs.h"

namespace kerfbook::render {
namespace {

using Words = std::vector<std::string_view>;

/// The order in which the children of these elements must stand.
const Words kOfWorksheet = {"sheetPr",
                            "dimension",
                            "sheetViews",
                            "sheetFormatPr",
                            "cols",
                            "sheetData",
                            "sheetCalcPr",
                            "sheetProtection",
                            "protectedRanges",
                            "scenarios",
                            "autoFilter",
                            "sortState",
                            "dataConsolidate",
                            "customSheetViews",
                            "mergeCells",
                            "phoneticPr",
                            "conditionalFormatting",
                            "dataValidations",
                            "hyperlinks",
                            "printOptions",
                            "pageMargins",
                            "pageSetup",
                            "headerFooter",
                            "rowBreaks",
                            "colBreaks",
                            "customProperties",
                            "cellWatches",
                            "ignoredErrors",
                            "smartTags",
                            "drawing",
                            "legacyDrawing",
                            "legacyDrawingHF",
                            "picture",
                            "oleObjects",
                            "controls",
                            "webPublishItems",
                            "tableParts",
                            "extLst"};
const Words kOfWorkbook = {"fileVersion",  "fileSharing", "workbookPr",     "workbookProtection",
                           "bookViews",    "sheets",      "functionGroups", "externalReferences",
                           "definedNames", "calcPr",      "oleSize",        "customWorkbookViews",
                           "pivotCaches",  "extLst"};
const Words kOfStyles = {"numFmts",    "fonts", "fills",       "borders", "cellStyleXfs", "cellXfs",
                         "cellStyles", "dxfs",  "tableStyles", "colors",  "extLst"};
const Words kOfCell = {"f", "v", "is"};

struct FreeDocument {
  void operator()(xmlDoc* document) const { xmlFreeDoc(document); }
};

class Part {
 public:
  Part(std::string name, const std::string& xml)
      : name_(std::move(name)),
        tree_(xmlReadMemory(xml.data(), static_cast<int>(xml.size()), "part", nullptr, XML_PARSE_NONET)) {
    REQUIRE_MESSAGE(tree_ != nullptr, name_ << " is not well formed");
  }
  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] xmlNode* root() const { return xmlDocGetRootElement(tree_.get()); }

 private:
  std::string name_;
  std::unique_ptr<xmlDoc, FreeDocument> tree_;
};

std::string_view name_of(const xmlNode* node) {
  return reinterpret_cast<const char*>(node->name);
}

std::vector<xmlNode*> children(const xmlNode* node) {
  std::vector<xmlNode*> out;
  for (xmlNode* one = node->children; one != nullptr; one = one->next)
    if (one->type == XML_ELEMENT_NODE) out.push_back(one);
  return out;
}

xmlNode* child(const xmlNode* node, std::string_view name) {
  for (xmlNode* one : children(node))
    if (name_of(one) == name) return one;
  return nullptr;
}

std::string attribute(xmlNode* node, const char* name) {
  xmlChar* const words = xmlGetProp(node, reinterpret_cast<const xmlChar*>(name));
  std::string out = words == nullptr ? "" : reinterpret_cast<const char*>(words);
  xmlFree(words);
  return out;
}

void check_order(const std::string& where, const xmlNode* node, const Words& order) {
  auto at = order.begin();
  for (const xmlNode* one : children(node)) {
    const auto found = std::find(at, order.end(), name_of(one));
    CHECK_MESSAGE(found != order.end(), where << ": <" << name_of(one) << "> stands where it may not");
    if (found != order.end()) at = found;
  }
}

/// A list that says how many it holds holds as many.
void check_counts(const Part& part) {
  for (xmlNode* list : children(part.root())) {
    const std::string said = attribute(list, "count");
    if (!said.empty())
      CHECK_MESSAGE(std::to_string(children(list).size()) == said,
                    part.name() << ": <" << name_of(list) << "> says it holds " << said);
  }
}

struct Range {
  std::pair<int, int> first;
  std::pair<int, int> last;
};

Range range_of(const std::string& ref) {
  const std::size_t colon = ref.find(':');
  const auto first = cell_of(ref.substr(0, colon));
  return {first, colon == std::string::npos ? first : cell_of(ref.substr(colon + 1))};
}

bool share_a_cell(const Range& a, const Range& b) {
  return a.first.first <= b.last.first && b.first.first <= a.last.first && a.first.second <= b.last.second &&
         b.first.second <= a.last.second;
}

/// No cell is in two merged ranges, and only a range's first cell holds anything.
void check_merged(const Part& part, const Sheet& sheet) {
  xmlNode* const list = child(part.root(), "mergeCells");
  if (list == nullptr) return;
  std::vector<Range> met;
  for (xmlNode* one : children(list)) {
    const std::string ref = attribute(one, "ref");
    const Range range = range_of(ref);
    CHECK_MESSAGE((range.first < range.last), part.name() << ": " << ref << " is one cell");
    for (const Range& other : met)
      CHECK_MESSAGE(!share_a_cell(range, other), part.name() << ": a cell of " << ref << " is merged twice");
    met.push_back(range);
    for (int row = range.first.first; row <= range.last.first; ++row)
      for (int column = range.first.second; column <= range.last.second; ++column)
        if (std::pair(row, column) != range.first)
          CHECK_MESSAGE(sheet.at(row, column).value.empty(), part.name()
                                                                 << ": something is hidden in " << ref);
  }
}

/// Rows go down and cells to the right, each in its own row, none twice, each of a known format.
void check_cells(const Part& part, std::size_t formats) {
  int last_row = -1;
  for (xmlNode* row : children(child(part.root(), "sheetData"))) {
    const int number = std::stoi(attribute(row, "r")) - 1;
    CHECK_MESSAGE(number > last_row, part.name() << ": row " << number + 1 << " stands too low");
    last_row = number;
    int last = -1;
    for (xmlNode* cell : children(row)) {
      const std::string ref = attribute(cell, "r");
      const auto at = cell_of(ref);
      CHECK_MESSAGE((at.first == number && at.second > last), part.name()
                                                                  << ": cell " << ref << " is out of order");
      last = at.second;
      check_order(part.name() + " " + ref, cell, kOfCell);
      const std::string format = attribute(cell, "s");
      if (!format.empty())
        CHECK_MESSAGE(std::stoul(format) < formats, part.name() << ": cell " << ref << " has no such format");
    }
  }
}

void check_columns(const Part& part) {
  xmlNode* const list = child(part.root(), "cols");
  if (list == nullptr) return;
  int last = 0;
  for (xmlNode* one : children(list)) {
    const int from = std::stoi(attribute(one, "min"));
    const int to = std::stoi(attribute(one, "max"));
    CHECK_MESSAGE((from > last && to >= from), part.name()
                                                   << ": widths of column " << from << " are given twice");
    last = to;
  }
}

/// Every formula, worked out from the values stored in the cells it names, gives the value stored beside it.
void check_formulas(const Part& part, const Sheet& sheet) {
  for (const auto& at : sheet.cells) {
    const SheetCell& cell = at.second;
    if (cell.formula.empty()) continue;
    REQUIRE_MESSAGE(!cell.value.empty(), part.name() << ": =" << cell.formula << " has no value beside it");
    CHECK_MESSAGE(near(worked_out(cell.formula, sheet), number_of(number_in_sheet(cell.value))),
                  part.name() << ": =" << cell.formula << " is stored as " << cell.value);
  }
}

void check_names(const std::vector<Sheet>& sheets) {
  std::set<std::string> met;
  for (const Sheet& sheet : sheets) {
    CHECK_MESSAGE(met.insert(lower(sheet.name)).second, "two worksheets are called " << sheet.name);
    CHECK_MESSAGE((!sheet.name.empty() && sheet.name.find_first_of("[]:*?/\\") == std::string::npos),
                  "a worksheet may not be called " << sheet.name);
  }
}

/// What a part refers to is in the file, and every part has its kind.
void check_parts(const std::vector<ZipPart>& parts) {
  std::set<std::string> all;
  for (const ZipPart& part : parts)
    CHECK_MESSAGE(all.insert(part.name).second, "a part is there twice: " << part.name);
  const Part types("[Content_Types].xml", part_of(parts, "[Content_Types].xml"));
  std::set<std::string> kinds;
  for (xmlNode* one : children(types.root())) {
    if (name_of(one) == "Default") kinds.insert("." + attribute(one, "Extension"));
    if (name_of(one) != "Override") continue;
    kinds.insert(attribute(one, "PartName").substr(1));
    CHECK_MESSAGE(all.contains(attribute(one, "PartName").substr(1)),
                  "a part is named and not there: " << attribute(one, "PartName"));
  }
  for (const std::string& name : all) {
    if (name == "[Content_Types].xml") continue;
    const bool known =
        kinds.contains(name) || kinds.contains(name.substr(std::min(name.rfind('.'), name.size())));
    CHECK_MESSAGE(known, "a part of no kind: " << name);
    if (!name.ends_with(".rels")) continue;
    const std::filesystem::path of = std::filesystem::path(name).parent_path().parent_path();
    const Part relations(name, part_of(parts, name));
    for (xmlNode* one : children(relations.root())) {
      const std::string target = attribute(one, "Target");
      const std::string path =
          target.starts_with('/') ? target.substr(1) : (of / target).lexically_normal().string();
      CHECK_MESSAGE(all.contains(path), name << " names what is not there: " << target);
    }
  }
}

}  // namespace

void check_strict(const std::string& bytes, const std::vector<Sheet>& sheets) {
  const auto parts = zip_parts(bytes);
  check_parts(parts);
  const Part book("xl/workbook.xml", part_of(parts, "xl/workbook.xml"));
  check_order(book.name(), book.root(), kOfWorkbook);
  const Part styles("xl/styles.xml", part_of(parts, "xl/styles.xml"));
  check_order(styles.name(), styles.root(), kOfStyles);
  check_counts(styles);
  check_names(sheets);
  const std::size_t formats = children(child(styles.root(), "cellXfs")).size();
  for (const Sheet& sheet : sheets) {
    const Part part("worksheet " + sheet.name, sheet.xml);
    check_order(part.name(), part.root(), kOfWorksheet);
    check_counts(part);
    check_columns(part);
    check_cells(part, formats);
    check_merged(part, sheet);
    check_formulas(part, sheet);
  }
}

}  // namespace kerfbook::render
