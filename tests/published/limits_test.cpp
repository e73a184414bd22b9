// Every number and list a model code or practice sets in rules/, against what was written down when the
// sections were looked up: value, section, and how far the section was seen. A limit without a row here fails.
#include <algorithm>
#include <deque>
#include <filesystem>
#include <fstream>
#include <iterator>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "document/read.hpp"
#include "rulebook/load.hpp"

namespace headgate::rulebook {
namespace {

namespace fs = std::filesystem;

struct Row {
  std::string limit, citation, value, seen;
};

// From page images, prints of adopted codes, quotations and memory, as the last column says.
const std::vector<Row> published = {
    // 80 psi static: quoted on an officials' forum (residential), a print of Philadelphia's code (plumbing),
    // the publisher's newsletters of 2018 and 2024 (uniform).
    {"static-pressure-max", "irc-2018 P2903.3.1", "80 psi", "secondary"},
    {"static-pressure-max", "ipc-2018 604.8", "80 psi", "secondary"},
    {"static-pressure-max", "upc-2024 608.2", "80 psi", "adopted text"},
    // Regulators of 1-1/2 in and larger need no strainer: the same newsletters.
    {"strainer-exempt-size", "upc-2024 608.2", "1-1/2 in", "adopted text"},
    {"reducer-standards", "irc-2018 P2903.3.1", "asse-1003, csa-b356", "secondary"},
    {"reducer-standards", "ipc-2018 604.8", "asse-1003, csa-b356", "secondary"},
    {"reducer-standards", "upc-2024 608.2", "asse-1003, awwa-c530", "adopted text"},
    // 45 psi to 60 psi: a paper of the federal agency on saving water.
    {"setting-low", "practice", "45 psi", "common practice"},
    {"setting-high", "practice", "60 psi", "common practice"},
    // 15 psi left after all losses at peak demand: a trade column and older reprints.
    {"residual-pressure-min", "upc-2024 608.1", "15 psi", "secondary"},
    // Stood in residential codes to about 2012 and is kept as a rule of thumb.
    {"low-static-pressure", "practice", "40 psi", "common practice"},
    {"shutoff-run", "practice", "5 ft", "common practice"},
    {"units-on-one-valve", "irc-2018 P2903.9.1", "1", "other edition"},
    {"units-on-one-valve", "ipc-2018 606.1", "1", "other edition"},
    // Two steps of nominal size: 2006 wording (residential), the publisher's article on 2024 (plumbing).
    {"sleeve-steps", "irc-2018 P2603.4", "2", "other edition"},
    {"sleeve-steps", "ipc-2018 305.3", "2", "other edition"},
    {"sleeve-ratio", "practice", "1.5", "common practice"},
    // 8 mil of plastic: page image of the 2018 book; a Texas city's sheet on 2024.
    {"sheathing-min", "irc-2018 P2603.3", "0.008 in", "adopted text"},
    {"sheathing-min", "ipc-2018 305.1", "0.008 in", "other edition"},
    {"metals-left-bare", "irc-2018 P2603.3", "cast-iron, ductile-iron, galvanized", "adopted text"},
    {"metals-left-bare", "ipc-2018 305.1", "cast-iron, ductile-iron, galvanized", "other edition"},
    {"lawn-preventers", "irc-2018 P2902.5.3",
     "atmospheric-vacuum-breaker, pressure-vacuum-breaker, spill-resistant-vacuum-breaker, reduced-pressure",
     "secondary"},
    {"lawn-preventers", "ipc-2018 608.17.5",
     "atmospheric-vacuum-breaker, pressure-vacuum-breaker, spill-resistant-vacuum-breaker, reduced-pressure",
     "from memory"},
    {"lawn-preventers", "upc-2024 603.5.6",
     "atmospheric-vacuum-breaker, pressure-vacuum-breaker, spill-resistant-vacuum-breaker, reduced-pressure",
     "other edition"},
    {"high-hazard-preventers", "practice", "reduced-pressure, air-gap", "common practice"},
    {"low-hazard-preventers", "practice", "double-check, reduced-pressure, air-gap", "common practice"},
    {"fire-sprinkler-preventers", "ipc-2018 608.17.4", "double-check, reduced-pressure", "secondary"},
    // 6 in and 12 in: rules of Texas, Iowa and Colorado places; the model sections' own inches were cut off.
    {"breaker-rise", "irc-2018 P2902.3.2", "atmospheric-vacuum-breaker 6 in", "secondary"},
    {"breaker-rise", "irc-2018 P2902.3.4", "pressure-vacuum-breaker 12 in", "secondary"},
    {"breaker-rise", "ipc-2018 608.15", "atmospheric-vacuum-breaker 6 in, pressure-vacuum-breaker 12 in", "secondary"},
    {"breaker-rise", "upc-2024 603.2", "atmospheric-vacuum-breaker 6 in, pressure-vacuum-breaker 12 in", "from memory"},
    {"breaker-hours", "upc-2024 603.2", "12 h", "from memory"},
    {"breaker-hours", "practice", "12 h", "common practice"},
    // 12 in: California and Texas city rules.
    {"relief-height", "upc-2024 603.4.3", "12 in", "secondary"},
    {"relief-height", "practice", "12 in", "common practice"},
    {"relief-side-room", "upc-2024 603.4.3", "12 in", "secondary"},
    // Page image of the 2018 book; Louisiana's print of 2015; an Iowa city and a Washington cross-reference.
    {"tested-preventers", "irc-2018 P2503.8.2", "double-check, reduced-pressure, pressure-vacuum-breaker",
     "adopted text"},
    {"tested-preventers", "ipc-2018 312.10.2",
     "double-check, reduced-pressure, pressure-vacuum-breaker, spill-resistant-vacuum-breaker", "other edition"},
    {"tested-preventers", "upc-2024 603.4.2",
     "double-check, reduced-pressure, pressure-vacuum-breaker, spill-resistant-vacuum-breaker", "secondary"},
    {"test-interval", "irc-2018 P2503.8.2", "12 months", "adopted text"},
    {"test-interval", "ipc-2018 312.10.2", "12 months", "other edition"},
    {"test-interval", "upc-2024 603.4.2", "12 months", "secondary"},
    {"report-time", "practice", "30 days", "common practice"},
    // The tables of materials are recalled; that polybutylene is in none of them was seen in an inspectors' list.
    {"service-materials", "irc-2018 P2906.4",
     "k-copper, l-copper, m-copper, brass, stainless, galvanized, ductile-iron, hdpe, pe-rt, pex, pex-al-pex, cpvc, "
     "pvc, "
     "polypropylene",
     "from memory"},
    {"service-materials", "ipc-2018 605.3 table",
     "k-copper, l-copper, m-copper, brass, stainless, galvanized, ductile-iron, hdpe, pe-rt, pex, pex-al-pex, cpvc, "
     "pvc, "
     "polypropylene",
     "from memory"},
    {"service-materials", "upc-2024 604.1 table",
     "k-copper, l-copper, m-copper, brass, stainless, galvanized, ductile-iron, hdpe, pe-rt, pex, pex-al-pex, cpvc, "
     "pvc, "
     "polypropylene",
     "from memory"},
    {"indoor-materials", "irc-2018 P2906.5",
     "k-copper, l-copper, m-copper, brass, stainless, galvanized, pe-rt, pex, pex-al-pex, cpvc, polypropylene",
     "from memory"},
    {"indoor-materials", "ipc-2018 605.4",
     "k-copper, l-copper, m-copper, brass, stainless, galvanized, pe-rt, pex, pex-al-pex, cpvc, polypropylene",
     "secondary"},
    {"indoor-materials", "upc-2024 604.1 table",
     "k-copper, l-copper, m-copper, brass, stainless, galvanized, pe-rt, pex, pex-al-pex, cpvc, polypropylene",
     "from memory"},
    // Type L at least, but type M above ground and in the ground outside structures: a California city's print of the
    // 1997 text.
    {"buried-copper", "irc-2018 P2906.4", "k-copper, l-copper, m-copper", "from memory"},
    {"buried-copper", "ipc-2018 605.3 table", "k-copper, l-copper, m-copper", "from memory"},
    {"buried-copper", "upc-2024 604.3", "k-copper, l-copper, m-copper", "other edition"},
    {"slab-copper", "upc-2024 604.3", "k-copper, l-copper", "other edition"},
    // 160 psi at 73 F, or the highest pressure of the supply where that is more.
    {"service-rating", "irc-2018 P2906.4", "greatest(160 psi, pressure.highest-static)", "from memory"},
    {"service-rating", "ipc-2018 605.3", "greatest(160 psi, pressure.highest-static)", "other edition"},
    {"service-rating", "upc-2024 604.1", "160 psi", "secondary"},
    // Weighted average over the wetted surface, as in the federal act.
    {"lead-share-max", "irc-2018 P2906.2.1", "0.25 %", "other edition"},
    {"lead-share-max", "ipc-2018 605.2.1", "0.25 %", "other edition"},
    {"lead-share-max", "drinking-water-act 1417", "0.25 %", "secondary"},
    {"lead-share-max", "upc-2024 604.2", "0.25 %", "secondary"},
    // Bath group to lavatory: page image of the 2018 book (plumbing); a Washington city's form (uniform); the rest from
    // memory, equal where the sister code was seen.
    {"fixture-units", "irc-2018 P2903.6",
     "bathtub 1.4, clothes-washer 1.4, dishwasher 1.4, full-bath-group 3.6, half-bath-group 2.6, "
     "kitchen-group 2.5, kitchen-sink 1.4, laundry-group 2.5, laundry-tub 1.4, lavatory 0.7, "
     "shower 1.4, water-closet 2.2",
     "from memory"},
    {"fixture-units", "ipc-2018 E103.3(2)",
     "full-bath-group 3.6, bathtub 1.4, bidet 2, dishwasher 1.4, kitchen-sink 1.4, laundry-tub "
     "1.4, lavatory 0.7, kitchen-group 1.4 + 1.4",
     "adopted text"},
    {"fixture-units", "ipc-2018 E103.3(2) lower rows",
     "shower 1.4, clothes-washer 1.4, water-closet 2.2, half-bath-group 2.2 + 0.7, laundry-group "
     "1.4 + 1.4",
     "from memory"},
    {"fixture-units", "upc-2024 610.3",
     "bathtub 4, bidet 1, dishwasher 1.5, lavatory 1, kitchen-sink 1.5, bar-sink 1, laundry-tub "
     "1.5, shower 2, water-closet 2.5, clothes-washer 4, full-bath-group 2.5 + 1 + 4, "
     "half-bath-group 2.5 + 1, kitchen-group 1.5 + 1.5, laundry-group 4 + 1.5",
     "other edition"},
    {"first-hose-bibb-units", "irc-2018 P2903.6", "2.5", "from memory"},
    {"first-hose-bibb-units", "upc-2024 610.3", "2.5", "other edition"},
    {"first-hose-bibb-units", "practice", "2.5", "common practice"},
    {"more-hose-bibb-units", "irc-2018 P2903.6", "2.5", "from memory"},
    {"more-hose-bibb-units", "upc-2024 610.3", "1", "other edition"},
    {"more-hose-bibb-units", "practice", "2.5", "common practice"},
    {"flushometer-units", "ipc-2018 E103.3(2) lower rows", "6", "from memory"},
    {"lawn-head-units", "upc-2024 610.3", "1", "other edition"},
    // Seven points in engineering tables, the rows between from memory; the uniform code's chart not read.
    {"demand-curve", "irc-2018 P2903.6(1)", "a table of 44 rows", "secondary"},
    {"demand-curve", "ipc-2018 E103.3(3)", "a table of 44 rows", "secondary"},
    {"demand-curve", "upc-2024 A103.1", "a table of 28 rows", "from memory"},
    {"demand-curve-valves", "ipc-2018 E103.3(3)", "a table of 38 rows", "secondary"},
    // Page image of the 2018 book (plumbing), a viewer of adopted codes (residential).
    {"outlet-needs", "irc-2018 P2903.1", "a table of 11 rows", "other edition"},
    {"outlet-needs", "ipc-2018 604.3", "a table of 12 rows", "adopted text"},
    {"friction-method", "practice", "hazen-williams", "common practice"},
    {"water-temperature", "practice", "60 F", "common practice"},
    // 62.4 lb/ft3 over 144: both appendices; the uniform code's appendix rounds it down.
    {"water-weight", "irc-2018 AP103.3", "0.433 psi/ft", "adopted text"},
    {"water-weight", "ipc-2018 E103.3", "0.433 psi/ft", "other edition"},
    {"water-weight", "upc-2024 A104.0", "0.43 psi/ft", "other edition"},
    {"water-weight", "practice", "0.433 psi/ft", "common practice"},
    // A city form counts on 80 % of the setting, as the uniform code does for its table.
    {"reducer-fall-off", "practice", "pressure-reducer.set-to * 0.2", "common practice"},
    {"bleach-strength", "practice", "6 %", "common practice"},
    // An army field manual's figure for dry calcium hypochlorite.
    {"dry-chlorine-share", "practice", "70 %", "common practice"},
    // The lines of the sizing appendices; 15 psi at a flush valve and 8 psi elsewhere in the uniform code's.
    {"budget-counts", "irc-2018 AP103.3", "1", "adopted text"},
    {"budget-counts", "ipc-2018 E103.3", "1", "other edition"},
    {"budget-counts", "upc-2024 A104.0", "1", "other edition"},
    {"budget-outlet", "irc-2018 AP103.3", "limit.outlet-needs[worst-outlet.fixture].pressure", "adopted text"},
    {"budget-outlet", "ipc-2018 E103.3", "limit.outlet-needs[worst-outlet.fixture].pressure", "other edition"},
    {"budget-outlet", "upc-2024 A104.0", "limit.design-residual", "other edition"},
    {"design-residual", "upc-2024 A104.0", "if demand.flushometer-closets > 0 then 15 psi else 8 psi", "other edition"},
    {"service-size-min", "irc-2018 P2903.7", "3/4 in", "secondary"},
    {"service-size-min", "ipc-2018 603.1", "3/4 in", "secondary"},
    {"service-size-min", "upc-2024 610.8", "3/4 in", "other edition"},
    // A valve maker's page gives both figures; the section from memory.
    {"velocity-max", "upc-2024 610.12", "if pipe.hot then 5 ft/s else 8 ft/s", "from memory"},
    {"velocity-usual", "irc-2018 AP103.3", "8 ft/s", "adopted text"},
    {"velocity-usual", "ipc-2018 E103.3", "8 ft/s", "other edition"},
    {"velocity-usual", "upc-2024 610.12", "8 ft/s", "from memory"},
    // An engineering reference's print; compared row by row in demand_units_test.cpp.
    {"supply-table", "upc-2024 610.4", "a table of 90 rows", "other edition"},
    {"supply-table-rise", "upc-2024 610.8", "0.5 psi/ft", "other edition"},
    {"regulated-share", "upc-2024 608.2", "80 %", "adopted text"},
    {"coldest-water", "practice", "40 F", "common practice"},
    {"relief-setting-max", "upc-2024 608.2", "80 psi", "adopted text"},
    {"precharge-tolerance", "practice", "5 psi", "common practice"},
    // Engineers' formulas give 0.070 psi s2/ft2.
    {"slow-closing", "practice", "0.07", "common practice"},
    // The share of gas pipe practice, from memory.
    {"pull-safety", "practice", "0.4", "common practice"},
    {"pull-temperature", "practice", "73 F", "common practice"},
    // Page image of the 2018 book.
    {"bend-diameters", "irc-2018 P2906.3", "30", "adopted text"},
    {"rest-after-pull", "practice", "24 h", "common practice"},
    // Working pressure with water, 50 psi with air, a quarter of an hour: an explainer of 2021 and a state's chapter
    // (residential), a Kansas city's print of 2012 (plumbing), a county handout (uniform).
    {"water-test-pressure", "irc-2018 P2503.7", "pressure.highest-static", "other edition"},
    {"water-test-pressure", "ipc-2018 312.5", "pressure.highest-static", "other edition"},
    {"water-test-pressure", "upc-2024 609.4", "pressure.highest-static", "secondary"},
    {"gas-test-pressure", "irc-2018 P2503.7", "50 psi", "other edition"},
    {"gas-test-pressure", "ipc-2018 312.5", "50 psi", "other edition"},
    {"gas-test-pressure", "upc-2024 609.4", "50 psi", "secondary"},
    {"test-time", "irc-2018 P2503.7", "15 min", "other edition"},
    {"test-time", "ipc-2018 312.5", "15 min", "other edition"},
    {"test-time", "upc-2024 609.4", "15 min", "secondary"},
    {"test-loss-max", "irc-2018 P2503.7", "0 psi", "other edition"},
    {"test-loss-max", "ipc-2018 312.5", "0 psi", "other edition"},
    {"test-loss-max", "upc-2024 609.4", "0 psi", "secondary"},
    // 50 mg/L for a day or 200 mg/L for three hours: a scan of an early edition (plumbing), recalled (uniform).
    {"chlorine-day-dose", "ipc-2018 610.1", "50 mg/L", "other edition"},
    {"chlorine-day-dose", "upc-2024 609.9", "50 mg/L", "from memory"},
    {"chlorine-day-dose", "practice", "50 mg/L", "common practice"},
    {"chlorine-day-time", "ipc-2018 610.1", "24 h", "other edition"},
    {"chlorine-day-time", "upc-2024 609.9", "24 h", "from memory"},
    {"chlorine-short-dose", "ipc-2018 610.1", "200 mg/L", "other edition"},
    {"chlorine-short-dose", "upc-2024 609.9", "200 mg/L", "from memory"},
    {"chlorine-short-time", "ipc-2018 610.1", "3 h", "other edition"},
    {"chlorine-short-time", "upc-2024 609.9", "3 h", "from memory"},
    {"flushing-speed", "practice", "3 ft/s", "common practice"},
    // Lead-lined steel is lead: the agency's fact sheet. 45 days, a filter and six months of cartridges: an explainer
    // of the rule of 2021. Half an hour of flushing: a state's and a city's own pages.
    {"lead-line-materials", "lead-rule-2024 141.2", "lead, lead-lined-galvanized", "secondary"},
    {"lead-line-materials", "practice", "lead, lead-lined-galvanized", "common practice"},
    {"utility-part-time", "lead-rule-2021 141.84", "45 days", "secondary"},
    {"utility-part-time", "practice", "45 days", "common practice"},
    {"lead-cartridge-months", "lead-rule-2021 141.84", "6", "secondary"},
    {"lead-cartridge-months", "practice", "6", "common practice"},
    {"lead-flush-time", "practice", "30 min", "common practice"},
    // Chicago's print under the next number; a contractors' summary; texts that repeat the federal act.
    {"solder-lead-max", "ipc-2018 605.14", "0.2 %", "other edition"},
    {"solder-lead-max", "upc-2024 604.2", "0.2 %", "secondary"},
    {"solder-lead-max", "drinking-water-act 1417", "0.2 %", "secondary"},
    {"solder-lead-max", "practice", "0.2 %", "common practice"},
    // Below frost and under cover: an illustrated table of numbers and exam notes; Minnesota's print of 2018 (uniform).
    {"least-cover", "irc-2018 P2603.5", "greatest(site.frost-depth + 6 in, 12 in)", "secondary"},
    {"least-cover", "ipc-2018 305.4", "greatest(site.frost-depth + 6 in, 12 in)", "secondary"},
    {"least-cover", "upc-2024 609.1", "greatest(site.frost-depth + 12 in, 12 in)", "other edition"},
    // 45 degrees: page image of the 2018 book; recalled (plumbing); a contractor's page that quotes it (uniform).
    {"footing-slope", "irc-2018 P2604.4", "1", "adopted text"},
    {"footing-slope", "ipc-2018 307.5", "1", "from memory"},
    {"footing-slope", "upc-2024 314.1", "1", "other edition"},
    // 5 ft, 12 in and the sleeve: page image of the 2018 book (plumbing), recalled (residential); 12 in high and 12 in
    // aside on a shelf: a table of numbers and a forum (uniform).
    {"sewer-aside", "irc-2018 P2906.4.1", "5 ft", "from memory"},
    {"sewer-aside", "ipc-2018 603.2", "5 ft", "adopted text"},
    {"above-sewer", "irc-2018 P2906.4.1", "12 in", "from memory"},
    {"above-sewer", "ipc-2018 603.2", "12 in", "adopted text"},
    {"above-sewer", "upc-2024 609.2", "12 in", "secondary"},
    {"sleeve-past-sewer", "irc-2018 P2906.4.1", "5 ft", "from memory"},
    {"sleeve-past-sewer", "ipc-2018 603.2", "5 ft", "adopted text"},
    {"shelf-beside-sewer", "upc-2024 609.2", "12 in", "secondary"},
    {"services-apart", "practice", "12 in", "common practice"},
    // Bed and fill: the end of a section on a page image of the 2018 book (residential), Chicago's version (plumbing).
    {"sand-over-rock", "irc-2018 P2604.1", "2 * pipe.outside-diameter", "from memory"},
    {"sand-over-rock", "ipc-2018 306.2.2", "3 in", "other edition"},
    {"fill-over", "irc-2018 P2604.3", "12 in", "adopted text"},
    {"fill-over", "ipc-2018 306.3", "12 in", "other edition"},
    {"fill-over", "upc-2024 314.4", "12 in", "from memory"},
    {"fill-layers", "irc-2018 P2604.3", "6 in", "adopted text"},
    {"fill-layers", "ipc-2018 306.3", "6 in", "other edition"},
    // 10 diameters: page image of the 2018 book. 15 % of zinc: a contractors' summary of the 2015 text.
    {"bend-off-fitting", "irc-2018 P2906.3", "10 * pipe.outside-diameter", "adopted text"},
    {"joints-in-ground", "practice", "1", "common practice"},
    {"zinc-max", "upc-2024 604.1", "15 %", "secondary"},
    // 18 AWG: a forum's account; 14 AWG is the gas pipe's.
    {"tracer-gauge", "upc-2024 604.10.1", "18", "secondary"},
    {"permit-life", "irc-2018 R105.5", "180 days", "secondary"},
    {"permit-life", "ipc-2018 106.5.3", "180 days", "from memory"},
    {"permit-life", "upc-2024 104.4.3", "180 days", "from memory"},
    {"emergency-permit-time", "irc-2018 R105.2.1", "1 business-days", "from memory"},
    {"gauge-check-interval", "practice", "12 months", "common practice"},
    // Trenches and stone dust: the regulation's own text for 5 ft, pages that quote it and a constructors' list for the
    // rest, California's print of the table of tools. Practice where the federal rules are not adopted.
    {"protect-from", "osha-1926 1926.652(a)", "5 ft", "adopted text"},
    {"slope-run", "osha-1926 1926.652(b)", "1.5", "adopted text"},
    {"slope-run", "practice", "1.5", "common practice"},
    {"way-out-from", "osha-1926 1926.651(c)", "4 ft", "secondary"},
    {"way-out-reach", "osha-1926 1926.651(c)", "25 ft", "secondary"},
    {"ladder-rise", "osha-1926 1926.1053(b)", "3 ft", "secondary"},
    {"spoil-distance", "osha-1926 1926.651(j)", "2 ft", "secondary"},
    {"box-rise", "osha-1926 subpart-P-appendix-B", "18 in", "secondary"},
    {"below-box", "osha-1926 1926.652(e)", "2 ft", "secondary"},
    {"air-test-from", "osha-1926 1926.651(g)", "4 ft", "secondary"},
    {"oxygen-min", "osha-1926 1926.651(g)", "19.5 %", "secondary"},
    {"respirator-hours", "osha-1926 1926.1153(c)", "4 h", "other edition"},
    {"respirator-factor", "osha-1926 1926.1153(c)", "10", "other edition"},
    {"protect-from", "practice", "5 ft", "common practice"},
    {"way-out-from", "practice", "4 ft", "common practice"},
    {"way-out-reach", "practice", "25 ft", "common practice"},
    {"ladder-rise", "practice", "3 ft", "common practice"},
    {"spoil-distance", "practice", "2 ft", "common practice"},
    {"box-rise", "practice", "18 in", "common practice"},
    {"below-box", "practice", "2 ft", "common practice"},
    {"air-test-from", "practice", "4 ft", "common practice"},
    {"oxygen-min", "practice", "19.5 %", "common practice"},
    {"respirator-hours", "practice", "4 h", "common practice"},
    {"respirator-factor", "practice", "10", "common practice"},
    // What the electrical code and the books on trenchless work say stands as practice where they are not adopted.
    {"electrode-length", "practice", "10 ft", "common practice"},
    {"earth-clamp-run", "practice", "5 ft", "common practice"},
    {"scratch-share-max", "practice", "10 %", "common practice"},
    {"fragment-groove", "practice", "0.03 in", "common practice"},
    {"ductile-upsizing", "practice", "1", "common practice"},
    {"heave-cover", "practice", "10", "common practice"},
};

std::string in_words(const Row& row) { return row.limit + " | " + row.citation + " | " + row.value + " | " + row.seen; }

class Shipped {
 public:
  Shipped() {
    std::vector<fs::path> paths;
    for (const auto& entry : fs::recursive_directory_iterator(root / "rules")) {
      if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    for (const auto& path : paths) add(library, read(path), found);
    vocabulary = read_vocabulary(library, {}, found);
  }

  Rulebook model(const std::string& id) {
    const auto place = read_place(read(root / "jurisdictions" / "models" / (id + ".yaml")), found);
    return resolve(library, vocabulary, *place, std::nullopt, found);
  }

  Library library;
  vocabulary::Vocabulary vocabulary;
  text::Sources sources;
  text::Diagnostics found;

 private:
  const document::Node& read(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    auto tree = document::read(sources, sources.add(path.string(), text), {}, found);
    trees_.push_back(tree ? std::move(*tree) : document::Node{});
    return trees_.back();
  }

  const fs::path root{HEADGATE_SOURCE_DIR};
  std::deque<document::Node> trees_;
};

std::string said(const text::Diagnostics& found, const text::Sources& sources) {
  std::string all;
  for (const auto& each : found) all += text::draw(each, sources);
  return all;
}

// Of breaker-rise and its like, every row of the source in one line, as written.
std::vector<std::string> shipped_rows(const Rulebook& book) {
  std::vector<std::string> rows;
  for (const Limit& limit : book.limits) {
    for (const LimitValue& value : limit.chain) {
      const std::string citation =
          value.citation.document == "practice" ? "practice" : value.citation.document + " " + value.citation.section;
      rows.push_back(
          in_words({limit.signature.name, citation, value.written, std::string(words(value.citation.seen))}));
    }
  }
  return rows;
}

std::vector<std::string> without(std::vector<std::string> all, const std::vector<std::string>& some) {
  const auto known = [&](const std::string& row) { return std::find(some.begin(), some.end(), row) != some.end(); };
  all.erase(std::remove_if(all.begin(), all.end(), known), all.end());
  return all;
}

TEST(Limits, EveryValueOfTheModelCodesIsTheOneLookedUp) {
  Shipped shipped;
  std::vector<std::string> rows;
  for (const char* id : {"irc-2018", "ipc-2018", "upc-2024", "federal-water"}) {
    for (auto& row : shipped_rows(shipped.model(id))) {
      if (std::find(rows.begin(), rows.end(), row) == rows.end()) rows.push_back(row);
    }
  }
  EXPECT_FALSE(text::has_errors(shipped.found)) << said(shipped.found, shipped.sources);
  std::vector<std::string> expected;
  for (const Row& row : published) expected.push_back(in_words(row));
  EXPECT_THAT(without(rows, expected), ::testing::IsEmpty()) << "shipped, and not looked up";
  EXPECT_THAT(without(expected, rows), ::testing::IsEmpty()) << "looked up, and not shipped";
}

// Misquotations met while looking up: what must not be in force where.
TEST(Limits, WhatACodeDoesNotSayIsNotInForceThere) {
  Shipped shipped;
  const auto standing = [](const Rulebook& book, std::string_view id) { return book.rules[*book.rule(id)].standing; };
  const Rulebook residential = shipped.model("irc-2018");
  const Rulebook plumbing = shipped.model("ipc-2018");
  const Rulebook uniform = shipped.model("upc-2024");
  EXPECT_EQ(standing(residential, "strainer-before-reducer"), Standing::not_adopted);
  EXPECT_EQ(standing(residential, "enough-pressure-at-outlet"), Standing::not_adopted);
  EXPECT_EQ(standing(plumbing, "enough-pressure-at-outlet"), Standing::not_adopted);
  EXPECT_EQ(standing(uniform, "enough-pressure-at-outlet"), Standing::in_force);
  EXPECT_EQ(standing(uniform, "sleeve-two-sizes"), Standing::not_adopted);
  EXPECT_EQ(standing(plumbing, "shutoff-drains-house"), Standing::not_adopted);
  EXPECT_EQ(standing(residential, "curb-valve"), Standing::not_adopted);
  EXPECT_EQ(standing(residential, "line-disinfected"), Standing::not_adopted);
  EXPECT_EQ(standing(residential, "dose-and-time"), Standing::not_adopted);
  EXPECT_TRUE(plumbing.limits[*plumbing.limit("strainer-exempt-size")].chain.empty());
}

// No `must` may rest on common practice alone, whatever is adopted.
TEST(Limits, PracticeAloneNeverDemands) {
  Shipped shipped;
  for (const char* id : {"irc-2018", "ipc-2018", "upc-2024"}) {
    const Rulebook book = shipped.model(id);
    for (const Rule& rule : book.rules) {
      if (rule.standing != Standing::in_force || rule.level != Level::must) continue;
      const bool published_source = std::any_of(rule.adopted.begin(), rule.adopted.end(),
                                                [](const Citation& each) { return each.document != "practice"; });
      EXPECT_TRUE(published_source) << id << " " << rule.id;
    }
  }
}

// Each rule teaches: a reason, and what puts it right.
TEST(Limits, EveryRuleSaysWhyAndHowToPutItRight) {
  Shipped shipped;
  for (const Rule& rule : shipped.model("irc-2018").rules) {
    EXPECT_FALSE(rule.why.empty()) << rule.id;
    EXPECT_FALSE(rule.fix.empty()) << rule.id;
    EXPECT_FALSE(rule.title.empty()) << rule.id;
  }
}

}  // namespace
}  // namespace headgate::rulebook
