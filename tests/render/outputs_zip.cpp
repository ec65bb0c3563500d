// outputs_zip.cpp -- the parts of a workbook, read with libzip (package libzip-dev), which is by nobody who writes ours.
#include <zip.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

#include "render/outputs.h"

namespace kerfbook::render {
namespace {

[[noreturn]] void refuse(const std::string& what) {
  throw std::runtime_error("zip: " + what);
}

using Archive = std::unique_ptr<zip_t, decltype(&zip_discard)>;

/// Held to be whole: what the directory and the head of a part say of it must agree.
Archive opened(const std::string& bytes) {
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
  zip_t* archive =
      source == nullptr ? nullptr : zip_open_from_source(source, ZIP_RDONLY | ZIP_CHECKCONS, &error);
  if (archive == nullptr) {
    const std::string why = zip_error_strerror(&error);
    if (source != nullptr) zip_source_free(source);
    zip_error_fini(&error);
    refuse(why);
  }
  zip_error_fini(&error);
  return {archive, zip_discard};
}

/// The sum is held against the bytes as the last of them are read.
ZipPart part_at(zip_t* archive, zip_uint64_t index) {
  zip_stat_t told;
  if (zip_stat_index(archive, index, 0, &told) != 0) refuse(zip_strerror(archive));
  ZipPart part{told.name, std::string(told.size, '\0')};
  const std::unique_ptr<zip_file_t, decltype(&zip_fclose)> file(zip_fopen_index(archive, index, 0),
                                                                zip_fclose);
  if (!file) refuse(part.name + ": " + zip_strerror(archive));
  char beyond = 0;
  const bool whole =
      zip_fread(file.get(), part.bytes.data(), told.size) == static_cast<zip_int64_t>(told.size) &&
      zip_fread(file.get(), &beyond, 1) == 0;
  if (!whole) refuse(part.name + " is not as its head says");
  return part;
}

}  // namespace

std::vector<ZipPart> zip_parts(const std::string& zip) {
  const Archive archive = opened(zip);
  std::vector<ZipPart> parts;
  const auto count = static_cast<zip_uint64_t>(zip_get_num_entries(archive.get(), 0));
  if (count == 0) refuse("it has no part");
  for (zip_uint64_t i = 0; i < count; ++i) parts.push_back(part_at(archive.get(), i));
  return parts;
}

std::string part_of(const std::vector<ZipPart>& parts, const std::string& name) {
  const auto is = [&](const ZipPart& part) { return part.name == name; };
  const auto found = std::find_if(parts.begin(), parts.end(), is);
  return found == parts.end() ? "" : found->bytes;
}

std::string part_of(const std::string& zip, const std::string& name) {
  return part_of(zip_parts(zip), name);
}

}  // namespace kerfbook::render
