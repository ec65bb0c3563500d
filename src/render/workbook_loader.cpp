// workbook_loader.cpp -- finds and loads the workbook writer. It is a module of its own (xlsx.cpp) because the
// library under it would nearly double the start-up time of every run that writes no workbook.
#include <dlfcn.h>

#include <filesystem>
#include <vector>

#include "base/error.h"
#include "render/renderer.h"
#include "render/xlsx.h"

namespace kerfbook::render {
namespace {

namespace fs = std::filesystem;

constexpr const char* kModule = "kerfbook_xlsx.so";

/// Beside the program (a build), one folder up (a test program), or where cmake --install puts it.
std::vector<fs::path> places() {
  std::error_code error;
  const fs::path here = fs::read_symlink("/proc/self/exe", error).parent_path();
  return {here / kModule, here.parent_path() / kModule, here.parent_path() / "lib" / "kerfbook" / kModule};
}

WriteWorkbook load() {
  std::string tried;
  for (const auto& place : places()) {
    tried += (tried.empty() ? "" : ", ") + place.string();
    std::error_code error;
    if (!fs::exists(place, error)) continue;
    void* const module =
        ::dlopen(place.c_str(), RTLD_NOW | RTLD_LOCAL);  // stays loaded until the program ends
    if (module == nullptr) throw Failed(std::string("the workbook writer cannot be loaded: ") + ::dlerror());
    void* const function = ::dlsym(module, kWriteWorkbookName);
    if (function == nullptr) throw Failed(place.string() + " is not this program's workbook writer");
    return reinterpret_cast<WriteWorkbook>(function);
  }
  throw Failed("the workbook writer is missing; looked for " + tried);
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
