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

// Rack positions (1 is the lowest) for everything that shares the oven in one
// unbroken spell; empty when they only fit one after the other.
std::map<int, std::set<int>> positionsOf(const Composition& composition, const planning::Schedule& schedule,
                                         int oven, const std::set<int>& steps) {
  std::vector<kitchen::Pan> pans;
  const std::vector<int> order(steps.begin(), steps.end());
  for (const int step : order) pans.push_back(panOf(loadIn(composition, schedule, step)));
  std::map<int, std::set<int>> positions;
  const kitchen::RackPlan packed =
      kitchen::packRacks(composition.ovens[static_cast<std::size_t>(oven)], pans);
  if (!packed.fits()) return positions;
  for (const kitchen::PanPlace& place : packed.places)
    positions[order[static_cast<std::size_t>(place.pan)]].insert(place.position + 1);
  return positions;
}

// Groups the segments into spells during which the oven is never empty of all of its dishes.
std::vector<std::map<int, std::set<int>>> positionsBySegment(const Composition& composition,
                                                             const planning::Schedule& schedule,
                                                             const planning::OvenProgram& program) {
  std::vector<std::map<int, std::set<int>>> result(program.segments.size());
  std::size_t from = 0;
  while (from < program.segments.size()) {
    std::set<int> together(program.segments[from].steps.begin(), program.segments[from].steps.end());
    std::size_t to = from + 1;
    for (; to < program.segments.size(); ++to) {
      const auto& steps = program.segments[to].steps;
      const bool stays =
          std::any_of(steps.begin(), steps.end(), [&](int step) { return together.count(step) > 0; });
      if (!stays) break;
      together.insert(steps.begin(), steps.end());
    }
    if (!together.empty()) {
      const auto positions = positionsOf(composition, schedule, program.oven, together);
      for (std::size_t s = from; s < to; ++s) result[s] = positions;
    }
    from = to;
  }
  return result;
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
    const auto positions = positionsBySegment(composition, schedule, program);
    for (std::size_t s = 0; s < program.segments.size(); ++s) {
      const planning::OvenSegment& segment = program.segments[s];
      v1::OvenSegment& told = *out.add_segments();
      told.set_kind(kindOf(segment.kind));
      *told.mutable_start_time() = composition.axis.timeOf(segment.when.start);
      *told.mutable_end_time() = composition.axis.timeOf(segment.when.limit);
      told.set_setpoint_celsius(segment.setpoint);
      for (const int step : segment.steps) {
        v1::RackUse& use = *told.add_racks();
        use.set_step_id(composition.stepId(step));
        if (const auto found = positions[s].find(step); found != positions[s].end())
          for (const int position : found->second) use.add_positions(position);
      }
    }
    addTemperatures(composition, program, out);
  }
}

}  // namespace suppertide::compose
