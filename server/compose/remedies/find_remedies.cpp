#include "server/compose/remedies/find_remedies.h"

#include <algorithm>
#include <functional>
#include <map>
#include <memory>
#include <numeric>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>

#include "absl/strings/str_cat.h"
#include "server/compose/documents.h"
#include "server/compose/remedies/catalogue.h"
#include "server/compose/remedies/clash_document.h"
#include "server/compose/remedies/trial.h"

namespace suppertide::compose {
namespace {

constexpr std::size_t kMostChanges = 3;  // made together

auto rankOf(const FoundRemedy& remedy) {
  const v1::TierCosts& costs = remedy.plan.quality().costs();
  return std::make_tuple(remedy.size, costs.quality(), costs.people(), costs.calm(), costs.ovens());
}

std::set<std::string> dishIdsOf(const Composition& composition, const planning::WishClash& clash) {
  std::set<std::string> ids;
  for (const planning::Wish& wish : clash.wishes)
    if (wish.kind == planning::WishKind::kServed)
      ids.insert(composition.dishes[static_cast<std::size_t>(wish.index)].dish->id());
  return ids;
}

// All that a plan depends on, as bytes.
std::string keyOf(const Documents& documents) {
  std::set<std::string> used;
  for (const v1::Dish& dish : documents.event.dishes()) used.insert(dish.recipe_id());
  std::string key;
  const auto add = [&](const auto& document) {
    const std::string bytes = document.SerializeAsString();
    absl::StrAppend(&key, bytes.size(), ":", bytes);
  };
  add(documents.event);
  add(documents.kitchen);
  add(documents.household);
  for (const v1::Recipe& recipe : documents.recipes)
    if (used.contains(recipe.id())) add(recipe);
  return key;  // no remedy changes a starter
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
    planning::Schedule schedule;
    if (asItIs->fits(options_.planConflicts, stop_, &schedule)) {
      search_.fits = true;
      return std::move(search_);
    }
    const auto clashes = clashesToTell(*asItIs, schedule);
    for (const planning::WishClash& clash : clashes)
      search_.clashes.push_back(clashDocument(asItIs->composition(), clash));
    if (monitor_ != nullptr) monitor_->clashesKnown(search_.clashes);
    tryAll(*asItIs, clashes);
    lookAgain();
    return ranked();
  }

 private:
  ClashSearchOptions clashSearch(const Trial& trial, const planning::Schedule& schedule) const {
    ClashSearchOptions options;
    options.stop = stop_;
    if (!schedule.steps.empty()) options.suspects = suspectsOf(trial.composition(), schedule);
    return options;
  }

  std::vector<planning::WishClash> clashesToTell(const Trial& trial,
                                                 const planning::Schedule& schedule) const {
    return findWishClashes(trial.composition(), clashSearch(trial, schedule));
  }

  // Its dishes are few; which of their wishes matter is left to the changes that are tried.
  std::vector<planning::WishClash> clashOnTheWay(const Trial& trial,
                                                 const planning::Schedule& schedule) const {
    ClashSearchOptions options = clashSearch(trial, schedule);
    options.most = 1;
    options.smallest = false;
    return findWishClashes(trial.composition(), options);
  }

  void tryAll(const Trial& trial, const std::vector<planning::WishClash>& clashes) {
    if (clashes.empty()) return;
    const std::vector<Change> changes = proposals({trial.documents(), trial.composition(), clashes});
    candidates_ += static_cast<int>(changes.size());
    const std::set<std::string> dishes = dishIdsOf(trial.composition(), clashes.front());
    for (const planning::WishClash& clash : clashes) known_.push_back(knownClash(trial, clash));
    for (const Change& change : changes) {
      if (enough()) return;
      if (helped_.contains(change.group)) continue;
      Documents changed = trial.documents();
      change.apply(changed);
      if (!helps(changed, dishes)) continue;
      helped_.insert(change.group);
      complete(std::move(changed), {change.what});
    }
  }

  // A clash that was met on the way, with what might help: changes name everything by id,
  // so that they can be made on top of others.
  struct KnownClash {
    std::set<std::string> dishes;
    std::vector<Change> changes;
  };

  KnownClash knownClash(const Trial& trial, const planning::WishClash& clash) {
    return {dishIdsOf(trial.composition(), clash),
            proposals({trial.documents(), trial.composition(), {clash}})};
  }

  bool enough() const { return static_cast<int>(search_.remedies.size()) >= options_.most || stop_(); }

  void countTry() {
    ++tried_;
    if (monitor_ != nullptr) monitor_->tried(tried_, candidates_);
  }

  // Changes made elsewhere leave a clash as it is: what was asked once is remembered.
  bool fitTogether(const Documents& documents, const std::set<std::string>& dishes) {
    Documents few = onlyDishes(documents, dishes);
    const auto [known, isNew] = fitting_.try_emplace(keyOf(few), false);
    if (!isNew) return known->second;
    const auto trial = Trial::of(std::move(few), tables_);
    known->second = trial != nullptr && trial->fits(options_.tryConflicts, stop_);
    return known->second;
  }

  bool helps(const Documents& changed, const std::set<std::string>& dishes) {
    countTry();
    return fitTogether(changed, dishes);
  }

  // Plans the event with these changes; while something else still clashes, adds
  // the smallest change that helps there.
  void complete(Documents documents, std::vector<v1::Remedy> changes) {
    for (const KnownClash& clash : known_) {
      if (stop_() || fitTogether(documents, clash.dishes)) continue;
      if (!addSmallest(clash, documents, changes)) return;
    }
    while (!stop_()) {
      auto trial = Trial::of(documents, tables_);
      if (trial == nullptr) return;
      planning::Schedule schedule;
      if (trial->fits(options_.planConflicts, stop_, &schedule))
        return keep({std::move(trial), std::move(changes)}, schedule);
      if (changes.size() >= kMostChanges) return;
      const auto clashes = clashOnTheWay(*trial, schedule);
      if (clashes.empty()) return;
      known_.push_back(knownClash(*trial, clashes.front()));
      if (!addSmallest(known_.back(), documents, changes)) return;
    }
  }

  bool addSmallest(const KnownClash& clash, Documents& documents, std::vector<v1::Remedy>& changes) {
    if (changes.size() >= kMostChanges) return false;
    candidates_ += static_cast<int>(clash.changes.size());
    for (const Change& change : clash.changes) {
      if (stop_()) return false;
      Documents changed = documents;
      change.apply(changed);
      if (!helps(changed, clash.dishes)) continue;
      documents = std::move(changed);
      changes.push_back(change.what);
      return true;
    }
    return false;
  }

  // Changes with which all dishes fit.
  struct Fitting {
    std::unique_ptr<Trial> trial;
    std::vector<v1::Remedy> changes;
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
    remedy.changes = fitting.changes;
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
  std::vector<KnownClash> known_;
  std::map<std::string, bool> fitting_;  // by keyOf()
  std::vector<Fitting> unsound_;         // whose first plan the auditor did not pass
  std::set<std::string> helped_;         // groups
  int tried_ = 0;
  int candidates_ = 0;
};

}  // namespace

absl::StatusOr<RemedySearch> findRemedies(const Documents& documents, const RemedyOptions& options,
                                          RemedyMonitor* monitor) {
  return RemedyHunt(options, monitor).run(documents);
}

}  // namespace suppertide::compose
