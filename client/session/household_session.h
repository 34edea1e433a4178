// One household as this device knows it: the connection and its state in words,
// the event that is shown, who the device is, and what its person does.
//
// What a person does is on disk before it is answered, is shown at once and sent when
// the server can be reached; what the server refuses is kept aside and told.
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

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>

#include "absl/status/statusor.h"
#include "client/link/link.h"
#include "client/link/outbox.h"
#include "client/link/pending.h"
#include "client/link/replica_file.h"
#include "client/link/sender.h"
#include "client/session/event_model.h"
#include "client/session/refused_model.h"
#include "client/session/undo_stack.h"
#include "client/words/plan_view.h"

namespace suppertide::link {
class Session;  // client/link/session.h
}

namespace suppertide {

class HouseholdSession : public QObject, private link::LinkListener, private link::SenderListener {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  Q_PROPERTY(suppertide::HouseholdSession::State state READ state NOTIFY stateChanged FINAL)
  Q_PROPERTY(QString stateText READ stateText NOTIFY stateChanged FINAL)
  // What the server or the network said; empty when live.
  Q_PROPERTY(QString why READ why NOTIFY stateChanged FINAL)
  // What was done here and has not reached the server yet.
  Q_PROPERTY(int waitingCount READ waitingCount NOTIFY stateChanged FINAL)
  // What the server refused; see sendAgain() and letGo().
  Q_PROPERTY(suppertide::RefusedModel* refused READ refused CONSTANT FINAL)
  // The last change made here, in words, that undo() takes back; empty: none. After a restart the last
  // report of this device's person counts.
  Q_PROPERTY(QString undoText READ undoText NOTIFY undoChanged FINAL)
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

  // `eventId`: what to show; empty: the nearest event. `folder`: where this household is kept for an
  // offline start, with what waits to be sent; empty: nothing outlives this object. Once, or after stop().
  void start(link::LinkOptions options, const std::string& eventId, const std::filesystem::path& folder = {});
  // Forgets server and household; what waits stays on disk.
  void stop();
  // Takes a household as if a server had told it, with `memberId` as the writer. Without start() this is a
  // household offline: what is done is shown and waits.
  void adopt(std::shared_ptr<const link::Replica> replica, const std::string& memberId = {});
  // The units that temperatures and amounts are read in; absent: the household's. replica() then says
  // that the household has these.
  void setUnits(std::optional<v1::TemperatureUnit> temperature, std::optional<v1::MeasureSystem> measures);
  // Tells everything anew, as after a change of language.
  void tellAnew();
  // To be called every second or so.
  void tick();

  State state() const { return state_; }
  QString stateText() const;
  QString why() const { return why_; }
  int waitingCount() const { return pending_.waitingCount(); }
  RefusedModel* refused() const { return refused_; }
  QString undoText() const;
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

  // As the server told it last, with what was done here on top. Null before anything is known.
  const std::shared_ptr<const link::Replica>& replica() const { return replica_; }
  // The event that is shown, with its plan if it has one; null when there is none. The same
  // object until the household or the choice of event changes.
  const std::shared_ptr<const PlanView>& view() const { return view_; }
  // Who made the last change; empty: nobody in particular.
  QString changedBy() const { return changedBy_; }
  // Of the household's members; empty: unknown.
  QString nameOf(const std::string& memberId) const;

  // Tells that something of the shown event was done or seen: id, member and time are filled in. Shown at
  // once.
  void report(v1::Report report);
  // A write: one of the requests that change documents (UpdateEventRequest, EditShoppingRequest, ...), with
  // its household, request id and the id of what it creates filled in where absent. Shown at once where
  // the outcome can be foreseen. False: it could not be kept on disk, and failed() has said why.
  bool send(const google::protobuf::Message& request);
  // Whether the report, the document or the ticked line of that id has not reached the server yet.
  Q_INVOKABLE bool waits(const QString& id) const { return pending_.waits(id.toStdString()); }
  // Takes the last change made here back, if nobody has changed it since.
  Q_INVOKABLE void undo();
  // Something was changed by a call, in the household revision `revision`; undo() takes it back by `back`
  // for as long as nobody changes any of `touched`.
  void remember(const QString& what, std::int64_t revision, UndoStack::Documents touched,
                std::function<void()> back);

  // Both versions of something that was changed elsewhere while it was changed here; `theirs` is null
  // when it is gone. `mine` is null when `number` is not refused for that.
  struct Conflict {
    std::shared_ptr<const google::protobuf::Message> mine;  // the document as it was to be
    std::shared_ptr<const google::protobuf::Message> theirs;
  };
  Conflict conflict(qint64 number) const;
  // Sends something refused once more; after a conflict, over what is there now.
  Q_INVOKABLE void sendAgain(qint64 number);
  // Forgets something refused.
  Q_INVOKABLE void letGo(qint64 number);
  // What refused() lists, as it was sent, oldest first.
  std::vector<link::Outbox::Entry> refusedEntries() const;

  // Asks the server off this thread and hands the answer back on it; nothing comes once this
  // object or `context` is gone. `work` may run long and may call post() on the way.
  template <typename Answer>
  void ask(QObject* context, std::function<absl::StatusOr<Answer>(link::Session&)> work,
           std::function<void(absl::StatusOr<Answer>)> done) {
    run([this, context = QPointer<QObject>(context), work = std::move(work),
         done = std::move(done)](link::Session& server) {
      post([this, context, done, answer = work(server)]() mutable {
        --asking_;
        if (context != nullptr) done(std::move(answer));
      });
    });
  }
  // What ask() has not handed back yet.
  int asking() const { return asking_; }
  // Runs `told` on this object's thread. Any thread.
  void post(std::function<void()> told);

 Q_SIGNALS:
  void stateChanged();
  void householdChanged();  // replica(), view()
  void eventIdChanged();    // eventId(), view()
  void memberChanged();
  void nowChanged();
  void undoChanged();
  // The server refused something that was done here: it is in refused(). `what` and `why` are for people.
  void refusedNow(qint64 number, const QString& what, const QString& why);
  // The same, because somebody else changed it meanwhile: see conflict().
  void conflicted(qint64 number);
  // Something could not be done; a sentence for people.
  void failed(const QString& text);

 private:
  void linkStateChanged(link::LinkState state, const std::string& why) override;
  void replicaChanged(std::shared_ptr<const link::Replica> replica, const std::string& memberId) override;
  void requestTaken(const link::Outbox::Entry& entry,
                    std::shared_ptr<const google::protobuf::Message> answer) override;
  void requestRefused(const link::Outbox::Entry& entry, const absl::Status& why) override;
  void openStore(const std::filesystem::path& folder);
  bool keep(std::shared_ptr<google::protobuf::Message> request, bool undoable);
  void wasTaken(std::int64_t number, std::shared_ptr<const google::protobuf::Message> answer);
  void wasRefused(const link::Outbox::Entry& entry, const absl::Status& why);
  // The household with what waits on top, and all that is made of it. `writer`: the member whose
  // change came in, empty for none in particular; null: it was done here.
  void show(const std::string* writer = nullptr);
  void refreshRefused();
  void readInOwnUnits();
  std::string planner() const;  // of the shown event's plan
  void chooseEvent();
  void refreshView();
  void askWhoIAm();
  void run(std::function<void(link::Session&)> work);
  const v1::Member* member() const;
  // Of the shown event, by this device's person, not too long ago; null: none.
  const v1::Report* lastReport() const;

  Clock clock_;
  Instant now_;
  EventModel* events_;
  RefusedModel* refused_;
  std::shared_ptr<const link::Replica> told_;     // by the server
  std::shared_ptr<const link::Replica> replica_;  // with what waits on top
  std::shared_ptr<const PlanView> view_;
  QString changedBy_;
  std::string wantedEventId_;
  std::string eventId_;
  std::string memberId_;
  State state_ = Connecting;
  QString why_;
  link::LinkOptions options_;
  std::optional<v1::TemperatureUnit> temperatureUnit_;
  std::optional<v1::MeasureSystem> measureSystem_;
  int asking_ = 0;
  link::Pending pending_;
  UndoStack undo_;
  std::unique_ptr<link::Outbox> outbox_;
  std::unique_ptr<link::ReplicaKeeper> keeper_;  // null: nothing is kept
  std::shared_ptr<link::Session> server_;        // null without a server
  QThreadPool workers_;
  std::unique_ptr<link::Sender> sender_;
  std::unique_ptr<link::Link> link_;  // last: goes first
};

}  // namespace suppertide
