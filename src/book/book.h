// book.h -- the book: one SQLite file. The journal is the truth; every other table is its projection.
// Opening, posting, revising, verifying, rebuilding. What a document means is worked out in post.cpp's projectors.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/day.h"
#include "base/diagnostic.h"
#include "base/error.h"
#include "book/digest.h"
#include "mill/mill.h"
#include "sheet/sheet.h"

namespace SQLite {
class Database;
}

namespace kerfbook::book {

struct Edition;  // schema.h

/// What kind of document an entry of the journal holds.
enum class EntryKind { mill, sheet, paper };
// `paper`: what billing freezes (an issued invoice, a payment, a credit): see paper/.

struct Entry {
  std::int64_t number = 0;  ///< counts from 1, no gaps
  EntryKind kind = EntryKind::sheet;
  std::string subject;  ///< "2026-05-05", "2026-05-05 shift 2", "mill", or the paper's own name
  int revision = 1;     ///< of this subject, counts from 1
  std::string at;       ///< local date and time of posting, "2026-05-05 20:14:07"
  std::string why;      ///< reason of a revision; empty for a first posting and a mill file that only adds
  std::string body;     ///< the exact text that was posted
  std::string digest;   ///< SHA-256, hex, over the previous digest and every other field
  bool keeps_rules = false;  ///< a corrected sheet whose logs keep the rules of the revision before it
};

enum class Outcome { posted, revised, unchanged };

struct Posted {
  Outcome outcome = Outcome::posted;
  std::string subject;
  int revision = 1;
  Mark mark;                       ///< the entry that holds the text
  std::vector<Diagnostic> found;   ///< warnings and notes; errors never come back here, they are thrown
  std::vector<std::string> notes;  ///< what is new: "species DG is new to the book", "adds customer ABC"
};

/// A text to post, and what it is called in messages.
struct Document {
  std::string name;  ///< a file name, or "standard input"
  std::string text;
  EntryKind kind = EntryKind::sheet;  ///< sheet or mill
};

/// What a sawyer holds against the footing of his paper sheet.
struct DayTotals {
  std::int64_t lines = 0;
  std::int64_t pieces = 0;
  std::int64_t logs = 0;
  measure::Volume lumber;
};

/// Thrown when a document has errors: nothing was changed. Carries what was found, for showing with the text; when
/// several documents of one post have errors, each further one stands in `others`.
class DocumentRefused : public Refused {
 public:
  DocumentRefused(std::string name, std::string text, std::vector<Diagnostic> found)
      : Refused(name + ": not posted; the book is as it was"),
        name_(std::move(name)),
        text_(std::move(text)),
        found_(std::move(found)) {}
  [[nodiscard]] const std::string& name() const noexcept { return name_; }
  [[nodiscard]] const std::string& text() const noexcept { return text_; }
  [[nodiscard]] const std::vector<Diagnostic>& found() const noexcept { return found_; }
  [[nodiscard]] const std::vector<DocumentRefused>& others() const noexcept { return others_; }
  void add_other(DocumentRefused other) { others_.push_back(std::move(other)); }

 private:
  std::string name_;
  std::string text_;
  std::vector<Diagnostic> found_;
  std::vector<DocumentRefused> others_;
};

struct OpenOptions {
  bool read_only = false;
  std::function<std::string()>
      now;  ///< local "YYYY-MM-DD HH:MM:SS"; handed in, never asked of the clock here
  /// How a paper (EntryKind::paper) is worked into its tables; called by posting, rebuild and verify alike.
  std::function<void(SQLite::Database&, const Entry&)> papers;
  /// The editions of the book's tables that are known, the newest last; nullptr = those of schema/. For tests of one
  /// that is not shipped yet.
  const std::vector<Edition>* editions = nullptr;
  /// What is wrong with the tables of a mill file that price/ reads (prices, charges ...); asked before it is posted.
  std::function<std::vector<Diagnostic>(std::string_view)> check_money = {};
  /// Called when entries, from this to that, have come into the book and stay there.
  std::function<void(std::int64_t first, std::int64_t last)> posted = {};
  /// Called once when another program keeps this one waiting for more than a second.
  std::function<void()> waiting = {};
};

/// A file with the head of a book, whatever its edition and state; it is left alone. Failed when it is there and cannot be
/// read: that is no reason to take it for none.
bool is_book(const std::filesystem::path& file);

class Book {
 public:
  /// Makes a new book. Refused when the file exists. With a mill file, posts it as entry 1;
  /// when that has errors no file is left.
  static Book create(const std::filesystem::path& file, const OpenOptions& options,
                     const std::optional<Document>& mill = std::nullopt);
  /// A new book of entries saved from another, numbers and digests as they were. Refused as create().
  static Book create_of(const std::filesystem::path& file, const OpenOptions& options,
                        const std::vector<Entry>& entries);
  /// Opens a book, migrating an older one after a backup copy. Refused, with a sentence and the file left as it
  /// was, when it is missing, not a book, damaged, or newer than this program.
  static Book open(const std::filesystem::path& file, const OpenOptions& options);

  Book(const Book&) = delete;
  Book& operator=(const Book&) = delete;
  Book(Book&&) noexcept;
  Book& operator=(Book&&) noexcept;
  ~Book();  ///< leaves one file: no -wal, no -journal

  /// Posts a sheet, or a mill file, all or nothing, durable on return. The same text again: Outcome::unchanged.
  /// A changed text for a subject already posted needs `why`, else Refused; but not a mill file that only adds to
  /// the one before it (mill_change.h).
  Posted post_sheet(std::string_view text, std::string_view why);
  Posted post_mill(std::string_view toml, std::string_view why);
  /// All of them in one transaction: all or none. Mill files first, then sheets by day, whatever order they are
  /// given in; the answer is in the order given. A corrected sheet keeps the log rules it was posted under; with
  /// `rescale` its logs are scaled anew by those of the mill file in force, even where no word of it changed.
  std::vector<Posted> post_all(const std::vector<Document>& documents, std::string_view why,
                               bool rescale = false);

  /// Checks without posting: the same diagnostics as a post would give.
  std::vector<Diagnostic> check_sheet(std::string_view text) const;

  /// Appends a frozen paper (paper/): in the journal and, through `project`, in its tables, in one
  /// transaction. Gives back the entry it is.
  Mark post_paper(std::string_view subject, std::string_view body, std::string_view why);

  [[nodiscard]] std::string now() const;  ///< OpenOptions::now
  [[nodiscard]] const Mill& mill() const;
  [[nodiscard]] std::vector<Entry> journal() const;  ///< whole, in order
  [[nodiscard]] Mark newest() const;                 ///< entry
  [[nodiscard]] std::optional<Entry> entry(std::int64_t number) const;
  [[nodiscard]] std::optional<Entry> current(std::string_view subject) const;
  [[nodiscard]] std::vector<Entry> revisions(std::string_view subject) const;
  [[nodiscard]] std::vector<Day> days() const;  ///< with a sheet, in order

  /// Of a sheet's subject; nullopt for the mill file and for what is not there.
  [[nodiscard]] std::optional<DayTotals> day_totals(std::string_view subject) const;

  struct Finding {
    std::string what;
  };
  /// Chain of digests, SQLite's integrity and foreign keys, and a rebuild in memory compared row by row.
  /// Empty = all is well.
  [[nodiscard]] std::vector<Finding> verify() const;
  /// Empties every projected table and fills it again from the journal, in one transaction.
  void rebuild();

  /// For reports: the open database, with the trade's functions registered (functions.h).
  [[nodiscard]] SQLite::Database& database() const;
  [[nodiscard]] const std::filesystem::path& file() const;

 private:
  struct Inside;
  friend class Turn;
  explicit Book(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

/// Holds a book still for as long as it lives: all that is asked meanwhile is answered from one moment, and what
/// another program posts waits its turn. One may stand inside another.
class Still {
 public:
  explicit Still(const Book& book);
  Still(const Still&) = delete;
  Still& operator=(const Still&) = delete;
  ~Still();

 private:
  SQLite::Database& database_;
};

class Writing;

/// A deed's turn: takes the one writer's place at once, waiting for it, and keeps it, so that what the deed reads is
/// what it writes upon, whoever else is at the book. What it posts is kept by commit(), all of it, or undone when that is
/// not reached. One may stand inside another. Failed when another program does not let go of the book.
class Turn {
 public:
  explicit Turn(Book& book);
  Turn(const Turn&) = delete;
  Turn& operator=(const Turn&) = delete;
  ~Turn();
  void commit();

 private:
  Book& book_;
  std::unique_ptr<Writing> writing_;
};

/// The language and plausibility alone, for a sheet that no book is at hand for.
std::vector<Diagnostic> check_without_book(std::string_view text);

}  // namespace kerfbook::book
