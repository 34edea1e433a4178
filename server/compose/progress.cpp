#include "server/compose/progress.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <numeric>

#include "absl/strings/str_cat.h"
#include "server/base/index.h"
#include "server/compose/documents.h"
#include "server/compose/seen_bakes.h"
#include "server/compose/seen_doughs.h"

namespace suppertide::compose {
namespace {

using planning::Minute;
using planning::StepState;
using Kind = planning::StepState::Kind;

// A bake that is done so many minutes otherwise than planned is as planned.
constexpr Minute kTelling = 5;

class Reading {
 public:
  Reading(Composition& composition, const v1::Progress& progress, int known, Minute now)
      : composition_(composition), progress_(progress), known_(known) {
    running_.now = std::clamp(now, 0, composition.problem.limit);
    running_.states.resize(composition.steps.size());
    told_.assign(composition.steps.size(), false);
    seenAt_.assign(composition.steps.size(), planning::kNoLimit);
    endBySight_ = seenAt_;
    readings_.resize(composition.steps.size());
    for (std::size_t i = 0; i < composition.steps.size(); ++i)
      byId_[composition.stepId(static_cast<int>(i))] = static_cast<int>(i);
  }

  planning::Running run(const v1::Plan& plan) {
    running_.plan = knownPartOf(composition_, plan, running_.addedDishes);
    readReports();
    assumeSilent();
    return std::move(running_);
  }

 private:
  const planning::Placement& planned(int step) const { return running_.plan.steps[at(step)]; }
  StepState& state(int step) { return running_.states[at(step)]; }

  void readReports() {
    std::map<const v1::Report*, int> number;
    for (int r = 0; r < progress_.reports_size(); ++r) number[&progress_.reports(r)] = r;
    for (const v1::Report* report : standingReports(progress_)) {
      const auto step = byId_.find(absl::StrCat(report->dish_id(), "/", report->step_id()));
      if (step != byId_.end()) take(step->second, *report, number[report] >= known_);
    }
  }

  Minute whenOf(const v1::Report& report) const {
    return report.has_happen_time() ? std::min(composition_.axis.minuteOf(report.happen_time()), running_.now)
                                    : running_.now;
  }

  void take(int step, const v1::Report& report, bool isNew) {
    const Minute when = whenOf(report);
    StepState& here = state(step);
    switch (report.what_case()) {
      case v1::Report::kStarted:
        if (here.kind == Kind::kFinished) return startOnly(here, when);
        // What was put off has begun later; it does not last longer for that.
        if (here.kind == Kind::kWaiting) here.longer = 0;
        here.kind = Kind::kStarted;
        here.start = when;
        break;
      case v1::Report::kFinished:
        if (here.kind != Kind::kStarted) here.start = std::min(planned(step).start, when);
        here.kind = Kind::kFinished;
        here.end = std::max(when, here.start);
        break;
      case v1::Report::kSkipped:
        here.kind = Kind::kSkipped;
        break;
      case v1::Report::kDelayedBy:
        return delay(step, minutesOf(report.delayed_by()), when, isNew);
      case v1::Report::kHandedToMemberId:
        return handOver(step, report.handed_to_member_id());
      case v1::Report::WHAT_NOT_SET:
        return;  // a note
      default:
        return see(step, report, when);
    }
    told_[at(step)] = true;
    if (here.kind != Kind::kSkipped) here.cook = cookOf(report.member_id(), step);
  }

  static void startOnly(StepState& here, Minute when) { here.start = std::min(when, here.end); }

  // Who reports a step that needs hands did it, if they cook here.
  int cookOf(const std::string& member, int step) const {
    if (planned(step).cook < 0) return -1;
    const auto& cooks = composition_.problem.cooks;
    for (std::size_t c = 0; c < cooks.size(); ++c)
      if (cooks[c].id == member) return static_cast<int>(c);
    return -1;
  }

  // What somebody saw of a step was there to be seen.
  void see(int step, const v1::Report& report, Minute when) {
    // An oven can be read while it still heats up for the step.
    const bool oven = report.what_case() == v1::Report::kOvenCelsius;
    if (!oven) seenAt_[at(step)] = std::min(seenAt_[at(step)], when);
    if (report.what_case() == v1::Report::kDone) endBySight_[at(step)] = when;
    if (report.what_case() == v1::Report::kNeedsMoreDuration)
      endBySight_[at(step)] = when + minutesOf(report.needs_more_duration());
    const bool core = report.what_case() == v1::Report::kCoreCelsius;
    if (!core && !oven) return;
    readings_[at(step)].push_back({when, core, core ? report.core_celsius() : report.oven_celsius()});
  }

  void delay(int step, Minute by, Minute when, bool isNew) {
    StepState& here = state(step);
    // The plan has it: of a step under way it still is a part of its length.
    if (!isNew) {
      if (here.kind == Kind::kStarted ? here.start <= when : planned(step).start <= when)
        here.counted = std::max(here.counted, by);
      here.longer = std::max(here.longer, here.counted);
      return;
    }
    if (here.kind == Kind::kStarted || planned(step).start < running_.now)
      here.longer = std::max(here.longer, here.counted + by);
    if (here.kind == Kind::kWaiting) here.notBefore = std::max(here.notBefore, planned(step).start + by);
  }

  // Only to somebody who can do it; who cannot is no wish that could be kept.
  void handOver(int step, const std::string& member) {
    planning::Step& what = composition_.problem.steps[at(step)];
    const auto& able = what.modes[at(planned(step).mode)].cooks;
    for (const planning::CookOption& option : able)
      if (composition_.problem.cooks[at(option.cook)].id == member) what.pin.cook = option.cook;
  }

  // In the order of the plan, so that what a step follows is settled before it.
  void assumeSilent() {
    std::vector<int> order(running_.states.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](int a, int b) { return planned(a).start < planned(b).start; });
    for (const int step : order) {
      if (told_[at(step)] && state(step).kind == Kind::kStarted) watch(step, state(step).start);
      assume(step);
    }
  }

  // What eyes and thermometers say of a step that begins at `start`, against the plan's end.
  void watch(int step, Minute start) {
    const v1::StepKind kind = composition_.steps[at(step)].step->kind();
    if (endBySight_[at(step)] < planning::kNoLimit && kind != v1::STEP_KIND_FERMENT)
      return lookAt(step, start);
    std::vector<BakeReading>& readings = readings_[at(step)];
    const v1::Step& told = *composition_.steps[at(step)].step;
    if (readings.empty() || !told.has_oven()) return;
    std::stable_sort(readings.begin(), readings.end(),
                     [](const BakeReading& a, const BakeReading& b) { return a.when < b.when; });
    const auto mode = at(planned(step).mode);
    const planning::Mode& way = composition_.problem.steps[at(step)].modes[mode];
    const planning::Length usual = way.length.at(planned(step).start);
    if (!usual.possible() || (way.oven && way.oven->phases.size() > 1)) return;
    const Minute now = bakeMinutesBySight(
        told.oven(), composition_.steps[at(step)].modes[mode].setpointCelsius, usual.best, start, readings);
    StepState& here = state(step);
    // What may be done sooner is looked at sooner; until somebody says that it is out it keeps its time.
    here.longer = std::max(0, now - usual.best);
    here.counted = planned(step).end - planned(step).start - usual.best;
    if (std::abs(here.longer - here.counted) < kTelling) here.longer = here.counted;
  }

  void lookAt(int step, Minute start) {
    const planning::Placement& old = planned(step);
    const planning::Mode& way = composition_.problem.steps[at(step)].modes[at(old.mode)];
    const planning::Length usual = way.length.at(old.start);
    if (!usual.possible()) return;
    StepState& here = state(step);
    here.longer = endBySight_[at(step)] - start - usual.best;
    here.counted = old.end - old.start - usual.best;
    if (std::abs(here.longer - here.counted) < kTelling) here.longer = here.counted;
  }

  void assume(int step) {
    StepState& here = state(step);
    // Of a dish that is left out only what had begun has a place.
    const bool leftOut = running_.plan.unserved[at(composition_.steps[at(step)].dish)];
    if (told_[at(step)] || (leftOut && planned(step).end == 0)) return;
    const Minute soonest = freeFrom(step);
    const bool followed = isFollowed(step);
    const bool seen = seenAt_[at(step)] < planning::kNoLimit;
    Minute start = std::min(planned(step).start, seenAt_[at(step)]);
    // What was to begin just now is not known to have begun. It begins with the end of what it waited for;
    // some minutes are as planned.
    if (!seen && soonest > start && soonest - start < kTelling) start = soonest;
    if (!followed && !seen && (start + kTelling > running_.now || soonest > start)) return;
    // Put off before it began; once under way it takes longer instead.
    if (here.notBefore > running_.now && start >= running_.now) return;
    here.start = std::min(start, running_.now);
    watch(step, here.start);
    const Minute end = here.start + planned(step).end - planned(step).start + here.longer - here.counted;
    here.kind = end <= running_.now || followed ? Kind::kFinished : Kind::kStarted;
    here.end = std::min(end, running_.now);
    here.notBefore = 0;
  }

  // When what the step follows was over; kNoLimit while it is not.
  Minute freeFrom(int step) {
    Minute from = 0;
    for (const planning::Gap& gap : composition_.problem.gaps) {
      if (gap.to != step || gap.least < 0 || gap.toEdge != planning::Edge::kStart) continue;
      const StepState& before = state(gap.from);
      if (before.kind == Kind::kSkipped) continue;
      const bool over = gap.fromEdge == planning::Edge::kStart ? before.kind != Kind::kWaiting
                                                               : before.kind == Kind::kFinished;
      if (!over) return planning::kNoLimit;
      from = std::max(from, (gap.fromEdge == planning::Edge::kStart ? before.start : before.end) + gap.least);
    }
    return from;
  }

  // Whether somebody reported a step that cannot begin before this one is over.
  bool isFollowed(int step) {
    return std::any_of(composition_.problem.gaps.begin(), composition_.problem.gaps.end(),
                       [&](const planning::Gap& gap) {
                         return gap.from == step && gap.fromEdge == planning::Edge::kEnd &&
                                gap.toEdge == planning::Edge::kStart && gap.least >= 0 &&
                                (told_[at(gap.to)] || seenAt_[at(gap.to)] < planning::kNoLimit) &&
                                state(gap.to).kind != Kind::kSkipped;
                       });
  }

  Composition& composition_;
  const v1::Progress& progress_;
  const int known_;
  planning::Running running_;
  std::vector<bool> told_;          // by step: begun, ended or skipped by report
  std::vector<Minute> seenAt_;      // by step: first seen by report, or kNoLimit
  std::vector<Minute> endBySight_;  // by step: when somebody who looked last said it ends, or kNoLimit
  std::vector<std::vector<BakeReading>> readings_;
  std::map<std::string, int> byId_;
};

}  // namespace

planning::Running runningOf(Composition& composition, const v1::Plan& plan, const v1::Progress& progress,
                            int known, Minute now) {
  return Reading(composition, progress, known, now).run(plan);
}

}  // namespace suppertide::compose
