#include "client/ui/record_model.h"

namespace suppertide {

RecordModel::RecordModel(const std::vector<const char*>& fields, QObject* parent) : DifferenceModel(parent) {
  for (const char* field : fields) fields_.push_back(QString::fromLatin1(field));
}

void RecordModel::setRecords(std::vector<Record> records) {
  std::vector<Row> next;
  next.reserve(records.size());
  for (Record& record : records) {
    const QString id = record.value(fields_.front()).toString();
    next.push_back({id, std::move(record)});
  }
  const std::size_t before = rows_.size();
  become(rows_, std::move(next));
  if (rows_.size() != before) Q_EMIT countChanged();
}

QVariant RecordModel::value(int row, const QString& field) const {
  if (row < 0 || row >= rowCount()) return {};
  return rows_[static_cast<std::size_t>(row)].record.value(field);
}

int RecordModel::rowOf(const QString& key) const {
  for (std::size_t row = 0; row < rows_.size(); ++row)
    if (rows_[row].id == key) return static_cast<int>(row);
  return -1;
}

int RecordModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant RecordModel::data(const QModelIndex& index, int role) const {
  const int field = role == Qt::DisplayRole ? 0 : role - Qt::UserRole;
  if (!index.isValid() || field < 0 || static_cast<std::size_t>(field) >= fields_.size()) return {};
  return value(index.row(), fields_[static_cast<std::size_t>(field)]);
}

QHash<int, QByteArray> RecordModel::roleNames() const {
  QHash<int, QByteArray> names;
  for (std::size_t field = 0; field < fields_.size(); ++field)
    names[Qt::UserRole + static_cast<int>(field)] = fields_[field].toUtf8();
  return names;
}

}  // namespace suppertide
