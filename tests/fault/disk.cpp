#include "fault/disk.h"

#include <sys/stat.h>

#include <algorithm>
#include <cstring>
#include <fstream>
#include <stdexcept>

namespace kerfbook::tests {

namespace fs = std::filesystem;

bool Event::changes() const {
  if (head.failed != 0) return false;
  switch (head.call) {
    case CALL_OPEN:
      return head.made != 0;
    case CALL_WRITE:
    case CALL_TRUNCATE:
    case CALL_SYNC:
    case CALL_NAME:
    case CALL_SAY:
      return true;
    default:
      return false;
  }
}

std::string bytes_of(const fs::path& file) {
  std::string bytes(static_cast<std::size_t>(fs::file_size(file)), '\0');
  std::ifstream stream(file, std::ios::binary);
  stream.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  return bytes;
}

namespace {

std::uint64_t number_of(const fs::path& file) {
  struct ::stat now {};
  if (::lstat(file.c_str(), &now) != 0) throw std::runtime_error("no such file: " + file.string());
  return now.st_ino;
}

}  // namespace

std::vector<Event> read_log(const fs::path& log) {
  const std::string all = bytes_of(log);
  std::vector<Event> events;
  std::size_t at = 0;
  const auto take = [&](std::size_t many) {
    const std::string part = all.substr(at, many);
    at += many;
    return part;
  };
  while (at + sizeof(Record) <= all.size()) {
    Event event{};
    std::memcpy(&event.head, all.data() + at, sizeof(Record));
    at += sizeof(Record);
    event.from = take(event.head.from_bytes);
    event.to = take(event.head.to_bytes);
    event.bytes = take(event.head.bytes);
    events.push_back(std::move(event));
  }
  return events;
}

std::string words_of(const Layout& layout) {
  const auto word = [](Layout::Part part) {
    return part == Layout::Part::lost ? "lost" : part == Layout::Part::kept ? "kept" : "kept in part";
  };
  std::string words = std::string("unsynced data ") + word(layout.data) + ", names " + word(layout.names);
  if (layout.seed != 0) words += ", seed " + std::to_string(layout.seed);
  return words;
}

Disk::Disk(fs::path folder) : folder_(std::move(folder)) {
  names_[folder_.string()] = nullptr;
  for (const auto& entry : fs::recursive_directory_iterator(folder_)) {
    if (entry.is_directory()) {
      names_[entry.path().string()] = nullptr;
      continue;
    }
    const auto file = std::make_shared<File>(File{bytes_of(entry.path()), {}});
    files_[number_of(entry.path())] = file;
    names_[entry.path().string()] = file;
  }
}

void Disk::apply(const Event& event) {
  const Record& head = event.head;
  if (!event.changes() || head.call == CALL_SAY) return;
  if (head.call == CALL_NAME) return change_name(event);
  if (head.call == CALL_SYNC && head.folder != 0) return sync_folder(event.from);
  if (head.call == CALL_OPEN && head.made == 1) {  // a number may have been another file's before
    const auto file = files_[head.file] = std::make_shared<File>();
    if (!event.from.empty()) pending_names_.push_back({"", event.from, file});
    return;
  }
  File& file = *files_.at(head.file);
  if (head.call == CALL_OPEN) file.pending.push_back({0, "", 0});
  if (head.call == CALL_WRITE) file.pending.push_back({head.at, event.bytes, std::nullopt});
  if (head.call == CALL_TRUNCATE) file.pending.push_back({0, "", head.length});
  if (head.call == CALL_SYNC) {
    std::mt19937 none;
    file.safe = content(file, Layout::Part::kept, none);
    file.pending.clear();
  }
}

void Disk::change_name(const Event& event) {
  switch (event.head.made) {
    case 'm':
      return pending_names_.push_back({"", event.from, nullptr});
    case 'u':
      return pending_names_.push_back({event.from, "", nullptr});
    case 'l':
      return pending_names_.push_back({"", event.to, files_.at(event.head.file)});
    default:
      return pending_names_.push_back({event.from, event.to, files_.at(event.head.file)});
  }
}

void Disk::make(const NameChange& change, Names& names) {
  if (!change.gone.empty()) names.erase(change.gone);
  if (!change.made.empty()) names[change.made] = change.file;
}

void Disk::sync_folder(const std::string& folder) {
  std::erase_if(pending_names_, [&](const NameChange& change) {
    const fs::path name = change.made.empty() ? change.gone : change.made;
    if (name.parent_path().string() != folder) return false;
    make(change, names_);
    return true;
  });
}

/// One change as far as the disk has come with it: sector by sector, and its length by itself.
void Disk::make(Change change, std::string& content, Layout::Part part, std::mt19937& random) {
  const auto keeps = [&] { return part == Layout::Part::kept || (random() & 1U) != 0; };
  if (change.length) {
    if (keeps()) content.resize(static_cast<std::size_t>(*change.length));
    return;
  }
  const auto begin = static_cast<std::size_t>(change.at);
  const std::size_t end = begin + change.bytes.size();
  const std::size_t sector = (random() & 1U) != 0 ? 512 : 4096;
  if (end > content.size() && keeps()) content.resize(end);
  for (std::size_t at = begin; at < end;) {
    const std::size_t next = std::min(end, (at / sector + 1) * sector);
    if (keeps()) {
      if (content.size() < next) content.resize(next);
      content.replace(at, next - at, change.bytes, at - begin, next - at);
    }
    at = next;
  }
}

std::string Disk::content(const File& file, Layout::Part part, std::mt19937& random) {
  std::string content = file.safe;
  if (part == Layout::Part::lost) return content;
  for (const Change& change : file.pending) make(change, content, part, random);
  return content;
}

void Disk::lay(const fs::path& to, const Layout& layout) const {
  std::mt19937 random(layout.seed);
  Names names = names_;
  for (const NameChange& change : pending_names_) {
    if (layout.names == Layout::Part::lost) break;
    if (layout.names == Layout::Part::kept || (random() & 1U) != 0) make(change, names);
  }
  fs::remove_all(to);
  for (const auto& [name, file] : names) {
    const fs::path path = to / fs::path(name).lexically_relative(folder_);
    if (!file) {
      std::error_code ignored;
      fs::create_directory(path.lexically_normal(), ignored);
    } else if (fs::is_directory(path.parent_path())) {
      std::ofstream(path, std::ios::binary) << content(*file, layout.data, random);
    }
  }
}

}  // namespace kerfbook::tests
