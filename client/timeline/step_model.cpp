#include "client/timeline/step_model.h"

#include <algorithm>

namespace suppertide {
namespace {
constexpr double kNearby = 80;      // pixels beside the view in which bars are made,
constexpr double kStillNear = 400;  // and in which they stay
constexpr double kDoughWidth = 48;  // pixels, from which a dough's shape says something
}  // namespace

void StepModel::setSteps(std::vector<StepRow> steps) {
  all_ = std::move(steps);
  latestLimit_.clear();
  for (const StepRow& step : all_)
    latestLimit_.push_back(std::max(step.limit(), latestLimit_.empty() ? step.limit() : latestLimit_.back()));
  showBars(kNoLimit);
  Q_EMIT othersChanged();
}

int StepModel::setView(const BarView& view, int most) {
  if (view == view_ && complete_) return 0;
  view_ = view;
  return showBars(most);
}

void StepModel::lay(const BarView& laid) {
  if (laid == laid_) return;
  laid_ = laid;
  Q_EMIT laidChanged();
}

void StepModel::setInSight(bool inSight) {
  if (inSight == inSight_) return;
  inSight_ = inSight;
  Q_EMIT inSightChanged();
}

void StepModel::setKept(const QSet<QString>& ids) {
  if (ids == kept_) return;
  kept_ = ids;
  showBars(kNoLimit);
}

bool StepModel::hasRoom(const StepRow& step) const {
  const double width = step.length * view_.pixelsPerMinute;
  if (step.rise.known() && width >= kDoughWidth) return true;
  return width + step.roomAfter * view_.pixelsPerMinute >= kWordsWidth;
}

int StepModel::showBars(int most) {
  std::vector<StepRow> next;
  QSet<QString> ids;
  int made = 0;
  complete_ = true;
  const double scale = std::max(view_.pixelsPerMinute, 1e-9);
  const auto consider = [&](const StepRow& step) {
    const bool kept = step.moved || step.id == held_ || kept_.contains(step.id);
    const bool isBar = bars_.contains(step.id);
    const double margin = (isBar ? kStillNear : kNearby) / scale;
    const bool near = step.limit() >= view_.start - margin && step.start < view_.limit + margin;
    if (!kept && !(near && hasRoom(step))) return;
    if (!kept && !isBar && made >= most) {
      complete_ = false;
      return;
    }
    made += isBar ? 0 : 1;
    next.push_back(step);
    ids.insert(step.id);
  };
  for (const StepRow& step : all_) consider(step);
  const bool others = ids != bars_;
  bars_ = std::move(ids);
  reuse(rows_, std::move(next));
  if (others) Q_EMIT othersChanged();
  return made;
}

std::pair<std::size_t, std::size_t> StepModel::touching(double start, double limit) const {
  const auto first = std::lower_bound(latestLimit_.begin(), latestLimit_.end(), start);
  const auto last = std::lower_bound(all_.begin(), all_.end(), limit,
                                     [](const StepRow& step, double at) { return step.start < at; });
  return {static_cast<std::size_t>(first - latestLimit_.begin()),
          static_cast<std::size_t>(last - all_.begin())};
}

int StepModel::hold(const QString& stepId) {
  held_ = stepId;
  showBars(0);
  for (std::size_t i = 0; i < rows_.size(); ++i)
    if (rows_[i].shown && rows_[i].id == stepId) return static_cast<int>(i);
  return -1;
}

QString StepModel::neighbour(const QString& stepId, int by) const {
  const auto found =
      std::find_if(all_.begin(), all_.end(), [&](const StepRow& step) { return step.id == stepId; });
  if (found == all_.end()) return {};
  if (by < 0) return found == all_.begin() ? QString() : (found - 1)->id;
  return found + 1 == all_.end() ? QString() : (found + 1)->id;
}

QString StepModel::firstInView(int by) const {
  if (all_.empty()) return {};
  const auto starts = [&](double at) {
    return std::lower_bound(all_.begin(), all_.end(), at,
                            [](const StepRow& step, double minute) { return step.start < minute; });
  };
  auto found = starts(by > 0 ? view_.start : view_.limit);
  if (by < 0 && found != all_.begin()) --found;
  return found == all_.end() ? all_.back().id : found->id;
}

QString StepModel::stepNear(double minute, int subRow, double reach) const {
  const StepRow* nearest = nullptr;
  double least = reach;
  const auto [first, limit] = touching(minute - reach, minute + reach);
  for (std::size_t i = first; i < limit; ++i) {
    if (all_[i].subRow != subRow) continue;
    const double away = std::max({0.0, all_[i].start - minute, minute - all_[i].limit()});
    if (away > least || (nearest != nullptr && away == least)) continue;
    nearest = &all_[i];
    least = away;
  }
  return nearest == nullptr ? QString() : nearest->id;
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
    case ShownRole:
      return row.shown;
    default:
      return {};
  }
}

QHash<int, QByteArray> StepModel::roleNames() const {
  return {
      {IdRole, "stepId"},       {TitleRole, "title"},   {DetailRole, "detail"},       {SpokenRole, "spoken"},
      {StateRole, "stateText"}, {SymbolRole, "symbol"}, {KindRole, "kind"},           {StartRole, "start"},
      {LengthRole, "length"},   {SubRowRole, "subRow"}, {RoomAfterRole, "roomAfter"}, {SlackRole, "slack"},
      {HandsOnRole, "handsOn"}, {LateRole, "late"},     {DoneRole, "done"},           {PinnedRole, "pinned"},
      {MovedRole, "moved"},     {RiseRole, "rise"},     {ShownRole, "shown"}};
}

}  // namespace suppertide
