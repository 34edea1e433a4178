#include "client/timeline/lane_model.h"

#include <algorithm>
#include <cmath>

namespace suppertide {
namespace {
constexpr double kBeside = 0.75;       // of the view's length, laid out at each side of it
constexpr double kUsualStretch = 1.5;  // a lane is laid out anew once it is stretched by so much
constexpr double kUsualShift = 0.45;   // or shifted by so much of the view

BarView laidFor(const BarView& view) {
  const double beside = (view.limit - view.start) * kBeside;
  return {view.start - beside, view.limit + beside, view.pixelsPerMinute};
}

bool reachesOver(const BarView& laid, const BarView& view) {
  return laid.start <= view.start && view.limit <= laid.limit;
}

// How badly it fits; from 1 on it is to be laid out anew.
double misfit(const BarView& laid, const BarView& view) {
  const double stretch = std::abs(std::log(view.pixelsPerMinute / laid.pixelsPerMinute));
  const double shift = std::abs(laid.start + laid.limit - view.start - view.limit) / 2;
  return std::max(stretch / std::log(kUsualStretch), shift / (view.limit - view.start) / kUsualShift);
}

}  // namespace

void LaneModel::setLanes(std::vector<Lane> lanes) {
  std::vector<Row> rows;
  QSet<QString> kept;
  for (Lane& lane : lanes) {
    StepModel*& steps = steps_[lane.id];
    if (steps == nullptr) {
      steps = new StepModel(this);
      steps->setView(view_);
      steps->setKept(kept_);
      if (view_.pixelsPerMinute > 0) steps->lay(laidFor(view_));
    }
    steps->setSteps(std::move(lane.steps));
    kept.insert(lane.id);
    rows.push_back({lane.id, lane.title, lane.subtitle, lane.spoken, lane.kind, lane.symbol, lane.subRowCount,
                    std::move(lane.curve), std::move(lane.ghosts)});
  }
  become(rows_, std::move(rows));
  setInSight(firstInSight_, lastInSight_);
  steps_.removeIf([&](const QHash<QString, StepModel*>::iterator& entry) {
    if (kept.contains(entry.key())) return false;
    entry.value()->deleteLater();  // delegates on their way out may still look at it
    return true;
  });
}

bool LaneModel::setView(const BarView& view, int most) {
  view_ = view;
  bool complete = true;
  for (StepModel* steps : std::as_const(steps_)) {
    most -= steps->setView(view, most);
    complete = complete && steps->complete();
  }
  return complete;
}

StepModel* LaneModel::inSight(const Row& row) const {
  StepModel* steps = steps_.value(row.id);
  return steps != nullptr && steps->inSight() ? steps : nullptr;
}

void LaneModel::layAll() {
  if (view_.pixelsPerMinute <= 0) return;
  for (const Row& row : rows_)
    if (StepModel* steps = inSight(row)) steps->lay(laidFor(view_));
}

bool LaneModel::laySome() {
  if (view_.pixelsPerMinute <= 0) return false;
  StepModel* worst = nullptr;
  double most = 1;
  for (const Row& row : rows_) {
    StepModel* steps = inSight(row);
    if (steps == nullptr) continue;
    if (!reachesOver(steps->laid(), view_)) steps->lay(laidFor(view_));
    const double fit = misfit(steps->laid(), view_);
    if (fit < most) continue;
    most = fit;
    worst = steps;
  }
  if (worst != nullptr) worst->lay(laidFor(view_));
  return std::any_of(rows_.begin(), rows_.end(), [&](const Row& row) {
    const StepModel* steps = inSight(row);
    return steps != nullptr && steps->laidScale() != view_.pixelsPerMinute;
  });
}

void LaneModel::setInSight(int first, int last) {
  firstInSight_ = first;
  lastInSight_ = last;
  for (int i = 0; i < static_cast<int>(rows_.size()); ++i) {
    StepModel* steps = steps_.value(rows_[static_cast<std::size_t>(i)].id);
    const bool inSight = first <= i && i <= last;
    if (steps == nullptr || inSight == steps->inSight()) continue;
    steps->setInSight(inSight);
    if (inSight && view_.pixelsPerMinute > 0) steps->lay(laidFor(view_));
  }
}

void LaneModel::setKept(const QSet<QString>& ids) {
  if (ids == kept_) return;
  kept_ = ids;
  for (StepModel* steps : std::as_const(steps_)) steps->setKept(ids);
}

int LaneModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant LaneModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case IdRole:
      return row.id;
    case KindRole:
      return static_cast<int>(row.kind);
    case TitleRole:
    case Qt::DisplayRole:
      return row.title;
    case SubtitleRole:
      return row.subtitle;
    case SpokenRole:
      return row.spoken;
    case SymbolRole:
      return row.symbol;
    case SubRowCountRole:
      return row.subRowCount;
    case StepsRole:
      return QVariant::fromValue(steps_.value(row.id));
    case CurveRole:
      return QVariant::fromValue(row.curve);
    case HasCurveRole:
      return row.kind == LaneKind::kOven;
    case IsDoughRole:
      return row.kind == LaneKind::kDough;
    case GhostsRole:
      return QVariant::fromValue(row.ghosts);
    default:
      return {};
  }
}

QHash<int, QByteArray> LaneModel::roleNames() const {
  return {{IdRole, "laneId"},         {KindRole, "laneKind"},           {TitleRole, "title"},
          {SubtitleRole, "subtitle"}, {SpokenRole, "spoken"},           {SymbolRole, "symbol"},
          {StepsRole, "steps"},       {SubRowCountRole, "subRowCount"}, {CurveRole, "curve"},
          {HasCurveRole, "hasCurve"}, {IsDoughRole, "isDough"},         {GhostsRole, "ghosts"}};
}

}  // namespace suppertide
