#include "server/compose/oven_learning.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "absl/strings/str_cat.h"
#include "server/compose/oven_curves.h"
#include "server/compose/seen_doughs.h"
#include "server/kitchen/oven_fit.h"

namespace suppertide::compose {
namespace {

constexpr std::int64_t kApart = 3 * 60;  // seconds; nearer, a minute's rounding would tell too much
constexpr int kMostRises = 200;          // a curve keeps; the oldest go
constexpr double kRoomCelsius = 22;

double middleOf(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

bool same(const v1::HeatRise& a, const v1::HeatRise& b) {
  return a.SerializeAsString() == b.SerializeAsString();
}

class Day {
 public:
  Day(const v1::Oven& oven, const v1::Plan& plan, const v1::Progress& progress) : plan_(plan) {
    learning_.oven = oven;
    curve_ = fitOven(oven).after;
    for (const v1::OvenProgram& program : plan.oven_programs())
      if (program.oven_id() == oven.id()) program_ = &program;
    for (const v1::Report* report : standingReports(progress))
      if (report->what_case() == v1::Report::kOvenCelsius && ovenOf(*report) == oven.id()) add(*report);
    std::stable_sort(learning_.uses.begin(), learning_.uses.end(),
                     [](const auto& a, const auto& b) { return a.seconds < b.seconds; });
  }

  OvenLearning run() {
    if (program_ != nullptr)
      for (int s = 0; s < program_->segments_size(); ++s) read(s);
    leaveOutFarOnes();
    keepNewest(learning_.oven.mutable_heat_curve()->mutable_rises());
    keepNewest(learning_.oven.mutable_heat_curve()->mutable_falls_ajar());
    if (!learning_.told && learning_.oven.heat_curve().ByteSizeLong() == 0) learning_.oven.clear_heat_curve();
    if (offsets_.size() >= 2) learning_.dialOffset = middleOf(offsets_);
    return std::move(learning_);
  }

 private:
  // By the report itself, else by the oven that the step has in the plan.
  std::string ovenOf(const v1::Report& report) const {
    if (!report.oven_id().empty()) return report.oven_id();
    for (const v1::PlannedStep& step : plan_.steps())
      if (step.dish_id() == report.dish_id() && step.step_id() == report.step_id()) return step.oven_id();
    return "";
  }

  void add(const v1::Report& report) {
    DayReading use;
    use.reportId = report.id();
    use.seconds = (report.has_happen_time() ? report.happen_time() : report.receive_time()).seconds();
    use.celsius = report.oven_celsius();
    learning_.uses.push_back(std::move(use));
  }

  void read(int number) {
    const v1::OvenSegment& segment = program_->segments(number);
    std::vector<DayReading*> inside;
    for (DayReading& use : learning_.uses)
      if (use.seconds >= segment.start_time().seconds() && use.seconds < segment.end_time().seconds()) {
        use.setpointCelsius = segment.setpoint_celsius();
        inside.push_back(&use);
      }
    if (segment.kind() == v1::OVEN_SEGMENT_KIND_HOLDING)
      for (DayReading* use : inside) hold(segment, *use);
    if (segment.kind() == v1::OVEN_SEGMENT_KIND_HEATING) rise(number, inside);
    if (segment.kind() == v1::OVEN_SEGMENT_KIND_COOLING) fall(inside);
  }

  void hold(const v1::OvenSegment& segment, DayReading& use) {
    use.fate = OvenFate::kHeld;
    offsets_.push_back(use.celsius - segment.setpoint_celsius());
  }

  // What the oven held right before, or a cold oven.
  double celsiusBefore(int number) const {
    if (number == 0) return kRoomCelsius;
    const v1::OvenSegment& before = program_->segments(number - 1);
    const bool follows = before.end_time().seconds() == program_->segments(number).start_time().seconds() &&
                         before.kind() != v1::OVEN_SEGMENT_KIND_PROOFING;
    return follows ? before.setpoint_celsius() : kRoomCelsius;
  }

  void rise(int number, const std::vector<DayReading*>& inside) {
    const v1::OvenSegment& segment = program_->segments(number);
    double from = celsiusBefore(number);
    std::int64_t since = segment.start_time().seconds();
    for (DayReading* use : inside) {
      const std::int64_t took = use->seconds - since;
      use->fate = OvenFate::kUsed;
      if (took < kApart) {
        // Too soon to be timed; but it tells where the next rise begins.
        if (took > 0 && use->celsius < from) use->fate = OvenFate::kImpossible;
        continue;
      }
      const kitchen::OvenRise one{from, use->celsius, std::round(static_cast<double>(took) / 60)};
      if (!kitchen::riseFaults(curve_, {one}).empty()) {
        use->fate = OvenFate::kImpossible;
        continue;
      }
      keep(one, *use, learning_.oven.mutable_heat_curve()->mutable_rises(), risesOf_);
      from = use->celsius;
      since = use->seconds;
    }
  }

  void fall(const std::vector<DayReading*>& inside) {
    const DayReading* before = nullptr;
    for (DayReading* use : inside) {
      use->fate = OvenFate::kUsed;
      const std::int64_t took = before == nullptr ? 0 : use->seconds - before->seconds;
      if (before != nullptr && took < kApart) continue;
      if (before != nullptr) {
        const kitchen::OvenRise one{before->celsius, use->celsius,
                                    std::round(static_cast<double>(took) / 60)};
        if (!kitchen::fallFaults(curve_, {one}).empty()) {
          use->fate = OvenFate::kImpossible;
          continue;
        }
        keep(one, *use, learning_.oven.mutable_heat_curve()->mutable_falls_ajar(), fallsOf_);
      }
      before = use;
    }
  }

  template <typename List>
  void keep(const kitchen::OvenRise& one, DayReading& use, List* list, std::map<int, DayReading*>& useOf) {
    v1::HeatRise made;
    made.set_from_celsius(one.fromCelsius);
    made.set_to_celsius(one.toCelsius);
    made.mutable_duration()->set_seconds(std::lround(one.minutes) * 60);
    if (std::any_of(list->begin(), list->end(), [&](const v1::HeatRise& old) { return same(old, made); }))
      return;
    useOf[list->size()] = &use;
    *list->Add() = made;
    learning_.told = true;
  }

  // The fit says which of them it does not believe.
  void leaveOutFarOnes() {
    if (!learning_.told) return;
    for (const FittedReading& reading : fitOven(learning_.oven).readings)
      for (const auto& [list, uses] :
           {std::pair("heatCurve.rises[", &risesOf_), {"heatCurve.fallsAjar[", &fallsOf_}})
        for (const auto& [index, use] : *uses)
          if (reading.leftOut && reading.path == absl::StrCat(list, index, "]"))
            use->fate = OvenFate::kLeftOut;
  }

  template <typename List>
  static void keepNewest(List* list) {
    if (list->size() > kMostRises) list->DeleteSubrange(0, list->size() - kMostRises);
  }

  const v1::Plan& plan_;
  const v1::OvenProgram* program_ = nullptr;
  kitchen::ThermalCurve curve_;
  OvenLearning learning_;
  std::vector<double> offsets_;
  std::map<int, DayReading*> risesOf_;  // by index in the curve's list
  std::map<int, DayReading*> fallsOf_;
};

}  // namespace

OvenLearning learnFromDay(const v1::Oven& oven, const v1::Plan& plan, const v1::Progress& progress) {
  return Day(oven, plan, progress).run();
}

}  // namespace suppertide::compose
