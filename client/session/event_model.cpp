#include "client/session/event_model.h"

#include <algorithm>

#include "client/words/time_words.h"

namespace suppertide {
namespace {
constexpr std::int64_t kHalfDay = 12 * 60 * 60;
}  // namespace

void EventModel::setEvents(const link::Replica& replica) {
  std::vector<Row> rows;
  for (const auto& [id, event] : replica.events) {
    const std::string& zone = event.time_zone().empty() ? replica.household.time_zone() : event.time_zone();
    const std::int64_t serving = event.courses().empty() ? 0 : event.courses(0).serving_time().seconds();
    const QString when =
        serving == 0 ? QString() : TimeWords(zone).longDay(Instant(std::chrono::seconds(serving)));
    rows.push_back({QString::fromStdString(id), QString::fromStdString(event.display_name()), when, serving});
  }
  std::stable_sort(rows.begin(), rows.end(),
                   [](const Row& a, const Row& b) { return a.servingSeconds < b.servingSeconds; });
  const std::size_t before = rows_.size();
  become(rows_, std::move(rows));
  if (rows_.size() != before) Q_EMIT countChanged();
}

std::string EventModel::nearest(std::int64_t nowSeconds) const {
  for (const Row& row : rows_) {
    if (row.servingSeconds + kHalfDay >= nowSeconds) return row.id.toStdString();
  }
  return rows_.empty() ? std::string() : rows_.back().id.toStdString();
}

int EventModel::rowOf(const QString& eventId) const {
  const auto found =
      std::find_if(rows_.begin(), rows_.end(), [&](const Row& row) { return row.id == eventId; });
  return found == rows_.end() ? -1 : static_cast<int>(found - rows_.begin());
}

QString EventModel::idAt(int row) const {
  return row < 0 || row >= rowCount() ? QString() : rows_[static_cast<std::size_t>(row)].id;
}

int EventModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant EventModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == IdRole) return row.id;
  if (role == NameRole || role == Qt::DisplayRole) return row.name;
  if (role == WhenRole) return row.when;
  return {};
}

QHash<int, QByteArray> EventModel::roleNames() const {
  return {{IdRole, "eventId"}, {NameRole, "name"}, {WhenRole, "when"}};
}

}  // namespace suppertide
