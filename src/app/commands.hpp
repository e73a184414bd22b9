// What each command does with a loaded world. Every one returns the exit status: 0 nothing fails and
// nothing is undecided, 1 something fails, 3 nothing fails but something is undecided, 2 the input could
// not be used (nothing is written then).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/opening.hpp"

namespace headgate::app {

enum class Format { text, json };

struct Output {
  Format format = Format::text;
  std::string file;      // -o: "" is standard output
  bool quiet = false;    // the exit status only
  bool all = false;      // passes and rules that do not apply too
  bool covered = false;  // of trials: what was never tried counts as a failure
};

inline constexpr int exit_fine = 0;
inline constexpr int exit_fails = 1;
inline constexpr int exit_unusable = 2;
inline constexpr int exit_undecided = 3;

int check(World& world, const std::string& site, const Output& output);
int checklist(World& world, const std::string& site, const Output& output);
int explain(World& world, const std::string& site, const std::string& rule, const Output& output);
int calc(World& world, const std::string& expression, const std::string& in_unit, const Output& output);
int facts(World& world, const std::string& word, const Output& output);
int limits(World& world, const Output& output);
int worksheet(World& world, const std::string& site, bool size, const Output& output);
int trials(World& world, const std::vector<std::string>& paths, const Output& output);

// Draws every diagnostic to standard error, once.
void draw_found(World& world);
// That, and exit_unusable.
int unusable(World& world);

int status(const Report& report);

// Writes to standard output or the file of -o, whole or not at all.
bool write(World& world, const Output& output, const std::string& text);

}  // namespace headgate::app
