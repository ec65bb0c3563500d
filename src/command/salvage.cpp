// salvage.cpp -- `kerfbook salvage FOLDER`: what can still be read of a damaged book, as plain files and as a new book; and
// exactly what cannot.
#include <cstring>
#include <filesystem>
#include <ostream>
#include <sstream>

#include "base/count.h"
#include "base/error.h"
#include "base/sync.h"
#include "base/text.h"
#include "book/journal.h"
#include "book/leftover.h"
#include "book/salvage.h"
#include "command/commands.h"
#include "command/output_file.h"
#include "paper/paper.h"
#include "render/renderer.h"

namespace kerfbook::command {
namespace {

namespace fs = std::filesystem;

void write_file(const fs::path& file, std::string_view text) {
  OutputFile(file.string()).write(text);
}

void make(const fs::path& folder) {
  if (const int fault = make_folder(folder))
    throw Failed(folder.string() + ": cannot be made (" + std::strerror(fault) + ")");
}

/// "0041-2026-05-08-shift-2": of what a subject may hold, letters and digits alone become part of a name.
std::string file_name(const book::Salvaged& one) {
  constexpr std::size_t kLongest = 60;
  std::string name = std::to_string(one.entry.number);
  name.insert(0, name.size() < 4 ? 4 - name.size() : 0, '0');
  name += '-';
  for (const char c : one.entry.subject.substr(0, kLongest)) {
    const bool plain = is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    name += plain ? c : '-';
  }
  if (one.entry.revision > 1) name += "-revision-" + std::to_string(one.entry.revision);
  if (!one.complete) name += "-in-part";
  return name;
}

/// The paper as it was handed over; empty where it is none that was, or cannot be read.
std::string printed_paper(const book::Entry& entry) {
  try {
    render::Document document = billing::read_paper(entry.body).document;
    if (document.title.empty()) return "";
    document.foot.push_back(book::mark_of_paper(book::mark_of(entry)));
    return render::find_format("text")->render(document);
  } catch (const std::exception&) {
    return "";
  }
}

/// Writes an entry's text where it belongs: sheets, papers, or mill files.
void write_entry(const book::Salvaged& one, const fs::path& folder) {
  const std::string name = file_name(one);
  switch (one.entry.kind) {
    case book::EntryKind::sheet:
      return write_file(folder / "sheets" / (name + ".sheet"), one.entry.body);
    case book::EntryKind::mill:
      return write_file(folder / "mill-files" / (name + ".toml"), one.entry.body);
    case book::EntryKind::paper:
      break;
  }
  write_file(folder / "papers" / (name + ".json"), one.entry.body);
  if (const std::string text = printed_paper(one.entry); !text.empty())
    write_file(folder / "papers" / (name + ".txt"), text);
}

std::string words_of(const book::EntryName& name) {
  return std::string(word_of(name.kind)) + " " + fit_to_print(name.subject) +
         (name.revision > 1 ? ", revision " + std::to_string(name.revision) : "");
}

std::string words_of(const book::Entry& entry) {
  return words_of(book::EntryName{entry.kind, entry.subject, entry.revision});
}

/// Why an entry that was read is not to be relied on; empty when it is.
std::string doubt_of(const book::Salvaged& one) {
  if (one.proved) return "";
  if (!one.complete)
    return "only the first " + counted(std::ssize(one.entry.body), "byte") + " of its text could be read";
  return one.denied ? "its text, or the entry before it, is not what was posted: its digest does not fit"
                    : "its text is there, but cannot be proved: the entry before it is lost";
}

void tell_losses(const book::Salvage& found, std::ostream& out) {
  std::int64_t proved = 0;
  for (const auto& [number, one] : found.entries) proved += one.proved ? 1 : 0;
  out << counted(found.pages, "page") << " looked at"
      << (found.unreadable > 0 ? ", " + std::to_string(found.unreadable) + " of them not to be read" : "")
      << (found.cut_short ? "; the file is cut short" : "") << "\n"
      << counted(std::ssize(found.entries), "entry", "entries") << " found, " << proved
      << " of them proved to be as posted\n";
  for (const auto& [number, one] : found.entries) {
    const std::string doubt = doubt_of(one);
    if (!doubt.empty())
      out << "Doubtful: entry " << number << ", " << words_of(one.entry) << ": " << doubt << "\n";
  }
  for (const auto& [number, name] : found.lost)
    out << "Lost: entry " << number << ", " << words_of(name) << "\n";
  for (const std::int64_t number : found.lost_nameless)
    out << "Lost: entry " << number << "; nothing is left that says what it was\n";
  if (found.cut_short || found.unreadable > 0)
    out << "Entries after the last one named here, if there were any, are lost without a trace.\n";
}

/// What is whole but cannot be in the new book, since an entry before it is lost: to be posted again.
std::size_t write_again(const book::Salvage& found, const fs::path& folder) {
  std::size_t many = 0;
  const std::int64_t in_book = found.proved_to();
  for (const auto& [number, one] : found.entries) {
    const bool whole = one.complete && !one.denied && one.entry.kind != book::EntryKind::paper;
    if (number <= in_book || !whole) continue;
    if (many++ == 0) make(folder / "again");
    const bool sheet = one.entry.kind == book::EntryKind::sheet;
    write_file(folder / "again" / (file_name(one) + (sheet ? ".sheet" : ".toml")), one.entry.body);
  }
  return many;
}

void make_book(const book::Salvage& found, const fs::path& folder, const Session& session,
               std::ostream& out) {
  const fs::path file = folder / fs::path(session.book_path()).filename();
  const auto entries = book::proved_entries(found);
  if (entries.empty()) {
    out << "No new book was made: the first entry is lost or cannot be proved.\n";
  } else {
    const auto made = book::Book::create_of(file, session.open_options(false), entries);
    out << file.string() << ": a new book of entries 1 to " << entries.size() << "\n  "
        << book::mark_words(made.newest()) << "\n";
  }
  const std::size_t again = write_again(found, folder);
  if (again > 0)
    out << counted(static_cast<std::int64_t>(again), "text")
        << " after that can be posted again: kerfbook -b " << file.string() << " post --why salvaged "
        << (folder / "again").string() << "/*\n";
  for (const auto& [number, one] : found.entries)
    if (number > found.proved_to() && one.entry.kind == book::EntryKind::paper)
      out << "Not in the new book: entry " << number << ", " << words_of(one.entry)
          << "; a paper is not posted again as text: enter it anew by papers/" << file_name(one)
          << ".json once its sheets are in\n";
}

std::string save_all(const book::Salvage& found, const fs::path& folder, const Session& session) {
  for (const char* part : {"sheets", "papers", "mill-files"}) make(folder / part);
  for (const auto& [number, one] : found.entries) write_entry(one, folder);
  std::ostringstream told;
  const std::string damaged = session.book_path();
  told << damaged << ": read page by page, and left as it is\n";
  std::error_code ignored;
  if (const fs::path left = book::rollback_journal_of(damaged); fs::exists(left, ignored))
    told << left.string()
         << ": was left by a writer that was killed, and is not made use of here; what it had begun "
         << "may show below\n";
  tell_losses(found, told);
  make_book(found, folder, session, told);
  write_file(folder / "what-was-lost.txt", told.str());
  return told.str();
}

void salvage(const std::string& into, const Session& session) {
  const fs::path folder = into;
  std::error_code error;
  if (fs::exists(fs::symlink_status(folder, error)) &&
      !(fs::is_directory(folder, error) && fs::is_empty(folder, error)))
    throw Refused(folder.string() + ": is there already; name a folder that is new or empty");
  const auto found = book::salvage(session.book_path());
  std::string told;
  try {
    told = save_all(found, folder, session);
  } catch (const Failed& fault) {
    throw FailedLate(folder.string() + ": it is not sure that all is saved: " + fault.what() +
                     "; look at the disk, and salvage into another folder");
  }
  session.did(folder.string() + " is made");
  session.out() << told << folder.string() << ": all of it as plain files; what-was-lost.txt repeats this\n";
}

}  // namespace

Form salvage_form() {
  auto folder = std::make_shared<std::string>();
  return {
      .rows = Rows{{"FOLDER", folder.get(), "where to; a new folder, or an empty one"}},
      .footer =
          "For a damaged book and no copy to go back to. Reads what can still be read of it, page by page, "
          "and never writes to it. Sheets, papers and mill files come out as plain files, the entries "
          "before the first gap as a new book; what is lost is named.\n\n"
          "  kerfbook -b mill.book salvage saved",
      .deed = [folder](const Session& session) { salvage(*folder, session); },
      .changes = true};
}

}  // namespace kerfbook::command
