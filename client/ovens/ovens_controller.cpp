#include "client/ovens/ovens_controller.h"

#include <QtCore/qlocale.h>

#include <algorithm>
#include <cmath>

#include "client/ovens/settled_words.h"
#include "client/words/rack_words.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

constexpr int kMostTicks = 9;
constexpr double kPartOfALetter = 0.011;  // of the width of a chart on a desktop

int tickMinutes(double minutes) {
  for (const int step : {15, 30, 60, 120, 180})
    if (minutes / step <= kMostTicks) return step;
  return 240;
}

}  // namespace

OvensController::OvensController(QObject* parent)
    : QObject(parent),
      ovens_(
          {"ovenId", "name", "headline", "detail", "temperatures", "setpoints", "blocks", "racks", "loose"}),
      days_({"day", "label"}),
      ticks_({"key", "part", "label"}),
      settled_({"key", "wanted", "settled", "choices"}) {}

void OvensController::setSession(HouseholdSession* session) {
  if (session == session_) return;
  if (session_ != nullptr) session_->disconnect(this);
  session_ = session;
  if (session_ != nullptr) {
    for (const auto signal : {&HouseholdSession::householdChanged, &HouseholdSession::eventIdChanged})
      connect(session_, signal, this, &OvensController::previewCame);
    connect(session_, &HouseholdSession::nowChanged, this, &OvensController::minuteCame);
  }
  previewCame();
  Q_EMIT sessionChanged();
}

void OvensController::setPlanning(Planning* planning) {
  if (planning == planning_) return;
  if (planning_ != nullptr) planning_->disconnect(this);
  planning_ = planning;
  // After the household itself is shown, so that nothing flickers where a preview becomes the plan.
  if (planning_ != nullptr)
    connect(planning_, &Planning::previewChanged, this, &OvensController::previewCame, Qt::QueuedConnection);
  previewCame();
  Q_EMIT sessionChanged();
}

void OvensController::previewCame() {
  const Household preview = planning_ == nullptr || session_ == nullptr ? nullptr : planning_->preview();
  const std::string eventId = session_ == nullptr ? std::string() : session_->eventId().toStdString();
  const bool here = preview != nullptr && preview->events.count(eventId) > 0;
  previewed_ = here ? std::make_shared<const PlanView>(preview, eventId) : nullptr;
  refresh();
}

const std::shared_ptr<const PlanView>& OvensController::view() const {
  return previewed_ != nullptr ? previewed_ : session_->view();
}

bool OvensController::hasPlan() const {
  return session_ != nullptr && view() != nullptr && view()->plan() != nullptr;
}

// The day kept while it is there; else today, else the last one, which is the day of the dinner.
void OvensController::chooseDay(const std::vector<OvenDay>& days) {
  const auto hasDay = [&](const QDate& date) {
    return std::any_of(days.begin(), days.end(), [&](const OvenDay& day) { return day.date == date; });
  };
  const QDate today = view()->words().local(session_->now()).date();
  if (moved_ && hasDay(day_)) return;
  if (!moved_ && hasDay(today))
    day_ = today;
  else if (!hasDay(day_))
    day_ = days.back().date;
}

void OvensController::minuteCame() {
  if (std::chrono::floor<std::chrono::minutes>(session_->now()) != minute_) refresh();
}

void OvensController::refresh() {
  if (session_ != nullptr) minute_ = std::chrono::floor<std::chrono::minutes>(session_->now());
  const std::vector<OvenDay> days = hasPlan() ? ovenDays(*view()) : std::vector<OvenDay>();
  if (days.empty()) {
    for (RecordModel* model : {&ovens_, &days_, &ticks_, &settled_}) model->setRecords({});
    Q_EMIT changed();
    return;
  }
  chooseDay(days);
  for (const OvenDay& day : days)
    if (day.date == day_) axis_ = heatAxis(*view(), day);
  nowX_ = axis_.x(session_->now());
  if (!moved_) cursor_ = axis_.at(nowX_ > 1 ? 0.5 : nowX_);
  cursor_ = std::clamp(cursor_, axis_.start, axis_.limit);
  readDays(days);
  readTicks();
  readOvens();
  readSettled();
  Q_EMIT changed();
}

void OvensController::setDay(const QString& day) {
  const QDate wanted = QDate::fromString(day, Qt::ISODate);
  if (!wanted.isValid() || wanted == day_) return;
  day_ = wanted;
  moved_ = true;
  if (hasPlan()) {
    // Where most is to be seen: the last bake of the day goes in.
    for (const OvenDay& one : ovenDays(*view()))
      if (one.date == wanted) cursor_ = one.start + (one.limit - one.start) / 2;
  }
  refresh();
}

void OvensController::placeCursor(Instant time) {
  moved_ = true;
  cursor_ = time;
  refresh();
}

void OvensController::moveCursor(double x) {
  if (hasOvens()) placeCursor(axis_.at(x));
}

void OvensController::nudgeCursor(int minutes) {
  if (hasOvens()) placeCursor(std::clamp(cursor_ + std::chrono::minutes(minutes), axis_.start, axis_.limit));
}

void OvensController::toChange(int direction) {
  if (!hasOvens()) return;
  const std::vector<Instant> changes = ovenChanges(*view());
  std::optional<Instant> next;
  for (const Instant time : changes) {
    if (direction > 0 && time > cursor_ && !next) next = time;
    if (direction < 0 && time < cursor_) next = time;
  }
  if (!next) return;
  for (const OvenDay& day : ovenDays(*view()))
    if (day.start <= *next && *next <= day.limit) day_ = day.date;
  placeCursor(*next);
}

void OvensController::toNow() {
  moved_ = false;
  refresh();
}

QString OvensController::cursorText() const {
  return hasPlan() ? view()->words().dayClock(cursor_) : QString();
}

void OvensController::readDays(const std::vector<OvenDay>& days) {
  std::vector<Record> records;
  for (const OvenDay& day : days)
    records.push_back({{QStringLiteral("day"), day.date.toString(Qt::ISODate)},
                       {QStringLiteral("label"), view()->words().day(day.start)}});
  days_.setRecords(std::move(records));
}

void OvensController::readTicks() {
  const TimeWords& words = view()->words();
  const int step = tickMinutes(minutesBetween(axis_.start, axis_.limit));
  QDateTime at = words.local(axis_.start);
  at.setTime(QTime(at.time().hour(), 0));
  std::vector<Record> records;
  for (; at.toSecsSinceEpoch() <= axis_.limit.time_since_epoch().count(); at = at.addSecs(step * 60)) {
    const Instant time{std::chrono::seconds(at.toSecsSinceEpoch())};
    if (time < axis_.start) continue;
    records.push_back({{QStringLiteral("key"), QString::number(at.toSecsSinceEpoch())},
                       {QStringLiteral("part"), axis_.x(time)},
                       {QStringLiteral("label"), words.clock(time)}});
  }
  ticks_.setRecords(std::move(records));
}

QVariantList OvensController::setpointsOf(const v1::OvenProgram& program) const {
  QVariantList spans;
  for (const v1::OvenSegment& segment : program.segments()) {
    const double from = axis_.x(toInstant(segment.start_time()));
    const double until = axis_.x(toInstant(segment.end_time()));
    if (until < 0 || from > 1 || segment.kind() == v1::OVEN_SEGMENT_KIND_PROOFING) continue;
    spans << QVariantMap{{QStringLiteral("from"), std::max(0.0, from)},
                         {QStringLiteral("until"), std::min(1.0, until)},
                         {QStringLiteral("height"), axis_.y(segment.setpoint_celsius())},
                         {QStringLiteral("label"), segment.kind() == v1::OVEN_SEGMENT_KIND_HEATING
                                                       ? QString()
                                                       : view()->dial(segment.setpoint_celsius())}};
  }
  return spans;
}

// The dishes in it, in rows so that none stands in front of another.
QVariantList OvensController::blocksOf(const v1::OvenProgram& program) const {
  QVariantList blocks;
  std::vector<double> rowEnds;
  std::vector<std::string> known;
  for (const v1::OvenSegment& segment : program.segments()) {
    for (const v1::RackUse& use : segment.racks()) {
      const v1::PlannedStep* step = view()->step(use.step_id());
      if (step == nullptr || std::find(known.begin(), known.end(), step->id()) != known.end()) continue;
      known.push_back(step->id());
      const Instant start = toInstant(step->start_time());
      const Instant limit = toInstant(step->end_time());
      const double from = axis_.x(start);
      const double until = axis_.x(limit);
      if (until < 0 || from > 1) continue;
      // What its name takes, before or after its start where the chart ends.
      const double letters =
          kPartOfALetter * static_cast<double>(view()->names().dish(step->dish_id()).size());
      const bool fits = letters <= until - from;
      const double room = fits ? until - from : until - from + letters;
      const bool leans = from + room > 1;
      const double left = leans ? std::min(from, until - room) : from;
      auto row = std::find_if(rowEnds.begin(), rowEnds.end(), [&](double end) { return end <= left; });
      if (row == rowEnds.end()) row = rowEnds.insert(rowEnds.end(), 0);
      *row = leans ? until : from + room;
      blocks << QVariantMap{
          {QStringLiteral("from"), from},
          {QStringLiteral("until"), until},
          {QStringLiteral("room"), room},
          {QStringLiteral("fits"), fits},
          {QStringLiteral("leans"), leans},
          {QStringLiteral("row"), static_cast<int>(row - rowEnds.begin())},
          {QStringLiteral("label"), view()->names().dish(step->dish_id())},
          {QStringLiteral("spoken"), tr("%1, %2").arg(view()->names().dish(step->dish_id()),
                                                      view()->words().spokenSpan(start, limit))}};
    }
  }
  return blocks;
}

// From the top down, as one looks into the oven.
QVariantList OvensController::racksOf(const v1::OvenProgram& program, const OvenAt& at) const {
  QVariantList racks;
  for (int level = rackCount(*view(), program); level > 0; --level) {
    QString dish, until;
    bool more = false;
    for (const RackDish& one : at.dishes) {
      const auto here = std::find(one.positions.begin(), one.positions.end(), level);
      if (here == one.positions.end()) continue;
      more = !dish.isEmpty();
      dish = more ? tr("%1, %2").arg(dish, view()->names().dish(one.step->dish_id()))
                  : view()->names().dish(one.step->dish_id());
      until = tr("out at %1").arg(view()->words().clock(toInstant(one.step->end_time())));
    }
    racks << QVariantMap{
        {QStringLiteral("level"), level}, {QStringLiteral("dish"), dish}, {QStringLiteral("until"), until}};
  }
  return racks;
}

QString OvensController::headline(const OvenAt& at) const {
  if (at.segment == nullptr) return tr("Off");
  const QString dial = view()->dial(at.segment->setpoint_celsius());
  const QString until = view()->words().clock(toInstant(at.segment->end_time()));
  switch (at.segment->kind()) {
    case v1::OVEN_SEGMENT_KIND_HEATING:
      return tr("Heating to %1, hot at %2").arg(dial, until);
    case v1::OVEN_SEGMENT_KIND_COOLING:
      return tr("Cooling to %1, ready at %2").arg(dial, until);
    case v1::OVEN_SEGMENT_KIND_PROOFING:
      return tr("Light only, dough is proofing until %1").arg(until);
    default:
      return tr("Set to %1 until %2").arg(dial, until);
  }
}

// Dishes that have no rack of their own.
QStringList OvensController::looseOf(const OvenAt& at) const {
  QStringList dishes;
  bool mayFit = false;
  for (const RackDish& dish : at.dishes) {
    if (!dish.positions.empty()) continue;
    dishes << view()->names().dish(dish.step->dish_id());
    mayFit = mayFit || dish.mayFit;
  }
  if (dishes.isEmpty()) return {};
  QStringList lines = {tr("Where there is room: %1").arg(dishes.join(tr(", ")))};
  if (mayFit) lines << RackWords::mayFit();
  return lines;
}

Record OvensController::ovenRecord(const v1::OvenProgram& program) const {
  const PlanView& shown = *view();
  const OvenAt at = ovenAt(shown, program, cursor_);
  QVariantList lines;
  for (const QList<QPointF>& line : temperatureLines(program, axis_)) lines << QVariant::fromValue(line);
  QStringList below = looseOf(at);
  const QString doubts = RackWords::doubts(shown, program.oven_id());
  if (!doubts.isEmpty()) below << doubts;
  const QString detail =
      at.celsius ? tr("about %1 inside, estimated").arg(shown.degrees(*at.celsius)) : tr("cold");
  return {{QStringLiteral("ovenId"), text(program.oven_id())},
          {QStringLiteral("name"), shown.names().oven(program.oven_id())},
          {QStringLiteral("headline"), headline(at)},
          {QStringLiteral("detail"), detail},
          {QStringLiteral("temperatures"), lines},
          {QStringLiteral("setpoints"), setpointsOf(program)},
          {QStringLiteral("blocks"), blocksOf(program)},
          {QStringLiteral("racks"), racksOf(program, at)},
          {QStringLiteral("loose"), below.join(QLatin1Char('\n'))}};
}

void OvensController::readOvens() {
  std::vector<Record> records;
  for (const v1::OvenProgram& program : view()->plan()->oven_programs())
    records.push_back(ovenRecord(program));
  ovens_.setRecords(std::move(records));
}

// As each side was wished: to be asked about, not done.
QVariantList OvensController::choicesOf(const v1::OvenClash& clash) const {
  QVariantList choices;
  const auto add = [&](const std::string& stepId, const google::protobuf::Timestamp& wished) {
    const v1::PlannedStep* step = view()->step(stepId);
    const Instant start = toInstant(wished);
    if (step == nullptr || start <= session_->now() || view()->progress().isOver(stepId)) return;
    const double minutes = minutesBetween(toInstant(step->start_time()), start);
    if (std::abs(minutes) < 1) return;
    choices << QVariantMap{{QStringLiteral("stepId"), text(stepId)},
                           {QStringLiteral("minutes"), minutes},
                           {QStringLiteral("words"), tr("What if %1 goes in at %2?")
                                                         .arg(view()->names().dish(step->dish_id()),
                                                              view()->words().dayClock(start))}};
  };
  add(clash.step_a_id(), clash.naive_a().start());
  add(clash.step_b_id(), clash.naive_b().start());
  return choices;
}

void OvensController::readSettled() {
  const SettledWords words(*view());
  std::vector<Record> records;
  for (const v1::OvenClash& clash : view()->plan()->oven_clashes())
    records.push_back(
        {{QStringLiteral("key"), text(clash.oven_id() + " " + clash.step_a_id() + " " + clash.step_b_id())},
         {QStringLiteral("wanted"), words.wanted(clash)},
         {QStringLiteral("settled"), words.settled(clash)},
         {QStringLiteral("choices"), choicesOf(clash)}});
  settled_.setRecords(std::move(records));
}

}  // namespace suppertide
