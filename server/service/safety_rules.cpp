#include "server/service/safety_rules.h"

#include <algorithm>
#include <cmath>

#include "server/compose/safety_view.h"
#include "server/kitchen/safety_table.h"

namespace suppertide::service {
namespace {

using compose::rulesOf;
using kitchen::FoodClass;
using kitchen::LimitKind;
using kitchen::RuleSet;

constexpr RuleSet kSets[] = {RuleSet::kConsumer, RuleSet::kFoodService, RuleSet::kUnitedKingdom};
constexpr double kDayMinutes = 24 * 60;

class Row {
 public:
  Row(v1::SafetyLimitKind kind, v1::SafetyClass food,
      v1::SafetyCircumstance circumstance = v1::SAFETY_CIRCUMSTANCE_UNSPECIFIED) {
    rule_.set_kind(kind);
    rule_.set_safety_class(food);
    rule_.set_circumstance(circumstance);
  }

  // 0: not said. Limits that a set borrows from another one are told there only.
  void add(RuleSet set, RuleSet own, double celsius, double minutes, const kitchen::Source& source) {
    if (set != own) return;
    v1::SafetyLimit& limit = *rule_.add_limits();
    limit.set_kind(rule_.kind());
    limit.set_rules(rulesOf(set));
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

// One temperature.
v1::SafetyRule degrees(v1::SafetyLimitKind kind, LimitKind what,
                       v1::SafetyClass food = v1::SAFETY_CLASS_UNSPECIFIED) {
  Row row(kind, food);
  for (const RuleSet set : kSets) {
    const kitchen::Limit& one = limit(what, set);
    row.add(set, one.rules, one.value, 0, one.source);
  }
  return row.done();
}

// A time, and the temperature that goes with it, if any.
v1::SafetyRule minutes(v1::SafetyLimitKind kind, LimitKind time, const LimitKind* celsius,
                       v1::SafetyCircumstance circumstance = v1::SAFETY_CIRCUMSTANCE_UNSPECIFIED) {
  Row row(kind, v1::SAFETY_CLASS_UNSPECIFIED, circumstance);
  for (const RuleSet set : kSets) {
    const kitchen::Limit& one = limit(time, set);
    row.add(set, one.rules, celsius == nullptr ? 0 : limit(*celsius, set).value, one.value, one.source);
  }
  return row.done();
}

void addEndTemperatures(std::vector<v1::SafetyRule>& rules) {
  for (const kitchen::EndTemperature& home : kitchen::endTemperatures()) {
    if (home.rules != RuleSet::kConsumer) continue;
    const v1::SafetyClass food = compose::safetyClassOf(home.food);
    Row row(v1::SAFETY_LIMIT_KIND_END_TEMPERATURE, food);
    Row rest(v1::SAFETY_LIMIT_KIND_REST, food);
    for (const RuleSet set : kSets) {
      const kitchen::EndTemperature& end = kitchen::endTemperature(home.food, set);
      row.add(set, end.rules, end.celsius, end.heldSeconds / 60, end.source);
      rest.add(set, end.rules, 0, end.restMinutes, end.source);
    }
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
      row.add(set, life.rules, 0, life.days * kDayMinutes, life.source);
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
  for (const RuleSet set : kSets) {
    const kitchen::Limit& one = limit(LimitKind::kSmallRoastOven, set);
    small.add(set, one.rules, one.value, 0, one.source);
  }
  rules.push_back(small.done());
  addFridgeLives(false, rules);
  addFridgeLives(true, rules);
  return rules;
}

}  // namespace suppertide::service
