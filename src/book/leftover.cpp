#include "book/leftover.h"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <cstdint>
#include <fstream>
#include <optional>
#include <string>
#include <string_view>
#include <thread>

#include "base/error.h"
#include "book/file_head.h"

namespace kerfbook::book {
namespace {

namespace fs = std::filesystem;

// SQLite Database File Format, section 3: the rollback journal.
constexpr std::string_view kJournalMagic{"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8};
constexpr std::size_t kHeaderBytes = 28;
constexpr std::size_t kTailBytes = 16;  ///< how it ends when it names a file that several journals belong to

std::uint32_t number_at(std::string_view bytes, std::size_t at) {
  return static_cast<std::uint32_t>(big_endian(bytes, at, 4));
}

std::string read_bytes(std::ifstream& stream, std::size_t many) {
  std::string bytes(many, '\0');
  stream.read(bytes.data(), static_cast<std::streamsize>(many));
  bytes.resize(static_cast<std::size_t>(stream.gcount()));
  return bytes;
}

/// What tells a state of a book from another: how often it was changed, and its length.
struct State {
  std::uint32_t changes = 0;
  std::uint32_t pages = 0;
};

/// The state a journal was begun on. `changes` is absent when the writer had not come to change page 1.
struct Begun {
  std::optional<std::uint32_t> changes;
  std::uint32_t pages = 0;
};

/// nullopt: there is none, or SQLite will not play it back (its head was never written, or was wiped).
std::optional<Begun> begun_on(const fs::path& journal) {
  std::ifstream stream(journal, std::ios::binary);
  const std::string head = read_bytes(stream, kHeaderBytes);
  if (head.size() < kHeaderBytes || !head.starts_with(kJournalMagic)) return std::nullopt;
  const std::uint32_t records = number_at(head, 8);
  const std::uint32_t sector = number_at(head, 20);
  const std::uint32_t page = number_at(head, 24);
  if (records == 0 || page < 512 || page > 65'536 || sector < 32 || sector > 65'536) return std::nullopt;
  Begun begun{std::nullopt, number_at(head, 16)};
  stream.clear();
  stream.seekg(sector);
  // A later part of the journal has a head of its own: what stands behind it is not looked at. Page 1 is in the first.
  for (std::uint32_t i = 0; i < records; ++i) {
    const std::string record = read_bytes(stream, page + std::size_t{8});
    if (record.size() < page + std::size_t{8}) break;
    if (number_at(record, 0) == 1) {
      begun.changes = FileHead(record.substr(4, FileHead::kBytes)).changes();
      break;
    }
  }
  return begun;
}

std::optional<State> state_of(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  const std::string bytes = read_bytes(stream, FileHead::kBytes);
  if (bytes.size() < FileHead::kBytes) return std::nullopt;
  const FileHead head(bytes);
  return State{head.changes(), head.pages()};
}

/// A killed writer had raised the count of changes, or had not yet; page 1 is the last it writes.
bool belongs(const Begun& begun, const State& now) {
  if (begun.changes) return now.changes == *begun.changes || now.changes == *begun.changes + 1;
  return now.pages == begun.pages;
}

bool is_stranger(const fs::path& file) {
  const auto now = state_of(file);
  const auto begun = begun_on(rollback_journal_of(file));
  return now && begun && !belongs(*begun, *now);
}

/// SQLite deletes the file that a journal it plays back names at its end. A book's journal names none: only a
/// transaction over several files at once has such a file.
bool names_another_file(const fs::path& journal) {
  std::ifstream stream(journal, std::ios::binary);
  stream.seekg(-static_cast<std::streamoff>(kTailBytes), std::ios::end);
  const std::string tail = stream ? read_bytes(stream, kTailBytes) : std::string();
  return tail.ends_with(kJournalMagic);
}

}  // namespace

fs::path rollback_journal_of(const fs::path& file) {
  return file.string() + "-journal";
}

fs::path write_ahead_log_of(const fs::path& file) {
  return file.string() + "-wal";
}

std::vector<fs::path> logs_beside(const fs::path& file) {
  std::vector<fs::path> found;
  for (const fs::path& log : {rollback_journal_of(file), write_ahead_log_of(file)}) {
    std::error_code ignored;
    if (fs::exists(fs::symlink_status(log, ignored))) found.push_back(log);
  }
  return found;
}

void check_no_write_ahead_log(const fs::path& file) {
  const fs::path log = write_ahead_log_of(file);
  std::error_code ignored;
  if (!fs::exists(fs::symlink_status(log, ignored))) return;
  throw Refused(
      fmt::format("{}: another program keeps in this file what it has written to the book; close the book "
                  "there, or if no program has it open, move this file away, then open {} again",
                  log.string(), file.string()));
}

void check_leftover(const fs::path& file) {
  // The two are read one after the other, without a lock: while a writer works they may be caught apart, but not
  // several times on end.
  constexpr int kLooks = 4;
  const fs::path journal = rollback_journal_of(file);
  std::error_code ignored;
  const auto kind = fs::symlink_status(journal, ignored);
  if (fs::exists(kind) && !fs::is_regular_file(kind)) {
    throw Refused(
        fmt::format("{}: is no plain file, and SQLite would take it for what a killed writer left; "
                    "move it away, then open {} again",
                    journal.string(), file.string()));
  }
  if (names_another_file(journal)) {
    throw Refused(
        fmt::format("{}: was not left by kerfbook, for it names another file that would be deleted; "
                    "move it away, then open {} again",
                    journal.string(), file.string()));
  }
  for (int look = 0; look < kLooks; ++look) {
    if (!is_stranger(file)) return;
    std::this_thread::sleep_for(std::chrono::milliseconds(30));
  }
  throw Refused(
      fmt::format("{0}: was left by a writer of another copy of this book, and would make a mixture of the "
                  "two; move {0} away "
                  "(keep it with the copy it belongs to), then open {1} again",
                  rollback_journal_of(file).string(), file.string()));
}

}  // namespace kerfbook::book
