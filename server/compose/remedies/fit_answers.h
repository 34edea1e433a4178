// Whether an event with some changes made fits, asked once of each.
//
// An answer depends on the documents alone, so that two threads may share them and nothing
// changes but the time it takes.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <string>

#include "server/compose/remedies/trial.h"

namespace suppertide::compose {

using DishIds = std::set<std::string>;

struct FitAnswer {
  bool fits = false;            // all dishes can be served in time; false when it took too long to tell
  planning::Schedule schedule;  // that serves most of them
  DishIds clashing;             // a few dishes that cannot all be served; empty when none are known
};

class FitAnswers {
 public:
  // Both as Trial::of() has them; they must outlive it.
  FitAnswers(BreadTables& tables, const RunningPlan* running) : tables_(tables), running_(running) {}

  // Null when they cannot be composed. One thread at a time composes.
  std::unique_ptr<Trial> compose(Documents documents);
  // `conflicts`: solver effort, the same for all questions of as many dishes. Who asks what somebody else
  // is asking waits for the answer. What was stopped is forgotten.
  FitAnswer of(const Documents& documents, std::int64_t conflicts, const std::function<bool()>& stop);

 private:
  struct Question {
    std::mutex asking;
    std::optional<FitAnswer> answer;  // guarded by asking
  };

  BreadTables& tables_;  // guarded by composing_
  const RunningPlan* running_;
  std::mutex composing_;
  std::mutex mutex_;
  std::map<std::string, Question> questions_;  // by planningKey(); guarded by mutex_
};

// All of the documents that a plan depends on and remedies change, as bytes.
std::string planningKey(const Documents& documents);

// The ids of dishes given by index.
DishIds dishIdsOf(const Composition& composition, const std::vector<int>& dishes);

}  // namespace suppertide::compose
