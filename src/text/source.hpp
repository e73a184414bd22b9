// Where things stand: files held in memory, half-open byte ranges in them, and their line and column.
//
//   Sources sources;
//   FileId file = sources.add("site.yaml", "format: site/1\nname: Quay House\n");
//   Range name{file, 15, 19};
//   sources.place(name);        // "site.yaml:2:1"
//   sources.place(Range{});     // "" : a range of no file has no place
#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

namespace headgate::text {

using FileId = std::uint32_t;
inline constexpr FileId no_file = 0xffffffffU;

// A half-open range of bytes [begin, end) of one file.
struct Range {
  FileId file = no_file;
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  bool known() const { return file != no_file; }
  friend bool operator==(const Range& a, const Range& b) {
    return a.file == b.file && a.begin == b.begin && a.end == b.end;
  }
};

// `length` bytes that begin `offset` bytes into `outer`, cut to it.
Range part(const Range& outer, std::size_t offset, std::size_t length);

// From the start of `first` to the end of `last`, both in one file.
Range join(const Range& first, const Range& last);

// Line and column as an editor counts them: both from 1, a column is one character (code point).
struct Position {
  std::uint32_t line = 0;
  std::uint32_t column = 0;
};

// The files of one load. Nothing is read here: whoever calls hands the text over.
class Sources {
 public:
  FileId add(std::string name, std::string text);
  Range add_whole(std::string name, const std::string& text);  // all of it: what a command line was given

  std::size_t count() const { return files_.size(); }
  std::string_view name(FileId file) const;
  std::string_view text(FileId file) const;
  std::string_view text(const Range& range) const;

  Position position(const Range& range) const;                    // of its begin; {0, 0} when the range is of no file
  std::string place(const Range& range) const;                    // "file:line:column", "" when of no file
  std::string_view line(FileId file, std::uint32_t line) const;   // without its line end (\n or \r\n)
  std::size_t line_begin(FileId file, std::uint32_t line) const;  // where in the file that line begins

 private:
  struct File {
    std::string name;
    std::string text;
    std::vector<std::uint32_t> line_starts;
  };
  std::deque<File> files_;  // stays in place as files are added, so the views handed out stay good
};

}  // namespace headgate::text
