#include "server/compose/remedies/find_remedies.h"

#include <algorithm>
#include <functional>
#include <memory>
#include <numeric>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>

#include "server/compose/documents.h"
#include "server/compose/remedies/attempt.h"
#include "server/compose/remedies/catalogue.h"
#include "server/compose/remedies/clash_document.h"
#include "server/compose/remedies/known_clashes.h"
#include "server/compose/remedies/trial.h"

namespace suppertide::compose {
namespace {

constexpr std::size_t kMostChanges = 5;  // made together
// With so many remedies found, no more than this is asked of people.
constexpr std::size_t kSomeRemedies = 3;
constexpr std::size_t kSomeChanges = 3;

auto rankOf(const FoundRemedy& remedy) {
  const v1::TierCosts& costs = remedy.plan.quality().costs();
  return std::make_tuple(remedy.size, costs.quality(), costs.people(), costs.calm(), costs.ovens());
}

std::vector<int> dishesOf(const planning::WishClash& clash) {
  std::vector<int> dishes;
  for (const planning::Wish& wish : clash.wishes)
    if (wish.kind == planning::WishKind::kServed) dishes.push_back(wish.index);
  return dishes;
}

// The setpoints that a bake may now have.
void tellRange(const Composition& composition, v1::Remedy& what) {
  for (std::size_t i = 0; i < composition.steps.size(); ++i) {
    if (composition.stepId(static_cast<int>(i)) != what.step_id()) continue;
    for (const ModeInfo& mode : composition.steps[i].modes) {
      if (mode.oven < 0) continue;
      const int celsius = mode.setpointCelsius;
      what.set_min_celsius(what.min_celsius() == 0 ? celsius : std::min(what.min_celsius(), celsius));
      what.set_max_celsius(std::max(what.max_celsius(), celsius));
    }
  }
}

class RemedyHunt {
 public:
  RemedyHunt(const RemedyOptions& options, RemedyMonitor* monitor) : options_(options), monitor_(monitor) {
    stop_ = [this] { return monitor_ != nullptr && monitor_->stop(); };
  }

  absl::StatusOr<RemedySearch> run(const Documents& documents) {
    if (const auto composed = composeProblem(documents, &tables_); !composed.ok()) return composed.status();
    const auto asItIs = Trial::of(documents, tables_);
    if (asItIs == nullptr) return absl::InvalidArgumentError("the event cannot be composed");
    const Trial::Fit fit = asItIs->fit(options_.planConflicts, stop_);
    if (fit.fits) {
      search_.fits = true;
      return std::move(search_);
    }
    asItIs_ = &asItIs->documents();
    known_.emplace(*asItIs_, tables_, options_.tryConflicts, stop_);
    tryAll(*asItIs, clashesToTell(*asItIs, fit));
    lookAgain();
    return ranked();
  }

 private:
  ClashSearchOptions clashSearch(const Trial& trial, const Trial::Fit& fit) const {
    ClashSearchOptions options;
    options.stop = stop_;
    options.clashing = fit.clashing;
    if (!fit.schedule.steps.empty()) options.suspects = suspectsOf(trial.composition(), fit.schedule);
    return options;
  }

  std::vector<planning::WishClash> clashesToTell(const Trial& trial, const Trial::Fit& fit) {
    ClashSearchOptions options = clashSearch(trial, fit);
    options.found = [&](const planning::WishClash& clash) {
      search_.clashes.push_back(clashDocument(trial.composition(), clash));
      if (monitor_ != nullptr) monitor_->clashesKnown(search_.clashes);
    };
    return findWishClashes(trial.composition(), options);
  }

  void tryAll(const Trial& trial, const std::vector<planning::WishClash>& clashes) {
    if (clashes.empty()) return;
    for (const planning::WishClash& clash : clashes)
      known_->add(dishIdsOf(trial.composition(), dishesOf(clash)), trial.documents());
    const std::vector<Change> changes = proposals({trial.documents(), trial.composition(), clashes});
    candidates_ += static_cast<int>(changes.size());
    const DishIds dishes = dishIdsOf(trial.composition(), dishesOf(clashes.front()));
    std::vector<Attempt> waiting;
    for (const Change& change : changes) {
      if (enough()) return;
      if (helped_.contains(change.group)) continue;
      Attempt attempt = with({}, change);
      if (!mayHelp(changes, change, {}, dishes) || !helps(attempt, dishes)) continue;
      helped_.insert(change.group);
      if (needsMore(attempt, 1)) waiting.push_back(std::move(attempt));
    }
    putTogether(std::move(waiting));
  }

  // Few changes are tried before many, then small ones before big ones.
  void putTogether(std::vector<Attempt> waiting) {
    for (std::size_t most = 2; most <= kMostChanges; ++most) {
      if (most > kSomeChanges && search_.remedies.size() >= kSomeRemedies) return;
      std::stable_sort(waiting.begin(), waiting.end(),
                       [](const Attempt& a, const Attempt& b) { return a.size() < b.size(); });
      std::vector<Attempt> next;
      for (Attempt& attempt : waiting) {
        if (enough()) return;
        if (needsMore(attempt, most)) next.push_back(std::move(attempt));
      }
      waiting = std::move(next);
    }
  }

  bool enough() const { return static_cast<int>(search_.remedies.size()) >= options_.most || stop_(); }

  bool helps(const Attempt& attempt, const DishIds& dishes) {
    ++tried_;
    if (monitor_ != nullptr) monitor_->tried(tried_, candidates_);
    return known_->fit(attempt.documents, dishes);
  }

  Attempt with(const Attempt& attempt, const Change& change) const {
    return withChange(attempt, change, *asItIs_);
  }

  // Plans the event with these changes; while something else still clashes, adds the smallest change
  // that helps there. True when that would make more than `most`; else it has come to an end.
  bool needsMore(Attempt& attempt, std::size_t most) {
    while (!stop_()) {
      if (const KnownClash* open = known_->openIn(attempt.documents)) {
        if (attempt.changes.size() >= most && most < kMostChanges) return true;
        if (!addSmallest(*open, attempt)) return false;
        continue;
      }
      if (!planned_.insert(planningKey(attempt.documents)).second) return false;  // the same in another order
      auto trial = Trial::of(attempt.documents, tables_);
      if (trial == nullptr) return false;
      const Trial::Fit fit = trial->fit(options_.planConflicts, stop_);
      if (fit.fits) {
        keep({std::move(trial), std::move(attempt.changes)}, fit.schedule);
        return false;
      }
      if (fit.clashing.empty()) return false;
      known_->add(dishIdsOf(trial->composition(), fit.clashing), attempt.documents);
    }
    return false;
  }

  bool addSmallest(const KnownClash& clash, Attempt& attempt) {
    candidates_ += static_cast<int>(clash.changes.size());
    for (const Change& change : clash.changes) {
      if (stop_()) return false;
      if (attempt.hasAsMuch(change) || !mayHelp(clash.changes, change, attempt, clash.dishes)) continue;
      Attempt next = with(attempt, change);
      if (next.changes.size() > kMostChanges || !helps(next, clash.dishes)) continue;
      attempt = std::move(next);
      return true;
    }
    return false;
  }

  // False when even the biggest change of its group does not help, and would if this one did.
  bool mayHelp(const std::vector<Change>& all, const Change& change, const Attempt& attempt,
               const DishIds& dishes) {
    if (!change.biggerAllowsMore) return true;
    const Change& biggest = biggestLike(change, all);
    return &biggest == &change || helps(with(attempt, biggest), dishes);
  }

  // Changes with which all dishes fit.
  struct Fitting {
    std::unique_ptr<Trial> trial;
    std::vector<Change> changes;
  };

  // The plan of `outcome` when the auditor passes it: a dough's forecast along the planned places can
  // be a little off the planner's own tables.
  std::optional<v1::Plan> soundPlan(const Trial& trial, const std::optional<planning::Outcome>& outcome) {
    if (!outcome) return std::nullopt;
    v1::Plan plan = planDocument(trial.composition(), *outcome, options_.evenings);
    if (!plan.breaches().empty() || !plan.unserved().empty()) return std::nullopt;
    return plan;
  }

  void keep(Fitting fitting, const planning::Schedule& schedule) {
    const Trial& trial = *fitting.trial;
    auto plan = soundPlan(trial, trial.bettered(schedule, options_.seed, options_.rounds, stop_));
    if (plan) return tell(fitting, *std::move(plan));
    unsound_.push_back(std::move(fitting));
  }

  // A longer search mostly finds another plan for them, which the auditor passes.
  void lookAgain() {
    for (const Fitting& fitting : unsound_) {
      if (enough()) return;
      const Trial& trial = *fitting.trial;
      auto plan = soundPlan(trial, trial.planned(options_.seed, options_.planConflicts, stop_));
      if (plan) tell(fitting, *std::move(plan));
    }
  }

  void tell(const Fitting& fitting, v1::Plan plan) {
    FoundRemedy remedy;
    remedy.plan = std::move(plan);
    for (const Change& change : fitting.changes) remedy.changes.push_back(change.what);
    for (v1::Remedy& change : remedy.changes)
      if (change.kind() == v1::REMEDY_KIND_SHARE_TEMPERATURE) tellRange(fitting.trial->composition(), change);
    remedy.number = static_cast<int>(search_.remedies.size()) + 1;
    remedy.size = std::accumulate(remedy.changes.begin(), remedy.changes.end(), 0,
                                  [](int sum, const v1::Remedy& change) { return sum + change.size(); });
    remedy.documents = fitting.trial->documents();
    search_.remedies.push_back(std::move(remedy));
    if (monitor_ != nullptr) monitor_->found(search_.remedies.back());
  }

  RemedySearch ranked() {
    std::stable_sort(search_.remedies.begin(), search_.remedies.end(),
                     [](const FoundRemedy& a, const FoundRemedy& b) { return rankOf(a) < rankOf(b); });
    return std::move(search_);
  }

  const RemedyOptions& options_;
  RemedyMonitor* monitor_;
  std::function<bool()> stop_;
  RemedySearch search_;
  BreadTables tables_;
  const Documents* asItIs_ = nullptr;
  std::optional<KnownClashes> known_;
  std::vector<Fitting> unsound_;   // whose first plan the auditor did not pass
  std::set<std::string> planned_;  // planningKey() of the events that were planned as a whole
  std::set<std::string> helped_;   // groups
  int tried_ = 0;
  int candidates_ = 0;
};

}  // namespace

absl::StatusOr<RemedySearch> findRemedies(const Documents& documents, const RemedyOptions& options,
                                          RemedyMonitor* monitor) {
  return RemedyHunt(options, monitor).run(documents);
}

}  // namespace suppertide::compose
