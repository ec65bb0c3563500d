// Every built-in report in every form, on the demo week with its correction and on an empty book, as files in
// tests/report/golden. A page is kept by its words and a workbook by its cells; one page is kept whole. They are made
// anew by KERFBOOK_GOLDEN=update build/debug/tests/test_report, and read with a pencil.
#include "render/golden.h"

#include <doctest/doctest.h>

#include "demo.h"
#include "render/renderer.h"

using namespace kerfbook;
using namespace kerfbook::report;

namespace {

constexpr const char* kWholePage = "production";

class Goldens {
 public:
  void check(const std::string& name, const std::string& made) {
    render::check_golden("report", name, made);
    names_.insert(name);
  }
  void check_in_every_form(const std::string& name, const render::Document& document) {
    for (const auto& format : render::formats()) {
      const std::string made = format.render(document);
      const std::string suffix(format.suffix);
      if (format.name == "html") {
        check(name + suffix + ".words", render::words_of_page(made));
      } else if (format.name == "xlsx") {
        check(name + suffix + ".cells", render::listing(render::read_workbook(made)));
      } else {
        check(name + suffix, made);
      }
    }
  }
  [[nodiscard]] const std::set<std::string>& names() const { return names_; }

 private:
  std::set<std::string> names_;
};

}  // namespace

TEST_CASE("every report in every form, on the demo week and on an empty book, is what its golden files say") {
  const auto full = demo_week();
  const auto empty = empty_book();
  Goldens goldens;
  for (const auto& report : all_reports("")) {
    const auto week = run_report(report, full, {}, {}, kToday);
    goldens.check_in_every_form(report.name + ".full", week);
    goldens.check_in_every_form(report.name + ".empty", run_report(report, empty, {}, {}, kToday));
    if (report.name == kWholePage) goldens.check(report.name + ".full.html", render::render_html(week));
  }
  render::check_no_golden_but("report", goldens.names());
}
