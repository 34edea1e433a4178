// Changes that were tried and do fit, as they come in; cheapest first at the end.
#pragma once

#include <map>
#include <vector>

#include "client/link/session.h"
#include "client/ui/difference_model.h"
#include "client/words/plan_view.h"

namespace suppertide {

class RemedyModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by RemedySearch")
  Q_PROPERTY(int count READ count NOTIFY countChanged FINAL)
 public:
  // `moves`: "12 steps stand elsewhere"; empty where there was no plan before.
  enum Role { NumberRole = Qt::UserRole, TitleRole, CostRole, MovesRole };

  explicit RemedyModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  void clear();
  // `view` is of the event and plan as they are. A number told again is the same remedy with a better plan.
  void add(const v1::FindRemediesResponse& found, const PlanView& view);
  void rank(const google::protobuf::RepeatedField<std::int32_t>& numbers, const PlanView& view);
  // Null: no such number.
  const v1::FindRemediesResponse* found(int number) const;
  QString title(int number) const;  // empty: no such number

  int count() const { return rowCount(); }
  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  void countChanged();

 private:
  struct Row {
    int number = 0;
    QString title, cost, moves;
    QString key() const { return QString::number(number); }
    friend bool operator==(const Row&, const Row&) = default;
  };
  Row row(const v1::FindRemediesResponse& found, const PlanView& view) const;
  void refresh(const PlanView* view);

  std::map<int, v1::FindRemediesResponse> found_;
  std::vector<int> order_;
  std::vector<Row> rows_;
};

}  // namespace suppertide
