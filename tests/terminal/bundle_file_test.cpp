#include "client/terminal/bundle_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "client/terminal/report.h"
#include "suppertide/v1/bundle.pb.h"
#include "tests/terminal/sample.h"

namespace suppertide::terminal {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::StartsWith;

std::vector<std::string> linesOf(const Violations& violations) {
  std::vector<std::string> lines;
  for (const v1::FieldViolation& violation : violations) lines.push_back(lineOf(violation));
  return lines;
}

std::vector<std::string> mistakesIn(const std::string& text) {
  v1::Bundle bundle;
  return linesOf(readMessage(text, bundle).mistakes);
}

TEST(BundleFileTest, ReadsWhatTheMappingAllows) {
  v1::Bundle bundle;
  const Reading reading = readMessage(R"({
    "household": {"displayName": "Calçada 9", "time_zone": "Europe/Lisbon", "members": [{"id": "ana", "share": 0}]},
    "events": [{"courses": [{"servingTime": "2026-06-20T19:00:00+01:00", "lateLimit": "900s"}], "guests": [{"portion": 1}]}],
    "recipes": [{"steps": [{"kind": "STEP_KIND_OVEN", "placeKinds": [1, "PLACE_KIND_FRIDGE"]}], "note": null,
                 "ingredients": [{"massG": "12.5"}], "servingCount": 8.0}],
    "plans": [{"inputEtags": {"event/e1": "x"}, "inputRevision": "7", "search": {"seed": "18446744073709551615"}}]
  })",
                                      bundle);
  EXPECT_THAT(linesOf(reading.mistakes), IsEmpty());
  EXPECT_EQ(bundle.household().display_name(), "Calçada 9");
  EXPECT_TRUE(bundle.household().members(0).has_share());
  EXPECT_EQ(bundle.events(0).courses(0).serving_time().seconds(), 1781978400);
  EXPECT_EQ(bundle.events(0).courses(0).late_limit().seconds(), 900);
  EXPECT_EQ(bundle.recipes(0).steps(0).kind(), v1::STEP_KIND_OVEN);
  EXPECT_EQ(bundle.recipes(0).steps(0).place_kinds(1), v1::PLACE_KIND_FRIDGE);
  EXPECT_DOUBLE_EQ(bundle.recipes(0).ingredients(0).mass_g(), 12.5);
  EXPECT_EQ(bundle.recipes(0).serving_count(), 8);
  EXPECT_EQ(bundle.plans(0).input_etags().at("event/e1"), "x");
  EXPECT_EQ(bundle.plans(0).input_revision(), 7);
  EXPECT_EQ(bundle.plans(0).search().seed(), 18446744073709551615U);
}

TEST(BundleFileTest, SaysWhereATextStopsBeingJson) {
  EXPECT_THAT(mistakesIn("{\n  \"household\": }"),
              ElementsAre("line 2, column 16: \"household\": } — JSON wants '[', '{', or a literal here"));
  EXPECT_THAT(mistakesIn("{\"household\": {}"), ElementsAre(HasSubstr("the end of the file")));
  EXPECT_THAT(mistakesIn(""), ElementsAre(StartsWith("line 1, column 1: the end of the file")));
  EXPECT_THAT(mistakesIn("{} {}"), ElementsAre(StartsWith("line 1, column 4:")));
  EXPECT_THAT(mistakesIn("{\"household\": {\"id\": \"\xff\"}}"),
              ElementsAre(StartsWith("line 1, column 23:")));
}

TEST(BundleFileTest, RefusesEndlessNesting) {
  EXPECT_THAT(mistakesIn(std::string(100000, '[')), ElementsAre(HasSubstr("nested deeper than 100")));
}

TEST(BundleFileTest, ListsEveryMistakeByItsPath) {
  EXPECT_THAT(
      mistakesIn(R"({
        "household": {"displayNam": "x", "timeZone": 3},
        "kitchens": {},
        "events": [{"courses": [{"servingTime": "saturday", "lateLimit": "1 h"}], "courses": []}],
        "recipes": [{"steps": [{"kind": "STEP_KIND_OVENN", "starts_free": "yes", "volumeL": "a lot",
                                "placeKinds": ["PLACE_KIND_FRIDGE", "SHED"]},
                               7]},
                    {"servingCount": 2.5, "xyzzyqwerty": 1, "ingredients": [{"massG": 1, "count": 2}]}],
        "progresses": [{"reports": [{"rise": null, "started": true}, null]}]
      })"),
      ElementsAre(
          "household.displayNam: \"x\" — there is no such field; did you mean displayName?",
          "household.timeZone: 3 — text in quotes is wanted here: \"…\"",
          "kitchens: {0 members} — a list is wanted here: [ … ]",
          StartsWith("events[0].courses[0].servingTime: \"saturday\" — a date and time"),
          StartsWith("events[0].courses[0].lateLimit: \"1 h\" — seconds as text"),
          "events[0].courses: [0 elements] — this field is given twice here; keep one",
          StartsWith("recipes[0].steps[0].kind: \"STEP_KIND_OVENN\" — did you mean STEP_KIND_OVEN? one of "),
          "recipes[0].steps[0].starts_free: \"yes\" — true or false, without quotes",
          "recipes[0].steps[0].volumeL: \"a lot\" — a number is wanted here, without a unit",
          StartsWith("recipes[0].steps[0].placeKinds[1]: \"SHED\" — one of PLACE_KIND_COUNTER"),
          "recipes[0].steps[1]: 7 — an object is wanted here: { … }",
          "recipes[1].servingCount: 2.5 — a whole number is wanted here, without a unit",
          StartsWith("recipes[1].xyzzyqwerty: 1 — there is no such field; known here: id, meta, displayName"),
          "recipes[1].ingredients[0].count: 2 — only one of these may be given; there is massG already",
          "progresses[0].reports[1]: null — an object is wanted here: { … }"));
}

TEST(BundleFileTest, KeepsThePlaceOfAFaultyElement) {
  v1::Bundle bundle;
  readMessage(
      R"({"recipes": [3, {"id": "second"}], "kitchens": [{"ovens": [{"rackClearHeightMm": [1, "x", 3]}]}]})",
      bundle);
  ASSERT_EQ(bundle.recipes_size(), 2);
  EXPECT_EQ(bundle.recipes(1).id(), "second");
  EXPECT_EQ(bundle.kitchens(0).ovens(0).rack_clear_height_mm_size(), 3);
}

TEST(BundleFileTest, RefusesNumbersOutOfRange) {
  EXPECT_THAT(mistakesIn(R"({"recipes": [{"servingCount": 99999999999}]})"),
              ElementsAre(StartsWith("recipes[0].servingCount: 99999999999 — a whole number")));
  EXPECT_THAT(
      mistakesIn(R"({"plans": [{"search": {"seed": -1}}]})"),
      ElementsAre("plans[0].search.seed: -1 — a whole number from 0 up is wanted here, without a unit"));
  EXPECT_THAT(mistakesIn(R"({"events": [{"guests": [{"portion": "NaN"}]}]})"),
              ElementsAre(StartsWith("events[0].guests[0].portion: \"NaN\"")));
}

TEST(BundleFileTest, ReadsBackWhatThePrinterOfTheMappingWrites) {
  v1::Plan plan;
  EXPECT_THAT(linesOf(readMessage(jsonOf(testing::samplePlan()), plan).mistakes), IsEmpty());
  EXPECT_EQ(jsonOf(plan), jsonOf(testing::samplePlan()));
}

TEST(BundleFileTest, SurvivesEveryChangedLetter) {
  const std::string good = jsonOf(testing::sampleBundle());
  for (std::size_t at = 0; at < good.size(); ++at) {
    for (const char letter : {'"', '}', '[', '0', 'x', '\\', '\xff'}) {
      std::string changed = good;
      changed[at] = letter;
      v1::Bundle bundle;
      for (const std::string& line : linesOf(readMessage(changed, bundle).mistakes)) {
        EXPECT_EQ(line.find('\n'), std::string::npos) << line;
      }
    }
    v1::Bundle bundle;
    EXPECT_FALSE(at + 1 < good.size() && readMessage(good.substr(0, at), bundle).mistakes.empty())
        << "cut at " << at;
  }
}

TEST(BundleFileTest, ShortensLongValues) {
  const auto lines = mistakesIn("{\"household\": \"" + std::string(500, 'x') + "\"}");
  ASSERT_EQ(lines.size(), 1U);
  EXPECT_LT(lines[0].size(), 150U);
}

v1::FieldViolation violation(const std::string& path) {
  v1::FieldViolation v;
  v.set_field_path(path);
  v.set_description("from the server");
  return v;
}

std::vector<std::string> pathsOf(const Violations& violations) {
  std::vector<std::string> paths;
  for (const v1::FieldViolation& v : violations) paths.push_back(v.field_path());
  return paths;
}

TEST(BundleFileTest, LeavesOutWhatTheServerSaysAboutTheSameField) {
  v1::Bundle bundle;
  const Reading reading =
      readMessage(R"({"recipes": [{"steps": [{"volumeL": "much"}]}], "kitchens": 1})", bundle);
  const Violations all =
      joined(reading, {violation("recipes[0].steps[0].volumeL"), violation("recipes[0].steps[0]"),
                       violation("kitchens[0].ovens"), violation("recipes[0].steps[0].volumeLitres"),
                       violation("recipes[01]")});
  EXPECT_THAT(pathsOf(all), ElementsAre("recipes[0].steps[0].volumeL", "kitchens",
                                        "recipes[0].steps[0].volumeLitres", "recipes[01]"));
}

TEST(BundleFileTest, DoubtsTheRestOfAThingWhoseKindIsUnknown) {
  v1::Bundle bundle;
  const Reading reading = readMessage(
      R"({"recipes": [{"steps": [{"kind": "JUGGLE"}, {"id": "a"}]}], "household": {"temperatureUnit": "KELVINS"}})",
      bundle);
  const Violations all =
      joined(reading, {violation("recipes[0].steps[0].duration"), violation("recipes[0].steps[1].kind"),
                       violation("household.timeZone")});
  EXPECT_THAT(pathsOf(all), ElementsAre("recipes[0].steps[0].kind", "household.temperatureUnit",
                                        "recipes[0].steps[1].kind", "household.timeZone"));
}

TEST(BundleFileTest, GoesOnWithWhatWasPlainlyMeant) {
  v1::Bundle bundle;
  const Reading reading = readMessage(R"({
    "recipes": [{"dispayName": "Rye", "id": 12, "steps": [{"kind": "oven"}, {"kind": "STEP_KIND_OVNE"}], "notes": "x", "note": "y"}],
    "kitchens": {"id": "k1"}})",
                                      bundle);
  EXPECT_EQ(reading.mistakes.size(), 6U);
  ASSERT_EQ(bundle.recipes_size(), 1);
  EXPECT_EQ(bundle.recipes(0).display_name(), "Rye");
  EXPECT_EQ(bundle.recipes(0).id(), "12");
  EXPECT_EQ(bundle.recipes(0).steps(0).kind(), v1::STEP_KIND_OVEN);
  EXPECT_EQ(bundle.recipes(0).steps(1).kind(), v1::STEP_KIND_OVEN);
  EXPECT_EQ(bundle.recipes(0).note(), "y") << "the field itself was there as well";
  ASSERT_EQ(bundle.kitchens_size(), 1);
  EXPECT_EQ(bundle.kitchens(0).id(), "k1");
}

TEST(BundleFileTest, SaysNothingForAnEmptyValue) {
  EXPECT_EQ(lineOf(violation("events")), "events: (nothing) — from the server");
}

}  // namespace
}  // namespace suppertide::terminal
