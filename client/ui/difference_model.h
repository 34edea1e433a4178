// A list model that changes from one list of rows to the next by inserts,
// removes, moves and dataChanged, never by a reset: focus, drags and
// animations of the rows that stay live through every update.
//
// A Row has `QString key() const`, unique in its list, and operator==.
#pragma once

#include <QtCore/qabstractitemmodel.h>
#include <QtCore/qset.h>
#include <QtQml/qqmlregistration.h>

#include <algorithm>
#include <utility>
#include <vector>

namespace suppertide {

class DifferenceModel : public QAbstractListModel {
  Q_OBJECT
  QML_ANONYMOUS
 public:
  using QAbstractListModel::QAbstractListModel;

 protected:
  // Turns `rows` into `next`, telling each step. Linear when the order is kept,
  // quadratic in the rows that change places.
  template <class Row>
  void become(std::vector<Row>& rows, std::vector<Row> next) {
    removeMissing(rows, next);
    QSet<QString> known;
    for (const Row& row : rows) known.insert(row.key());
    std::vector<int> changed;
    for (std::size_t i = 0; i < next.size();) {
      if (!known.contains(next[i].key())) {
        i += insertRun(rows, next, i, known);
        continue;
      }
      bring(rows, next[i].key(), i);
      if (!(rows[i] == next[i])) {
        rows[i] = std::move(next[i]);
        changed.push_back(static_cast<int>(i));
      }
      ++i;
    }
    tellChanged(changed);
  }

 private:
  template <class Row>
  void removeMissing(std::vector<Row>& rows, const std::vector<Row>& next) {
    QSet<QString> wanted;
    for (const Row& row : next) wanted.insert(row.key());
    for (std::size_t limit = rows.size(); limit > 0;) {
      std::size_t first = limit;
      while (first > 0 && !wanted.contains(rows[first - 1].key())) --first;
      if (first == limit) {
        --limit;
        continue;
      }
      beginRemoveRows({}, static_cast<int>(first), static_cast<int>(limit) - 1);
      rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(first),
                 rows.begin() + static_cast<std::ptrdiff_t>(limit));
      endRemoveRows();
      limit = first;
    }
  }

  // Inserts the new rows that begin at `at` and stand together; returns how many.
  template <class Row>
  std::size_t insertRun(std::vector<Row>& rows, std::vector<Row>& next, std::size_t at,
                        const QSet<QString>& known) {
    std::size_t limit = at;
    while (limit < next.size() && !known.contains(next[limit].key())) ++limit;
    beginInsertRows({}, static_cast<int>(at), static_cast<int>(limit) - 1);
    rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(at),
                std::make_move_iterator(next.begin() + static_cast<std::ptrdiff_t>(at)),
                std::make_move_iterator(next.begin() + static_cast<std::ptrdiff_t>(limit)));
    endInsertRows();
    return limit - at;
  }

  // Moves the row of `key`, which stands at `to` or later, to `to`.
  template <class Row>
  void bring(std::vector<Row>& rows, const QString& key, std::size_t to) {
    const auto target = rows.begin() + static_cast<std::ptrdiff_t>(to);
    const auto found = std::find_if(target, rows.end(), [&](const Row& row) { return row.key() == key; });
    if (found == target) return;
    const int from = static_cast<int>(found - rows.begin());
    beginMoveRows({}, from, from, {}, static_cast<int>(to));
    std::rotate(target, found, found + 1);
    endMoveRows();
  }

  // One dataChanged for each run of neighbours.
  void tellChanged(const std::vector<int>& changed);
};

}  // namespace suppertide
