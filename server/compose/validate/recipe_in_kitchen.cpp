#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/validate/documents.h"
#include "server/kitchen/racks.h"

namespace suppertide::compose {
namespace {

constexpr int kMostPanMm = 1000;
constexpr int kLeastShelfMm = 100;

// Steps of one recipe held against one kitchen and the skills of its cooks.
class Needs {
 public:
  Needs(const v1::Kitchen& kitchen, const std::set<std::string>& skills)
      : kitchen_(kitchen), skills_(skills) {}

  void check(const Checker& here, const v1::Step& step) const {
    if (!step.skill().empty() && skills_.count(step.skill()) == 0)
      here.at("skill").wrong(step.skill(), "must be a skill of one of the event's cooks");
    checkBurners(here.at("burnerCount"), step);
    for (int i = 0; i < step.equipment_size(); ++i) checkUse(here.at("equipment", i), step.equipment(i));
    checkPlaces(here.at("placeKinds"), step);
    if (!step.has_oven()) return;
    checkOven(here.at("oven").at("setpointCelsius"), step.oven());
    if (step.oven().has_pan()) checkPan(here.at("oven").at("pan"), step.oven().pan());
  }

 private:
  void checkBurners(const Checker& here, const v1::Step& step) const {
    const int usual = step.kind() == v1::STEP_KIND_BURNER ? 1 : 0;
    const int wanted = step.has_burner_count() ? step.burner_count() : usual;
    if (wanted > kitchen_.burner_count())
      here.wrong(absl::StrCat(wanted), absl::StrCat("must be between 0 and ", kitchen_.burner_count(),
                                                    ": the kitchen has no more burners"));
  }

  void checkUse(const Checker& here, const v1::EquipmentUse& use) const {
    const auto& all = kitchen_.equipment();
    const auto thing = std::find_if(all.begin(), all.end(),
                                    [&](const v1::Equipment& e) { return e.id() == use.equipment_id(); });
    if (thing == all.end())
      here.at("equipmentId").wrong(use.equipment_id(), "must be equipment of the event's kitchen");
    else if (std::max(1, use.count()) > thing->count())
      here.at("count").wrong(absl::StrCat(use.count()),
                             absl::StrCat("must be at most ", thing->count(), ": the kitchen has no more"));
  }

  void checkPlaces(const Checker& here, const v1::Step& step) const {
    const auto standsIn = [&](int kind) {
      return std::any_of(kitchen_.places().begin(), kitchen_.places().end(),
                         [&](const v1::Place& p) { return p.kind() == kind; });
    };
    const auto& kinds = step.place_kinds();
    if (kinds.empty() || std::any_of(kinds.begin(), kinds.end(), standsIn)) return;
    here.wrong(v1::PlaceKind_Name(kinds[0]), "the event's kitchen must have a place of one of these kinds");
  }

  // An oven that reaches every temperature of the bake. A bake of one temperature
  // may use the range that its recipe allows.
  void checkOven(const Checker& here, const v1::OvenNeed& need) const {
    const bool phases = need.later_phases_size() > 0;
    const int least =
        !phases && need.has_min_setpoint_celsius() ? need.min_setpoint_celsius() : need.setpoint_celsius();
    const int most =
        !phases && need.has_max_setpoint_celsius() ? need.max_setpoint_celsius() : need.setpoint_celsius();
    const auto reaches = [&](const v1::Oven& oven) {
      const auto on = [&](const v1::OvenPhase& phase) {
        return phase.setpoint_celsius() >= oven.min_setpoint_celsius() &&
               phase.setpoint_celsius() <= oven.max_setpoint_celsius();
      };
      return most >= oven.min_setpoint_celsius() && least <= oven.max_setpoint_celsius() &&
             std::all_of(need.later_phases().begin(), need.later_phases().end(), on);
    };
    if (std::any_of(kitchen_.ovens().begin(), kitchen_.ovens().end(), reaches)) return;
    std::string dials;
    for (const v1::Oven& oven : kitchen_.ovens())
      absl::StrAppend(&dials, dials.empty() ? "" : ", ", oven.display_name(), " ",
                      oven.min_setpoint_celsius(), " to ", oven.max_setpoint_celsius(), " °C");
    here.wrong(absl::StrCat(need.setpoint_celsius()),
               absl::StrCat("must be on the dial of an oven of the event's kitchen: ",
                            dials.empty() ? "it has none" : dials));
  }

  static bool isPlausible(const v1::Oven& oven) {
    const auto& heights = oven.rack_clear_height_mm();
    return std::min(oven.shelf_width_mm(), oven.shelf_depth_mm()) >= kLeastShelfMm && !heights.empty() &&
           *std::min_element(heights.begin(), heights.end()) > 0;
  }

  // One such pan in an empty oven; how many fit together is the plan's business.
  void checkPan(const Checker& here, const v1::Pan& told) const {
    const kitchen::Pan pan{told.width_mm(), told.depth_mm(), told.height_mm(), 1};
    // Sizes that no pan has, or no oven, are told where they stand.
    if (std::min({pan.widthMm, pan.depthMm, pan.heightMm}) <= 0 ||
        std::max(pan.widthMm, pan.depthMm) > kMostPanMm)
      return;
    std::string would;
    for (const v1::Oven& from : kitchen_.ovens()) {
      if (!isPlausible(from)) return;
      kitchen::Oven oven;
      oven.clearHeightsMm = {from.rack_clear_height_mm().begin(), from.rack_clear_height_mm().end()};
      oven.shelfWidthMm = from.shelf_width_mm();
      oven.shelfDepthMm = from.shelf_depth_mm();
      if (kitchen::fitsRacks(oven, {pan})) return;
      if (const auto other = kitchen::panThatWould(oven, {pan}, 0))
        absl::StrAppend(&would, would.empty() ? "" : ", or ", other->widthMm, " x ", other->depthMm, " x ",
                        other->heightMm, " mm in the ", from.display_name());
    }
    if (kitchen_.ovens().empty()) return;
    here.wrong(absl::StrCat(pan.widthMm, " x ", pan.depthMm, " x ", pan.heightMm, " mm"),
               absl::StrCat("must fit an oven of the event's kitchen, ",
                            would.empty() ? "and none takes a pan of this shape" : "as would " + would));
  }

  const v1::Kitchen& kitchen_;
  const std::set<std::string>& skills_;
};

}  // namespace

void checkRecipeInKitchen(const Checker& here, const v1::Bundle& bundle, int recipe,
                          const v1::Kitchen& kitchen, const std::set<std::string>& skills) {
  const Needs needs(kitchen, skills);
  const v1::Recipe& told = bundle.recipes(recipe);
  for (int i = 0; i < told.steps_size(); ++i)
    needs.check(here.at("recipes", recipe).at("steps", i), told.steps(i));
}

}  // namespace suppertide::compose
