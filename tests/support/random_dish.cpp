#include "tests/support/random_dish.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

#include "absl/strings/str_cat.h"

namespace suppertide::planning {
namespace {

constexpr Minute kMinutesADay = 1440;
constexpr Minute kRowPitch = 30;
constexpr int kProofCelsius = 28;

Minute toGrid(double minutes) {
  return 5 * static_cast<Minute>(std::lround(minutes / 5));
}

// Minutes at `celsius` for what takes `length` at `best`: 1 % more a degree less.
Minute lengthAt(Minute length, int best, int celsius) {
  return toGrid(length * (1.0 + 0.01 * (best - celsius)));
}

}  // namespace

void DishMaker::begin(const std::string& name, Minute serve, Wait hold) {
  Dish dish;
  dish.id = absl::StrCat(name, " ", problem_.dishes.size());
  dish.serve = serve;
  dish.holdLimit = wait(hold.most);
  dish.lateLimit = 60;
  dish.waitCost.knots = {{0, 0}, {hold.most, hold.most * hold.perHourCost / 60}};
  dish.unservedCost = dice_.between(1, 3);
  dishName_ = dish.id;
  problem_.dishes.push_back(dish);
}

int DishMaker::add(const std::string& name, StepKind kind, LengthTable length) {
  Step step;
  step.id = absl::StrCat(dishName_, ": ", name);
  step.kind = kind;
  step.dish = static_cast<int>(problem_.dishes.size()) - 1;
  step.modes.emplace_back();
  step.modes.back().name = "plain";
  step.modes.back().length = std::move(length);
  problem_.steps.push_back(step);
  return static_cast<int>(problem_.steps.size()) - 1;
}

// Everyone, or all but one; the last cook is a helper who costs a little to ask.
std::vector<CookOption> DishMaker::someCooks() {
  const int count = static_cast<int>(problem_.cooks.size());
  const int unable = count > 1 && dice_.chance(50) ? dice_.between(0, count - 1) : -1;
  std::vector<CookOption> options;
  for (int c = 0; c < count; ++c)
    if (c != unable) options.push_back({c, c == count - 1 ? 2 : 0});
  return options;
}

int DishMaker::handsOn(const std::string& name, Minute length, int attention) {
  const int index = add(name, StepKind::kHandsOn, LengthTable::fixed(length));
  Mode& mode = problem_.steps.back().modes.back();
  mode.attention = attention;
  mode.cooks = someCooks();
  return index;
}

int DishMaker::onBurner(const std::string& name, Minute length, int attention) {
  const int index = handsOn(name, length, attention);
  problem_.steps.back().kind = StepKind::kCook;
  problem_.steps.back().modes.back().uses.push_back({things_.burners, 1});
  return index;
}

int DishMaker::chill(const std::string& name, Minute shortest, Minute best, Minute longest) {
  const int index = add(name, StepKind::kChill, LengthTable::range(shortest, best, longest));
  problem_.steps.back().modes.back().uses.push_back({things_.fridge, dice_.between(1, 2)});
  return index;
}

// A mode for each oven and each of its setpoints from `least` to 15 degrees above `best`.
int DishMaker::bake(const std::string& name, Minute length, int best, int least, int racks) {
  const int index = add(name, StepKind::kBake, LengthTable::fixed(length));
  Step& step = problem_.steps.back();
  step.modes.clear();
  for (int o = 0; o < static_cast<int>(problem_.ovens.size()); ++o) {
    const Oven& oven = problem_.ovens[static_cast<std::size_t>(o)];
    for (int s = 0; s < static_cast<int>(oven.setpoints.size()); ++s) {
      const int celsius = oven.setpoints[static_cast<std::size_t>(s)];
      if (celsius < least || celsius > best + 15 || !oven.racks->fits({{.racks = racks}})) continue;
      Mode mode;
      mode.name = absl::StrCat(oven.id, ", ", celsius);
      mode.length = LengthTable::fixed(lengthAt(length, best, celsius));
      mode.oven = OvenNeed{o, {{s, 0}}, {}, true};
      mode.oven->load.racks = racks;
      mode.qualityCost = std::abs(best - celsius) / 5;
      step.modes.push_back(mode);
    }
  }
  return index;
}

void DishMaker::gap(int from, Edge fromEdge, int to, Edge toEdge, Minute least, Minute most) {
  problem_.gaps.push_back({from, fromEdge, to, toEdge, least, most});
}

void DishMaker::then(int from, int to, Minute least, Minute most) {
  gap(from, Edge::kEnd, to, Edge::kStart, least, most);
}

void DishMaker::finish(int lastStep) {
  problem_.dishes.back().lastStep = lastStep;
}

// A ferment at room temperature: quickest in the afternoon, slowest before dawn, by its hour of start.
LengthTable DishMaker::byHour(Minute noonLength) {
  LengthTable table{0, kRowPitch, {}};
  for (Minute start = 0; start < problem_.limit; start += kRowPitch) {
    const double hour = static_cast<double>(start % kMinutesADay) / 60.0;
    const double best = noonLength * (1.15 - 0.15 * std::cos((hour - 15.0) * std::numbers::pi / 12.0));
    table.rows.push_back({toGrid(0.85 * best), toGrid(best), toGrid(1.2 * best)});
  }
  return table;
}

int DishMaker::bulk() {
  const Minute length = dice_.between(180, 300, 5);
  const int index = add("bulk", StepKind::kFerment, byHour(length));
  Step& step = problem_.steps.back();
  step.modes.back().name = "room";
  step.modes.back().shortMinuteCost = step.modes.back().longMinuteCost = 1;
  Mode warm;
  warm.name = "warm place";
  warm.length = LengthTable::range(toGrid(length * 0.6), toGrid(length * 0.7), toGrid(length * 0.8));
  warm.uses.push_back({things_.warmPlace, 1});
  warm.qualityCost = 5;
  warm.shortMinuteCost = warm.longMinuteCost = 1;
  step.modes.push_back(warm);
  return index;
}

// Room, fridge overnight, warm place or a cool enough oven; dough from the warm place does not go on at room.
int DishMaker::proof(int bulkStep) {
  const Minute length = dice_.between(60, 120, 5);
  const int index = add("proof", StepKind::kFerment, byHour(length));
  Step& step = problem_.steps.back();
  step.modes.back().name = "room";
  step.modes.back().longMinuteCost = 1;
  step.modes.back().links.push_back({bulkStep, {0}});
  Mode fridge;
  fridge.name = "fridge";
  fridge.length = LengthTable::range(480, 600, 960);
  fridge.uses.push_back({things_.fridge, 2});
  fridge.qualityCost = 10;
  step.modes.push_back(fridge);
  Mode warm;
  warm.name = "warm place";
  warm.length = LengthTable::range(toGrid(length * 0.6), toGrid(length * 0.7), toGrid(length * 0.8));
  warm.uses.push_back({things_.warmPlace, 1});
  warm.qualityCost = 5;
  step.modes.push_back(warm);
  for (int o = 0; o < static_cast<int>(problem_.ovens.size()); ++o) {
    const Oven& oven = problem_.ovens[static_cast<std::size_t>(o)];
    if (oven.setpoints.front() != kProofCelsius) continue;
    Mode inOven = warm;
    inOven.name = absl::StrCat("in ", oven.id);
    inOven.uses.clear();
    inOven.oven = OvenNeed{o, {{0, 0}}, {}, true};
    inOven.qualityCost = 8;
    step.modes.push_back(inOven);
  }
  return index;
}

// Hot with steam first, then 20 to 40 degrees cooler, in one oven.
int DishMaker::breadBake() {
  const Minute hot = 20;
  const Minute cooler = dice_.between(20, 30, 5);
  const int index = add("bake", StepKind::kBake, LengthTable::fixed(hot + cooler));
  Step& step = problem_.steps.back();
  step.modes.clear();
  for (int o = 0; o < static_cast<int>(problem_.ovens.size()); ++o) {
    const Oven& oven = problem_.ovens[static_cast<std::size_t>(o)];
    const int top = static_cast<int>(oven.setpoints.size()) - 1;
    for (int s = top; s > 1 && oven.setpoints[static_cast<std::size_t>(s)] >= 220; --s) {
      const int celsius = oven.setpoints[static_cast<std::size_t>(s)];
      Mode mode;
      mode.name = absl::StrCat(oven.id, ", ", celsius, " falling");
      mode.length = LengthTable::fixed(hot + cooler);
      mode.oven = OvenNeed{o, {{s, hot}, {s - 1, cooler}}, {}, true};
      mode.qualityCost = std::abs(240 - celsius) / 5;
      step.modes.push_back(mode);
    }
  }
  return index;
}

void DishMaker::bread(Minute serve) {
  begin("bread", serve, {480, 6});
  const int feed = handsOn("feed levain", 10);
  const int ripen = add("ripen levain", StepKind::kFerment, byHour(dice_.between(240, 360, 5)));
  problem_.steps.back().modes.back().longMinuteCost = 1;
  const int mix = handsOn("mix", 20);
  problem_.steps.back().modes.back().uses.push_back({things_.mixer, 1});
  const int rise = bulk();
  const int fold = handsOn("fold", 5);
  const int shape = handsOn("shape", 20);
  const int last = proof(rise);
  const int oven = breadBake();
  const int cool = add("cool", StepKind::kRest, LengthTable::range(60, 120, 480));
  problem_.steps.back().modes.back().shortMinuteCost = 1;
  then(feed, ripen, 0, 0);
  then(ripen, mix, 0, 30);
  then(mix, rise, 0, 0);
  gap(rise, Edge::kStart, fold, Edge::kStart, 30, 90);
  gap(fold, Edge::kEnd, rise, Edge::kEnd, 30, kNoLimit);
  then(rise, shape, 0, 15);
  then(shape, last, 0, 0);
  then(last, oven, 0, wait(30));
  then(oven, cool, 0, 0);
  finish(cool);
}

void DishMaker::roast(Minute serve) {
  begin("roast", serve, {20, 60});
  const int season = handsOn("season", 10);
  const int temper = add("temper", StepKind::kWait, LengthTable::range(30, 60, 90));
  const int sear = onBurner("sear", 15, 100);
  const int oven = bake("roast", dice_.between(60, 120, 5), 175, 150, dice_.between(1, 2));
  const int rest = add("rest", StepKind::kRest, LengthTable::range(20, 30, 45));
  problem_.steps.back().modes.back().shortMinuteCost = 1;
  const int gravy = onBurner("gravy", 20, 50);
  const int carve = handsOn("carve", 10);
  then(season, temper, 0, 0);
  then(temper, sear, 0, 10);
  then(sear, oven, 0, wait(30));
  then(oven, rest, 0, 0);
  then(oven, gravy, 0, kNoLimit);
  then(rest, carve, 0, 0);
  then(gravy, carve, 0, wait(40));
  finish(carve);
}

void DishMaker::gratin(Minute serve) {
  begin("gratin", serve, {30, 30});
  const int slice = handsOn("slice", 20);
  const int sauce = onBurner("sauce", 15, 100);
  const int assemble = handsOn("assemble", 10);
  const int oven = bake("bake", dice_.between(40, 55, 5), 190, 165, 1);
  for (Mode& mode : problem_.steps.back().modes) mode.oven->preheated = dice_.chance(70);
  const int stand = add("stand", StepKind::kRest, LengthTable::range(10, 15, 30));
  then(slice, assemble, 0, 180);
  then(sauce, assemble, 0, 60);
  then(assemble, oven, 0, 120);
  then(oven, stand, 0, 0);
  finish(stand);
}

void DishMaker::pie(Minute serve) {
  begin("pie", serve, {240, 6});
  const int crust = handsOn("crust", 15);
  const int chillCrust = chill("chill crust", 60, 120, 720);
  const int roll = handsOn("roll out", 15);
  const int cut = handsOn("cut filling", 20);
  const int filling = onBurner("cook filling", 20, 50);
  const int coolFilling = add("cool filling", StepKind::kWait, LengthTable::range(30, 60, 240));
  const int assemble = handsOn("assemble", 10);
  const int oven = bake("bake", dice_.between(40, 55, 5), 190, 175, 1);
  const int cool = add("cool", StepKind::kRest, LengthTable::range(30, 60, 240));
  then(crust, chillCrust, 0, 0);
  then(chillCrust, roll, 0, 10);
  then(cut, filling, 0, 240);
  then(filling, coolFilling, 0, 0);
  then(roll, assemble, 0, 30);
  then(coolFilling, assemble, 0, 60);
  then(assemble, oven, 0, wait(30));
  then(oven, cool, 0, 0);
  finish(cool);
}

void DishMaker::hobDish(Minute serve) {
  begin("hob dish", serve, {15, 60});
  const int wash = handsOn("wash", 10);
  const int chop = handsOn("chop", 15);
  const int cook = onBurner("cook", dice_.between(25, 45, 5), 25);
  const int season = handsOn("season", 5);
  const int hold = add("hold", StepKind::kHold, LengthTable::range(0, 0, 30));
  problem_.steps.back().modes.back().uses.push_back({things_.burners, 1});
  problem_.steps.back().modes.back().longMinuteCost = 1;
  then(wash, chop, 0, 600);
  then(chop, cook, 0, 300);
  then(cook, season, 0, 5);
  then(season, hold, 0, 0);
  finish(hold);
}

void DishMaker::coldDish(Minute serve) {
  begin("cold dish", serve, {60, 6});
  const int wash = handsOn("wash", 10);
  const int cut = handsOn("cut", 15);
  const int dress = handsOn("dress", 10);
  const int cold = chill("chill", 60, 120, 360);
  const int plate = handsOn("plate", 5);
  then(wash, cut, 0, 120);
  then(cut, dress, 0, 60);
  then(dress, cold, 0, 10);
  then(cold, plate, 0, 30);
  finish(plate);
}

void DishMaker::dessertAhead(Minute serve) {
  begin("dessert", serve, {30, 10});
  const int prepare = handsOn("prepare", 20);
  const int custard = onBurner("custard", 20, 100);
  const int pour = handsOn("pour", 5);
  const int cold = chill("chill", 480, 900, 1440);
  const int whip = handsOn("whip", 10);
  problem_.steps.back().modes.back().uses.push_back({things_.mixer, 1});
  const int plate = handsOn("plate", 10);
  then(prepare, custard, 0, 60);
  then(custard, pour, 0, 5);
  then(pour, cold, 0, 30);
  then(cold, plate, 0, 30);
  then(whip, plate, 0, 240);
  finish(plate);
}

}  // namespace suppertide::planning
