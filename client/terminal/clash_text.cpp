#include "client/terminal/clash_text.h"

#include <algorithm>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"

namespace suppertide::terminal {
namespace {

std::string dishName(const PlanView& view, const std::string& plannedId) {
  return view.names().dish(splitPlannedId(plannedId).first);
}

// Two bakes of one dish are told apart by their steps.
std::string sideName(const PlanView& view, const v1::OvenClash& clash, const std::string& plannedId) {
  const bool sameDish = splitPlannedId(clash.step_a_id()).first == splitPlannedId(clash.step_b_id()).first;
  return sameDish ? view.titleWithDish(plannedId) : dishName(view, plannedId);
}

constexpr int kLowestDialCelsius = 40;  // cooler than that, an oven has only its light on

std::string wish(const PlanView& view, int celsius) {
  return celsius < kLowestDialCelsius ? "light only" : view.units().dial(celsius);
}

// What became of one dish's wish.
struct Side {
  std::string name;
  std::string movedBy;             // "40 min earlier"; empty: not moved
  bool barelyMoved = false;        // by so little that it hardly counts
  std::vector<std::string> other;  // another oven, another temperature
};

Side sideOf(const PlanView& view, const v1::OvenClash& clash, const std::string& plannedId,
            const google::protobuf::Duration& moved, int degrees, int naiveSetpoint) {
  Side side{.name = sideName(view, clash, plannedId), .movedBy = "", .other = {}};
  const absl::Duration by = toDuration(moved);
  if (absl::AbsDuration(by) >= absl::Minutes(1)) {
    side.movedBy = absl::StrCat(durationText(by), by < absl::ZeroDuration() ? " earlier" : " later");
  }
  side.barelyMoved = absl::AbsDuration(by) < absl::Minutes(10);
  const v1::PlannedStep* step = view.step(plannedId);
  if (step != nullptr && !step->oven_id().empty() && step->oven_id() != clash.oven_id()) {
    side.other.push_back(absl::StrCat("in ", view.names().oven(step->oven_id()), " instead"));
  }
  if (degrees != 0 && view.units().dial(naiveSetpoint + degrees) != view.units().dial(naiveSetpoint)) {
    side.other.push_back(absl::StrCat("at ", view.units().dialNumber(naiveSetpoint + degrees), " instead of ",
                                      view.units().dial(naiveSetpoint)));
  }
  return side;
}

// Empty when this side did not give way; small moves are left out when they decided nothing.
std::string settledText(const Side& side, bool withSmallMoves) {
  std::vector<std::string> parts;
  if (!side.movedBy.empty() && (withSmallMoves || !side.barelyMoved)) parts.push_back(side.movedBy);
  parts.insert(parts.end(), side.other.begin(), side.other.end());
  return parts.empty() ? "" : absl::StrCat(side.name, " ", absl::StrJoin(parts, ", "));
}

}  // namespace

std::string clashText(const PlanView& view, const v1::OvenClash& clash) {
  const absl::Time from = std::max(toTime(clash.naive_a().start()), toTime(clash.naive_b().start()));
  const Side a = sideOf(view, clash, clash.step_a_id(), clash.moved_a(), clash.degrees_a(),
                        clash.naive_setpoint_a_celsius());
  const Side b = sideOf(view, clash, clash.step_b_id(), clash.moved_b(), clash.degrees_b(),
                        clash.naive_setpoint_b_celsius());
  std::string text =
      absl::StrCat(a.name, " (", wish(view, clash.naive_setpoint_a_celsius()), ") and ", b.name, " (",
                   wish(view, clash.naive_setpoint_b_celsius()), ") both wanted ",
                   view.names().oven(clash.oven_id()), " on ", view.clock().dayHour(from));
  const auto isLarge = [](const Side& side) {
    return !side.other.empty() || (!side.movedBy.empty() && !side.barelyMoved);
  };
  const bool withSmallMoves = !isLarge(a) && !isLarge(b);
  std::vector<std::string> settled;
  for (const Side* side : {&a, &b}) {
    std::string part = settledText(*side, withSmallMoves);
    if (!part.empty()) settled.push_back(std::move(part));
  }
  if (clash.shared_setpoint()) settled.push_back("they share the oven at one temperature");
  if (settled.empty()) return text + ".";
  return absl::StrCat(text, ". Settled: ", absl::StrJoin(settled, "; "), ".");
}

std::string clashesText(const PlanView& view) {
  if (view.plan().oven_clashes_size() == 0) return "";
  std::string text = view.section("Oven clashes, and how they are settled");
  for (const v1::OvenClash& clash : view.plan().oven_clashes())
    text += view.item("• ", clashText(view, clash));
  return text;
}

}  // namespace suppertide::terminal
