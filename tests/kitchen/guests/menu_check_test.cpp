#include "server/kitchen/guests/menu_check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace suppertide::kitchen {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

DishPart known(const std::string& name) {
  return {name, contentsOf(name, {}, false)};
}
MenuDish dishOf(std::vector<DishPart> parts) {
  return {"dish", "main", std::move(parts)};
}
Fit fit(const std::string& part, const std::string& need, Severity severity = Severity::kAvoid) {
  return fitOf(dishOf({known(part)}), {{need, severity}}).fit;
}

TEST(MenuCheckTest, TreatsUnknownContentsAsUnknown) {
  EXPECT_EQ(fit("mystery sauce", "egg"), Fit::kUnknown);
  EXPECT_EQ(fit("chicken stock", "celery"), Fit::kUnknown);
  EXPECT_EQ(fitOf(dishOf({}), {{"egg"}}).fit, Fit::kUnknown);
  EXPECT_EQ(fit("carrots", "egg"), Fit::kSuits);
}

TEST(MenuCheckTest, FindsWhatIsHeld) {
  EXPECT_EQ(fit("butter", "milk"), Fit::kHolds);
  EXPECT_EQ(fit("butter", "vegan"), Fit::kHolds);
  EXPECT_EQ(fit("honey", "vegan"), Fit::kHolds);
  EXPECT_EQ(fit("honey", "vegetarian"), Fit::kSuits);
  EXPECT_EQ(fit("rolled oats", "gluten"), Fit::kHolds);
  EXPECT_EQ(fit("gelatin", "vegetarian"), Fit::kHolds);
  EXPECT_EQ(fit("cheddar", "vegetarian"), Fit::kUnknown);  // its rennet
  EXPECT_EQ(fit("vanilla extract", "halal"), Fit::kHolds);
  EXPECT_EQ(fit("beef", "halal"), Fit::kAsk);
}

TEST(MenuCheckTest, KeepsTheLawListsApart) {
  EXPECT_EQ(fit("pine nuts", "US tree nuts"), Fit::kHolds);
  EXPECT_EQ(fit("pine nuts", "EU nuts"), Fit::kAsk);
  EXPECT_EQ(fit("pine nuts", "nuts"), Fit::kHolds);
  EXPECT_EQ(fit("celery", "EU celery"), Fit::kHolds);
  EXPECT_EQ(avoidanceOf("US celery").kind, NeedKind::kOwnWords);
}

TEST(MenuCheckTest, ADislikeIsNeverAnObstacle) {
  EXPECT_EQ(fit("beetroot", "beetroot", Severity::kDislike), Fit::kDisliked);
  EXPECT_EQ(fit("mystery sauce", "beetroot", Severity::kDislike), Fit::kAsk);
  EXPECT_EQ(fit("beetroot", "beetroot"), Fit::kHolds);
}

TEST(MenuCheckTest, ComparesOwnWordsByWholeWords) {
  EXPECT_EQ(fit("beet sugar", "beetroot"), Fit::kUnknown);
  EXPECT_EQ(fitOf(dishOf({{"pickled beetroots", {{}, {}, true}}}), {{"no beetroot"}}).fit, Fit::kHolds);
}

TEST(MenuCheckTest, TakesARecipesWordAndTheTablesBesides) {
  EXPECT_EQ(fitOf(dishOf({{"dry cider", contentsOf("dry cider", {}, true)}}), {{"no alcohol"}}).fit,
            Fit::kHolds);
  const DishPart oats{"oats, gluten-free", contentsOf("oats, gluten-free", {}, true)};
  EXPECT_EQ(fitOf(dishOf({oats}), {{"coeliac"}}).fit, Fit::kSuits);
  EXPECT_THAT(unsaidAllergens("butter", {}), ElementsAre("milk", "lactose"));
  EXPECT_THAT(unsaidAllergens("hazelnuts", {"tree nuts"}), IsEmpty());
  EXPECT_THAT(unsaidAllergens("strong white flour", {"gluten"}), IsEmpty());
}

TEST(MenuCheckTest, GivesATableOfGuestsAndCoursesWithWarnings) {
  const std::vector<MenuGuest> guests = {
      {"ruta", {{"vegan"}}}, {"aune", {}}, {"jo", {{"nuts", Severity::kNoTraces}}}};
  const std::vector<MenuDish> dishes = {{"cake", "sweet", {known("butter")}},
                                        {"fruit", "sweet", {known("mystery syrup")}},
                                        {"roast", "main", {known("pork")}}};
  const MenuCheck check = checkMenu(guests, {"main", "sweet"}, dishes);
  ASSERT_EQ(check.cells.size(), 6u);
  EXPECT_EQ(check.cells[0].guestId, "ruta");
  EXPECT_EQ(check.cells[0].suitingCount, 0);
  EXPECT_EQ(check.cells[3].suitingCount, 2);
  ASSERT_EQ(check.warnings.size(), 3u);
  EXPECT_EQ(check.warnings[0].kind, MenuWarningKind::kNothingToEat);
  EXPECT_EQ(check.warnings[0].courseId, "main");
  EXPECT_EQ(check.warnings[1].kind, MenuWarningKind::kContentsUnknown);
  EXPECT_EQ(check.warnings[2].kind, MenuWarningKind::kNoTraces);
}

TEST(MenuCheckTest, EverySubstanceOfTheTableIsAWordSomeNeedKnows) {
  const std::vector<std::string> rest = {"coconut", "chestnut", "honey", "alcohol"};
  const auto flesh = avoidanceOf("vegan").excluded;
  for (const Ingredient& one : ingredients())
    for (const auto* words : {&one.contents.holds, &one.contents.mayHold})
      for (const std::string& word : *words) {
        const std::string plain = plainName(word);
        const bool isKnown = !usAllergensOf(plain).empty() || !euAllergensOf(plain).empty() ||
                             std::find(rest.begin(), rest.end(), plain) != rest.end() ||
                             std::find(flesh.begin(), flesh.end(), plain) != flesh.end();
        EXPECT_TRUE(isKnown) << one.name << ": " << word;
      }
}

}  // namespace
}  // namespace suppertide::kitchen
