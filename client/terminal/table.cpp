#include "client/terminal/table.h"

#include <algorithm>

namespace suppertide::terminal {
namespace {

constexpr int kGap = 2;
constexpr int kNarrowest = 8;

std::string withoutTrailingBlanks(std::string line) {
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

std::vector<std::string> wrapCell(const Cell& cell, int width) {
  std::vector<std::string> lines;
  for (const std::string& part : cell) {
    for (std::string& line : wrap(part, width)) lines.push_back(std::move(line));
  }
  return lines;
}

void appendRow(const std::vector<std::vector<std::string>>& cells, const std::vector<int>& widths,
               std::string& text) {
  std::size_t height = 0;
  for (const auto& cell : cells) height = std::max(height, cell.size());
  for (std::size_t row = 0; row < height; ++row) {
    std::string line;
    for (std::size_t column = 0; column < cells.size(); ++column) {
      if (column > 0) line += std::string(kGap, ' ');
      line += padRight(row < cells[column].size() ? cells[column][row] : "", widths[column]);
    }
    text += withoutTrailingBlanks(std::move(line)) + "\n";
  }
}

}  // namespace

std::vector<int> Table::columnWidths(int width, bool titles) const {
  std::vector<int> widths(columns_.size(), 0);
  int left = width - kGap * static_cast<int>(columns_.size() - 1);
  int weights = 0;
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    weights += columns_[c].fitted ? 0 : columns_[c].weight;
    if (!columns_[c].fitted) continue;
    widths[c] = std::max(columns_[c].least, titles ? displayWidth(columns_[c].title) : 0);
    for (const Row& row : rows_) {
      for (const std::string& line : row[c]) widths[c] = std::max(widths[c], displayWidth(line));
    }
    if (columns_[c].most > 0) widths[c] = std::min(widths[c], columns_[c].most);
    left -= widths[c];
  }
  for (std::size_t c = 0; c < columns_.size(); ++c) {
    if (!columns_[c].fitted) widths[c] = std::max(kNarrowest, left * columns_[c].weight / weights);
  }
  return widths;
}

std::string Table::text(int width, const Style& style, bool titles) const {
  const std::vector<int> widths = columnWidths(width, titles);
  std::string text;
  if (titles) {
    std::vector<std::vector<std::string>> cells;
    for (const Column& column : columns_) cells.push_back({column.title});
    std::string line;
    appendRow(cells, widths, line);
    line.pop_back();
    text += style.quiet(line) + "\n";
  }
  for (const Row& row : rows_) {
    std::vector<std::vector<std::string>> cells;
    for (std::size_t c = 0; c < columns_.size(); ++c) cells.push_back(wrapCell(row[c], widths[c]));
    appendRow(cells, widths, text);
  }
  return text;
}

}  // namespace suppertide::terminal
