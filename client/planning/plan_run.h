// Planning of the shown event: begun, followed, stopped; the best plan so far.
//
// "No plan fits" is an answer: the plan that came names the dishes that are left out.
#pragma once

#include <QtCore/qobject.h>
#include <QtQml/qqmlregistration.h>

#include <atomic>
#include <memory>

#include "client/planning/documents.h"
#include "client/session/household_session.h"

namespace suppertide {

class PlanRun : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by Planning")
  Q_PROPERTY(bool running READ running NOTIFY changed FINAL)
  // Told to stop; the best so far is on its way.
  Q_PROPERTY(bool stopping READ stopping NOTIFY changed FINAL)
  // Another device has this event planned right now.
  Q_PROPERTY(bool elsewhere READ elsewhere NOTIFY changed FINAL)
  // In [0, 1], of the time it may take.
  Q_PROPERTY(double part READ part NOTIFY changed FINAL)
  Q_PROPERTY(QString timeText READ timeText NOTIFY changed FINAL)
  Q_PROPERTY(QString soFar READ soFar NOTIFY changed FINAL)
  Q_PROPERTY(QString proven READ proven NOTIFY changed FINAL)
  // Why there is no plan; empty: nothing went wrong.
  Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)
 public:
  explicit PlanRun(HouseholdSession& session, QObject* parent = nullptr);
  ~PlanRun() override;

  // Plans anew; `seconds` 0: as long as is usual. Nothing happens while one runs.
  Q_INVOKABLE void begin(int seconds = 0);
  // Makes the plan fit what was changed, moving as little as can be.
  Q_INVOKABLE void adapt();
  // Keeps the best so far. Also of a planning that runs elsewhere.
  Q_INVOKABLE void stop();

  bool running() const { return running_; }
  bool stopping() const { return stopping_; }
  bool elsewhere() const { return elsewhere_; }
  double part() const;
  QString timeText() const;
  QString soFar() const;
  QString proven() const;
  QString trouble() const { return trouble_; }
  // The household with the best plan so far; null when none runs, or it has none yet.
  const Household& best() const { return best_; }

 Q_SIGNALS:
  void changed();
  void bestChanged();

 private:
  bool mayBegin();
  void take(const v1::MakePlanResponse& message);
  void finish(const absl::StatusOr<v1::MakePlanResponse>& answer);
  void householdCame();
  void setBest(Household best);
  const TimeWords& words() const;

  // Shared with the thread that follows the planning.
  struct Wish {
    std::atomic<bool> stop{false};
  };

  HouseholdSession& session_;
  std::shared_ptr<Wish> wish_;
  std::string eventId_;
  bool running_ = false;
  bool stopping_ = false;
  bool elsewhere_ = false;
  double seconds_ = 0;
  double limit_ = 1;
  v1::Quality quality_;
  bool known_ = false;  // some quality was told
  QString trouble_;
  Household best_;
  std::int64_t awaited_ = 0;  // the household revision that has the plan; 0: none is awaited
  std::int64_t planRevisionBefore_ = 0;
};

}  // namespace suppertide
