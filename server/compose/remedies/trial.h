// One set of documents, planned as far as a remedy needs it.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "server/compose/bread_tables.h"
#include "server/compose/composition.h"
#include "server/compose/running_problem.h"
#include "server/planning/solver/solver.h"
#include "suppertide/v1/plan.pb.h"

namespace suppertide::compose {

// The event with these of its dishes alone; ids that it does not have are no matter.
Documents onlyDishes(Documents documents, const std::set<std::string>& dishIds);

// Owns changed documents and their composition, which points into them. Of an event that is under way it
// plans what is left: what has happened is fixed, and nothing that waits begins before now.
class Trial {
 public:
  // Null when they cannot be composed. `running`: of an event under way, with `tables` in it; else null.
  static std::unique_ptr<Trial> of(Documents documents, BreadTables& tables, const RunningPlan* running);

  const Documents& documents() const { return documents_; }
  const Composition& composition() const { return under_ ? *under_->composition : *composition_; }
  // By step: it has begun, is over or was skipped. Empty before an event is under way.
  const std::vector<bool>& begun() const { return begun_; }

  struct Fit {
    bool fits = false;            // all dishes can be served in time; false when it took too long to tell
    planning::Schedule schedule;  // that serves most of them
    std::vector<int> clashing;    // a few dishes that cannot all be served; empty when none are known
  };
  Fit fit(std::int64_t conflicts, const std::function<bool()>& stop) const;
  // Whether `schedule`, perhaps made for other documents, serves all its dishes in time and breaks no rule.
  bool serves(const planning::Schedule& schedule) const;

  // A good plan, not proven best, from one that serves every dish in time: as many
  // rounds of taking dishes out and putting them back. Under way, rather the plan that runs mended.
  std::optional<planning::Outcome> bettered(const planning::Schedule& schedule, std::uint64_t seed,
                                            int rounds, const std::function<bool()>& stop) const;
  // The best that a search of so many conflicts finds.
  std::optional<planning::Outcome> planned(std::uint64_t seed, std::int64_t conflicts,
                                           const std::function<bool()>& stop) const;
  // As a document, with what moves when the event is under way.
  v1::Plan document(const planning::Outcome& outcome, int evenings) const;

 private:
  planning::Problem inTime() const;
  explicit Trial(Documents documents) : documents_(std::move(documents)) {}

  Documents documents_;
  std::optional<Composition> composition_;  // before the event is under way
  std::unique_ptr<RunningProblem> under_;   // while it is
  planning::Remaining remains_;
  std::vector<bool> begun_;
  const RunningPlan* running_ = nullptr;
};

}  // namespace suppertide::compose
