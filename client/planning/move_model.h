// The steps that another plan moves.
#pragma once

#include <vector>

#include "client/ui/difference_model.h"
#include "client/words/plan_view.h"

namespace suppertide {

class MoveModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by WhatIf and RemedySearch")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
 public:
  enum Role {
    IdRole = Qt::UserRole,
    TitleRole,
    DishRole,
    WasRole,
    NowRole,
    ChangesRole,
    CauseRole,
    SymbolRole
  };

  explicit MoveModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  using Moves = google::protobuf::RepeatedPtrField<v1::MovedStep>;
  // `view` is of the plan that moves them.
  void setMoves(const Moves& moves, const PlanView& view);
  void clear() { setRows({}); }

  int count() const { return rowCount(); }
  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void countChanged();

 private:
  struct Row {
    QString id, title, dish, was, now, changes, cause;
    int symbol = 0;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  void setRows(std::vector<Row> rows);
  std::vector<Row> rows_;
};

}  // namespace suppertide
