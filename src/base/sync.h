// sync.h -- the one way a name is made to outlast a power cut.
#pragma once

#include <filesystem>

namespace kerfbook {

/// Puts a file's bytes, or a folder's names, on the disk. 0 when they are there (or the file system has no such call),
/// else errno.
int sync_path(const std::filesystem::path& path);

/// Makes a folder, and those it lies in, where they are not there. 0 when it is there and on the disk, else errno.
int make_folder(const std::filesystem::path& folder);

}  // namespace kerfbook
