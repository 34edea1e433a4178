#include "tests/bench/plan_bench/gecode_model.h"

#include <algorithm>
#include <functional>
#include <numeric>

#include "tests/bench/plan_bench/oven_pairs.h"

namespace suppertide::planning {
namespace {

using Gecode::BoolVar;
using Gecode::BoolVarArgs;
using Gecode::Home;
using Gecode::IntArgs;
using Gecode::IntSet;
using Gecode::IntVar;
using Gecode::IntVarArgs;

// The value that goes with a mode or a row.
IntVar chosen(Home home, const IntArgs& values, IntVar index) {
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  IntVar result(home, *least, *most);
  Gecode::element(home, values, index, result);
  return result;
}

template <typename Value>
IntArgs byMode(const Step& step, Value value) {
  IntArgs values;
  for (const Mode& mode : step.modes) values << value(mode);
  return values;
}

// Whether the mode is one of those; `some` must not be empty.
BoolVar isOneOf(Home home, IntVar mode, const IntArgs& some) {
  BoolVar is(home, 0, 1);
  Gecode::dom(home, mode, IntSet(some), is);
  return is;
}

// Tasks on one resource, each only if its condition holds.
struct Tasks {
  IntVarArgs starts, lengths, ends;
  IntArgs amounts;
  BoolVarArgs conditions;

  void post(Home home, int capacity) const {
    if (amounts.size() > 0) Gecode::cumulative(home, capacity, starts, lengths, ends, amounts, conditions);
  }
};

// The steps that use some in a mode, a task for each amount.
template <typename Amount>
void addTasks(Home home, const Problem& problem, const Gecode::IntVarArray& modes,
              const Gecode::IntVarArray& starts, const Gecode::IntVarArray& lengths,
              const Gecode::IntVarArray& ends, Amount amountOf, Tasks& tasks) {
  for (int i = 0; i < starts.size(); ++i) {
    const IntArgs amounts = byMode(problem.steps[static_cast<std::size_t>(i)], amountOf);
    for (int amount = 1; amount <= *std::max_element(amounts.begin(), amounts.end()); ++amount) {
      IntArgs some;
      for (int m = 0; m < amounts.size(); ++m)
        if (amounts[m] == amount) some << m;
      if (some.size() == 0) continue;
      tasks.starts << starts[i];
      tasks.lengths << lengths[i];
      tasks.ends << ends[i];
      tasks.amounts << amount;
      tasks.conditions << isOneOf(home, modes[i], some);
    }
  }
}

}  // namespace

GecodeDinner::GecodeDinner(const Problem& problem, Minute grid, unsigned seed)
    : problem_(&problem), grid_(grid), dice_(seed) {
  addSteps();
  addGaps();
  addCooks();
  addThings();
  addOvens();
  addPairs();
  addCosts();
}

GecodeDinner::GecodeDinner(GecodeDinner& other)
    : Space(other), problem_(other.problem_), grid_(other.grid_), dice_(other.dice_) {
  starts_.update(*this, other.starts_);
  lengths_.update(*this, other.lengths_);
  ends_.update(*this, other.ends_);
  modes_.update(*this, other.modes_);
  cooks_.update(*this, other.cooks_);
  bests_.update(*this, other.bests_);
  lateness_.update(*this, other.lateness_);
  flaws_.update(*this, other.flaws_);
  totals_.update(*this, other.totals_);
}

void GecodeDinner::addSteps() {
  const int horizon = problem_->limit / grid_;
  IntVarArgs starts, lengths, ends, modes, cooks, bests;
  for (const Step& step : problem_->steps) {
    const int latest = std::min(horizon, step.latest / grid_);
    starts << IntVar(*this, (step.earliest + grid_ - 1) / grid_, latest);
    ends << IntVar(*this, 0, latest);
    modes << IntVar(*this, 0, static_cast<int>(step.modes.size()) - 1);
    IntArgs first, byStart, least, best, most;
    Minute pitch = grid_;
    for (const Mode& mode : step.modes) {
      first << least.size();
      byStart << (mode.length.rows.size() > 1 ? 1 : 0);
      if (mode.length.rows.size() > 1) pitch = mode.length.pitch;
      for (const Length& row : mode.length.rows) {
        least << row.shortest / grid_;
        best << row.best / grid_;
        most << row.longest / grid_;
      }
    }
    IntVar row = chosen(*this, first, modes[modes.size() - 1]);
    if (pitch != grid_) {
      const IntVar flag = chosen(*this, byStart, modes[modes.size() - 1]);
      row = Gecode::expr(*this, row + flag * (starts[starts.size() - 1] / (pitch / grid_)));
    }
    Gecode::rel(*this, row <= least.size() - 1);
    bests << chosen(*this, best, row);
    IntVar length = bests[bests.size() - 1];
    if (!std::equal(least.begin(), least.end(), most.begin())) {
      length = IntVar(*this, *std::min_element(least.begin(), least.end()),
                      *std::max_element(most.begin(), most.end()));
      Gecode::rel(*this, length >= chosen(*this, least, row));
      Gecode::rel(*this, length <= chosen(*this, most, row));
    }
    lengths << length;
    Gecode::rel(*this, starts[starts.size() - 1] + length == ends[ends.size() - 1]);
    IntArgs able;
    if (step.modes.front().attention > 0)
      for (const CookOption& option : step.modes.front().cooks) able << option.cook;
    cooks << (able.size() > 0 ? IntVar(*this, IntSet(able)) : IntVar(*this, -1, -1));
  }
  starts_ = {*this, starts};
  lengths_ = {*this, lengths};
  ends_ = {*this, ends};
  modes_ = {*this, modes};
  cooks_ = {*this, cooks};
  bests_ = {*this, bests};
}

void GecodeDinner::addGaps() {
  for (const Gap& gap : problem_->gaps) {
    const IntVar from = gap.fromEdge == Edge::kEnd ? ends_[gap.from] : starts_[gap.from];
    const IntVar to = gap.toEdge == Edge::kEnd ? ends_[gap.to] : starts_[gap.to];
    Gecode::rel(*this, to - from >= gap.least / grid_);
    if (gap.most < problem_->limit) Gecode::rel(*this, to - from <= gap.most / grid_);
  }
  for (int i = 0; i < starts_.size(); ++i) {
    const Step& step = problem_->steps[static_cast<std::size_t>(i)];
    for (std::size_t m = 0; m < step.modes.size(); ++m)
      for (const ModeLink& link : step.modes[m].links) {
        const BoolVar asks = isOneOf(*this, modes_[i], IntArgs({static_cast<int>(m)}));
        Gecode::dom(*this, modes_[link.step], IntSet(IntArgs(link.modes)), Gecode::imp(asks));
      }
  }
}

void GecodeDinner::addCooks() {
  for (int k = 0; k < static_cast<int>(problem_->cooks.size()); ++k) {
    Tasks tasks;
    for (int i = 0; i < starts_.size(); ++i) {
      const Mode& mode = problem_->steps[static_cast<std::size_t>(i)].modes.front();
      if (mode.attention == 0 || !cooks_[i].in(k)) continue;
      IntArgs there;
      for (const auto& span : problem_->cooks[static_cast<std::size_t>(k)].available)
        for (Minute s = span.start; s + mode.length.rows.front().best <= span.limit; s += grid_)
          there << s / grid_;
      const BoolVar does = Gecode::expr(*this, cooks_[i] == k);
      Gecode::dom(*this, starts_[i], IntSet(there), Gecode::imp(does));
      tasks.starts << starts_[i];
      tasks.lengths << lengths_[i];
      tasks.ends << ends_[i];
      tasks.amounts << mode.attention;
      tasks.conditions << does;
    }
    tasks.post(*this, 100);
  }
}

void GecodeDinner::addThings() {
  for (std::size_t r = 0; r < problem_->resources.size(); ++r) {
    const Resource& resource = problem_->resources[r];
    Tasks tasks;
    const auto amountOf = [&](const Mode& mode) {
      int amount = 0;
      for (const Use& use : mode.uses)
        if (use.resource == static_cast<int>(r)) amount += use.amount;
      return amount;
    };
    addTasks(*this, *problem_, modes_, starts_, lengths_, ends_, amountOf, tasks);
    for (const Resource::Taken& taken : resource.taken) {
      const int start = taken.when.start / grid_;
      const int limit = taken.when.limit / grid_;
      tasks.starts << IntVar(*this, start, start);
      tasks.lengths << IntVar(*this, limit - start, limit - start);
      tasks.ends << IntVar(*this, limit, limit);
      tasks.amounts << taken.amount;
      tasks.conditions << BoolVar(*this, 1, 1);
    }
    tasks.post(*this, resource.capacity);
  }
}

void GecodeDinner::addOvens() {
  for (int o = 0; o < static_cast<int>(problem_->ovens.size()); ++o) {
    Tasks tasks;
    const auto amountOf = [&](const Mode& mode) {
      return mode.oven && mode.oven->oven == o ? mode.oven->load.racks : 0;
    };
    addTasks(*this, *problem_, modes_, starts_, lengths_, ends_, amountOf, tasks);
    tasks.post(*this, rackCount(problem_->ovens[static_cast<std::size_t>(o)]));
  }
}

void GecodeDinner::addPairs() {
  const auto slots = [&](Minute minutes) {
    return std::clamp(minutes, -2 * problem_->limit, 2 * problem_->limit) / grid_;
  };
  // `to - from` is at least (or most) the bound that goes with the two modes.
  const auto imply = [&](BoolVar when, IntVar from, IntVar to, Gecode::IntRelType relation,
                         const IntArgs& bounds, IntVar index) {
    Gecode::linear(*this, IntArgs({1, -1, -1}), IntVarArgs() << to << from << chosen(*this, bounds, index),
                   relation, 0, Gecode::imp(when));
  };
  for (int a = 0; a < starts_.size(); ++a)
    for (int b = a + 1; b < starts_.size(); ++b) {
      const Step& one = problem_->steps[static_cast<std::size_t>(a)];
      const Step& other = problem_->steps[static_cast<std::size_t>(b)];
      if (!mayMeet(one, other)) continue;
      IntArgs aFirst, bFirst, least, most;
      for (const Mode& x : one.modes)
        for (const Mode& y : other.modes) {
          const auto pair = ovenPair(*problem_, x, y, grid_);
          if (!pair) return fail();
          aFirst << slots(pair->aFirst);
          bFirst << slots(pair->bFirst);
          least << slots(pair->togetherLeast);
          most << slots(pair->togetherMost);
        }
      const IntVar index = Gecode::expr(*this, modes_[a] * static_cast<int>(other.modes.size()) + modes_[b]);
      const BoolVarArgs ways(*this, 3, 0, 1);
      Gecode::rel(*this, Gecode::BOT_OR, ways, 1);
      imply(ways[0], ends_[a], starts_[b], Gecode::IRT_GQ, aFirst, index);
      imply(ways[1], ends_[b], starts_[a], Gecode::IRT_GQ, bFirst, index);
      imply(ways[2], starts_[a], starts_[b], Gecode::IRT_GQ, least, index);
      imply(ways[2], starts_[a], starts_[b], Gecode::IRT_LQ, most, index);
    }
}

void GecodeDinner::addCosts() {
  std::vector<IntVarArgs> parts(problem_->dishes.size());
  for (int i = 0; i < starts_.size(); ++i) {
    const Step& step = problem_->steps[static_cast<std::size_t>(i)];
    IntVarArgs& mine = parts[static_cast<std::size_t>(step.dish)];
    const IntArgs shortCost = byMode(step, [&](const Mode& mode) { return mode.shortMinuteCost * grid_; });
    const IntArgs longCost = byMode(step, [&](const Mode& mode) { return mode.longMinuteCost * grid_; });
    mine << chosen(*this, byMode(step, [](const Mode& mode) { return mode.qualityCost; }), modes_[i]);
    if (*std::max_element(shortCost.begin(), shortCost.end()) > 0)
      mine << Gecode::expr(*this,
                           chosen(*this, shortCost, modes_[i]) * Gecode::max(bests_[i] - lengths_[i], 0));
    if (*std::max_element(longCost.begin(), longCost.end()) > 0)
      mine << Gecode::expr(*this,
                           chosen(*this, longCost, modes_[i]) * Gecode::max(lengths_[i] - bests_[i], 0));
  }
  IntVarArgs lateness, flaws;
  for (std::size_t d = 0; d < problem_->dishes.size(); ++d) {
    const Dish& dish = problem_->dishes[d];
    const IntVar ready = ends_[dish.lastStep];
    const int serve = dish.serve / grid_;
    Gecode::dom(*this, ready, serve - dish.holdLimit / grid_, serve + dish.lateLimit / grid_);
    lateness << Gecode::expr(*this, Gecode::max(ready - serve, 0) * grid_);
    IntArgs waiting;
    for (int w = 0; w <= dish.holdLimit / grid_; ++w) waiting << dish.waitCost.at(w * grid_);
    parts[d] << chosen(*this, waiting, Gecode::expr(*this, Gecode::max(serve - ready, 0)));
    flaws << Gecode::expr(*this, Gecode::sum(parts[d]));
  }
  lateness_ = {*this, lateness};
  flaws_ = {*this, flaws};
  totals_ = {*this, IntVarArgs() << Gecode::expr(*this, Gecode::sum(lateness))
                                 << Gecode::expr(*this, Gecode::sum(flaws))};
}

void GecodeDinner::constrain(const Space& best) {
  const auto& other = static_cast<const GecodeDinner&>(best);
  IntArgs reached;
  for (const IntVar& total : other.totals_) reached << total.val();
  Gecode::rel(*this, IntVarArgs(totals_), Gecode::IRT_LE, reached);
}

bool GecodeDinner::master(const Gecode::MetaInfo& info) {
  if (info.type() == Gecode::MetaInfo::RESTART && info.last() != nullptr) constrain(*info.last());
  return true;
}

bool GecodeDinner::slave(const Gecode::MetaInfo& info) {
  constexpr unsigned kMostFreed = 3;
  if (info.type() != Gecode::MetaInfo::RESTART) return true;
  std::vector<int> dishes(problem_->dishes.size());
  std::iota(dishes.begin(), dishes.end(), 0);
  for (std::size_t d = dishes.size(); d > 1; --d)
    std::swap(dishes[d - 1], dishes[dice_(static_cast<unsigned>(d))]);
  const bool keep = info.last() != nullptr && dice_(2) == 0;
  if (keep) {
    const auto& last = static_cast<const GecodeDinner&>(*info.last());
    const std::size_t freed = 1 + dice_(kMostFreed);
    for (int i = 0; i < starts_.size(); ++i) {
      const auto dish =
          std::find(dishes.begin(), dishes.end(), problem_->steps[static_cast<std::size_t>(i)].dish);
      if (static_cast<std::size_t>(dish - dishes.begin()) < freed) continue;
      Gecode::rel(*this, starts_[i] == last.starts_[i].val());
      Gecode::rel(*this, lengths_[i] == last.lengths_[i].val());
      Gecode::rel(*this, modes_[i] == last.modes_[i].val());
    }
  }
  for (const int dish : dishes) branchOnDish(dish);
  return !keep;
}

void GecodeDinner::branchOnDish(int dish) {
  IntVarArgs modes, cooks, times;
  for (int i = 0; i < starts_.size(); ++i) {
    if (problem_->steps[static_cast<std::size_t>(i)].dish != dish) continue;
    modes << modes_[i];
    times << starts_[i] << ends_[i];
    cooks << cooks_[i];
  }
  Gecode::branch(*this, IntVarArgs() << lateness_[dish] << flaws_[dish], Gecode::INT_VAR_NONE(),
                 Gecode::INT_VAL_SPLIT_MIN());
  Gecode::branch(*this, modes, Gecode::INT_VAR_AFC_SIZE_MAX(), Gecode::INT_VAL_MIN());
  Gecode::branch(*this, times, Gecode::INT_VAR_AFC_SIZE_MAX(), Gecode::INT_VAL_MIN());
  Gecode::branch(*this, cooks, Gecode::INT_VAR_AFC_SIZE_MAX(), Gecode::INT_VAL_MIN());
}

std::vector<Placement> GecodeDinner::places() const {
  std::vector<Placement> places;
  for (int i = 0; i < starts_.size(); ++i)
    places.push_back({starts_[i].val() * grid_, ends_[i].val() * grid_, modes_[i].val(), cooks_[i].val()});
  return places;
}

}  // namespace suppertide::planning
