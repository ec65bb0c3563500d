#include "book/file_head.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "base/error.h"
#include "base/text.h"
#include "book/copy.h"
#include "book/schema.h"

namespace kerfbook::book {

namespace fs = std::filesystem;

namespace {

constexpr std::string_view kMagic{"SQLite format 3\0", 16};
constexpr std::uint32_t kUtf8 = 1;
constexpr std::uint32_t kUtf16 = 3;  ///< or 2, with the bytes the other way round

/// Why the file cannot be opened to be read, as a sentence.
[[noreturn]] void tell_why_not(const fs::path& file, int fault) {
  const std::string name = file.string();
  std::error_code error;
  const bool link = fs::is_symlink(fs::symlink_status(file, error));
  switch (fault) {
    case ENOENT:
    case ENOTDIR:
      if (link)
        throw Refused(fmt::format("{}: is a link to {}, and there is no such file", name,
                                  in_quotes(written_out(fs::read_symlink(file, error).string()))));
      throw Refused(fmt::format("{0}: there is no such book; kerfbook new {0} makes one", name));
    case ELOOP:
      throw Refused(fmt::format("{}: is a link that leads round to itself; give the book's own name", name));
    case ENAMETOOLONG:
      throw Refused(fmt::format("{}: is longer than a file's name can be", name));
    case ENXIO:
    case ENODEV:
      throw Refused(fmt::format("{}: is no plain file, so no book", name));
    case EACCES:
    case EPERM:
      throw Failed(fmt::format("{}: may not be read; look at the rights of the file and its folder", name));
    default:
      throw Failed(fmt::format("{}: cannot be read ({})", name, std::strerror(fault)));
  }
}

/// What no book has in its head; empty when there is nothing of that kind.
std::string damage_of(const FileHead& head) {
  if (head.edition() < 1) return fmt::format("edition {}", head.edition());
  if (head.page_size() == 0) return "no size of pages";
  if (head.encoding() != kUtf8) return fmt::format("encoding {}", head.encoding());
  for (const std::uint32_t way : {head.writing_way(), head.reading_way()}) {
    if (way < 1 || way > 2) return fmt::format("file format {}", way);
  }
  return "";
}

/// A file opened to be read, closed again at the end. Opening waits for nobody, whatever the file is.
class Opened {
 public:
  explicit Opened(const fs::path& file)
      : handle_(::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY)), fault_(errno) {}
  Opened(const Opened&) = delete;
  Opened& operator=(const Opened&) = delete;
  ~Opened() {
    if (handle_ >= 0) ::close(handle_);
  }
  [[nodiscard]] int handle() const { return handle_; }
  [[nodiscard]] int fault() const { return fault_; }

 private:
  int handle_;
  int fault_;
};

}  // namespace

std::uint64_t big_endian(std::string_view bytes, std::size_t at, std::size_t many) {
  std::uint64_t value = 0;
  for (std::size_t i = 0; i < many; ++i) value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
  return value;
}

bool FileHead::is_sqlite() const {
  return bytes_.size() == kBytes && bytes_.starts_with(kMagic);
}

std::size_t FileHead::page_size() const {
  const std::uint32_t said = number(16, 2);
  const std::size_t size = said == 1 ? 65'536 : said;  // it does not go into two bytes
  return size < 512 || (size & (size - 1)) != 0 || size < 480 + reserved() ? 0 : size;
}

FileHead read_head(const fs::path& file) {
  // What is looked at first is not opened: to open a device may set something going.
  struct ::stat now {};
  if (::stat(file.c_str(), &now) != 0) tell_why_not(file, errno);
  if (S_ISDIR(now.st_mode)) throw Refused(fmt::format("{}: is a folder, not a book", file.string()));
  if (!S_ISREG(now.st_mode)) throw Refused(fmt::format("{}: is no plain file, so no book", file.string()));
  const Opened opened(file);
  if (opened.handle() < 0) tell_why_not(file, opened.fault());
  std::string bytes(FileHead::kBytes, '\0');
  std::size_t have = 0;
  while (have < bytes.size()) {  // a read may give less than it was asked for
    const ::ssize_t some =
        ::pread(opened.handle(), bytes.data() + have, bytes.size() - have, static_cast<::off_t>(have));
    if (some < 0 && errno == EINTR) continue;
    if (some < 0) tell_why_not(file, errno);
    if (some == 0) break;
    have += static_cast<std::size_t>(some);
  }
  bytes.resize(have);
  return FileHead(std::move(bytes));
}

void check_head(const FileHead& head, const fs::path& file, int newest) {
  const std::string name = file.string();
  if (head.is_empty()) {
    throw Refused(
        fmt::format("{}: is an empty file, not a book; make one under another name with kerfbook new", name));
  }
  if (!head.is_sqlite())
    throw Refused(fmt::format("{}: is not a book; give the file that kerfbook new made", name));
  if (head.application_id() != kApplicationId)
    throw Refused(fmt::format(
        "{}: is another program's database, not a book; give the file that kerfbook new made", name));
  if (head.edition() > newest) {
    throw Refused(fmt::format(
        "{}: was written by a newer kerfbook (book edition {}, this program knows {}); use that one", name,
        head.edition(), newest));
  }
  if (head.encoding() > kUtf8 && head.encoding() <= kUtf16) {
    throw Refused(
        fmt::format("{}: its texts are kept in UTF-16, a book's in UTF-8; another program has made this "
                    "file; {}",
                    name, kGoBack));
  }
  const std::string damage = damage_of(head);
  if (!damage.empty())
    throw Failed(fmt::format("{}: the book is damaged (its header has {}); {}", name, damage, kGoBack));
}

}  // namespace kerfbook::book
