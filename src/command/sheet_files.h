// sheet_files.h -- the files given to check and post, each known for a day sheet or a mill file.
#pragma once

#include <string>
#include <vector>

#include "command/command.h"

namespace kerfbook::command {

/// Reads every file, in order; a name ending in .toml is a mill file, anything else a day sheet.
std::vector<book::Document> read_documents(const std::vector<std::string>& files, const Session& session);

/// All that is wrong or doubtful in a mill file, its prices included.
std::vector<Diagnostic> look_at_mill(std::string_view toml);

}  // namespace kerfbook::command
