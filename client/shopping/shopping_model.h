// The lines of one shopping list, in groups: by day, or by section of the shop.
#pragma once

#include <QtCore/qcoreapplication.h>

#include <vector>

#include "client/link/replica.h"
#include "client/ui/difference_model.h"

namespace suppertide {

QString sectionName(v1::ShopSection section);

class ShoppingModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by a ShoppingController")
 public:
  // `group`: what the line stands under; `heading`: the same at the first line of a group, else empty.
  // `detail`: for which dishes. `note`: what is at hand, what is missing still. `buyer`: a name, empty for
  // nobody. `waits`: not yet told to the server.
  enum Role {
    ItemIdRole = Qt::UserRole,
    NameRole,
    ShownRole,
    DetailRole,
    NoteRole,
    GroupRole,
    HeadingRole,
    BuyerRole,
    BuyerPlaceRole,
    SectionRole,
    TickedRole,
    TickedByRole,
    OwnRole,
    AtHandRole,
    WaitsRole,
  };

  struct Row {
    QString itemId, name, shown, detail, note, group, heading, buyer, tickedBy;
    int section = 0;
    int buyerPlace = -1;  // among the members; -1: nobody
    bool ticked = false;
    bool own = false;
    bool atHand = false;
    bool waits = false;
    QString key() const { return itemId; }
    friend bool operator==(const Row&, const Row&) = default;
  };

  explicit ShoppingModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  void setRows(std::vector<Row> rows) { become(rows_, std::move(rows)); }
  const std::vector<Row>& rows() const { return rows_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<Row> rows_;
};

// What to take out of fridge and freezer, by time.
class FetchModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by a ShoppingController")
 public:
  // `day`: the heading, at the first line of a day. `when`: "07:30", or words where no plan says. `way`:
  // "from freezer to fridge".
  enum Role {
    DayRole = Qt::UserRole,
    WhenRole,
    WhatRole,
    WayRole,
    WhyRole,
    CookRole,
    DoneRole,
    TickableRole
  };

  struct Row {
    QString id, day, when, what, way, why, cook, stepId;
    bool done = false;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };

  explicit FetchModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  void setRows(std::vector<Row> rows) { become(rows_, std::move(rows)); }
  const std::vector<Row>& rows() const { return rows_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<Row> rows_;
};

}  // namespace suppertide
