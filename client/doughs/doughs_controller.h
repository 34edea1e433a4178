// The doughs of the plan: which one is looked at, its curve, and what is seen of it.
//
// What a person is about to tell is first tried: the server forecasts with it and
// stores nothing, and the corrected curve stands beside the old one. Only tell() tells.
// Belongs to the thread of the user interface.
#pragma once

#include <QtCore/qpointer.h>
#include <QtCore/qtimer.h>

#include <optional>

#include "client/doughs/dough_list.h"
#include "client/doughs/rise_curve.h"
#include "client/link/session.h"
#include "client/session/household_session.h"
#include "client/ui/record_model.h"

namespace suppertide {

class DoughsController : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::HouseholdSession* session READ session WRITE setSession NOTIFY sessionChanged)
  Q_PROPERTY(suppertide::RecordModel* doughs READ doughs CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* stages READ stages CONSTANT FINAL)
  // Hours below the chart, in parts of its width; and what was seen, in parts of both.
  Q_PROPERTY(suppertide::RecordModel* ticks READ ticks CONSTANT FINAL)
  Q_PROPERTY(suppertide::RecordModel* seen READ seen CONSTANT FINAL)
  Q_PROPERTY(bool hasDoughs READ hasDoughs NOTIFY changed FINAL)
  Q_PROPERTY(bool hasPlan READ hasPlan NOTIFY changed FINAL)
  Q_PROPERTY(bool mayReport READ mayReport NOTIFY changed FINAL)
  Q_PROPERTY(QString doughId READ doughId WRITE setDoughId NOTIFY changed FINAL)
  Q_PROPERTY(QString stageId READ stageId WRITE setStageId NOTIFY changed FINAL)
  Q_PROPERTY(QString title READ title NOTIFY changed FINAL)
  Q_PROPERTY(QString stateText READ stateText NOTIFY changed FINAL)
  Q_PROPERTY(QString windowText READ windowText NOTIFY changed FINAL)
  Q_PROPERTY(QString temperatureText READ temperatureText NOTIFY changed FINAL)
  Q_PROPERTY(QString actText READ actText NOTIFY changed FINAL)
  Q_PROPERTY(suppertide::RiseCurve curve READ curve NOTIFY changed FINAL)
  // With what is being told; not known when nothing is.
  Q_PROPERTY(suppertide::RiseCurve corrected READ corrected NOTIFY changed FINAL)
  Q_PROPERTY(double nowX READ nowX NOTIFY changed FINAL)  // outside [0, 1] when not on the chart
  Q_PROPERTY(QString nowText READ nowText NOTIFY changed FINAL)
  // What is being told. Rise 0, temperature text empty and dent 0: nothing.
  Q_PROPERTY(bool telling READ telling NOTIFY changed FINAL)
  Q_PROPERTY(double toldRise READ toldRise NOTIFY changed FINAL)
  Q_PROPERTY(double toldRiseY READ toldRiseY NOTIFY changed FINAL)
  Q_PROPERTY(QString toldRiseText READ toldRiseText NOTIFY changed FINAL)
  Q_PROPERTY(QString toldCelsiusText READ toldCelsiusText NOTIFY changed FINAL)
  Q_PROPERTY(int toldDent READ toldDent NOTIFY changed FINAL)
  Q_PROPERTY(bool working READ working NOTIFY changed FINAL)
  // What it would change, in words.
  Q_PROPERTY(QString correctedText READ correctedText NOTIFY changed FINAL)
  // Only a stage that stands now can be told of.
  Q_PROPERTY(bool mayTell READ mayTell NOTIFY changed FINAL)
 public:
  explicit DoughsController(QObject* parent = nullptr);

  HouseholdSession* session() const { return session_; }
  void setSession(HouseholdSession* session);
  RecordModel* doughs() { return &doughs_; }
  RecordModel* stages() { return &stages_; }
  RecordModel* ticks() { return &ticks_; }
  RecordModel* seen() { return &seen_; }
  bool hasPlan() const;
  bool hasDoughs() const { return doughs_.count() > 0; }
  bool mayReport() const { return session_ != nullptr && session_->mayReport(); }
  QString doughId() const { return QString::fromStdString(doughId_); }
  void setDoughId(const QString& id);
  QString stageId() const { return QString::fromStdString(stageId_); }
  void setStageId(const QString& id);
  QString title() const { return title_; }
  QString stateText() const { return stateText_; }
  QString windowText() const { return windowText_; }
  QString temperatureText() const { return temperatureText_; }
  QString actText() const { return actText_; }
  RiseCurve curve() const { return curve_; }
  RiseCurve corrected() const { return correctedCurve_; }
  double nowX() const { return nowX_; }
  QString nowText() const;
  bool telling() const { return draft_.what_case() != v1::Report::WHAT_NOT_SET; }
  double toldRise() const { return draft_.rise(); }
  double toldRiseY() const { return axis_.y(draft_.rise()); }
  QString toldRiseText() const;
  QString toldCelsiusText() const;
  int toldDent() const { return draft_.dent_test(); }
  bool working() const { return working_; }
  QString correctedText() const { return correctedText_; }
  bool mayTell() const;

  // A tenth of a volume more or less than told so far, or than forecast.
  Q_INVOKABLE void nudgeRise(int tenths);
  // At a height of the chart, 0 at the bottom.
  Q_INVOKABLE void riseAtHeight(double y);
  // Half degrees Celsius, or degrees Fahrenheit, as the household reads.
  Q_INVOKABLE void nudgeCelsius(int steps);
  // One of v1::DentTest.
  Q_INVOKABLE void dent(int result);
  Q_INVOKABLE void tell();
  Q_INVOKABLE void forget();

 Q_SIGNALS:
  void sessionChanged();
  void changed();

 private:
  void refresh();
  void minuteCame();  // nothing that is shown is finer
  void choose();
  void readStage();
  void readTicks();
  void readSeen();
  void adoptDraft(v1::Report draft);
  void askSoon();
  void askCorrected();
  void takeCorrected(int asked, const absl::StatusOr<v1::MakePlanResponse>& answer);
  void dropCorrected();
  void refreshForecast();
  const v1::DoughForecast* dough() const;
  const v1::FermentForecast* stage() const;
  bool fahrenheit() const;

  QPointer<HouseholdSession> session_;
  Instant minute_{};
  RecordModel doughs_, stages_, ticks_, seen_;
  std::string chosenDough_, chosenStage_;  // by hand; empty: by the clock
  std::string doughId_, stageId_;
  QString title_, stateText_, windowText_, temperatureText_, actText_, correctedText_;
  RiseAxis axis_;
  RiseCurve curve_, correctedCurve_;
  double nowX_ = -1;
  v1::Report draft_;
  QTimer wait_;
  int asked_ = 0;  // counts the questions; only the answer to the last one counts
  bool working_ = false;
  std::optional<v1::FermentForecast> correctedStage_;
};

}  // namespace suppertide
