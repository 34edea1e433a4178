#include "client/timeline/step_model.h"

#include <algorithm>

namespace suppertide {

void StepModel::setSteps(std::vector<StepRow> steps) {
  all_ = std::move(steps);
  latestLimit_.clear();
  for (const StepRow& step : all_)
    latestLimit_.push_back(std::max(step.limit(), latestLimit_.empty() ? step.limit() : latestLimit_.back()));
  showWindow();
}

void StepModel::setWindow(double start, double limit) {
  if (start == windowStart_ && limit == windowLimit_) return;
  windowStart_ = start;
  windowLimit_ = limit;
  showWindow();
}

void StepModel::showWindow() {
  const auto first = std::lower_bound(latestLimit_.begin(), latestLimit_.end(), windowStart_);
  const auto limit = std::lower_bound(all_.begin(), all_.end(), windowLimit_,
                                      [](const StepRow& step, double at) { return step.start < at; });
  std::vector<StepRow> rows;
  for (auto step = all_.begin() + (first - latestLimit_.begin()); step < limit; ++step) {
    if (step->limit() >= windowStart_) rows.push_back(*step);
  }
  become(rows_, std::move(rows));
}

int StepModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant StepModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const StepRow& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case IdRole:
      return row.id;
    case TitleRole:
    case Qt::DisplayRole:
      return row.title;
    case DetailRole:
      return row.detail;
    case SpokenRole:
      return row.spoken;
    case StateRole:
      return row.state;
    case SymbolRole:
      return row.symbol;
    case KindRole:
      return row.kind;
    case StartRole:
      return row.start;
    case LengthRole:
      return row.length;
    case SubRowRole:
      return row.subRow;
    case RoomAfterRole:
      return row.roomAfter;
    case SlackRole:
      return row.slack;
    case HandsOnRole:
      return row.handsOn;
    case LateRole:
      return row.late;
    case DoneRole:
      return row.done;
    case PinnedRole:
      return row.pinned;
    case MovedRole:
      return row.moved;
    case RiseRole:
      return QVariant::fromValue(row.rise);
    default:
      return {};
  }
}

QHash<int, QByteArray> StepModel::roleNames() const {
  return {{IdRole, "stepId"},       {TitleRole, "title"},         {DetailRole, "detail"},
          {SpokenRole, "spoken"},   {StateRole, "stateText"},     {SymbolRole, "symbol"},
          {KindRole, "kind"},       {StartRole, "start"},         {LengthRole, "length"},
          {SubRowRole, "subRow"},   {RoomAfterRole, "roomAfter"}, {SlackRole, "slack"},
          {HandsOnRole, "handsOn"}, {LateRole, "late"},           {DoneRole, "done"},
          {PinnedRole, "pinned"},   {MovedRole, "moved"},         {RiseRole, "rise"}};
}

}  // namespace suppertide
