#include "server/compose/remedies/find_remedies.h"

#include <algorithm>
#include <functional>
#include <numeric>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>

#include "server/compose/documents.h"
#include "server/compose/remedies/catalogue.h"
#include "server/compose/remedies/clash_document.h"
#include "server/compose/remedies/trial.h"

namespace suppertide::compose {
namespace {

constexpr int kMostChanges = 3;  // made together

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
    const auto clashes = clashesIn(*asItIs, schedule, 3);
    for (const planning::WishClash& clash : clashes)
      search_.clashes.push_back(clashDocument(asItIs->composition(), clash));
    if (monitor_ != nullptr) monitor_->clashesKnown(search_.clashes);
    tryAll(*asItIs, clashes);
    return ranked();
  }

 private:
  std::vector<planning::WishClash> clashesIn(const Trial& trial, const planning::Schedule& schedule,
                                             int most) {
    ClashSearchOptions options;
    options.most = most;
    options.nameRules = search_.clashes.empty();  // for those that are told
    options.stop = stop_;
    if (!schedule.steps.empty()) options.suspects = suspectsOf(trial.composition(), schedule);
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

  bool fitTogether(const Documents& documents, const std::set<std::string>& dishes) {
    const auto trial = Trial::of(onlyDishes(documents, dishes), tables_);
    return trial != nullptr && trial->fits(options_.tryConflicts, stop_);
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
      const auto trial = Trial::of(documents, tables_);
      if (trial == nullptr) return;
      planning::Schedule schedule;
      if (trial->fits(options_.planConflicts, stop_, &schedule))
        return keep(*trial, schedule, std::move(changes));
      const auto clashes = clashesIn(*trial, schedule, 1);
      if (clashes.empty()) return;
      known_.push_back(knownClash(*trial, clashes.front()));
      if (!addSmallest(known_.back(), documents, changes)) return;
    }
  }

  bool addSmallest(const KnownClash& clash, Documents& documents, std::vector<v1::Remedy>& changes) {
    if (static_cast<int>(changes.size()) >= kMostChanges) return false;
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

  // A plan that the auditor passes: a dough's forecast along the planned places can be a little
  // off the planner's own tables, then a longer search mostly finds another one.
  std::optional<v1::Plan> soundPlan(const Trial& trial, const planning::Schedule& schedule) {
    auto outcome = trial.bettered(schedule, options_.seed, options_.rounds, stop_);
    for (int round = 0; outcome && round < 2; ++round) {
      v1::Plan plan = planDocument(trial.composition(), *outcome, options_.evenings);
      if (plan.breaches().empty() && plan.unserved().empty()) return plan;
      if (round == 0) outcome = trial.planned(options_.seed, options_.planConflicts, stop_);
    }
    return std::nullopt;
  }

  void keep(const Trial& trial, const planning::Schedule& schedule, std::vector<v1::Remedy> changes) {
    auto plan = soundPlan(trial, schedule);
    if (!plan) return;
    FoundRemedy remedy;
    remedy.plan = *std::move(plan);
    for (v1::Remedy& change : changes)
      if (change.kind() == v1::REMEDY_KIND_SHARE_TEMPERATURE) tellRange(trial.composition(), change);
    remedy.number = static_cast<int>(search_.remedies.size()) + 1;
    remedy.size = std::accumulate(changes.begin(), changes.end(), 0,
                                  [](int sum, const v1::Remedy& change) { return sum + change.size(); });
    remedy.changes = std::move(changes);
    remedy.documents = trial.documents();
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
  std::set<std::string> helped_;  // groups
  int tried_ = 0;
  int candidates_ = 0;
};

}  // namespace

absl::StatusOr<RemedySearch> findRemedies(const Documents& documents, const RemedyOptions& options,
                                          RemedyMonitor* monitor) {
  return RemedyHunt(options, monitor).run(documents);
}

}  // namespace suppertide::compose
