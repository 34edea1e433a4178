// A list of records with the same few named fields, for lists that are made anew as a whole
// and shown by difference.
//
// The first field is the key, a text unique in the list. Fields are the roles.
#pragma once

#include <QtCore/qvariant.h>

#include <vector>

#include "client/ui/difference_model.h"

namespace suppertide {

// By field name; a field that is absent is an invalid value in QML.
using Record = QVariantMap;

class RecordModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the screens' controllers")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
 public:
  explicit RecordModel(const std::vector<const char*>& fields, QObject* parent = nullptr);

  void setRecords(std::vector<Record> records);
  int count() const { return rowCount(); }
  // Invalid when there is no such row or field.
  Q_INVOKABLE QVariant value(int row, const QString& field) const;
  Q_INVOKABLE int rowOf(const QString& key) const;  // -1: not here

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void countChanged();

 private:
  struct Row {
    QString id;
    Record record;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  std::vector<QString> fields_;
  std::vector<Row> rows_;
};

}  // namespace suppertide
