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
  std::string content;  // read by pieces: a pipe or device has no size to ask for
  std::string piece(std::size_t{1} << 16U, '\0');
  while (content.size() <= most_bytes &&
         stream.read(piece.data(), static_cast<std::streamsize>(piece.size())).gcount() > 0) {
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

namespace {

bool unwritable(const fs::path& path, const std::string& why, text::Diagnostics& found) {
  found.push_back(text::say("file-unwritable", {}, {path.string(), why}));
  return false;
}

bool written(const fs::path& path, const std::string& text) {
  errno = 0;
  std::ofstream stream(path, std::ios::binary | std::ios::trunc);
  stream << text;
  stream.flush();
  return static_cast<bool>(stream);
}

}  // namespace

bool write_file(const fs::path& path, const std::string& text, text::Diagnostics& found) {
  std::error_code error;
  const fs::path target = fs::is_symlink(path, error) ? fs::weakly_canonical(path, error) : path;
  const bool special = fs::exists(target, error) && !fs::is_regular_file(target, error);
  // A device or pipe is written to, never replaced.
  if (special) return written(target, text) || unwritable(path, std::strerror(errno), found);
  const fs::path beside = target.string() + ".part";
  const bool fine = written(beside, text);
  const std::string why = fine ? "" : std::strerror(errno);
  if (fine) {
    fs::rename(beside, target, error);
    if (!error) return true;
  }
  std::error_code ignored;
  fs::remove(beside, ignored);
  return unwritable(path, fine ? error.message() : why, found);
}

}  // namespace headgate::app
