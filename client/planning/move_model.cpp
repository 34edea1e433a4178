#include "client/planning/move_model.h"

#include "client/ui/symbol.h"
#include "client/words/move_words.h"
#include "client/words/step_words.h"

namespace suppertide {

void MoveModel::setMoves(const Moves& moves, const PlanView& view) {
  const MoveWords words(view);
  std::vector<Row> rows;
  for (const v1::MovedStep& moved : moves) {
    const v1::PlannedStep* step = view.step(moved.step_id());
    const std::string dish = moved.step_id().substr(0, moved.step_id().find('/'));
    Row row;
    row.id = QString::fromStdString(moved.step_id());
    row.title = QString::fromStdString(moved.title());
    row.dish = view.names().dish(dish);
    row.was = words.was(moved);
    row.now = words.now(moved);
    row.changes = words.changes(moved);
    row.cause = words.cause(moved);
    row.symbol = step == nullptr ? Symbol::Close : StepWords::symbol(step->kind());
    rows.push_back(std::move(row));
  }
  setRows(std::move(rows));
}

void MoveModel::setRows(std::vector<Row> rows) {
  const std::size_t before = rows_.size();
  become(rows_, std::move(rows));
  if (rows_.size() != before) Q_EMIT countChanged();
}

int MoveModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant MoveModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case IdRole:
      return row.id;
    case TitleRole:
    case Qt::DisplayRole:
      return row.title;
    case DishRole:
      return row.dish;
    case WasRole:
      return row.was;
    case NowRole:
      return row.now;
    case ChangesRole:
      return row.changes;
    case CauseRole:
      return row.cause;
    case SymbolRole:
      return row.symbol;
    default:
      return {};
  }
}

QHash<int, QByteArray> MoveModel::roleNames() const {
  return {{IdRole, "stepId"}, {TitleRole, "title"},     {DishRole, "dish"},   {WasRole, "was"},
          {NowRole, "now"},   {ChangesRole, "changes"}, {CauseRole, "cause"}, {SymbolRole, "symbol"}};
}

}  // namespace suppertide
