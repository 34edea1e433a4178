#include <algorithm>
#include <array>
#include <map>

#include "absl/strings/str_cat.h"
#include "server/bread/readiness_table.h"
#include "server/compose/bread_model.h"
#include "server/compose/bread_tables.h"
#include "server/compose/parts.h"
#include "server/compose/spreads.h"

namespace suppertide::compose {
namespace {

constexpr int kTablePitch = 10;
constexpr double kNoon = 12;
constexpr int kFermentMinuteCost = 1;  // tier 3: a minute off the wanted rise

// The dough as it may come to a stage: least, likely and furthest along.
using States = std::vector<bread::DoughState>;

class BreadComposer {
 public:
  BreadComposer(Composition& composition, int dish, const BreadInfo& bread, BreadTables& tables)
      : composition_(composition),
        tables_(tables),
        dish_(dish),
        bread_(bread),
        model_(composition, composition.dishes[static_cast<std::size_t>(dish)], bread) {}

  absl::Status run() {
    std::vector<bread::Culture> cultures = {bread::Culture{0, bread::kPeakLevainLag, 1}};
    if (bread_.levainStep >= 0)
      if (auto status = throughLevain(cultures); !status.ok()) return status;
    std::array<std::vector<double>, 3> grown;
    for (std::size_t p = 0; p < bread_.preferments.size(); ++p)
      if (auto status = throughPreferment(static_cast<int>(p), grown); !status.ok()) return status;
    auto states = mixed(std::move(cultures), grown);
    if (!states.ok()) return states.status();
    std::map<int, States> byPlace = {{-1, *std::move(states)}};
    int before = -1;
    for (const int step : bread_.doughSteps) {
      byPlace = addStage(step, before, byPlace);
      before = step;
    }
    return absl::OkStatus();
  }

 private:
  const BreadRecipe& recipe() const { return *bread_.recipe; }
  bread::StartGrid grid() const { return {0, kTablePitch, composition_.problem.limit / kTablePitch + 1}; }
  bread::TableOptions tableOptions() const { return {composition_.axis.clockAtZero(), bread::kSearchHours}; }

  // Modes of the levain, and the cultures it may be used as.
  absl::Status throughLevain(std::vector<bread::Culture>& cultures) {
    cultures.clear();
    for (const double flour : recipe().flourPerStarter()) {
      const auto fed = model_.fedLevain(flour);
      if (!fed.ok()) return fed.status();
      for (const bread::DoughState& end : standingIn(bread_.levainStep, recipe().levainKind(), *fed, flour))
        cultures.push_back(bread::cultureOf(end));
    }
    orImpossible(bread_.levainStep);
    if (cultures.empty()) cultures.push_back({0.6, bread::kPeakLevainLag, 1});
    return absl::OkStatus();
  }

  // Modes of a preferment, and by how much its yeast has grown: least, likely and most.
  absl::Status throughPreferment(int index, std::array<std::vector<double>, 3>& grown) {
    const int step = bread_.preferments[static_cast<std::size_t>(index)].step;
    std::vector<double> factors;
    if (step >= 0) {
      const auto mixed = model_.mixedPreferment(index);
      if (!mixed.ok()) return mixed.status();
      for (const bread::DoughState& end : standingIn(step, recipe().prefermentKind(index), *mixed, 0))
        factors.push_back(end.yeastFactor);
      orImpossible(step);
    }
    if (factors.empty()) factors.push_back(recipe().likelyGrowth(index));
    std::sort(factors.begin(), factors.end());
    grown[0].push_back(factors.front());
    grown[1].push_back(factors[factors.size() / 2]);
    grown[2].push_back(factors.back());
    return absl::OkStatus();
  }

  // Adds a mode for each place where what was just mixed may stand; the states it may be used in.
  States standingIn(int step, const bread::DoughKind& kind, const bread::DoughState& state,
                    double flourPerStarter) {
    States ends;
    for (const int place : model_.places(step)) {
      const FermentCase ferment = {kind, state, model_.stays(place), model_.stage(step, place)};
      const auto& rows = tables_.rows(kind, {state}, 0, ferment.stays, ferment.stage, grid(), tableOptions());
      ModeInfo meaning;
      meaning.place = place;
      meaning.flourPerStarter = flourPerStarter;
      if (!addMode(step, meaning, rows, -1)) continue;
      setSpread(step, ferment);
      const auto& here = tables_.statesAtReadiness(kind, state, kNoon, ferment.stays, ferment.stage);
      ends.insert(ends.end(), here.begin(), here.end());
    }
    return ends;
  }

  absl::StatusOr<States> mixed(std::vector<bread::Culture> cultures,
                               const std::array<std::vector<double>, 3>& grown) {
    std::sort(cultures.begin(), cultures.end(),
              [](const auto& a, const auto& b) { return a.ripeness < b.ripeness; });
    const std::array<bread::Culture, 3> chosen = {cultures.front(), cultures[cultures.size() / 2],
                                                  cultures.back()};
    const bool one = cultures.size() == 1 && grown[0] == grown[2];
    States states;
    for (std::size_t k = 0; k < (one ? 1 : chosen.size()); ++k) {
      const auto state = model_.mixedDough(chosen[k], grown[k]);
      if (!state.ok()) return state.status();
      states.push_back(*state);
    }
    return states;
  }

  // Modes of one ferment of the dough by place (and by the place before), and how it leaves each.
  std::map<int, States> addStage(int step, int before, const std::map<int, States>& byPlace) {
    std::map<int, States> after;
    for (const auto& [placeBefore, raw] : byPlace) {
      States states;
      for (const bread::DoughState& state : raw)
        states.push_back(before < 0 ? state : model_.handled(state, step, model_.workHoursBefore(step)));
      const std::size_t likely = states.size() / 2;
      for (const int place : model_.places(step)) {
        const bread::Stage stage = model_.stage(step, place);
        const auto& rows =
            tables_.rows(recipe().kind(), states, likely, model_.stays(place), stage, grid(), tableOptions());
        ModeInfo meaning;
        meaning.place = place;
        meaning.placeBefore = placeBefore;
        if (!addMode(step, meaning, rows, before)) continue;
        setSpread(step, {recipe().kind(), states[likely], model_.stays(place), stage});
        States& left = after[place];
        const auto& ends =
            tables_.statesAtReadiness(recipe().kind(), states[likely], kNoon, model_.stays(place), stage);
        left.insert(left.end(), ends.begin(), ends.end());
      }
    }
    orImpossible(step);
    for (auto& [place, states] : after) states = spread(states);
    return after;
  }

  // Least, likely and furthest by ripeness times gas.
  static States spread(States states) {
    std::sort(states.begin(), states.end(),
              [](const auto& a, const auto& b) { return a.ripeness < b.ripeness; });
    if (states.size() <= 3) return states;
    return {states.front(), states[states.size() / 2], states.back()};
  }

  bool addMode(int step, ModeInfo meaning, const std::vector<bread::ReadinessRow>& rows, int before) {
    const v1::Place& place = composition_.documents.kitchen.places(meaning.place);
    planning::Mode mode;
    mode.name = absl::StrCat(
        place.id(), meaning.flourPerStarter > 0 ? absl::StrCat(" 1:", meaning.flourPerStarter) : "",
        meaning.placeBefore >= 0
            ? absl::StrCat(" after ", composition_.documents.kitchen.places(meaning.placeBefore).id())
            : "");
    if (!tableOf(rows, mode.length)) return false;
    if (!stand(step, meaning, mode)) return false;
    const v1::Step& told = *composition_.steps[static_cast<std::size_t>(step)].step;
    setWork(composition_, told, *composition_.dishes[static_cast<std::size_t>(dish_)].dish, mode);
    const bool elastic = model_.isRetard(meaning.place);
    mode.shortMinuteCost = mode.longMinuteCost = elastic ? 0 : kFermentMinuteCost;
    if (meaning.placeBefore >= 0 && before >= 0)
      mode.links.push_back({before, modesIn(before, meaning.placeBefore)});
    composition_.problem.steps[static_cast<std::size_t>(step)].modes.push_back(std::move(mode));
    composition_.steps[static_cast<std::size_t>(step)].modes.push_back(meaning);
    return true;
  }

  // Of the mode added last.
  void setSpread(int step, const FermentCase& ferment) {
    const auto index = static_cast<std::size_t>(step);
    composition_.problem.steps[index].modes.back().spread =
        fermentSpread(composition_, model_.isPreferment(step) ? nullptr : bread_.starter,
                      composition_.steps[index].modes.back().place, ferment, tables_);
  }

  static bool tableOf(const std::vector<bread::ReadinessRow>& rows, planning::LengthTable& table) {
    table = {0, kTablePitch, {}};
    bool any = false;
    for (const bread::ReadinessRow& row : rows) {
      table.rows.push_back(row.ready ? planning::Length{row.earliest, row.best, row.latest}
                                     : planning::Length{1, 1, 0});
      any = any || row.ready;
    }
    return any;
  }

  // Room in the place, or the oven that the place is.
  bool stand(int step, ModeInfo& meaning, planning::Mode& mode) {
    const v1::Kitchen& kitchen = composition_.documents.kitchen;
    const v1::Place& place = kitchen.places(meaning.place);
    if (place.kind() != v1::PLACE_KIND_OVEN_LIGHT)
      return usePlace(composition_, meaning.place, model_.litres(step), mode);
    for (int o = 0; o < kitchen.ovens_size(); ++o) {
      if (kitchen.ovens(o).id() != place.oven_id()) continue;
      const int setpoint = proofingSetpoint(composition_, o);
      planning::OvenNeed need;
      need.oven = o;
      need.phases = {{setpoint, 0}};
      need.load = model_.load(step);
      if (setpoint < 0 || !composition_.problem.ovens[static_cast<std::size_t>(o)].racks->fits({need.load}))
        return false;
      mode.oven = std::move(need);
      meaning.oven = o;
      return true;
    }
    return false;
  }

  std::vector<int> modesIn(int step, int place) const {
    std::vector<int> modes;
    const auto& meanings = composition_.steps[static_cast<std::size_t>(step)].modes;
    for (std::size_t m = 0; m < meanings.size(); ++m)
      if (meanings[m].place == place) modes.push_back(static_cast<int>(m));
    return modes;
  }

  void orImpossible(int step) {
    if (composition_.problem.steps[static_cast<std::size_t>(step)].modes.empty())
      makeImpossible(composition_, step);
  }

  Composition& composition_;
  BreadTables& tables_;
  int dish_;
  const BreadInfo& bread_;
  BreadModel model_;
};

}  // namespace

absl::Status addBreads(Composition& composition) {
  BreadTables own;
  BreadTables& tables = composition.tables != nullptr ? *composition.tables : own;
  for (std::size_t d = 0; d < composition.dishes.size(); ++d) {
    if (!composition.dishes[d].recipe->has_formula()) continue;
    auto bread = breadInfoOf(composition, composition.dishes[d]);
    if (!bread.ok()) return bread.status();
    composition.dishes[d].bread = *std::move(bread);
    if (auto status =
            BreadComposer(composition, static_cast<int>(d), *composition.dishes[d].bread, tables).run();
        !status.ok())
      return status;
  }
  return absl::OkStatus();
}

}  // namespace suppertide::compose
