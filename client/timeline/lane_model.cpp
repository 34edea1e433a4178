#include "client/timeline/lane_model.h"

namespace suppertide {

void LaneModel::setLanes(std::vector<Lane> lanes) {
  std::vector<Row> rows;
  QSet<QString> kept;
  for (Lane& lane : lanes) {
    StepModel*& steps = steps_[lane.id];
    if (steps == nullptr) {
      steps = new StepModel(this);
      steps->setView(view_);
      steps->setKept(kept_);
    }
    steps->setSteps(std::move(lane.steps));
    kept.insert(lane.id);
    rows.push_back({lane.id, lane.title, lane.subtitle, lane.spoken, lane.kind, lane.symbol, lane.subRowCount,
                    std::move(lane.curve), std::move(lane.ghosts)});
  }
  become(rows_, std::move(rows));
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
