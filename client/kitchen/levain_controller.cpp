#include "client/kitchen/levain_controller.h"

namespace suppertide {
namespace {
// Of a mild wheat bread: the usual middle, to begin from. Common practice, no source.
constexpr double kUsualDoughShare = 18;
constexpr double kUsualHydration = 100;
}  // namespace

void LevainController::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) connect(draft_, &Draft::changed, this, &LevainController::changed);
  Q_EMIT changed();
}

const v1::BreadFormula* LevainController::formula() const {
  const auto* recipe = draft_ == nullptr ? nullptr : dynamic_cast<const v1::Recipe*>(&draft_->document());
  return recipe == nullptr || !recipe->has_formula() ? nullptr : &recipe->formula();
}

std::vector<const v1::Starter*> LevainController::all() const {
  std::vector<const v1::Starter*> starters;
  if (draft_ == nullptr || draft_->session() == nullptr || draft_->session()->replica() == nullptr)
    return starters;
  for (const auto& [id, starter] : draft_->session()->replica()->starters) starters.push_back(&starter);
  return starters;
}

bool LevainController::on() const {
  return formula() != nullptr && formula()->has_levain();
}

QStringList LevainController::starters() const {
  QStringList names;
  for (const v1::Starter* starter : all()) names += QString::fromStdString(starter->display_name());
  return names;
}

int LevainController::starter() const {
  const auto known = all();
  for (std::size_t i = 0; on() && i < known.size(); ++i) {
    if (known[i]->id() == formula()->levain().starter_id()) return static_cast<int>(i);
  }
  return -1;
}

void LevainController::editFormula(const std::function<void(v1::BreadFormula&)>& change) {
  if (formula() == nullptr) return;
  draft_->edit({}, [&](google::protobuf::Message& document) {
    change(*static_cast<v1::Recipe&>(document).mutable_formula());
  });
}

void LevainController::setOn(bool on) {
  const auto known = all();
  editFormula([&](v1::BreadFormula& formula) {
    if (!on) return formula.clear_levain();
    if (known.empty()) return;
    v1::LevainNeed& levain = *formula.mutable_levain();
    levain.set_starter_id(known.front()->id());
    levain.set_dough_share_percent(kUsualDoughShare);
    levain.set_hydration_percent(kUsualHydration);
    levain.set_whole_grain_percent(known.front()->whole_grain_percent());
  });
}

void LevainController::setStarter(int index) {
  const auto known = all();
  if (index < 0 || index >= static_cast<int>(known.size()) || !on()) return;
  editFormula([&](v1::BreadFormula& formula) {
    formula.mutable_levain()->set_starter_id(known[static_cast<std::size_t>(index)]->id());
  });
}

}  // namespace suppertide
