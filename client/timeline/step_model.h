// The steps of one lane, and which of them stand as bars of their own.
//
// Holds all of the lane; its rows are only those in view that have room for their words, and those that are
// kept, because they are focused, chosen or moved. All others are drawn by LaneBars without a delegate each.
// Rows are places: their order says nothing, and one that is not needed stays with `shown` false.
#pragma once

#include <vector>

#include "client/timeline/picture.h"
#include "client/timeline/places_model.h"

namespace suppertide {

// What the view shows, in minutes, half-open, and how closely.
struct BarView {
  double start = 0;
  double limit = 0;
  double pixelsPerMinute = 0;
  friend bool operator==(const BarView&, const BarView&) = default;
};

class StepModel : public PlacesModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by LaneModel")
  // What its bars and curves are laid out and painted for. While the view moves all of them are shifted and
  // stretched as one instead.
  Q_PROPERTY(double laidStart READ laidStart NOTIFY laidChanged FINAL)
  Q_PROPERTY(double laidLength READ laidLength NOTIFY laidChanged FINAL)
  Q_PROPERTY(double laidScale READ laidScale NOTIFY laidChanged FINAL)
 public:
  static constexpr int kNoLimit = 1 << 30;
  static constexpr double kWordsWidth = 72;  // pixels, from which words say something

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
    ShownRole,
  };

  explicit StepModel(QObject* parent = nullptr) : PlacesModel(parent) {}

  // By start.
  void setSteps(std::vector<StepRow> steps);
  // Makes at most `most` new bars and returns how many it made; when some are wanting, complete() is false
  // and the next call makes more. Linear in the steps in view.
  int setView(const BarView& view, int most = kNoLimit);
  bool complete() const { return complete_; }
  // Lays everything out for `laid` and its scale.
  void lay(const BarView& laid);
  const BarView& laid() const { return laid_; }
  double laidStart() const { return laid_.start; }
  double laidLength() const { return laid_.limit - laid_.start; }
  double laidScale() const { return laid_.pixelsPerMinute; }
  // Whether the lane is among those that the view shows; what is not is not laid out anew.
  bool inSight() const { return inSight_; }
  void setInSight(bool inSight);
  // These stand as bars wherever they are.
  void setKept(const QSet<QString>& ids);

  const std::vector<StepRow>& allSteps() const { return all_; }
  // Of allSteps(), by index.
  bool isBar(std::size_t index) const { return bars_.contains(all_[index].id); }
  // The steps that touch [start, limit): the first index, and the one after the last; a few between may not.
  std::pair<std::size_t, std::size_t> touching(double start, double limit) const;

  // The row of the step's bar, which is made if need be; -1 when there is no such step. It is kept until the
  // next call.
  Q_INVOKABLE int hold(const QString& stepId);
  // The step before (-1) or after (1) in the order of time; empty: none.
  Q_INVOKABLE QString neighbour(const QString& stepId, int by) const;
  // The first (1) or last (-1) step that begins in view, else the nearest one; empty: there is none at all.
  Q_INVOKABLE QString firstInView(int by) const;
  // The step nearest to a point, at most `reach` minutes away; empty: none.
  Q_INVOKABLE QString stepNear(double minute, int subRow, double reach) const;

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 Q_SIGNALS:
  // What is to be drawn beside the bars is something else.
  void othersChanged();
  void laidChanged();
  void inSightChanged();

 private:
  bool hasRoom(const StepRow& step) const;
  int showBars(int most);

  std::vector<StepRow> all_;
  std::vector<double> latestLimit_;  // of the steps up to each one, never falling
  std::vector<StepRow> rows_;
  QSet<QString> bars_;  // ids of the rows that are shown
  QSet<QString> kept_;
  QString held_;
  BarView view_;
  BarView laid_{0, 0, 1};
  bool inSight_ = true;
  bool complete_ = true;
};

}  // namespace suppertide
