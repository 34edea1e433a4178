// One cook's tasks as the screen shows them, and what a tap on them tells.
//
// Belongs to the thread of the user interface. The lists follow the session's
// household, event and clock.
#pragma once

#include <QtCore/qpointer.h>

#include "client/session/household_session.h"
#include "client/tasks/task_list.h"
#include "client/ui/record_model.h"

namespace suppertide {

class TasksController : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::HouseholdSession* session READ session WRITE setSession NOTIFY sessionChanged)
  // Whose tasks: the device's own person where they cook, else one chosen here.
  Q_PROPERTY(QString cookId READ cookId WRITE setCookId NOTIFY changed FINAL)
  Q_PROPERTY(QString cookName READ cookName NOTIFY changed FINAL)
  Q_PROPERTY(suppertide::RecordModel* cooks READ cooks CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* now READ now CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* next READ next CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* later READ later CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* resting READ resting CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* others READ others CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* fetches READ fetches CONSTANT FINAL)
  Q_PROPERTY(int askingCount READ askingCount NOTIFY changed FINAL)
  Q_PROPERTY(bool hasPlan READ hasPlan NOTIFY changed FINAL)
  Q_PROPERTY(bool mayReport READ mayReport NOTIFY changed FINAL)
  // What is said where nothing is due: when the next task begins, or that all is done.
  Q_PROPERTY(QString calmText READ calmText NOTIFY changed FINAL)
 public:
  explicit TasksController(QObject* parent = nullptr);

  HouseholdSession* session() const { return session_; }
  void setSession(HouseholdSession* session);
  QString cookId() const { return QString::fromStdString(cookId_); }
  void setCookId(const QString& id);
  QString cookName() const;
  RecordModel* cooks() { return &cooks_; }
  RecordModel* now() { return &now_; }
  RecordModel* next() { return &next_; }
  RecordModel* later() { return &later_; }
  RecordModel* resting() { return &resting_; }
  RecordModel* others() { return &others_; }
  RecordModel* fetches() { return &fetches_; }
  int askingCount() const { return askingCount_; }
  bool hasPlan() const;
  bool mayReport() const;
  QString calmText() const;

  // Of a planned step, "dish/step".
  Q_INVOKABLE void start(const QString& taskId);
  Q_INVOKABLE void finish(const QString& taskId);
  Q_INVOKABLE void skip(const QString& taskId);
  // Later by so much: its end where it is under way, else its beginning.
  Q_INVOKABLE void needMore(const QString& taskId, int minutes);
  Q_INVOKABLE void handOver(const QString& taskId, const QString& memberId);
  Q_INVOKABLE void addNote(const QString& taskId, const QString& text);

 Q_SIGNALS:
  void sessionChanged();
  void changed();

 private:
  void refresh();
  void minuteCame();  // nothing that is shown is finer
  void readCooks();
  bool isCook(const std::string& memberId) const;
  v1::Report reportOn(const QString& taskId) const;

  QPointer<HouseholdSession> session_;
  Instant minute_{};
  std::string chosenId_;  // by hand; empty: the device's own
  std::string cookId_;
  int askingCount_ = 0;
  RecordModel cooks_, now_, next_, later_, resting_, others_, fetches_;
};

}  // namespace suppertide
