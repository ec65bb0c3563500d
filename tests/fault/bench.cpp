#include "fault/bench.h"

#include <regex>
#include <stdexcept>

#include "base/error.h"
#include "book/digest.h"
#include "paper/project_paper.h"

namespace kerfbook::tests {
namespace {

/// The words of the environment the program is started with.
std::vector<std::string> surroundings(const fs::path& folder, const fs::path& log, const Fault& fault) {
  std::vector<std::string> all{
      "LD_PRELOAD=" KERFBOOK_FAULT_LAYER,         "TZ=UTC",
      "KERFBOOK_FAULT_FOLDER=" + folder.string(), "KERFBOOK_FAULT_LOG=" + log.string(),
      "KERFBOOK_FAULT_TIME=" + kSecond,           "KERFBOOK_BOOK=" + kBook};
  if (fault.at >= 0) {
    all.push_back("KERFBOOK_FAULT_AT=" + std::to_string(fault.at));
    all.push_back("KERFBOOK_FAULT_HOW=" + fault.how);
  }
  return all;
}

std::vector<char*> pointers(std::vector<std::string>& words) {
  std::vector<char*> all;
  for (auto& word : words) all.push_back(word.data());
  all.push_back(nullptr);
  return all;
}

std::string name_in(const fs::path& file, const fs::path& folder) {
  return file.lexically_relative(folder).string();
}

std::string digest_of(const fs::path& file) {
  book::Sha256 sum;
  sum.add_field(bytes_of(file));
  return sum.hex();
}

}  // namespace

Bench::Bench(const Deed& deed)
    : deed_(deed), folder_(fs::canonical(scratch_.path()) / "mill"), model_(scratch_ / "model") {
  prepare_folder(model_);
  if (deed.prepare) deed.prepare(model_);
  lay_out_anew();
  before_ = look();
  lay_out_anew();
  disk_.emplace(folder_);
  clean_ = run_again();
  clean_log_ = log();
  if (clean_.code != 0) throw std::runtime_error(deed.name + ": " + clean_.err);
  after_ = look();
  const std::string& decides = deed.decides;
  if (!decides.empty() &&
      (!after_.contains(decides) || (before_.contains(decides) && before_[decides] == after_[decides])))
    throw std::runtime_error(deed.name + ": " + decides + " does not tell whether it is done");
}

void Bench::lay_out_anew() {
  fs::remove_all(folder_);
  fs::copy(model_, folder_, fs::copy_options::recursive);
}

Ran Bench::run(const Fault& fault) {
  lay_out_anew();
  return start(fault);
}

Ran Bench::run_again() {
  return start({});
}

Ran Bench::start(const Fault& fault) {
  const std::string out = (scratch_ / "out").string();
  const std::string err = (scratch_ / "err").string();
  fs::remove(scratch_ / "log");
  std::vector<std::string> words{kProgram, "--today", kToday};
  words.insert(words.end(), deed_.words.begin(), deed_.words.end());
  std::vector<std::string> around = surroundings(folder_, scratch_ / "log", fault);
  const std::vector<char*> argv = pointers(words);
  const std::vector<char*> envp = pointers(around);
  const pid_t child = ::fork();
  if (child == 0) {
    ::dup2(::open(out.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644), 1);
    ::dup2(::open(err.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644), 2);
    if (::chdir(folder_.c_str()) == 0) ::execve(argv[0], argv.data(), envp.data());
    ::_exit(127);
  }
  Ran ran;
  ran.code = wait_for(child);
  ran.out = bytes_of(out);
  ran.err = bytes_of(err);
  return ran;
}

/// Its entries, and that it is sound: or what is wrong.
std::string Bench::look_at_book(const fs::path& file) {
  const bool alone = !fs::exists(file.string() + "-journal");
  const std::string digest = alone ? digest_of(file) : "";
  if (const auto found = known_.find(digest); alone && found != known_.end()) return found->second;
  std::string seen;
  try {
    const auto open =
        book::Book::open(file, {.read_only = true, .now = {}, .papers = billing::project_paper});
    for (const auto& entry : open.journal()) seen += entry.subject + " " + entry.digest + "\n";
    for (const auto& finding : open.verify()) seen += "NOT SOUND: " + finding.what + "\n";
  } catch (const std::exception& fault) {
    seen = std::string("CANNOT BE OPENED: ") + fault.what() + "\n";
  }
  known_[digest_of(file)] = seen;
  return seen;
}

Seen Bench::look() {
  Seen seen;
  const auto is_any_book = [](const fs::path& file) {
    const std::string name = file.filename().string();
    return !name.starts_with(".") &&
           (book::is_book(file) || name.ends_with(".book") || name.ends_with(".copy"));
  };
  for (const auto& entry : fs::recursive_directory_iterator(folder_))
    if (entry.is_regular_file() && is_any_book(entry.path()))
      seen[name_in(entry.path(), folder_)] = look_at_book(entry.path());
  for (const auto& entry : fs::recursive_directory_iterator(folder_)) {
    const std::string name = name_in(entry.path(), folder_);
    if (entry.is_directory()) seen[name + "/"] = "folder";
    if (entry.is_regular_file() && !seen.contains(name)) seen[name] = bytes_of(entry.path());
  }
  return seen;
}

bool Bench::is_known(std::size_t what) {
  book::Sha256 sum;
  sum.add_field(std::to_string(what));
  std::map<std::string, fs::path> files;  // unfinished ones without the number of the program that began them
  for (const auto& entry : fs::recursive_directory_iterator(folder_))
    files[std::regex_replace(name_in(entry.path(), folder_), std::regex("part[0-9]+"), "part")] =
        entry.path();
  for (const auto& [name, file] : files) {
    sum.add_field(name);
    if (fs::is_regular_file(file)) sum.add_field(bytes_of(file));
  }
  return !laid_.insert(sum.hex()).second;
}

}  // namespace kerfbook::tests
