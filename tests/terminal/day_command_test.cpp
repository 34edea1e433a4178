// The commands of the day, by two cooks against a real server inside the test.
#include <gmock/gmock.h>
#include <google/protobuf/util/json_util.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "absl/time/clock.h"
#include "absl/time/time.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/run.h"
#include "server/embedded.h"
#include "tests/compose/small_dinner.h"
#include "tests/support/temp_dir.h"

namespace suppertide::terminal {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

class DayCommandTest : public ::testing::Test {
 protected:
  void SetUp() override { begin(v1::LIVE_CORRECTION_UNSPECIFIED); }

  // A household with the small dinner, planned; Ana and Rui have joined as its cooks.
  void begin(v1::LiveCorrection correction) {
    auto started = EmbeddedServer::start({});
    ASSERT_TRUE(started.ok()) << started.status();
    server_ = *std::move(started);
    v1::Bundle bundle = compose::smallDinner();
    bundle.mutable_events(0)->set_live_correction(correction);
    std::string text;
    ASSERT_TRUE(google::protobuf::util::MessageToJsonString(bundle, &text).ok());
    std::ofstream(dir_.file("dinner.json")) << text;
    ASSERT_EQ(as("host", {"join", server_->target(), "--host-code", server_->hostCode(), "--name", "Host",
                          "--time-zone", "Europe/Lisbon"}),
              kOk);
    ASSERT_EQ(as("host", {"import", dir_.file("dinner.json")}), kOk) << err_.str();
    for (const char* name : {"Ana", "Rui"}) {
      ASSERT_EQ(as("host", {"invite", "--role", "cook", "--for", name, "--json"}), kOk) << err_.str();
      const std::string code = nlohmann::json::parse(out_.str())["code"];
      ASSERT_EQ(as(name, {"join", server_->target(), "--code", code}), kOk) << err_.str();
    }
    ASSERT_EQ(as("host", {"plan", "--work", "3000"}), kOk) << err_.str();
  }

  int as(const std::string& who, const std::vector<std::string>& words) {
    out_.str("");
    err_.str("");
    Environment environment{.out = out_,
                            .err = err_,
                            .width = 100,
                            .credentials = dir_.file(who + ".json"),
                            .startServer = EmbeddedServer::start};
    return run(words, environment);
  }
  // So many minutes ago, as --at takes it.
  static std::string before(int minutes) {
    absl::TimeZone zone;
    EXPECT_TRUE(absl::LoadTimeZone("Europe/Lisbon", &zone));
    return absl::FormatTime("%Y-%m-%d %H:%M", absl::Now() - absl::Minutes(minutes), zone);
  }
  std::string fileText(const std::string& name) {
    std::ifstream file(dir_.file(name), std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  }

  TempDir dir_;
  std::unique_ptr<EmbeddedServer> server_;
  std::ostringstream out_;
  std::ostringstream err_;
};

TEST_F(DayCommandTest, DayShowsEachCookTheirOwnStepsInOrder) {
  ASSERT_EQ(as("Ana", {"day", "--once"}), kOk) << err_.str();
  const std::string anas = out_.str();
  ASSERT_EQ(as("Rui", {"day", "--once"}), kOk) << err_.str();
  EXPECT_NE(anas, out_.str());
  EXPECT_THAT(anas + out_.str(), HasSubstr("Season the roast"));
}

TEST_F(DayCommandTest, TellSaysWhatMovesAndADayShowsIt) {
  ASSERT_EQ(as("Ana", {"tell", "roast/season", "--late", "30"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("Season the roast"));
  ASSERT_EQ(as("Ana", {"tell", "--note", "the good knife is in the drawer"}), kOk) << err_.str();
  ASSERT_EQ(as("Ana", {"tell", "--undo", "last"}), kOk) << err_.str();
}

TEST_F(DayCommandTest, TellListsWhatIsWrongWithAReport) {
  EXPECT_EQ(as("Ana", {"tell", "roast/nothing", "--started"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("stepId"));
  EXPECT_EQ(as("Ana", {"tell", "roast/season"}), kBadInput);
  EXPECT_EQ(as("Ana", {"tell", "roast/season", "--started", "--finished"}), kBadInput);
  EXPECT_EQ(as("Ana", {"tell", "roast/season", "--started", "--at", "half past"}), kBadInput);
  EXPECT_EQ(as("Ana", {"tell", "rolls/levain", "--rise", "40"}), kBadInput);
}

TEST_F(DayCommandTest, ACorrectionWaitsForAWordWhereTheEventAsksFirst) {
  begin(v1::LIVE_CORRECTION_ASK_FIRST);
  ASSERT_EQ(as("Ana", {"correction"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("No correct"));
  ASSERT_EQ(as("Ana", {"tell", "roast/season", "--late", "45"}), kOk) << err_.str();
  ASSERT_EQ(as("host", {"correction"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("Season the roast"));
  ASSERT_EQ(as("host", {"correction", "--accept"}), kOk) << err_.str();
  ASSERT_EQ(as("host", {"correction"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), Not(HasSubstr("Season the roast")));
}

TEST_F(DayCommandTest, CalendarsAreOfEverybodyOrOfOneCook) {
  ASSERT_EQ(as("Ana", {"calendar", "export", "-"}), kOk) << err_.str();
  const std::string all = out_.str();
  EXPECT_THAT(all, StartsWith("BEGIN:VCALENDAR\r\n"));
  ASSERT_EQ(as("Ana", {"calendar", "export", "-", "--cook", "Rui"}), kOk) << err_.str();
  EXPECT_LT(out_.str().size(), all.size());
  EXPECT_EQ(as("Ana", {"calendar", "export", "-", "--cook", "Nobody"}), kBadInput);
  ASSERT_EQ(as("Ana", {"calendar", "addresses"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("No calendar program follows"));
}

TEST_F(DayCommandTest, SheetsAreWrittenForBothPapers) {
  for (const char* paper : {"a4", "letter"}) {
    ASSERT_EQ(as("Ana", {"sheet", dir_.file(paper), "--paper", paper}), kOk) << err_.str();
    EXPECT_THAT(fileText(paper), StartsWith("%PDF-"));
  }
  EXPECT_NE(fileText("a4"), fileText("letter"));
}

TEST_F(DayCommandTest, ReviewLooksBackAndALessonIsUsedWhenSomebodySaysSo) {
  begin(v1::LIVE_CORRECTION_OFF);
  EXPECT_NE(as("Ana", {"review"}), kOk) << "nothing was told";
  ASSERT_EQ(as("Ana", {"tell", "roast/season", "--started", "--at", before(80)}), kOk) << err_.str();
  ASSERT_EQ(as("Ana", {"tell", "roast/season", "--finished", "--at", before(40)}), kOk) << err_.str();
  ASSERT_EQ(as("Ana", {"review"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("--use length/roast/season"));
  ASSERT_EQ(as("Ana", {"review", "--use", "length/roast/season"}), kOk) << err_.str();
  EXPECT_THAT(out_.str(), HasSubstr("used"));
  EXPECT_EQ(as("Ana", {"review", "--use", "length/no/such"}), kBadInput);
}

TEST_F(DayCommandTest, AnEventIsCopiedToAnotherDay) {
  ASSERT_EQ(as("host", {"copy-event", "supper", "2027-06-19", "--name", "Again"}), kOk) << err_.str();
  ASSERT_EQ(as("host", {"events"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("Again"));
  EXPECT_EQ(as("host", {"copy-event", "supper", "someday"}), kBadInput);
}

}  // namespace
}  // namespace suppertide::terminal
