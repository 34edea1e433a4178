// What cannot all be had: clashes of wishes, and dishes that were left out.
#pragma once

#include <vector>

#include "client/ui/difference_model.h"
#include "client/words/plan_view.h"

namespace suppertide {

class ClashModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by RemedySearch")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
 public:
  // Wishes and rules: one a line. `isWishes`: leave out any one of them and the others can be had.
  enum Role { HeadlineRole = Qt::UserRole, WishesRole, RulesRole, IsWishesRole };

  explicit ClashModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  // `clashes` in place of the plan's where there are any.
  void show(const PlanView& view, const google::protobuf::RepeatedPtrField<v1::Clash>& clashes);

  int count() const { return rowCount(); }
  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void countChanged();

 private:
  struct Row {
    QString headline, wishes, rules;
    bool isWishes = false;
    QString key() const { return headline + wishes; }
    friend bool operator==(const Row&, const Row&) = default;
  };
  std::vector<Row> rows_;
};

}  // namespace suppertide
