// doctored_files.cpp -- see doctored.h. Places in the file: SQLite Database File Format, sections 1.3 (the head), 1.5 (the
// freelist), 1.6 (pages of a tree) and 3 (the rollback journal).
#include <fmt/format.h>
#include <sqlite3.h>

#include "book/doctored.h"
#include "book/schema.h"

namespace kerfbook::tests {
namespace {

using Kinds = std::vector<Doctored>;

constexpr std::size_t kPage = 4096;

void put(std::string& bytes, std::size_t at, std::size_t many, std::uint64_t value) {
  for (std::size_t i = 0; i < many; ++i)
    bytes.at(at + i) = static_cast<char>(value >> 8 * (many - 1 - i) & 0xFF);
}

/// A number in the head.
void add_head(Kinds& kinds, Fate fate, const std::string& name, std::size_t at, std::size_t many,
              std::uint64_t value) {
  kinds.push_back(
      {"head: " + name, fate, by_bytes([=](std::string& bytes) { put(bytes, at, many, value); })});
}

void add_bytes(Kinds& kinds, Fate fate, const std::string& name,
               const std::function<void(std::string&)>& change) {
  kinds.push_back({name, fate, by_bytes(change)});
}

void add_heads(Kinds& kinds) {
  add_head(kinds, Fate::refused, "not SQLite's", 0, 1, 'X');
  for (const std::uint64_t id : {0U, 1U, 0xFFFFFFFFU, 0x4B46424AU, 0x4B42464BU})
    add_head(kinds, Fate::refused, fmt::format("application {:x}", id), 68, 4, id);
  const auto newest = static_cast<std::uint64_t>(book::shipped_editions().back().number);
  for (const std::uint64_t edition : {std::uint64_t{0}, newest - 1, newest + 1, std::uint64_t{0x7FFFFFFF},
                                      std::uint64_t{0x80000000}, std::uint64_t{0xFFFFFFFF}})
    add_head(kinds, Fate::refused, fmt::format("edition {}", edition), 60, 4, edition);
  for (const std::uint64_t size : {0U, 1U, 2U, 511U, 512U, 1000U, 2048U, 8192U, 32768U, 65535U})
    add_head(kinds, Fate::refused, fmt::format("pages of {}", size), 16, 2, size);
  for (const std::uint64_t way : {0U, 3U, 255U}) {
    add_head(kinds, Fate::refused, fmt::format("to be written in way {}", way), 18, 1, way);
    add_head(kinds, Fate::refused, fmt::format("to be read in way {}", way), 19, 1, way);
  }
  add_head(kinds, Fate::noticed, "255 bytes of each page kept for others", 20, 1, 255);
  add_head(kinds, Fate::refused, "shares of a page that are none", 21, 3, 0x010203);
  add_head(kinds, Fate::harmless, "schema of format 0", 44, 4, 0);
  for (const std::uint64_t format : {5U, 0xFFFFFFFFU})
    add_head(kinds, Fate::refused, fmt::format("schema of format {}", format), 44, 4, format);
  for (const std::uint64_t encoding : {0U, 2U, 3U, 4U, 0xFFFFFFFFU})
    add_head(kinds, Fate::refused, fmt::format("texts in encoding {}", encoding), 56, 4, encoding);
  add_head(kinds, Fate::refused, "more pages than there are", 28, 4, 5000);
  add_head(kinds, Fate::noticed, "fewer pages than there are", 28, 4, 9);
  add_head(kinds, Fate::harmless, "no number of pages", 28, 4, 0);
  add_head(kinds, Fate::noticed, "said to be vacuumed by itself", 52, 4, 3);
  add_head(kinds, Fate::told, "free pages that are not there", 36, 4, 7);
  add_head(kinds, Fate::told, "free pages that begin outside the file", 32, 8, 0x7FFFFFFF'00000003);
  add_head(kinds, Fate::harmless, "no free pages, and where they begin", 32, 4, 0x7FFFFFFF);
  add_head(kinds, Fate::harmless, "a cache of two milliards of pages", 48, 4, 0x7FFFFFFF);
}

/// The freelist: two pages that hold nothing, which lead to each other, or into what is in use.
void add_freelists(Kinds& kinds) {
  const auto freed = [](const std::function<void(std::string&, std::size_t)>& change) {
    return [change](const Shelf& shelf) {
      by_sql("CREATE TABLE gone (x); INSERT INTO gone VALUES (zeroblob(30000)); DROP TABLE gone")(shelf);
      by_bytes([&](std::string& bytes) {
        std::size_t trunk = 0;
        for (std::size_t i = 32; i < 36; ++i) trunk = trunk << 8 | static_cast<unsigned char>(bytes[i]);
        change(bytes, trunk);
      })(shelf);
    };
  };
  const auto add = [&](const char* name, Fate fate,
                       const std::function<void(std::string&, std::size_t)>& change) {
    kinds.push_back({std::string("freelist: ") + name, fate, freed(change)});
  };
  add("as it should be", Fate::harmless, [](std::string&, std::size_t) {});
  add("goes round in a ring", Fate::told,
      [](std::string& bytes, std::size_t trunk) { put(bytes, (trunk - 1) * kPage, 4, trunk); });
  add("leads to the schema", Fate::told,
      [](std::string& bytes, std::size_t trunk) { put(bytes, (trunk - 1) * kPage, 4, 1); });
  add("holds pages in use", Fate::told,
      [](std::string& bytes, std::size_t trunk) { put(bytes, (trunk - 1) * kPage + 8, 4, 2); });
  add("holds more than a page can", Fate::told,
      [](std::string& bytes, std::size_t trunk) { put(bytes, (trunk - 1) * kPage + 4, 4, 0xFFFFFFFF); });
  add("holds a page twice", Fate::told, [](std::string& bytes, std::size_t trunk) {
    bytes.replace((trunk - 1) * kPage + 12, 4, bytes.substr((trunk - 1) * kPage + 8, 4));
  });
}

void add_lengths(Kinds& kinds) {
  for (const std::size_t keep : {0U, 1U, 16U, 99U})
    add_bytes(kinds, Fate::refused, fmt::format("cut after {} bytes", keep),
              [keep](std::string& bytes) { bytes.resize(keep); });
  for (const std::size_t keep : {std::size_t{100}, std::size_t{511}, kPage - 1, kPage, kPage + 1, 9 * kPage})
    add_bytes(kinds, Fate::refused, fmt::format("cut after {} bytes", keep),
              [keep](std::string& bytes) { bytes.resize(keep); });
  add_bytes(kinds, Fate::refused, "the last page is gone",
            [](std::string& bytes) { bytes.resize(bytes.size() - kPage); });
  add_bytes(kinds, Fate::told, "the last byte is gone", [](std::string& bytes) { bytes.pop_back(); });
  add_bytes(kinds, Fate::harmless, "a page more at the end",
            [](std::string& bytes) { bytes += std::string(kPage, 'x'); });
  add_bytes(kinds, Fate::harmless, "a word more at the end", [](std::string& bytes) { bytes += "word"; });
}

void add_pages(Kinds& kinds) {
  for (const std::size_t page : {1U, 2U, 3U, 5U, 8U, 13U, 21U}) {
    for (const auto& [name, fill] :
         {std::pair{"zero", '\0'}, {"ones", '\xff'}, {"leaves", '\x0d'}, {"forks", '\x05'}})
      add_bytes(kinds, Fate::noticed, fmt::format("page {} is all {}", page, name),
                [=, fill = fill](std::string& bytes) {
                  const std::size_t from = page == 1 ? 100 : (page - 1) * kPage;
                  bytes.replace(from, page * kPage - from, page * kPage - from, fill);
                });
  }
  add_bytes(kinds, Fate::noticed, "two pages swapped", [](std::string& bytes) {
    const std::string second = bytes.substr(kPage, kPage);
    bytes.replace(kPage, kPage, bytes.substr(2 * kPage, kPage));
    bytes.replace(2 * kPage, kPage, second);
  });
  for (const auto& [name, at, many, value] : {std::tuple{"of a kind that is none", 0, 1, 7},
                                              {"with 65535 rows", 3, 2, 65535},
                                              {"whose rows begin nowhere", 5, 2, 3},
                                              {"with a free place that leads to itself", 1, 2, 4090},
                                              {"with a row outside", 8, 2, 4095},
                                              {"with a row in its head", 8, 2, 2},
                                              {"with broken bytes", 7, 1, 255}})
    add_bytes(kinds, Fate::noticed, fmt::format("a page {}", name),
              [at = at, many = many, value = value](std::string& bytes) {
                put(bytes, kPage + static_cast<std::size_t>(at), static_cast<std::size_t>(many),
                    static_cast<std::uint64_t>(value));
              });
}

/// Kept in another way than kerfbook keeps a book, by SQLite itself.
void add_ways(Kinds& kinds) {
  for (const char* pragma :
       {"page_size = 512", "page_size = 1024", "page_size = 65536", "auto_vacuum = 1", "auto_vacuum = 2"})
    kinds.push_back({pragma, Fate::harmless, by_sql(std::string("PRAGMA ") + pragma + "; VACUUM")});
  kinds.push_back({"32 bytes of each page kept for others", Fate::harmless, [](const Shelf& shelf) {
                     SQLite::Database database(shelf.file().string(), SQLite::OPEN_READWRITE);
                     int many = 32;
                     sqlite3_file_control(database.getHandle(), "main", SQLITE_FCNTL_RESERVE_BYTES, &many);
                     database.exec("VACUUM");
                   }});
  for (const char* encoding : {"UTF-16le", "UTF-16be"})
    kinds.push_back({encoding, Fate::refused, [encoding](const Shelf& shelf) {
                       const fs::path other = shelf.folder() / "other";
                       {
                         SQLite::Database to(other.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
                         to.exec(fmt::format(
                             "PRAGMA encoding = '{}'; PRAGMA application_id = {}; PRAGMA user_version = 1;"
                             "CREATE TABLE journal (entry)",
                             encoding, 0x4B46424B));
                       }
                       fs::rename(other, shelf.file());
                     }});
}

void spill(const fs::path& file, const std::string& bytes) {
  std::ofstream(file, std::ios::binary) << bytes;
}

/// A rollback journal of the book's present state with page 2 of its own: what SQLite plays back.
std::string made_journal(const std::string& book) {
  std::string journal("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8);
  journal.resize(512, '\0');
  put(journal, 8, 4, 1);
  put(journal, 16, 4, book.size() / kPage);
  put(journal, 20, 4, 512);
  put(journal, 24, 4, kPage);
  const std::string page = book.substr(kPage, kPage);
  std::uint32_t sum = 0;  // of every 200th byte from the end (section 3)
  for (int i = static_cast<int>(kPage) - 200; i > 0; i -= 200)
    sum += static_cast<unsigned char>(page[static_cast<std::size_t>(i)]);
  std::string record(4, '\0');
  put(record, 0, 4, 2);
  record += page;
  record.resize(kPage + 8);
  put(record, kPage + 4, 4, sum);
  return journal + record;
}

/// The end of a journal that names another file, which SQLite then deletes.
std::string naming(const std::string& name) {
  std::string end(4, '\0');
  end += name;
  std::uint32_t sum = 0;
  for (const char c : name) sum += static_cast<std::uint32_t>(c);
  end.resize(end.size() + 8);
  put(end, end.size() - 8, 4, name.size());
  put(end, end.size() - 4, 4, sum);
  return end + std::string("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8);
}

void add_beside(Kinds& kinds) {
  const auto beside = [&](const char* name, Fate fate,
                          const std::function<void(const Shelf&, const std::string&)>& deed) {
    kinds.push_back({std::string("beside it: ") + name, fate,
                     [deed](const Shelf& shelf) { deed(shelf, shelf.file().string()); }});
  };
  beside("a journal that names another file", Fate::refused, [](const Shelf& shelf, const std::string& file) {
    spill(file + "-journal", made_journal(shelf.bytes()) + naming((shelf.folder() / "canary.db").string()));
  });
  beside("a link to another file in the place of a journal", Fate::refused,
         [](const Shelf& shelf, const std::string& file) {
           fs::create_symlink(shelf.folder() / "canary.db", file + "-journal");
         });
  beside("a folder in the place of a journal", Fate::refused,
         [](const Shelf&, const std::string& file) { fs::create_directory(file + "-journal"); });
  beside("a link to nothing in the place of a log", Fate::refused,
         [](const Shelf&, const std::string& file) { fs::create_symlink("nowhere", file + "-wal"); });
  beside("an empty log", Fate::refused,
         [](const Shelf&, const std::string& file) { spill(file + "-wal", ""); });
  beside("a log of nonsense", Fate::refused,
         [](const Shelf&, const std::string& file) { spill(file + "-wal", std::string(5000, 'x')); });
  for (const bool switched : {true, false}) {
    beside(switched ? "a log that holds another book" : "a log, of a book that has none", Fate::refused,
           [switched](const Shelf& shelf, const std::string& file) {
             const std::string before = shelf.bytes();
             SQLite::Database writer(file, SQLite::OPEN_READWRITE);
             writer.exec("PRAGMA journal_mode = WAL; UPDATE journal SET body = 'x'");
             const std::string log = Shelf::slurp(file + "-wal");
             const std::string after = shelf.bytes();
             writer.exec("PRAGMA journal_mode = DELETE");
             spill(file, switched ? after : before);
             spill(file + "-wal", log);
           });
  }
}

}  // namespace

Kinds doctored_files() {
  Kinds kinds;
  add_heads(kinds);
  add_freelists(kinds);
  add_lengths(kinds);
  add_pages(kinds);
  add_ways(kinds);
  add_beside(kinds);
  return kinds;
}

}  // namespace kerfbook::tests
