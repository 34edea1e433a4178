#include "suppertide/v1/shopping_service.grpc.pb.h"

#include "server/compose/menu/menu.h"
#include "server/compose/menu/packets.h"
#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/services.h"
#include "server/service/shopping_edits.h"

namespace suppertide::service {
namespace {

constexpr int kMostEvents = 1'000;

// One EditShopping under way: reads, edits, writes; again when someone else wrote in between.
struct Edit {
  Backend& backend;
  Caller caller;
  v1::EditShoppingRequest asked;
  v1::EditShoppingResponse* answer;
  Finish finish;
  int triesLeft = kMostTries;
};

// The edited document in `shopping`; `before` as it is stored, without an id when there is none.
Failure carryOut(const Edit& edit, v1::Shopping& before, v1::Shopping& shopping) {
  v1::Bundle bundle;
  const std::string& event = edit.asked.event_id();
  if (const Failure wrong = exportOf(edit.backend, edit.caller.householdId, event, bundle); wrong.failed())
    return wrong;
  for (const v1::Shopping& stored : bundle.shoppings()) before = stored;
  const auto stored = edit.backend.store().list(edit.caller.householdId, "shopping", "", kMostEvents);
  if (!stored.ok()) return fromStorage(stored.status());
  std::vector<v1::Shopping> all;
  for (const storage::Document& document : *stored) all.push_back(read<v1::Shopping>(document));
  v1::Shopping notes = before;
  notes.clear_packets();
  for (const v1::Packet& packet : compose::householdPackets(all, event)) *notes.add_packets() = packet;
  const compose::Menu menu = compose::menuOf(bundle, bundle.events(0));
  const auto items = compose::shoppingItems(
      menu, notes, compose::measuresOf(v1::KITCHEN_MEASURES_UNSPECIFIED, bundle.household()));
  const ShoppingEditor editor{edit.caller.memberId, edit.backend.clock().now().time_since_epoch().count(),
                              &bundle.household(), &items};
  shopping = before;
  shopping.set_id(event);
  const auto wrong = editShopping(editor, edit.asked.edits(), shopping);
  return wrong.empty() ? Failure() : invalid(wrong);
}

void answerWith(const Edit& edit, const v1::Shopping& shopping, std::int64_t revision) {
  *edit.answer->mutable_shopping() = shopping;
  edit.answer->set_revision(revision);
  edit.finish({});
}

bool changesNothing(const v1::Shopping& before, const v1::Shopping& after) {
  return before.id() == after.id() && before.SerializeAsString() == after.SerializeAsString();
}

void tryOnce(std::shared_ptr<Edit> edit) {
  v1::Shopping before;
  v1::Shopping shopping;
  const Failure wrong = carryOut(*edit, before, shopping);
  if (!wrong.failed() && edit->asked.etag().empty() && changesNothing(before, shopping))
    return answerWith(*edit, before, before.meta().revision());
  auto write = writeRequest(edit->caller, "ShoppingService/EditShopping", edit->asked.request_id(),
                            edit->asked, edit->asked.validate_only());
  const bool given = !edit->asked.etag().empty();
  write.puts.push_back(
      putOf(shopping, before.id().empty() && !given ? storage::Expect::kAbsent : storage::Expect::kPresent));
  if (given) write.puts.back().etag = edit->asked.etag();
  // What is refused now may be the repeat of what was carried out before the menu changed.
  if (wrong.failed()) neverCarryOut(write);
  edit->backend.queue().writeNow(std::move(write), [=](absl::StatusOr<storage::WriteResult> result) {
    if (result.ok()) {
      const bool tried = edit->asked.validate_only();
      return answerWith(*edit, tried ? shopping : read<v1::Shopping>(result->documents.front()),
                        result->revision);
    }
    if (wrong.failed()) return edit->finish(wrong);
    const auto code = result.status().code();
    const bool raced =
        !given && (code == absl::StatusCode::kAborted || code == absl::StatusCode::kAlreadyExists ||
                   code == absl::StatusCode::kNotFound);
    if (raced && --edit->triesLeft > 0) return edit->backend.readers().post([edit] { tryOnce(edit); });
    edit->finish(fromStorage(result.status()));
  });
}

class ShoppingServiceCalls final : public v1::ShoppingService::CallbackService {
 public:
  explicit ShoppingServiceCalls(Backend& backend) : backend_(backend), calls_(backend, "ShoppingService") {}

  grpc::ServerUnaryReactor* GetShopping(grpc::CallbackServerContext* context,
                                        const v1::GetShoppingRequest* request,
                                        v1::Shopping* answer) override {
    return calls_.get(context, request, request->event_id(), "GetShopping", answer);
  }

  grpc::ServerUnaryReactor* EditShopping(grpc::CallbackServerContext* context,
                                         const v1::EditShoppingRequest* request,
                                         v1::EditShoppingResponse* answer) override {
    return serve(
        backend_, context, request, "ShoppingService/EditShopping", request->household_id(),
        [this, answer](const Caller& caller, const v1::EditShoppingRequest& asked, const Finish& finish) {
          if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
          tryOnce(std::make_shared<Edit>(Edit{backend_, caller, asked, answer, finish}));
        });
  }

 private:
  Backend& backend_;
  DocumentCalls<v1::Shopping> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeShoppingService(Backend& backend) {
  return std::make_unique<ShoppingServiceCalls>(backend);
}

}  // namespace suppertide::service
