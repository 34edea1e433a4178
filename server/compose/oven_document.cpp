#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "server/compose/documents.h"
#include "server/kitchen/racks.h"

namespace suppertide::compose {
namespace {

constexpr int kSamplePitch = 5;

v1::OvenSegmentKind kindOf(planning::OvenSegment::Kind kind) {
  switch (kind) {
    case planning::OvenSegment::Kind::kHeating:
      return v1::OVEN_SEGMENT_KIND_HEATING;
    case planning::OvenSegment::Kind::kHolding:
      return v1::OVEN_SEGMENT_KIND_HOLDING;
    case planning::OvenSegment::Kind::kCooling:
      return v1::OVEN_SEGMENT_KIND_COOLING;
    case planning::OvenSegment::Kind::kProofing:
      return v1::OVEN_SEGMENT_KIND_PROOFING;
  }
  return v1::OVEN_SEGMENT_KIND_UNSPECIFIED;
}

planning::Load loadIn(const Composition& composition, const planning::Schedule& schedule, int step) {
  const auto index = static_cast<std::size_t>(step);
  return composition.problem.steps[index]
      .modes[static_cast<std::size_t>(schedule.steps[index].mode)]
      .oven->load;
}

// Where things stand in an oven. Rack positions (1 is the lowest); none for what only fits one after the
// other, or when no way for all of them was found.
struct Racks {
  std::map<int, std::set<int>> positions;  // by step
  std::set<int> mayFit;                    // steps
};

// Lays what shares the oven from one time that it is empty to the next.
void lay(const Composition& composition, const planning::Schedule& schedule, int oven,
         const std::vector<int>& steps, Racks& racks) {
  std::vector<kitchen::Pan> pans;
  for (const int step : steps) pans.push_back(panOf(loadIn(composition, schedule, step)));
  const kitchen::RackPlan packed =
      kitchen::packRacks(composition.ovens[static_cast<std::size_t>(oven)], pans);
  if (!packed.fits() && !packed.proven) racks.mayFit.insert(steps.begin(), steps.end());
  for (const kitchen::PanPlace& place : packed.places)
    racks.positions[steps[static_cast<std::size_t>(place.pan)]].insert(place.position + 1);
}

Racks racksOf(const Composition& composition, const planning::Schedule& schedule,
              const planning::OvenProgram& program) {
  const auto at = [&](int step) { return schedule.steps[static_cast<std::size_t>(step)]; };
  std::set<int> all;
  for (const planning::OvenSegment& segment : program.segments)
    all.insert(segment.steps.begin(), segment.steps.end());
  std::vector<int> order(all.begin(), all.end());
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return at(a).start < at(b).start; });
  Racks racks;
  for (std::size_t from = 0; from < order.size();) {
    std::size_t to = from + 1;
    planning::Minute empty = at(order[from]).end;
    for (; to < order.size() && at(order[to]).start < empty; ++to) empty = std::max(empty, at(order[to]).end);
    std::vector<int> together(order.begin() + static_cast<std::ptrdiff_t>(from),
                              order.begin() + static_cast<std::ptrdiff_t>(to));
    std::sort(together.begin(), together.end());
    lay(composition, schedule, program.oven, together, racks);
    from = to;
  }
  return racks;
}

void addTemperatures(const Composition& composition, const planning::OvenProgram& program,
                     v1::OvenProgram& out) {
  const kitchen::ThermalCurve& curve = composition.ovens[static_cast<std::size_t>(program.oven)].curve;
  double celsius = curve.roomCelsius;
  int until = -1;
  const auto sample = [&](int minute, double value) {
    v1::TemperatureSample& told = *out.add_temperatures();
    *told.mutable_time() = composition.axis.timeOf(minute);
    told.set_celsius(value);
  };
  for (const planning::OvenSegment& segment : program.segments) {
    if (until >= 0 && segment.when.start > until)
      celsius = kitchen::temperatureAfter(curve, celsius, std::nullopt, kitchen::Door::kClosed,
                                          segment.when.start - until);
    const bool cooling = segment.kind == planning::OvenSegment::Kind::kCooling;
    const kitchen::Door door = cooling ? kitchen::Door::kAjar : kitchen::Door::kClosed;
    const double start = celsius;
    for (int minute = segment.when.start; minute < segment.when.limit; minute += kSamplePitch) {
      celsius = kitchen::temperatureAfter(curve, start, segment.setpoint, door, minute - segment.when.start);
      sample(minute, celsius);
    }
    celsius = kitchen::temperatureAfter(curve, start, segment.setpoint, door,
                                        segment.when.limit - segment.when.start);
    until = segment.when.limit;
    sample(until, celsius);
  }
}

}  // namespace

void addOvens(const Composition& composition, const planning::Schedule& schedule, v1::Plan& plan) {
  for (const planning::OvenProgram& program : planning::ovenPrograms(composition.problem, schedule)) {
    v1::OvenProgram& out = *plan.add_oven_programs();
    out.set_oven_id(composition.problem.ovens[static_cast<std::size_t>(program.oven)].id);
    const Racks racks = racksOf(composition, schedule, program);
    for (const planning::OvenSegment& segment : program.segments) {
      v1::OvenSegment& told = *out.add_segments();
      told.set_kind(kindOf(segment.kind));
      *told.mutable_start_time() = composition.axis.timeOf(segment.when.start);
      *told.mutable_end_time() = composition.axis.timeOf(segment.when.limit);
      told.set_setpoint_celsius(segment.setpoint);
      for (const int step : segment.steps) {
        v1::RackUse& use = *told.add_racks();
        use.set_step_id(composition.stepId(step));
        use.set_may_fit(racks.mayFit.count(step) > 0);
        if (const auto found = racks.positions.find(step); found != racks.positions.end())
          for (const int position : found->second) use.add_positions(position);
      }
    }
    addTemperatures(composition, program, out);
  }
}

}  // namespace suppertide::compose
