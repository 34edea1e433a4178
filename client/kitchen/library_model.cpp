#include "client/kitchen/library_model.h"

#include <QtCore/qcollator.h>

#include <algorithm>

namespace suppertide {

void LibraryModel::setRows(std::vector<Row> rows, const QString& filter) {
  std::erase_if(rows, [&](const Row& row) { return !row.name.contains(filter, Qt::CaseInsensitive); });
  QCollator order;
  order.setNumericMode(true);
  std::sort(rows.begin(), rows.end(), [&](const Row& a, const Row& b) {
    const int names = order.compare(a.name, b.name);
    return names != 0 ? names < 0 : a.id < b.id;
  });
  const std::size_t before = rows_.size();
  become(rows_, std::move(rows));
  if (rows_.size() != before) Q_EMIT countChanged();
}

int LibraryModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant LibraryModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case IdRole:
      return row.id;
    case NameRole:
      return row.name;
    case DetailRole:
      return row.detail;
    case SymbolRole:
      return row.symbol;
    case ChangedRole:
      return row.changed;
    default:
      return {};
  }
}

QHash<int, QByteArray> LibraryModel::roleNames() const {
  return {{IdRole, "documentId"},
          {NameRole, "name"},
          {DetailRole, "detail"},
          {SymbolRole, "symbol"},
          {ChangedRole, "changed"}};
}

}  // namespace suppertide
