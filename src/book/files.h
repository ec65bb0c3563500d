// files.h -- names and folders on the disk that outlive a power cut. For this room only.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace kerfbook::book {

/// Gives a file its name at once, never over another: Refused when the name is taken, Failed when it cannot be given,
/// FailedLate when it has it and a power cut could still take it away.
void name_new(const std::filesystem::path& from, const std::filesystem::path& to);

/// A file in the making beside where it is to be: its name begins with a dot, and it is gone again unless it was kept.
class DotFile {
 public:
  /// ".mill.book.part1234" for "mill.book". What killed programs left of the same file is cleared first.
  explicit DotFile(const std::filesystem::path& file);
  DotFile(const DotFile&) = delete;
  DotFile& operator=(const DotFile&) = delete;
  ~DotFile();
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }
  /// Syncs it and gives it its name, as name_new().
  void keep_as(const std::filesystem::path& file);

 private:
  std::filesystem::path path_;
};

/// "2026-05-08-201407" of "2026-05-08 20:14:07": as it stands in a file's name.
std::string in_a_name(std::string_view now);
/// `base` + `ending`, or `base`-2 + `ending` and so on: the first that is not taken.
std::filesystem::path free_name(const std::string& base, const std::string& ending);

}  // namespace kerfbook::book
