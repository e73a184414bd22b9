// Runs the built program as a person would, from the top of the checkout.
//
//   run({"check", "examples/halyard/as-built.yaml"}).status        0
//   run({"check", "nowhere.yaml"}).err        "error: There is no file nowhere.yaml. [file-missing]\n"
//   Scratch scratch; scratch.file("a.yaml", "format: site/1\n")      its path, in a folder that goes away again
#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace headgate::test {

inline std::string read_text(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

class Scratch {
 public:
  Scratch() {
    std::string name = (std::filesystem::temp_directory_path() / "headgate-test-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;

  const std::filesystem::path& path() const { return path_; }
  std::string at(const std::string& name) const { return (path_ / name).string(); }
  std::string file(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((path_ / name).parent_path());
    std::ofstream(path_ / name, std::ios::binary) << text;
    return at(name);
  }
  std::vector<std::string> files() const {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(path_))
      names.push_back(entry.path().filename().string());
    return names;
  }

 private:
  std::filesystem::path path_;
};

struct Ran {
  int status = -1;  // 128 and more: it was ended by a signal
  std::string out, err;
};

// `out_to`: a file standard output goes to instead, as /dev/full.
inline Ran run(const std::vector<std::string>& arguments, const std::string& out_to = "") {
  const Scratch scratch;
  const std::string out = out_to.empty() ? scratch.at("out") : out_to;
  const pid_t child = fork();
  if (child == 0) {
    std::vector<char*> argv;
    std::string program = HEADGATE_BINARY;
    std::vector<std::string> kept = arguments;
    argv.push_back(program.data());
    for (auto& argument : kept) argv.push_back(argument.data());
    argv.push_back(nullptr);
    setenv("HEADGATE_HOME", HEADGATE_SOURCE_DIR, 1);
    const bool ready = chdir(HEADGATE_SOURCE_DIR) == 0 && std::freopen(out.c_str(), "w", stdout) != nullptr &&
                       std::freopen(scratch.at("err").c_str(), "w", stderr) != nullptr;
    if (ready) execv(argv[0], argv.data());
    _exit(127);
  }
  int ended = 0;
  waitpid(child, &ended, 0);
  Ran ran;
  ran.status = WIFEXITED(ended) ? WEXITSTATUS(ended) : 128 + WTERMSIG(ended);
  if (out_to.empty()) ran.out = read_text(out);
  ran.err = read_text(scratch.at("err"));
  return ran;
}

inline bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

// "headgate calc 'a b' --in psi  # a sum" as its arguments.
inline std::vector<std::string> words_of(const std::string& line) {
  std::vector<std::string> words;
  char quote = 0;
  bool open = false;
  for (const char c : line) {
    if (quote == 0 && !open && c == '#') break;
    if (quote == 0 && c == ' ') {
      open = false;
      continue;
    }
    if (!open) words.emplace_back();
    open = true;
    if (quote != 0 && c == quote)
      quote = 0;
    else if (quote == 0 && (c == '\'' || c == '"'))
      quote = c;
    else
      words.back() += c;
  }
  words.erase(words.begin());  // headgate
  return words;
}

// A house without a reducer, its line finished.
inline std::string house_without_reducer(const std::string& pressure) {
  return "format: site/1\nname: Quay House\nplace: irc-2018\nstage: entry\n" +
         (pressure.empty() ? "" : "pressure: {highest-static: " + pressure + "}\n") +
         "line:\n  - meter: {size: 3/4\"}\n  - pipe: {material: k-copper, size: 1\"}\n  - shutoff: {type: ball, size: "
         "1\"}\n";
}

}  // namespace headgate::test
