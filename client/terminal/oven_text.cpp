#include "client/terminal/oven_text.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "client/terminal/table.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

constexpr std::int64_t kShortPauseSeconds = 5 * 60;
constexpr int kLowestDialCelsius = 40;  // cooler than that, an oven is off

// What is done at one oven at one moment.
struct Moment {
  std::string setTo;  // the dial; empty: untouched
  // What is done, in this order: the rack is free before the next comes.
  std::vector<std::string> outs;
  std::vector<std::string> dial;
  std::vector<std::string> ins;

  Cell acts() const {
    Cell all = outs;
    all.insert(all.end(), dial.begin(), dial.end());
    all.insert(all.end(), ins.begin(), ins.end());
    return all;
  }
};
using Moments = std::map<std::int64_t, Moment>;  // by seconds since 1970

std::string rackText(const v1::RackUse& use) {
  if (use.positions_size() == 0) return use.may_fit() ? absl::StrCat(", ", mayFitWords()) : "";
  return absl::StrCat(use.positions_size() == 1 ? ", rack " : ", racks ",
                      absl::StrJoin(use.positions(), " and "));
}

// The segment that follows at once, or null when the oven is switched off in between.
// A few minutes between two programs are nobody's reason to switch off.
const v1::OvenSegment* nextOf(const v1::OvenProgram& program, int index) {
  if (index < 0 || index + 1 >= program.segments_size()) return nullptr;
  const std::int64_t gap =
      program.segments(index + 1).start_time().seconds() - program.segments(index).end_time().seconds();
  return gap <= kShortPauseSeconds ? &program.segments(index + 1) : nullptr;
}

// Warming up for a dough under the light is done by the light.
bool isLightOnly(const v1::OvenProgram& program, int index) {
  if (program.segments(index).kind() == v1::OVEN_SEGMENT_KIND_PROOFING) return true;
  const v1::OvenSegment* next = nextOf(program, index);
  return program.segments(index).kind() == v1::OVEN_SEGMENT_KIND_HEATING && next != nullptr &&
         next->kind() == v1::OVEN_SEGMENT_KIND_PROOFING;
}

void addDial(const PlanView& view, const v1::OvenProgram& program, int index, Moments& moments) {
  const v1::OvenSegment& segment = program.segments(index);
  const bool continues = index > 0 && nextOf(program, index - 1) != nullptr;
  const bool lightOnly = isLightOnly(program, index);
  const bool same =
      continues && isLightOnly(program, index - 1) == lightOnly &&
      (lightOnly || program.segments(index - 1).setpoint_celsius() == segment.setpoint_celsius());
  Moment& moment = moments[segment.start_time().seconds()];
  const bool cooledDown =
      segment.kind() == v1::OVEN_SEGMENT_KIND_COOLING && segment.setpoint_celsius() < kLowestDialCelsius;
  if (!same) {
    moment.setTo = lightOnly    ? "light only"
                   : cooledDown ? "off"
                                : view.units().dial(segment.setpoint_celsius());
  }
  const std::string done =
      view.clock().hourSeenFrom(toTime(segment.start_time()), toTime(segment.end_time()));
  if (segment.kind() == v1::OVEN_SEGMENT_KIND_HEATING) {
    const char* act = lightOnly   ? "light on, warm at "
                      : continues ? "heats up, hot at "
                                  : "switch on, hot at ";
    moment.dial.push_back(absl::StrCat(act, done));
  } else if (segment.kind() == v1::OVEN_SEGMENT_KIND_COOLING) {
    moment.dial.push_back(absl::StrCat("open the door a little, cooler by ", done));
  }
  if (nextOf(program, index) == nullptr && !cooledDown) moments[segment.end_time().seconds()].setTo = "off";
}

void addFood(const PlanView& view, const v1::OvenProgram& program, Moments& moments) {
  std::map<std::string, v1::RackUse> uses;
  for (const v1::OvenSegment& segment : program.segments()) {
    for (const v1::RackUse& use : segment.racks()) uses.emplace(use.step_id(), use);
  }
  for (const auto& [id, use] : uses) {
    if (const v1::PlannedStep* step = view.step(id)) {
      moments[step->end_time().seconds()].outs.push_back(absl::StrCat("out: ", view.titleWithDish(*step)));
    }
  }
  for (const auto& [id, use] : uses) {
    const v1::PlannedStep* step = view.step(id);
    if (step == nullptr) continue;
    Moment& moment = moments[step->start_time().seconds()];
    const std::string until = view.clock().hourSeenFrom(toTime(step->start_time()), toTime(step->end_time()));
    moment.ins.push_back(absl::StrCat("in: ", view.titleWithDish(*step), rackText(use), ", until ", until));
  }
}

// Estimated temperature at an instant, straight between two samples.
std::optional<double> celsiusAt(const v1::OvenProgram& program, std::int64_t seconds) {
  const v1::TemperatureSample* before = nullptr;
  for (const v1::TemperatureSample& sample : program.temperatures()) {
    if (sample.time().seconds() == seconds) return sample.celsius();
    if (sample.time().seconds() > seconds) {
      if (before == nullptr) return std::nullopt;
      const double span = static_cast<double>(sample.time().seconds() - before->time().seconds());
      const double part = static_cast<double>(seconds - before->time().seconds()) / span;
      return before->celsius() + part * (sample.celsius() - before->celsius());
    }
    before = &sample;
  }
  return std::nullopt;
}

std::string programText(const PlanView& view, const v1::OvenProgram& program) {
  Moments moments;
  for (int i = 0; i < program.segments_size(); ++i) addDial(view, program, i, moments);
  addFood(view, program, moments);
  Table table({{.title = "Day"},
               {.title = "At"},
               {.title = "Set to"},
               {.title = "Oven about"},
               {.title = "What", .fitted = false}});
  absl::Time last = absl::InfinitePast();
  for (const auto& [seconds, moment] : moments) {
    if (moment.setTo.empty() && moment.acts().empty()) continue;
    const absl::Time time = absl::FromUnixSeconds(seconds);
    const auto celsius = !moment.ins.empty() ? celsiusAt(program, seconds) : std::nullopt;
    table.add({{view.clock().sameDay(last, time) ? "" : view.clock().shortDay(time)},
               {view.clock().hour(time)},
               {moment.setTo},
               {celsius ? view.units().degrees(*celsius) : ""},
               moment.acts()});
    last = time;
  }
  return view.part(view.names().oven(program.oven_id())) + table.text(view.width(), view.style(), true);
}

// What may stand together after all; the plan is good without.
std::string doubtText(const PlanView& view, const v1::RackDoubt& doubt) {
  std::vector<std::string> steps;
  for (const std::string& id : doubt.step_ids()) steps.push_back(view.titleWithDish(id));
  return absl::StrCat(joinWords(steps),
                      steps.size() > 1 ? " together: " : ", all pans at once: ", mayFitWords(),
                      ". The plan does not count on it.");
}

}  // namespace

std::string ovensText(const PlanView& view) {
  std::string text;
  std::vector<std::string> idle;
  for (const v1::OvenProgram& program : view.plan().oven_programs()) {
    if (program.segments_size() == 0) {
      idle.push_back(view.names().oven(program.oven_id()));
      continue;
    }
    if (!text.empty()) text += "\n";
    text += programText(view, program);
  }
  if (text.empty() && idle.empty()) return "";
  for (const v1::RackDoubt& doubt : view.plan().rack_doubts())
    text += view.item("• ", absl::StrCat(view.names().oven(doubt.oven_id()), ": ", doubtText(view, doubt)));
  if (!idle.empty()) text += view.paragraph(absl::StrCat("Not used: ", joinWords(idle), "."));
  return view.section("Ovens") + text;
}

}  // namespace suppertide::terminal
