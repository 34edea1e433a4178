#include "client/planning/remedy_model.h"

#include <algorithm>

#include "client/planning/plan_difference.h"
#include "client/words/remedy_words.h"

namespace suppertide {

void RemedyModel::clear() {
  found_.clear();
  order_.clear();
  refresh(nullptr);
}

void RemedyModel::add(const v1::FindRemediesResponse& found, const PlanView& view) {
  if (found_.count(found.number()) == 0) order_.push_back(found.number());
  found_[found.number()] = found;
  refresh(&view);
}

void RemedyModel::rank(const google::protobuf::RepeatedField<std::int32_t>& numbers, const PlanView& view) {
  order_.clear();
  for (const int number : numbers)
    if (found_.count(number) > 0) order_.push_back(number);
  refresh(&view);
}

const v1::FindRemediesResponse* RemedyModel::found(int number) const {
  const auto found = found_.find(number);
  return found == found_.end() ? nullptr : &found->second;
}

QString RemedyModel::title(int number) const {
  const auto row =
      std::find_if(rows_.begin(), rows_.end(), [&](const Row& one) { return one.number == number; });
  return row == rows_.end() ? QString() : row->title;
}

RemedyModel::Row RemedyModel::row(const v1::FindRemediesResponse& found, const PlanView& view) const {
  google::protobuf::RepeatedPtrField<v1::Remedy> changes = found.further();
  *changes.Add() = found.remedy();
  std::rotate(changes.pointer_begin(), changes.pointer_end() - 1, changes.pointer_end());
  const RemedyWords words(view, found.event(), found.plan());
  Row row;
  row.number = found.number();
  row.title = words.sentence(changes);
  row.cost = words.cost();
  if (view.plan() == nullptr || view.plan()->steps().empty()) return row;
  const int moved = movedBetween(*view.plan(), found.plan()).size();
  row.moves = moved == 0   ? tr("No other step moves.")
              : moved == 1 ? tr("1 step stands elsewhere.")
                           : tr("%1 steps stand elsewhere.").arg(moved);
  return row;
}

void RemedyModel::refresh(const PlanView* view) {
  std::vector<Row> rows;
  for (const int number : order_) rows.push_back(row(found_.at(number), *view));
  const std::size_t before = rows_.size();
  become(rows_, std::move(rows));
  if (rows_.size() != before) Q_EMIT countChanged();
}

int RemedyModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant RemedyModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == NumberRole) return row.number;
  if (role == TitleRole || role == Qt::DisplayRole) return row.title;
  if (role == CostRole) return row.cost;
  if (role == MovesRole) return row.moves;
  return {};
}

QHash<int, QByteArray> RemedyModel::roleNames() const {
  return {{NumberRole, "number"}, {TitleRole, "title"}, {CostRole, "cost"}, {MovesRole, "moves"}};
}

}  // namespace suppertide
