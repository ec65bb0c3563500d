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

}  // namespace kerfbook
