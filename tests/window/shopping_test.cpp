// One list from many dishes, ticked off by several people.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QtCore/qtemporarydir.h>
#include <QtTest/qabstractitemmodeltester.h>
#include <QtTest/qsignalspy.h>

#include "client/shopping/shopping_controller.h"
#include "tests/window/kitchen_sample.h"

namespace suppertide {
namespace {

using ::testing::ElementsAre;
using testing::SampleHousehold;

v1::ShoppingItem line(const char* name, v1::ShopSection section, const char* day, double grams) {
  v1::ShoppingItem item;
  item.set_id(std::string(name) + ":g");
  item.set_name(name);
  item.set_section(section);
  item.set_needed_date(day);
  item.mutable_needed()->set_mass_g(grams);
  item.mutable_to_buy()->set_mass_g(grams);
  item.set_shown(std::to_string(static_cast<int>(grams)) + " g");
  item.add_uses()->set_dish_id("soup");
  return item;
}

class ShoppingTest : public ::testing::Test {
 protected:
  ShoppingTest() {
    shopping_.setFolder({});
    shopping_.setSession(&household_.session);
    v1::MakeShoppingListResponse list;
    *list.add_items() = line("fennel", v1::SHOP_SECTION_PRODUCE, "2026-06-19", 900);
    *list.add_items() = line("cream", v1::SHOP_SECTION_DAIRY_EGGS, "2026-06-19", 200);
    *list.add_items() = line("leek", v1::SHOP_SECTION_PRODUCE, "2026-06-20", 300);
    shopping_.show(list);
  }
  void noted(const std::function<void(v1::Shopping&)>& change, const char* memberId = "noor") {
    v1::Shopping document = household_.replica.shoppings[testing::kSampleEvent];
    document.set_id(testing::kSampleEvent);
    change(document);
    household_.write(document, household_.replica.shoppings, memberId);
  }
  std::vector<std::string> column(int role) const {
    std::vector<std::string> all;
    for (int row = 0; row < shopping_.items()->rowCount(); ++row)
      all.push_back(shopping_.items()->data(shopping_.items()->index(row), role).toString().toStdString());
    return all;
  }

  SampleHousehold household_{"tomas"};
  ShoppingController shopping_;
  QAbstractItemModelTester tester_{shopping_.items(), QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(ShoppingTest, StandsByDayOrBySection) {
  EXPECT_THAT(column(ShoppingModel::GroupRole),
              ElementsAre("For Friday 19 June", "For Friday 19 June", "For Saturday 20 June"));
  shopping_.setBySection(true);
  EXPECT_THAT(column(ShoppingModel::NameRole), ElementsAre("fennel", "leek", "cream"));
  EXPECT_THAT(column(ShoppingModel::GroupRole),
              ElementsAre("Fruit and vegetables", "Fruit and vegetables", "Milk, cheese, eggs"));
}

TEST_F(ShoppingTest, AnothersTickIsSeenWithWhoDidIt) {
  EXPECT_EQ(shopping_.openCount(), 3);
  QSignalSpy changed(shopping_.items(), &QAbstractItemModel::dataChanged);
  QSignalSpy reset(shopping_.items(), &QAbstractItemModel::modelReset);
  noted([](v1::Shopping& document) {
    v1::Tick& tick = *document.add_ticks();
    tick.set_item_id("cream:g");
    tick.set_member_id("noor");
  });
  EXPECT_EQ(shopping_.openCount(), 2);
  EXPECT_THAT(column(ShoppingModel::TickedByRole), ElementsAre("", "Noor", ""));
  EXPECT_EQ(changed.count(), 1);
  EXPECT_EQ(reset.count(), 0);
  shopping_.setOnlyOpen(true);
  EXPECT_THAT(column(ShoppingModel::NameRole), ElementsAre("fennel", "leek"));
}

TEST_F(ShoppingTest, ALineGoesBeforeItsSectionAndThatBeforeTheRest) {
  noted([](v1::Shopping& document) {
    document.add_buyers()->set_member_id("ines");
    v1::Buyer& noor = *document.add_buyers();
    noor.set_member_id("noor");
    noor.add_sections(v1::SHOP_SECTION_PRODUCE);
    v1::Buyer& tomas = *document.add_buyers();
    tomas.set_member_id("tomas");
    tomas.add_item_ids("leek:g");
  });
  EXPECT_THAT(column(ShoppingModel::BuyerRole), ElementsAre("Noor", "Ines", "Tomás"));
  shopping_.setOnlyMine(true);
  EXPECT_THAT(column(ShoppingModel::NameRole), ElementsAre("leek"));
}

TEST_F(ShoppingTest, WhoBuysALineOrASectionIsToldOnce) {
  const QString leek = QStringLiteral("leek:g");
  shopping_.setBuyer(leek, 1);
  shopping_.setBuyer(leek, 1);
  shopping_.setSectionBuyer(v1::SHOP_SECTION_PRODUCE, 1);
  shopping_.setSectionBuyer(v1::SHOP_SECTION_PRODUCE, 1);
  const v1::Shopping& shown = household_.session.replica()->shoppings.at(testing::kSampleEvent);
  ASSERT_EQ(shown.buyers_size(), 1);
  EXPECT_EQ(shown.buyers(0).item_ids_size(), 1);
  EXPECT_EQ(shown.buyers(0).sections_size(), 1);
  const std::string buyer = household_.replica.household.members(1).display_name();
  EXPECT_THAT(column(ShoppingModel::BuyerRole), ElementsAre(buyer, "", buyer));
}

TEST_F(ShoppingTest, WhatIsNotToldYetSaysSoAndCanBeTakenBack) {
  shopping_.toggle(QStringLiteral("cream:g"));
  const auto row = [&] { return shopping_.items()->rows()[1]; };
  EXPECT_TRUE(row().ticked);
  EXPECT_TRUE(row().waits);
  EXPECT_FALSE(shopping_.items()->rows()[0].waits);
  household_.session.undo();
  EXPECT_FALSE(row().ticked);
}

TEST_F(ShoppingTest, AmountsFollowTheReadersMeasuresAtOnce) {
  EXPECT_THAT(column(ShoppingModel::ShownRole), ElementsAre("900 g", "200 g", "300 g"));
  household_.session.setUnits(std::nullopt, v1::MEASURE_SYSTEM_US);
  EXPECT_THAT(column(ShoppingModel::ShownRole), ElementsAre("2 lb", "7 oz", "10½ oz"));
}

TEST_F(ShoppingTest, OwnLinesComeFromTheSharedDocument) {
  noted([](v1::Shopping& document) {
    v1::OwnItem& candles = *document.add_own_items();
    candles.set_id("c1");
    candles.set_name("12 candles");
    candles.set_section(v1::SHOP_SECTION_OTHER);
    document.add_ticks()->set_item_id("own:c1");
  });
  EXPECT_THAT(column(ShoppingModel::NameRole), ElementsAre("fennel", "cream", "leek", "12 candles"));
  EXPECT_EQ(shopping_.openCount(), 3);
}

TEST_F(ShoppingTest, WhatIsInTheHouseIsNotOpen) {
  v1::MakeShoppingListResponse list;
  v1::ShoppingItem salt = line("salt", v1::SHOP_SECTION_SPICES, "2026-06-19", 20);
  salt.mutable_at_hand()->set_mass_g(20);
  salt.mutable_to_buy()->set_mass_g(0);
  *list.add_items() = salt;
  shopping_.show(list);
  EXPECT_EQ(shopping_.openCount(), 0);
  EXPECT_THAT(column(ShoppingModel::NoteRole), ElementsAre("at hand"));
}

TEST_F(ShoppingTest, ReadersTickNothing) {
  household_.replica.household.mutable_members(2)->set_role(v1::ROLE_READER);
  household_.session.adopt(std::make_shared<link::Replica>(household_.replica));
  household_.session.setMemberId(household_.replica.household.members(2).id());
  EXPECT_FALSE(shopping_.mayEdit());
  QSignalSpy failed(&household_.session, &HouseholdSession::failed);
  shopping_.toggle(QStringLiteral("cream:g"));
  EXPECT_EQ(failed.count(), 0) << "nothing is sent at all";
}

TEST_F(ShoppingTest, FetchesSayWhenWhatAndWho) {
  v1::MakeShoppingListResponse list;
  v1::Fetch& fetch = *list.add_fetches();
  fetch.set_dish_id("tart");
  fetch.set_name("butter");
  fetch.set_from(v1::PLACE_KIND_FRIDGE);
  fetch.set_to(v1::PLACE_KIND_COUNTER);
  fetch.mutable_take_out_time()->set_seconds(testing::secondsAt("2026-06-20T09:30:00+01:00"));
  fetch.set_cook_member_id("noor");
  shopping_.show(list);
  ASSERT_EQ(shopping_.fetches()->rowCount(), 1);
  const FetchModel::Row& row = shopping_.fetches()->rows()[0];
  EXPECT_EQ(row.when.toStdString(), "09:30");
  EXPECT_EQ(row.day.toStdString(), "Saturday 20 June");
  EXPECT_EQ(row.way.toStdString(), "from the fridge to the counter");
  EXPECT_EQ(row.cook.toStdString(), "Noor");
}

}  // namespace
}  // namespace suppertide
