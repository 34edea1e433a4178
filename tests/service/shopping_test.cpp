// The shopping document: two people tick things off together, and the list answers with it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <thread>

#include "suppertide/v1/menu_service.grpc.pb.h"
#include "suppertide/v1/shopping_service.grpc.pb.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class ShoppingServiceTest : public testing::Test {
 protected:
  ShoppingServiceTest() {
    served_.found();
    served_.importDinner();
    stub_ = v1::ShoppingService::NewStub(served_.channel());
    menus_ = v1::MenuService::NewStub(served_.channel());
  }

  v1::MakeShoppingListResponse list() {
    v1::MakeShoppingListRequest request;
    request.set_household_id(served_.household);
    request.set_event_id("supper");
    v1::MakeShoppingListResponse answer;
    EXPECT_TRUE(menus_->MakeShoppingList(with(served_.token).get(), request, &answer).ok());
    return answer;
  }
  const v1::ShoppingItem& item(const v1::MakeShoppingListResponse& list, const std::string& id) {
    for (const v1::ShoppingItem& one : list.items())
      if (one.id() == id) return one;
    static const v1::ShoppingItem none;
    ADD_FAILURE() << "no line " << id;
    return none;
  }
  v1::EditShoppingRequest edits(std::initializer_list<v1::ShoppingEdit> edits,
                                const std::string& requestId = freshRequest()) {
    v1::EditShoppingRequest request;
    request.set_household_id(served_.household);
    request.set_event_id("supper");
    request.set_request_id(requestId);
    for (const v1::ShoppingEdit& edit : edits) *request.add_edits() = edit;
    return request;
  }
  grpc::Status edit(const v1::EditShoppingRequest& request, const std::string& token,
                    v1::EditShoppingResponse* answer = nullptr) {
    v1::EditShoppingResponse unused;
    context_ = with(token);
    return stub_->EditShopping(context_.get(), request, answer == nullptr ? &unused : answer);
  }
  std::vector<std::string> violations() const {
    const auto& trailers = context_->GetServerTrailingMetadata();
    const auto found = trailers.find("suppertide-error-bin");
    std::vector<std::string> paths;
    v1::ErrorDetail detail;
    if (found != trailers.end() &&
        detail.ParseFromString(std::string(found->second.data(), found->second.size())))
      for (const auto& violation : detail.violations()) paths.push_back(violation.field_path());
    return paths;
  }

  static v1::ShoppingEdit tick(const std::string& id) {
    v1::ShoppingEdit edit;
    edit.mutable_tick()->set_item_id(id);
    return edit;
  }
  static v1::ShoppingEdit own(const std::string& id, const std::string& name) {
    v1::ShoppingEdit edit;
    edit.mutable_own_item()->set_id(id);
    edit.mutable_own_item()->set_name(name);
    return edit;
  }

  Served served_;
  std::unique_ptr<v1::ShoppingService::Stub> stub_;
  std::unique_ptr<v1::MenuService::Stub> menus_;
  std::unique_ptr<grpc::ClientContext> context_;
};

TEST_F(ShoppingServiceTest, ATickTellsWhoWhenAndHowMuch) {
  const v1::ShoppingItem first = list().items(0);
  ASSERT_TRUE(edit(edits({tick(first.id())}), served_.token).ok());
  const v1::MakeShoppingListResponse after = list();
  const v1::ShoppingItem& ticked = item(after, first.id());
  EXPECT_FALSE(ticked.ticked_by_member_id().empty());
  EXPECT_EQ(ticked.tick_time().seconds(), served_.clock().now().time_since_epoch().count());
  EXPECT_EQ(ticked.bought().SerializeAsString(), first.to_buy().SerializeAsString());
  EXPECT_FALSE(ticked.has_missing());
  v1::ShoppingEdit back;
  back.set_untick_item_id(first.id());
  ASSERT_TRUE(edit(edits({back}), served_.token).ok());
  EXPECT_TRUE(item(list(), first.id()).ticked_by_member_id().empty());
}

TEST_F(ShoppingServiceTest, TellsWhatIsMissingWhenLessWasBought) {
  v1::ShoppingItem weighed;
  const v1::MakeShoppingListResponse all = list();
  for (const v1::ShoppingItem& one : all.items())
    if (one.to_buy().mass_g() > 100) weighed = one;
  ASSERT_FALSE(weighed.id().empty());
  v1::ShoppingEdit some = tick(weighed.id());
  some.mutable_tick()->mutable_bought()->set_mass_g(weighed.to_buy().mass_g() - 60);
  ASSERT_TRUE(edit(edits({some}), served_.token).ok());
  EXPECT_NEAR(item(list(), weighed.id()).missing().mass_g(), 60, 1e-6);
}

TEST_F(ShoppingServiceTest, TwoPeopleAtOnceLoseNoneOfTheirTicks) {
  const std::string other = served_.invite(v1::ROLE_COOK);
  const v1::MakeShoppingListResponse all = list();
  ASSERT_GE(all.items_size(), 4);
  const auto shop = [&](const std::string& token, int from) {
    for (int i = from; i < all.items_size(); i += 2) {
      v1::EditShoppingResponse answer;
      EXPECT_TRUE(stub_->EditShopping(with(token).get(), edits({tick(all.items(i).id())}), &answer).ok());
    }
  };
  std::thread second(shop, other, 1);
  shop(served_.token, 0);
  second.join();
  v1::GetShoppingRequest get;
  get.set_household_id(served_.household);
  get.set_event_id("supper");
  v1::Shopping shopping;
  ASSERT_TRUE(stub_->GetShopping(with(served_.token).get(), get, &shopping).ok());
  EXPECT_EQ(shopping.ticks_size(), all.items_size());
}

TEST_F(ShoppingServiceTest, ARepeatedRequestCountsOnceAndAReaderMayOnlyLook) {
  const std::string id = list().items(0).id();
  const auto request = edits({tick(id)});
  v1::EditShoppingResponse first;
  ASSERT_TRUE(edit(request, served_.token, &first).ok());
  v1::EditShoppingResponse again;
  ASSERT_TRUE(edit(request, served_.token, &again).ok());
  EXPECT_EQ(first.revision(), again.revision());
  const std::string reader = served_.invite(v1::ROLE_READER);
  EXPECT_EQ(edit(edits({tick(id)}), reader).error_code(), grpc::StatusCode::PERMISSION_DENIED);
  v1::GetShoppingRequest get;
  get.set_household_id(served_.household);
  get.set_event_id("supper");
  v1::Shopping shopping;
  EXPECT_TRUE(stub_->GetShopping(with(reader).get(), get, &shopping).ok());
}

TEST_F(ShoppingServiceTest, RefusesAllEditsWhenOneIsWrongAndListsEveryField) {
  v1::ShoppingEdit nothing;
  v1::ShoppingEdit buyer;
  buyer.mutable_buyer()->set_member_id("nobody");
  v1::ShoppingEdit atHand;
  atHand.mutable_at_hand()->set_name("salt");
  const auto request = edits({tick(list().items(0).id()), tick("moon dust:g"), nothing, buyer, atHand});
  EXPECT_EQ(edit(request, served_.token).error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  EXPECT_THAT(violations(), ElementsAre("edits[1].tick.itemId", "edits[2]", "edits[3].buyer.memberId",
                                        "edits[4].atHand.amount"));
  EXPECT_TRUE(item(list(), list().items(0).id()).ticked_by_member_id().empty());
}

TEST_F(ShoppingServiceTest, AStaleEtagIsRefusedWithWhatIsThereNow) {
  v1::EditShoppingResponse first;
  ASSERT_TRUE(edit(edits({own("candles", "12 candles")}), served_.token, &first).ok());
  ASSERT_TRUE(edit(edits({own("ice", "ice")}), served_.token).ok());
  auto stale = edits({own("napkins", "napkins")});
  stale.set_etag(first.shopping().meta().etag());
  EXPECT_EQ(edit(stale, served_.token).error_code(), grpc::StatusCode::ABORTED);
}

TEST_F(ShoppingServiceTest, OwnLinesStandOnTheListAndGoWithTheirTicks) {
  ASSERT_TRUE(edit(edits({own("candles", "12 candles"), tick("own:candles")}), served_.token).ok());
  const v1::MakeShoppingListResponse with = list();
  EXPECT_TRUE(item(with, "own:candles").own());
  EXPECT_FALSE(item(with, "own:candles").ticked_by_member_id().empty());
  v1::ShoppingEdit gone;
  gone.set_no_own_item_id("candles");
  v1::EditShoppingResponse answer;
  ASSERT_TRUE(edit(edits({gone}), served_.token, &answer).ok());
  EXPECT_THAT(answer.shopping().own_items(), IsEmpty());
  EXPECT_THAT(answer.shopping().ticks(), IsEmpty());
}

TEST_F(ShoppingServiceTest, WatchersSeeTheTickAndDeletingTheEventTakesTheShoppingAlong) {
  v1::EditShoppingResponse ticked;
  ASSERT_TRUE(edit(edits({own("ice", "ice"), tick("own:ice")}), served_.token, &ticked).ok());
  v1::WatchRequest watch;
  watch.set_household_id(served_.household);
  watch.set_after_revision(ticked.revision() - 1);
  auto context = with(served_.token);
  auto stream = v1::SyncService::NewStub(served_.channel())->Watch(context.get(), watch);
  v1::WatchResponse told;
  ASSERT_TRUE(stream->Read(&told));
  ASSERT_EQ(told.changes().changes_size(), 1);
  EXPECT_EQ(told.changes().changes(0).shopping().ticks(0).item_id(), "own:ice");
  v1::DeleteEventRequest remove;
  remove.set_household_id(served_.household);
  remove.set_event_id("supper");
  remove.set_request_id(freshRequest());
  v1::DeleteEventResponse removed;
  ASSERT_TRUE(v1::EventService::NewStub(served_.channel())
                  ->DeleteEvent(with(served_.token).get(), remove, &removed)
                  .ok());
  do {
    ASSERT_TRUE(stream->Read(&told));
  } while (told.kind_case() != v1::WatchResponse::kChanges);
  std::vector<std::string> kinds;
  for (const v1::Change& change : told.changes().changes()) kinds.push_back(change.deleted().kind());
  EXPECT_THAT(kinds, testing::Contains("shopping"));
  context->TryCancel();
}

}  // namespace
}  // namespace suppertide::service
