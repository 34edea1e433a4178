#include "server/compose/composition.h"

#include <algorithm>
#include <numeric>

#include "absl/strings/str_cat.h"
#include "server/compose/parts.h"

namespace suppertide::compose {
namespace {

constexpr int kUsualLateLimit = 60;
constexpr int kUsualLeadDays = 4;

absl::StatusOr<absl::TimeZone> zoneOf(const Documents& documents) {
  const std::string& name =
      documents.event.time_zone().empty() ? documents.household.time_zone() : documents.event.time_zone();
  absl::TimeZone zone;
  if (!absl::LoadTimeZone(name, &zone))
    return absl::InvalidArgumentError(absl::StrCat("time zone ", name, " is not known"));
  return zone;
}

google::protobuf::Timestamp workStart(const v1::Event& event) {
  if (event.has_work_start_time()) return event.work_start_time();
  google::protobuf::Timestamp first = event.courses(0).serving_time();
  for (const v1::Course& course : event.courses())
    if (course.serving_time().seconds() < first.seconds()) first = course.serving_time();
  first.set_seconds(first.seconds() - kUsualLeadDays * 86'400);
  return first;
}

planning::Minute limitOf(const TimeAxis& axis, const v1::Event& event) {
  planning::Minute limit = 0;
  for (const v1::Course& course : event.courses())
    limit = std::max(limit, axis.minuteOf(course.serving_time()) + lateLimit(course) + 60);
  return limit;
}

}  // namespace

int lateLimit(const v1::Course& course) {
  return course.has_late_limit() ? minutesOf(course.late_limit()) : kUsualLateLimit;
}

std::string Composition::stepId(int step) const {
  const StepInfo& info = steps[static_cast<std::size_t>(step)];
  return absl::StrCat(dishes[static_cast<std::size_t>(info.dish)].dish->id(), "/", info.step->id());
}

double Composition::placeCelsius(int place) const {
  if (place < 0) return 21;
  const auto& values = documents.kitchen.places(place).temperature().celsius();
  if (values.empty()) return 21;
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

void makeImpossible(Composition& composition, int step) {
  const auto index = static_cast<std::size_t>(step);
  planning::Mode mode;
  mode.name = "nowhere";
  mode.length.rows = {{1, 1, 0}};
  composition.problem.steps[index].modes = {mode};
  composition.steps[index].modes = {ModeInfo{}};
  composition.steps[index].impossible = true;
}

void addLeftOut(Composition& composition, int step, int points) {
  planning::Mode mode;
  mode.name = "left out";
  mode.qualityCost = points;
  ModeInfo meaning;
  meaning.leftOut = true;
  composition.problem.steps[static_cast<std::size_t>(step)].modes.push_back(std::move(mode));
  composition.steps[static_cast<std::size_t>(step)].modes.push_back(meaning);
}

absl::Status addOptional(Composition& composition) {
  constexpr int kUsualPoints = 30;
  for (std::size_t i = 0; i < composition.steps.size(); ++i) {
    const v1::Step& step = *composition.steps[i].step;
    if (!step.may_be_left_out()) continue;
    // One that can be done nowhere is simply left out.
    if (composition.steps[i].impossible) composition.problem.steps[i].modes.clear();
    if (composition.steps[i].impossible) composition.steps[i].modes.clear();
    composition.steps[i].impossible = false;
    addLeftOut(composition, static_cast<int>(i),
               step.left_out_points() > 0 ? step.left_out_points() : kUsualPoints);
  }
  return absl::OkStatus();
}

absl::StatusOr<Composition> composeProblem(const Documents& documents, BreadTables* tables) {
  if (documents.event.courses().empty()) return absl::InvalidArgumentError("the event has no course");
  const auto zone = zoneOf(documents);
  if (!zone.ok()) return zone.status();
  Composition composition(documents, TimeAxis(workStart(documents.event), *zone));
  composition.tables = tables;
  composition.problem.limit = limitOf(composition.axis, documents.event);
  if (composition.problem.limit <= 0) return absl::InvalidArgumentError("work starts after the last course");
  for (const auto part : {addPeople, addThings, addDishes, addBakes, addBreads, addOptional, addPresence,
                          addPins, addSafety, addSeparations, addComfort})
    if (auto status = part(composition); !status.ok()) return status;
  if (auto status = planning::check(composition.problem); !status.ok()) return status;
  return composition;
}

}  // namespace suppertide::compose
