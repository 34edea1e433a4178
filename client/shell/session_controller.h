// The connection to one household, for the window: its state in words, its
// events, the one shown, and the timeline of that.
//
// Belongs to the thread of the user interface; what the link tells is posted
// there. Knows the time only from its clock.
#pragma once

#include <QtCore/qobject.h>
#include <QtQml/qqmlregistration.h>

#include <functional>
#include <memory>
#include <string>

#include "client/link/link.h"
#include "client/shell/event_model.h"
#include "client/timeline/timeline.h"

namespace suppertide {

class SessionController : public QObject, private link::LinkListener {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(suppertide::SessionController::State state READ state NOTIFY stateChanged FINAL)
  Q_PROPERTY(QString stateText READ stateText NOTIFY stateChanged FINAL)
  // What the server or the network said; empty when live.
  Q_PROPERTY(QString why READ why NOTIFY stateChanged FINAL)
  // Something of the household has been received, now or before a cut.
  Q_PROPERTY(bool known READ known NOTIFY householdChanged FINAL)
  Q_PROPERTY(QString householdName READ householdName NOTIFY householdChanged FINAL)
  Q_PROPERTY(suppertide::EventModel* events READ events CONSTANT FINAL)
  Q_PROPERTY(QString eventId READ eventId WRITE setEventId NOTIFY eventIdChanged FINAL)
  Q_PROPERTY(suppertide::Timeline* timeline READ timeline CONSTANT FINAL)
 public:
  enum State {
    Connecting,  // the first time
    Live,
    Offline,  // trying again; what was known stays
    Refused,
  };
  Q_ENUM(State)
  using Clock = std::function<Instant()>;

  explicit SessionController(Clock clock, QObject* parent = nullptr);
  ~SessionController() override;

  // `eventId`: what to show; empty: the nearest event. Once.
  void start(link::LinkOptions options, const std::string& eventId);
  // To be called every second or so.
  void tick();

  State state() const { return state_; }
  QString stateText() const;
  QString why() const { return why_; }
  bool known() const { return replica_ != nullptr && replica_->revision > 0; }
  QString householdName() const;
  EventModel* events() const { return events_; }
  QString eventId() const { return QString::fromStdString(eventId_); }
  void setEventId(const QString& id);
  Timeline* timeline() const { return timeline_; }

 Q_SIGNALS:
  void stateChanged();
  void householdChanged();
  void eventIdChanged();

 private:
  void linkStateChanged(link::LinkState state, const std::string& why) override;
  void replicaChanged(std::shared_ptr<const link::Replica> replica, const std::string& memberId) override;
  QString memberName(const std::string& memberId) const;

  Clock clock_;
  EventModel* events_;
  Timeline* timeline_;
  std::shared_ptr<const link::Replica> replica_;
  std::string wantedEventId_;
  std::string eventId_;
  State state_ = Connecting;
  QString why_;
  std::unique_ptr<link::Link> link_;  // last: goes first
};

}  // namespace suppertide
