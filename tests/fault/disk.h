// disk.h -- what was written down of a run of the program (record.h), and from it what a power cut after any call of that run
// can leave on a disk.
#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "fault/record.h"

namespace kerfbook::tests {

/// One call of a run.
struct Event {
  Record head;
  std::string from;
  std::string to;
  std::string bytes;
  [[nodiscard]] bool counted() const { return head.number >= 0; }
  /// Something on the disk, or its being safe there, is another after it; or something was said.
  [[nodiscard]] bool changes() const;
};

/// A whole file, quickly.
std::string bytes_of(const std::filesystem::path& file);
std::vector<Event> read_log(const std::filesystem::path& log);

/// What becomes of everything that was not synced.
struct Layout {
  enum class Part { lost, kept, some };
  Part data = Part::lost;   ///< what was written, and lengths
  Part names = Part::lost;  ///< files made, named otherwise and removed
  unsigned seed = 0;        ///< of `some`: sector by sector, name by name
};
std::string words_of(const Layout& layout);

/// A folder on a disk that keeps what was synced, and of the rest what it happens to have come to.
class Disk {
 public:
  explicit Disk(std::filesystem::path folder);  ///< as it lies there now, all of it safe
  void apply(const Event& event);
  /// The folder after a power cut, laid out as `to`.
  void lay(const std::filesystem::path& to, const Layout& layout) const;

 private:
  struct Change {
    std::int64_t at = 0;
    std::string bytes;
    std::optional<std::int64_t> length;  ///< the file gets this length, and no bytes
  };
  struct File {
    std::string safe;
    std::vector<Change> pending;
  };
  using Names = std::map<std::string, std::shared_ptr<File>>;  ///< full paths; no file: a folder
  struct NameChange {
    std::string gone;
    std::string made;
    std::shared_ptr<File> file;
  };

  void change_name(const Event& event);
  void sync_folder(const std::string& folder);
  static void make(Change change, std::string& content, Layout::Part part, std::mt19937& random);
  static std::string content(const File& file, Layout::Part part, std::mt19937& random);
  static void make(const NameChange& change, Names& names);

  std::filesystem::path folder_;
  std::map<std::uint64_t, std::shared_ptr<File>> files_;  ///< by the number the disk has given them
  Names names_;
  std::vector<NameChange> pending_names_;
};

}  // namespace kerfbook::tests
