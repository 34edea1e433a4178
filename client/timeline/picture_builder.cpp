#include "client/timeline/picture_builder.h"

#include <QtCore/qdatetime.h>

#include <algorithm>

#include "client/timeline/lane_layout.h"
#include "client/words/joined.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

constexpr int kMostAttention = 50;      // per cent, from which a step is hands-on
constexpr int kLowestDialCelsius = 40;  // cooler than that, an oven is off but for its light
constexpr int kDaysBefore = 2;
constexpr std::size_t kCourseRows = 2;

Lane emptyLane(const QString& id, LaneKind kind, Symbol::Shape symbol) {
  Lane lane;
  lane.id = id;
  lane.kind = kind;
  lane.symbol = symbol;
  return lane;
}

void place(Lane& lane) {
  std::stable_sort(lane.steps.begin(), lane.steps.end(),
                   [](const StepRow& a, const StepRow& b) { return a.start < b.start; });
  std::vector<LaneSpan> spans;
  for (const StepRow& step : lane.steps) spans.push_back({step.start, step.limit()});
  const LaneLayout layout = layOut(spans);
  lane.subRowCount = layout.subRowCount;
  for (std::size_t i = 0; i < lane.steps.size(); ++i) {
    lane.steps[i].subRow = layout.placements[i].subRow;
    lane.steps[i].roomAfter = layout.placements[i].roomAfter;
  }
}

}  // namespace

PictureBuilder::PictureBuilder(const PlanView& view, Instant base) : view_(view), base_(base), words_(view) {
  if (view.plan() == nullptr) return;
  for (const v1::DoughForecast& dough : view.plan()->doughs()) {
    for (const v1::FermentForecast& stage : dough.stages()) inDough_.insert(stage.step_id());
  }
}

Picture PictureBuilder::build() {
  Picture picture;
  picture.base = base_;
  picture.words = view_.words();
  picture.title = text(view_.event().display_name());
  picture.subtitle = subtitle();
  addCourses(picture);
  if (view_.plan() == nullptr || view_.plan()->steps().empty()) return picture;
  picture.hasPlan = true;
  picture.leftOut = leftOut();
  addCooks(picture);
  addOvens(picture);
  addDoughs(picture);
  addBurnersAndPlaces(picture);
  addRest(picture);
  picture.start = minute(view_.plan()->steps(0).start_time());
  picture.limit = picture.start;
  for (const v1::PlannedStep& step : view_.plan()->steps()) {
    if (!StepWords::isNeeded(step)) continue;
    picture.start = std::min(picture.start, minute(step.start_time()));
    picture.limit = std::max(picture.limit, minute(step.end_time()));
  }
  for (const CourseRow& course : picture.courses) picture.limit = std::max(picture.limit, course.minute);
  return picture;
}

// Loads that are not needed are nobody's loss and told by nothing.
QString PictureBuilder::leftOut() const {
  QStringList names;
  for (const v1::Unserved& left : view_.plan()->unserved()) names << view_.names().dish(left.dish_id());
  for (const v1::PlannedStep& step : view_.plan()->steps())
    if (step.left_out() && step.load_count() == 0) names << view_.quoted(step.id());
  return names.isEmpty() ? QString() : tr("Left out in this plan: %1.").arg(Joined::words(names));
}

QString PictureBuilder::subtitle() const {
  QStringList parts;
  if (view_.event().courses_size() > 0)
    parts << view_.words().longDay(toInstant(view_.event().courses(0).serving_time()));
  if (!view_.event().location().empty()) parts << text(view_.event().location());
  return parts.join(tr(" · "));
}

void PictureBuilder::addCourses(Picture& picture) const {
  const TimeWords& words = view_.words();
  for (const v1::Course& course : view_.event().courses()) {
    const Instant serving = toInstant(course.serving_time());
    CourseRow row;
    row.id = text(course.id());
    row.minute = minutesBetween(base_, serving);
    const QString name = text(course.display_name());
    row.title = tr("%1 %2").arg(words.clock(serving), name);
    row.spoken = tr("%1 is served at %2").arg(name, words.clock(serving));
    if (view_.plan() != nullptr) {
      for (const v1::PlannedCourse& planned : view_.plan()->courses()) {
        const double late = toMinutes(planned.late_duration());
        if (planned.course_id() != course.id() || late <= 0) continue;
        row.late = true;
        row.title = tr("%1, %2 late").arg(row.title, words.length(late));
        row.spoken = tr("%1, %2 late").arg(row.spoken, words.length(late));
      }
    }
    picture.courses.push_back(std::move(row));
  }
  std::stable_sort(picture.courses.begin(), picture.courses.end(),
                   [](const CourseRow& a, const CourseRow& b) { return a.minute < b.minute; });
  for (std::size_t i = 0; i < picture.courses.size(); ++i) {
    const bool last = i + kCourseRows >= picture.courses.size();
    picture.courses[i].subRow = static_cast<int>(i % kCourseRows);
    picture.courses[i].roomAfter =
        last ? kEndlessRoom : picture.courses[i + kCourseRows].minute - picture.courses[i].minute;
  }
}

void PictureBuilder::addLane(Picture& picture, Lane lane) {
  place(lane);
  if (lane.spoken.isEmpty()) {
    lane.spoken = lane.steps.size() == 1 ? tr("%1, 1 step").arg(lane.title)
                                         : tr("%1, %2 steps").arg(lane.title).arg(lane.steps.size());
  }
  picture.lanes.push_back(std::move(lane));
}

void PictureBuilder::addCooks(Picture& picture) {
  std::vector<std::string> ids;
  const auto add = [&](const std::string& id) {
    if (!id.empty() && std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  };
  for (const v1::EventCook& cook : view_.event().cooks()) add(cook.member_id());
  for (const v1::PlannedStep& step : view_.plan()->steps()) add(step.cook_member_id());
  for (const std::string& id : ids) {
    Lane lane = emptyLane(QStringLiteral("cook/") + text(id), LaneKind::kCook, Symbol::Cook);
    lane.title = view_.names().cook(id);
    lane.subtitle = tr("cook");
    lane.steps = take([&](const v1::PlannedStep& step) { return step.cook_member_id() == id; });
    addLane(picture, std::move(lane));
  }
}

void PictureBuilder::addOvens(Picture& picture) {
  std::set<std::string> told;
  const auto add = [&](const std::string& id, const v1::OvenProgram* program) {
    if (!told.insert(id).second) return;
    Lane lane = emptyLane(QStringLiteral("oven/") + text(id), LaneKind::kOven, Symbol::Oven);
    lane.title = view_.names().oven(id);
    lane.subtitle = tr("oven");
    lane.steps = take([&](const v1::PlannedStep& step) { return step.oven_id() == id; });
    if (program != nullptr) {
      lane.curve = curveOf(*program);
      lane.spoken = spokenProgram(*program);
    }
    const bool used = program != nullptr && !program->segments().empty();
    if (used || !lane.steps.empty()) addLane(picture, std::move(lane));
  };
  for (const v1::OvenProgram& program : view_.plan()->oven_programs()) add(program.oven_id(), &program);
  for (const v1::PlannedStep& step : view_.plan()->steps()) {
    if (!StepWords::isNeeded(step)) continue;
    if (!step.oven_id().empty()) add(step.oven_id(), nullptr);
  }
}

void PictureBuilder::addDoughs(Picture& picture) {
  for (const v1::DoughForecast& dough : view_.plan()->doughs()) {
    Lane lane = emptyLane(QStringLiteral("dough/") + text(dough.dish_id()), LaneKind::kDough, Symbol::Dough);
    lane.title = view_.names().dish(dough.dish_id());
    lane.subtitle = tr("dough");
    std::map<std::string, const v1::FermentForecast*> stages;
    for (const v1::FermentForecast& stage : dough.stages()) stages[stage.step_id()] = &stage;
    lane.steps = take([&](const v1::PlannedStep& step) { return stages.count(step.id()) > 0; });
    for (StepRow& step : lane.steps) {
      const v1::PlannedStep* planned = view_.step(step.id.toStdString());
      step.rise = riseOf(*stages.at(planned->id()));
      step.detail = view_.names().place(planned->place_id());
    }
    if (!lane.steps.empty()) addLane(picture, std::move(lane));
  }
}

void PictureBuilder::addBurnersAndPlaces(Picture& picture) {
  Lane burners = emptyLane(QStringLiteral("burners"), LaneKind::kBurners, Symbol::Pot);
  burners.title = tr("Burners");
  burners.steps = take([](const v1::PlannedStep& step) { return step.burner_count() > 0; });
  if (!burners.steps.empty()) addLane(picture, std::move(burners));
  std::vector<std::string> ids;
  for (const v1::PlannedStep& step : view_.plan()->steps()) {
    if (!StepWords::isNeeded(step)) continue;
    const bool known = std::find(ids.begin(), ids.end(), step.place_id()) != ids.end();
    if (!step.place_id().empty() && !known) ids.push_back(step.place_id());
  }
  for (const std::string& id : ids) {
    Lane lane = emptyLane(QStringLiteral("place/") + text(id), LaneKind::kPlace, Symbol::Shelf);
    lane.title = view_.names().place(id);
    lane.subtitle = tr("place");
    lane.steps = take([&](const v1::PlannedStep& step) {
      return step.place_id() == id && inDough_.count(step.id()) == 0 && step.cook_member_id().empty();
    });
    if (!lane.steps.empty()) addLane(picture, std::move(lane));
  }
}

void PictureBuilder::addRest(Picture& picture) {
  Lane lane = emptyLane(QStringLiteral("waiting"), LaneKind::kWaiting, Symbol::Hourglass);
  lane.title = tr("By itself");
  lane.subtitle = tr("nobody is needed");
  lane.steps = take([&](const v1::PlannedStep& step) { return drawn_.count(step.id()) == 0; });
  if (!lane.steps.empty()) addLane(picture, std::move(lane));
}

template <class Predicate>
std::vector<StepRow> PictureBuilder::take(Predicate belongs) {
  std::vector<StepRow> rows;
  std::vector<std::string> taken;
  for (const v1::PlannedStep& step : view_.plan()->steps()) {
    if (!StepWords::isNeeded(step) || !belongs(step)) continue;
    rows.push_back(row(step));
    taken.push_back(step.id());
  }
  drawn_.insert(taken.begin(), taken.end());
  return rows;
}

StepRow PictureBuilder::row(const v1::PlannedStep& step) const {
  StepRow row;
  row.id = text(step.id());
  row.title = StepWords::title(step);
  row.slack = toMinutes(step.slack_duration());
  row.kind = step.kind();
  row.symbol = StepWords::symbol(step.kind());
  row.detail = tr("%1 · %2").arg(StepWords::kind(step.kind()), view_.names().dish(step.dish_id()));
  row.spoken = words_.spoken(step);
  row.state = words_.state(step);
  row.start = minute(step.start_time());
  row.length = std::max(0.0, minute(step.end_time()) - row.start);
  row.handsOn = !step.cook_member_id().empty() && step.attention_percent() >= kMostAttention;
  row.late = words_.isLate(step);
  row.done = view_.isDone(step);
  row.pinned = view_.isPinned(step);
  if (row.late) row.detail = tr("Late · %1").arg(row.detail);
  return row;
}

DoughRise PictureBuilder::riseOf(const v1::FermentForecast& stage) const {
  DoughRise rise;
  rise.start = minute(stage.start_time());
  rise.limit = minute(stage.end_time());
  for (const v1::RiseSample& sample : stage.samples()) {
    const double at = minute(sample.time());
    rise.rise.append({at, sample.rise()});
    if (sample.slow_rise() > 0) rise.slow.append({at, sample.slow_rise()});
    if (sample.fast_rise() > 0) rise.fast.append({at, sample.fast_rise()});
  }
  if (stage.has_ready_from_time()) {
    rise.readyFrom = minute(stage.ready_from_time());
    rise.readyUntil = stage.has_ready_until_time() ? minute(stage.ready_until_time())
                                                   : std::max(rise.limit, rise.readyFrom);
  }
  if (stage.has_best_time()) rise.best = minute(stage.best_time());
  return rise;
}

OvenCurve PictureBuilder::curveOf(const v1::OvenProgram& program) const {
  OvenCurve curve;
  for (const v1::TemperatureSample& sample : program.temperatures())
    curve.temperatures.append({minute(sample.time()), sample.celsius()});
  for (const v1::OvenSegment& segment : program.segments()) {
    const bool lightOnly = segment.setpoint_celsius() < kLowestDialCelsius;
    const bool coolsDown = lightOnly && segment.kind() == v1::OVEN_SEGMENT_KIND_COOLING;
    const QString label = coolsDown   ? tr("off, door ajar")
                          : lightOnly ? tr("light only")
                                      : view_.dial(segment.setpoint_celsius());
    const double start = minute(segment.start_time());
    if (!curve.setpoints.isEmpty() && curve.setpoints.last().limit == start &&
        curve.setpoints.last().label == label) {
      curve.setpoints.last().limit = minute(segment.end_time());
      continue;
    }
    const double celsius = lightOnly ? 0 : segment.setpoint_celsius();
    curve.setpoints.append({start, minute(segment.end_time()), celsius, label});
  }
  return curve;
}

QString PictureBuilder::spokenProgram(const v1::OvenProgram& program) const {
  QStringList parts = {view_.names().oven(program.oven_id())};
  for (const SetpointSpan& span : curveOf(program).setpoints) {
    parts << tr("%1 from %2")
                 .arg(span.label,
                      view_.words().spokenSpan(instantAt(base_, span.start), instantAt(base_, span.limit)));
  }
  return parts.join(tr(", "));
}

Instant baseFor(const PlanView& view) {
  Instant first = Instant::max();
  if (view.plan() != nullptr) {
    for (const v1::PlannedStep& step : view.plan()->steps())
      first = std::min(first, toInstant(step.start_time()));
  }
  for (const v1::Course& course : view.event().courses())
    first = std::min(first, toInstant(course.serving_time()));
  if (first == Instant::max()) return {};
  const QDate day = view.words().local(first).date().addDays(-kDaysBefore);
  return Instant(std::chrono::seconds(day.startOfDay(view.words().zone()).toSecsSinceEpoch()));
}

}  // namespace suppertide
