// catalogue.cpp -- which reports there are: those built into the program and those of the user's own folder.
#include <algorithm>
#include <filesystem>

#include "base/error.h"
#include "base/input.h"
#include "base/text.h"
#include "book/embedded.h"
#include "report/part.h"
#include "report/report.h"

namespace kerfbook::report {
namespace {

constexpr std::string_view kReports = "reports/";
constexpr std::string_view kParts = "reports/parts/";

std::string_view built_in_part(std::string_view name) {
  for (const auto& file : book::embedded_files()) {
    if (file.path == std::string(kParts) + std::string(name) + ".sql") return file.text;
  }
  return {};
}

ReportFile built_in(const book::EmbeddedFile& file) {
  return read_report(with_parts(file.text, built_in_part), file.path);
}

/// One that cannot be read stays in the list, with what is wrong.
ReportFile own_report(const std::string& file) {
  ReportFile report;
  try {
    report = read_report(read_input(file, kReportLimit), file);
  } catch (const Refused& refused) {
    report.path = file;
    report.faults.push_back({Severity::error, {}, std::string(refused.what()).substr(file.size() + 2), ""});
  }
  report.own = true;
  return report;
}

std::vector<std::filesystem::path> sql_files(const std::string& folder) {
  std::error_code error;
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder, error)) {
    // a pipe would be waited for
    if (entry.path().extension() == ".sql" && entry.is_regular_file(error)) files.push_back(entry.path());
  }
  if (error) throw Refused("reports folder " + folder + ": " + error.message());
  std::sort(files.begin(), files.end());
  return files;
}

/// A report whose header names nothing is listed by its file.
void name_by_file(ReportFile& report) {
  if (report.name.empty()) report.name = lower(std::filesystem::path(report.path).stem().string());
}

void put(std::vector<ReportFile>& reports, ReportFile report) {
  name_by_file(report);
  const auto same = std::find_if(reports.begin(), reports.end(),
                                 [&](const ReportFile& known) { return known.name == report.name; });
  if (same == reports.end()) {
    reports.push_back(std::move(report));
    return;
  }
  if (same->own) {
    report.faults.push_back({Severity::error,
                             {1, 0},
                             "report " + report.name + " is also in " + same->path,
                             "give one of them another name"});
  }
  *same = std::move(report);
}

}  // namespace

std::vector<ReportFile> all_reports(const std::string& own_folder) {
  std::vector<ReportFile> reports;
  for (const auto& file : book::embedded_files()) {
    if (!file.path.starts_with(kReports) || file.path.starts_with(kParts)) continue;
    put(reports, built_in(file));
  }
  std::sort(reports.begin(), reports.end(),
            [](const ReportFile& a, const ReportFile& b) { return a.name < b.name; });
  if (own_folder.empty()) return reports;
  for (const auto& file : sql_files(own_folder)) {
    put(reports, own_report(file.string()));
  }
  return reports;
}

const ReportFile& find_report(const std::vector<ReportFile>& reports, std::string_view name) {
  std::vector<std::string> known;
  for (const auto& report : reports) {
    if (same_word(report.name, name)) return report;
    known.push_back(report.name);
  }
  const std::string near = nearest(name, known);
  throw WrongUsage("there is no report '" + std::string(name) + "'; " +
                   (near.empty() ? "there are " + join(known, ", ") : "did you mean " + near + "?"));
}

ReportFile report_named(const std::string& own_folder, std::string_view name) {
  if (own_folder.empty()) {
    const std::string path =
        std::string(kReports) + lower(name) + ".sql";  // a built-in report's file has its name
    for (const auto& file : book::embedded_files()) {
      if (file.path == path && !path.starts_with(kParts)) return built_in(file);
    }
  }
  return find_report(all_reports(own_folder), name);
}

}  // namespace kerfbook::report
