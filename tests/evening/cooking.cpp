#include "tests/evening/cooking.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "server/compose/oven_curves.h"
#include "server/kitchen/oven.h"

namespace suppertide::evening {
namespace {

constexpr int kBetweenReadings = 5 * kMinute;
constexpr int kPatience = 20 * kMinute;  // between two looks at a dough that was to be ready

bool isFerment(const v1::PlannedStep& step) {
  return step.kind() == v1::STEP_KIND_FERMENT;
}
bool isBake(const v1::PlannedStep& step) {
  return step.kind() == v1::STEP_KIND_OVEN;
}
bool hasHands(const v1::PlannedStep& step) {
  return !step.cook_member_id().empty();
}

// What the oven is heated up for first.
const v1::PlannedStep* firstIn(const v1::Plan& plan, const v1::OvenProgram& program) {
  for (const v1::OvenSegment& segment : program.segments())
    if (!segment.racks().empty()) return Stage::find(plan, segment.racks(0).step_id());
  return nullptr;
}

}  // namespace

void Cooking::goAround() {
  for (const std::string& id : stepIds()) act(id);
  readOvens();
}

// A thermometer is looked at while an oven heats up for the first time.
void Cooking::readOvens() {
  if ((stage_.now - stage_.begin) % kBetweenReadings != 0) return;
  const Seen seen = stage_.hostSees();
  for (const v1::OvenProgram& program : stage_.planIn(seen).oven_programs()) {
    const v1::Oven* oven = stage_.ovenCalled(program.oven_id());
    if (oven == nullptr || program.segments().empty()) continue;
    const v1::OvenSegment& first = program.segments(0);
    const std::int64_t minutes = (stage_.now - first.start_time().seconds()) / kMinute;
    if (first.kind() != v1::OVEN_SEGMENT_KIND_HEATING || minutes < 4 ||
        stage_.now >= first.end_time().seconds())
      continue;
    kitchen::ThermalCurve curve = compose::fitOven(*oven).after;
    curve.heatMinutes *= stage_.truth.ovenHeat();
    const v1::PlannedStep* step = firstIn(stage_.planIn(seen), program);
    if (step == nullptr) continue;
    v1::Report report = telling_.about(*step);
    report.set_oven_id(oven->id());
    report.set_oven_celsius(
        std::round(kitchen::temperatureAfter(curve, curve.roomCelsius, first.setpoint_celsius(),
                                             kitchen::Door::kClosed, static_cast<double>(minutes))));
    stage_.say(absl::StrCat(stage_.name(oven->id()), " reads ", report.oven_celsius(), " °C after ", minutes,
                            " min."));
    telling_.tell(stage_.party.host(), report);
  }
}

std::vector<std::string> Cooking::stepIds() {
  std::vector<std::string> ids;
  const Seen seen = stage_.hostSees();
  for (const v1::PlannedStep& step : stage_.planIn(seen).steps())
    if (!step.left_out() && step.start_time().seconds() <= stage_.now + kMinute &&
        !stage_.steps[step.id()].over)
      ids.push_back(step.id());
  return ids;
}

CookClient& Cooking::whoTells(const v1::PlannedStep& step) {
  for (auto& cook : stage_.party.cooks)
    if (cook->memberId() == step.cook_member_id()) return *cook;
  return stage_.party.host();
}

void Cooking::act(const std::string& id) {
  const Seen all = stage_.hostSees();
  const v1::PlannedStep* known = Stage::find(stage_.planIn(all), id);
  if (known == nullptr) return;
  // They go by what their own device shows.
  CookClient& cook = whoTells(*known);
  const Seen seen = cook.replica();
  const v1::Plan& shown = stage_.planIn(seen);
  const v1::PlannedStep* step = Stage::find(shown, id);
  if (step == nullptr) return;
  Standing& here = stage_.steps[id];
  if (here.over) return;
  if (here.begun == 0) return begin(cook, shown, *step, here);
  goOn(cook, *step, here);
}

bool Cooking::mayBegin(const v1::Plan& shown, const v1::PlannedStep& step) {
  for (const v1::PlannedStep& other : shown.steps())
    if (other.dish_id() == step.dish_id() && other.id() != step.id() && !other.left_out() &&
        other.end_time().seconds() <= step.start_time().seconds() &&
        other.start_time().seconds() < step.end_time().seconds() && !stage_.steps[other.id()].over)
      return false;
  return true;
}

void Cooking::begin(CookClient& cook, const v1::Plan& shown, const v1::PlannedStep& step, Standing& here) {
  const std::int64_t start = step.start_time().seconds();
  if (start > stage_.now || !mayBegin(shown, step)) return;
  const int late = hasHands(step) ? stage_.truth.lateBy(step.id()) : 0;
  if (late >= 10 && !here.saidLate) {
    here.saidLate = true;
    stage_.say(absl::StrCat(stage_.name(cook.memberId()), " will be ", late, " minutes late for ",
                            stage_.stepName(step), "."));
    v1::Report report = telling_.about(step);
    report.mutable_delayed_by()->set_seconds(late * kMinute);
    return telling_.tell(cook, report);
  }
  if (!here.saidLate && late > 0 && stage_.now < start + late * kMinute) return;
  // Work takes what it takes, whatever the plan has made of a delay.
  const v1::PlannedStep* first = hasHands(step) ? Stage::find(stage_.bundle.plans(0), step.id()) : nullptr;
  const v1::PlannedStep& told = first != nullptr ? *first : step;
  const std::int64_t planned =
      std::max<std::int64_t>(0, told.end_time().seconds() - told.start_time().seconds());
  here.begun = stage_.now;
  here.oven = step.oven_id();
  double times = hasHands(step) ? stage_.truth.lengthOf(step.id()) : 1;
  if (isBake(step)) times = stage_.truth.ovenLength();
  here.ends = stage_.now + static_cast<std::int64_t>(static_cast<double>(planned) * times);
  if (isFerment(step)) beginFerment(step, here);
  if (!hasHands(step) && !isBake(step)) return;
  stage_.say(absl::StrCat(
      stage_.name(cook.memberId()), isBake(step) ? " puts in: " : " begins: ", stage_.stepName(step),
      stage_.now >= start + 10 * kMinute ? absl::StrCat(" (planned ", stage_.clock(start), ")") : ""));
  v1::Report report = telling_.about(step);
  report.set_started(true);
  telling_.tell(cook, report);
}

void Cooking::beginFerment(const v1::PlannedStep& step, Standing& here) {
  // Of the first plan: later ones already count with what was seen.
  for (const v1::DoughForecast& dough : stage_.bundle.plans(0).doughs())
    for (const v1::FermentForecast& stage : dough.stages())
      if (stage.step_id() == step.id()) here.forecast = stage;
  // Ready when its dough is, at its own pace; never before it stood at all.
  const std::int64_t readyFrom = here.forecast.ready_from_time().seconds();
  if (readyFrom > 0)
    here.ends =
        here.begun +
        static_cast<std::int64_t>(
            std::max<double>(0, static_cast<double>(readyFrom - here.forecast.start_time().seconds())) /
            stage_.truth.vigour());
}

double Cooking::trueRise(const Standing& here) const {
  const double at = static_cast<double>(here.forecast.start_time().seconds()) +
                    static_cast<double>(stage_.now - here.begun) * stage_.truth.vigour();
  double rise = 1;
  double before = static_cast<double>(here.forecast.start_time().seconds());
  for (const v1::RiseSample& sample : here.forecast.samples()) {
    const auto then = static_cast<double>(sample.time().seconds());
    if (then > at) {
      if (at > before) rise += (sample.rise() - rise) * (at - before) / (then - before);
      break;
    }
    rise = sample.rise();
    before = then;
  }
  return std::clamp(rise, 0.5, 8.0);
}

void Cooking::goOn(CookClient& cook, const v1::PlannedStep& step, Standing& here) {
  if (isFerment(step)) return watchDough(cook, step, here);
  if (stage_.now < here.ends) {
    if (isBake(step) && stage_.now >= step.end_time().seconds()) needsMore(cook, step, here);
    return;
  }
  here.over = true;
  if (!hasHands(step) && !isBake(step)) return;
  stage_.say(absl::StrCat(stage_.name(cook.memberId()),
                          isBake(step) ? " takes out: " : " is done with: ", stage_.stepName(step)));
  v1::Report report = telling_.about(step);
  // As it was, though it is told a little later.
  report.mutable_happen_time()->set_seconds(here.ends);
  report.set_finished(true);
  telling_.tell(cook, report);
}

void Cooking::needsMore(CookClient& cook, const v1::PlannedStep& step, Standing& here) {
  const std::int64_t minutes = ((here.ends - stage_.now) / kMinute + 4) / 5 * 5;
  if (minutes < 5 || stage_.now < here.nextLook) return;
  here.nextLook = here.ends;
  stage_.say(absl::StrCat(stage_.name(cook.memberId()), " looks at ", stage_.stepName(step), ": it needs ",
                          minutes, " more."));
  v1::Report report = telling_.about(step);
  report.mutable_needs_more_duration()->set_seconds(minutes * kMinute);
  telling_.tell(cook, report);
}

bool Cooking::isDaytime() const {
  return stage_.hour() >= 7 && stage_.hour() < 23;
}

// A look two thirds through, and again when the plan says that it should be ready and it is not.
void Cooking::watchDough(CookClient& cook, const v1::PlannedStep& step, Standing& here) {
  const std::int64_t end = step.end_time().seconds();
  const std::int64_t look = here.begun + (end - here.begun) * 2 / 3;
  if (!here.looked && stage_.now >= look && isDaytime()) {
    here.looked = true;
    return tellRise(cook, step, here);
  }
  if (stage_.now < end) return;
  if (stage_.now >= here.ends) {
    here.over = true;
    return;
  }
  if (!isDaytime() || stage_.now < here.nextLook) return;
  here.nextLook = stage_.now + kPatience;
  tellRise(cook, step, here);
}

void Cooking::tellRise(CookClient& cook, const v1::PlannedStep& step, const Standing& here) {
  const double rise = trueRise(here);
  stage_.say(absl::StrCat(stage_.name(cook.memberId()), " looks at ", stage_.stepName(step), ": risen to ",
                          std::round(rise * 100) / 100, " (ready from ",
                          std::round(here.forecast.low_rise() * 100) / 100, ")"));
  v1::Report report = telling_.about(step);
  report.set_rise(rise);
  telling_.tell(cook, report);
}

}  // namespace suppertide::evening
