#include "server/service/access.h"

#include <google/protobuf/descriptor.h>
#include <grpcpp/generic/generic_stub.h>
#include <gtest/gtest.h>

#include <set>

#include "suppertide/v1/bread_service.pb.h"
#include "suppertide/v1/calendar_service.pb.h"
#include "suppertide/v1/kitchen_service.pb.h"
#include "suppertide/v1/menu_service.pb.h"
#include "suppertide/v1/reminder_service.pb.h"
#include "suppertide/v1/review_service.pb.h"
#include "suppertide/v1/shopping_service.pb.h"
#include "suppertide/v1/starter_service.pb.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

std::set<std::string> everyMethod() {
  std::set<std::string> methods;
  for (const auto* file :
       {v1::CreateHouseholdRequest::descriptor()->file(), v1::GetKitchenRequest::descriptor()->file(),
        v1::GetStarterRequest::descriptor()->file(), v1::GetRecipeRequest::descriptor()->file(),
        v1::GetEventRequest::descriptor()->file(), v1::MakePlanRequest::descriptor()->file(),
        v1::GetProgressRequest::descriptor()->file(), v1::WatchRequest::descriptor()->file(),
        v1::FitDoughRequest::descriptor()->file(), v1::CheckMenuRequest::descriptor()->file(),
        v1::EditShoppingRequest::descriptor()->file(), v1::ListRemindersRequest::descriptor()->file(),
        v1::ExportCalendarRequest::descriptor()->file(), v1::GetReviewRequest::descriptor()->file()})
    for (int m = 0; m < file->service(0)->method_count(); ++m)
      methods.insert(file->service(0)->name() + "/" + file->service(0)->method(m)->name());
  return methods;
}

// The status of an empty request to any method.
grpc::StatusCode call(Served& served, std::string_view method, const std::string& token) {
  const auto context = with(token);
  grpc::CompletionQueue queue;
  grpc::GenericStub stub(served.channel());
  const grpc::Slice nothing("");
  const grpc::ByteBuffer empty(&nothing, 1);
  auto reader = stub.PrepareUnaryCall(context.get(), "/suppertide.v1." + std::string(method), empty, &queue);
  reader->StartCall();
  grpc::ByteBuffer answer;
  grpc::Status status;
  reader->Finish(&answer, &status, nullptr);
  void* tag = nullptr;
  bool ok = false;
  queue.Next(&tag, &ok);
  return status.error_code();
}

bool servedNow(std::string_view method) {
  return method != "PlanService/FindRemedies";
}

// Until somebody ends it, when allowed.
bool staysOpen(std::string_view method) {
  return method == "SyncService/Watch" || method == "ReminderService/WatchReminders";
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
    if (!servedNow(row.method) || row.least == v1::ROLE_UNSPECIFIED) continue;
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
    if (!servedNow(row.method) || staysOpen(row.method)) continue;
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
