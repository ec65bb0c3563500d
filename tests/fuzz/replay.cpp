// replay.cpp -- runs a fuzz target without libFuzzer: every file below the folders named, then repeatable mutations of
// them, the same on every machine. Ends quickly; the long hunt is libFuzzer's.
#include <algorithm>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "slurp.h"

namespace fs = std::filesystem;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

constexpr int kMutations = 10000;
constexpr auto kLongest = std::chrono::seconds(8);

/// A small generator whose numbers are the same everywhere (xorshift, G. Marsaglia, J. Stat. Software 8(14), 2003).
class Numbers {
 public:
  std::size_t below(std::size_t end) {
    state_ ^= state_ << 13U;
    state_ ^= state_ >> 7U;
    state_ ^= state_ << 17U;
    return end == 0 ? 0 : static_cast<std::size_t>(state_ % end);
  }

 private:
  std::uint64_t state_ = 20260505;
};

const std::vector<std::string> kPieces{"\n",
                                       " ",
                                       ";",
                                       ",",
                                       "/",
                                       "x",
                                       "-",
                                       "½",
                                       "′",
                                       "×",
                                       "\t",
                                       "\r\n",
                                       "0",
                                       "9",
                                       "16'6\"",
                                       "24/16",
                                       "2x6",
                                       "5/4 rw ",
                                       "212lf",
                                       "defect ",
                                       "10%",
                                       "left on the mill",
                                       ", charge",
                                       "T1-T9",
                                       "7:15-10:20",
                                       "\xFF",
                                       "sheet 2026-05-05\n",
                                       "at ",
                                       "mid 12/13",
                                       "50x150",
                                       "4.8m",
                                       "kerf 0.25",
                                       "999999999999",
                                       "+",
                                       "\xE2\x80"};

/// Every file of the extension below the folders.
std::vector<std::string> corpus(int count, char** extension_and_folders) {
  std::vector<fs::path> files;
  for (int i = 2; i < count; ++i) {
    for (const auto& entry : fs::recursive_directory_iterator(extension_and_folders[i])) {
      if (entry.is_regular_file() && entry.path().extension() == extension_and_folders[1])
        files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  std::vector<std::string> texts;
  for (const fs::path& file : files) texts.push_back(kerfbook::tests::slurp(file));
  return texts;
}

void mutate(std::string& text, Numbers& numbers, const std::vector<std::string>& texts) {
  const std::size_t at = numbers.below(text.size() + 1);
  const std::size_t length = numbers.below(std::min<std::size_t>(12, text.size() - at) + 1);
  switch (numbers.below(5)) {
    case 0:
      text.erase(at, length);
      break;
    case 1:
      text.insert(at, text.substr(at, length));
      break;
    case 2:
      if (at < text.size()) text[at] = static_cast<char>(numbers.below(256));
      break;
    case 3: {
      const std::string& other = texts[numbers.below(texts.size())];
      text.insert(at, other.substr(numbers.below(other.size() + 1), 40));
      break;
    }
    default:
      text.insert(at, kPieces[numbers.below(kPieces.size())]);
  }
}

void run(const std::string& text) {
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
}

}  // namespace

int main(int count, char** arguments) {
  const std::vector<std::string> texts = corpus(count, arguments);
  if (texts.empty()) {
    std::fprintf(
        stderr,
        "usage: EXTENSION FOLDER...; there is no such file in the folders named: nothing to replay\n");
    return 2;
  }
  for (const std::string& text : texts) run(text);
  const auto start = std::chrono::steady_clock::now();
  Numbers numbers;
  int done = 0;
  for (; done < kMutations && std::chrono::steady_clock::now() - start < kLongest; ++done) {
    std::string text = texts[numbers.below(texts.size())];
    for (std::size_t changes = 1 + numbers.below(4); changes > 0; --changes) mutate(text, numbers, texts);
    run(text);
  }
  std::printf("%zu files and %d mutations read\n", texts.size(), done);
  return 0;
}
