// xlsx_bench.cpp -- 100,000 rows to a workbook: the renderer against bare libxlsxwriter writing the same cells, in
// the same run, both in constant memory, both from figures already at hand. Prints the ratio of times and the
// greatest memory each took beyond what its figures take (each runs in a process of its own).
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <xlsxwriter.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>
#include <string>
#include <vector>

#include "render/renderer.h"

namespace {

using namespace kerfbook;
using namespace kerfbook::render;

constexpr int kRows = 100'000;
constexpr int kRounds = 5;

Document lines(int rows) {
  Document document;
  document.name = "lines";
  document.title = "Tally lines";
  document.made_on = "2026-05-08";
  Table table;
  const auto column = [&](const char* name, ColumnKind kind, int places, TotalKind total) {
    Column one;
    one.name = name;
    one.kind = kind;
    one.places = places;
    one.total = total;
    table.columns.push_back(one);
  };
  column("day", ColumnKind::day, 0, TotalKind::none);
  column("job", ColumnKind::text, 0, TotalKind::none);
  column("species", ColumnKind::text, 0, TotalKind::none);
  column("size", ColumnKind::text, 0, TotalKind::none);
  column("length_ft", ColumnKind::count, 0, TotalKind::none);
  column("pieces", ColumnKind::count, 0, TotalKind::sum);
  column("bf", ColumnKind::decimal, 2, TotalKind::sum);
  const char* const sizes[] = {"1x4", "1x8", "2x4", "2x6", "2x8", "2x10", "4x4", "4x6"};
  std::int64_t pieces = 0;
  std::int64_t bf = 0;
  for (int i = 0; i < rows; ++i) {
    const std::int64_t count = 1 + i % 23;
    const std::int64_t hundredths = 267 + 733 * (i % 97);
    pieces += count;
    bf += hundredths;
    table.rows.push_back(
        {{make_day(2020, 1, 1) + i / 50, std::string("TER"), std::string("DF"), std::string(sizes[i % 8]),
          std::int64_t{8 + 2 * (i % 5)}, count, Decimal{hundredths, 2}},
         false});
  }
  table.totals = {Cell(), Cell(), Cell(), Cell(), Cell(), pieces, Decimal{bf, 2}};
  document.tables.push_back(std::move(table));
  return document;
}

void write_bare(const Document& document, const std::string& file) {
  lxw_workbook_options options{};
  options.constant_memory = LXW_TRUE;
  lxw_workbook* const book = workbook_new_opt(file.c_str(), &options);
  lxw_worksheet* const sheet = workbook_add_worksheet(book, nullptr);
  lxw_format* const day = workbook_add_format(book);
  format_set_num_format(day, "yyyy-mm-dd");
  lxw_format* const count = workbook_add_format(book);
  format_set_num_format(count, "#,##0");
  lxw_format* const hundredths = workbook_add_format(book);
  format_set_num_format(hundredths, "#,##0.00");
  lxw_row_t at = 0;
  for (const Row& row : document.tables.front().rows) {
    worksheet_write_number(sheet, at, 0, std::get<Day>(row.cells[0]).number + 25569, day);
    for (lxw_col_t i = 1; i < 4; ++i) {
      worksheet_write_string(sheet, at, i, std::get<std::string>(row.cells[i]).c_str(), nullptr);
    }
    for (lxw_col_t i = 4; i < 6; ++i) {
      worksheet_write_number(sheet, at, i, static_cast<double>(std::get<std::int64_t>(row.cells[i])), count);
    }
    worksheet_write_number(sheet, at, 6, std::get<Figure>(row.cells[6]).nearest(), hundredths);
    ++at;
  }
  workbook_close(book);
}

double seconds(const std::function<void()>& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

/// Kilobytes by which `work` raised the memory of a process of its own.
long growth(const std::function<void()>& work) {
  int pipe_ends[2];
  if (::pipe(pipe_ends) != 0) return -1;
  if (::fork() == 0) {
    rusage before{};
    rusage after{};
    ::getrusage(RUSAGE_SELF, &before);
    work();
    ::getrusage(RUSAGE_SELF, &after);
    const long grown = after.ru_maxrss - before.ru_maxrss;
    ::_exit(::write(pipe_ends[1], &grown, sizeof grown) == sizeof grown ? 0 : 1);
  }
  long grown = -1;
  if (::read(pipe_ends[0], &grown, sizeof grown) != sizeof grown) grown = -1;
  ::wait(nullptr);
  return grown;
}

}  // namespace

int main() {
  const Document document = lines(kRows);
  const std::string file = fmt::format("/tmp/kerfbook-bench-{}.xlsx", ::getpid());
  std::string bytes;
  const auto ours = [&] { bytes = render_xlsx(document); };
  const auto bare = [&] { write_bare(document, file); };
  const long our_growth = growth(ours);
  const long bare_growth = growth(bare);
  double our_best = 1e9;
  double bare_best = 1e9;
  for (int i = 0; i < kRounds; ++i) {
    our_best = std::min(our_best, seconds(ours));
    bare_best = std::min(bare_best, seconds(bare));
  }
  std::remove(file.c_str());
  fmt::print(
      "{} rows of 7 cells to xlsx, best of {}: renderer {:.3f} s, bare libxlsxwriter {:.3f} s, ratio "
      "{:.2f}\n",
      kRows, kRounds, our_best, bare_best, our_best / bare_best);
  fmt::print("memory grown: renderer {} kB (its file is {} kB), bare {} kB\n", our_growth,
             bytes.size() / 1024, bare_growth);
  const Document longer = lines(4 * kRows);
  const long longer_growth = growth([&] { bytes = render_xlsx(longer); });
  const std::string longer_file = render_xlsx(longer);
  fmt::print(
      "of four times the rows: renderer {} kB (its file is {} kB); beyond the file {} kB, of {} rows {} kB\n",
      longer_growth, longer_file.size() / 1024, longer_growth - static_cast<long>(longer_file.size() / 1024),
      kRows, our_growth - static_cast<long>(bytes.size() / 1024));
  return 0;
}
