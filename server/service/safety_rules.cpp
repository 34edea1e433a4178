#include "server/service/safety_rules.h"

#include <algorithm>
#include <cmath>

#include "server/compose/safety_view.h"
#include "server/kitchen/safety_table.h"

namespace suppertide::service {
namespace {

using kitchen::FoodClass;
using kitchen::LimitKind;
using kitchen::RuleSet;

constexpr RuleSet kSets[] = {RuleSet::kConsumer, RuleSet::kFoodService};
constexpr double kDayMinutes = 24 * 60;

v1::SafetyRules rulesOf(RuleSet set) {
  return set == RuleSet::kFoodService ? v1::SAFETY_RULES_FOOD_SERVICE : v1::SAFETY_RULES_CONSUMER;
}

class Row {
 public:
  Row(v1::SafetyLimitKind kind, v1::SafetyClass food,
      v1::SafetyCircumstance circumstance = v1::SAFETY_CIRCUMSTANCE_UNSPECIFIED) {
    rule_.set_kind(kind);
    rule_.set_safety_class(food);
    rule_.set_circumstance(circumstance);
  }

  // 0: not said.
  void add(v1::SafetyRules rules, double celsius, double minutes, const kitchen::Source& source) {
    v1::SafetyLimit& limit = *rule_.add_limits();
    limit.set_kind(rule_.kind());
    limit.set_rules(rules);
    limit.set_safety_class(rule_.safety_class());
    limit.set_celsius(celsius);
    if (minutes > 0) limit.mutable_duration()->set_seconds(std::lround(minutes * 60));
    limit.set_source(std::string(source.title));
  }

  v1::SafetyRule done() {
    const v1::SafetyLimit& first = rule_.limits(0);
    rule_.set_differs(
        std::any_of(rule_.limits().begin(), rule_.limits().end(), [&](const v1::SafetyLimit& limit) {
          return std::abs(limit.celsius() - first.celsius()) > 1e-6 ||
                 limit.duration().seconds() != first.duration().seconds();
        }));
    return std::move(rule_);
  }

 private:
  v1::SafetyRule rule_;
};

void addUk(LimitKind kind, Row& row) {
  for (const kitchen::UkLimit& uk : kitchen::ukLimits())
    if (uk.kind == kind) row.add(v1::SAFETY_RULES_UK, uk.value, uk.minutes, uk.source);
}

// One temperature, with what the United Kingdom says of it.
v1::SafetyRule degrees(v1::SafetyLimitKind kind, LimitKind what,
                       v1::SafetyClass food = v1::SAFETY_CLASS_UNSPECIFIED) {
  Row row(kind, food);
  for (const RuleSet set : kSets) row.add(rulesOf(set), limit(what, set).value, 0, limit(what, set).source);
  if (food == v1::SAFETY_CLASS_UNSPECIFIED) addUk(what, row);
  return row.done();
}

// A time, and the temperature that goes with it, if any.
v1::SafetyRule minutes(v1::SafetyLimitKind kind, LimitKind time, const LimitKind* celsius,
                       v1::SafetyCircumstance circumstance = v1::SAFETY_CIRCUMSTANCE_UNSPECIFIED) {
  Row row(kind, v1::SAFETY_CLASS_UNSPECIFIED, circumstance);
  for (const RuleSet set : kSets)
    row.add(rulesOf(set), celsius == nullptr ? 0 : limit(*celsius, set).value, limit(time, set).value,
            limit(time, set).source);
  return row.done();
}

bool isCookedByTheMinute(FoodClass food) {
  return food == FoodClass::kGroundMeat || food == FoodClass::kPoultry || food == FoodClass::kGroundPoultry ||
         food == FoodClass::kStuffing;
}

void addEndTemperatures(std::vector<v1::SafetyRule>& rules) {
  for (const kitchen::EndTemperature& home : kitchen::endTemperatures()) {
    if (home.rules != RuleSet::kConsumer) continue;
    const v1::SafetyClass food = compose::safetyClassOf(home.food);
    Row row(v1::SAFETY_LIMIT_KIND_END_TEMPERATURE, food);
    Row rest(v1::SAFETY_LIMIT_KIND_REST, food);
    for (const RuleSet set : kSets) {
      const kitchen::EndTemperature& end = kitchen::endTemperature(home.food, set);
      row.add(rulesOf(set), end.celsius, end.heldSeconds / 60, end.source);
      rest.add(rulesOf(set), 0, end.restMinutes, end.source);
    }
    const kitchen::UkLimit& uk = kitchen::ukEndTemperature();
    if (isCookedByTheMinute(home.food)) row.add(v1::SAFETY_RULES_UK, uk.value, uk.minutes, uk.source);
    rules.push_back(row.done());
    if (home.restMinutes > 0) rules.push_back(rest.done());
  }
}

void addFridgeLives(bool cooked, std::vector<v1::SafetyRule>& rules) {
  for (const kitchen::FridgeLife& home : kitchen::fridgeLives()) {
    if (home.rules != RuleSet::kConsumer || home.cooked != cooked) continue;
    Row row(cooked ? v1::SAFETY_LIMIT_KIND_COOKED_FRIDGE : v1::SAFETY_LIMIT_KIND_RAW_FRIDGE,
            compose::safetyClassOf(home.food));
    for (const RuleSet set : kSets) {
      const kitchen::FridgeLife& life = kitchen::fridgeLife(home.food, cooked, set);
      row.add(rulesOf(set), 0, life.days * kDayMinutes, life.source);
    }
    rules.push_back(row.done());
  }
}

}  // namespace

std::vector<v1::SafetyRule> safetyRules() {
  std::vector<v1::SafetyRule> rules;
  addEndTemperatures(rules);
  rules.push_back(degrees(v1::SAFETY_LIMIT_KIND_COLD_HOLD, LimitKind::kColdHold));
  rules.push_back(degrees(v1::SAFETY_LIMIT_KIND_HOT_HOLD, LimitKind::kHotHold));
  rules.push_back(
      degrees(v1::SAFETY_LIMIT_KIND_HOT_HOLD, LimitKind::kRoastHotHold, v1::SAFETY_CLASS_WHOLE_MEAT));
  constexpr LimitKind kVeryWarm = LimitKind::kVeryWarmRoom;
  constexpr LimitKind kCool = LimitKind::kCoolRoom;
  constexpr LimitKind kFirst = LimitKind::kCoolFirstTo;
  constexpr LimitKind kCold = LimitKind::kColdHold;
  rules.push_back(minutes(v1::SAFETY_LIMIT_KIND_ROOM_TIME, LimitKind::kRoomTime, nullptr));
  rules.push_back(minutes(v1::SAFETY_LIMIT_KIND_ROOM_TIME, LimitKind::kVeryWarmRoomTime, &kVeryWarm,
                          v1::SAFETY_CIRCUMSTANCE_VERY_WARM_ROOM));
  rules.push_back(minutes(v1::SAFETY_LIMIT_KIND_ROOM_TIME, LimitKind::kCoolRoomTime, &kCool,
                          v1::SAFETY_CIRCUMSTANCE_COLD_FOOD_IN_COOL_ROOM));
  rules.push_back(minutes(v1::SAFETY_LIMIT_KIND_FIRST_COOLING, LimitKind::kCoolFirstTime, &kFirst));
  rules.push_back(minutes(v1::SAFETY_LIMIT_KIND_COOLING, LimitKind::kCoolTotalTime, &kCold));
  rules.push_back(degrees(v1::SAFETY_LIMIT_KIND_REHEAT, LimitKind::kReheat));
  rules.push_back(degrees(v1::SAFETY_LIMIT_KIND_ROASTING_OVEN, LimitKind::kRoastingOven));
  Row small(v1::SAFETY_LIMIT_KIND_ROASTING_OVEN, v1::SAFETY_CLASS_UNSPECIFIED,
            v1::SAFETY_CIRCUMSTANCE_SMALL_ROAST);
  for (const RuleSet set : kSets)
    small.add(rulesOf(set), limit(LimitKind::kSmallRoastOven, set).value, 0,
              limit(LimitKind::kSmallRoastOven, set).source);
  rules.push_back(small.done());
  addFridgeLives(false, rules);
  addFridgeLives(true, rules);
  return rules;
}

}  // namespace suppertide::service
