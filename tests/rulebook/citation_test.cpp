#include "rulebook/citation.hpp"

#include <gtest/gtest.h>

#include "rulebook/world.hpp"

namespace headgate::test {
namespace {

using rulebook::Seen;

// One rule with this source, in a town that adopts this.
World cited(const std::string& source, const std::string& adopts = "code-18") {
  World world;
  world.rules("rules:\n  r:\n    title: t\n    source: " + source + "\n    require: pressure is fitted\n");
  world.whole_place("format: place/1\nid: town\ntitle: A town\nadopts: " + adopts +
                    "\nsources: {own: {title: Town code, kind: ordinance, sections: [1]}}\n");
  return world;
}

TEST(Citation, Words) {
  rulebook::Citation citation;
  citation.document = "code-18";
  citation.section = "A1";
  EXPECT_EQ(citation.words(), "code-18 A1");
  citation.document = "practice";
  EXPECT_EQ(citation.words(), "common practice, no published source");
  EXPECT_EQ(rulebook::words(Seen::from_memory), "from memory");
}

TEST(Citation, AllAreKeptAndTheAdoptedSetApart) {
  World world = cited("code-18 A1, other 2, practice");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(words(rule(book, "r").sources), "code-18 A1, other 2, common practice, no published source");
  EXPECT_EQ(words(rule(book, "r").adopted), "code-18 A1, common practice, no published source");
  EXPECT_EQ(rule(book, "r").sources[0].seen, Seen::adopted_text);
}

TEST(Citation, OwnDocumentsBindWithoutBeingAdopted) {
  World world = cited("own 1", "nothing");
  EXPECT_EQ(words(rule(world.resolve(), "r").adopted), "own 1");
}

World in_country(const std::string& source, const std::string& keys) {
  World world;
  world.rules("rules:\n  r:\n    title: t\n    source: " + source + "\n    require: pressure is fitted\n");
  world.whole_place("format: place/1\nid: town\ntitle: A town\n" + keys +
                    "\nsources: {own: {title: Town code, kind: ordinance, sections: [1]}}\n");
  return world;
}

TEST(Citation, WhatIsLawInTheCountryBindsWithoutBeingAdopted) {
  World world = in_country("act 7, other 1", "country: us\nadopts: code-18");
  EXPECT_EQ(words(rule(world.resolve(), "r").adopted), "act 7");
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(words(rule(in_country("act 7", "country: us\nadopts: nothing").resolve(), "r").adopted), "act 7");
  EXPECT_EQ(rule(in_country("act 7", "adopts: code-18").resolve(), "r").standing, rulebook::Standing::not_adopted);
  EXPECT_EQ(rule(in_country("other 1", "country: us\nadopts: code-18").resolve(), "r").standing,
            rulebook::Standing::not_adopted);
}

TEST(Citation, TheLawOfTheCountryStandsBehindTheAdoptedAndBeforePractice) {
  World world;
  world.rules(
      "limits:\n  most: {title: Most, values: {practice: 90 psi, act 7: 80 psi, code-18 A1: 70 psi}}\n"
      "rules:\n  r: {title: t, source: practice, require: pressure is fitted}\n");
  world.whole_place("format: place/1\nid: town\ntitle: A town\ncountry: us\nadopts: code-18\n");
  std::string order;
  const auto book = world.resolve();
  for (const auto& value : book.limits[0].chain) order += value.written + "; ";
  EXPECT_EQ(order, "70 psi; 80 psi; 90 psi; ");
}

TEST(Citation, ACountryWithoutLawOfItsOwnIsRefused) {
  World world = in_country("own 1", "country: su\nadopts: nothing");
  world.resolve();
  EXPECT_EQ(world.said(),
            "place:4:10 place-country: Nothing is law in \"su\" without being adopted. (write us, or leave it out)\n");
}

TEST(Citation, AnEditionCarriesWhatItDoesNotList) {
  World world = cited("code-18 A1", "code-21");
  const auto book = world.resolve();
  EXPECT_EQ(words(rule(book, "r").adopted), "code-21 A1 from code-18");
  EXPECT_EQ(rule(book, "r").adopted[0].seen, Seen::adopted_text);
}

TEST(Citation, AnEditionThatListsTheSectionItselfDoesNotCarryIt) {
  World world = cited("code-18 A2", "code-21");
  const auto book = world.resolve();
  EXPECT_EQ(rule(book, "r").standing, rulebook::Standing::not_adopted);
  EXPECT_EQ(rule(book, "r").standing_says, "not adopted: code-18 A2");
}

TEST(Citation, TheEarlierEditionDoesNotTakeInTheLater) {
  World world = cited("code-21 A1", "code-18");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(words(rule(book, "r").sources), "code-21 A1 from code-18");
  EXPECT_EQ(rule(book, "r").standing, rulebook::Standing::not_adopted);
}

TEST(Citation, UnknownDocument) {
  World world = cited("cod-18 A1");
  world.resolve();
  EXPECT_EQ(world.said(), "rules:6:13 unknown-document: No document is called \"cod-18\". (did you mean code-18?)\n");
}

TEST(Citation, UnknownSection) {
  World world = cited("code-18 A1, code-18 A12");
  world.resolve();
  EXPECT_EQ(world.said(),
            "rules:6:33 unknown-section: code-18 has no section \"A12\". (write A1) "
            "[sources:3:3: the document is declared here]\n");
}

TEST(Citation, ACarriedSectionIsNoMistake) {
  World world = cited("code-21 A3", "code-21");
  const auto book = world.resolve();
  EXPECT_EQ(world.said(), "");
  EXPECT_EQ(rule(book, "r").adopted[0].doubt, "two printings disagree");
}

TEST(Citation, IncompleteOnes) {
  World without = cited("code-18");
  without.resolve();
  EXPECT_EQ(without.said(),
            "rules:6:13 citation-without-section: The citation names code-18 and no section of it. "
            "(write code-18 and the section)\n");
  World practice = cited("practice 12");
  practice.resolve();
  EXPECT_EQ(practice.said(), "rules:6:13 practice-section: Common practice has no sections. (write practice alone)\n");
  World trailing = cited("code-18 A1,");
  trailing.resolve();
  EXPECT_EQ(trailing.said(),
            "rules:6:13 citation-empty: A citation is missing here. (write a document and its section, or practice)\n");
}

TEST(Citation, AdoptingWhatNobodyDeclared) {
  World world = cited("practice", "[code-18, othr]");
  world.resolve();
  EXPECT_EQ(world.said(),
            "rules:6:5 must-by-practice: The rule \"r\" is a must by common practice alone. "
            "(cite a source, or write level: should)\n"
            "place:4:19 unknown-document: No document is called \"othr\". (did you mean other?)\n");
}

std::string said_of_documents(const std::string& documents) {
  World world;
  world.file("mine", "format: sources/1\ndocuments:\n" + documents);
  world.resolve();
  return world.said();
}

TEST(Sources, DocumentNeedsTitleAndKind) {
  EXPECT_EQ(said_of_documents("  a: {publisher: p}\n"),
            "mine:3:3 document-needs: The document \"a\" needs a kind.\n"
            "mine:3:3 document-needs: The document \"a\" needs a title.\n");
}

TEST(Sources, UnknownKindAndUnknownWayOfSeeing) {
  EXPECT_EQ(said_of_documents("  a: {title: t, kind: ordnance, sections: {1: {seen: second hand}}}\n"),
            "mine:3:23 document-kind: \"ordnance\" is no kind of document. (write ordinance)\n"
            "mine:3:54 seen-unknown: \"second hand\" does not say how a section was seen. "
            "(write one of adopted text, other edition, secondary, from memory)\n");
}

TEST(Sources, DeclaredTwice) {
  EXPECT_EQ(said_of_documents("  code-18: {title: t, kind: statute}\n"),
            "mine:3:3 document-twice: The document \"code-18\" is declared twice. (declare it once) "
            "[sources:3:3: declared here before]\n");
}

TEST(Sources, ListedTwice) {
  EXPECT_EQ(said_of_documents("  a: {title: t, kind: statute, sections: [1, 2, 1]}\n"),
            "mine:3:49 section-twice: The section \"1\" of a is listed twice. (list it once) "
            "[mine:3:43: listed here before]\n");
}

TEST(Sources, UnknownKeyGetsTheNearest) {
  EXPECT_EQ(said_of_documents("  a: {title: t, kind: statute, section: [1]}\n"),
            "mine:3:32 rulebook-key: A document has no key \"section\". (write sections)\n");
}

TEST(Sources, EditionsThatCarryOneAnother) {
  EXPECT_EQ(
      said_of_documents("  a: {title: t, kind: statute, carries: b}\n  b: {title: t, kind: statute, carries: a}\n"),
      "mine:3:41 carries-circle: These editions carry one another: a -> b -> a. (an edition carries an earlier one)\n");
  EXPECT_EQ(said_of_documents("  a: {title: t, kind: statute, carries: code-81}\n"),
            "mine:3:41 unknown-document: No document is called \"code-81\". (did you mean code-18?)\n");
}

}  // namespace
}  // namespace headgate::test
