// What each oven does: from its stays to heating, holding, cooling and proofing.
#include <algorithm>

#include "server/planning/explain/explain.h"
#include "server/planning/explain/oven_stay.h"

namespace suppertide::planning {
namespace {

// Baking starts well above; below, an oven is a warm place for dough.
constexpr int kProofingBelowCelsius = 45;

// A time at one setpoint with something in the oven.
struct Hold {
  int setpoint;  // index
  Interval<Minute> when;
  std::vector<int> steps;
  bool preheated;  // whether it has to be at the setpoint when the hold begins
};

void addStep(std::vector<int>& steps, int step) {
  if (std::find(steps.begin(), steps.end(), step) == steps.end()) steps.push_back(step);
}

// Joins phases that touch or overlap at the same setpoint. In a schedule that
// keeps the rules no two at different setpoints overlap.
std::vector<Hold> holdsOf(const std::vector<OvenStay>& stays) {
  struct Piece {
    int step;
    OvenStay::Phase phase;
    bool preheated;
  };
  std::vector<Piece> pieces;
  for (const OvenStay& stay : stays)
    for (std::size_t p = 0; p < stay.phases.size(); ++p)
      pieces.push_back({stay.step, stay.phases[p], p == 0 && stay.preheated});
  std::stable_sort(pieces.begin(), pieces.end(),
                   [](const Piece& a, const Piece& b) { return a.phase.when.start < b.phase.when.start; });
  std::vector<Hold> holds;
  for (const Piece& piece : pieces) {
    const Interval<Minute>& when = piece.phase.when;
    const bool joins = !holds.empty() && holds.back().setpoint == piece.phase.setpoint &&
                       when.start <= holds.back().when.limit;
    if (!joins) holds.push_back({piece.phase.setpoint, when, {}, piece.preheated});
    holds.back().when.limit = std::max(holds.back().when.limit, when.limit);
    addStep(holds.back().steps, piece.step);
  }
  return holds;
}

class ProgramMaker {
 public:
  ProgramMaker(const Oven& oven, OvenProgram& program) : oven_(oven), program_(program) {}

  void make(const std::vector<Hold>& holds) {
    const Hold* before = nullptr;
    for (const Hold& hold : holds) {
      if (before == nullptr || isSwitchedOffBetween(*before, hold)) {
        heatFromCold(hold);
      } else {
        changeOver(*before, hold);
      }
      before = &hold;
    }
  }

 private:
  using Kind = OvenSegment::Kind;

  int celsius(int setpoint) const { return nth(oven_.setpoints, setpoint); }
  Minute changeTime(int from, int to) const { return nth(nth(oven_.change, from), to); }
  Kind holding(int setpoint) const {
    return celsius(setpoint) < kProofingBelowCelsius ? Kind::kProofing : Kind::kHolding;
  }

  void add(Kind kind, Interval<Minute> when, int setpoint, std::vector<int> steps) {
    if (!when.empty()) program_.segments.push_back({kind, when, celsius(setpoint), std::move(steps)});
  }

  bool isProofing(int setpoint) const { return holding(setpoint) == Kind::kProofing; }

  bool isSwitchedOffBetween(const Hold& before, const Hold& hold) const {
    // Before a dough the oven is cooled on purpose: closed, it would stay too warm for hours.
    if (isProofing(hold.setpoint) && !isProofing(before.setpoint)) return false;
    const Minute idle = hold.when.start - before.when.limit;
    return idle > changeTime(before.setpoint, 0) + nth(oven_.heatFromCold, hold.setpoint);
  }

  void heatFromCold(const Hold& hold) {
    const Minute heat = nth(oven_.heatFromCold, hold.setpoint);
    if (hold.preheated) {
      add(Kind::kHeating, {std::max(0, hold.when.start - heat), hold.when.start}, hold.setpoint, {});
      add(holding(hold.setpoint), hold.when, hold.setpoint, hold.steps);
    } else {
      changeWithin(Kind::kHeating, hold, hold.when.start + heat);
    }
  }

  void changeOver(const Hold& before, const Hold& hold) {
    const Interval<Minute> idle{before.when.limit, hold.when.start};
    const Minute change = changeTime(before.setpoint, hold.setpoint);
    const bool hotter = celsius(hold.setpoint) > celsius(before.setpoint);
    const Kind kind = hotter ? Kind::kHeating : Kind::kCooling;
    if (idle.limit - idle.start < change) {
      add(kind, idle, hold.setpoint, {});
      changeWithin(kind, hold, idle.start + change);
      return;
    }
    if (hotter) {
      add(holding(before.setpoint), {idle.start, idle.limit - change}, before.setpoint, {});
      add(kind, {idle.limit - change, idle.limit}, hold.setpoint, {});
    } else {
      add(kind, {idle.start, idle.start + change}, hold.setpoint, {});
      const Minute rest = idle.limit - idle.start - change;
      if (isProofing(hold.setpoint) && rest > nth(oven_.heatFromCold, hold.setpoint))
        return heatFromCold(hold);
      add(holding(hold.setpoint), {idle.start + change, idle.limit}, hold.setpoint, {});
    }
    add(holding(hold.setpoint), hold.when, hold.setpoint, hold.steps);
  }

  // The change still goes on, until `ready`, with the hold's steps in the oven.
  void changeWithin(Kind kind, const Hold& hold, Minute ready) {
    const Minute until = std::min(ready, hold.when.limit);
    add(kind, {hold.when.start, until}, hold.setpoint, hold.steps);
    add(holding(hold.setpoint), {until, hold.when.limit}, hold.setpoint, hold.steps);
  }

  const Oven& oven_;
  OvenProgram& program_;
};

}  // namespace

std::vector<OvenProgram> ovenPrograms(const Problem& problem, const Schedule& schedule) {
  const auto stays = staysByOven(problem, schedule);
  std::vector<OvenProgram> programs(problem.ovens.size());
  for (std::size_t o = 0; o < programs.size(); ++o) {
    programs[o].oven = static_cast<int>(o);
    ProgramMaker(problem.ovens[o], programs[o]).make(holdsOf(stays[o]));
  }
  return programs;
}

}  // namespace suppertide::planning
