#include "server/planning/clash/wish_clash.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <set>
#include <utility>

#include "server/planning/clash/quick_xplain.h"

namespace suppertide::planning {
namespace {

using Dishes = std::vector<int>;

std::size_t at(int index) {
  return static_cast<std::size_t>(index);
}

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
    Dishes named;
    if (askForAll(order, named) == Feasible::kYes) return std::nullopt;
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
    if (!options_.smallest) return {wishesOf(problem_, dishes), {}, false};
    std::vector<Wish> served;
    std::vector<Wish> others;
    for (const Wish& wish : wishesOf(problem_, dishes))
      (wish.kind == WishKind::kServed ? served : others).push_back(wish);
    const auto conflicts = [&](const std::vector<Wish>& kept) {
      std::vector<Wish> taken;
      for (const Wish& wish : others)
        if (std::find(kept.begin(), kept.end(), wish) == kept.end()) taken.push_back(wish);
      return conflict(kept, taken);
    };
    WishClash clash;
    clash.wishes = served;
    for (const Wish& wish : QuickXplain<Wish>(conflicts).explain(served, others))
      clash.wishes.push_back(wish);
    std::stable_sort(clash.wishes.begin(), clash.wishes.end(),
                     [](const Wish& a, const Wish& b) { return a.kind < b.kind; });
    clash.irreducible = sure_;
    if (options_.nameRules) clash.rules = rulesBehind(clash.wishes, others, rulesOf(dishes));
    return clash;
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

  // Of `rules`, a smallest part that makes the wishes clash; `others` that are not among them are taken back.
  std::vector<KeptRule> rulesBehind(const std::vector<Wish>& wishes, const std::vector<Wish>& others,
                                    const std::vector<KeptRule>& rules) {
    if (rules.empty()) return {};
    std::vector<Wish> taken;
    for (const Wish& wish : others)
      if (std::find(wishes.begin(), wishes.end(), wish) == wishes.end()) taken.push_back(wish);
    const QuickXplain<KeptRule>::Conflicts conflicts = [&](const std::vector<KeptRule>& kept) {
      const Problem freed = relaxed(withRules(kept), wishes, taken, options_.relaxing);
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
    const Feasible answer = feasibility_.decide(relaxed(problem_, kept, taken, options_.relaxing));
    if (answer == Feasible::kUnknown) sure_ = false;
    return answer == Feasible::kNo;
  }

  const Problem& problem_;
  const WishClashOptions& options_;
  Feasibility& feasibility_;
  std::vector<std::set<int>> ovens_;
  std::vector<WishClash> clashes_;
  bool sure_ = true;  // no question of the present set stayed open
};

}  // namespace

std::vector<WishClash> wishClashes(const Problem& problem, const WishClashOptions& options,
                                   Feasibility& feasibility) {
  return ClashSearch(problem, options, feasibility).run();
}

}  // namespace suppertide::planning
