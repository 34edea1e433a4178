#include "tests/bench/plan_bench/minizinc_data.h"

#include <algorithm>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "tests/bench/plan_bench/oven_pairs.h"

namespace suppertide::planning {
namespace {

using Numbers = std::vector<int>;

class DataWriter {
 public:
  DataWriter(const Problem& problem, Minute grid) : problem_(problem), grid_(grid) {
    int next = 1;
    for (const Step& step : problem.steps) {
      firstMode_.push_back(next);
      next += static_cast<int>(step.modes.size());
    }
    modeCount_ = next - 1;
  }

  absl::StatusOr<std::string> write() {
    sizes();
    steps();
    modes();
    rows();
    gaps();
    links();
    dishes();
    things();
    presence();
    ovens();
    if (auto status = pairs(); !status.ok()) return status;
    return text_;
  }

 private:
  template <typename T>
  void say(const char* name, const T& value) {
    absl::StrAppend(&text_, name, " = ", value, ";\n");
  }
  template <typename T>
  void list(const char* name, const std::vector<T>& values) {
    absl::StrAppend(&text_, name, " = [", absl::StrJoin(values, ","), "];\n");
  }
  void sets(const char* name, const std::vector<Numbers>& values) {
    std::vector<std::string> words;
    for (const Numbers& set : values) words.push_back(absl::StrCat("{", absl::StrJoin(set, ","), "}"));
    list(name, words);
  }
  int horizon() const { return problem_.limit / grid_; }
  // No limit either way is beyond the axis.
  int slots(Minute minutes) const { return std::clamp(minutes / grid_, -2 * horizon(), 2 * horizon()); }

  void sizes() {
    say("H", horizon());
    say("grid", grid_);
    say("S", problem_.steps.size());
    say("D", problem_.dishes.size());
    say("M", modeCount_);
    say("K", problem_.cooks.size());
    say("R", problem_.resources.size());
    say("O", problem_.ovens.size());
  }

  void steps() {
    Numbers dish, earliest, latest, modes, attention;
    std::vector<Numbers> able;
    for (const Step& step : problem_.steps) {
      dish.push_back(step.dish + 1);
      earliest.push_back((step.earliest + grid_ - 1) / grid_);
      latest.push_back(slots(step.latest));
      modes.push_back(static_cast<int>(step.modes.size()));
      attention.push_back(step.modes.front().attention);
      able.emplace_back();
      if (attention.back() == 0) continue;
      for (const CookOption& option : step.modes.front().cooks) able.back().push_back(option.cook + 1);
    }
    list("dish", dish);
    list("earliest", earliest);
    list("latest", latest);
    list("firstMode", firstMode_);
    list("modes", modes);
    list("attention", attention);
    sets("able", able);
  }

  void modes() {
    Numbers chosen, shortCost, longCost, uses;
    for (const Step& step : problem_.steps)
      for (const Mode& mode : step.modes) {
        chosen.push_back(mode.qualityCost);
        shortCost.push_back(mode.shortMinuteCost);
        longCost.push_back(mode.longMinuteCost);
        Numbers amounts(problem_.resources.size(), 0);
        for (const Use& use : mode.uses) amounts[static_cast<std::size_t>(use.resource)] += use.amount;
        uses.insert(uses.end(), amounts.begin(), amounts.end());
      }
    list("chosen", chosen);
    list("short", shortCost);
    list("long", longCost);
    absl::StrAppend(&text_, "uses = array2d(1..M,1..R,[", absl::StrJoin(uses, ","), "]);\n");
  }

  void rows() {
    Numbers row, rows, least, best, most;
    Minute pitch = grid_;
    for (const Step& step : problem_.steps)
      for (const Mode& mode : step.modes) {
        row.push_back(static_cast<int>(least.size()) + 1);
        rows.push_back(static_cast<int>(mode.length.rows.size()));
        if (mode.length.rows.size() > 1) pitch = mode.length.pitch;
        for (const Length& length : mode.length.rows) {
          least.push_back(length.shortest / grid_);
          best.push_back(length.best / grid_);
          most.push_back(length.longest / grid_);
        }
      }
    list("row", row);
    list("rows", rows);
    say("pitch", pitch / grid_);
    list("least", least);
    list("best", best);
    list("most", most);
  }

  void gaps() {
    Numbers from, to, least, most;
    std::vector<const char*> fromEnd, toEnd;
    for (const Gap& gap : problem_.gaps) {
      from.push_back(gap.from + 1);
      to.push_back(gap.to + 1);
      fromEnd.push_back(gap.fromEdge == Edge::kEnd ? "true" : "false");
      toEnd.push_back(gap.toEdge == Edge::kEnd ? "true" : "false");
      least.push_back(slots(gap.least));
      most.push_back(slots(gap.most));
    }
    say("Gn", from.size());
    list("gapFrom", from);
    list("gapFromEnd", fromEnd);
    list("gapTo", to);
    list("gapToEnd", toEnd);
    list("gapLeast", least);
    list("gapMost", most);
  }

  void links() {
    Numbers step, mode, to;
    std::vector<Numbers> allowed;
    for (std::size_t i = 0; i < problem_.steps.size(); ++i)
      for (std::size_t m = 0; m < problem_.steps[i].modes.size(); ++m)
        for (const ModeLink& link : problem_.steps[i].modes[m].links) {
          step.push_back(static_cast<int>(i) + 1);
          mode.push_back(static_cast<int>(m) + 1);
          to.push_back(link.step + 1);
          allowed.emplace_back();
          for (const int other : link.modes) allowed.back().push_back(other + 1);
        }
    say("Ln", step.size());
    list("linkStep", step);
    list("linkMode", mode);
    list("linkTo", to);
    sets("linkModes", allowed);
  }

  void dishes() {
    Numbers serve, hold, late, last, wait, waitCost;
    for (const Dish& dish : problem_.dishes) {
      serve.push_back(dish.serve / grid_);
      hold.push_back(dish.holdLimit / grid_);
      late.push_back(dish.lateLimit / grid_);
      last.push_back(dish.lastStep + 1);
      wait.push_back(static_cast<int>(waitCost.size()) + 1);
      for (int w = 0; w <= hold.back(); ++w) waitCost.push_back(dish.waitCost.at(w * grid_));
    }
    list("serve", serve);
    list("hold", hold);
    list("late", late);
    list("last", last);
    list("wait", wait);
    list("waitCost", waitCost);
  }

  void things() {
    Numbers capacity, thing, start, length, amount;
    for (const Resource& resource : problem_.resources) {
      capacity.push_back(resource.capacity);
      for (const Resource::Taken& taken : resource.taken) {
        thing.push_back(static_cast<int>(capacity.size()));
        start.push_back(taken.when.start / grid_);
        length.push_back((taken.when.limit - taken.when.start) / grid_);
        amount.push_back(taken.amount);
      }
    }
    list("capacity", capacity);
    say("Tn", thing.size());
    list("takenThing", thing);
    list("takenStart", start);
    list("takenLength", length);
    list("takenAmount", amount);
  }

  void presence() {
    Numbers step, cook;
    std::vector<Numbers> there;
    for (std::size_t i = 0; i < problem_.steps.size(); ++i) {
      const Mode& mode = problem_.steps[i].modes.front();
      if (mode.attention == 0) continue;
      for (const CookOption& option : mode.cooks) {
        step.push_back(static_cast<int>(i) + 1);
        cook.push_back(option.cook + 1);
        there.emplace_back();
        for (const auto& span : problem_.cooks[static_cast<std::size_t>(option.cook)].available)
          for (Minute s = span.start; s + mode.length.rows.front().best <= span.limit; s += grid_)
            there.back().push_back(s / grid_);
      }
    }
    say("An", step.size());
    list("thereStep", step);
    list("thereCook", cook);
    sets("there", there);
  }

  void ovens() {
    Numbers racks, oven, load;
    for (const Oven& each : problem_.ovens) racks.push_back(rackCount(each));
    for (const Step& step : problem_.steps)
      for (const Mode& mode : step.modes) {
        oven.push_back(mode.oven ? mode.oven->oven + 1 : 0);
        load.push_back(mode.oven ? mode.oven->load.racks : 0);
      }
    list("racks", racks);
    list("oven", oven);
    list("load", load);
  }

  absl::Status pairs() {
    Numbers a, b, row, aFirst, bFirst, least, most;
    for (std::size_t i = 0; i < problem_.steps.size(); ++i)
      for (std::size_t j = i + 1; j < problem_.steps.size(); ++j) {
        const Step& one = problem_.steps[i];
        const Step& other = problem_.steps[j];
        if (!mayMeet(one, other)) continue;
        a.push_back(static_cast<int>(i) + 1);
        b.push_back(static_cast<int>(j) + 1);
        row.push_back(static_cast<int>(aFirst.size()) + 1);
        for (const Mode& x : one.modes)
          for (const Mode& y : other.modes) {
            const auto pair = ovenPair(problem_, x, y, grid_);
            if (!pair)
              return absl::UnimplementedError(
                  absl::StrCat(one.id, " (", x.name, ") beside ", other.id, " (", y.name, ")"));
            aFirst.push_back(slots(pair->aFirst));
            bFirst.push_back(slots(pair->bFirst));
            least.push_back(slots(pair->togetherLeast));
            most.push_back(slots(pair->togetherMost));
          }
      }
    say("Pn", a.size());
    list("pairA", a);
    list("pairB", b);
    list("pairRow", row);
    list("aFirst", aFirst);
    list("bFirst", bFirst);
    list("togetherLeast", least);
    list("togetherMost", most);
    return absl::OkStatus();
  }

  const Problem& problem_;
  Minute grid_;
  Numbers firstMode_;
  int modeCount_ = 0;
  std::string text_;
};

}  // namespace

absl::StatusOr<std::string> minizincData(const Problem& problem, Minute grid) {
  return DataWriter(problem, grid).write();
}

}  // namespace suppertide::planning
