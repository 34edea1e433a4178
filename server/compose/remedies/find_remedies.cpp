#include "server/compose/remedies/find_remedies.h"

#include <algorithm>
#include <functional>
#include <memory>
#include <optional>
#include <tuple>
#include <utility>

#include "server/compose/remedies/catalogue.h"
#include "server/compose/remedies/clash_document.h"
#include "server/compose/remedies/fitting.h"
#include "server/compose/remedies/scouting.h"
#include "server/compose/remedies/tries.h"

namespace suppertide::compose {
namespace {

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

class RemedyHunt {
 public:
  RemedyHunt(const RemedyOptions& options, const RunningPlan* running, RemedyMonitor* monitor)
      : options_(options), monitor_(monitor) {
    stop_ = [this] { return monitor_ != nullptr && monitor_->stop(); };
    if (running != nullptr) running_ = *running;
    if (running != nullptr) running_->tables = &tables_;
    answers_.emplace(tables_, running_ ? &*running_ : nullptr);
  }

  absl::StatusOr<RemedySearch> run(const Documents& documents) {
    if (const auto composed = composeProblem(documents, &tables_); !composed.ok()) return composed.status();
    const auto asItIs = answers_->compose(documents);
    if (asItIs == nullptr) return absl::InvalidArgumentError("the event cannot be composed");
    const Trial::Fit fit = asItIs->fit(options_.planConflicts, stop_);
    if (fit.fits) {
      search_.fits = true;
      return std::move(search_);
    }
    looking_.emplace(Looking{asItIs->documents(), *answers_, options_.tryConflicts, stop_});
    ahead_.emplace(
        Looking{asItIs->documents(), *answers_, options_.tryConflicts, [this] { return scout_.ended(); }});
    tries_.emplace(*looking_, options_.planConflicts, told());
    tryAll(*asItIs, clashesToTell(*asItIs, fit));
    scout_.end();
    lookAgain();
    return ranked();
  }

 private:
  ClashSearchOptions clashSearch(const Trial& trial, const Trial::Fit& fit) const {
    ClashSearchOptions options;
    options.stop = stop_;
    options.clashing = fit.clashing;
    options.begun = trial.begun();
    if (!fit.schedule.steps.empty()) options.suspects = suspectsOf(trial.composition(), fit.schedule);
    return options;
  }

  // While others are looked for, the scout tries what might help the first's dishes.
  std::vector<planning::WishClash> clashesToTell(const Trial& trial, const Trial::Fit& fit) {
    ClashSearchOptions options = clashSearch(trial, fit);
    options.found = [&](const planning::WishClash& clash) {
      search_.clashes.push_back(clashDocument(trial.composition(), clash));
      if (monitor_ != nullptr) monitor_->clashesKnown(search_.clashes);
      if (search_.clashes.size() == 1) sendScout(trial, dishesOf(clash));
    };
    return findWishClashes(trial.composition(), options);
  }

  void learn(const Trial& trial, const std::vector<planning::WishClash>& clashes) {
    for (const planning::WishClash& clash : clashes)
      tries_->known().add(dishIdsOf(trial.composition(), dishesOf(clash)), trial.documents());
  }

  void tryAll(const Trial& trial, const std::vector<planning::WishClash>& clashes) {
    if (clashes.empty()) return;
    scout_.end();
    learn(trial, clashes);
    const std::vector<Change> changes =
        proposals({trial.documents(), trial.composition(), clashes, trial.begun()});
    candidates_ += static_cast<int>(changes.size());
    const DishIds dishes = dishIdsOf(trial.composition(), dishesOf(clashes.front()));
    sendScout(changes, dishes);
    std::vector<Attempt> waiting;
    for (std::size_t k = 0; k < changes.size() && !enough(); ++k) {
      scout_.reached(k);
      if (auto attempt = tries_->alone(changes, k, dishes)) waiting.push_back(*std::move(attempt));
    }
    putTogether(std::move(waiting));
  }

  // Few changes are tried before many, then small ones before big ones.
  void putTogether(std::vector<Attempt> waiting) {
    for (std::size_t most = 2; most <= Tries::kMostChanges && !enough(); ++most) {
      if (most > kSomeChanges && search_.remedies.size() >= kSomeRemedies) return;
      std::stable_sort(waiting.begin(), waiting.end(),
                       [](const Attempt& a, const Attempt& b) { return a.size() < b.size(); });
      sendScout(waiting, most);
      std::vector<Attempt> next;
      for (std::size_t k = 0; k < waiting.size() && !enough(); ++k) {
        scout_.reached(k);
        if (tries_->needsMore(waiting[k], most)) next.push_back(std::move(waiting[k]));
      }
      waiting = std::move(next);
    }
  }

  Tries::Told told() {
    Tries::Told told;
    told.stop = stop_;
    told.tried = [this] {
      ++tried_;
      if (monitor_ != nullptr) monitor_->tried(tried_, candidates_);
    };
    told.learned = [this](const DishIds& dishes, const Documents& documents) {
      learned_.add(dishes, documents);
    };
    told.thoughtOf = [this](std::size_t changes) { candidates_ += static_cast<int>(changes); };
    told.fits = [this](const Attempt& attempt, const planning::Schedule& schedule) {
      keep(attempt, schedule);
    };
    return told;
  }

  void sendScout(const Trial& trial, const std::vector<int>& dishes) {
    if (dishes.empty()) return;
    scout_.end();
    const DishIds ids = dishIdsOf(trial.composition(), dishes);
    tries_->known().add(ids, trial.documents());
    // None of these is the first thread's: one in front that nobody looks at.
    std::vector<Change> changes(1);
    const std::vector<Change>& all = tries_->known().changesOf(ids);
    changes.insert(changes.end(), all.begin(), all.end());
    sendScout(std::move(changes), ids);
  }

  void sendScout(std::vector<Change> changes, const DishIds& dishes) {
    if (!options_.twoThreads) return;
    const auto scouting = std::make_shared<Scouting>(*tries_, *ahead_, scout_, learned_);
    const std::size_t count = changes.size();
    scout_.begin(count, [scouting, dishes, changes = std::move(changes)](std::size_t k) {
      scouting->come(k).alone(changes, k, dishes);
    });
  }

  void sendScout(const std::vector<Attempt>& attempts, std::size_t most) {
    if (!options_.twoThreads) return;
    const auto scouting = std::make_shared<Scouting>(*tries_, *ahead_, scout_, learned_);
    scout_.begin(attempts.size(), [scouting, attempts, most](std::size_t k) {
      Attempt attempt = attempts[k];
      scouting->come(k).needsMore(attempt, most);
    });
  }

  bool enough() const { return static_cast<int>(search_.remedies.size()) >= options_.most || stop_(); }

  void keep(const Attempt& attempt, const planning::Schedule& schedule) {
    Fitting fitting{answers_->compose(attempt.documents), attempt.changes, schedule};
    if (fitting.trial == nullptr) return;
    if (auto plan = soundPlan(fitting, options_, stop_)) return tell(remedyOf(fitting, *std::move(plan)));
    unsound_.push_back(std::move(fitting));
  }

  void lookAgain() {
    for (const Fitting& fitting : unsound_) {
      if (enough()) return;
      if (auto plan = soundPlanAnew(fitting, options_, stop_)) tell(remedyOf(fitting, *std::move(plan)));
    }
  }

  void tell(FoundRemedy remedy) {
    remedy.number = static_cast<int>(search_.remedies.size()) + 1;
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
  std::optional<RunningPlan> running_;
  std::optional<FitAnswers> answers_;
  std::optional<Looking> looking_;
  std::optional<Looking> ahead_;  // the scout's
  std::optional<Tries> tries_;
  std::vector<Fitting> unsound_;  // whose first plan the auditor did not pass
  int tried_ = 0;
  int candidates_ = 0;
  LearnedClashes learned_;
  Scout scout_;  // last, so that its thread ends before what it uses
};

}  // namespace

absl::StatusOr<RemedySearch> findRemedies(const Documents& documents, const RemedyOptions& options,
                                          RemedyMonitor* monitor, const RunningPlan* running) {
  return RemedyHunt(options, running, monitor).run(documents);
}

}  // namespace suppertide::compose
