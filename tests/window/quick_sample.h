// What the QML tests show: the sample dinner, at a fixed now.
#pragma once

#include <QtQml/qqmlregistration.h>

#include <memory>

#include "client/planning/planning.h"
#include "client/session/household_session.h"
#include "client/timeline/timeline.h"

namespace suppertide {

class SampleTimeline : public Timeline {
  Q_OBJECT
 public:
  explicit SampleTimeline(QObject* parent = nullptr);

  // As when another client changes the plan.
  Q_INVOKABLE void moveStep(const QString& stepId, int minutes);
};

// The sample's household without a server, on the device of its host Ines.
class SampleSession : public HouseholdSession {
  Q_OBJECT
  Q_PROPERTY(QString clock READ clock WRITE setClock CONSTANT)
 public:
  explicit SampleSession(QObject* parent = nullptr);

  QString clock() const { return {}; }
  void setClock(const QString& rfc3339);

 private:
  explicit SampleSession(std::shared_ptr<Instant> now, QObject* parent);
  std::shared_ptr<Instant> now_;
};

// The household of that dinner without a server, as its host sees it.
class KitchenSession : public HouseholdSession {
  Q_OBJECT
 public:
  explicit KitchenSession(QObject* parent = nullptr);

  Q_INVOKABLE void become(const QString& memberId) { setMemberId(memberId.toStdString()); }
};

// The same with planning, as the window puts them together; what a server would tell is told by calls.
class SamplePlanning : public QObject {
  Q_OBJECT
  Q_PROPERTY(suppertide::Planning* planning READ planning CONSTANT FINAL)
  Q_PROPERTY(suppertide::Timeline* timeline READ timeline CONSTANT FINAL)
 public:
  explicit SamplePlanning(QObject* parent = nullptr);

  Planning* planning() { return &planning_; }
  Timeline* timeline() { return &timeline_; }
  // To the open question: the step moves and nothing else.
  Q_INVOKABLE void answer();
  // Two wishes collide, and one remedy helps.
  Q_INVOKABLE void clash();

 private:
  HouseholdSession session_;
  Planning planning_;
  Timeline timeline_;
};

}  // namespace suppertide
