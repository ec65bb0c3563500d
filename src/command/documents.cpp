#include "command/documents.h"

#include <filesystem>

#include "base/text.h"

namespace kerfbook::command {

std::vector<book::Document> read_documents(const std::vector<std::string>& files, const Session& session) {
  std::vector<book::Document> documents;
  for (const auto& file : files) {
    const bool mill = lower(std::filesystem::path(file).extension().string()) == ".toml";
    documents.push_back({file == "-" ? "standard input" : file, read_text(file, session),
                         mill ? book::EntryKind::mill : book::EntryKind::sheet});
  }
  return documents;
}

}  // namespace kerfbook::command
