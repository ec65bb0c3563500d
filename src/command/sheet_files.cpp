#include "command/sheet_files.h"

#include <filesystem>

#include "base/text.h"
#include "price/job_terms.h"
#include "report/report.h"
#include "sheet/read.h"

namespace kerfbook::command {

std::vector<book::Document> read_documents(const std::vector<std::string>& files, const Session& session) {
  std::vector<book::Document> documents;
  for (const auto& file : files) {
    const std::string ending = lower(std::filesystem::path(file).extension().string());
    const bool mill = ending == ".toml";
    const InputLimit& limit = mill               ? book::kMillLimit
                              : ending == ".sql" ? report::kReportLimit
                                                 : sheet::kSheetLimit;
    documents.push_back({file == "-" ? "standard input" : file, read_text(file, limit, session),
                         mill ? book::EntryKind::mill : book::EntryKind::sheet});
  }
  return documents;
}

std::vector<Diagnostic> look_at_mill(std::string_view toml) {
  auto found = book::read_mill(toml).found;
  if (has_error(found)) return found;
  const auto money = billing::check_money(toml);
  found.insert(found.end(), money.begin(), money.end());
  sort_by_place(found);
  return found;
}

}  // namespace kerfbook::command
