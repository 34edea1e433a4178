#include "client/doughs/doughs_controller.h"

#include <QtCore/qlocale.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "client/link/request_id.h"

namespace suppertide {
namespace {

constexpr int kWaitMs = 350;  // a thumb on the buttons rests
constexpr double kLeastRise = 0.5;
constexpr double kMostRise = 8;
constexpr double kHalfDegree = 0.5;
constexpr double kFahrenheitStep = 5.0 / 9.0;
constexpr double kColdest = -10;
constexpr double kHottest = 60;
constexpr int kMostTicks = 7;

double rounded(double rise) {
  return std::clamp(std::round(rise * 10) / 10, kLeastRise, kMostRise);
}

// The least whole distance, in minutes, at which the chart has few enough marks.
int tickMinutes(double minutes) {
  for (const int step : {15, 30, 60, 120, 240, 360, 720, 1440})
    if (minutes / step <= kMostTicks) return step;
  return 2880;
}

const v1::FermentForecast* stageOf(const v1::Plan& plan, const std::string& stepId) {
  for (const v1::DoughForecast& dough : plan.doughs())
    for (const v1::FermentForecast& stage : dough.stages())
      if (stage.step_id() == stepId) return &stage;
  return nullptr;
}

}  // namespace

DoughsController::DoughsController(QObject* parent)
    : QObject(parent),
      doughs_({"doughId", "name", "stage", "stateText", "act", "underWay", "over"}),
      stages_({"stageId", "name", "when", "over"}),
      ticks_({"key", "x_", "label"}),
      seen_({"key", "x_", "y_", "label"}) {
  wait_.setSingleShot(true);
  wait_.setInterval(kWaitMs);
  connect(&wait_, &QTimer::timeout, this, &DoughsController::askCorrected);
}

void DoughsController::setSession(HouseholdSession* session) {
  if (session == session_) return;
  if (session_ != nullptr) session_->disconnect(this);
  session_ = session;
  if (session_ != nullptr) {
    connect(session_, &HouseholdSession::householdChanged, this, [this] {
      refresh();
      refreshForecast();
    });
    for (const auto signal : {&HouseholdSession::eventIdChanged, &HouseholdSession::memberChanged})
      connect(session_, signal, this, &DoughsController::refresh);
    connect(session_, &HouseholdSession::nowChanged, this, &DoughsController::minuteCame);
  }
  refresh();
  Q_EMIT sessionChanged();
}

bool DoughsController::hasPlan() const {
  return session_ != nullptr && session_->view() != nullptr && session_->view()->plan() != nullptr;
}

void DoughsController::setDoughId(const QString& id) {
  chosenDough_ = id.toStdString();
  chosenStage_.clear();
  draft_.Clear();
  dropCorrected();
  refresh();
}

void DoughsController::setStageId(const QString& id) {
  chosenDough_ = doughId_;
  chosenStage_ = id.toStdString();
  draft_.Clear();
  dropCorrected();
  refresh();
}

const v1::DoughForecast* DoughsController::dough() const {
  if (!hasPlan()) return nullptr;
  for (const v1::DoughForecast& dough : session_->view()->plan()->doughs())
    if (dough.dish_id() == doughId_) return &dough;
  return nullptr;
}

const v1::FermentForecast* DoughsController::stage() const {
  return hasPlan() ? stageOf(*session_->view()->plan(), stageId_) : nullptr;
}

// By hand, else the first dough that stands now, else the first.
void DoughsController::choose() {
  doughId_.clear();
  stageId_.clear();
  const DoughReader reader(*session_->view(), session_->now());
  const auto& doughs = session_->view()->plan()->doughs();
  const v1::DoughForecast* chosen = nullptr;
  for (const v1::DoughForecast& dough : doughs) {
    if (dough.stages().empty()) continue;
    const bool stands = reader.isUnderWay(*reader.stageNow(dough));
    if (dough.dish_id() == chosenDough_) {
      chosen = &dough;
      break;
    }
    if (chosen == nullptr || (stands && !reader.isUnderWay(*reader.stageNow(*chosen)))) chosen = &dough;
  }
  if (chosen == nullptr) return;
  doughId_ = chosen->dish_id();
  stageId_ = reader.stageNow(*chosen)->step_id();
  for (const v1::FermentForecast& stage : chosen->stages())
    if (stage.step_id() == chosenStage_) stageId_ = chosenStage_;
}

void DoughsController::minuteCame() {
  if (std::chrono::floor<std::chrono::minutes>(session_->now()) != minute_) refresh();
}

void DoughsController::refresh() {
  if (session_ != nullptr) minute_ = std::chrono::floor<std::chrono::minutes>(session_->now());
  if (!hasPlan()) {
    doughId_.clear();
    stageId_.clear();
    doughs_.setRecords({});
    stages_.setRecords({});
  } else {
    const DoughReader reader(*session_->view(), session_->now());
    choose();
    doughs_.setRecords(reader.doughs());
    stages_.setRecords(dough() == nullptr ? std::vector<Record>() : reader.stages(*dough()));
  }
  readStage();
  Q_EMIT changed();
}

void DoughsController::readStage() {
  const v1::FermentForecast* planned = stage();
  if (planned == nullptr) {
    curve_ = correctedCurve_ = {};
    title_ = stateText_ = windowText_ = temperatureText_ = actText_ = QString();
    return;
  }
  const DoughReader reader(*session_->view(), session_->now());
  const v1::FermentForecast* corrected = correctedStage_ ? &*correctedStage_ : nullptr;
  // What nobody is just telling has been told: the corrected forecast then is the forecast.
  const bool replaces = corrected != nullptr && !telling();
  const v1::FermentForecast& shown = replaces ? *corrected : *planned;
  axis_ = axisOf(*planned, corrected);
  curve_ = curveOf(shown, axis_);
  correctedCurve_ = corrected != nullptr && !replaces ? curveOf(*corrected, axis_) : RiseCurve();
  title_ =
      tr("%1: %2").arg(session_->view()->names().dish(doughId_), DoughReader::stageName(planned->stage()));
  stateText_ = reader.state(shown);
  windowText_ = reader.window(shown);
  temperatureText_ = reader.temperature(shown);
  actText_ = reader.nextAct(*dough());
  correctedText_ = correctedCurve_.known ? reader.window(*corrected) : QString();
  nowX_ = axis_.x(session_->now());
  readTicks();
  readSeen();
}

void DoughsController::readTicks() {
  const TimeWords& words = session_->view()->words();
  const int step = tickMinutes(minutesBetween(axis_.start, axis_.limit));
  QDateTime at = words.local(axis_.start);
  at.setTime(QTime(0, 0));
  std::vector<Record> records;
  for (; at.toSecsSinceEpoch() < axis_.limit.time_since_epoch().count(); at = at.addSecs(step * 60)) {
    const Instant time{std::chrono::seconds(at.toSecsSinceEpoch())};
    if (time < axis_.start) continue;
    const bool midnight = at.time() == QTime(0, 0);
    records.push_back({{QStringLiteral("key"), QString::number(at.toSecsSinceEpoch())},
                       {QStringLiteral("x_"), axis_.x(time)},
                       {QStringLiteral("label"), midnight ? words.dayClock(time) : words.clock(time)}});
  }
  ticks_.setRecords(std::move(records));
}

void DoughsController::readSeen() {
  std::vector<Record> records;
  for (const v1::Report* report : session_->view()->progress().reportsOf(stageId_)) {
    if (report->what_case() != v1::Report::kRise) continue;
    const Instant when = toInstant(report->happen_time());
    records.push_back({{QStringLiteral("key"), QString::fromStdString(report->id())},
                       {QStringLiteral("x_"), axis_.x(when)},
                       {QStringLiteral("y_"), axis_.y(report->rise())},
                       {QStringLiteral("label"), tr("Seen at %1: %2 times")
                                                     .arg(session_->view()->words().clock(when),
                                                          QLocale().toString(report->rise(), 'f', 1))}});
  }
  seen_.setRecords(std::move(records));
}

QString DoughsController::nowText() const {
  return session_ == nullptr || session_->view() == nullptr
             ? QString()
             : session_->view()->words().clock(session_->now());
}

bool DoughsController::mayTell() const {
  const v1::FermentForecast* planned = stage();
  return planned != nullptr && mayReport() &&
         DoughReader(*session_->view(), session_->now()).isUnderWay(*planned);
}

bool DoughsController::fahrenheit() const {
  return session_->replica()->household.temperature_unit() == v1::TEMPERATURE_UNIT_FAHRENHEIT;
}

QString DoughsController::toldRiseText() const {
  if (draft_.what_case() != v1::Report::kRise) return {};
  return tr("%1 times").arg(QLocale().toString(draft_.rise(), 'f', 1));
}

QString DoughsController::toldCelsiusText() const {
  if (draft_.what_case() != v1::Report::kDoughCelsius) return {};
  if (fahrenheit()) return session_->view()->degrees(draft_.dough_celsius());
  return QStringLiteral("%1 °C").arg(QLocale().toString(draft_.dough_celsius(), 'f', 1));
}

void DoughsController::nudgeRise(int tenths) {
  if (!mayTell()) return;
  const bool begun = draft_.what_case() == v1::Report::kRise;
  const double from = begun ? draft_.rise() : riseAt(*stage(), session_->now()).value_or(1);
  v1::Report draft;
  draft.set_rise(rounded(rounded(from) + (begun ? tenths / 10.0 : 0)));
  adoptDraft(std::move(draft));
}

void DoughsController::riseAtHeight(double y) {
  if (!mayTell()) return;
  v1::Report draft;
  draft.set_rise(rounded(axis_.riseAt(y)));
  adoptDraft(std::move(draft));
}

void DoughsController::nudgeCelsius(int steps) {
  if (!mayTell()) return;
  const double step = fahrenheit() ? kFahrenheitStep : kHalfDegree;
  const bool begun = draft_.what_case() == v1::Report::kDoughCelsius;
  const double forecast = celsiusAt(*stage(), session_->now()).value_or(stage()->celsius_at_end());
  const double from = begun ? draft_.dough_celsius() : std::round(forecast / step) * step;
  v1::Report draft;
  draft.set_dough_celsius(std::clamp(from + (begun ? steps * step : 0), kColdest, kHottest));
  adoptDraft(std::move(draft));
}

void DoughsController::dent(int result) {
  if (!mayTell() || !v1::DentTest_IsValid(result)) return;
  v1::Report draft;
  draft.set_dent_test(static_cast<v1::DentTest>(result));
  adoptDraft(std::move(draft));
}

void DoughsController::adoptDraft(v1::Report draft) {
  const std::size_t slash = stageId_.find('/');
  draft.set_dish_id(stageId_.substr(0, slash));
  draft.set_step_id(stageId_.substr(slash + 1));
  draft_ = std::move(draft);
  askSoon();
  Q_EMIT changed();
}

void DoughsController::askSoon() {
  ++asked_;
  working_ = true;
  wait_.start();
}

void DoughsController::dropCorrected() {
  ++asked_;
  wait_.stop();
  working_ = false;
  correctedStage_.reset();
}

// A plan that need not move is not stored anew, though its forecasts would be others.
void DoughsController::refreshForecast() {
  const v1::FermentForecast* planned = stage();
  if (telling() || planned == nullptr || session_->state() != HouseholdSession::Live) return;
  const auto reports = session_->view()->progress().reportsOf(stageId_);
  const auto& planTime = session_->view()->plan()->meta().update_time();
  const bool newer = std::any_of(reports.begin(), reports.end(), [&](const v1::Report* report) {
    return report->receive_time().seconds() >= planTime.seconds();
  });
  if (newer)
    askSoon();
  else if (correctedStage_) {
    dropCorrected();
    readStage();
    Q_EMIT changed();
  }
}

void DoughsController::askCorrected() {
  if (!hasPlan()) return;
  v1::ReplanRequest request;
  request.set_household_id(session_->replica()->household.id());
  request.set_event_id(session_->eventId().toStdString());
  request.set_validate_only(true);
  request.set_request_id(link::newRequestId());
  request.mutable_now()->set_seconds(session_->now().time_since_epoch().count());
  if (telling()) {
    v1::Report report = draft_;
    report.set_id("tried");
    report.set_member_id(session_->memberId().toStdString());
    *report.mutable_happen_time() = request.now();
    *request.add_reports() = std::move(report);
  }
  session_->ask<v1::MakePlanResponse>(
      this, [request](link::Session& server) { return server.replan(request); },
      [this, asked = asked_](absl::StatusOr<v1::MakePlanResponse> answer) { takeCorrected(asked, answer); });
}

void DoughsController::takeCorrected(int asked, const absl::StatusOr<v1::MakePlanResponse>& answer) {
  if (asked != asked_) return;
  working_ = false;
  correctedStage_.reset();
  if (answer.ok()) {
    if (const v1::FermentForecast* found = stageOf(answer->plan(), stageId_); found != nullptr)
      correctedStage_ = *found;
  }
  readStage();
  if (!answer.ok())
    correctedText_ = tr("How it would change can't be shown now. You can tell it all the same.");
  Q_EMIT changed();
}

void DoughsController::tell() {
  if (!telling()) return;
  session_->report(draft_);
  draft_.Clear();
  ++asked_;
  wait_.stop();
  working_ = false;
  readStage();
  Q_EMIT changed();
}

void DoughsController::forget() {
  draft_.Clear();
  dropCorrected();
  readStage();
  Q_EMIT changed();
}

}  // namespace suppertide
