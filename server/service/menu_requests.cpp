#include "server/service/menu_requests.h"

#include <algorithm>
#include <set>
#include <utility>

#include "server/compose/validate/checker.h"
#include "server/service/documents.h"

namespace suppertide::service {
namespace {

constexpr int kMostLines = 200;
constexpr int kMostLineCharacters = 300;
constexpr int kMostAtHand = 500;
constexpr int kMostBuyers = 20;
constexpr double kMostAmount = 1'000'000;
constexpr double kMostServings = 1000;
constexpr int kMostPieces = 2000;
constexpr int kLeastPanMm = 50;
constexpr int kMostPanMm = 1500;

double valueOf(const v1::Amount& amount) {
  return amount.has_mass_g() ? amount.mass_g() : amount.has_volume_ml() ? amount.volume_ml() : amount.count();
}

void checkAtHand(const v1::MakeShoppingListRequest& request, const compose::Checker& top) {
  if (!top.at("atHand").count(request.at_hand_size(), 0, kMostAtHand, "things at hand")) return;
  for (int i = 0; i < request.at_hand_size(); ++i) {
    const v1::AtHand& one = request.at_hand(i);
    const compose::Checker place = top.at("atHand", i);
    place.at("name").text(one.name(), 100);
    if (one.amount().kind_case() == v1::Amount::KIND_NOT_SET)
      place.at("amount").wrong("", "must be one of massG, volumeMl and count");
    else
      place.at("amount").aboveZero(valueOf(one.amount()), kMostAmount);
  }
}

void checkBuyers(const v1::MakeShoppingListRequest& request, const v1::Household& household,
                 const compose::Checker& top) {
  if (!top.at("buyers").count(request.buyers_size(), 0, kMostBuyers, "buyers")) return;
  std::set<int> taken;
  bool rest = false;
  for (int i = 0; i < request.buyers_size(); ++i) {
    const v1::Buyer& buyer = request.buyers(i);
    const compose::Checker place = top.at("buyers", i);
    if (memberOf(household, buyer.member_id()) == nullptr)
      place.at("memberId").wrong(buyer.member_id(), "must be a member of the household");
    if (buyer.sections().empty() && std::exchange(rest, true))
      place.at("sections").wrong("", "only one buyer may buy the rest");
    for (int s = 0; s < buyer.sections_size(); ++s) {
      const compose::Checker section = place.at("sections", s);
      if (section.chosen(buyer.sections(s), "a section of the shop") &&
          !taken.insert(buyer.sections(s)).second)
        section.wrong(v1::ShopSection_Name(buyer.sections(s)), "each section has one buyer at most");
    }
  }
}

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
  checkAtHand(request, top);
  checkBuyers(request, household, top);
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
