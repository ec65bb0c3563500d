// hardened_test.cpp -- the program as a file: where it takes its libraries from, and what guards it (ELF, the System V
// ABI's generic part, chapter 5, "Dynamic Section"; ld(1), -z now, -z relro, -z noexecstack).
#include <doctest/doctest.h>
#include <elf.h>

#include <cstring>
#include <optional>

#include "command/program.h"

using namespace kerfbook::tests;

namespace {

/// A structure at a place in a file's bytes.
template <class Of>
Of at(const std::string& bytes, std::size_t offset) {
  Of out{};
  REQUIRE(offset + sizeof out <= bytes.size());
  std::memcpy(&out, bytes.data() + offset, sizeof out);
  return out;
}

struct Elf {
  Elf64_Ehdr head{};
  std::vector<Elf64_Phdr> segments;
  std::vector<Elf64_Dyn> dynamic;

  explicit Elf(const fs::path& file) {
    const std::string bytes = slurp(file);
    head = at<Elf64_Ehdr>(bytes, 0);
    REQUIRE(std::string(bytes, 0, SELFMAG) == ELFMAG);
    for (std::size_t i = 0; i < head.e_phnum; ++i)
      segments.push_back(at<Elf64_Phdr>(bytes, head.e_phoff + i * head.e_phentsize));
    const auto part = segment(PT_DYNAMIC);
    REQUIRE(part);
    for (std::size_t i = 0; i < part->p_filesz / sizeof(Elf64_Dyn); ++i)
      dynamic.push_back(at<Elf64_Dyn>(bytes, part->p_offset + i * sizeof(Elf64_Dyn)));
  }
  [[nodiscard]] std::optional<Elf64_Phdr> segment(Elf64_Word kind) const {
    for (const auto& one : segments)
      if (one.p_type == kind) return one;
    return std::nullopt;
  }
  [[nodiscard]] std::optional<Elf64_Xword> entry(Elf64_Sxword tag) const {
    for (const auto& one : dynamic)
      if (one.d_tag == tag) return one.d_un.d_val;
    return std::nullopt;
  }
};

const fs::path kModule = fs::path(kProgram).parent_path() / "kerfbook_xlsx.so";

}  // namespace

TEST_CASE("the program and its workbook module name no folder to take libraries from") {
  for (const fs::path& file : {fs::path(kProgram), kModule}) {
    CAPTURE(file);
    const Elf elf(file);
    CHECK(!elf.entry(DT_RPATH));
    CHECK(!elf.entry(DT_RUNPATH));
  }
}

TEST_CASE(
    "both lie anywhere in memory, bind at start, and have no writable table of calls and no running stack") {
  for (const fs::path& file : {fs::path(kProgram), kModule}) {
    CAPTURE(file);
    const Elf elf(file);
    CHECK(elf.head.e_type == ET_DYN);
    CHECK((elf.entry(DT_FLAGS_1).value_or(0) & DF_1_NOW) != 0);
    CHECK(elf.segment(PT_GNU_RELRO));
    const auto stack = elf.segment(PT_GNU_STACK);
    REQUIRE(stack);
    CHECK((stack->p_flags & PF_X) == 0);
  }
}

TEST_CASE("a workbook module of another build is not used, and nothing is written") {
  const Scratch scratch;
  const fs::path program = scratch / "kerfbook";
  fs::copy_file(kProgram, program);
  std::string module = slurp(kModule);
  // The mark is 64 digits of a digest, the only such text of the module that ends there.
  std::size_t found = std::string::npos;
  std::size_t length = 0;
  for (std::size_t i = 0; i < module.size() && found == std::string::npos; ++i) {
    const bool digit = std::strchr("0123456789abcdef", module[i]) != nullptr && module[i] != '\0';
    length = digit ? length + 1 : 0;
    if (length == 64 && module[i + 1] == '\0') found = i;
  }
  REQUIRE(found != std::string::npos);
  module[found] = module[found] == '0' ? '1' : '0';
  spill(scratch / "kerfbook_xlsx.so", module);
  const Ran ran =
      run_program(program, {"scale", "15x12", "-o", (scratch / "a.xlsx").string()}, scratch.path());
  CHECK(ran.code == 3);
  CHECK(ran.err.find("is of another build than this program") != std::string::npos);
  CHECK(!fs::exists(scratch / "a.xlsx"));
}

TEST_CASE(
    "the workbook module is looked for beside the program and where it is installed, and nowhere else") {
  const Scratch scratch;
  fs::create_directory(scratch / "bin");
  const fs::path program = scratch / "bin/kerfbook";
  fs::copy_file(kProgram, program);
  fs::copy_file(kModule, scratch / "kerfbook_xlsx.so");  // one folder up: others may write there
  const std::vector<std::string> asked{"scale", "15x12", "-o", (scratch / "a.xlsx").string()};
  const Ran missing = run_program(program, asked, scratch.path());
  CHECK(missing.code == 3);
  CHECK(missing.err.find("the workbook writer is missing") != std::string::npos);
  fs::create_directories(scratch / "lib/kerfbook");
  fs::rename(scratch / "kerfbook_xlsx.so", scratch / "lib/kerfbook/kerfbook_xlsx.so");
  CHECK(run_program(program, asked, scratch.path()).code == 0);
  CHECK(fs::file_size(scratch / "a.xlsx") > 0);
}
