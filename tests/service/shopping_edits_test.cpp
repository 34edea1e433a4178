// What an edit makes of a shopping document, and what the list makes of it.
#include "server/service/shopping_edits.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "server/compose/menu/menu.h"
#include "tests/compose/small_dinner.h"

namespace suppertide::service {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

class ShoppingEditsTest : public ::testing::Test {
 protected:
  compose::Violations apply(std::initializer_list<v1::ShoppingEdit> edits) {
    google::protobuf::RepeatedPtrField<v1::ShoppingEdit> list(edits.begin(), edits.end());
    const std::vector<v1::ShoppingItem> items = this->items();
    return editShopping({"ana", 1'800'000'000, &bundle_.household(), &items}, list, shopping_);
  }
  std::vector<v1::ShoppingItem> items() const {
    return compose::shoppingItems(compose::menuOf(bundle_, bundle_.events(0)), shopping_,
                                  kitchen::Measures::kMetric);
  }
  v1::ShoppingItem item(const std::string& id) const {
    const auto all = items();
    const auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.id() == id; });
    EXPECT_NE(found, all.end()) << id;
    return found == all.end() ? v1::ShoppingItem() : *found;
  }
  std::string memberId(int index) const { return bundle_.household().members(index).id(); }

  static v1::ShoppingEdit buys(const std::string& member, std::initializer_list<v1::ShopSection> sections,
                               std::initializer_list<std::string> lines = {}) {
    v1::ShoppingEdit edit;
    edit.mutable_buyer()->set_member_id(member);
    for (const v1::ShopSection section : sections) edit.mutable_buyer()->add_sections(section);
    for (const std::string& line : lines) edit.mutable_buyer()->add_item_ids(line);
    return edit;
  }
  static v1::ShoppingEdit atHand(const std::string& name, double grams) {
    v1::ShoppingEdit edit;
    edit.mutable_at_hand()->set_name(name);
    edit.mutable_at_hand()->mutable_amount()->set_mass_g(grams);
    return edit;
  }
  static v1::ShoppingEdit packet(const std::string& name, double grams) {
    v1::ShoppingEdit edit;
    edit.mutable_packet()->set_name(name);
    edit.mutable_packet()->mutable_size()->set_mass_g(grams);
    return edit;
  }

  v1::Bundle bundle_ = compose::smallDinner();
  v1::Shopping shopping_;
};

TEST_F(ShoppingEditsTest, WhatIsAtHandIsReplacedByNameAndKind) {
  const double needed = item("butter:g").needed().mass_g();
  ASSERT_GT(needed, 50);
  EXPECT_THAT(apply({atHand("Butter", 10), atHand("butter", 50)}), IsEmpty());
  ASSERT_EQ(shopping_.at_hand_size(), 1);
  EXPECT_NEAR(item("butter:g").to_buy().mass_g(), needed - 50, 1e-6);
  v1::ShoppingEdit gone;
  gone.set_not_at_hand_name("butter");
  EXPECT_THAT(apply({gone}), IsEmpty());
  EXPECT_NEAR(item("butter:g").to_buy().mass_g(), needed, 1e-6);
}

TEST_F(ShoppingEditsTest, PacketsAreBoughtWholeAfterWhatIsAtHand) {
  const double needed = item("butter:g").needed().mass_g();
  EXPECT_THAT(apply({packet("butter", needed - 20)}), IsEmpty());
  EXPECT_EQ(item("butter:g").packet_count(), 2);
  EXPECT_NEAR(item("butter:g").to_buy().mass_g(), 2 * (needed - 20), 1e-6);
  EXPECT_THAT(apply({atHand("butter", 20)}), IsEmpty());
  EXPECT_EQ(item("butter:g").packet_count(), 1);
}

TEST_F(ShoppingEditsTest, APacketNotedAfterATickAsksForNothingMore) {
  v1::ShoppingEdit tick;
  tick.mutable_tick()->set_item_id("butter:g");
  EXPECT_THAT(apply({tick}), IsEmpty());
  const double needed = item("butter:g").needed().mass_g();
  EXPECT_THAT(apply({packet("butter", needed - 20)}), IsEmpty());
  ASSERT_EQ(item("butter:g").packet_count(), 2);
  EXPECT_FALSE(item("butter:g").has_missing()) << "all that is needed is in the basket";
}

TEST_F(ShoppingEditsTest, ABuyerTakesOverSectionsAndLines) {
  EXPECT_THAT(apply({buys(memberId(0), {v1::SHOP_SECTION_DAIRY_EGGS, v1::SHOP_SECTION_BAKING}),
                     buys(memberId(1), {v1::SHOP_SECTION_BAKING})}),
              IsEmpty());
  EXPECT_EQ(item("butter:g").buyer_member_id(), memberId(0));
  EXPECT_THAT(shopping_.buyers(0).sections(), ElementsAre(v1::SHOP_SECTION_DAIRY_EGGS));
  EXPECT_THAT(apply({buys(memberId(1), {}, {"butter:g"})}), IsEmpty());
  EXPECT_EQ(item("butter:g").buyer_member_id(), memberId(1)) << "a single line goes before its section";
  EXPECT_THAT(apply({buys(memberId(1), {v1::SHOP_SECTION_DAIRY_EGGS})}), IsEmpty());
  EXPECT_EQ(shopping_.buyers_size(), 1) << "who has nothing left buys nothing, not the rest";
}

TEST_F(ShoppingEditsTest, ATickOutlivesAMenuThatAsksForMoreOrForNothing) {
  v1::ShoppingEdit tick;
  tick.mutable_tick()->set_item_id("butter:g");
  EXPECT_THAT(apply({tick}), IsEmpty());
  const double bought = item("butter:g").bought().mass_g();
  EXPECT_TRUE(compose::needlessTicks(items(), shopping_).empty());
  for (v1::Dish& dish : *bundle_.mutable_events(0)->mutable_dishes()) dish.set_serving_count(100);
  EXPECT_NEAR(item("butter:g").missing().mass_g(), item("butter:g").to_buy().mass_g() - bought, 1e-6);
  EXPECT_GT(item("butter:g").missing().mass_g(), 0);
  bundle_.mutable_events(0)->clear_dishes();
  ASSERT_EQ(compose::needlessTicks(items(), shopping_).size(), 1U);
  EXPECT_NEAR(compose::needlessTicks(items(), shopping_)[0].bought().mass_g(), bought, 1e-6);
}

TEST_F(ShoppingEditsTest, OneWrongEditLeavesTheDocumentAsItWas) {
  v1::ShoppingEdit wrong;
  wrong.mutable_tick()->set_item_id("butter:g");
  wrong.mutable_tick()->mutable_bought()->set_count(1);
  const compose::Violations violations = apply({packet("butter", 250), wrong, packet("sugar", 0)});
  ASSERT_EQ(violations.size(), 2U);
  EXPECT_EQ(violations[0].field_path(), "edits[1].tick.bought");
  EXPECT_EQ(violations[1].field_path(), "edits[2].packet.size");
  EXPECT_EQ(shopping_.packets_size(), 0);
}

}  // namespace
}  // namespace suppertide::service
