#include "server/planning/clash/wish_clash.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <set>
#include <utility>

#include "server/base/index.h"
#include "server/planning/clash/quick_xplain.h"

namespace suppertide::planning {
namespace {

using Dishes = std::vector<int>;

// Dishes that bake in a common oven are more likely to be in each other's way.
std::vector<std::set<int>> ovensByDish(const Problem& problem) {
  std::vector<std::set<int>> ovens(problem.dishes.size());
  for (const Step& step : problem.steps)
    for (const Mode& mode : step.modes)
      if (mode.oven) ovens[at(step.dish)].insert(mode.oven->oven);
  return ovens;
}

class ClashSearch {
 public:
  ClashSearch(const Problem& problem, const WishClashOptions& options, Feasibility& feasibility)
      : problem_(problem), options_(options), feasibility_(feasibility), ovens_(ovensByDish(problem)) {}

  std::vector<WishClash> run() {
    std::vector<Dishes> without = {{}};
    for (std::size_t next = 0; next < without.size() && wantsMore(); ++next) {
      const Dishes removed = without[next];
      auto clash = clashWithout(removed);
      if (!clash) continue;
      const Dishes dishes = dishesOf(*clash);
      clashes_.push_back(*std::move(clash));
      if (options_.found) options_.found(clashes_.back());
      queueRemovals(removed, dishes, without);
    }
    return std::move(clashes_);
  }

 private:
  bool stopped() const { return options_.stop && options_.stop(); }
  bool wantsMore() const { return static_cast<int>(clashes_.size()) < options_.most && !stopped(); }

  static Dishes dishesOf(const WishClash& clash) {
    Dishes dishes;
    for (const Wish& wish : clash.wishes)
      if (wish.kind == WishKind::kServed) dishes.push_back(wish.index);
    return dishes;
  }

  // First a clash that shares no dish with those known, then ones that share some.
  static void queueRemovals(const Dishes& removed, const Dishes& clash, std::vector<Dishes>& without) {
    const auto add = [&](const Dishes& more) {
      std::set<int> all(removed.begin(), removed.end());
      all.insert(more.begin(), more.end());
      Dishes sorted(all.begin(), all.end());
      if (std::find(without.begin(), without.end(), sorted) == without.end()) without.push_back(sorted);
    };
    add(clash);
    if (clash.size() < 2) return;
    for (const int dish : clash) add({dish});
  }

  std::optional<WishClash> clashWithout(const Dishes& removed) {
    sure_ = true;
    plans_.clear();
    const auto dishes = conflictingDishes(inOrderOfSuspicion(removed));
    if (!dishes) return std::nullopt;
    if (isKnown(*dishes)) return std::nullopt;
    return otherWishes(*dishes);
  }

  bool isKnown(const Dishes& dishes) const {
    const auto same = [&](const WishClash& clash) { return dishesOf(clash) == dishes; };
    return std::any_of(clashes_.begin(), clashes_.end(), same);
  }

  Dishes inOrderOfSuspicion(const Dishes& removed) const {
    Dishes order;
    const auto isRemoved = [&](int dish) {
      return std::find(removed.begin(), removed.end(), dish) != removed.end();
    };
    for (const int dish : options_.suspects)
      if (!isRemoved(dish)) order.push_back(dish);
    Dishes rest;
    for (int dish = 0; dish < static_cast<int>(problem_.dishes.size()); ++dish)
      if (!isRemoved(dish) && std::find(order.begin(), order.end(), dish) == order.end())
        rest.push_back(dish);
    const int first = order.empty() ? 0 : order.front();
    const auto distance = [&](int dish) {
      const bool oven = std::any_of(ovens_[at(dish)].begin(), ovens_[at(dish)].end(),
                                    [&](int o) { return ovens_[at(first)].contains(o); });
      return std::make_pair(!oven,
                            std::abs(problem_.dishes[at(dish)].serve - problem_.dishes[at(first)].serve));
    };
    std::stable_sort(rest.begin(), rest.end(), [&](int a, int b) { return distance(a) < distance(b); });
    order.insert(order.end(), rest.begin(), rest.end());
    return order;
  }

  // From the few that the engine names when asked for all, else grown from the most suspicious dish,
  // so that most questions are small.
  std::optional<Dishes> conflictingDishes(const Dishes& order) {
    const QuickXplain<int>::Conflicts conflicts = [&](const Dishes& dishes) {
      return cannotAllBeServed(dishes);
    };
    Dishes named = clashes_.empty() ? options_.clashing : Dishes{};
    if (named.empty() && askForAll(order, named) == Feasible::kYes) return std::nullopt;
    if (!named.empty()) return sorted(QuickXplain<int>(conflicts).explain({}, named));
    Dishes grown;
    for (const int dish : order) {
      if (stopped()) return std::nullopt;
      Dishes with = grown;
      with.push_back(dish);
      if (!cannotAllBeServed(with)) {
        grown = std::move(with);
        continue;
      }
      Dishes core = QuickXplain<int>(conflicts).explain({dish}, grown);
      core.push_back(dish);
      return sorted(std::move(core));
    }
    return std::nullopt;
  }

  static Dishes sorted(Dishes dishes) {
    std::sort(dishes.begin(), dishes.end());
    return dishes;
  }

  // `named`: few that clash, in `order`; empty when the engine names none.
  Feasible askForAll(const Dishes& order, Dishes& named) {
    const Dishes all = sorted(order);
    std::vector<int> clashing;
    const Feasible answer =
        feasibility_.decide(relaxed(problem_, served(all), {}, options_.relaxing), nullptr, &clashing);
    for (const int dish : order) {
      const auto place = std::lower_bound(all.begin(), all.end(), dish) - all.begin();
      if (std::find(clashing.begin(), clashing.end(), place) != clashing.end()) named.push_back(dish);
    }
    return answer;
  }

  static std::vector<Wish> served(const Dishes& dishes) {
    std::vector<Wish> wishes;
    for (const int dish : dishes) wishes.push_back({WishKind::kServed, dish});
    return wishes;
  }

  bool cannotAllBeServed(const Dishes& dishes) { return conflict(served(dishes), {}); }

  WishClash otherWishes(const Dishes& dishes) {
    const std::vector<Wish> all = wishesOf(problem_, dishes, options_.relaxing.begun);
    Given given{all, {}};
    for (auto end = all.rbegin(); end != all.rend() && end->kind != WishKind::kServed;) {
      const auto next =
          std::find_if(end, all.rend(), [&](const Wish& wish) { return wish.kind != end->kind; });
      takeBack({next.base(), end.base()}, given);
      end = next;
    }
    WishClash clash;
    clash.irreducible = sure_;
    clash.rules = rulesBehind(given, rulesOf(dishes));
    clash.wishes = std::move(given.kept);
    return clash;
  }

  struct Given {
    std::vector<Wish> kept;
    std::vector<Wish> taken;
  };

  // Takes those of `wishes` back without which the others still clash; all of a kind mostly are or are
  // not, and the fewer are taken back at a time, the sooner a question is answered.
  void takeBack(const std::vector<Wish>& wishes, Given& given) {
    Given without = given;
    std::erase_if(without.kept, [&](const Wish& wish) {
      return std::find(wishes.begin(), wishes.end(), wish) != wishes.end();
    });
    without.taken.insert(without.taken.end(), wishes.begin(), wishes.end());
    if (conflict(without.kept, without.taken)) {
      given = std::move(without);
      return;
    }
    if (wishes.size() < 2) return;
    const auto middle = wishes.begin() + static_cast<std::ptrdiff_t>(wishes.size() / 2);
    takeBack({middle, wishes.end()}, given);
    takeBack({wishes.begin(), middle}, given);
  }

  std::vector<KeptRule> rulesOf(const Dishes& dishes) const {
    const auto isIn = [&](int step) {
      return std::find(dishes.begin(), dishes.end(), problem_.steps[at(step)].dish) != dishes.end();
    };
    std::vector<KeptRule> rules;
    for (std::size_t c = 0; c < problem_.clocks.size(); ++c)
      if (isIn(problem_.clocks[c].spans.front().from))
        rules.push_back({KeptRule::Kind::kClock, static_cast<int>(c)});
    for (std::size_t s = 0; s < problem_.separations.size(); ++s)
      if (isIn(problem_.separations[s].clean) && isIn(problem_.separations[s].other))
        rules.push_back({KeptRule::Kind::kSeparation, static_cast<int>(s)});
    return rules;
  }

  // Of `rules`, a smallest part that makes the wishes clash.
  std::vector<KeptRule> rulesBehind(const Given& given, const std::vector<KeptRule>& rules) {
    if (rules.empty()) return {};
    const QuickXplain<KeptRule>::Conflicts conflicts = [&](const std::vector<KeptRule>& kept) {
      const Problem freed = relaxed(withRules(kept), given.kept, given.taken, options_.relaxing);
      return feasibility_.decide(freed) == Feasible::kNo;
    };
    return QuickXplain<KeptRule>(conflicts).explain({}, rules);
  }

  Problem withRules(const std::vector<KeptRule>& kept) const {
    Problem problem = problem_;
    problem.clocks.clear();
    problem.separations.clear();
    for (const KeptRule& rule : kept) {
      if (rule.kind == KeptRule::Kind::kClock) problem.clocks.push_back(problem_.clocks[at(rule.index)]);
      if (rule.kind == KeptRule::Kind::kSeparation)
        problem.separations.push_back(problem_.separations[at(rule.index)]);
    }
    return problem;
  }

  // An open question counts as no conflict: then a wish may be kept for nothing, but none is missing.
  bool conflict(const std::vector<Wish>& kept, const std::vector<Wish>& taken) {
    const Problem question = relaxed(problem_, kept, taken, options_.relaxing);
    if (isPlanned(question)) return false;
    Schedule plan;
    const Feasible answer = feasibility_.decide(question, &plan);
    if (answer == Feasible::kUnknown) sure_ = false;
    if (answer == Feasible::kYes) plans_.push_back(std::move(plan));
    return answer == Feasible::kNo;
  }

  // Whether an earlier question's plan is one of this problem, too; the latest is the likeliest.
  bool isPlanned(const Problem& problem) const {
    return std::any_of(plans_.rbegin(), plans_.rend(),
                       [&](const Schedule& plan) { return servesAll(problem, plan); });
  }

  const Problem& problem_;
  const WishClashOptions& options_;
  Feasibility& feasibility_;
  std::vector<std::set<int>> ovens_;
  std::vector<WishClash> clashes_;
  std::vector<Schedule> plans_;  // each serves all dishes of a question
  bool sure_ = true;             // no question of the present set stayed open
};

}  // namespace

std::vector<WishClash> wishClashes(const Problem& problem, const WishClashOptions& options,
                                   Feasibility& feasibility) {
  return ClashSearch(problem, options, feasibility).run();
}

}  // namespace suppertide::planning
