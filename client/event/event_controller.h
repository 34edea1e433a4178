// The shown event, and changes of it that a host makes before anybody else sees them.
//
// A change begins a draft; each edit of the draft is checked by the server, which stores nothing,
// and what is wrong stands beside its field. keep() writes it, also while the server is away; putBack()
// drops it. Where somebody else has changed the event meanwhile, the draft comes back with both versions.
// Belongs to the thread of the user interface.
#pragma once

#include <QtCore/qpointer.h>
#include <QtCore/qtimer.h>

#include <functional>
#include <optional>

#include "client/event/event_draft.h"
#include "client/event/event_reading.h"
#include "client/session/household_session.h"
#include "client/ui/record_model.h"

namespace suppertide {

class EventController : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::HouseholdSession* session READ session WRITE setSession NOTIFY sessionChanged)
  Q_PROPERTY(suppertide::RecordModel* courses READ courses CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* marks READ marks CONSTANT FINAL)  // hours on the line of time
  Q_PROPERTY(suppertide::RecordModel* guests READ guests CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* dishes READ dishes CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* cooks READ cooks CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* warnings READ warnings CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* recipes READ recipes CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* kitchens READ kitchens CONSTANT FINAL)
  // What differs between the draft and what somebody else made of the event meanwhile; empty: nothing does.
  Q_PROPERTY(suppertide::RecordModel* differences READ differences CONSTANT FINAL)
  Q_PROPERTY(QString otherName READ otherName NOTIFY changed FINAL)  // who that was
  Q_PROPERTY(bool hasEvent READ hasEvent NOTIFY changed FINAL)       // stored, or a new one being made
  Q_PROPERTY(bool mayEdit READ mayEdit NOTIFY changed FINAL)
  Q_PROPERTY(bool mayMake READ mayMake NOTIFY changed FINAL)  // a new one: for hosts, with a kitchen
  Q_PROPERTY(bool editing READ editing NOTIFY changed FINAL)
  Q_PROPERTY(bool isNew READ isNew NOTIFY changed FINAL)
  Q_PROPERTY(QString name READ name NOTIFY changed FINAL)
  Q_PROPERTY(QString location READ location NOTIFY changed FINAL)
  Q_PROPERTY(QString kitchenId READ kitchenId NOTIFY changed FINAL)
  Q_PROPERTY(QString dayText READ dayText NOTIFY changed FINAL)
  Q_PROPERTY(QString guestText READ guestText NOTIFY changed FINAL)
  // What is wrong with the event itself: its name, place or day.
  Q_PROPERTY(QString problem READ problem NOTIFY changed FINAL)
  Q_PROPERTY(int problemCount READ problemCount NOTIFY changed FINAL)
  Q_PROPERTY(bool checking READ checking NOTIFY changed FINAL)
  // Why the change cannot be kept as it is; empty: nothing went wrong.
  Q_PROPERTY(QString trouble READ trouble NOTIFY changed FINAL)
 public:
  explicit EventController(QObject* parent = nullptr);

  HouseholdSession* session() const { return session_; }
  void setSession(HouseholdSession* session);
  RecordModel* courses() { return &courses_; }
  RecordModel* marks() { return &marks_; }
  RecordModel* guests() { return &guests_; }
  RecordModel* dishes() { return &dishes_; }
  RecordModel* cooks() { return &cooks_; }
  RecordModel* warnings() { return &warnings_; }
  RecordModel* recipes() { return &recipes_; }
  RecordModel* kitchens() { return &kitchens_; }
  RecordModel* differences() { return &differences_; }
  QString otherName() const { return otherName_; }
  bool hasEvent() const { return shown() != nullptr; }
  bool mayEdit() const { return session_ != nullptr && session_->mayHost(); }
  bool mayMake() const;
  bool editing() const { return draft_.has_value(); }
  bool isNew() const { return draft_.has_value() && draft_->event().id().empty(); }
  QString name() const;
  QString location() const;
  QString kitchenId() const;
  QString dayText() const;
  QString guestText() const { return guestText_; }
  QString problem() const;
  int problemCount() const { return static_cast<int>(problems_.size()); }
  bool checking() const { return checking_; }
  QString trouble() const { return trouble_; }

  Q_INVOKABLE void edit();
  Q_INVOKABLE void makeNew();
  // A copy on another day, so many days after the first course of this one.
  Q_INVOKABLE void copy(int daysLater);
  Q_INVOKABLE void keep();
  Q_INVOKABLE void putBack();

  // Edits of the draft; the first one begins it.
  Q_INVOKABLE void setName(const QString& name);
  Q_INVOKABLE void setLocation(const QString& location);
  Q_INVOKABLE void setKitchen(const QString& kitchenId);
  Q_INVOKABLE void moveDays(int days);
  Q_INVOKABLE void addCourse(const QString& name);
  Q_INVOKABLE void removeCourse(const QString& courseId);
  Q_INVOKABLE void renameCourse(const QString& courseId, const QString& name);
  Q_INVOKABLE void setServing(const QString& courseId, int minutesAfterMidnight);
  Q_INVOKABLE void addGuest(const QString& name);
  Q_INVOKABLE void removeGuest(const QString& guestId);
  Q_INVOKABLE void renameGuest(const QString& guestId, const QString& name);
  Q_INVOKABLE void setPortion(const QString& guestId, double portion);
  Q_INVOKABLE void addNeed(const QString& guestId, const QString& name);
  Q_INVOKABLE void removeNeed(const QString& guestId, int index);
  // To the next of: does not eat it, not even traces, would rather not.
  Q_INVOKABLE void turnSeverity(const QString& guestId, int index);
  Q_INVOKABLE void addDish(const QString& recipeId, const QString& courseId);
  Q_INVOKABLE void removeDish(const QString& dishId);
  Q_INVOKABLE void setDishCook(const QString& dishId, const QString& memberId);
  Q_INVOKABLE void setDishServings(const QString& dishId, int count);
  Q_INVOKABLE void setCooks(const QString& memberId, bool cooks);

 Q_SIGNALS:
  void sessionChanged();
  void changed();

 private:
  const v1::Event* stored() const;
  const v1::Event* shown() const;
  // Edits the draft, which is begun from what is stored where there is none. For hosts.
  void change(const std::function<void(EventDraft&)>& edit);
  void edited();
  void refresh();
  void householdCame();
  void check();
  void takeMenu(int asked, const absl::StatusOr<v1::CheckMenuResponse>& answer);
  void takeProblems(int asked, const absl::Status& status);
  void takeConflict(qint64 number);
  void endConflict();
  void showComing();
  void readRecipes();

  QPointer<HouseholdSession> session_;
  RecordModel courses_, marks_, guests_, dishes_, cooks_, warnings_, recipes_, kitchens_, differences_;
  std::optional<EventDraft> draft_;
  std::optional<v1::CheckMenuResponse> menu_;
  std::string checkedEtag_;           // of the stored event that menu_ is about
  QHash<QString, QString> problems_;  // by field path
  QString guestText_, trouble_, otherName_;
  qint64 conflict_ = 0;   // the refused change that the draft is; 0: none
  std::string comingId_;  // an event that is being made and is shown as soon as it is here
  QTimer wait_;
  int asked_ = 0;  // counts the checks; only the answers to the last one count
  bool checking_ = false;
};

}  // namespace suppertide
