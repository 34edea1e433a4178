#include "client/terminal/run.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include <nlohmann/json.hpp>

#include "client/link/credentials.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/report.h"
#include "tests/terminal/fake_server.h"
#include "tests/terminal/sample.h"

namespace suppertide::terminal {
namespace {

using namespace testing;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::StartsWith;
namespace fs = std::filesystem;

class RunTest : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "suppertide-run-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
    answers_.bundle = sampleBundle();
    answers_.plan = samplePlan();
  }
  void TearDown() override { fs::remove_all(folder_); }

  int program(const std::vector<std::string>& arguments) {
    out_.str("");
    err_.str("");
    Environment environment{
        .out = out_,
        .err = err_,
        .width = 80,
        .colour = false,
        .progressLine = progressLine_,
        .credentials = folder_ / "servers.json",
        .startServer =
            [this](const EmbeddedServer::Options&) -> absl::StatusOr<std::unique_ptr<EmbeddedServer>> {
          return std::unique_ptr<EmbeddedServer>(std::make_unique<FakeServer>(answers_));
        },
        .interrupted = nullptr};
    return run(arguments, environment);
  }
  std::string file(const std::string& name, const std::string& text) {
    const fs::path path = folder_ / name;
    std::ofstream(path) << text;
    return path.string();
  }
  std::string bundleFile() { return file("bundle.json", jsonOf(sampleBundle())); }
  // A server as if over the network, joined already.
  FakeServer& knownServer() {
    server_ = std::make_unique<FakeServer>(answers_);
    link::Credentials credentials;
    credentials.put({.name = "home",
                     .target = server_->target(),
                     .certificatePem = "",
                     .householdId = "h1",
                     .householdName = "Calçada 9",
                     .memberId = "ana",
                     .deviceToken = "token"});
    EXPECT_TRUE(link::saveCredentials(folder_ / "servers.json", credentials).ok());
    return *server_;
  }

  fs::path folder_;
  Answers answers_;
  std::unique_ptr<FakeServer> server_;
  std::ostringstream out_;
  std::ostringstream err_;
  bool progressLine_ = false;
};

v1::FieldViolation violation(const std::string& path, const std::string& value, const std::string& allowed) {
  v1::FieldViolation v;
  v.set_field_path(path);
  v.set_value(value);
  v.set_description(allowed);
  return v;
}

TEST_F(RunTest, TellsItsVersionAndItsExitCodes) {
  EXPECT_EQ(program({"--version"}), kOk);
  EXPECT_THAT(out_.str(), StartsWith("suppertide 0."));
  EXPECT_EQ(program({"--help"}), kOk);
  for (const char* command :
       {"plan", "audit", "check", "join", "import", "export", "events", "invite", "show", "watch"}) {
    EXPECT_THAT(out_.str(), HasSubstr(std::string("\n  ") + command));
  }
  EXPECT_THAT(out_.str(), HasSubstr("  3  the plan breaks a rule or leaves a dish unserved"));
  EXPECT_EQ(program({"plan", "--help"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("suppertide plan demo/feast.json"));
}

TEST_F(RunTest, RefusesWrongUse) {
  EXPECT_EQ(program({}), kBadInput);
  EXPECT_EQ(program({"cook"}), kBadInput);
  EXPECT_EQ(program({"plan", "x", "--seed", "many"}), kBadInput);
  EXPECT_EQ(program({"plan", "x", "--server", "home"}), kBadInput);
  EXPECT_EQ(program({"join", "127.0.0.1:1"}), kBadInput);
  EXPECT_EQ(program({"join", "127.0.0.1:1", "--host-code", "A", "--code", "B"}), kBadInput);
  EXPECT_THAT(out_.str(), IsEmpty());
  EXPECT_THAT(err_.str(), HasSubstr("See suppertide --help."));
}

TEST_F(RunTest, PlansAFile) {
  EXPECT_EQ(program({"plan", bundleFile(), "--seed", "7", "--work", "500", "--time-limit", "9"}), kOk);
  EXPECT_THAT(out_.str(), StartsWith("Midsummer supper\n"));
  EXPECT_THAT(out_.str(), HasSubstr("Bake the gratin"));
  EXPECT_THAT(err_.str(), IsEmpty()) << "no progress where nobody sees it change";
  EXPECT_TRUE(answers_.wasImported);
  EXPECT_EQ(answers_.planned.event_id(), "e1");
  EXPECT_EQ(answers_.planned.seed(), 7U);
  EXPECT_EQ(answers_.planned.work_limit(), 500);
  EXPECT_EQ(answers_.planned.time_limit().seconds(), 9);
  EXPECT_EQ(answers_.created.household().members(0).id(), "ana")
      << "importing must keep this device a member";
}

TEST_F(RunTest, ShowsProgressOnATerminalAndWipesIt) {
  progressLine_ = true;
  EXPECT_EQ(program({"plan", bundleFile()}), kOk);
  EXPECT_THAT(err_.str(), HasSubstr("Planning, 3 s: all dishes served"));
  EXPECT_THAT(err_.str(), ::testing::EndsWith("\r\x1b[K"));
}

TEST_F(RunTest, WritesThePlanForAnAuditAndAsJson) {
  const std::string output = (folder_ / "plan.json").string();
  EXPECT_EQ(program({"plan", bundleFile(), "--json", "--output", output}), kOk);
  EXPECT_EQ(nlohmann::json::parse(out_.str())["id"], "e1");
  EXPECT_EQ(program({"audit", bundleFile(), output}), kOk);
  EXPECT_EQ(out_.str(), "The plan keeps every rule.\n");
}

TEST_F(RunTest, SaysWithItsExitCodeThatADishIsNotServed) {
  answers_.plan.add_unserved()->set_dish_id("gratin");
  EXPECT_EQ(program({"plan", bundleFile()}), kPlanFallsShort);
  EXPECT_THAT(out_.str(), HasSubstr("NOT SERVED: 1 dish\n"));
}

v1::FindRemediesResponse remedyTold(int number, int size, v1::RemedyKind kind) {
  v1::FindRemediesResponse message;
  message.set_number(number);
  message.mutable_remedy()->set_kind(kind);
  message.mutable_remedy()->set_dish_id("gratin");
  message.mutable_remedy()->set_size(size);
  *message.mutable_plan() = samplePlan();
  return message;
}

TEST_F(RunTest, TellsTheClashAndTheRemediesByTheirRank) {
  v1::FindRemediesResponse clash;
  v1::Wish& wish = *clash.add_clashes()->add_wishes();
  wish.set_kind(v1::WISH_KIND_SERVED);
  wish.set_dish_id("gratin");
  v1::FindRemediesResponse last;
  last.set_final(true);
  last.add_ranking(2);
  last.add_ranking(1);
  answers_.remedies = {clash, remedyTold(1, 40, v1::REMEDY_KIND_DROP_DISH),
                       remedyTold(2, 10, v1::REMEDY_KIND_OTHER_COOK), last};
  EXPECT_EQ(program({"remedies", bundleFile()}), kOk);
  const std::string text = out_.str();
  EXPECT_THAT(text, HasSubstr("cannot be ready by"));
  EXPECT_LT(text.find("1  Ask"), text.find("2  Leave out"));
  EXPECT_EQ(program({"remedies", bundleFile(), "--json"}), kOk);
  const auto json = nlohmann::json::parse(out_.str());
  EXPECT_EQ(json["remedies"][0]["remedy"]["kind"], "REMEDY_KIND_OTHER_COOK");
  EXPECT_EQ(json["clashes"].size(), 1u);
}

TEST_F(RunTest, SaysThatNothingNeedsARemedyOrThatNoneHelps) {
  v1::FindRemediesResponse last;
  last.set_final(true);
  answers_.remedies = {last};
  EXPECT_EQ(program({"remedies", bundleFile()}), kPlanFallsShort);
  EXPECT_THAT(out_.str(), HasSubstr("No change that was tried"));
  answers_.remedies[0].set_fits(true);
  EXPECT_EQ(program({"remedies", bundleFile()}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("nothing to remedy"));
}

TEST_F(RunTest, ListsTheRulesThatAPlanBreaks) {
  v1::Breach breach;
  breach.set_rule(v1::HARD_RULE_COOK);
  breach.set_step_id("rye/mix");
  breach.set_thing_id("ana");
  answers_.breaches = {breach};
  const std::string plan = file("plan.json", jsonOf(samplePlan()));
  EXPECT_EQ(program({"audit", bundleFile(), plan}), kPlanFallsShort);
  EXPECT_THAT(out_.str(), StartsWith("The plan breaks 1 rule:\n• Ana cannot do “Mix the dough · Rye loaf”"));
  EXPECT_EQ(program({"audit", bundleFile(), plan, "--json"}), kPlanFallsShort);
  EXPECT_EQ(nlohmann::json::parse(out_.str())["breaches"][0]["rule"], "HARD_RULE_COOK");
}

TEST_F(RunTest, ListsEveryMistakeOfABundleAndNothingElse) {
  answers_.violations = {
      violation("bundle.events[0].dishes[0].recipeId", "nothing", "an id of a recipe in this file"),
      violation("recipes[0].servingCount", "0", "1 to 200")};
  const std::string bad =
      file("bad.json", R"({"household": {"displayName": 3}, "recipes": [{"servingCount": "eight"}]})");
  for (const char* command : {"plan", "check"}) {
    EXPECT_EQ(program({command, bad}), kBadInput) << command;
    EXPECT_EQ(err_.str(),
              "household.displayName: 3 — text in quotes is wanted here: \"…\"\n"
              "recipes[0].servingCount: \"eight\" — a whole number is wanted here, without a unit\n"
              "events[0].dishes[0].recipeId: nothing — an id of a recipe in this file\n");
    EXPECT_THAT(out_.str(), IsEmpty());
  }
  EXPECT_FALSE(answers_.wasImported);
  EXPECT_TRUE(answers_.imported.validate_only());
}

TEST_F(RunTest, AsksTheServerAlsoAboutAFileWithNothingRight) {
  answers_.violations = {violation("events", "", "at least one event")};
  EXPECT_EQ(program({"check", file("bad.json", R"({"household": 3})")}), kBadInput);
  EXPECT_EQ(err_.str(),
            "household: 3 — an object is wanted here: { … }\nevents: (nothing) — at least one event\n");
}

TEST_F(RunTest, GivesMistakesAsJsonToo) {
  EXPECT_EQ(program({"check", file("bad.json", "{\n oops"), "--json"}), kBadInput);
  const auto json = nlohmann::json::parse(out_.str());
  ASSERT_EQ(json["violations"].size(), 1U);
  EXPECT_EQ(json["violations"][0]["fieldPath"], "line 2, column 2");
}

TEST_F(RunTest, ChecksABundle) {
  EXPECT_EQ(program({"check", bundleFile()}), kOk);
  EXPECT_EQ(out_.str(), "No mistakes: 1 event, 3 recipes, 1 kitchen and 0 starters.\n");
  EXPECT_FALSE(answers_.wasImported);
}

TEST_F(RunTest, NamesAFileThatCannotBeRead) {
  EXPECT_EQ(program({"check", (folder_ / "none.json").string()}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("none.json: No such file"));
  EXPECT_EQ(program({"check", "nowhere/none.json"}), kBadInput);
  EXPECT_EQ(err_.str(), "nowhere/none.json: No such file or directory\n");
}

TEST_F(RunTest, WantsToKnowWhichEventWhenThereAreSeveral) {
  v1::Bundle bundle = sampleBundle();
  *bundle.add_events() = bundle.events(0);
  bundle.mutable_events(1)->set_id("e2");
  const std::string two = file("two.json", jsonOf(bundle));
  EXPECT_EQ(program({"plan", two}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("Say which event with --event; there are: e1 (Midsummer supper), e2"));
  EXPECT_EQ(program({"plan", two, "--event", "e2"}), kOk);
  EXPECT_EQ(answers_.planned.event_id(), "e2");
}

TEST_F(RunTest, JoinsWithAHostCodeAndRemembers) {
  FakeServer server(answers_);
  EXPECT_EQ(program({"join", server.target(), "--host-code", "HOST-CODE", "--name", "Ana", "--time-zone",
                     "Europe/Lisbon"}),
            kOk);
  EXPECT_EQ(out_.str(), "This device now belongs to Calçada 9, saved as \"home\".\n");
  EXPECT_EQ(answers_.created.household().members(0).display_name(), "Ana");
  const auto saved = link::loadCredentials(folder_ / "servers.json");
  ASSERT_TRUE(saved.ok());
  ASSERT_NE(saved->find("home"), nullptr);
  EXPECT_EQ(saved->find("home")->deviceToken, "token");
  EXPECT_EQ(program({"events"}), kOk) << "what was saved is used";
}

TEST_F(RunTest, JoinsWithAnInvitationAndNeverPrintsTheToken) {
  FakeServer server(answers_);
  EXPECT_EQ(
      program({"join", server.target(), "--code", "ABCD", "--name", "Ben", "--save-as", "cabin", "--json"}),
      kOk);
  EXPECT_EQ(answers_.joined.code(), "ABCD");
  EXPECT_EQ(nlohmann::json::parse(out_.str())["server"], "cabin");
  EXPECT_THAT(out_.str(), Not(HasSubstr("token")));
}

TEST_F(RunTest, SaysThatAWrongCodeIsRefused) {
  FakeServer server(answers_);
  EXPECT_EQ(program({"join", server.target(), "--host-code", "WRONG", "--name", "Ana"}), kRefused);
  EXPECT_EQ(err_.str(), "The server refused: that code is not right\n");
  EXPECT_FALSE(fs::exists(folder_ / "servers.json"));
}

TEST_F(RunTest, SaysThatNobodyAnswers) {
  knownServer().stop();
  for (const std::vector<std::string>& arguments :
       {std::vector<std::string>{"events"}, {"show"}, {"watch"}, {"invite"}, {"plan"}, {"export", "-"}}) {
    EXPECT_EQ(program(arguments), kUnreachable) << arguments[0];
    EXPECT_THAT(err_.str(), StartsWith("No answer from the server: "));
  }
  EXPECT_EQ(program({"events", "--json"}), kUnreachable);
  EXPECT_EQ(nlohmann::json::parse(out_.str())["error"]["code"], "UNAVAILABLE");
}

TEST_F(RunTest, SaysThatTheServerDoesNotKnowThisDevice) {
  knownServer();
  answers_.status = {grpc::StatusCode::UNAUTHENTICATED, "this device was signed out"};
  EXPECT_EQ(program({"events"}), kRefused);
  EXPECT_EQ(err_.str(), "The server refused: this device was signed out\n");
}

TEST_F(RunTest, SaysThatNoHouseholdIsKnown) {
  EXPECT_EQ(program({"events"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("join one first"));
  knownServer();
  EXPECT_EQ(program({"events", "--server", "cabin"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("No household is saved as cabin; known are: home"));
}

TEST_F(RunTest, ListsEvents) {
  knownServer();
  EXPECT_EQ(program({"events"}), kOk);
  EXPECT_EQ(out_.str(),
            "First served                 Event                   Dishes  Guests  For --event\n"
            "Saturday 20 June 2026 19:00  Midsummer supper        2       0       e1\n");
}

TEST_F(RunTest, ImportsIntoTheHousehold) {
  knownServer();
  EXPECT_EQ(program({"import", bundleFile()}), kOk);
  EXPECT_EQ(out_.str(), "Imported 1 event and 3 recipes.\n");
  EXPECT_TRUE(answers_.wasImported);
  EXPECT_EQ(answers_.imported.household_id(), "h1");
}

TEST_F(RunTest, ExportsWhatCanBeImportedAgain) {
  knownServer();
  const std::string path = (folder_ / "out.json").string();
  EXPECT_EQ(program({"export", path}), kOk);
  EXPECT_EQ(program({"import", path}), kOk);
  EXPECT_EQ(answers_.imported.bundle().SerializeAsString(), sampleBundle().SerializeAsString());
}

TEST_F(RunTest, ShowsThePlanOfTheOnlyEvent) {
  knownServer();
  EXPECT_EQ(program({"show"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("Midsummer supper has no plan yet"));
  *answers_.bundle.add_plans() = samplePlan();
  EXPECT_EQ(program({"show", "--cook", "Zoe"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("Nobody is called Zoe; there are: Ana and Benoît"));
  EXPECT_EQ(program({"show", "--cook", "benoît"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("Run sheet of Benoît"));
  EXPECT_EQ(program({"show", "--ovens"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("Large oven"));
  EXPECT_THAT(out_.str(), Not(HasSubstr("Run sheet")));
}

TEST_F(RunTest, SaysThatAPlanIsOutOfDate) {
  knownServer();
  v1::Plan plan = samplePlan();
  (*plan.mutable_input_etags())["recipe/r-rye"] = "old";
  *answers_.bundle.add_plans() = plan;
  answers_.bundle.mutable_recipes(0)->mutable_meta()->set_etag("new");
  EXPECT_EQ(program({"show"}), kOk);
  EXPECT_THAT(out_.str(),
              StartsWith("THIS PLAN IS OUT OF DATE\nChanged since it was made: the recipe Rye loaf."));
}

TEST_F(RunTest, InvitesSomebody) {
  knownServer();
  EXPECT_EQ(program({"invite", "--role", "reader", "--days", "3"}), kOk);
  EXPECT_EQ(answers_.invited.role(), v1::ROLE_READER);
  EXPECT_EQ(answers_.invited.lifetime().seconds(), 3 * 86400);
  EXPECT_THAT(out_.str(),
              StartsWith("Invitation code: ABCD-EFGH\nGood once, as reader, until Saturday 20 June 19:00."));
  EXPECT_EQ(program({"invite", "--for", "Zoe"}), kBadInput);
}

TEST_F(RunTest, WatchesWhoChangesWhat) {
  knownServer();
  v1::WatchResponse snapshot;
  *snapshot.mutable_snapshot()->add_documents()->mutable_household() = sampleBundle().household();
  v1::WatchResponse start;
  start.mutable_bookmark()->set_revision(4);
  v1::WatchResponse change;
  change.mutable_changes()->set_revision(5);
  change.mutable_changes()->set_member_id("ben");
  *change.mutable_changes()->add_changes()->mutable_event() = sampleBundle().events(0);
  answers_.stream = {snapshot, start, change};
  EXPECT_EQ(program({"watch", "--changes", "1"}), kOk);
  EXPECT_THAT(out_.str(), StartsWith("Watching Calçada 9."));
  EXPECT_THAT(out_.str(), HasSubstr("  Benoît added the event Midsummer supper.\n"));
  EXPECT_EQ(program({"watch", "--changes", "1", "--json"}), kOk);
  const auto json = nlohmann::json::parse(out_.str());
  EXPECT_EQ(json["member"], "Benoît");
  EXPECT_EQ(json["revision"], 5);
}

TEST_F(RunTest, FitsAnOvenFromATable) {
  answers_.fit.mutable_before()->set_heat_minutes(16);
  answers_.fit.mutable_after()->set_heat_minutes(24);
  const std::string table = file("readings.csv", "heating,0,20\nheating,5,96\nheating,12,182\n");
  EXPECT_EQ(program({"oven", "fit", table, "--highest", "275"}), kOk) << err_.str();
  EXPECT_EQ(answers_.fitted.oven().heat_curve().heating_size(), 3);
  EXPECT_EQ(answers_.fitted.oven().max_setpoint_celsius(), 275);
  EXPECT_THAT(out_.str(), HasSubstr("24.0 min"));
  EXPECT_EQ(program({"oven", "fit", table, "--json"}), kOk);
  EXPECT_EQ(nlohmann::json::parse(out_.str())["after"]["heatMinutes"], 24);
}

TEST_F(RunTest, ToldReadingsAreRefusedByTheirLine) {
  v1::FieldViolation wrong;
  wrong.set_field_path("oven.heatCurve.heating[1]");
  wrong.set_value("15 °C after 5 min");
  wrong.set_description("is not above the one before");
  answers_.violations = {wrong};
  const std::string table = file("readings.csv", "heating,0,20\n\nheating,5,15\nheating,12,182\n");
  EXPECT_EQ(program({"oven", "fit", table}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("line 3: 15 °C after 5 min"));
  answers_.violations.clear();
  EXPECT_EQ(program({"oven", "fit", file("bad.csv", "grill,1,2\n")}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("line 1: grill"));
}

TEST_F(RunTest, FitsAnOvenOfTheHouseholdOrOfABundle) {
  knownServer();
  const std::string oven = answers_.bundle.kitchens(0).ovens(0).id();
  EXPECT_EQ(program({"oven", "fit", "--oven", oven}), kOk) << err_.str();
  EXPECT_EQ(answers_.fitted.oven().id(), oven);
  EXPECT_EQ(program({"oven", "fit", bundleFile(), "--oven", oven}), kOk) << err_.str();
  EXPECT_EQ(program({"oven", "fit", "--oven", "tandoor"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("There is no oven tandoor"));
}

TEST_F(RunTest, ReplansAFileWithWhatWasSaid) {
  const std::string plan = file("plan.json", jsonOf(samplePlan()));
  v1::Bundle bundle = sampleBundle();
  bundle.mutable_events(0)->add_cooks()->set_member_id("ben");
  answers_.nothingMoves = true;
  EXPECT_EQ(program({"replan", file("cooks.json", jsonOf(bundle)), plan, "--at", "16:30", "--late", "20",
                     "gratin/bake", "--without-cook", "ben", "--broken", "big"}),
            kOk)
      << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("Nothing needs to move: the plan still fits."));
  const v1::ReplanRequest& asked = answers_.replanned;
  EXPECT_TRUE(asked.validate_only());
  EXPECT_EQ(asked.plan().steps_size(), samplePlan().steps_size());
  EXPECT_EQ(asked.now().seconds(), at("2026-06-20T16:30:00+01:00").seconds());
  ASSERT_EQ(asked.reports_size(), 1);
  EXPECT_EQ(asked.reports(0).delayed_by().seconds(), 1200);
  EXPECT_EQ(asked.reports(0).step_id(), "bake");
  ASSERT_EQ(asked.event().unavailable_size(), 1);
  EXPECT_EQ(asked.event().unavailable(0).thing_id(), "big");
  bool gone = false;
  for (const v1::EventCook& cook : asked.event().cooks())
    if (cook.member_id() == "ben")
      for (const v1::TimeSpan& span : cook.available())
        gone = span.limit().seconds() <= asked.now().seconds();
  EXPECT_TRUE(gone);
}

TEST_F(RunTest, ReplanRefusesWhatIsNotThere) {
  const std::string plan = file("plan.json", jsonOf(samplePlan()));
  EXPECT_EQ(program({"replan", bundleFile(), plan, "--late", "20", "rye/none"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("There is no step rye/none"));
  EXPECT_EQ(program({"replan", bundleFile(), plan, "--without-cook", "Zoe"}), kBadInput);
  EXPECT_EQ(program({"replan", bundleFile(), plan, "--at", "soon"}), kBadInput);
  EXPECT_EQ(program({"replan", bundleFile()}), kBadInput);
}

TEST_F(RunTest, TellsWhyAStepLiesWhereItDoes) {
  knownServer();
  *answers_.explanation.mutable_step() = samplePlan().steps(0);
  answers_.bundle.add_plans()->CopyFrom(samplePlan());
  EXPECT_EQ(program({"why", answers_.bundle.events(0).id(), "rye/feed", "--earlier", "30"}), kOk);
  EXPECT_EQ(answers_.explained.step_id(), "rye/feed");
  EXPECT_EQ(answers_.explained.shift_duration().seconds(), -1800);
  EXPECT_THAT(out_.str(), HasSubstr("Why there: "));
}

}  // namespace
}  // namespace suppertide::terminal
