// The command line: options into a World, a command run on it, its exit status.
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <sstream>

#include <CLI/CLI.hpp>
#include <spdlog/sinks/basic_file_sink.h>
#include <spdlog/spdlog.h>

#include "app/commands.hpp"

namespace {

using headgate::app::Format;
using headgate::app::Output;

struct Arguments {
  headgate::world::Options options;
  Output output;
  std::string rules, format = "text", log;
  std::string site, rule, expression, unit, word;
  std::vector<std::string> paths;
  bool size = false;
};

std::string default_rules() {
  const char* home = std::getenv("HEADGATE_HOME");
  return (home != nullptr ? std::string(home) + "/" : std::string()) + "rules";
}

void common_options(CLI::App& command, Arguments& given) {
  command.add_option("--rules", given.rules, "the folder of rules; places are looked up in `jurisdictions` beside it");
  command
      .add_option("--place", given.options.places,
                  "a place's id or file, instead of the site's own; repeat it to judge side by side")
      ->allow_extra_args(false);
  command.add_option("--on", given.options.on, "the day deadlines are judged on, as 2026-10-02");
  command.add_option("--stage", given.options.stage, "the stage to judge at, instead of the site's own");
  command
      .add_option("--set", given.options.sets,
                  "what if: ADDRESS=VALUE, as pressure.highest-static=\"80 psi\"; repeatable")
      ->allow_extra_args(false);
  command.add_option("--format", given.format, "text or json")->check(CLI::IsMember({"text", "json"}));
  command.add_option("-o", given.output.file, "write to this file instead of the terminal");
  command.add_flag("--quiet", given.output.quiet, "print nothing; the exit status tells");
  command.add_option("--log", given.log, "write what was loaded and judged to this file");
}

CLI::App* add_command(CLI::App& app, Arguments& given, const std::string& name, const std::string& what,
                      const std::string& example) {
  CLI::App* command = app.add_subcommand(name, what);
  command->footer("Example:\n  " + example);
  common_options(*command, given);
  return command;
}

// The log is for whoever looks into a run afterwards; nothing is logged unless it is asked for.
bool start_log(const std::string& file) {
  spdlog::set_level(spdlog::level::off);
  if (file.empty()) return true;
  try {
    spdlog::set_default_logger(spdlog::basic_logger_mt("headgate", file, true));
    spdlog::set_level(spdlog::level::info);
    return true;
  } catch (const spdlog::spdlog_ex& problem) {
    std::fprintf(stderr, "error: the log %s cannot be written: %s\n", file.c_str(), problem.what());
    return false;
  }
}

// Help, or what was wrong with the command line: that repeats the arguments, so nothing a terminal acts on may pass.
int leave(const CLI::App& app, const CLI::ParseError& problem) {
  std::ostringstream out;
  std::ostringstream err;
  const int status = app.exit(problem, out, err);
  const auto print = [](const std::string& text, std::FILE* to) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
      std::fprintf(to, "%s\n", headgate::text::printable(line).c_str());
  };
  print(out.str(), stdout);
  print(err.str(), stderr);
  return status == 0 ? 0 : headgate::app::exit_unusable;
}

int run(const CLI::App& app, Arguments& given) {
  using namespace headgate::app;
  const std::string rules = given.rules.empty() ? default_rules() : given.rules;
  given.output.format = given.format == "json" ? Format::json : Format::text;
  if (!start_log(given.log)) return exit_unusable;
  World world(given.options, shelf_beside(rules));
  spdlog::info("rules {}", rules);
  int status = exit_unusable;
  if (!load_rules(world, rules))
    unusable(world);
  else if (app.got_subcommand("check"))
    status = check(world, given.site, given.output);
  else if (app.got_subcommand("checklist"))
    status = checklist(world, given.site, given.output);
  else if (app.got_subcommand("explain"))
    status = explain(world, given.site, given.rule, given.output);
  else if (app.got_subcommand("calc"))
    status = calc(world, given.expression, given.unit, given.output);
  else if (app.got_subcommand("facts"))
    status = facts(world, given.word, given.output);
  else if (app.got_subcommand("limits"))
    status = limits(world, given.output);
  else if (app.got_subcommand("worksheet"))
    status = worksheet(world, given.site, given.size, given.output);
  else if (app.got_subcommand("trials"))
    status = trials(world, given.paths, given.output);
  draw_found(world);  // warnings, where there are any
  for (std::size_t file = 0; file < world.sources.count(); ++file) {
    spdlog::info("read {} ({} bytes)", world.sources.name(static_cast<headgate::text::FileId>(file)),
                 world.sources.text(static_cast<headgate::text::FileId>(file)).size());
  }
  spdlog::info("exit status {}", status);
  return status;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{
      "headgate tells whether a residential water entry will pass.\n"
      "Exit status: 0 nothing fails or is undecided, 1 something fails, 3 something is undecided, 2 the input could "
      "not be used."};
  app.require_subcommand(1);
  Arguments given;
  CLI::App* check = add_command(app, given, "check", "Judge a site: what fails, what is missing, what comes later",
                                "headgate check examples/halyard/as-found.yaml");
  check->add_option("site", given.site, "the site file")->required();
  check->add_flag("--all", given.output.all, "show passes and rules that do not apply, one line each");
  CLI::App* checklist =
      add_command(app, given, "checklist", "What a stage asks for, what is met, what to have in hand, what comes next",
                  "headgate checklist examples/halyard/as-built.yaml --stage before-cover");
  checklist->add_option("site", given.site, "the site file")->required();
  CLI::App* explain = add_command(app, given, "explain", "Show every clause of one rule with its value and place",
                                  "headgate explain examples/halyard/as-found.yaml reducer-above-static-limit");
  explain->add_option("site", given.site, "the site file")->required();
  explain->add_option("rule", given.rule, "the rule's id, or place/id")->required();
  CLI::App* calc = add_command(app, given, "calc", "Compute one expression of the language, with units",
                               "headgate calc 'hazen-williams(5 gpm, 140, 0.785 in, 100 ft)' --in psi");
  calc->add_option("expression", given.expression, "the expression")->required();
  calc->add_option("--in", given.unit, "the unit of the result");
  CLI::App* facts =
      add_command(app, given, "facts", "List what can be stated and how it is spelled", "headgate facts pressure");
  facts->add_option("word", given.word, "a word of the fact's name, title or question")->required();
  add_command(app, given, "limits", "List a place's limits: value, who set it, since when, what it replaced",
              "headgate limits --place fennick-ferry --on 2026-07-01");
  CLI::App* worksheet = add_command(app, given, "worksheet", "Show every computed value as a formula with its numbers",
                                    "headgate worksheet examples/halyard/as-built.yaml --size");
  worksheet->add_option("site", given.site, "the site file")->required();
  worksheet->add_flag("--size", given.size, "find the smallest pipe and meter that pass");
  CLI::App* trials = add_command(app, given, "trials", "Run trials of rules and show what they cover",
                                 "headgate trials tests/trials/pressure-irc-2018.yaml");
  trials->add_option("paths", given.paths, "trials files, or folders of them")->required();
  trials->add_flag("--covered", given.output.covered, "fail when a rule or a limit's boundary was never tried");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& problem) {
    return leave(app, problem);
  }
  try {
    return run(app, given);
  } catch (const std::exception& problem) {  // out of memory, most likely
    std::fprintf(stderr, "error: headgate could not go on: %s\n", problem.what());
    return headgate::app::exit_unusable;
  }
}
