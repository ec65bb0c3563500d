// pages.cpp -- source: SQLite Database File Format, sections 1.3 (the head), 1.6 (b-tree pages), 1.7 (overflow pages) and 2.1
// (records). Every number read here may be nonsense: each is held against the size of what it points into.
#include "book/pages.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <string_view>

#include "base/error.h"
#include "book/file_head.h"

namespace kerfbook::book {
namespace {

constexpr std::size_t kUsualPage = 4096;
constexpr unsigned char kIndexInterior = 2;
constexpr unsigned char kIndexLeaf = 10;
constexpr unsigned char kTableLeaf = 13;

/// A number of one to nine bytes, 7 bits a byte and 8 in the ninth; `at` moves behind it. nullopt past the end.
std::optional<std::uint64_t> varint(std::string_view bytes, std::size_t& at) {
  std::uint64_t value = 0;
  for (int i = 0; i < 9; ++i) {
    if (at >= bytes.size()) return std::nullopt;
    const auto byte = static_cast<unsigned char>(bytes[at++]);
    if (i == 8) return value << 8 | byte;
    value = value << 7 | (byte & 0x7FU);
    if (byte < 0x80) return value;
  }
  return std::nullopt;
}

class PageFile {
 public:
  explicit PageFile(const std::filesystem::path& file) : handle_(::open(file.c_str(), O_RDONLY | O_CLOEXEC)) {
    struct ::stat now {};
    if (handle_ < 0 || ::fstat(handle_, &now) != 0)
      throw Refused(fmt::format("{}: cannot be read ({})", file.string(), std::strerror(errno)));
    if (!S_ISREG(now.st_mode)) {
      ::close(handle_);
      throw Refused(fmt::format("{}: is no plain file, so no book", file.string()));
    }
    size_ = static_cast<std::uint64_t>(now.st_size);
    read_head();
  }
  PageFile(const PageFile&) = delete;
  PageFile& operator=(const PageFile&) = delete;
  ~PageFile() { ::close(handle_); }

  /// The bytes of page `number`, from 1; fewer than a page where the file ends or the disk gives no more.
  [[nodiscard]] std::string page(std::uint64_t number) const {
    if (number == 0 || number > pages()) return {};
    return bytes((number - 1) * page_size_, page_size_);
  }
  [[nodiscard]] std::uint64_t pages() const { return (size_ + page_size_ - 1) / page_size_; }
  [[nodiscard]] std::uint64_t pages_by_head() const { return pages_by_head_; }
  [[nodiscard]] std::size_t page_size() const { return page_size_; }
  [[nodiscard]] std::size_t usable() const { return page_size_ - reserved_; }

 private:
  [[nodiscard]] std::string bytes(std::uint64_t at, std::size_t many) const {
    std::string out(many, '\0');
    std::size_t have = 0;
    while (have < many) {
      const ::ssize_t some =
          ::pread(handle_, out.data() + have, many - have, static_cast<::off_t>(at + have));
      if (some < 0 && errno == EINTR) continue;
      if (some <= 0) break;  // the end, or a bad place of the disk
      have += static_cast<std::size_t>(some);
    }
    out.resize(have);
    return out;
  }

  /// The size of its pages. Where the head is damaged, that of every book made here.
  void read_head() {
    const FileHead head(bytes(0, FileHead::kBytes));
    if (head.page_size() == 0) return;
    page_size_ = head.page_size();
    reserved_ = head.reserved();
    pages_by_head_ = head.pages();
  }

  int handle_;
  std::uint64_t size_ = 0;
  std::uint64_t pages_by_head_ = 0;
  std::size_t page_size_ = kUsualPage;
  std::size_t reserved_ = 0;
};

/// How many bytes of a row's `payload` stand on its own page; the rest is on overflow pages.
std::size_t local_bytes(std::uint64_t payload, std::size_t usable, bool of_table) {
  const std::size_t most = of_table ? usable - 35 : (usable - 12) * 64 / 255 - 23;
  if (payload <= most) return static_cast<std::size_t>(payload);
  const std::size_t least = (usable - 12) * 32 / 255 - 23;
  const std::size_t some = least + static_cast<std::size_t>((payload - least) % (usable - 4));
  return some <= most ? some : least;
}

/// The payload of a row that begins at `at` of a page: as much of it as is there.
std::string payload_at(const PageFile& file, std::string_view page, std::size_t at, std::uint64_t size,
                       bool of_table) {
  if (size > file.pages() * file.page_size()) return {};
  const std::size_t local = local_bytes(size, file.usable(), of_table);
  std::string payload(page.substr(std::min(at, page.size()), local));
  if (payload.size() < local || size == local) return payload;
  if (at + local + 4 > page.size()) return payload;
  std::uint64_t next = big_endian(page, at + local, 4);
  while (next != 0 && payload.size() < size) {  // each turn adds bytes, so a ring of pages comes to an end
    const std::string more = file.page(next);
    if (more.size() <= 4) break;
    const std::size_t usable = std::min(more.size(), file.usable()) - 4;
    const auto want = static_cast<std::size_t>(std::min<std::uint64_t>(usable, size - payload.size()));
    payload.append(more, 4, want);
    if (more.size() < file.usable()) break;
    next = big_endian(more, 0, 4);
  }
  return payload;
}

/// The value of a serial type at `at`; what is not there of a text makes the row incomplete.
RawValue value_at(std::string_view payload, std::uint64_t type, std::uint64_t& at, bool& complete) {
  constexpr std::uint64_t kBytesOfType[] = {0, 1, 2, 3, 4, 6, 8, 8, 0, 0, 0, 0};
  const std::uint64_t size = type < 12 ? kBytesOfType[type] : (type - 12) / 2;
  const std::uint64_t begin = at;
  at += size;
  if (type == 8 || type == 9) return static_cast<std::int64_t>(type - 8);
  if (begin >= payload.size() && size > 0) {
    complete = false;
    return std::monostate{};
  }
  const std::string_view there =
      payload.substr(static_cast<std::size_t>(std::min<std::uint64_t>(begin, payload.size())),
                     static_cast<std::size_t>(size));
  if (there.size() < size) complete = false;
  if (type >= 13 && type % 2 == 1) return std::string(there);
  if (type == 0 || type > 6 || there.size() < size) return std::monostate{};
  std::uint64_t value = big_endian(there, 0, there.size());
  const bool minus = (static_cast<unsigned char>(there[0]) & 0x80U) != 0;
  if (minus && size < 8) value |= ~std::uint64_t{0} << (8 * size);
  return static_cast<std::int64_t>(value);
}

/// The values of a record; false when its head is not one, or has fewer columns.
bool read_record(std::string_view payload, std::size_t least_columns, RawRow& row) {
  constexpr std::size_t kMostColumns = 64;  // no table of a book has so many
  std::size_t at = 0;
  const auto head = varint(payload, at);
  if (!head || *head > payload.size() || *head < 2) return false;
  const std::string_view types = payload.substr(0, static_cast<std::size_t>(*head));
  std::uint64_t value_from = *head;
  std::vector<std::uint64_t> kinds;
  while (at < types.size()) {
    const auto type = varint(types, at);
    if (!type || *type > (std::uint64_t{1} << 40) || kinds.size() == kMostColumns) return false;
    kinds.push_back(*type);
  }
  if (kinds.size() < least_columns) return false;
  for (const std::uint64_t kind : kinds)
    row.values.push_back(value_at(payload, kind, value_from, row.complete));
  return true;
}

void read_page(const PageFile& file, std::uint64_t number, std::string_view page, std::size_t least_columns,
               const std::function<void(const RawRow&)>& take) {
  const std::size_t head = number == 1 ? FileHead::kBytes : 0;
  if (page.size() < head + 12) return;
  const auto kind = static_cast<unsigned char>(page[head]);
  if (kind != kTableLeaf && kind != kIndexLeaf && kind != kIndexInterior) return;
  const std::uint64_t cells = big_endian(page, head + 3, 2);
  const std::size_t pointers = head + (kind == kIndexInterior ? 12 : 8);
  for (std::uint64_t i = 0; i < cells; ++i) {
    const std::size_t pointer = pointers + 2 * static_cast<std::size_t>(i);
    if (pointer + 2 > page.size()) return;
    auto at = static_cast<std::size_t>(big_endian(page, pointer, 2));
    if (kind == kIndexInterior) at += 4;
    const auto size = varint(page, at);
    if (!size || at >= page.size()) continue;
    RawRow row;
    row.of_table = kind == kTableLeaf;
    if (row.of_table) {
      const auto rowid = varint(page, at);
      if (!rowid) continue;
      row.rowid = static_cast<std::int64_t>(*rowid);
    }
    const std::string payload = payload_at(file, page, at, *size, row.of_table);
    row.complete = payload.size() == *size;
    if (read_record(payload, least_columns, row)) take(row);
  }
}

}  // namespace

PageCount read_pages(const std::filesystem::path& path, std::size_t least_columns,
                     const std::function<void(const RawRow&)>& take) {
  const PageFile file(path);
  PageCount count;
  count.pages = static_cast<std::int64_t>(file.pages());
  count.cut_short = file.pages_by_head() > file.pages();
  for (std::uint64_t number = 1; number <= file.pages(); ++number) {
    const std::string page = file.page(number);
    if (page.size() < file.page_size()) {
      ++count.unreadable;
      if (number == file.pages()) count.cut_short = true;
    }
    read_page(file, number, page, least_columns, take);
  }
  return count;
}

}  // namespace kerfbook::book
