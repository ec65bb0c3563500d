// outputs_calc.cpp -- workbooks through LibreOffice, which works every formula out again.
#include <doctest/doctest.h>

#include "render/outputs.h"
#include "render/outputs_check.h"
#include "render/renderer.h"

namespace kerfbook::render {
namespace {

/// LibreOffice by default trusts the values stored beside formulas; this makes it work every one out again.
constexpr const char* kRecalculate =
    R"(<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
)";

/// A sum of two numbers, stored as if it were another: what it says after shows whether it was worked out.
std::string probe() {
  Column pieces;
  pieces.name = "pieces";
  pieces.heading = "Pieces";
  pieces.kind = ColumnKind::count;
  pieces.total = TotalKind::sum;
  Table table;
  table.name = "probe";
  table.columns = {pieces};
  table.rows = {{{std::int64_t{40}}}, {{std::int64_t{2}}}};
  table.totals = {std::int64_t{7}};
  Document document;
  document.name = "probe";
  document.tables = {table};
  return render_xlsx(document);
}

}  // namespace

void convert_recalculated(const Folder& folder, const std::string& format,
                          const std::vector<std::string>& names) {
  REQUIRE_MESSAGE(!output_of("command -v soffice").empty(),
                  "LibreOffice (package libreoffice-calc-nogui) is not installed; ./bootstrap installs it");
  write_file(folder / "profile/user/registrymodifications.xcu", kRecalculate);
  write_file(folder / "probe.xlsx", probe());
  std::string command = "cd '" + (folder / "") + "' && soffice -env:UserInstallation=file://" +
                        (folder / "profile") + " --headless --convert-to '" + format +
                        "' --outdir calculated probe.xlsx";
  for (const auto& name : names) command += " " + name;
  const std::string said = output_of(command + " 2>&1");
  const bool told =
      format.starts_with("csv")
          ? read_file(folder / "calculated/probe.csv").find("42") != std::string::npos
          : listing(read_any_workbook(read_file(folder / "calculated/probe.xlsx"))).find("42") !=
                std::string::npos;
  REQUIRE_MESSAGE(told, "LibreOffice wrote nothing, or worked nothing out: " << said);
}

void check_recalculated(const std::map<std::string, std::string>& workbooks) {
  const Folder folder;
  std::vector<std::string> names;
  for (const auto& [name, bytes] : workbooks) {
    names.push_back(name + ".xlsx");
    write_file(folder / names.back(), bytes);
  }
  convert_recalculated(folder, "xlsx:Calc MS Excel 2007 XML", names);
  const auto worked = [&](const std::string& file) {
    return read_any_workbook(read_file(folder / ("calculated/" + file)));
  };
  for (const auto& [name, bytes] : workbooks) {
    const auto stored = read_workbook(bytes);
    const auto again = worked(name + ".xlsx");
    REQUIRE(stored.size() == again.size());
    for (std::size_t i = 0; i < stored.size(); ++i) {
      for (const auto& [place, cell] : stored[i].cells) {
        if (cell.formula.empty()) continue;
        const std::string value = again[i].at(place.first, place.second).value;
        const bool same =
            !value.empty() && near(number_of(number_in_sheet(value)), number_of(number_in_sheet(cell.value)));
        const std::string what = name + ", " + stored[i].name + ", row " + std::to_string(place.first + 1) +
                                 ": =" + cell.formula + " is stored as " + cell.value +
                                 "; LibreOffice works out " + value;
        CHECK_MESSAGE(same, what);
      }
    }
  }
}

}  // namespace kerfbook::render
