// One household as this device knows it: the connection and its state in words,
// the event that is shown, who the device is, and what its person does.
//
// Every screen takes this as `required property HouseholdSession session` and
// builds its models from view() or replica() when householdChanged, eventIdChanged
// or nowChanged is told. Belongs to the thread of the user interface; what the link
// and the server tell is posted there. Knows the time only from its clock.
#pragma once

#include <google/protobuf/message.h>

#include <QtCore/qdatetime.h>
#include <QtCore/qobject.h>
#include <QtCore/qpointer.h>
#include <QtCore/qthreadpool.h>
#include <QtQml/qqmlregistration.h>

#include <functional>
#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "client/link/link.h"
#include "client/session/event_model.h"
#include "client/words/plan_view.h"

namespace suppertide::link {
class Session;  // client/link/session.h
}

namespace suppertide {

class HouseholdSession : public QObject, private link::LinkListener {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(suppertide::HouseholdSession::State state READ state NOTIFY stateChanged FINAL)
  Q_PROPERTY(QString stateText READ stateText NOTIFY stateChanged FINAL)
  // What the server or the network said; empty when live.
  Q_PROPERTY(QString why READ why NOTIFY stateChanged FINAL)
  // Something of the household has been received, now or before a cut.
  Q_PROPERTY(bool known READ known NOTIFY householdChanged FINAL)
  Q_PROPERTY(QString householdName READ householdName NOTIFY householdChanged FINAL)
  Q_PROPERTY(suppertide::EventModel* events READ events CONSTANT FINAL)
  Q_PROPERTY(QString eventId READ eventId WRITE setEventId NOTIFY eventIdChanged FINAL)
  // This device's person; empty until the server has said who.
  Q_PROPERTY(QString memberId READ memberId NOTIFY memberChanged FINAL)
  Q_PROPERTY(QString memberName READ memberName NOTIFY memberChanged FINAL)
  // What the person may do: report (cooks), change events, kitchen and people (hosts).
  Q_PROPERTY(bool mayReport READ mayReport NOTIFY memberChanged FINAL)
  Q_PROPERTY(bool mayHost READ mayHost NOTIFY memberChanged FINAL)
  Q_PROPERTY(QDateTime now READ nowTime NOTIFY nowChanged FINAL)
 public:
  enum State {
    Connecting,  // the first time
    Live,
    Offline,  // trying again; what was known stays
    Refused,
  };
  Q_ENUM(State)
  using Clock = std::function<Instant()>;

  explicit HouseholdSession(Clock clock, QObject* parent = nullptr);
  ~HouseholdSession() override;

  // `eventId`: what to show; empty: the nearest event. Once.
  void start(link::LinkOptions options, const std::string& eventId);
  // Takes a household as if a server had told it, with `memberId` as the writer; for
  // tests without a server, and for what was stored before.
  void adopt(std::shared_ptr<const link::Replica> replica, const std::string& memberId = {});
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
  QString memberId() const { return QString::fromStdString(memberId_); }
  void setMemberId(const std::string& id);
  QString memberName() const { return nameOf(memberId_); }
  bool mayReport() const;
  bool mayHost() const;
  Instant now() const { return now_; }
  QDateTime nowTime() const;

  // Null before anything is known.
  const std::shared_ptr<const link::Replica>& replica() const { return replica_; }
  // The event that is shown, with its plan if it has one; null when there is none. The same
  // object until the household or the choice of event changes.
  const std::shared_ptr<const PlanView>& view() const { return view_; }
  // Who made the last change; empty: nobody in particular.
  QString changedBy() const { return changedBy_; }
  // Of the household's members; empty: unknown.
  QString nameOf(const std::string& memberId) const;

  // Tells that something of the shown event was done or seen: id, member and time are filled in.
  void report(v1::Report report);
  // A write: one of the requests that change documents (UpdateEventRequest, ...), with its
  // household and request id filled in where absent. Not reached or refused: failed() says so.
  void send(const google::protobuf::Message& request);
  // Asks the server off this thread and hands the answer back on it; nothing comes once this
  // object or `context` is gone. `work` may run long and may call post() on the way.
  template <typename Answer>
  void ask(QObject* context, std::function<absl::StatusOr<Answer>(link::Session&)> work,
           std::function<void(absl::StatusOr<Answer>)> done) {
    run([this, context = QPointer<QObject>(context), work = std::move(work),
         done = std::move(done)](link::Session& server) {
      post([context, done, answer = work(server)]() mutable {
        if (context != nullptr) done(std::move(answer));
      });
    });
  }
  // Runs `told` on this object's thread. Any thread.
  void post(std::function<void()> told);

 Q_SIGNALS:
  void stateChanged();
  void householdChanged();  // replica(), view()
  void eventIdChanged();    // eventId(), view()
  void memberChanged();
  void nowChanged();
  // Something could not be done; a sentence for people.
  void failed(const QString& text);

 private:
  void linkStateChanged(link::LinkState state, const std::string& why) override;
  void replicaChanged(std::shared_ptr<const link::Replica> replica, const std::string& memberId) override;
  void chooseEvent();
  void refreshView();
  void askWhoIAm();
  void run(std::function<void(link::Session&)> work);
  const v1::Member* member() const;

  Clock clock_;
  Instant now_;
  EventModel* events_;
  std::shared_ptr<const link::Replica> replica_;
  std::shared_ptr<const PlanView> view_;
  QString changedBy_;
  std::string wantedEventId_;
  std::string eventId_;
  std::string memberId_;
  State state_ = Connecting;
  QString why_;
  link::LinkOptions options_;
  std::shared_ptr<link::Session> server_;  // null without a server
  QThreadPool workers_;
  std::unique_ptr<link::Link> link_;  // last: goes first
};

}  // namespace suppertide
