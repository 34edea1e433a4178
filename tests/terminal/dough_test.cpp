// The commands about doughs, asked of a real server in the program.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <nlohmann/json.hpp>

#include "absl/strings/str_replace.h"
#include "absl/strings/str_split.h"
#include "client/terminal/connection.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/report.h"
#include "client/terminal/run.h"
#include "client/terminal/text.h"
#include "tests/compose/loaf.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::terminal {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
namespace fs = std::filesystem;

constexpr const char* kYeastedFormula = R"json({
  "doughClass": "DOUGH_CLASS_LEAN", "pieceCount": 2, "pieceMassG": 850, "doughCelsius": 25,
  "lines": [
    {"name": "strong flour", "role": "FORMULA_ROLE_FLOUR", "percent": 100},
    {"name": "water", "role": "FORMULA_ROLE_WATER", "percent": 68},
    {"name": "salt", "role": "FORMULA_ROLE_SALT", "percent": 2},
    {"name": "fresh yeast", "role": "FORMULA_ROLE_FRESH_YEAST", "percent": 0.8}],
  "preferments": [{"id": "poolish", "kind": "PREFERMENT_KIND_POOLISH", "flourPercent": 30, "yeastPercent": 0.2}]})json";

class DoughCommandTest : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "suppertide-dough-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
  }
  void TearDown() override { fs::remove_all(folder_); }

  int program(const std::vector<std::string>& arguments) {
    out_.str("");
    err_.str("");
    Environment environment{.out = out_,
                            .err = err_,
                            .width = 80,
                            .colour = false,
                            .progressLine = false,
                            .credentials = folder_ / "servers.json",
                            .startServer = EmbeddedServer::start,
                            .interrupted = nullptr};
    return run(arguments, environment);
  }
  std::string file(const std::string& name, const std::string& text) {
    const fs::path path = folder_ / name;
    std::ofstream(path) << text;
    return path.string();
  }
  std::string formulaFile() { return file("formula.json", kYeastedFormula); }
  std::string dinnerFile() { return file("dinner.json", jsonOf(compose::smallDinner())); }
  std::string loafFile() { return file("loaf.json", jsonOf(compose::dinnerWithLoaf())); }
  std::string out() const { return out_.str(); }
  // In one line, wherever it was wrapped.
  std::string words() const { return absl::StrReplaceAll(out(), {{"\n", " "}}); }
  std::string err() const { return err_.str(); }
  nlohmann::json json() const { return nlohmann::json::parse(out(), nullptr, false); }

  fs::path folder_;
  std::ostringstream out_, err_;
};

void expectWithin(const std::string& text, int width) {
  for (const absl::string_view line : absl::StrSplit(text, '\n'))
    EXPECT_LE(displayWidth(std::string(line)), width) << line;
}

TEST_F(DoughCommandTest, ABareFormulaIsForecastAsAChart) {
  ASSERT_EQ(program({"dough", formulaFile(), "--start", "2026-06-20 10:00", "--stay", "25:6"}), kOk) << err();
  EXPECT_THAT(words(), HasSubstr("bulk fermentation from Sat 10:00"));
  EXPECT_THAT(words(), HasSubstr("█"));
  EXPECT_THAT(words(), HasSubstr("Ready from"));
  EXPECT_THAT(words(), HasSubstr(" °C"));
  expectWithin(out(), 80);
}

TEST_F(DoughCommandTest, APrefermentIsForecastByItsId) {
  ASSERT_EQ(program({"dough", formulaFile(), "--stage", "poolish", "--start", "2026-06-20 20:00", "--stay",
                     "21:16"}),
            kOk)
      << err();
  EXPECT_THAT(words(), HasSubstr("poolish from Sat 20:00"));
  EXPECT_EQ(
      program({"dough", formulaFile(), "--stage", "biga", "--start", "2026-06-20 20:00", "--stay", "21:16"}),
      kBadInput);
  EXPECT_THAT(err(), HasSubstr("or the preferment poolish"));
}

TEST_F(DoughCommandTest, PlacesThatEndTooSoonSayWhenItWouldBeReady) {
  ASSERT_EQ(program({"dough", formulaFile(), "--start", "2026-06-20 10:00", "--stay", "25:1"}), kOk) << err();
  EXPECT_THAT(words(), HasSubstr("These places end before it is ready"));
  EXPECT_THAT(words(), HasSubstr("Left in the last of them it would be ready from"));
}

TEST_F(DoughCommandTest, TheForecastIsToBeHadAsJson) {
  ASSERT_EQ(program({"dough", dinnerFile(), "--start", "2026-06-20 10:00", "--stay", "27:5", "--json"}), kOk);
  ASSERT_TRUE(json().is_object()) << out();
  EXPECT_TRUE(json()["forecast"].contains("bestTime"));
  EXPECT_GT(json()["forecast"]["samples"].size(), 20U);
}

// Each by the field or option that is wrong, with what is allowed.
TEST_F(DoughCommandTest, BadInputIsNamed) {
  const auto refused = [&](const std::vector<std::string>& arguments, const char* what) {
    EXPECT_EQ(program(arguments), kBadInput) << what;
    EXPECT_THAT(err(), HasSubstr(what));
    EXPECT_THAT(out(), IsEmpty());
  };
  std::string wet = kYeastedFormula;
  wet.replace(wet.find("\"percent\": 68"), 13, "\"percent\": 300");
  const std::string start = "2026-06-20 10:00";
  refused({"dough", file("wet.json", wet), "--start", start, "--stay", "25:6"}, "between 30 and 130 %");
  refused({"dough", formulaFile(), "--start", start, "--stay", "25:6", "--water", "-5"}, "waterCelsius: -5");
  refused({"dough", dinnerFile(), "--start", start, "--stay", "25:6", "--stage", "levain"}, "--ratio");
  refused({"dough", dinnerFile(), "--start", start, "--stay", "25:6", "--stage", "levain", "--ratio", "-1"},
          "flourPerStarter");
  refused({"dough", formulaFile(), "--start", start}, "say where it stands: degrees and hours");
  refused({"dough", formulaFile(), "--start", start, "--stay", "warm"}, "degrees and hours");
  refused({"dough", formulaFile(), "--start", "tomorrow", "--stay", "25:6"}, "--start: tomorrow");
  refused({"dough", formulaFile(), "--start", start, "--stay", "25:100"}, "between 5 minutes and 3 days");
  refused({"dough", (folder_ / "none.json").string(), "--start", start, "--stay", "25:6"}, "none.json");
}

TEST_F(DoughCommandTest, FitFindsWaysInTheKitchensPlacesWithThePoolishInThem) {
  ASSERT_EQ(
      program({"dough", "fit", loafFile(), "--ready", "2026-06-21 17:00-17:30", "--hours", "06:30-23:00"}),
      kOk)
      << err();
  EXPECT_THAT(words(), HasSubstr("ways to have Seeded loaf ready then"));
  EXPECT_THAT(words(), HasSubstr("Poolish"));
  EXPECT_THAT(words(), HasSubstr("Levain"));
  expectWithin(out(), 80);
}

TEST_F(DoughCommandTest, FitSaysWhatACoolKitchenChanges) {
  ASSERT_EQ(program({"dough", "fit", dinnerFile(), "--ready", "2026-06-21 17:00-17:30", "--kitchen", "18"}),
            kOk)
      << err();
  EXPECT_THAT(words(), HasSubstr("As the kitchen is"));
  EXPECT_THAT(words(), HasSubstr("with the counter at 18 °C"));
}

TEST_F(DoughCommandTest, FitOfABareFormulaNeedsItsPlaces) {
  const std::vector<std::string> asked = {"dough", "fit", formulaFile(), "--ready", "2026-06-21 17:00-17:30"};
  EXPECT_EQ(program(asked), kBadInput);
  EXPECT_THAT(err(), HasSubstr("--place"));
  auto placed = asked;
  placed.insert(placed.end(), {"--place", "counter:22", "--place", "fridge:4"});
  EXPECT_EQ(program(placed), kOk) << err();
  EXPECT_THAT(words(), HasSubstr("Counter"));
  auto lost = asked;
  lost.insert(lost.end(), {"--place", "attic:22"});
  EXPECT_EQ(program(lost), kBadInput);
  EXPECT_THAT(err(), HasSubstr("attic:22"));
}

TEST_F(DoughCommandTest, FitWithoutAWaySaysTheNearest) {
  EXPECT_EQ(
      program({"dough", "fit", dinnerFile(), "--ready", "2026-06-21 17:00-17:30", "--hours", "16:00-17:30"}),
      kPlanFallsShort);
  EXPECT_THAT(words(), HasSubstr("There is no way"));
}

TEST_F(DoughCommandTest, ScaleTellsWhatToWeighForEachPart) {
  ASSERT_EQ(program({"dough", "scale", loafFile(), "--pieces", "2x900", "--room", "20"}), kOk) << err();
  for (const char* part : {"Levain,", "Poolish,", "Linseed soaker,", "Dough, 1800 g"})
    EXPECT_THAT(words(), HasSubstr(part));
  EXPECT_THAT(words(), HasSubstr("hydration 74.0 %, 62.0 % without what soakers hold"));
  EXPECT_THAT(words(), HasSubstr("by heat balance"));
  EXPECT_THAT(words(), HasSubstr("before cutting"));
  expectWithin(out(), 80);
}

TEST_F(DoughCommandTest, ScaleChangesLinesAndWritesTheFormula) {
  const std::string written = (folder_ / "changed.json").string();
  ASSERT_EQ(program({"dough", "scale", formulaFile(), "--flour", "1000", "--set", "water=75%", "--set",
                     "salt=20g", "--output", written}),
            kOk)
      << err();
  EXPECT_THAT(words(), HasSubstr("1000 g of flour; hydration 75.0 %"));
  ASSERT_EQ(program({"dough", "scale", written, "--json"}), kOk) << err();
  EXPECT_NEAR(json()["hydrationPercent"].get<double>(), 75, 1e-9);
  EXPECT_EQ(program({"dough", "scale", formulaFile(), "--set", "water=wet"}), kBadInput);
  EXPECT_EQ(program({"dough", "scale", formulaFile(), "--set", "milk=20%"}), kBadInput);
  EXPECT_THAT(err(), HasSubstr("milk: there is no such line"));
}

TEST_F(DoughCommandTest, ScaleFillsPansAndGuests) {
  ASSERT_EQ(program({"dough", "scale", formulaFile(), "--pan", "300x110x60", "--pans", "2"}), kOk) << err();
  EXPECT_THAT(words(), HasSubstr("2 pieces of 943 g"));
  EXPECT_THAT(words(), HasSubstr("A pan of 1980 ml"));
  ASSERT_EQ(program({"dough", "scale", dinnerFile(), "--guests", "4"}), kOk) << err();
  EXPECT_THAT(words(), HasSubstr("8 pieces of 55 g"));
  EXPECT_EQ(program({"dough", "scale", formulaFile(), "--guests", "4"}), kBadInput);
  EXPECT_THAT(err(), HasSubstr("--serves"));
}

// A household on a server of this test's own, joined and filled with the small dinner.
class DoughReadingsCommandTest : public DoughCommandTest {
 protected:
  void SetUp() override {
    DoughCommandTest::SetUp();
    auto server = EmbeddedServer::start({});
    ASSERT_TRUE(server.ok()) << server.status();
    server_ = *std::move(server);
    ASSERT_EQ(program({"join", server_->target(), "--host-code", server_->hostCode(), "--name", "Ana",
                       "--household", "Harbour Lane", "--time-zone", "Europe/Lisbon"}),
              kOk)
        << err();
    ASSERT_EQ(program({"import", dinnerFile()}), kOk) << err();
  }
  void TearDown() override {
    server_.reset();
    DoughCommandTest::TearDown();
  }

  std::unique_ptr<EmbeddedServer> server_;
};

TEST_F(DoughReadingsCommandTest, WhatWasSeenIsKeptAndTold) {
  ASSERT_EQ(program({"dough", "learned"}), kOk) << err();
  EXPECT_THAT(words(), HasSubstr("Nothing was seen yet"));
  ASSERT_EQ(program({"dough", "seen", "--fed", "2026-06-18 08:00", "--seen", "2026-06-18 12:00", "--ratio",
                     "1:1:1", "--rise", "2.2", "--place", "Counter"}),
            kOk)
      << err();
  EXPECT_THAT(words(), HasSubstr("Learned from 1 observation"));
  EXPECT_THAT(words(), HasSubstr("How fast Crock is"));
  ASSERT_EQ(program({"dough", "mixed", "--room", "20", "--water", "30", "--dough", "33"}), kOk) << err();
  EXPECT_THAT(words(), HasSubstr("K warmer than worked out"));
  ASSERT_EQ(program({"dough", "learned"}), kOk) << err();
  EXPECT_THAT(words(), HasSubstr("How warm it is in Counter"));
  EXPECT_THAT(words(), HasSubstr("K warmer than worked out"));
  expectWithin(out(), 80);
}

TEST_F(DoughReadingsCommandTest, TheHouseholdsForecastUsesItsPlacesAndWhatWasLearned) {
  const std::vector<std::string> asked = {"dough",   "--stage",          "levain", "--ratio",    "1",
                                          "--start", "2026-06-20 08:00", "--stay", "Counter:24", "--json"};
  ASSERT_EQ(program(asked), kOk) << err();
  const std::string before = json()["forecast"]["bestTime"];
  ASSERT_EQ(program({"dough", "seen", "--fed", "2026-06-18 08:00", "--seen", "2026-06-18 12:00", "--ratio",
                     "1:1:1", "--rise", "2.2", "--place", "counter"}),
            kOk)
      << err();
  ASSERT_EQ(program(asked), kOk) << err();
  EXPECT_LT(json()["forecast"]["bestTime"].get<std::string>(), before);
  auto lost = asked;
  lost[8] = "attic:24";
  EXPECT_EQ(program(lost), kBadInput);
  EXPECT_THAT(out(), HasSubstr("counter"));  // as JSON, with the places there are
}

TEST_F(DoughReadingsCommandTest, AsksForWhatIsMissing) {
  EXPECT_EQ(program({"dough", "seen", "--fed", "2026-06-18 08:00", "--ratio", "1:1:1", "--celsius", "22"}),
            kBadInput);
  EXPECT_THAT(err(), HasSubstr("say what was seen"));
  EXPECT_EQ(program({"dough", "seen", "--fed", "2026-06-18 08:00", "--rise", "2", "--celsius", "22"}),
            kBadInput);
  EXPECT_THAT(err(), HasSubstr("like 1:2:2"));
  EXPECT_EQ(program({"dough", "seen", "--fed", "2026-06-18 08:00", "--ratio", "1:1:1", "--rise", "2"}),
            kBadInput);
  EXPECT_THAT(err(), HasSubstr("--celsius"));
  EXPECT_EQ(program({"dough", "seen", "--fed", "2026-06-18 08:00", "--ratio", "1:1:1", "--rise", "2",
                     "--place", "attic"}),
            kBadInput);
  EXPECT_THAT(err(), HasSubstr("attic"));
}

TEST_F(DoughCommandTest, TheModelStandsBesideItsSources) {
  ASSERT_EQ(program({"bread", "check"}), kOk);
  EXPECT_THAT(words(), HasSubstr("°C"));
  EXPECT_THAT(out(), Not(::testing::ContainsRegex("[0-9] C[ ,.;]")));
  EXPECT_THAT(words(), HasSubstr("Only independent rows speak for the model"));
  expectWithin(out(), 80);
  ASSERT_EQ(program({"bread", "check", "--json"}), kOk);
  EXPECT_GT(json()["checks"].size(), 100U);
}

}  // namespace
}  // namespace suppertide::terminal
