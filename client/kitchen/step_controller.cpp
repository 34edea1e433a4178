#include "client/kitchen/step_controller.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "client/words/plan_view.h"

namespace suppertide {
namespace {

using google::protobuf::Message;

constexpr int kUsualOvenCelsius = 180;

void setMinutes(google::protobuf::Duration& length, double minutes) {
  length.set_seconds(std::llround(minutes) * 60);
}

// What a kind needs, and nothing that another kind left behind.
void becomeKind(v1::Step& step, v1::StepKind kind, double minutes) {
  step.set_kind(kind);
  if (kind == v1::STEP_KIND_OVEN) {
    if (!step.has_oven()) {
      step.mutable_oven()->set_setpoint_celsius(kUsualOvenCelsius);
      setMinutes(*step.mutable_oven()->mutable_duration()->mutable_likely(), minutes);
    }
  } else {
    step.clear_oven();
  }
  if (kind == v1::STEP_KIND_FERMENT) {
    if (!step.has_ferment()) step.mutable_ferment()->set_stage(v1::FERMENT_STAGE_BULK);
  } else {
    step.clear_ferment();
  }
  if (kind == v1::STEP_KIND_OVEN || kind == v1::STEP_KIND_FERMENT)
    step.clear_duration();
  else if (!step.duration().has_likely())
    setMinutes(*step.mutable_duration()->mutable_likely(), minutes);
  if (kind == v1::STEP_KIND_HANDS_ON || kind == v1::STEP_KIND_OVEN || kind == v1::STEP_KIND_BURNER ||
      kind == v1::STEP_KIND_FERMENT)
    step.clear_longest_duration();
  if (kind != v1::STEP_KIND_THAW) step.clear_thaw_way();
}

}  // namespace

void StepController::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) connect(draft_, &Draft::changed, this, &StepController::refresh);
  Q_EMIT sourceChanged();
  refresh();
}

void StepController::setPath(const QString& path) {
  if (path == path_) return;
  path_ = path;
  Q_EMIT sourceChanged();
  refresh();
}

const v1::Step* StepController::step() const {
  const auto* recipe = draft_ == nullptr ? nullptr : dynamic_cast<const v1::Recipe*>(&draft_->document());
  if (recipe == nullptr) return nullptr;
  for (int i = 0; i < recipe->steps_size(); ++i) {
    if (path_ == QStringLiteral("steps[%1]").arg(i)) return &recipe->steps(i);
  }
  return nullptr;
}

int StepController::kind() const {
  return step() == nullptr ? 0 : step()->kind();
}

bool StepController::bread() const {
  const auto* recipe = draft_ == nullptr ? nullptr : dynamic_cast<const v1::Recipe*>(&draft_->document());
  return recipe != nullptr && recipe->has_formula();
}

bool StepController::ordered() const {
  return step() != nullptr && (step()->after_size() > 0 || step()->starts_free());
}

// Of all kitchens, each id once; then what the step asks for and no kitchen has.
std::vector<std::pair<std::string, QString>> StepController::things() const {
  std::vector<std::pair<std::string, QString>> all;
  std::set<std::string> seen;
  if (draft_ == nullptr || draft_->session() == nullptr || draft_->session()->replica() == nullptr)
    return all;
  for (const auto& [id, kitchen] : draft_->session()->replica()->kitchens) {
    for (const v1::Equipment& thing : kitchen.equipment())
      if (seen.insert(thing.id()).second)
        all.emplace_back(thing.id(), QString::fromStdString(thing.display_name()));
  }
  if (step() != nullptr) {
    for (const v1::EquipmentUse& use : step()->equipment())
      if (seen.insert(use.equipment_id()).second)
        all.emplace_back(use.equipment_id(),
                         tr("%1 (in no kitchen)").arg(QString::fromStdString(use.equipment_id())));
  }
  return all;
}

QStringList StepController::equipment() const {
  QStringList names;
  for (const auto& [id, name] : things()) names += name;
  return names;
}

QList<int> StepController::usedEquipment() const {
  QList<int> marks;
  if (step() == nullptr) return marks;
  const auto all = things();
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool used =
        std::any_of(step()->equipment().begin(), step()->equipment().end(),
                    [&](const v1::EquipmentUse& use) { return use.equipment_id() == all[i].first; });
    if (used) marks += static_cast<int>(i);
  }
  return marks;
}

void StepController::editStep(const QString& place, const std::function<void(v1::Step&)>& change) {
  const v1::Step* here = step();
  if (here == nullptr) return;
  draft_->edit(place, [&, id = here->id()](Message& document) {
    for (v1::Step& one : *static_cast<v1::Recipe&>(document).mutable_steps())
      if (one.id() == id) change(one);
  });
}

void StepController::setKind(int kind) {
  editStep({}, [kind](v1::Step& step) {
    const double minutes =
        step.has_oven() ? toMinutes(step.oven().duration().likely()) : toMinutes(step.duration().likely());
    becomeKind(step, static_cast<v1::StepKind>(kind), minutes > 0 ? minutes : 30);
  });
}

void StepController::toggleEquipment(int index) {
  const auto all = things();
  if (index < 0 || index >= static_cast<int>(all.size())) return;
  const std::string& id = all[static_cast<std::size_t>(index)].first;
  editStep({}, [&](v1::Step& step) {
    auto& uses = *step.mutable_equipment();
    const auto found = std::find_if(uses.begin(), uses.end(),
                                    [&](const v1::EquipmentUse& use) { return use.equipment_id() == id; });
    if (found != uses.end())
      uses.erase(found);
    else
      step.add_equipment()->set_equipment_id(id);
  });
}

void StepController::toggleAfter(int row) {
  if (row < 0 || row >= rowCount()) return;
  const std::string id = rows_[static_cast<std::size_t>(row)].id.toStdString();
  editStep({}, [&](v1::Step& step) {
    auto& after = *step.mutable_after();
    const auto found =
        std::find_if(after.begin(), after.end(), [&](const v1::After& one) { return one.step_id() == id; });
    if (found != after.end())
      after.erase(found);
    else
      step.add_after()->set_step_id(id);
    if (step.after_size() > 0) step.clear_starts_free();
  });
}

void StepController::editAfter(int row, const QString& place, const std::function<void(v1::After&)>& change) {
  if (row < 0 || row >= rowCount()) return;
  const std::string id = rows_[static_cast<std::size_t>(row)].id.toStdString();
  editStep(place, [&](v1::Step& step) {
    for (v1::After& after : *step.mutable_after())
      if (after.step_id() == id) change(after);
  });
}

void StepController::setFromStart(int row, bool fromStart) {
  editAfter(row, {}, [&](v1::After& after) { after.set_from_start(fromStart); });
}

void StepController::setGaps(int row, double least, double most) {
  editAfter(row, QStringLiteral("%1.after[%2]").arg(path_).arg(row), [&](v1::After& after) {
    if (least < 0)
      after.clear_least_gap();
    else
      setMinutes(*after.mutable_least_gap(), least);
    if (most < 0)
      after.clear_most_gap();
    else
      setMinutes(*after.mutable_most_gap(), most);
  });
}

int StepController::addStep(Draft* draft, const QString& title, int kind, double minutes) {
  if (draft == nullptr || dynamic_cast<const v1::Recipe*>(&draft->document()) == nullptr) return -1;
  int row = -1;
  draft->edit({}, [&](Message& document) {
    auto& recipe = static_cast<v1::Recipe&>(document);
    v1::Step& step = *recipe.add_steps();
    fillUsual(step, document);
    step.set_title(title.trimmed().toStdString());
    setMinutes(*step.mutable_duration()->mutable_likely(), minutes);
    becomeKind(step, static_cast<v1::StepKind>(kind), minutes);
    row = recipe.steps_size() - 1;
  });
  return row;
}

void StepController::refresh() {
  std::vector<Row> next;
  if (const v1::Step* here = step()) {
    for (const v1::Step& other : static_cast<const v1::Recipe&>(draft_->document()).steps()) {
      if (other.id() == here->id()) continue;
      Row row{QString::fromStdString(other.id()), QString::fromStdString(other.title())};
      for (const v1::After& after : here->after()) {
        if (after.step_id() != other.id()) continue;
        row.marked = true;
        row.fromStart = after.from_start();
        if (after.has_least_gap()) row.least = toMinutes(after.least_gap());
        if (after.has_most_gap()) row.most = toMinutes(after.most_gap());
      }
      next.push_back(std::move(row));
    }
  }
  become(rows_, std::move(next));
  Q_EMIT stepChanged();
}

int StepController::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant StepController::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case TitleRole:
      return row.title;
    case MarkedRole:
      return row.marked;
    case FromStartRole:
      return row.fromStart;
    case LeastRole:
      return row.least;
    case MostRole:
      return row.most;
    default:
      return {};
  }
}

QHash<int, QByteArray> StepController::roleNames() const {
  return {{TitleRole, "title"},
          {MarkedRole, "marked"},
          {FromStartRole, "fromStart"},
          {LeastRole, "least"},
          {MostRole, "most"}};
}

}  // namespace suppertide
