#include "server/planning/solver/clashes.h"

#include <algorithm>
#include <functional>
#include <set>

#include "server/base/index.h"
#include "server/planning/solver/occupancy.h"
#include "server/planning/solver/side_rules.h"

namespace suppertide::planning {
namespace {

// How many of the possible sets at one minute are named.
constexpr int kSetsAMinute = 3;

struct Stay {
  int step;
  int amount;
  Interval<Minute> when;
};

class Finder {
 public:
  Finder(const Problem& problem, const Schedule& plan, std::mt19937& random)
      : problem_(problem), plan_(plan), random_(random) {}

  std::vector<Clash> run() {
    collect();
    for (int c = 0; c < sizeOf(byCook_); ++c)
      findOver(
          Clash::Kind::kAttention, c, nth(byCook_, c), [](Minute) { return 0; }, 100);
    for (int r = 0; r < sizeOf(byResource_); ++r) {
      const Resource& resource = nth(problem_.resources, r);
      if (resource.usedUp) {
        findUsedUp(r);
        continue;
      }
      findOver(
          Clash::Kind::kAmount, r, nth(byResource_, r), [&](Minute t) { return takenAt(resource, t); },
          resource.capacity);
    }
    for (int o = 0; o < sizeOf(byOven_); ++o) {
      findSetpoints(o);
      findRacks(o);
    }
    findSideBreaks();
    return {found_.begin(), found_.end()};
  }

 private:
  static int takenAt(const Resource& resource, Minute minute) {
    int amount = 0;
    for (const Resource::Taken& taken : resource.taken)
      if (taken.when.contains(minute)) amount += taken.amount;
    return amount;
  }

  const Mode& modeOf(int step) const {
    return nth(nth(problem_.steps, step).modes, nth(plan_.steps, step).mode);
  }

  void collect() {
    byCook_.resize(problem_.cooks.size());
    byResource_.resize(problem_.resources.size());
    byOven_.resize(problem_.ovens.size());
    for (int i = 0; i < sizeOf(problem_.steps); ++i) {
      if (plan_.unserved[static_cast<std::size_t>(nth(problem_.steps, i).dish)]) continue;
      const Placement& place = nth(plan_.steps, i);
      const Interval<Minute> when{place.start, place.end};
      if (when.empty()) continue;
      const Mode& mode = modeOf(i);
      if (mode.attention > 0) nth(byCook_, place.cook).push_back({i, mode.attention, when});
      for (const Use& use : mode.uses) {
        auto& stays = nth(byResource_, use.resource);
        if (!stays.empty() && stays.back().step == i)
          stays.back().amount += use.amount;
        else if (use.amount > 0)
          stays.push_back({i, use.amount, when});
      }
      if (mode.oven) nth(byOven_, mode.oven->oven).push_back({i, 1, when});
    }
  }

  void findSideBreaks() {
    for (int k = 0; k < sizeOf(problem_.clocks); ++k) {
      const Clock& clock = nth(problem_.clocks, k);
      const int dish = nth(problem_.steps, clock.spans.front().from).dish;
      if (!plan_.unserved[static_cast<std::size_t>(dish)] &&
          clockMinutes(problem_, clock, plan_) > clock.most)
        keep({Clash::Kind::kClock, k, {}, false, 0});
    }
    for (int k = 0; k < sizeOf(problem_.separations); ++k)
      if (breaks(problem_, nth(problem_.separations, k), plan_))
        keep({Clash::Kind::kSeparation, k, {}, false, 0});
  }

  // The steps that use most first, until more is gone than there is.
  void findUsedUp(int resource) {
    const std::int64_t capacity = nth(problem_.resources, resource).capacity;
    if (usedOf(problem_, resource, plan_) <= capacity) return;
    std::vector<Stay> users = nth(byResource_, resource);
    std::shuffle(users.begin(), users.end(), random_);
    std::stable_sort(users.begin(), users.end(),
                     [](const Stay& a, const Stay& b) { return a.amount > b.amount; });
    Clash clash{Clash::Kind::kUsedUp, resource, {}, false, 0};
    std::int64_t sum = 0;
    for (const Resource::Taken& taken : nth(problem_.resources, resource).taken) sum += taken.amount;
    for (std::size_t k = 0; k < users.size() && sum <= capacity; ++k) {
      sum += users[k].amount;
      clash.steps.push_back(users[k].step);
    }
    keep(std::move(clash));
  }

  // Minutes at which the set of overlapping stays can be largest.
  static std::set<Minute> startsOf(const std::vector<Stay>& stays) {
    std::set<Minute> minutes;
    for (const Stay& stay : stays) minutes.insert(stay.when.start);
    return minutes;
  }

  void findOver(Clash::Kind kind, int thing, const std::vector<Stay>& stays,
                const std::function<int(Minute)>& taken, int capacity) {
    std::set<Minute> minutes = startsOf(stays);
    if (kind == Clash::Kind::kAmount)
      for (const Resource::Taken& other : nth(problem_.resources, thing).taken)
        minutes.insert(other.when.start);
    for (const Minute t : minutes) {
      std::vector<Stay> here;
      const int outside = taken(t);
      int sum = outside;
      for (const Stay& stay : stays)
        if (stay.when.contains(t)) here.push_back(stay), sum += stay.amount;
      if (sum <= capacity || here.empty()) continue;
      for (int k = 0; k < kSetsAMinute; ++k) {
        if (k > 0) std::shuffle(here.begin(), here.end(), random_);
        if (k == 0)
          std::stable_sort(here.begin(), here.end(),
                           [](const Stay& a, const Stay& b) { return a.amount > b.amount; });
        nameSet(kind, thing, here, outside, capacity, t);
      }
    }
  }

  // Shrinks `here`, in its order, to a smallest set over the capacity and keeps it.
  void nameSet(Clash::Kind kind, int thing, const std::vector<Stay>& here, int outside, int capacity,
               Minute minute) {
    std::vector<Stay> set;
    int sum = 0;
    int own = 0;
    for (const Stay& stay : here) own += stay.amount;
    const bool withTaken = own <= capacity;
    if (withTaken) sum = outside;
    for (const Stay& stay : here) {
      if (sum > capacity) break;
      set.push_back(stay);
      sum += stay.amount;
    }
    std::erase_if(set, [&](const Stay& stay) {
      if (sum - stay.amount <= capacity) return false;
      sum -= stay.amount;
      return true;
    });
    Clash clash{kind, thing, {}, withTaken, withTaken ? minute : 0};
    for (const Stay& stay : set) clash.steps.push_back(stay.step);
    keep(std::move(clash));
  }

  void keep(Clash clash) {
    std::sort(clash.steps.begin(), clash.steps.end());
    found_.insert(std::move(clash));
  }

  bool agree(const Oven& oven, int a, int b) const {
    const OvenNeed& needA = *modeOf(a).oven;
    const OvenNeed& needB = *modeOf(b).oven;
    const Placement& placeA = nth(plan_.steps, a);
    const Placement& placeB = nth(plan_.steps, b);
    for (const PhaseSpan& x : phaseSpans(needA, placeA.start, placeA.end))
      for (const PhaseSpan& y : phaseSpans(needB, placeB.start, placeB.end)) {
        if (x.setpoint == y.setpoint) continue;
        const Minute toB = y.entering ? nth(nth(oven.change, x.setpoint), y.setpoint) : 0;
        const Minute toA = x.entering ? nth(nth(oven.change, y.setpoint), x.setpoint) : 0;
        if (x.when.limit + toB > y.when.start && y.when.limit + toA > x.when.start) return false;
      }
    return true;
  }

  void findSetpoints(int oven) {
    const auto& stays = nth(byOven_, oven);
    for (std::size_t a = 0; a < stays.size(); ++a)
      for (std::size_t b = a + 1; b < stays.size(); ++b)
        if (!agree(nth(problem_.ovens, oven), stays[a].step, stays[b].step))
          keep({Clash::Kind::kSetpoint, oven, {stays[a].step, stays[b].step}, false, 0});
  }

  bool fit(int oven, const std::vector<int>& steps) const {
    std::vector<Load> loads;
    for (const int step : steps) loads.push_back(modeOf(step).oven->load);
    return loads.size() < 2 || nth(problem_.ovens, oven).racks->fits(loads);
  }

  void findRacks(int oven) {
    const auto& stays = nth(byOven_, oven);
    for (const Minute t : startsOf(stays)) {
      std::vector<int> here;
      for (const Stay& stay : stays)
        if (stay.when.contains(t)) here.push_back(stay.step);
      if (fit(oven, here)) continue;
      for (int k = 0; k < kSetsAMinute; ++k) {
        std::shuffle(here.begin(), here.end(), random_);
        std::vector<int> set = here;
        for (std::size_t drop = 0; drop < set.size();) {
          std::vector<int> rest = set;
          rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(drop));
          if (fit(oven, rest))
            ++drop;
          else
            set = std::move(rest);
        }
        keep({Clash::Kind::kRacks, oven, std::move(set), false, 0});
      }
    }
  }

  const Problem& problem_;
  const Schedule& plan_;
  std::mt19937& random_;
  std::vector<std::vector<Stay>> byCook_;
  std::vector<std::vector<Stay>> byResource_;
  std::vector<std::vector<Stay>> byOven_;
  std::set<Clash> found_;
};

}  // namespace

std::vector<Clash> findClashes(const Problem& problem, const Schedule& plan, std::mt19937& random) {
  return Finder(problem, plan, random).run();
}

}  // namespace suppertide::planning
