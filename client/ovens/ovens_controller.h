// The ovens over one day, and all of them at the time under a cursor.
//
// Belongs to the thread of the user interface; follows the session's household and event, and shows what
// planning previews in place of the plan.
// The cursor stands on the clock's five minutes: at now, until somebody moves it.
#pragma once

#include <QtCore/qpointer.h>

#include <memory>
#include <optional>

#include "client/ovens/oven_reading.h"
#include "client/planning/planning.h"
#include "client/session/household_session.h"
#include "client/ui/record_model.h"

namespace suppertide {

class OvensController : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::HouseholdSession* session READ session WRITE setSession NOTIFY sessionChanged)
  Q_PROPERTY(suppertide::Planning* planning READ planning WRITE setPlanning NOTIFY sessionChanged)
  // One an oven; points and lengths in parts of its chart.
  Q_PROPERTY(suppertide::RecordModel* ovens READ ovens CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* days READ days CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* ticks READ ticks CONSTANT FINAL)
  // Where bakes wanted one oven at once, how the plan settled it, and what might be asked instead:
  // "choices", each with "stepId", "minutes" later (+) or earlier (-) and "words".
  Q_PROPERTY(suppertide::RecordModel* settled READ settled CONSTANT FINAL)
  Q_PROPERTY(bool hasPlan READ hasPlan NOTIFY changed FINAL)
  Q_PROPERTY(bool hasOvens READ hasOvens NOTIFY changed FINAL)
  Q_PROPERTY(QString day READ day WRITE setDay NOTIFY changed FINAL)
  Q_PROPERTY(double cursorX READ cursorX NOTIFY changed FINAL)
  Q_PROPERTY(QString cursorText READ cursorText NOTIFY changed FINAL)
  Q_PROPERTY(double nowX READ nowX NOTIFY changed FINAL)  // outside [0, 1] when not on this day's chart
  Q_PROPERTY(bool atNow READ atNow NOTIFY changed FINAL)
 public:
  explicit OvensController(QObject* parent = nullptr);

  HouseholdSession* session() const { return session_; }
  void setSession(HouseholdSession* session);
  Planning* planning() const { return planning_; }
  void setPlanning(Planning* planning);
  RecordModel* ovens() { return &ovens_; }
  RecordModel* days() { return &days_; }
  RecordModel* ticks() { return &ticks_; }
  RecordModel* settled() { return &settled_; }
  bool hasPlan() const;
  bool hasOvens() const { return ovens_.count() > 0; }
  QString day() const { return day_.toString(Qt::ISODate); }
  void setDay(const QString& day);
  double cursorX() const { return axis_.x(cursor_); }
  QString cursorText() const;
  double nowX() const { return nowX_; }
  bool atNow() const { return !moved_; }

  Q_INVOKABLE void moveCursor(double x);
  Q_INVOKABLE void nudgeCursor(int minutes);
  // To the next (+1) or the last (-1) moment at which anything changes in an oven, on any day.
  Q_INVOKABLE void toChange(int direction);
  // Follows now again.
  Q_INVOKABLE void toNow();

 Q_SIGNALS:
  void sessionChanged();
  void changed();

 private:
  void refresh();
  void previewCame();
  const std::shared_ptr<const PlanView>& view() const;
  QVariantList choicesOf(const v1::OvenClash& clash) const;
  void minuteCame();  // nothing that is shown is finer
  void chooseDay(const std::vector<OvenDay>& days);
  void placeCursor(Instant time);
  void readDays(const std::vector<OvenDay>& days);
  void readTicks();
  void readOvens();
  void readSettled();
  Record ovenRecord(const v1::OvenProgram& program) const;
  QVariantList setpointsOf(const v1::OvenProgram& program) const;
  QVariantList blocksOf(const v1::OvenProgram& program) const;
  QVariantList racksOf(const v1::OvenProgram& program, const OvenAt& at) const;
  QStringList looseOf(const OvenAt& at) const;
  QString headline(const OvenAt& at) const;

  QPointer<HouseholdSession> session_;
  QPointer<Planning> planning_;
  std::shared_ptr<const PlanView> previewed_;  // null: the plan is shown
  Instant minute_{};
  RecordModel ovens_, days_, ticks_, settled_;
  QDate day_;
  HeatAxis axis_;
  Instant cursor_{};
  bool moved_ = false;  // the cursor, by hand
  double nowX_ = -1;
};

}  // namespace suppertide
