// The steps of one lane that are near the view, by time.
//
// Holds all of the lane; its rows are only those that touch the window, so that
// a Repeater makes no more bars than can be seen soon. Every change, of the steps
// or of the window, arrives as a difference.
#pragma once

#include <vector>

#include "client/timeline/picture.h"
#include "client/ui/difference_model.h"

namespace suppertide {

class StepModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by LaneModel")
 public:
  enum Role {
    IdRole = Qt::UserRole,
    TitleRole,
    DetailRole,
    SpokenRole,
    StateRole,
    SymbolRole,
    KindRole,
    StartRole,
    LengthRole,
    SubRowRole,
    RoomAfterRole,
    SlackRole,
    HandsOnRole,
    LateRole,
    DoneRole,
    PinnedRole,
    MovedRole,
    RiseRole,
  };

  explicit StepModel(QObject* parent = nullptr) : DifferenceModel(parent) {}

  // By start.
  void setSteps(std::vector<StepRow> steps);
  // Half-open, minutes. Found by binary search.
  void setWindow(double start, double limit);
  const std::vector<StepRow>& allSteps() const { return all_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  void showWindow();

  std::vector<StepRow> all_;
  std::vector<double> latestLimit_;  // of the steps up to each one, never falling
  std::vector<StepRow> rows_;
  double windowStart_ = 0;
  double windowLimit_ = 0;
};

}  // namespace suppertide
