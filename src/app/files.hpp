// Files from disk into memory, with what can go wrong named: not there, a directory, unreadable, too large.
//
//   read_file(sources, "site.yaml", found)   -> its FileId, or nothing and a diagnostic without a place
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "text/diagnostic.hpp"

namespace headgate::app {

std::optional<text::FileId> read_file(text::Sources& sources, const std::filesystem::path& path, std::size_t most_bytes,
                                      text::Diagnostics& found);

// All .yaml files below a directory, sorted by path.
std::vector<std::filesystem::path> yaml_files(const std::filesystem::path& directory);

// Writes the whole text or nothing: to a file beside `path`, then renamed; straight to a device or pipe. False with a
// diagnostic when it cannot.
bool write_file(const std::filesystem::path& path, const std::string& text, text::Diagnostics& found);

}  // namespace headgate::app
