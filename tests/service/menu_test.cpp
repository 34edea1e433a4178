// Lines of recipes, the guests' table and the shopping list over the wire.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "suppertide/v1/menu_service.grpc.pb.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class MenuServiceTest : public testing::Test {
 protected:
  MenuServiceTest() {
    served_.found();
    served_.importDinner();
    stub_ = v1::MenuService::NewStub(served_.channel());
    auto context = with(served_.token);
    v1::GetEventRequest get;
    get.set_household_id(served_.household);
    get.set_event_id("supper");
    EXPECT_TRUE(v1::EventService::NewStub(served_.channel())->GetEvent(context.get(), get, &event_).ok());
  }

  v1::CheckMenuRequest check() const {
    v1::CheckMenuRequest request;
    request.set_household_id(served_.household);
    request.set_event_id("supper");
    return request;
  }
  v1::MakeShoppingListRequest shopping() const {
    v1::MakeShoppingListRequest request;
    request.set_household_id(served_.household);
    request.set_event_id("supper");
    return request;
  }
  std::vector<std::string> violations(const grpc::ClientContext& context) const {
    const auto& trailers = context.GetServerTrailingMetadata();
    const auto found = trailers.find("suppertide-error-bin");
    std::vector<std::string> paths;
    v1::ErrorDetail detail;
    if (found != trailers.end() &&
        detail.ParseFromString(std::string(found->second.data(), found->second.size())))
      for (const auto& violation : detail.violations()) paths.push_back(violation.field_path());
    return paths;
  }

  Served served_;
  std::unique_ptr<v1::MenuService::Stub> stub_;
  v1::Event event_;
};

TEST_F(MenuServiceTest, ReadsLinesWithWhatIsUnsureMarked) {
  v1::ParseIngredientsRequest request;
  request.set_household_id(served_.household);
  request.set_measures(v1::KITCHEN_MEASURES_US);
  request.add_lines("2 1/4 cups flour, sifted");
  request.add_lines("a pinch of salt");
  request.add_lines("");
  auto context = with(served_.token);
  v1::ParseIngredientsResponse answer;
  ASSERT_TRUE(stub_->ParseIngredients(context.get(), request, &answer).ok());
  ASSERT_EQ(answer.ingredients_size(), 3);
  EXPECT_EQ(answer.ingredients(0).ingredient(), "all-purpose flour");
  EXPECT_NEAR(answer.ingredients(0).mass_g(), 281.25, 1e-9);
  EXPECT_THAT(answer.ingredients(0).contains(), ElementsAre("wheat"));
  EXPECT_FALSE(answer.ingredients(1).has_mass_g());
  EXPECT_EQ(answer.ingredients(1).doubts(0), v1::LINE_DOUBT_VAGUE_AMOUNT);
  EXPECT_EQ(answer.ingredients(2).doubts(0), v1::LINE_DOUBT_EMPTY);
}

TEST_F(MenuServiceTest, ListsEveryFieldAtFault) {
  v1::ParseIngredientsRequest request;
  request.set_household_id(served_.household);
  request.add_lines(std::string(301, 'x'));
  request.set_measures(static_cast<v1::KitchenMeasures>(99));
  auto context = with(served_.token);
  v1::ParseIngredientsResponse answer;
  EXPECT_EQ(stub_->ParseIngredients(context.get(), request, &answer).error_code(),
            grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(*context), ElementsAre("measures", "lines[0]"));

  v1::MakeShoppingListRequest list = shopping();
  list.add_at_hand()->set_name("eggs");
  list.add_buyers()->set_member_id("nobody");
  context = with(served_.token);
  v1::MakeShoppingListResponse bought;
  EXPECT_EQ(stub_->MakeShoppingList(context.get(), list, &bought).error_code(),
            grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(*context), ElementsAre("atHand[0].amount", "buyers[0].memberId"));
}

TEST_F(MenuServiceTest, TellsForEachGuestAndCourseWhatSuits) {
  *event_.mutable_guests() = {};
  v1::Guest& guest = *event_.add_guests();
  guest.set_id("ruta");
  guest.set_display_name("Ruta");
  v1::Need& need = *guest.add_needs();
  need.set_name("vegan");
  need.set_severity(v1::NEED_SEVERITY_AVOID);
  v1::CheckMenuRequest request = check();
  *request.mutable_event() = event_;
  auto context = with(served_.token);
  v1::CheckMenuResponse answer;
  const grpc::Status status = stub_->CheckMenu(context.get(), request, &answer);
  ASSERT_TRUE(status.ok()) << status.error_message();
  ASSERT_EQ(answer.cells_size(), event_.courses_size());
  EXPECT_EQ(answer.cells(0).guest_id(), "ruta");
  int dishes = 0;
  for (const auto& cell : answer.cells()) {
    dishes += cell.dishes_size();
    for (const auto& dish : cell.dishes())
      EXPECT_EQ(dish.fit() == v1::DISH_FIT_SUITS, dish.reasons().empty()) << dish.dish_id();
  }
  EXPECT_EQ(dishes, event_.dishes_size());
}

TEST_F(MenuServiceTest, RefusesAChangedEventThatCannotBe) {
  v1::CheckMenuRequest request = check();
  *request.mutable_event() = event_;
  request.mutable_event()->mutable_dishes(0)->set_recipe_id("no-such-recipe");
  auto context = with(served_.token);
  v1::CheckMenuResponse answer;
  EXPECT_EQ(stub_->CheckMenu(context.get(), request, &answer).error_code(),
            grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(*context), ElementsAre("event.dishes[0].recipeId"));
  request = check();
  request.set_event_id("no-such-event");
  context = with(served_.token);
  EXPECT_EQ(stub_->CheckMenu(context.get(), request, &answer).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST_F(MenuServiceTest, ListsWhatToBuyAndWhatAChangedMenuBuys) {
  v1::MakeShoppingListRequest request = shopping();
  auto context = with(served_.token);
  v1::MakeShoppingListResponse answer;
  ASSERT_TRUE(stub_->MakeShoppingList(context.get(), request, &answer).ok());
  ASSERT_GT(answer.items_size(), 0);
  EXPECT_THAT(answer.changes(), IsEmpty());
  for (int i = 1; i < answer.items_size(); ++i)
    EXPECT_LE(answer.items(i - 1).needed_date(), answer.items(i).needed_date());

  *request.mutable_event() = event_;
  request.mutable_event()->mutable_dishes(0)->set_serving_count(60);
  context = with(served_.token);
  v1::MakeShoppingListResponse more;
  ASSERT_TRUE(stub_->MakeShoppingList(context.get(), request, &more).ok());
  EXPECT_GT(more.changes_size(), 0);
  for (const auto& change : more.changes()) {
    EXPECT_TRUE(change.has_before() && change.has_after());
    if (!change.after().has_mass_g() || change.after().mass_g() < 10) continue;
    EXPECT_NEAR(std::remainder(change.after().mass_g(), 5), 0, 1e-6)
        << "as the list tells it: " << change.name();
  }
}

TEST_F(MenuServiceTest, TellsPortionsAndWhoBuysWhat) {
  v1::CheckMenuRequest asked = check();
  auto context = with(served_.token);
  v1::CheckMenuResponse checked;
  ASSERT_TRUE(stub_->CheckMenu(context.get(), asked, &checked).ok());
  ASSERT_EQ(checked.portions_size(), event_.dishes_size());
  EXPECT_EQ(checked.portions(0).eaten_servings(), 8);
  EXPECT_EQ(checked.portions(0).guides(0).name(), "rolls");

  v1::MakeShoppingListRequest list = shopping();
  list.add_buyers()->set_member_id("ana");
  v1::Buyer& rui = *list.add_buyers();
  rui.set_member_id("rui");
  rui.add_sections(v1::SHOP_SECTION_DAIRY_EGGS);
  context = with(served_.token);
  v1::MakeShoppingListResponse bought;
  ASSERT_TRUE(stub_->MakeShoppingList(context.get(), list, &bought).ok());
  for (const auto& item : bought.items())
    EXPECT_EQ(item.buyer_member_id(), item.section() == v1::SHOP_SECTION_DAIRY_EGGS ? "rui" : "ana")
        << item.name();
  rui.add_sections(v1::SHOP_SECTION_DAIRY_EGGS);
  context = with(served_.token);
  EXPECT_EQ(stub_->MakeShoppingList(context.get(), list, &bought).error_code(),
            grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(*context), ElementsAre("buyers[1].sections[1]"));
}

TEST_F(MenuServiceTest, ScalesARecipeAndListsEveryFieldAtFault) {
  v1::ScaleRecipeRequest request;
  request.set_household_id(served_.household);
  request.set_recipe_id("rolls");
  request.set_serving_count(16);
  request.set_kitchen_id("k");
  auto context = with(served_.token);
  v1::ScaledRecipe scaled;
  ASSERT_TRUE(stub_->ScaleRecipe(context.get(), request, &scaled).ok());
  EXPECT_EQ(scaled.piece_count(), 32);
  EXPECT_EQ(scaled.bakes(0).ovens(0).load_count(), 1);

  request.set_serving_count(-1);
  request.set_kitchen_id("elsewhere");
  request.set_piece_mass_g(5);
  context = with(served_.token);
  EXPECT_EQ(stub_->ScaleRecipe(context.get(), request, &scaled).error_code(),
            grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(*context), ElementsAre("servingCount", "pieceMassG", "pieceMassG", "kitchenId"));

  request.set_recipe_id("no-such-recipe");
  context = with(served_.token);
  EXPECT_EQ(stub_->ScaleRecipe(context.get(), request, &scaled).error_code(), grpc::StatusCode::NOT_FOUND);
}

TEST_F(MenuServiceTest, PutsTheRuleSetsSideBySideWithTheirSources) {
  v1::ListSafetyRulesRequest request;
  request.set_household_id(served_.household);
  auto context = with(served_.token);
  v1::ListSafetyRulesResponse answer;
  ASSERT_TRUE(stub_->ListSafetyRules(context.get(), request, &answer).ok());
  EXPECT_EQ(answer.rules(), v1::SAFETY_RULES_CONSUMER);
  int differing = 0;
  for (const v1::SafetyRule& row : answer.rows()) {
    EXPECT_GE(row.limits_size(), 2) << row.ShortDebugString();
    for (const v1::SafetyLimit& limit : row.limits())
      EXPECT_FALSE(limit.source().empty()) << row.ShortDebugString();
    differing += row.differs() ? 1 : 0;
    if (row.kind() != v1::SAFETY_LIMIT_KIND_HOT_HOLD || row.safety_class() != v1::SAFETY_CLASS_UNSPECIFIED)
      continue;
    ASSERT_EQ(row.limits_size(), 3);
    EXPECT_NEAR(row.limits(0).celsius(), 60, 1e-9);
    EXPECT_NEAR(row.limits(1).celsius(), 57.22, 0.01);
    EXPECT_NEAR(row.limits(2).celsius(), 63, 1e-9);
    EXPECT_EQ(row.limits(2).rules(), v1::SAFETY_RULES_UK);
    EXPECT_TRUE(row.differs());
  }
  EXPECT_GT(differing, 10);
}

}  // namespace
}  // namespace suppertide::service
