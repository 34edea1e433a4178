// The menu commands from the command line to a real server inside this program and back.
#include <gmock/gmock.h>
#include <google/protobuf/util/json_util.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "client/terminal/exit_code.h"
#include "client/terminal/run.h"
#include "nlohmann/json.hpp"
#include "server/embedded.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::terminal {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
namespace fs = std::filesystem;

class MenuCommandTest : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "suppertide-menu-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
    bundle_ = compose::smallDinner();
    v1::Need& need = *bundle_.mutable_events(0)->mutable_guests(0)->add_needs();
    need.set_name("nuts");
    need.set_severity(v1::NEED_SEVERITY_NO_TRACES);
    for (v1::Recipe& recipe : *bundle_.mutable_recipes()) {
      if (recipe.id() != "gratin") continue;
      v1::Ingredient& nuts = *recipe.add_ingredients();
      nuts.set_name("hazelnuts");
      nuts.set_mass_g(200);
      v1::Ingredient& eggs = *recipe.add_ingredients();
      eggs.set_name("eggs");
      eggs.set_count(3);
    }
  }
  void TearDown() override { fs::remove_all(folder_); }

  int program(std::vector<std::string> arguments) {
    out_.str("");
    err_.str("");
    std::string text;
    EXPECT_TRUE(google::protobuf::util::MessageToJsonString(bundle_, &text).ok());
    std::ofstream(folder_ / "dinner.json") << text;
    for (std::string& argument : arguments)
      if (argument == "BUNDLE") argument = (folder_ / "dinner.json").string();
    Environment environment{.out = out_,
                            .err = err_,
                            .width = 110,
                            .colour = false,
                            .progressLine = false,
                            .credentials = folder_ / "servers.json",
                            .startServer = &EmbeddedServer::start,
                            .interrupted = nullptr};
    return run(arguments, environment);
  }

  fs::path folder_;
  v1::Bundle bundle_;
  std::ostringstream out_;
  std::ostringstream err_;
};

TEST_F(MenuCommandTest, ChecksAMenuInWordsAndInJson) {
  ASSERT_EQ(program({"menu", "check", "BUNDLE"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("nuts, not even"));
  EXPECT_THAT(out_.str(), HasSubstr("✗ Chard gratin (hazelnuts)"));
  EXPECT_THAT(out_.str(), HasSubstr("16 rolls, usual 16"));
  EXPECT_THAT(out_.str(), HasSubstr("No food-safety limits are kept for"));
  ASSERT_EQ(program({"menu", "check", "BUNDLE", "--json"}), kOk);
  const auto json = nlohmann::json::parse(out_.str());
  EXPECT_EQ(json["cells"].size(), 8u);
  EXPECT_EQ(json["portions"].size(), 3u);
}

TEST_F(MenuCommandTest, ListsShoppingLessWhatIsAtHandByBuyer) {
  ASSERT_EQ(program({"menu", "shopping", "BUNDLE", "--at-hand", "1 kg hazelnuts", "--buyer", "Rui=dairy",
                     "--buyer", "Ana"}),
            kOk)
      << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("Enough at hand: hazelnuts"));
  EXPECT_THAT(out_.str(), HasSubstr("eggs, large, Rui"));
  EXPECT_THAT(out_.str(), HasSubstr("there is no plan yet"));
  EXPECT_EQ(program({"menu", "shopping", "BUNDLE", "--at-hand", "nuts", "--buyer", "Zoe=wine"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("--at-hand: nuts"));
  EXPECT_THAT(err_.str(), HasSubstr("--buyer: wine"));
}

TEST_F(MenuCommandTest, NotesWhatIsInTheBasketAndWhatRecipesDoNotAskFor) {
  ASSERT_EQ(program({"menu", "shopping", "BUNDLE", "--add", "12 candles", "--tick", "hazelnuts", "--packet",
                     "500 g flour", "--at-hand", "2 g salt", "--keep"}),
            kOk)
      << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("✓"));
  EXPECT_THAT(out_.str(), HasSubstr("hazelnuts, in the basket of"));
  EXPECT_THAT(out_.str(), HasSubstr("Added by hand"));
  EXPECT_THAT(out_.str(), HasSubstr("12 candles"));
  EXPECT_THAT(out_.str(), HasSubstr("× 500 g"));
  EXPECT_THAT(out_.str(), HasSubstr("beside 2 g at hand"));
  EXPECT_EQ(program({"menu", "shopping", "BUNDLE", "--tick", "moon dust", "--drop", "flour"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("--tick: moon dust"));
  EXPECT_THAT(err_.str(), HasSubstr("--drop: flour"));
}

TEST_F(MenuCommandTest, ShowsWhereTheRuleSetsDiffer) {
  ASSERT_EQ(program({"menu", "rules", "BUNDLE"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("United Kingdom"));
  EXPECT_THAT(out_.str(), HasSubstr("63 °C"));
  EXPECT_THAT(out_.str(), HasSubstr("Local codes"));
  ASSERT_EQ(program({"menu", "rules", "BUNDLE", "--json"}), kOk);
  EXPECT_GT(nlohmann::json::parse(out_.str())["rows"].size(), 40u);
}

TEST_F(MenuCommandTest, TellsWhatAChangedMenuChanges) {
  ASSERT_EQ(program({"menu", "change", "BUNDLE", "--without", "gratin"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("no hazelnuts (was 200 g)"));
  EXPECT_THAT(out_.str(), HasSubstr("its dish is left out"));
  EXPECT_THAT(out_.str(), Not(HasSubstr("gratin/")));
  EXPECT_EQ(program({"menu", "change", "BUNDLE", "--without", "soup"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("must be one of rolls, roast, gratin"));
  EXPECT_EQ(program({"menu", "change", "BUNDLE"}), kBadInput);
}

TEST_F(MenuCommandTest, ScalesARecipe) {
  ASSERT_EQ(program({"menu", "scale", "BUNDLE", "--recipe", "Chard gratin", "--guests", "3"}), kOk)
      << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("0.38 times the recipe"));
  EXPECT_THAT(out_.str(), HasSubstr("eggs (by the numbers 1.12"));
  ASSERT_EQ(program({"menu", "scale", "BUNDLE", "--recipe", "gratin", "--pan", "600x400"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("Large oven: does not fit; one of"));
  EXPECT_EQ(program({"menu", "scale", "BUNDLE", "--recipe", "gratin", "--pan", "large"}), kBadInput);
  EXPECT_EQ(program({"menu", "scale", "BUNDLE", "--recipe", "gratin", "--pieces", "4"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("--pieces: 4 — only breads have pieces"));
  EXPECT_EQ(program({"menu", "scale", "BUNDLE", "--recipe", "gratin", "--guests", "0"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("--guests: 0 — must be above 0"));
  EXPECT_EQ(program({"menu", "scale", "BUNDLE", "--recipe", "gratin"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("say what size: --guests, --pieces or --pan"));
}

TEST_F(MenuCommandTest, SizesAndRulesNeedNoEvent) {
  bundle_.clear_events();
  ASSERT_EQ(program({"menu", "scale", "BUNDLE", "--recipe", "gratin", "--guests", "3"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("Large oven:")) << "the only kitchen";
  EXPECT_EQ(program({"menu", "rules", "BUNDLE"}), kOk) << err_.str();
  EXPECT_EQ(program({"menu", "check", "BUNDLE"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("There is no event"));
}

TEST_F(MenuCommandTest, NamesTheOptionThatCannotBe) {
  EXPECT_EQ(program({"menu", "change", "BUNDLE", "--serves", "gratin=500"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("--serves: gratin=500"));
  const std::string course = bundle_.events(0).courses(0).id();
  EXPECT_EQ(program({"menu", "change", "BUNDLE", "--time", "nope=19:00"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("courses are " + course));
}

TEST_F(MenuCommandTest, CountsPiecesAtHandAgainstPieces) {
  ASSERT_EQ(program({"menu", "shopping", "BUNDLE", "--at-hand", "30 eggs"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("Enough at hand: eggs"));
  EXPECT_THAT(out_.str(), Not(HasSubstr("Not counted")));
}

TEST_F(MenuCommandTest, SaysWhatIsAtHandForNothing) {
  ASSERT_EQ(program({"menu", "shopping", "BUNDLE", "--at-hand", "2 unicorns", "--at-hand", "50 g hazelnuts"}),
            kOk)
      << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("Not counted: unicorns (not on the list"));
  ASSERT_EQ(
      program({"menu", "shopping", "BUNDLE", "--at-hand", "2 unicorns", "--at-hand", "3 eggs", "--keep"}),
      kOk);
  EXPECT_THAT(out_.str(), HasSubstr("Not counted: unicorns (not on the list")) << "noted, too";
}

TEST_F(MenuCommandTest, ReadsLinesOfARecipe) {
  ASSERT_EQ(program({"menu", "ingredient", "2 1/4 cups flour, sifted", "--measures", "us"}), kOk)
      << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("281 g all-purpose flour"));
  EXPECT_THAT(out_.str(), HasSubstr("the usual one was taken"));
  EXPECT_EQ(program({"menu", "ingredient", "1 cup milk", "--measures", "martian"}), kBadInput);
  EXPECT_EQ(program({"menu"}), kBadInput);
}

TEST_F(MenuCommandTest, RulesAreChosenAndThenKept) {
  EXPECT_EQ(program({"menu", "rules", "BUNDLE"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("keep the limits for cooking at home"));
  EXPECT_EQ(program({"menu", "rules", "BUNDLE", "--choose", "uk"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("keep the limits of the United Kingdom"));
  EXPECT_THAT(out_.str(), HasSubstr("63 °C"));
  EXPECT_EQ(program({"menu", "rules", "BUNDLE", "--choose", "none"}), kBadInput);
}

}  // namespace
}  // namespace suppertide::terminal
