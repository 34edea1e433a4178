#include "client/link/edit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "client/link/any_write.h"
#include "client/link/pending.h"
#include "suppertide/v1/event_service.pb.h"
#include "suppertide/v1/household_service.pb.h"
#include "suppertide/v1/kitchen_service.pb.h"
#include "suppertide/v1/plan_service.pb.h"
#include "suppertide/v1/progress_service.pb.h"
#include "suppertide/v1/recipe_service.pb.h"
#include "suppertide/v1/shopping_service.pb.h"

namespace suppertide::link {
namespace {

using ::testing::IsEmpty;
using ::testing::SizeIs;

Replica household() {
  Replica replica;
  replica.revision = 7;
  replica.household.set_id("h1");
  replica.household.set_display_name("Mill");
  replica.events["e1"].set_id("e1");
  v1::Recipe& rolls = replica.recipes["rolls"];
  rolls.set_id("rolls");
  rolls.set_display_name("Rolls");
  rolls.set_serving_count(8);
  rolls.mutable_meta()->set_etag("1");
  return replica;
}

v1::AddReportsRequest finished(const std::string& reportId) {
  v1::AddReportsRequest request;
  request.set_event_id("e1");
  v1::Report& report = *request.add_reports();
  report.set_id(reportId);
  report.set_dish_id("d");
  report.set_finished(true);
  return request;
}

v1::UpdateRecipeRequest renamed(const std::string& name) {
  v1::UpdateRecipeRequest request;
  request.mutable_recipe()->set_id("rolls");
  request.mutable_recipe()->set_display_name(name);
  request.mutable_recipe()->mutable_meta()->set_etag("1");
  request.mutable_update_mask()->add_paths("display_name");
  return request;
}

TEST(EditTest, ReadsRequestsByTheirKind) {
  const Edit update = readEdit(renamed("Buns"));
  EXPECT_EQ(update.act, Edit::Act::kUpdate);
  EXPECT_EQ(update.kind, "recipe");
  EXPECT_EQ(update.id, "rolls");
  EXPECT_EQ(update.etag, "1");
  v1::DeleteKitchenRequest deletes;
  deletes.set_kitchen_id("k");
  EXPECT_EQ(readEdit(deletes).act, Edit::Act::kDelete);
  EXPECT_EQ(readEdit(deletes).id, "k");
  EXPECT_EQ(readEdit(v1::UpdateHouseholdRequest()).kind, "household");
  EXPECT_EQ(readEdit(v1::StopPlanningRequest()).act, Edit::Act::kOther);
  EXPECT_EQ(readEdit(v1::CreateHouseholdRequest()).act, Edit::Act::kCreate);
}

TEST(EditTest, ForeseesAReportAndWhoseItIs) {
  Replica replica = household();
  foresee(finished("a"), "ana", replica);
  foresee(finished("a"), "ana", replica);
  ASSERT_THAT(replica.progresses.at("e1").reports(), SizeIs(1)) << "the same report counts once";
  EXPECT_EQ(replica.progresses.at("e1").reports(0).member_id(), "ana");
}

TEST(EditTest, ForeseesAnUpdateOfTheFieldsOfTheMaskAlone) {
  Replica replica = household();
  foresee(renamed("Buns"), "ana", replica);
  EXPECT_EQ(replica.recipes.at("rolls").display_name(), "Buns");
  EXPECT_EQ(replica.recipes.at("rolls").serving_count(), 8);
  v1::UpdateRecipeRequest whole = renamed("Knots");
  whole.clear_update_mask();
  foresee(whole, "ana", replica);
  EXPECT_EQ(replica.recipes.at("rolls").display_name(), "Knots");
  EXPECT_EQ(replica.recipes.at("rolls").serving_count(), 0)
      << "without a mask the whole document is replaced";
  EXPECT_EQ(replica.recipes.at("rolls").meta().etag(), "1");
}

TEST(EditTest, ForeseesWhatIsMadeAndRemoved) {
  Replica replica = household();
  v1::CreateRecipeRequest creates;
  creates.mutable_recipe()->set_display_name("Soup");
  fillIds(creates, "h1");
  EXPECT_FALSE(creates.recipe().id().empty()) << "named here, so that it can be changed before it is sent";
  EXPECT_EQ(creates.household_id(), "h1");
  foresee(creates, "ana", replica);
  EXPECT_EQ(replica.recipes.at(creates.recipe().id()).display_name(), "Soup");
  v1::DeleteRecipeRequest deletes;
  deletes.set_recipe_id("rolls");
  foresee(deletes, "ana", replica);
  EXPECT_EQ(replica.recipes.count("rolls"), 0U);
}

TEST(EditTest, ForeseesTicksAndTakesThemBack) {
  Replica replica = household();
  v1::EditShoppingRequest ticks;
  ticks.set_event_id("e1");
  ticks.add_edits()->mutable_tick()->set_item_id("butter:g");
  const auto back = inverseOf(ticks, replica);
  foresee(ticks, "ana", replica);
  ASSERT_THAT(replica.shoppings.at("e1").ticks(), SizeIs(1));
  EXPECT_EQ(replica.shoppings.at("e1").ticks(0).member_id(), "ana");
  ASSERT_NE(back, nullptr);
  foresee(*back, "ana", replica);
  EXPECT_THAT(replica.shoppings.at("e1").ticks(), IsEmpty());
}

v1::EditShoppingRequest shoppingEdit(const std::function<void(v1::ShoppingEdit&)>& make) {
  v1::EditShoppingRequest request;
  request.set_event_id("e1");
  make(*request.add_edits());
  return request;
}

TEST(EditTest, ForeseesWhoBuysWhatIsAtHandAndOwnLinesAndTakesThemBack) {
  Replica before = household();
  v1::Shopping& noted = before.shoppings["e1"];
  noted.set_id("e1");
  v1::Buyer& ana = *noted.add_buyers();
  ana.set_member_id("ana");
  ana.add_sections(v1::SHOP_SECTION_PRODUCE);
  ana.add_item_ids("salt:g");
  v1::AtHand& butter = *noted.add_at_hand();
  butter.set_name("butter");
  butter.mutable_amount()->set_mass_g(100);
  const std::vector<v1::EditShoppingRequest> all = {
      shoppingEdit([](v1::ShoppingEdit& edit) {
        edit.mutable_buyer()->set_member_id("rui");
        edit.mutable_buyer()->add_item_ids("salt:g");
        edit.mutable_buyer()->add_sections(v1::SHOP_SECTION_PRODUCE);
      }),
      shoppingEdit([](v1::ShoppingEdit& edit) { edit.set_no_buyer_member_id("ana"); }),
      shoppingEdit([](v1::ShoppingEdit& edit) {
        edit.mutable_at_hand()->set_name("Butter");
        edit.mutable_at_hand()->mutable_amount()->set_mass_g(250);
      }),
      shoppingEdit([](v1::ShoppingEdit& edit) { edit.set_not_at_hand_name("butter"); }),
      shoppingEdit([](v1::ShoppingEdit& edit) {
        edit.mutable_own_item()->set_id("c");
        edit.mutable_own_item()->set_name("12 candles");
      })};
  for (const v1::EditShoppingRequest& request : all) {
    Replica replica = before;
    foresee(request, "ana", replica);
    EXPECT_NE(replica.shoppings.at("e1").SerializeAsString(), noted.SerializeAsString())
        << request.ShortDebugString();
    const auto back = inverseOf(request, before);
    ASSERT_NE(back, nullptr);
    foresee(*back, "ana", replica);
    EXPECT_EQ(replica.shoppings.at("e1").SerializeAsString(), noted.SerializeAsString())
        << request.ShortDebugString() << back->ShortDebugString();
  }
  Replica taken = before;
  foresee(all[0], "ana", taken);
  ASSERT_THAT(taken.shoppings.at("e1").buyers(), SizeIs(1)) << "who has nothing left buys nothing";
  EXPECT_EQ(taken.shoppings.at("e1").buyers(0).member_id(), "rui");
}

TEST(EditTest, WhatTakesAChangeBackLeadsToWhatWasBefore) {
  const Replica before = household();
  v1::DeleteRecipeRequest deletes;
  deletes.set_recipe_id("rolls");
  v1::CreateRecipeRequest creates;
  creates.mutable_recipe()->set_id("soup");
  const v1::UpdateRecipeRequest updates = renamed("Buns");
  for (const google::protobuf::Message* request : {static_cast<const google::protobuf::Message*>(&deletes),
                                                   static_cast<const google::protobuf::Message*>(&creates),
                                                   static_cast<const google::protobuf::Message*>(&updates)}) {
    Replica replica = before;
    foresee(*request, "ana", replica);
    const auto back = inverseOf(*request, before);
    ASSERT_NE(back, nullptr) << request->GetTypeName();
    foresee(*back, "ana", replica);
    ASSERT_THAT(replica.recipes, SizeIs(1)) << request->GetTypeName();
    EXPECT_EQ(replica.recipes.at("rolls").display_name(), "Rolls");
    EXPECT_EQ(replica.recipes.at("rolls").serving_count(), 8);
  }
}

TEST(EditTest, AReportIsTakenBackByItsId) {
  const auto back = inverseOf(finished("a"), household());
  ASSERT_NE(back, nullptr);
  const auto& reports = static_cast<const v1::AddReportsRequest&>(*back);
  ASSERT_THAT(reports.reports(), SizeIs(1));
  EXPECT_EQ(reports.reports(0).undone_report_id(), "a");
  EXPECT_EQ(inverseOf(*back, household()), nullptr) << "what was taken back stays taken back";
}

TEST(PendingTest, ShowsWhatWaitsUntilTheReplicaHasIt) {
  Pending pending;
  auto replica = std::make_shared<const Replica>(household());
  EXPECT_EQ(pending.over(replica, "ana"), replica);
  pending.add(1, std::make_shared<v1::UpdateRecipeRequest>(renamed("Buns")));
  pending.add(2, std::make_shared<v1::AddReportsRequest>(finished("a")));
  EXPECT_EQ(pending.waitingCount(), 2);
  EXPECT_TRUE(pending.waits("rolls"));
  EXPECT_TRUE(pending.waits("a"));
  EXPECT_EQ(pending.over(replica, "ana")->recipes.at("rolls").display_name(), "Buns");
  EXPECT_EQ(replica->recipes.at("rolls").display_name(), "Rolls") << "what the server told is untouched";

  auto answer = std::make_shared<v1::WriteRecipeResponse>();
  *answer->mutable_recipe() = replica->recipes.at("rolls");
  answer->mutable_recipe()->set_display_name("Buns");
  answer->mutable_recipe()->mutable_meta()->set_etag("2");
  answer->set_revision(8);
  pending.taken(1, answer);
  EXPECT_EQ(pending.waitingCount(), 1);
  EXPECT_FALSE(pending.waits("rolls"));
  const auto shown = pending.over(replica, "ana");
  EXPECT_EQ(shown->recipes.at("rolls").meta().etag(), "2") << "an edit now is made from the answered version";

  Replica newer = household();
  newer.revision = 8;
  newer.recipes.at("rolls").set_display_name("Ana's buns");
  const auto told = std::make_shared<const Replica>(newer);
  EXPECT_EQ(pending.over(told, "ana")->recipes.at("rolls").display_name(), "Ana's buns")
      << "once the replica is as new as the answer, it is what counts";
  pending.drop(2);
  EXPECT_EQ(pending.over(told, "ana"), told);
}

}  // namespace
}  // namespace suppertide::link
