#include "server/compose/menu/scaled_recipe.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/compose/axis.h"
#include "server/compose/menu/amounts.h"
#include "server/compose/menu/packets.h"
#include "server/compose/menu/servings.h"
#include "server/compose/oven_curves.h"
#include "server/kitchen/racks.h"
#include "server/kitchen/scaling.h"

namespace suppertide::compose {
namespace {

constexpr double kFarOff = 0.1;

kitchen::Pan panOf(const v1::Pan& pan) {
  return {pan.width_mm(), pan.depth_mm(), pan.height_mm(), std::max(1, pan.count())};
}

v1::Pan panOf(const kitchen::Pan& from, const std::string& name) {
  v1::Pan pan;
  pan.set_name(name);
  pan.set_width_mm(from.widthMm);
  pan.set_depth_mm(from.depthMm);
  pan.set_height_mm(from.heightMm);
  pan.set_count(from.count);
  return pan;
}

const v1::Step* firstPanOf(const v1::Recipe& recipe) {
  for (const v1::Step& step : recipe.steps())
    if (step.oven().has_pan()) return &step;
  return nullptr;
}

kitchen::Amount amountIn(const v1::Ingredient& from) {
  using kitchen::AmountKind;
  if (from.has_mass_g()) return {AmountKind::kGrams, from.mass_g()};
  if (from.has_volume_ml()) return {AmountKind::kMillilitres, from.volume_ml()};
  return from.has_count() ? kitchen::Amount{AmountKind::kPieces, from.count()} : kitchen::Amount{};
}

class Scaler {
 public:
  Scaler(const v1::Recipe& recipe, const RecipeSize& size, const v1::Kitchen* kitchen,
         const std::vector<v1::Packet>& packets, kitchen::Measures shownIn)
      : recipe_(recipe), size_(size), kitchen_(kitchen), packets_(packets), shownIn_(shownIn) {}

  v1::ScaledRecipe run() {
    readFactor();
    scaled_.set_factor(factor_);
    scaled_.set_serving_count(factor_ * recipe_.serving_count());
    for (const v1::Ingredient& one : recipe_.ingredients()) addLine(one.name(), amountIn(one), one.note());
    addFormula();
    for (const v1::Step& step : recipe_.steps())
      if (step.has_oven()) addBake(step);
    return std::move(scaled_);
  }

 private:
  // Doughs come in whole pieces, and everything else follows them.
  void readFactor() {
    const v1::BreadFormula& formula = recipe_.formula();
    const double ownMass = formula.piece_count() * formula.piece_mass_g();
    pieceMass_ = size_.pieceGrams > 0 ? size_.pieceGrams : formula.piece_mass_g();
    if (size_.pieces > 0) {
      pieces_ = size_.pieces;
      factor_ = pieces_ * pieceMass_ / ownMass;
      return;
    }
    if (size_.pan != nullptr) {
      const kitchen::Pan own = panOf(firstPanOf(recipe_)->oven().pan());
      const kitchen::Pan other = panOf(*size_.pan);
      factor_ = kitchen::areaFactor(own, other) * other.count / own.count;
    } else {
      factor_ = size_.servings / std::max(1, recipe_.serving_count());
    }
    if (ownMass <= 0) return;
    pieces_ = std::max(1, static_cast<int>(std::ceil(formula.piece_count() * factor_ - 1e-9)));
    // A pan of another size holds as many pieces, each of another size.
    if (size_.pan != nullptr) {
      pieces_ = formula.piece_count();
      pieceMass_ = formula.piece_mass_g() * factor_;
    } else {
      factor_ = static_cast<double>(pieces_) / formula.piece_count();
    }
  }

  void addLine(const std::string& name, const kitchen::Amount& own, const std::string& note) {
    const kitchen::Amount exact{own.kind, own.value * factor_};
    kitchen::Amount rounded = exact;
    if (own.kind == kitchen::AmountKind::kPieces) rounded.value = kitchen::wholePieces(name, exact.value);
    v1::ScaledLine& line = *scaled_.add_lines();
    line.set_name(name);
    *line.mutable_exact() = amountOf(exact);
    const double count = packetsOf(name, exact);
    if (count > 0) rounded.value = count * amountOf(packetOf(packets_, name)->size()).value;
    *line.mutable_rounded() = amountOf(rounded);
    line.set_shown(shownAmount(rounded, shownIn_));
    if (count > 0) line.set_shown(absl::StrCat(line.shown(), ", ", packetWords(count)));
    line.set_note(note);
    line.set_far_off(std::abs(rounded.value - exact.value) > kFarOff * exact.value);
  }

  // How many packets an amount is; 0 where it is not sold in them, or they are not near.
  double packetsOf(const std::string& name, const kitchen::Amount& exact) const {
    const v1::Packet* packet = packetOf(packets_, name);
    if (packet == nullptr || exact.value <= 0) return 0;
    const kitchen::Amount size = amountOf(packet->size());
    return size.kind == exact.kind ? kitchen::halfPackets(exact.value, size.value) : 0;
  }

  static std::string packetWords(double count) {
    const int whole = static_cast<int>(count);
    const std::string half = count > whole ? "½" : "";
    return absl::StrCat(whole == 0 ? "" : absl::StrCat(whole), half, count > 1 ? " packets" : " packet");
  }

  void addFormula() {
    if (pieces_ == 0) return;
    const v1::BreadFormula& formula = recipe_.formula();
    scaled_.set_piece_count(pieces_);
    scaled_.set_piece_mass_g(pieceMass_);
    double all = 0;
    for (const v1::FormulaLine& line : formula.lines()) all += line.percent();
    const double dough = pieces_ * pieceMass_ / (1 - formula.handling_loss_percent() / 100);
    for (const v1::FormulaLine& line : formula.lines()) {
      const kitchen::Amount grams{kitchen::AmountKind::kGrams, dough * line.percent() / all};
      v1::ScaledLine& told = *scaled_.add_lines();
      told.set_name(line.name());
      *told.mutable_exact() = *told.mutable_rounded() = amountOf(grams);
      told.set_shown(shownAmount(grams, shownIn_));
    }
  }

  void addBake(const v1::Step& step) {
    const v1::OvenNeed& need = step.oven();
    v1::ScaledBake& bake = *scaled_.add_bakes();
    bake.set_step_id(step.id());
    bake.set_title(step.title());
    bake.set_setpoint_celsius(need.setpoint_celsius());
    *bake.mutable_recipe_duration() = need.duration().likely();
    const int pans = !need.has_pan()        ? 0
                     : size_.pan != nullptr ? std::max(1, size_.pan->count())
                                            : pansFor(need, factor_);
    const kitchen::BakeMinutes minutes = minutesOfBake(need, pans);
    *bake.mutable_least_duration() = durationOf(std::lround(minutes.least));
    *bake.mutable_most_duration() = durationOf(static_cast<std::int64_t>(std::ceil(minutes.most - 1e-6)));
    if (pans == 0) return;
    *bake.mutable_pan() = size_.pan != nullptr ? *size_.pan : need.pan();
    bake.mutable_pan()->set_count(pans);
    if (kitchen_ == nullptr) return;
    for (const v1::Oven& oven : kitchen_->ovens()) addLoads(oven, bake);
  }

  kitchen::BakeMinutes minutesOfBake(const v1::OvenNeed& need, int pans) const {
    const double own = minutesOf(need.duration().likely());
    if (recipe_.has_formula())
      return kitchen::minutesAtMass(own, pieceMass_ / recipe_.formula().piece_mass_g());
    if (pans == 0 || size_.pan != nullptr) return {own, own};
    const double perPan = factor_ * std::max(1, need.pan().count()) / pans;
    return need.food_class() == v1::FOOD_CLASS_ROAST ? kitchen::minutesOfRoast(own, perPan)
                                                     : kitchen::minutesAtDepth(own, perPan);
  }

  void addLoads(const v1::Oven& from, v1::ScaledBake& bake) const {
    const kitchen::Oven oven = plainOven(from);
    kitchen::Pan pan = panOf(bake.pan());
    v1::OvenLoads& loads = *bake.add_ovens();
    loads.set_oven_id(from.id());
    const kitchen::PanLoads needed = kitchen::loadsOf(oven, pan, pan.count);
    loads.set_load_count(needed.count);
    loads.set_fewer_may_do(needed.fewerMayDo);
    if (loads.load_count() > 0) return;
    pan.count = 1;
    if (const auto would = kitchen::panThatWould(oven, {pan}, 0))
      *loads.mutable_pan_that_would() = panOf(*would, bake.pan().name());
  }

  const v1::Recipe& recipe_;
  const RecipeSize& size_;
  const v1::Kitchen* kitchen_;
  const std::vector<v1::Packet>& packets_;
  const kitchen::Measures shownIn_;
  double factor_ = 1;
  int pieces_ = 0;
  double pieceMass_ = 0;
  v1::ScaledRecipe scaled_;
};

}  // namespace

v1::ScaledRecipe scaledRecipe(const v1::Recipe& recipe, const RecipeSize& size, const v1::Kitchen* kitchen,
                              const std::vector<v1::Packet>& packets, kitchen::Measures shownIn) {
  return Scaler(recipe, size, kitchen, packets, shownIn).run();
}

}  // namespace suppertide::compose
