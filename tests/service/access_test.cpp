#include "server/service/access.h"

#include <gtest/gtest.h>

#include <set>

#include "tests/service/served.h"
#include "tests/support/raw_call.h"

namespace suppertide::service {
namespace {

std::set<std::string> everyMethod() {
  std::set<std::string> methods;
  for (const auto* call : everyCall()) methods.insert(call->service()->name() + "/" + call->name());
  return methods;
}

// Until somebody ends it, when allowed.
bool staysOpen(std::string_view method) {
  return method == "SyncService/Watch" || method == "ReminderService/WatchReminders";
}

// The status of an empty request to any method.
grpc::StatusCode call(Served& served, std::string_view method, const std::string& token) {
  const auto context = with(token);
  if (staysOpen(method))
    context->set_deadline(std::chrono::system_clock::now() + std::chrono::milliseconds(300));
  return rawCall(served.channel(), *context, "/suppertide.v1." + std::string(method), "").error_code();
}

TEST(AccessTableTest, HasEveryMethodOnce) {
  std::set<std::string> listed;
  for (const Access& row : accessTable())
    EXPECT_TRUE(listed.insert(std::string(row.method)).second) << row.method;
  EXPECT_EQ(listed, everyMethod());
}

TEST(AccessTableTest, GivesAnUnknownMethodToHostsOnly) {
  EXPECT_EQ(leastRole("X/Y"), v1::ROLE_HOST);
}

TEST(AccessTest, NothingButFoundingAndJoiningIsFree) {
  Served served;
  served.found();
  for (const Access& row : accessTable()) {
    if (row.least == v1::ROLE_UNSPECIFIED) continue;
    EXPECT_EQ(call(served, row.method, ""), grpc::StatusCode::UNAUTHENTICATED) << row.method;
    EXPECT_EQ(call(served, row.method, "not-a-token"), grpc::StatusCode::UNAUTHENTICATED) << row.method;
  }
}

TEST(AccessTest, EachRoleDoesWhatTheTableSays) {
  Served served;
  served.found();
  const std::string reader = served.invite(v1::ROLE_READER);
  const std::string cook = served.invite(v1::ROLE_COOK);
  for (const Access& row : accessTable()) {
    const auto refused = [&](const std::string& token) {
      return call(served, row.method, token) == grpc::StatusCode::PERMISSION_DENIED;
    };
    if (row.least == v1::ROLE_UNSPECIFIED) continue;
    EXPECT_EQ(refused(reader), row.least > v1::ROLE_READER) << row.method;
    EXPECT_EQ(refused(cook), row.least > v1::ROLE_COOK) << row.method;
    EXPECT_FALSE(refused(served.token)) << row.method;
  }
}

TEST(AccessTest, AnotherHouseholdIsRefusedBeforeAnythingIsLookedUp) {
  Served served;
  served.found();
  v1::GetRecipeRequest asked;
  asked.set_household_id("somebody-else");
  asked.set_recipe_id("none");
  v1::Recipe answer;
  const auto context = with(served.token);
  EXPECT_EQ(
      v1::RecipeService::NewStub(served.channel())->GetRecipe(context.get(), asked, &answer).error_code(),
      grpc::StatusCode::PERMISSION_DENIED);
}

}  // namespace
}  // namespace suppertide::service
