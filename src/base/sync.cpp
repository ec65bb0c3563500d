#include "base/sync.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>

namespace kerfbook {

int sync_path(const std::filesystem::path& path) {
  const int handle = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (handle < 0) return errno;
  const int fault = ::fsync(handle) == 0 || errno == EINVAL ? 0 : errno;  // EINVAL: a file system without it
  ::close(handle);
  return fault;
}

int make_folder(const std::filesystem::path& folder) {
  std::filesystem::path made;
  for (const auto& part : std::filesystem::absolute(folder).lexically_normal()) {
    if (part.empty()) continue;  // behind a slash at the end
    const std::filesystem::path in = made;
    made /= part;
    std::error_code error;
    const bool is_new = std::filesystem::create_directory(made, error);
    if (error) return error.value();
    if (const int fault = is_new ? sync_path(in) : 0) return fault;
  }
  return 0;
}

}  // namespace kerfbook
