// workbook_loader.cpp -- finds and loads the workbook writer. It is a module of its own (xlsx.cpp) because the
// library under it would nearly double the start-up time of every run that writes no workbook.
#include <dlfcn.h>

#include <array>
#include <filesystem>
#include <string_view>

#include "base/error.h"
#include "build_mark.h"
#include "render/renderer.h"
#include "render/xlsx.h"

namespace kerfbook::render {
namespace {

namespace fs = std::filesystem;

constexpr const char* kModule = "kerfbook_xlsx.so";

/// Beside the program, as it is built, or where cmake --install puts it. Nowhere else: what is loaded runs as this
/// program, so a folder that others may write to is no place for it.
std::array<fs::path, 2> places() {
  std::error_code error;
  const fs::path here = fs::read_symlink("/proc/self/exe", error).parent_path();
  return {here / kModule, here.parent_path() / "lib" / "kerfbook" / kModule};
}

fs::path found() {
  std::string tried;
  for (const auto& place : places()) {
    std::error_code error;
    if (fs::exists(place, error)) return place;
    tried += (tried.empty() ? "" : " and ") + place.string();
  }
  throw Failed("the workbook writer is missing; looked for " + tried);
}

WriteWorkbook load() {
  const fs::path place = found();
  void* const module = ::dlopen(place.c_str(), RTLD_NOW | RTLD_LOCAL);  // stays loaded until the program ends
  if (module == nullptr) throw Failed(std::string("the workbook writer cannot be loaded: ") + ::dlerror());
  const auto* const build = static_cast<const char*>(::dlsym(module, kWorkbookBuildName));
  void* const function = ::dlsym(module, kWriteWorkbookName);
  if (build == nullptr || function == nullptr || std::string_view(build) != KERFBOOK_BUILD_MARK)
    throw Failed(place.string() + ": is of another build than this program; install both anew");
  return reinterpret_cast<WriteWorkbook>(function);
}

}  // namespace

std::string render_xlsx(const Document& document) {
  static const WriteWorkbook write = load();
  std::string bytes;
  std::string fault;
  if (!write(document, bytes, fault)) throw Failed("the workbook could not be made: " + fault);
  return bytes;
}

}  // namespace kerfbook::render
