// From folders and files on disk to a world a command can work on.
//
//   World world(options, shelf_beside("rules"));
//   if (!load_rules(world, "rules")) …                      // draw world.found, exit 2
//   std::optional<Case> opened = open_case(world, "site.yaml");
//   a file that is not there: nullopt, and world.found holds "file-missing"
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "world/case.hpp"

namespace headgate::app {

using world::Case;
using world::Law;
using world::World;

// Places lie in the folder `jurisdictions` beside that of the rules; on the command line one may also be a file.
world::Shelf shelf_beside(const std::filesystem::path& rules);

// Reads every file of rules. False when they cannot be used.
bool load_rules(World& world, const std::filesystem::path& rules);

// Reads one file's tree and keeps it; nullptr when it cannot be read at all.
document::Node* load_tree(World& world, const std::filesystem::path& path);

// The site of a file under its law. nullopt, with diagnostics, when it cannot be judged. `only_rule`: a rule's id; "" for
// all.
std::optional<Case> open_case(World& world, const std::string& site_file, const std::string& only_rule = "");

// The day of --on, for a command about the law alone; all days without it, or, with a diagnostic, when it is none.
quantity::Interval day_asked(World& world);

}  // namespace headgate::app
