// The household's events, by the time of their first serving.
#pragma once

#include <string>
#include <vector>

#include "client/link/replica.h"
#include "client/ui/difference_model.h"

namespace suppertide {

class EventModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by HouseholdSession")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
 public:
  enum Role { IdRole = Qt::UserRole, NameRole, WhenRole };

  explicit EventModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  void setEvents(const link::Replica& replica);
  // The first whose serving is not yet over by half a day at `nowSeconds` (since 1970);
  // the last one when all are; empty when there is none.
  std::string nearest(std::int64_t nowSeconds) const;
  Q_INVOKABLE int rowOf(const QString& eventId) const;  // -1: not here
  Q_INVOKABLE QString idAt(int row) const;              // empty: no such row

  int count() const { return rowCount(); }
  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void countChanged();

 private:
  struct Row {
    QString id, name, when;
    std::int64_t servingSeconds = 0;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  std::vector<Row> rows_;
};

}  // namespace suppertide
