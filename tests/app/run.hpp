// Runs the built program as a user would: arguments by a shell, both outputs and the exit status back.
#pragma once

#include <sys/wait.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace headgate::app_test {

inline std::string content(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

struct Ran {
  int status = -1;
  std::string out;
  std::string err;
};

// A folder of its own for one test, removed at the end.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "headgate-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }
  std::string write(const std::string& name, const std::string& text) const {
    std::ofstream(path_ / name, std::ios::binary) << text;
    return (path_ / name).string();
  }

 private:
  std::filesystem::path path_;
};

// `arguments` as typed in the repository's folder.
inline Ran headgate(const std::string& arguments, const std::string& environment = "") {
  const Folder folder;
  const std::string out = (folder / "out").string();
  const std::string err = (folder / "err").string();
  const std::string command = "cd '" HEADGATE_SOURCE_DIR "' && " + environment + " HEADGATE_HOME='" HEADGATE_SOURCE_DIR
                              "' '" HEADGATE_BINARY "' " + arguments + " >'" + out + "' 2>'" + err + "' </dev/null";
  const int status = std::system(command.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, content(out), content(err)};
}

}  // namespace headgate::app_test
