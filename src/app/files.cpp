#include "app/files.hpp"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>

namespace headgate::app {

namespace fs = std::filesystem;

std::optional<text::FileId> read_file(text::Sources& sources, const fs::path& path, std::size_t most_bytes,
                                      text::Diagnostics& found) {
  const std::string name = path.string();
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (!fs::exists(status)) {
    found.push_back(text::say("file-missing", {}, {name}));
    return std::nullopt;
  }
  if (fs::is_directory(status)) {
    found.push_back(text::say("file-is-directory", {}, {name}));
    return std::nullopt;
  }
  errno = 0;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) {
    found.push_back(text::say("file-unreadable", {}, {name, std::strerror(errno)}));
    return std::nullopt;
  }
  std::string content;   // read by pieces: a pipe or device has no size to ask for
  std::string piece(std::size_t{1} << 16U, '\0');
  while (content.size() <= most_bytes && stream.read(piece.data(), static_cast<std::streamsize>(piece.size())).gcount() > 0) {
    content.append(piece.data(), static_cast<std::size_t>(stream.gcount()));
  }
  if (stream.bad()) {
    found.push_back(text::say("file-unreadable", {}, {name, std::strerror(errno)}));
    return std::nullopt;
  }
  if (content.size() > most_bytes) {
    found.push_back(text::say("file-too-large", {}, {name, std::to_string(most_bytes)}));
    return std::nullopt;
  }
  return sources.add(name, std::move(content));
}

std::vector<fs::path> yaml_files(const fs::path& directory) {
  std::vector<fs::path> files;
  std::error_code error;
  for (fs::recursive_directory_iterator at(directory, error), end; !error && at != end; at.increment(error)) {
    if (at->is_regular_file(error) && at->path().extension() == ".yaml") files.push_back(at->path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

bool write_file(const fs::path& path, const std::string& text, text::Diagnostics& found) {
  const fs::path beside = path.string() + ".part";
  errno = 0;
  {
    std::ofstream stream(beside, std::ios::binary | std::ios::trunc);
    stream << text;
    stream.flush();
    if (!stream) {
      found.push_back(text::say("file-unwritable", {}, {path.string(), std::strerror(errno)}));
      std::error_code ignored;
      fs::remove(beside, ignored);
      return false;
    }
  }
  std::error_code error;
  fs::rename(beside, path, error);
  if (!error) return true;
  found.push_back(text::say("file-unwritable", {}, {path.string(), error.message()}));
  fs::remove(beside, error);
  return false;
}

}  // namespace headgate::app
