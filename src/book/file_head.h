// file_head.h -- the first bytes of a file, read before SQLite touches it (SQLite Database File Format, section 1.3):
// what is no book, or is kept in another way than a book, is told by them and left as it was. For this room only.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

namespace kerfbook::book {

/// The number of `many` bytes at `at`, the high byte first, as SQLite writes all of them.
std::uint64_t big_endian(std::string_view bytes, std::size_t at, std::size_t many);

/// What stands in the head of an SQLite file. Nothing is judged here: any of it may be nonsense.
class FileHead {
 public:
  static constexpr std::size_t kBytes = 100;

  /// Of the first bytes of a file: kBytes, or fewer where the file has no more.
  explicit FileHead(std::string bytes) : bytes_(std::move(bytes)) {}

  [[nodiscard]] bool is_empty() const { return bytes_.empty(); }
  /// All of it is there and begins as every SQLite file does.
  [[nodiscard]] bool is_sqlite() const;
  /// Bytes of a page; 0 when no SQLite file has pages of what stands there.
  [[nodiscard]] std::size_t page_size() const;
  /// Bytes at the end of each page that are kept for others.
  [[nodiscard]] std::size_t reserved() const { return number(20, 1); }
  /// How the file is written and read: 1 = with a rollback journal, 2 = with a log beside it that is folded in later
  /// (WAL), which another program has switched on.
  [[nodiscard]] std::uint32_t writing_way() const { return number(18, 1); }
  [[nodiscard]] std::uint32_t reading_way() const { return number(19, 1); }
  [[nodiscard]] bool has_write_ahead_log() const { return writing_way() == 2 || reading_way() == 2; }
  /// Goes up by one with each transaction that is kept.
  [[nodiscard]] std::uint32_t changes() const { return number(24, 4); }
  [[nodiscard]] std::uint32_t pages() const { return number(28, 4); }
  /// 1 = UTF-8, 2 and 3 = UTF-16.
  [[nodiscard]] std::uint32_t encoding() const { return number(56, 4); }
  [[nodiscard]] std::int32_t edition() const { return static_cast<std::int32_t>(number(60, 4)); }
  [[nodiscard]] std::int32_t application_id() const { return static_cast<std::int32_t>(number(68, 4)); }

 private:
  [[nodiscard]] std::uint32_t number(std::size_t at, std::size_t many) const {
    return at + many > bytes_.size() ? 0 : static_cast<std::uint32_t>(big_endian(bytes_, at, many));
  }
  std::string bytes_;
};

/// Of a plain file, by whatever links it is reached. Refused or Failed, with a sentence, when there is none or it
/// cannot be read.
FileHead read_head(const std::filesystem::path& file);

/// Refused when the head is not one of a book that this program can open, up to edition `newest`; Failed when it is
/// damaged.
void check_head(const FileHead& head, const std::filesystem::path& file, int newest);

}  // namespace kerfbook::book
