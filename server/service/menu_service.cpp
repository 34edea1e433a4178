#include "suppertide/v1/menu_service.grpc.pb.h"

#include "server/compose/menu/menu.h"
#include "server/compose/menu/packets.h"
#include "server/compose/menu/scaled_recipe.h"
#include "server/service/backend.h"
#include "server/service/bundle_import.h"
#include "server/service/menu_requests.h"
#include "server/service/pages.h"
#include "server/service/safety_rules.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

// The household with all its documents, the event as stored, and as it is asked about.
struct Asked {
  v1::Bundle bundle;
  const v1::Event* stored = nullptr;
  v1::Event event;
};

// NOT_FOUND without the event; a changed event is checked like one to store.
template <typename Request>
Failure readAsked(Backend& backend, const std::string& householdId, const Request& request, Asked& asked) {
  if (const Failure wrong = exportOf(backend, householdId, "", asked.bundle); wrong.failed()) return wrong;
  for (const v1::Event& event : asked.bundle.events())
    if (event.id() == request.event_id()) asked.stored = &event;
  if (asked.stored == nullptr)
    return failure(absl::NotFoundError("there is no event " + request.event_id()), "NO_SUCH_DOCUMENT");
  asked.event = *asked.stored;
  if (!request.has_event()) return {};
  if (request.event().id() != request.event_id())
    return invalidField("event.id", request.event().id(), "must be the same as eventId");
  compose::Violations violations = compose::validate(request.event());
  if (violations.empty()) {
    const Failure wrong = checkReferences(backend, householdId, request.event());
    violations.assign(wrong.detail.violations().begin(), wrong.detail.violations().end());
    if (wrong.failed() && violations.empty()) return wrong;
  }
  for (v1::FieldViolation& violation : violations)
    violation.set_field_path("event." + violation.field_path());
  if (!violations.empty()) return invalid(violations);
  asked.event = request.event();
  return {};
}

Failure parseIngredients(Backend& backend, const std::string& householdId,
                         const v1::ParseIngredientsRequest& request, v1::ParseIngredientsResponse& answer) {
  if (const auto wrong = validate(request); !wrong.empty()) return invalid(wrong);
  const auto stored = backend.store().get(householdId, {"household", householdId});
  if (!stored.ok()) return fromStorage(stored.status());
  const auto household = read<v1::Household>(*stored);
  for (const std::string& line : request.lines())
    *answer.add_ingredients() =
        compose::parsedIngredient(line, compose::measuresOf(request.measures(), household),
                                  compose::measuresOf(request.shown_in(), household));
  return {};
}

Failure checkMenu(Backend& backend, const std::string& householdId, const v1::CheckMenuRequest& request,
                  v1::CheckMenuResponse& answer) {
  Asked asked;
  if (const Failure wrong = readAsked(backend, householdId, request, asked); wrong.failed()) return wrong;
  const compose::Menu menu = compose::menuOf(asked.bundle, asked.event);
  compose::MenuTable table = compose::checkMenu(menu);
  for (v1::DishPortion& portion : compose::portionsOf(menu, table.warnings))
    *answer.add_portions() = std::move(portion);
  for (v1::GuestCourse& cell : table.cells) *answer.add_cells() = std::move(cell);
  for (v1::MenuWarning& warning : table.warnings) *answer.add_warnings() = std::move(warning);
  return {};
}

// What people noted of the event's shopping, with what the request says instead.
v1::Shopping notesOf(const v1::Bundle& bundle, const v1::MakeShoppingListRequest& request) {
  v1::Shopping notes;
  for (const v1::Shopping& stored : bundle.shoppings())
    if (stored.id() == request.event_id()) notes = stored;
  notes.clear_packets();
  const std::vector<v1::Shopping> all(bundle.shoppings().begin(), bundle.shoppings().end());
  for (const v1::Packet& packet : compose::householdPackets(all, request.event_id()))
    *notes.add_packets() = packet;
  if (!request.at_hand().empty()) *notes.mutable_at_hand() = request.at_hand();
  if (!request.buyers().empty()) *notes.mutable_buyers() = request.buyers();
  return notes;
}

Failure makeShoppingList(Backend& backend, const std::string& householdId,
                         const v1::MakeShoppingListRequest& request, v1::MakeShoppingListResponse& answer) {
  Asked asked;
  if (const Failure wrong = readAsked(backend, householdId, request, asked); wrong.failed()) return wrong;
  if (const auto wrong = validate(request, asked.bundle.household()); !wrong.empty()) return invalid(wrong);
  const v1::Shopping notes = notesOf(asked.bundle, request);
  const compose::Menu menu = compose::menuOf(asked.bundle, asked.event);
  const auto shownIn = compose::measuresOf(request.shown_in(), asked.bundle.household());
  const auto items = compose::shoppingItems(menu, notes, shownIn);
  for (v1::Tick& tick : compose::needlessTicks(items, notes)) *answer.add_needless_ticks() = std::move(tick);
  for (const v1::ShoppingItem& item : items) *answer.add_items() = item;
  for (v1::Fetch& fetch : compose::fetchesOf(menu, compose::handsOf(menu)))
    *answer.add_fetches() = std::move(fetch);
  if (!request.has_event()) return {};
  const compose::Menu before = compose::menuOf(asked.bundle, *asked.stored);
  for (v1::ShoppingChange& change : compose::shoppingChanges(before, menu, notes))
    *answer.add_changes() = std::move(change);
  return {};
}

const v1::Kitchen* kitchenOf(const v1::Bundle& bundle, const std::string& id) {
  for (const v1::Kitchen& kitchen : bundle.kitchens())
    if (kitchen.id() == id) return &kitchen;
  return nullptr;
}

// The recipe to scale: the stored one, or the one that was sent.
Failure recipeOf(const v1::Bundle& bundle, const v1::ScaleRecipeRequest& request, v1::Recipe& recipe) {
  if (request.has_recipe()) {
    recipe = request.recipe();
    if (recipe.id() != request.recipe_id())
      return invalidField("recipe.id", recipe.id(), "must be the same as recipeId");
    compose::Violations violations = compose::validate(recipe);
    for (v1::FieldViolation& violation : violations)
      violation.set_field_path("recipe." + violation.field_path());
    return violations.empty() ? Failure{} : invalid(violations);
  }
  for (const v1::Recipe& stored : bundle.recipes())
    if (stored.id() == request.recipe_id()) recipe = stored;
  if (!recipe.id().empty()) return {};
  return failure(absl::NotFoundError("there is no recipe " + request.recipe_id()), "NO_SUCH_DOCUMENT");
}

Failure scaleRecipe(Backend& backend, const std::string& householdId, const v1::ScaleRecipeRequest& request,
                    v1::ScaledRecipe& answer) {
  v1::Bundle bundle;
  if (const Failure wrong = exportOf(backend, householdId, "", bundle); wrong.failed()) return wrong;
  v1::Recipe recipe;
  if (const Failure wrong = recipeOf(bundle, request, recipe); wrong.failed()) return wrong;
  const v1::Kitchen* kitchen = kitchenOf(bundle, request.kitchen_id());
  if (const auto wrong = validate(request, recipe, kitchen); !wrong.empty()) return invalid(wrong);
  const compose::RecipeSize size{request.serving_count(), request.piece_count(), request.piece_mass_g(),
                                 request.has_pan() ? &request.pan() : nullptr};
  const std::vector<v1::Shopping> all(bundle.shoppings().begin(), bundle.shoppings().end());
  answer = compose::scaledRecipe(recipe, size, kitchen, compose::householdPackets(all),
                                 compose::measuresOf(request.shown_in(), bundle.household()));
  return {};
}

Failure listSafetyRules(Backend& backend, const std::string& householdId,
                        const v1::ListSafetyRulesRequest& asked, v1::ListSafetyRulesResponse& answer) {
  const auto stored = backend.store().get(householdId, {"household", householdId});
  if (!stored.ok()) return fromStorage(stored.status());
  const auto rules = read<v1::Household>(*stored).safety_rules();
  answer.set_rules(rules == v1::SAFETY_RULES_UNSPECIFIED ? v1::SAFETY_RULES_CONSUMER : rules);
  const std::vector<v1::SafetyRule> rows = safetyRules();
  const auto placeOf = [&](const v1::SafetyRule& row) {
    return absl::StrCat(absl::Dec(&row - rows.data(), absl::kZeroPad4));
  };
  return tellPage(asked, answer, rows, placeOf, [&](const v1::SafetyRule& row) { *answer.add_rows() = row; });
}

class MenuServiceCalls final : public v1::MenuService::CallbackService {
 public:
  explicit MenuServiceCalls(Backend& backend) : backend_(backend) {}

  grpc::ServerUnaryReactor* ParseIngredients(grpc::CallbackServerContext* context,
                                             const v1::ParseIngredientsRequest* request,
                                             v1::ParseIngredientsResponse* answer) override {
    return answered(context, request, answer, "MenuService/ParseIngredients", parseIngredients);
  }
  grpc::ServerUnaryReactor* CheckMenu(grpc::CallbackServerContext* context,
                                      const v1::CheckMenuRequest* request,
                                      v1::CheckMenuResponse* answer) override {
    return answered(context, request, answer, "MenuService/CheckMenu", checkMenu);
  }
  grpc::ServerUnaryReactor* MakeShoppingList(grpc::CallbackServerContext* context,
                                             const v1::MakeShoppingListRequest* request,
                                             v1::MakeShoppingListResponse* answer) override {
    return answered(context, request, answer, "MenuService/MakeShoppingList", makeShoppingList);
  }
  grpc::ServerUnaryReactor* ScaleRecipe(grpc::CallbackServerContext* context,
                                        const v1::ScaleRecipeRequest* request,
                                        v1::ScaledRecipe* answer) override {
    return answered(context, request, answer, "MenuService/ScaleRecipe", scaleRecipe);
  }
  grpc::ServerUnaryReactor* ListSafetyRules(grpc::CallbackServerContext* context,
                                            const v1::ListSafetyRulesRequest* request,
                                            v1::ListSafetyRulesResponse* answer) override {
    return answered(context, request, answer, "MenuService/ListSafetyRules", listSafetyRules);
  }

 private:
  template <typename Request, typename Answer, typename Work>
  grpc::ServerUnaryReactor* answered(grpc::CallbackServerContext* context, const Request* request,
                                     Answer* answer, const char* method, Work work) {
    return serveCalculated(backend_, context, request, method, request->household_id(),
                           [this, answer, work](const Caller& caller, const Request& asked, const auto&) {
                             return work(backend_, caller.householdId, asked, *answer);
                           });
  }

  Backend& backend_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeMenuService(Backend& backend) {
  return std::make_unique<MenuServiceCalls>(backend);
}

}  // namespace suppertide::service
