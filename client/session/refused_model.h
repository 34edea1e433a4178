// What this person did and the server refused, oldest first, until they say what becomes of it.
#pragma once

#include <vector>

#include "client/link/outbox.h"
#include "client/link/replica.h"
#include "client/ui/difference_model.h"

namespace suppertide {

class RefusedModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by HouseholdSession")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
 public:
  enum Role {
    NumberRole = Qt::UserRole,
    WhatRole,
    WhyRole,
    ConflictRole,  // somebody else changed the same thing: both versions are there
  };

  explicit RefusedModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  void setEntries(const std::vector<link::Outbox::Entry>& entries, const link::Replica& replica);

  int count() const { return rowCount(); }
  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void countChanged();

 private:
  struct Row {
    qint64 number = 0;
    QString what, why;
    bool conflict = false;
    QString key() const { return QString::number(number); }
    friend bool operator==(const Row&, const Row&) = default;
  };
  std::vector<Row> rows_;
};

}  // namespace suppertide
