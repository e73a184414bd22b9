// The program itself, given files, names and outputs that were made to do harm or simply cannot be used: a
// located sentence, exit status 2, nothing written.
#include <functional>

#include <gtest/gtest.h>

#include "app/run.hpp"

namespace headgate::test {
namespace {

namespace fs = std::filesystem;

std::string data(const std::string& name) { return "tests/hostile/data/" + name; }

// Characters a terminal would act on, as a place in the text; npos when there are none.
std::size_t acted_on(const std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool control = (byte < 0x20 && byte != '\n') || byte == 0x7f;
    const bool c1 = byte == 0xc2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xa0;
    const bool reversing = text.compare(i, 3, "\xe2\x80\xae") == 0;
    if (control || c1 || reversing) return i;
  }
  return std::string::npos;
}

// What a command that must refuse says; fails when it writes, ends otherwise or lets an escape through.
std::string refused(const std::vector<std::string>& arguments) {
  const Ran ran = run(arguments);
  EXPECT_EQ(ran.status, 2) << ran.err;
  EXPECT_EQ(ran.out, "");
  EXPECT_NE(ran.err, "");
  EXPECT_EQ(acted_on(ran.err), std::string::npos) << ran.err;
  return ran.err;
}

TEST(HostileFile, EachEndsWithTwoAndAPlace) {
  const Scratch scratch;
  const std::string out = scratch.at("report.txt");
  for (const auto& entry : fs::directory_iterator(fs::path(HEADGATE_SOURCE_DIR) / "tests/hostile/data")) {
    const std::string name = entry.path().filename().string();
    if (name.rfind("document-", 0) != 0) continue;
    const std::string said = refused({"check", data(name), "-o", out});
    EXPECT_EQ(said.find(data(name) + ":"), 0U) << name << ": " << said.substr(0, 200);
  }
  EXPECT_FALSE(fs::exists(out));
}

TEST(HostileFile, TheSameAsRulesAndAsPlace) {
  const Scratch scratch;
  for (const auto* name : {"document-alias-bomb.yaml", "document-nul.yaml", "document-png.yaml", "document-empty.yaml",
                           "document-stairs.yaml"}) {
    const std::string text = read_text(fs::path(HEADGATE_SOURCE_DIR) / data(name));
    const std::string rules = scratch.file("rules/bad.yaml", text);
    EXPECT_TRUE(has(refused({"check", "examples/halyard/as-built.yaml", "--rules", scratch.at("rules")}), rules + ":"))
        << name;
    EXPECT_TRUE(has(refused({"check", "examples/halyard/as-built.yaml", "--place", data(name)}), data(name) + ":"))
        << name;
    EXPECT_TRUE(has(refused({"trials", data(name)}), data(name) + ":")) << name;
    EXPECT_TRUE(has(refused({"explain", data(name), "reducer-proven"}), data(name) + ":")) << name;
  }
}

TEST(HostileFile, GiantScalarAndGiantFile) {
  const Scratch scratch;
  const std::string scalar =
      scratch.file("scalar.yaml", "format: site/1\nname: " + std::string(2'000'000, 'a') + "\nplace: irc-2018\n");
  const std::string said = refused({"check", scalar});
  EXPECT_TRUE(has(said, scalar + ":2:1: error: This line is 2000006 bytes long; at most 65536 are read."))
      << said.substr(0, 300);
  EXPECT_LT(said.size(), 2000U);
  const std::string file = scratch.file("file.yaml", "name: a\n" + std::string(80'000'000, '#'));
  EXPECT_TRUE(has(refused({"check", file}), "[file-too-large]"));
}

TEST(HostileFile, MarkAndWindowsLineEndsAreFine) {
  const Ran ran = run({"check", data("app-bom-crlf.yaml")});
  EXPECT_EQ(ran.status, 1);
  EXPECT_TRUE(has(ran.out, "Quay House\n  site     tests/hostile/data/app-bom-crlf.yaml, stage entry\n")) << ran.out;
  EXPECT_EQ(acted_on(ran.out), std::string::npos);
}

TEST(HostileFile, WhatIsNoFile) {
  const Scratch scratch;
  EXPECT_TRUE(has(refused({"check", "examples/halyard"}),
                  "error: examples/halyard is a directory, not a file. [file-is-directory]\n"));
  EXPECT_TRUE(has(refused({"check", scratch.at("none.yaml")}), "[file-missing]"));
  EXPECT_TRUE(has(refused({"check", scratch.file("a.yaml", "a") + "/b.yaml"}), "[file-missing]"));
  EXPECT_TRUE(has(refused({"check", scratch.file("empty.yaml", "")}), scratch.at("empty.yaml") + ":1:1: error: "));
  EXPECT_TRUE(has(refused({"check", "/dev/null"}), "/dev/null:1:1: error: "));
  EXPECT_TRUE(has(refused({"check", "/dev/zero"}), "[file-too-large]"));
  EXPECT_TRUE(has(refused({"check", ""}), "error: "));
  if (fs::exists("/proc/self/mem")) {
    EXPECT_TRUE(has(refused({"check", "/proc/self/mem"}), "[file-unreadable]"));
  }
  if (geteuid() == 0) return;  // root reads everything
  fs::permissions(scratch.at("a.yaml"), fs::perms::none);
  EXPECT_TRUE(has(refused({"check", scratch.at("a.yaml")}), "[file-unreadable]"));
}

TEST(HostileName, EscapesReachNoTerminal) {
  const Scratch scratch;
  EXPECT_TRUE(has(refused({"check", data("app-escapes-in-names.yaml")}),
                  ":2:8: error: An escape in this text stands for an invisible character."));
  EXPECT_TRUE(has(refused({"check", data("app-escapes-in-a-key.yaml")}), ":4:2: error: "));
  EXPECT_TRUE(has(refused({"check", "no\x1b[31msuch\x07.yaml"}), "\\x1b[31m"));
  EXPECT_TRUE(has(refused({"facts", "\x1b[31mpressure"}), "\\x1b[31m"));
  EXPECT_TRUE(has(refused({"explain", "examples/halyard/as-built.yaml", "\x1b[31mrule"}), "\\x1b[31m"));
  EXPECT_TRUE(has(refused({"calc", "5 ft + \x1b[31m"}), "\\x1b"));
  EXPECT_NE(refused({"check", "examples/halyard/as-built.yaml", "--set", "name=\x1b[31m", "--set", "\x1b[2J=1"}), "");
  EXPECT_NE(refused({"check", "examples/halyard/as-built.yaml", "\x1b[31msecond"}), "");
  // A file whose very name holds one is read, and its name shown harmlessly, in text and in JSON.
  const std::string odd = scratch.file("odd\x1b[31m\xc2\x9b.yaml", house_without_reducer("86 psi"));
  for (const auto* format : {"text", "json"}) {
    const Ran ran = run({"check", odd, "--format", format});
    EXPECT_EQ(ran.status, 1);
    EXPECT_TRUE(has(ran.out, "Quay House"));
    EXPECT_EQ(acted_on(ran.out), std::string::npos) << ran.out.substr(0, 300);
  }
  EXPECT_EQ(acted_on(run({"explain", odd, "reducer-above-static-limit"}).out), std::string::npos);
}

// A name that came in through --set is text as the shell gave it.
TEST(HostileName, EscapesInASetAreShownHarmlessly) {
  const Ran ran = run({"check", "examples/halyard/as-built.yaml", "--set", "name=Quay\x1b[31m"});
  EXPECT_EQ(acted_on(ran.out), std::string::npos) << ran.out.substr(0, 200);
  EXPECT_EQ(acted_on(ran.err), std::string::npos) << ran.err;
}

TEST(HostilePlace, ASiteNamesAPlaceAndNeverAPath) {
  EXPECT_TRUE(has(refused({"check", data("app-place-path.yaml")}),
                  data("app-place-path.yaml") + ":3:8: error: There is no place ../../etc/passwd. [no-such-place]\n"));
  EXPECT_TRUE(has(refused({"check", data("app-place-absolute.yaml")}),
                  ":3:8: error: There is no place /etc/hostname.yaml. [no-such-place]\n"));
  const Scratch scratch;
  const std::string town =
      scratch.file("town.yaml", read_text(fs::path(HEADGATE_SOURCE_DIR) / "jurisdictions/models/irc-2018.yaml"));
  const std::string site = scratch.file("site.yaml", "format: site/1\nname: a\nplace: " + town + "\nstage: entry\n");
  EXPECT_TRUE(has(refused({"check", site}), site + ":3:8: error: There is no place "));
  EXPECT_EQ(run({"check", site, "--place", town}).status, 3);  // the command line may
}

TEST(HostilePlace, MissingSecondAuthorityIsSaidWhereItIsNamed) {
  const std::string site = "examples/halyard/as-built.yaml";
  EXPECT_TRUE(has(refused({"check", site, "--place", data("app-also-missing.yaml")}),
                  data("app-also-missing.yaml") + ":5:7: error: There is no place quay-works. [no-such-place]\n"));
  EXPECT_TRUE(has(refused({"check", site, "--place", data("app-also-path.yaml")}),
                  data("app-also-path.yaml") + ":5:7: error: There is no place "));
}

TEST(HostileSet, NonsenseIsRefusedAtItsPlace) {
  const auto set = [](const std::string& what) {
    return refused({"check", "examples/halyard/as-built.yaml", "--set", what});
  };
  EXPECT_TRUE(has(set("nonsense"), "--set:1:1: error: "));
  EXPECT_TRUE(has(set("=80 psi"), "--set:1:1: error: "));
  EXPECT_TRUE(has(set("pressure.highest-static=eighty"), "--set:1:25: error: "));
  EXPECT_TRUE(has(set("pressure.highest-static=80 psi; rm -rf"), "--set:1:"));
  EXPECT_TRUE(has(set("pressure..highest-static=80 psi"), "--set:1:"));
  EXPECT_TRUE(has(set("line[0]=none"), "--set:1:"));
  EXPECT_TRUE(has(set("line[99999999999999999999]=none"), "--set:1:"));
  EXPECT_TRUE(has(set("line[4].line[4].line=none"), "--set:1:"));
  EXPECT_TRUE(has(set(std::string(5000, '.') + "=1"), "--set:1:"));
  EXPECT_TRUE(has(set("stage=nonsense"), "--set:1:"));
}

TEST(HostileOutput, AFullDiskIsSaid) {
  if (!fs::exists("/dev/full")) GTEST_SKIP();
  const Ran printed = run({"check", "examples/halyard/as-built.yaml"}, "/dev/full");
  EXPECT_EQ(printed.status, 2);
  EXPECT_TRUE(has(printed.err, "error: standard output cannot be written: ")) << printed.err;
  EXPECT_TRUE(has(refused({"check", "examples/halyard/as-built.yaml", "-o", "/dev/full"}),
                  "error: /dev/full cannot be written: "));
  EXPECT_TRUE(fs::is_character_file("/dev/full"));  // written to, not replaced
}

TEST(HostileOutput, ADirectoryStays) {
  const Scratch scratch;
  fs::create_directory(scratch.at("folder"));
  EXPECT_TRUE(
      has(refused({"check", "examples/halyard/as-built.yaml", "-o", scratch.at("folder")}), "[file-unwritable]"));
  EXPECT_TRUE(fs::is_directory(scratch.at("folder")));
  EXPECT_EQ(scratch.files().size(), 1U);
}

std::string long_house(int parts) {
  std::string site =
      "format: site/1\nname: Long House\nplace: irc-2018\nstage: handover\npressure: {highest-static: 86 psi}\nline:\n";
  for (int i = 0; i < parts; i += 2) site += "  - pipe: {material: l-copper, laid: indoors, new: no}\n  - gauge\n";
  return site;
}

TEST(HostileSite, AsManyPartsAsThereMayBe) {
  const Scratch scratch;
  const Ran ran = run({"check", scratch.file("site.yaml", long_house(500))});
  EXPECT_EQ(ran.status, 1) << ran.err.substr(0, 500);
  EXPECT_TRUE(has(ran.out, "\nFAIL  irc-2018/reducer-above-static-limit (pressure, binds from entry)\n"))
      << ran.out.substr(0, 2000);
  EXPECT_TRUE(has(ran.out, " and 480 others") || has(ran.out, ", 480 others")) << ran.out.substr(0, 2000);
}

TEST(HostileSite, TenThousandPartsAreRefusedAtTheFirstTooMany) {
  const Scratch scratch;
  const std::string said = refused({"check", scratch.file("site.yaml", long_house(10000))});
  EXPECT_TRUE(has(said,
                  "site.yaml:507:5: error: A site may hold 500 parts in all its lists together; this is one "
                  "more. [too-many-parts]"))
      << said.substr(0, 2000);
  EXPECT_EQ(said.find("[too-many-parts]"), said.rfind("[too-many-parts]"));
}

std::string town(const std::string& limits, const std::string& rule) {
  return "format: place/1\nid: town\ntitle: Town (invented)\nadopts: nothing\n"
         "sources: {code: {title: Code, kind: ordinance, sections: [one]}}\n" +
         (limits.empty() ? "" : "limits:\n" + limits) +
         "add:\n  it:\n    title: It holds\n    topic: size\n    source: code one\n    stage: survey\n" + rule +
         "    why: it is so\n    fix: mend it\n";
}

std::string limit(int number, const std::string& value) {
  const std::string name = "l" + std::to_string(number);
  return "  " + name + ":\n    title: " + name + "\n    type: length\n    values:\n      code one: " + value + "\n";
}

const std::string asks_the_first = "    when: site.frost-depth >= limit.l0\n    require: some meter in line\n";
const std::string surveyed = "format: site/1\nstage: survey\nfrost-depth: 30 in\nline: [meter]\n";

// What is said of the first of so many limits, each made of the next as `of_next` says.
std::string explained(int count, const std::function<std::string(const std::string&)>& of_next) {
  const Scratch scratch;
  std::string limits;
  for (int i = 0; i < count; ++i) limits += limit(i, of_next("limit.l" + std::to_string(i + 1)));
  limits += limit(count, "0.000000000001 in");
  const std::string place = scratch.file("town.yaml", town(limits, asks_the_first));
  const Ran ran = run({"explain", scratch.file("site.yaml", surveyed), "it", "--place", place});
  EXPECT_EQ(ran.status, 0) << ran.err.substr(0, 500);
  return ran.out;
}

// Laid out use by use, that would be more than a million million sums.
TEST(HostilePlace, LimitsThatDoubleOneAnotherCostNoMoreThanTheirNumber) {
  const std::string out = explained(40, [](const std::string& next) { return next + " + " + next; });
  EXPECT_TRUE(has(out, "town/it: pass")) << out.substr(0, 500);
}

TEST(HostilePlace, ALongChainOfLimitsIsNotFollowedForEver) {
  const std::string out = explained(2000, [](const std::string& next) { return next + " + 1 in"; });
  EXPECT_TRUE(has(out, "limit.l0 = unknown")) << out.substr(0, 500);
}

TEST(HostilePlace, ARuleOfTooManyCombinationsIsRefused) {
  const Scratch scratch;
  const std::string rule =
      "    each: pipe as a in line, pipe as b in line, pipe as c in line, pipe as d in line\n    require: a.length is "
      "recorded\n";
  const std::string place = scratch.file("town.yaml", town("", rule));
  const std::string site = scratch.file(
      "site.yaml", "format: site/1\nstage: survey\nline: " + [] {
        std::string line = "[pipe";
        for (int i = 0; i < 30; ++i) line += ", pipe";
        return line + "]\n";
      }());
  EXPECT_TRUE(has(refused({"check", site, "--place", place}),
                  "The rule it would be judged for more than 100000 combinations of this site's parts. "
                  "[too-many-combinations]"));
}

TEST(HostilePlace, ATableHasAFewKeysOnly) {
  const Scratch scratch;
  std::string keys;
  std::string row;
  for (int i = 0; i < 17; ++i) {
    keys += (i == 0 ? "k" : ", k") + std::to_string(i) + ": number";
    row += "1, ";
  }
  const std::string place = scratch.file(
      "town.yaml",
      "format: place/1\nid: town\ntitle: Town (invented)\nadopts: nothing\n"
      "sources: {code: {title: Code, kind: ordinance, sections: [one]}}\ntables:\n  wide:\n    title: Wide\n"
      "    source: code one\n    keys: {" +
          keys + "}\n    columns: {value: number}\n    rows:\n      - [" + row + "5]\n");
  EXPECT_TRUE(has(refused({"calc", "1 + 1", "--place", place}), "[table-too-many-keys]"));
}

TEST(HostileName, AFileNameThatIsNoTextIsWrittenAsJsonAllTheSame) {
  const Scratch scratch;
  const std::string site =
      scratch.file("b\xff.yaml", read_text(fs::path(HEADGATE_SOURCE_DIR) / "examples/halyard/as-built.yaml"));
  for (const auto* command : {"check", "checklist", "worksheet"}) {
    const Ran ran = run({command, site, "--format", "json"});
    EXPECT_EQ(ran.status, 0) << command << ": " << ran.err;
    EXPECT_TRUE(has(ran.out, "b\\ufffd.yaml")) << command;
  }
}

}  // namespace
}  // namespace headgate::test
