#include "server/service/menu_requests.h"

#include <algorithm>

#include "server/compose/validate/shopping.h"

namespace suppertide::service {
namespace {

constexpr int kMostLines = 200;
constexpr int kMostLineCharacters = 300;
constexpr double kMostServings = 1000;
constexpr int kMostPieces = 2000;
constexpr int kLeastPanMm = 50;
constexpr int kMostPanMm = 1500;

void checkPan(const compose::Checker& here, const v1::Pan& pan) {
  here.at("widthMm").range(pan.width_mm(), kLeastPanMm, kMostPanMm, "mm");
  here.at("depthMm").range(pan.depth_mm(), kLeastPanMm, kMostPanMm, "mm");
  here.at("heightMm").range(pan.height_mm(), 0, kMostPanMm, "mm");
  here.at("count").range(pan.count(), 0, 50, "pans");
}

bool hasPan(const v1::Recipe& recipe) {
  return std::any_of(recipe.steps().begin(), recipe.steps().end(),
                     [](const v1::Step& step) { return step.oven().has_pan(); });
}

void checkSize(const v1::ScaleRecipeRequest& request, const v1::Recipe& recipe, const compose::Checker& top) {
  switch (request.to_case()) {
    case v1::ScaleRecipeRequest::kServingCount:
      top.at("servingCount").aboveZero(request.serving_count(), kMostServings, "portions");
      break;
    case v1::ScaleRecipeRequest::kPieceCount:
      if (top.at("pieceCount").range(request.piece_count(), 1, kMostPieces, "pieces") &&
          !recipe.has_formula())
        top.at("pieceCount").wrong("", "only breads have pieces; say servings or a pan");
      break;
    case v1::ScaleRecipeRequest::kPan:
      checkPan(top.at("pan"), request.pan());
      if (!hasPan(recipe)) top.at("pan").wrong("", "the recipe names no pan to compare with");
      break;
    case v1::ScaleRecipeRequest::TO_NOT_SET:
      top.at("servingCount").wrong("", "say one of servingCount, pieceCount and pan");
  }
}

}  // namespace

compose::Violations validate(const v1::ParseIngredientsRequest& request) {
  compose::Violations violations;
  const compose::Checker top(violations);
  top.at("measures").known(request.measures(), "a kind of kitchen measures");
  top.at("shownIn").known(request.shown_in(), "a kind of kitchen measures");
  if (top.at("lines").count(request.lines_size(), 1, kMostLines, "lines"))
    for (int i = 0; i < request.lines_size(); ++i)
      top.at("lines", i).optionalText(request.lines(i), kMostLineCharacters);
  return violations;
}

compose::Violations validate(const v1::MakeShoppingListRequest& request, const v1::Household& household) {
  compose::Violations violations;
  const compose::Checker top(violations);
  if (top.at("atHand").count(request.at_hand_size(), 0, compose::kMostAtHand, "things at hand"))
    for (int i = 0; i < request.at_hand_size(); ++i)
      compose::checkAtHand(top.at("atHand", i), request.at_hand(i));
  compose::checkBuyers(top, request.buyers(), &household);
  top.at("shownIn").known(request.shown_in(), "a kind of kitchen measures");
  return violations;
}

compose::Violations validate(const v1::ScaleRecipeRequest& request, const v1::Recipe& recipe,
                             const v1::Kitchen* kitchen) {
  compose::Violations violations;
  const compose::Checker top(violations);
  checkSize(request, recipe, top);
  top.at("pieceMassG").zeroOrRange(request.piece_mass_g(), 20, 5000, "g");
  if (request.piece_mass_g() > 0 && !request.has_piece_count())
    top.at("pieceMassG").wrong("", "needs pieceCount");
  if (!request.kitchen_id().empty() && kitchen == nullptr)
    top.at("kitchenId").wrong(request.kitchen_id(), "must be a kitchen of the household");
  top.at("shownIn").known(request.shown_in(), "a kind of kitchen measures");
  return violations;
}

}  // namespace suppertide::service
