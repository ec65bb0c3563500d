// bench.h -- runs one deed in its folder with the fault layer preloaded, and looks at what it left.
#pragma once

#include <map>
#include <set>

#include "fault/deeds.h"
#include "fault/disk.h"

namespace kerfbook::tests {

/// What lies in the folder: of a book its entries and whether it is sound, of another file its bytes. A name that ends in
/// '/' is a folder.
using Seen = std::map<std::string, std::string>;

/// One call that goes wrong.
struct Fault {
  int at = -1;  ///< number of the call; -1: none does
  std::string how;
};

class Bench {
 public:
  explicit Bench(const Deed& deed);

  /// The deed in its folder as it was at first.
  Ran run(const Fault& fault);
  /// The deed once more in the folder as it lies there now, and nothing goes wrong.
  Ran run_again();
  /// Opens every book there is, as the next command would.
  Seen look();
  /// Lays the folder out as `disk` may be after a power cut.
  void lay(const Disk& disk, const Layout& layout) { disk.lay(folder_, layout); }
  void lay_out_anew();
  /// The disk before the run in which nothing went wrong, to which that run's events can be applied: once.
  [[nodiscard]] Disk& disk() { return *disk_; }
  [[nodiscard]] std::vector<Event> log() const { return read_log(scratch_ / "log"); }

  [[nodiscard]] const Deed& deed() const { return deed_; }
  [[nodiscard]] const Seen& before() const { return before_; }
  [[nodiscard]] const Seen& after() const { return after_; }
  [[nodiscard]] const Ran& clean() const { return clean_; }
  [[nodiscard]] const std::vector<Event>& clean_log() const { return clean_log_; }
  /// Whether the folder is byte for byte as it was when this was asked before about the same.
  bool is_known(std::size_t what);

 private:
  Ran start(const Fault& fault);
  std::string look_at_book(const fs::path& file);

  const Deed& deed_;
  Scratch scratch_;
  fs::path folder_;                           ///< in which the deed is done
  fs::path model_;                            ///< as it was at first
  std::map<std::string, std::string> known_;  ///< bytes of a book: what was seen in it
  std::set<std::string> laid_;
  std::optional<Disk> disk_;
  Seen before_;
  Seen after_;
  Ran clean_;
  std::vector<Event> clean_log_;
};

}  // namespace kerfbook::tests
