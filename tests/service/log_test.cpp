// What the log tells of calls, and what it never tells.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <spdlog/sinks/ostream_sink.h>
#include <spdlog/spdlog.h>

#include <sstream>

#include "tests/service/served.h"

namespace suppertide::service {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

// The program's log, caught while this lives.
class CaughtLog {
 public:
  CaughtLog() {
    auto log = std::make_shared<spdlog::logger>(
        "suppertide", std::make_shared<spdlog::sinks::ostream_sink_mt>(lines_, true));
    log->set_level(spdlog::level::trace);
    spdlog::register_logger(log);
  }
  ~CaughtLog() { spdlog::drop("suppertide"); }
  std::string text() const { return lines_.str(); }

 private:
  std::ostringstream lines_;
};

TEST(LogTest, TellsTheCallItsOutcomeItsRequestAndItsHousehold) {
  CaughtLog log;
  std::string household;
  {
    Served served;
    served.found();
    household = served.household;
    v1::WhoAmIResponse who;
    const auto context = with("not a token");
    v1::HouseholdService::NewStub(served.channel())->WhoAmI(context.get(), {}, &who);
    v1::ImportBundleRequest asked;
    asked.set_household_id(household);
    asked.set_request_id("the-request");
    v1::ImportBundleResponse answer;
    const auto second = with(served.token);
    importBundle(*v1::HouseholdService::NewStub(served.channel()), *second, asked, &answer);
  }
  EXPECT_THAT(log.text(), HasSubstr("event=call method=HouseholdService/WhoAmI code=16"));
  EXPECT_THAT(log.text(), HasSubstr("method=HouseholdService/ImportBundle code=3"));
  EXPECT_THAT(log.text(), HasSubstr("request=the-request household=" + household));
}

TEST(LogTest, TellsNoCodeTokenNameOrContent) {
  CaughtLog log;
  std::vector<std::string> secrets = {"Ana", "Harbour Lane", "AAAA-BBBB-CCCC", "a-wrong-token", "gratin"};
  {
    Served served;
    secrets.push_back(served.server().hostCode());
    served.found();
    served.importDinner();
    secrets.push_back(served.token);
    secrets.push_back(served.invite(v1::ROLE_COOK));
    const auto stub = v1::HouseholdService::NewStub(served.channel());
    v1::JoinHouseholdRequest join;
    join.set_code("AAAA-BBBB-CCCC");
    join.set_display_name("Ana");
    join.set_request_id("AAAA-BBBB-CCCC and more\nevent=forged");  // no id, so not told
    v1::JoinHouseholdResponse joined;
    const auto first = with("a-wrong-token");
    stub->JoinHousehold(first.get(), join, &joined);
    v1::WhoAmIResponse who;
    const auto second = with("a-wrong-token");
    stub->WhoAmI(second.get(), {}, &who);
    v1::CreateInvitationRequest asked;
    asked.set_household_id(served.household);
    asked.set_role(v1::ROLE_COOK);
    asked.set_request_id(freshRequest());
    v1::CreateInvitationResponse invitation;
    const auto third = with(served.token);
    ASSERT_TRUE(stub->CreateInvitation(third.get(), asked, &invitation).ok());
    secrets.push_back(invitation.code());
  }
  ASSERT_THAT(log.text(), HasSubstr("method=HouseholdService/JoinHousehold"));
  EXPECT_THAT(log.text(), Not(HasSubstr("forged")));
  for (const std::string& secret : secrets) {
    ASSERT_FALSE(secret.empty());
    EXPECT_THAT(log.text(), Not(HasSubstr(secret)));
  }
}

}  // namespace
}  // namespace suppertide::service
