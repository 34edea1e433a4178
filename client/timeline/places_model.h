// A list model of rows that come and go with what is in view, and whose order says nothing.
//
// Rows are places: one that is not needed stays with `shown` false until another row takes it, so that
// delegates are made seldom and kept. A Row has `bool shown` beside what DifferenceModel asks for.
#pragma once

#include <QtCore/qhash.h>

#include <vector>

#include "client/ui/difference_model.h"

namespace suppertide {

class PlacesModel : public DifferenceModel {
  Q_OBJECT
  QML_ANONYMOUS
 public:
  using DifferenceModel::DifferenceModel;

 protected:
  // A row of a known key stays where it is; others take the places of rows that are gone, or new ones at the
  // end.
  template <class Row>
  void reuse(std::vector<Row>& rows, std::vector<Row> next) {
    QHash<QString, std::size_t> places;
    for (std::size_t i = 0; i < rows.size(); ++i)
      if (rows[i].shown) places.insert(rows[i].key(), i);
    std::vector<bool> taken(rows.size()), changed(rows.size());
    std::vector<Row> others;
    for (Row& row : next) {
      const auto place = places.constFind(row.key());
      if (place == places.cend()) {
        others.push_back(std::move(row));
        continue;
      }
      taken[*place] = true;
      changed[*place] = !(rows[*place] == row);
      if (changed[*place]) rows[*place] = std::move(row);
    }
    std::size_t placed = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (taken[i]) continue;
      changed[i] = rows[i].shown || placed < others.size();
      if (placed < others.size()) {
        rows[i] = std::move(others[placed++]);
      } else {
        rows[i].shown = false;
      }
    }
    append(rows, others, placed);
    for (std::size_t i = 0; i < changed.size(); ++i)
      if (changed[i]) Q_EMIT dataChanged(index(static_cast<int>(i)), index(static_cast<int>(i)));
  }

 private:
  template <class Row>
  void append(std::vector<Row>& rows, std::vector<Row>& others, std::size_t from) {
    if (from == others.size()) return;
    const std::size_t count = others.size() - from;
    beginInsertRows({}, static_cast<int>(rows.size()), static_cast<int>(rows.size() + count) - 1);
    rows.insert(rows.end(), std::make_move_iterator(others.begin() + static_cast<std::ptrdiff_t>(from)),
                std::make_move_iterator(others.end()));
    endInsertRows();
  }
};

}  // namespace suppertide
