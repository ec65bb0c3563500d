#include "command/output_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <climits>
#include <cstring>

#include "base/error.h"
#include "base/sync.h"
#include "base/unfinished.h"
#include "book/book.h"

namespace kerfbook::command {

namespace fs = std::filesystem;

namespace {

constexpr ::off_t kRoomForAPaper = 256 * 1024;
constexpr unsigned kRights = 07777;

/// Where a link leads, also one to a file that is yet to be made; links in a ring are told when the file is opened.
fs::path led_to(fs::path file) {
  constexpr int kMostLinks = 40;  // as Linux follows
  std::error_code error;
  for (int i = 0; i < kMostLinks && fs::is_symlink(file, error); ++i)
    file = file.parent_path() / fs::read_symlink(file, error);
  const fs::path plain = fs::weakly_canonical(file, error);
  return error ? file : plain;
}

/// SQLite would read it as part of the book.
bool is_log_of_a_book(const fs::path& file) {
  const std::string name = file.string();
  for (const std::string_view ending : {"-journal", "-wal", "-shm"}) {
    if (name.ends_with(ending) && book::is_book(name.substr(0, name.size() - ending.size()))) return true;
  }
  return false;
}

}  // namespace

OutputFile::OutputFile(const std::string& file) : named_(file) {
  std::error_code error;
  const fs::file_status status = fs::status(file, error);
  if (fs::is_directory(status)) throw Refused(named_ + ": is a folder; give a file in it");
  direct_ = fs::exists(status) && !fs::is_regular_file(status);
  file_ = fs::absolute(file);
  if (direct_) return;
  file_ = led_to(file_);
  if (!fs::is_directory(file_.parent_path(), error))
    throw Refused(named_ + ": there is no folder " + file_.parent_path().string() + "; make it first");
  if (is_log_of_a_book(file_))
    throw Refused(named_ + ": is kept for the book of that name; give another name");
  if (fs::exists(status)) {
    if (book::is_book(file_)) throw Refused(named_ + ": is a book, and stays one; give another name");
    struct ::stat now {};
    if (::stat(file_.c_str(), &now) == 0) mode_ = now.st_mode & kRights;
    if (::access(file_.c_str(), W_OK) != 0) fail(errno);
  }
  open_beside();
  reserve();
}

OutputFile::OutputFile(const std::string& file, unsigned rights)
    : named_(file), file_(fs::absolute(file)), mode_(rights), only_new_(true) {
  std::error_code error;
  if (fs::exists(fs::symlink_status(file_, error))) fail_to_take(EEXIST);
  if (!fs::is_directory(file_.parent_path(), error))
    throw Refused(named_ + ": there is no folder " + file_.parent_path().string() + "; make it first");
  open_beside();
}

void OutputFile::fail_to_take(int fault) const {
  if (fault == EEXIST && only_new_) throw Refused(named_ + ": is there already, and is never written over");
  fail(fault);
}

OutputFile::~OutputFile() {
  if (handle_ >= 0) ::close(handle_);
  if (!beside_.empty()) ::unlink(beside_.c_str());
}

void OutputFile::fail(int fault) const {
  throw Failed(named_ + ": cannot be written (" + std::strerror(fault) + ")");
}

/// Without a name where the file system can: then a killed program leaves nothing behind.
void OutputFile::open_beside() {
  constexpr unsigned kForAll = 0666;
  const unsigned rights = mode_ != 0 ? mode_ : kForAll;
  const fs::path name = unfinished_name(file_);
  if (name.filename().string().size() > NAME_MAX) fail(ENAMETOOLONG);
  handle_ = ::open(file_.parent_path().c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, rights);
  if (handle_ >= 0) return;
  if (errno != EOPNOTSUPP && errno != EISDIR && errno != ENOENT) fail(errno);
  handle_ = ::open(name.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, rights);
  if (handle_ < 0) fail(errno);
  beside_ = name;
}

void OutputFile::reserve() const {
  const int fault = ::posix_fallocate(handle_, 0, kRoomForAPaper);
  if (fault != 0 && fault != EOPNOTSUPP && fault != EINVAL) fail(fault);
}

void OutputFile::put(std::string_view bytes) const {
  while (!bytes.empty()) {
    const ::ssize_t some = ::write(handle_, bytes.data(), bytes.size());
    if (some < 0 && errno == EINTR) continue;
    if (some < 0) fail(errno);
    bytes.remove_prefix(static_cast<std::size_t>(some));
  }
}

void OutputFile::take_name() {
  if (beside_.empty()) {
    const fs::path name = only_new_ ? file_ : unfinished_name(file_);
    const std::string own = "/proc/self/fd/" + std::to_string(handle_);
    if (::linkat(AT_FDCWD, own.c_str(), AT_FDCWD, name.c_str(), AT_SYMLINK_FOLLOW) != 0) fail_to_take(errno);
    if (only_new_) return;
    beside_ = name;
  }
  if (only_new_) {
    if (::link(beside_.c_str(), file_.c_str()) != 0) fail_to_take(errno);
    return;  // the other name goes last of all
  }
  if (::rename(beside_.c_str(), file_.c_str()) != 0) fail(errno);
  beside_.clear();
}

void OutputFile::write(std::string_view bytes) {
  if (direct_) {
    handle_ = ::open(file_.c_str(), O_WRONLY | O_CLOEXEC);
    if (handle_ < 0) fail(errno);
    return put(bytes);
  }
  put(bytes);
  if (::ftruncate(handle_, static_cast<::off_t>(bytes.size())) != 0) fail(errno);
  if (mode_ != 0 && ::fchmod(handle_, mode_) != 0) fail(errno);
  if (::fsync(handle_) != 0) fail(errno);
  take_name();
  // The folder is synced too, or a power cut could take the name back.
  if (const int fault = sync_path(file_.parent_path()))
    throw FailedLate(named_ + ": is written, but a power cut could still take it away (" +
                     std::strerror(fault) + "); look at the disk");
  std::error_code error;
  if (fs::file_size(file_, error) != bytes.size() || error)
    throw FailedLate(named_ + ": has not the size that was written; look at the disk, and write it again");
}

}  // namespace kerfbook::command
