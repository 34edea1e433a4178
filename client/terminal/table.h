// Aligned columns that wrap inside themselves.
#pragma once

#include <string>
#include <vector>

#include "client/terminal/text.h"

namespace suppertide::terminal {

struct Column {
  std::string title;
  // As wide as its widest cell. Otherwise it shares what is left with the other such columns.
  bool fitted = true;
  int weight = 1;  // share of what is left
  int most = 0;    // widest it may get when fitted; 0: no limit
  int least = 0;   // narrowest when fitted, so that tables below each other line up
};

// A cell's lines; each is wrapped to its column.
using Cell = std::vector<std::string>;
using Row = std::vector<Cell>;

class Table {
 public:
  explicit Table(std::vector<Column> columns) : columns_(std::move(columns)) {}
  // As many cells as there are columns.
  void add(Row row) { rows_.push_back(std::move(row)); }
  bool empty() const { return rows_.empty(); }
  // Lines of at most `width` columns, without blanks at their end. With `titles`, a
  // first line of column titles.
  std::string text(int width, const Style& style, bool titles) const;

 private:
  std::vector<int> columnWidths(int width, bool titles) const;
  std::vector<Column> columns_;
  std::vector<Row> rows_;
};

}  // namespace suppertide::terminal
