#include "server/kitchen/safety_life.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace suppertide::kitchen {
namespace {

constexpr double kClockNoise = 1e-6;
constexpr double kDay = 24 * 60;

// Walks the parts of one life and notes what passes a limit.
class LifeJudge {
 public:
  LifeJudge(const DishLife& life, RuleSet rules)
      : life_(life), rules_(rules), cooked_(isReadyToEat(life.food)) {}

  void run() {
    for (part_ = 0; part_ < static_cast<int>(life_.parts.size()); ++part_) judge(now());
    part_ = std::max(0, static_cast<int>(life_.parts.size()) - 1);
    judgeRested();
  }

  std::vector<LifeFinding> findings;
  RoomShare share;

 private:
  const LifePart& now() const { return life_.parts[static_cast<std::size_t>(part_)]; }
  double value(LimitKind kind) const { return limit(kind, rules_).value; }

  void add(const Finding& finding, Weight weight = Weight::kBreach) {
    if (finding.safe() || !told_.insert({finding.caution, weight}).second) return;
    findings.push_back({part_, weight, finding});
  }

  void addAtMost(double seen, double most, Caution caution, const Source& source,
                 Weight weight = Weight::kBreach) {
    add({seen > most + kClockNoise ? caution : Caution::kNone, most, seen, source}, weight);
  }

  bool isCold(const LifePart& part) const { return keepsCold(part.celsius, rules_); }

  void judge(const LifePart& part) {
    switch (part.what) {
      case LifeKind::kThaw:
        thaw(part);
        break;
      case LifeKind::kCook:
        if (cooked_)
          reheat(part);
        else
          cook(part);
        break;
      case LifeKind::kReheat:
        reheat(part);
        break;
      case LifeKind::kHoldHot:
        hold(part);
        break;
      default:
        stand(part);
    }
    cameFromCold_ = isCold(part);
  }

  void thaw(const LifePart& part) {
    const HourRange hours = thawHours(life_.kilograms, part.way);
    const bool onCounter =
        part.way == ThawWay::kCounter || (part.way == ThawWay::kFridge && !isCold(part) && part.minutes > 0);
    if (onCounter) {
      add(judgeThawedWait(rawClassOf(life_.food), ThawWay::kCounter, part.minutes));
    } else if (life_.kilograms > 0 && part.minutes < hours.least * 60 - kClockNoise) {
      add({Caution::kNotThawed, hours.least * 60, part.minutes, thawSource()});
    }
    thawed_ = part.way;
    sinceThawed_ = 0;
    fridge_ = 0;
  }

  void cook(const LifePart& part) {
    if (thawed_) add(judgeThawedWait(rawClassOf(life_.food), *thawed_, sinceThawed_));
    judgeOven(part);
    if (part.coreCelsius) {
      Finding done = judgeEnd(life_.food, *part.coreCelsius, 1e9, rules_, part.heldSeconds);
      if (!done.safe() && life_.food == FoodClass::kWholeMeat) {
        const Finding held = judgeRoastHeld(*part.coreCelsius, part.heldSeconds / 60, rules_);
        if (held.safe()) done = held;
      }
      add(done);
    }
    cooked_ = true;
    restNeeded_ = true;
    sinceCooked_ = 0;
    fridge_ = 0;
    room_ = 0;
    thawed_.reset();
    hotNow_ = true;
    core_ = part.coreCelsius.value_or(100);
  }

  void judgeOven(const LifePart& part) {
    if (!leastRoastingCelsius(life_.food, rules_)) return;
    for (const Limit* row :
         {&limit(LimitKind::kRoastingOven, rules_), &roastingLimit(life_.kilograms, life_.fan, rules_)}) {
      add({part.celsius < row->value - kClockNoise ? Caution::kOvenTooCool : Caution::kNone, row->value,
           part.celsius, row->source},
          row->weight);
    }
  }

  void reheat(const LifePart& part) {
    if (part.coreCelsius && life_.food != FoodClass::kPackedHam)
      add(judgeReheated(*part.coreCelsius, rules_));
    if (part.coreCelsius && life_.food == FoodClass::kPackedHam)
      add(judgeEnd(life_.food, *part.coreCelsius, 0, rules_));
    const Limit& time = limit(LimitKind::kReheatTime, rules_);
    addAtMost(part.minutes, time.value, Caution::kReheatedTooSlowly, time.source, time.weight);
    sinceCooked_ += part.minutes;
    hotNow_ = true;
    core_ = part.coreCelsius.value_or(value(LimitKind::kReheat));
  }

  void hold(const LifePart& part) {
    sinceCooked_ += part.minutes;
    rested_ += restNeeded_ ? part.minutes : 0;
    if (!keepsHot(part.celsius, life_.food, rules_)) {
      const Limit& row = hotHoldLimit(life_.food, rules_);
      add({Caution::kHeldTooCool, row.value, part.celsius, row.source}, Weight::kCaution);
      return out(part);
    }
    holdHot(part);
  }

  void holdHot(const LifePart& part) {
    hot_ += part.minutes;
    const Limit& row = limit(LimitKind::kWholeDinnerHot, rules_);
    addAtMost(hot_, row.value, Caution::kHeldTooLong, row.source, row.weight);
  }

  void stand(const LifePart& part) {
    if (thawed_ && !cooked_) sinceThawed_ += isWork(part) ? 0 : part.minutes;
    sinceCooked_ += cooked_ ? part.minutes : 0;
    rested_ += restNeeded_ ? part.minutes : 0;
    if (isCold(part)) return chill(part);
    if (cooked_ && keepsHot(part.celsius, life_.food, rules_)) return holdHot(part);
    if (part.what == LifeKind::kMarinate && part.minutes > 0) {
      const Limit& row = limit(LimitKind::kColdHold, rules_);
      add({Caution::kHeldTooWarm, row.value, part.celsius, row.source}, Weight::kCaution);
    }
    out(part);
  }

  // Working on what was thawed in water is no waiting.
  static bool isWork(const LifePart& part) { return part.what == LifeKind::kHandle; }

  void out(const LifePart& part) {
    const Limit& row = roomLimit(part.celsius, cameFromCold_, rules_);
    const double before = room_;
    room_ += part.minutes / row.value;
    (cooked_ ? share.cooked : share.raw) = std::max(cooked_ ? share.cooked : share.raw, room_);
    const bool veryWarm = row.kind == LimitKind::kVeryWarmRoomTime;
    // In minutes of this part's own limit, whatever the earlier spells were.
    addAtMost(before * row.value + part.minutes, row.value,
              veryWarm ? Caution::kTooLongVeryWarm : Caution::kTooLongWarm, row.source, row.weight);
    cool(part);
  }

  void chill(const LifePart& part) {
    fridge_ += part.minutes;
    const FridgeLife& row = fridgeLife(life_.food, cooked_, rules_);
    const bool frozen = part.celsius < 0;
    if (!frozen) addAtMost(fridge_, row.days * kDay, Caution::kKeptTooLong, row.source);
    cool(part);
  }

  // Follows the middle while it cools, where its pace is known.
  void cool(const LifePart& part) {
    if (!hotNow_ || !life_.coolingMinutes) return;
    constexpr double kPitch = 1;
    const double begin = cooling_.empty() ? 0 : cooling_.back().minute;
    if (cooling_.empty()) cooling_.push_back({0, core_});
    for (double t = kPitch; t < part.minutes + kPitch; t += kPitch) {
      const double passed = std::min(t, part.minutes);
      const double excess = (core_ - part.celsius) * std::exp(-passed / *life_.coolingMinutes);
      cooling_.push_back({begin + passed, part.celsius + excess});
    }
    core_ = cooling_.back().celsius;
    if (part.what == LifeKind::kCool || part.what == LifeKind::kKeep) add(judgeCooling(cooling_, rules_));
    if (core_ <= value(LimitKind::kColdHold) + kClockNoise) {
      cooling_.clear();
      hotNow_ = false;
    }
  }

  void judgeRested() {
    if (!restNeeded_ || life_.food == FoodClass::kColdDish) return;
    const EndTemperature& row = endTemperature(life_.food, rules_);
    add({rested_ < row.restMinutes - kClockNoise ? Caution::kNotRested : Caution::kNone, row.restMinutes,
         rested_, row.source});
  }

  const DishLife& life_;
  const RuleSet rules_;
  int part_ = 0;
  bool cooked_;
  bool cameFromCold_ = false;
  bool restNeeded_ = false;
  bool hotNow_ = false;
  double core_ = 0;
  double room_ = 0;  // part of the room-time limit used up
  double hot_ = 0;
  double fridge_ = 0;
  double rested_ = 0;
  double sinceThawed_ = 0;
  double sinceCooked_ = 0;
  std::optional<ThawWay> thawed_;
  std::vector<CorePoint> cooling_;
  std::set<std::pair<Caution, Weight>> told_;
};

// The consumer advice speaks of meat and poultry, the Food Code of whole-meat roasts.
bool isRoast(FoodClass food, RuleSet rules) {
  if (food == FoodClass::kWholeMeat || food == FoodClass::kRawHam) return true;
  return rules != RuleSet::kFoodService && (food == FoodClass::kPoultry || food == FoodClass::kStuffing);
}

MinuteLimit fromRow(PlanLimit what, const Limit& row) {
  return {what, row.value, row.weight, row.source};
}

void addCookedLimits(const StepQuestion& question, RuleSet rules, std::vector<MinuteLimit>& limits) {
  const FridgeLife& kept = fridgeLife(question.food, true, rules);
  limits.push_back({PlanLimit::kCookedMost, kept.days * kDay, Weight::kBreach, kept.source});
  if (question.food == FoodClass::kColdDish) return;
  const EndTemperature& end = endTemperature(question.food, rules);
  if (end.restMinutes > 0)
    limits.push_back({PlanLimit::kRestLeast, end.restMinutes, Weight::kBreach, end.source});
}

void addThawLimits(const StepQuestion& question, std::vector<MinuteLimit>& limits) {
  // The slow end: what is thawed early waits, what is frozen in the middle can't be cooked.
  limits.push_back({PlanLimit::kThawLeast, thawHours(question.kilograms, question.way).most * 60,
                    Weight::kBreach, thawSource()});
  limits.push_back({PlanLimit::kThawedMost, thawedDays(rawClassOf(question.food), question.way).most * kDay,
                    Weight::kBreach, thawSource()});
}

}  // namespace

std::vector<LifeFinding> judgeLife(const DishLife& life, RuleSet rules) {
  LifeJudge judge(life, rules);
  judge.run();
  return std::move(judge.findings);
}

RoomShare roomShare(const DishLife& life, RuleSet rules) {
  LifeJudge judge(life, rules);
  judge.run();
  return judge.share;
}

std::vector<MinuteLimit> minuteLimits(const StepQuestion& question, RuleSet rules) {
  std::vector<MinuteLimit> limits;
  const bool ready = question.cooked || isReadyToEat(question.food);
  if (question.what == LifeKind::kThaw) {
    addThawLimits(question, limits);
    return limits;
  }
  if (question.what == LifeKind::kCook && !ready) {
    addCookedLimits(question, rules, limits);
    return limits;
  }
  if (question.what == LifeKind::kCook || question.what == LifeKind::kReheat) {
    limits.push_back(fromRow(PlanLimit::kReheatTimeMost, limit(LimitKind::kReheatTime, rules)));
    return limits;
  }
  if (keepsCold(question.celsius, rules)) {
    const FridgeLife& row = fridgeLife(question.food, ready, rules);
    const PlanLimit what = ready ? PlanLimit::kCookedMost : PlanLimit::kRawFridgeMost;
    limits.push_back({what, row.days * kDay, Weight::kBreach, row.source});
    if (question.what != LifeKind::kCool) return limits;
    limits.push_back(fromRow(PlanLimit::kCoolFirstMost, limit(LimitKind::kCoolFirstTime, rules)));
    limits.push_back(fromRow(PlanLimit::kCoolTotalMost, limit(LimitKind::kCoolTotalTime, rules)));
    return limits;
  }
  if (ready && keepsHot(question.celsius, question.food, rules)) {
    limits.push_back(fromRow(PlanLimit::kHotMost, limit(LimitKind::kWholeDinnerHot, rules)));
    return limits;
  }
  limits.push_back(fromRow(PlanLimit::kRoomMost, roomLimit(question.celsius, question.fromCold, rules)));
  return limits;
}

bool keepsCold(double celsius, RuleSet rules) {
  return celsius <= limit(LimitKind::kColdHold, rules).value + kClockNoise;
}

bool keepsHot(double celsius, FoodClass food, RuleSet rules) {
  return celsius >= hotHoldLimit(food, rules).value - kClockNoise;
}

const Limit& hotHoldLimit(FoodClass food, RuleSet rules) {
  const bool roast = food == FoodClass::kWholeMeat || food == FoodClass::kRawHam;
  return limit(roast ? LimitKind::kRoastHotHold : LimitKind::kHotHold, rules);
}

const Limit& roomLimit(double celsius, bool fromCold, RuleSet rules) {
  if (celsius > limit(LimitKind::kVeryWarmRoom, rules).value + kClockNoise)
    return limit(LimitKind::kVeryWarmRoomTime, rules);
  if (fromCold && celsius <= limit(LimitKind::kCoolRoom, rules).value + kClockNoise)
    return limit(LimitKind::kCoolRoomTime, rules);
  return limit(LimitKind::kRoomTime, rules);
}

const Limit& roastingLimit(double kilograms, bool fan, RuleSet rules) {
  if (kilograms <= 0 || kilograms >= limit(LimitKind::kSmallRoast, rules).value - kClockNoise)
    return limit(LimitKind::kRoastingOven, rules);
  return limit(fan ? LimitKind::kSmallRoastFan : LimitKind::kSmallRoastOven, rules);
}

std::optional<double> leastRoastingCelsius(FoodClass food, RuleSet rules) {
  if (!isRoast(food, rules)) return std::nullopt;
  return limit(LimitKind::kRoastingOven, rules).value;
}

RawClass rawClassOf(FoodClass food) {
  switch (food) {
    case FoodClass::kPoultry:
    case FoodClass::kStuffing:
      return RawClass::kPoultry;
    case FoodClass::kFish:
    case FoodClass::kEggDish:
    case FoodClass::kColdDish:
      return RawClass::kSeafood;
    case FoodClass::kWholeMeat:
    case FoodClass::kRawHam:
    case FoodClass::kPackedHam:
    case FoodClass::kOtherCookedHam:
    case FoodClass::kHotHeldPlants:
    case FoodClass::kLeftovers:
      return RawClass::kRedMeat;
    case FoodClass::kGroundMeat:
    case FoodClass::kGroundPoultry:
      return RawClass::kGroundMeat;
  }
  return RawClass::kPoultry;
}

}  // namespace suppertide::kitchen
