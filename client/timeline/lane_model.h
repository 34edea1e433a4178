// The lanes of a plan: cooks, ovens, doughs, burners, places.
//
// Each lane keeps its own StepModel for as long as it is there, so that bars and
// their focus live through every change of the plan.
#pragma once

#include <QtCore/qhash.h>

#include <vector>

#include "client/timeline/step_model.h"

namespace suppertide {

class LaneModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by Timeline")
 public:
  enum Role {
    IdRole = Qt::UserRole,
    KindRole,
    TitleRole,
    SubtitleRole,
    SpokenRole,
    SymbolRole,
    SubRowCountRole,
    StepsRole,
    CurveRole,
    HasCurveRole,
    IsDoughRole,
    GhostsRole,
  };

  explicit LaneModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  void setLanes(std::vector<Lane> lanes);
  // For every lane's steps, `most` new bars in all. False when some are still wanting.
  bool setView(const BarView& view, int most = StepModel::kNoLimit);
  // Lays out every lane in sight for the view and some room beside it.
  void layAll();
  // While the view moves: lays out the lane that fits the view least, and each one that does not reach over
  // it. Whether any differs from the view by its scale afterwards.
  bool laySome();
  // The rows that the view shows, both included.
  Q_INVOKABLE void setInSight(int first, int last);
  // The ids of steps that stand as bars wherever they are.
  void setKept(const QSet<QString>& ids);
  // Null when there is no such lane.
  StepModel* steps(const QString& laneId) const { return steps_.value(laneId); }

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  static constexpr int kAllRows = 1 << 30;

  struct Row {
    QString id, title, subtitle, spoken;
    LaneKind kind = LaneKind::kWaiting;
    int symbol = 0;
    int subRowCount = 1;
    OvenCurve curve;
    Ghosts ghosts;
    QString key() const { return id; }
    friend bool operator==(const Row&, const Row&) = default;
  };

  StepModel* inSight(const Row& row) const;

  std::vector<Row> rows_;
  QHash<QString, StepModel*> steps_;  // by lane, children of this
  BarView view_;
  QSet<QString> kept_;
  int firstInSight_ = 0;
  int lastInSight_ = kAllRows;
};

}  // namespace suppertide
