#include <cerrno>
#include <cstdio>
#include <cstring>

#include "app/commands.hpp"
#include "app/files.hpp"
#include "report/report.hpp"

namespace headgate::app {

void draw_found(World& world) {
  text::settle(world.found, world.sources);
  for (const auto& diagnostic : world.found) {
    const std::string drawn = text::draw(diagnostic, world.sources);
    std::fwrite(drawn.data(), 1, drawn.size(), stderr);
  }
  world.found.clear();
}

int unusable(World& world) {
  draw_found(world);
  return exit_unusable;
}

bool write(World& world, const Output& output, const std::string& text) {
  if (!output.file.empty()) return write_file(output.file, text, world.found);
  if (output.quiet) return true;
  errno = 0;
  if (std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0) return true;
  world.found.push_back(text::say("file-unwritable", {}, {"standard output", std::strerror(errno)}));
  return false;
}

int status(const Report& report) {
  constexpr std::size_t fail = 1;
  constexpr std::size_t undecided = 3;
  if (report.totals[fail] > 0) return exit_fails;
  return report.totals[undecided] > 0 ? exit_undecided : exit_fine;
}

int check(World& world, const std::string& site, const Output& output) {
  const auto opened = open_case(world, site);
  if (!opened) return unusable(world);
  const Case& prepared = *opened;
  const Report report =
      explain::report(world.sources, prepared.sites.front(), judge(prepared), site, world.options.places.size() > 1);
  const std::string text =
      output.format == Format::json ? report::json(report) : report::text(report, {80, output.all});
  if (!write(world, output, text)) return unusable(world);
  return status(report);
}

}  // namespace headgate::app
