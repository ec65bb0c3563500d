// output_file.h -- the one way a command's answer becomes a file: whole or not at all, and never over a book.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace kerfbook::command {

/// A file to be written. Making one finds out whether that can be done, and keeps room for a paper, so that a command
/// that posts can do it before it posts; nothing of that is seen until write().
///
/// A link is followed: the file it leads to is written and the link stays. A file that is there keeps its rights. Into
/// a device or a pipe the bytes go as they are; it is not replaced.
class OutputFile {
 public:
  /// Refused when the name is a folder, a book or beside no folder; Failed when nothing can be written there.
  explicit OutputFile(const std::string& file);
  /// One that takes no other's place, with these rights. Refused when there is anything of that name.
  OutputFile(const std::string& file, unsigned rights);
  OutputFile(const OutputFile&) = delete;
  OutputFile& operator=(const OutputFile&) = delete;
  ~OutputFile();

  /// Once. Durable when it returns: the bytes, then the name, are on the disk. Failed when they are not, and what was
  /// there before is left as it was; FailedLate when the name is taken and the disk fails then.
  void write(std::string_view bytes);

 private:
  void open_beside();
  void reserve() const;
  void put(std::string_view bytes) const;
  void take_name();
  [[noreturn]] void fail_to_take(int fault) const;
  [[noreturn]] void fail(int fault) const;

  std::string named_;             ///< as the user named it, for messages
  std::filesystem::path file_;    ///< where the link leads
  std::filesystem::path beside_;  ///< the unfinished file's name; empty while it has none
  int handle_ = -1;
  unsigned mode_ = 0;  ///< rights of the file that is there, or those it is to have; 0 = there is none
  bool only_new_ = false;
  bool direct_ = false;  ///< a device or a pipe
};

}  // namespace kerfbook::command
