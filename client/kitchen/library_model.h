// The documents of one kind, by name, those that are only drafts among them.
#pragma once

#include <vector>

#include "client/kitchen/document_kind.h"
#include "client/ui/difference_model.h"

namespace suppertide {

class LibraryModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by a KitchenDesk")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
 public:
  // `changed`: a draft of it waits to be saved.
  enum Role { IdRole = Qt::UserRole, NameRole, DetailRole, SymbolRole, ChangedRole };

  struct Row {
    QString id, name, detail;
    int symbol = 0;
    bool changed = false;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };

  explicit LibraryModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  int count() const { return rowCount(); }
  // Shows those whose name holds `filter`, by name.
  void setRows(std::vector<Row> rows, const QString& filter);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void countChanged();

 private:
  std::vector<Row> rows_;
};

}  // namespace suppertide
