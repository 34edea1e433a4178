#include "client/terminal/step_text.h"

#include <algorithm>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

std::string ovenWords(const PlanView& view, const v1::PlannedStep& step) {
  const int recipe = step.recipe_setpoint_celsius();
  const std::string oven = view.names().oven(step.oven_id());
  if (step.oven_phases_size() > 1) {
    std::vector<std::string> phases;
    for (const v1::OvenPhase& phase : step.oven_phases()) {
      phases.push_back(
          absl::StrCat(view.units().dial(phase.setpoint_celsius()), " for ", durationText(phase.duration())));
    }
    return absl::StrCat(oven, " at ", absl::StrJoin(phases, ", then "));
  }
  if (step.setpoint_celsius() == 0) return oven;
  const std::string dial = view.units().dial(step.setpoint_celsius());
  if (recipe == 0 || dial == view.units().dial(recipe)) return absl::StrCat(oven, " at ", dial);
  return absl::StrCat(oven, " at ", view.units().dialNumber(step.setpoint_celsius()), " instead of ",
                      view.units().dial(recipe));
}

std::string rackWords(const std::vector<int>& positions) {
  if (positions.empty()) return "";
  return absl::StrCat(positions.size() == 1 ? "rack " : "racks ", absl::StrJoin(positions, " and "),
                      " from below");
}

// Work that leaves a hand free, so that a cook knows what else may go on.
std::string attentionWords(const v1::PlannedStep& step) {
  if (step.cook_member_id().empty() || step.attention_percent() >= 75) return "";
  if (step.kind() == v1::STEP_KIND_FETCH) return "";
  return step.attention_percent() <= 30 ? "look in now and then" : "stay near";
}

std::string partUsed(const v1::SafetyLimit& limit) {
  return absl::StrCat(durationText(limit.planned_duration()), " of at most ", durationText(limit.duration()));
}

std::string heldWords(const google::protobuf::Duration& held) {
  if (held.seconds() == 0) return "";
  return absl::StrCat(", for ",
                      held.seconds() < 60 ? absl::StrCat(held.seconds(), " s") : durationText(held));
}

// What a cook does or checks to keep a limit; empty for those that the plan keeps alone.
std::string limitWords(const Units& units, const v1::SafetyLimit& limit) {
  const std::string duration = durationText(limit.duration());
  switch (limit.kind()) {
    case v1::SAFETY_LIMIT_KIND_END_TEMPERATURE:
      return absl::StrCat("at least ", units.degreesAtLeast(limit.celsius()), " in the middle",
                          heldWords(limit.duration()));
    case v1::SAFETY_LIMIT_KIND_REHEAT:
      return absl::StrCat("heat it to ", units.degreesAtLeast(limit.celsius()), " in the middle");
    case v1::SAFETY_LIMIT_KIND_REST:
      return absl::StrCat("then rest it ", duration, " or more");
    case v1::SAFETY_LIMIT_KIND_ROASTING_OVEN:
      return absl::StrCat("the oven at ", units.degreesAtLeast(limit.celsius()), " or more");
    case v1::SAFETY_LIMIT_KIND_ROOM_TIME:
      return absl::StrCat("out of fridge and heat ", partUsed(limit));
    case v1::SAFETY_LIMIT_KIND_HOT_HOLD:
      return absl::StrCat("keep it at ", units.degreesAtLeast(limit.celsius()), " or more, ",
                          partUsed(limit));
    case v1::SAFETY_LIMIT_KIND_COLD_HOLD:
      return absl::StrCat("keep it at ", units.degreesAtMost(limit.celsius()), " or less");
    case v1::SAFETY_LIMIT_KIND_THAWED:
      return absl::StrCat("from thawed to the heat ", partUsed(limit));
    case v1::SAFETY_LIMIT_KIND_RAW_FRIDGE:
      return absl::StrCat("raw in the fridge ", partUsed(limit));
    case v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE:
      return absl::StrCat("in the fridge ", partUsed(limit));
    case v1::SAFETY_LIMIT_KIND_FIRST_COOLING:
      return absl::StrCat("from the heat to ", units.degreesAtMost(limit.celsius()), " within ", duration,
                          limit.planned_duration().seconds() > 0
                              ? absl::StrCat(", ", durationText(limit.planned_duration()), " of it gone")
                              : "");
    case v1::SAFETY_LIMIT_KIND_COOLING:
      return absl::StrCat("and to ", units.degreesAtMost(limit.celsius()), " within ", duration);
    default:
      return "";
  }
}

const v1::SafetyLimit* roomTimeOf(const v1::PlannedStep& step) {
  for (const v1::SafetyLimit& limit : step.safety_limits())
    if (limit.kind() == v1::SAFETY_LIMIT_KIND_ROOM_TIME) return &limit;
  return nullptr;
}

// What is taken from its place some time before the next step stands in the room until then, on the same
// clock.
std::string waitWords(const PlanView& view, const v1::PlannedStep& step) {
  constexpr absl::Duration kTold = absl::Minutes(10);
  const v1::SafetyLimit* clock = roomTimeOf(step);
  if (clock == nullptr || step.place_id().empty()) return "";
  const absl::Time end = toTime(step.end_time());
  const v1::PlannedStep* next = nullptr;
  for (const v1::PlannedStep& other : view.plan().steps()) {
    if (other.dish_id() != step.dish_id() || other.id() == step.id() || other.left_out()) continue;
    if (toTime(other.end_time()) <= end) continue;
    if (next == nullptr || toTime(other.start_time()) < toTime(next->start_time())) next = &other;
  }
  if (next == nullptr || toTime(next->start_time()) - end < kTold) return "";
  const v1::SafetyLimit* then = roomTimeOf(*next);
  if (then == nullptr || then->planned_duration().seconds() != clock->planned_duration().seconds()) return "";
  const auto at = [&](absl::Time time) { return view.clock().hourSeenFrom(toTime(step.start_time()), time); };
  return absl::StrCat("in it the wait in the room from ", at(end), " to ", at(toTime(next->start_time())));
}

std::string safetyWords(const PlanView& view, const v1::PlannedStep& step) {
  std::vector<std::string> limits;
  for (const v1::SafetyLimit& limit : step.safety_limits()) {
    std::string words = limitWords(view.units(), limit);
    if (words.empty()) continue;
    limits.push_back(std::move(words));
    if (limit.kind() != v1::SAFETY_LIMIT_KIND_ROOM_TIME) continue;
    if (std::string wait = waitWords(view, step); !wait.empty()) limits.push_back(std::move(wait));
  }
  return limits.empty() ? "" : absl::StrCat("Food safety: ", absl::StrJoin(limits, ", "));
}

std::string weighingWords(const PlanView& view, const v1::PlannedStep& step) {
  std::vector<std::string> parts;
  for (const v1::Weighing& weighing : step.weighings()) {
    parts.push_back(absl::StrCat(view.units().mass(weighing.mass_g()), " ", plainLine(weighing.name())));
  }
  return parts.empty() ? "" : absl::StrCat("Weigh: ", absl::StrJoin(parts, ", "));
}

// Steam, lid and how to tell the end of a bread's bake.
std::string bakeWords(const PlanView& view, const v1::PlannedStep& step) {
  const v1::BakeNotes& notes = step.bake_notes();
  const auto at = [&](const google::protobuf::Timestamp& time) {
    return view.clock().hourSeenFrom(toTime(step.start_time()), toTime(time));
  };
  std::vector<std::string> parts;
  if (notes.has_steam_out_time())
    parts.push_back(absl::StrCat("let the steam out at ", at(notes.steam_out_time())));
  if (notes.has_lid_off_time()) parts.push_back(absl::StrCat("lid off at ", at(notes.lid_off_time())));
  if (notes.has_least_core_celsius())
    parts.push_back(absl::StrCat("done at ", view.units().degrees(notes.least_core_celsius()), " to ",
                                 view.units().degrees(notes.most_core_celsius()), " inside"));
  if (notes.far_from_recipe())
    parts.push_back("the pieces are far from the recipe's own mass, so go by the centre's temperature");
  return parts.empty() ? "" : capitalised(absl::StrJoin(parts, "; "));
}

}  // namespace

std::string whereText(const PlanView& view, const v1::PlannedStep& step) {
  std::vector<std::string> parts;
  // Dough under an oven's light has both: the place says it all.
  if (!step.oven_id().empty() && step.place_id().empty()) parts.push_back(ovenWords(view, step));
  if (!step.place_id().empty()) parts.push_back(view.names().place(step.place_id()));
  parts.push_back(rackWords(view.rackPositions(step.id())));
  if (step.burner_count() > 0) parts.push_back(counted(step.burner_count(), "burner", "burners"));
  std::vector<std::string> things;
  for (const std::string& id : step.equipment_ids()) things.push_back(view.names().equipment(id));
  if (!things.empty()) parts.push_back(absl::StrCat("with ", joinWords(things)));
  if (step.has_check_from_time() && step.check_from_time().seconds() < step.end_time().seconds()) {
    parts.push_back(absl::StrCat(
        "look from ", view.clock().hourSeenFrom(toTime(step.start_time()), toTime(step.check_from_time()))));
  }
  parts.push_back(attentionWords(step));
  parts.erase(std::remove(parts.begin(), parts.end(), ""), parts.end());
  return absl::StrJoin(parts, ", ");
}

std::string slackText(const v1::PlannedStep& step) {
  const absl::Duration slack = toDuration(step.slack_duration());
  return slack >= absl::Minutes(1) ? absl::StrCat("slack ", durationText(slack)) : "no slack";
}

std::string mixingLiquid(const v1::PlannedStep& step) {
  const auto isWater = [](const v1::Weighing& weighing) {
    return absl::AsciiStrToLower(weighing.name()).find("water") != std::string::npos;
  };
  const bool water =
      step.weighings_size() == 0 || std::any_of(step.weighings().begin(), step.weighings().end(), isWater);
  return water ? "water" : "liquid";
}

std::vector<std::string> stepNotes(const PlanView& view, const v1::PlannedStep& step) {
  std::vector<std::string> notes;
  const std::string weighing = weighingWords(view, step);
  if (!weighing.empty()) notes.push_back(weighing);
  if (step.has_water_celsius()) {
    notes.push_back(
        absl::StrCat(capitalised(mixingLiquid(step)), " at ", view.units().degrees(step.water_celsius())));
  }
  if (!step.levain_ratio().empty() && step.kind() != v1::STEP_KIND_FERMENT) {
    notes.push_back(absl::StrCat("Starter : flour : water ", plainLine(step.levain_ratio()), " by weight"));
  }
  const std::string bake = bakeWords(view, step);
  if (!bake.empty()) notes.push_back(bake);
  std::vector<std::string> cautions;
  for (const int caution : step.cautions())
    cautions.push_back(cautionWords(static_cast<v1::Caution>(caution)));
  if (!cautions.empty()) notes.push_back(absl::StrCat("Take care: ", absl::StrJoin(cautions, "; ")));
  if (const std::string safety = safetyWords(view, step); !safety.empty()) notes.push_back(safety);
  return notes;
}

}  // namespace suppertide::terminal
