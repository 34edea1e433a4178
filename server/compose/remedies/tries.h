// Changes tried on an event until all its dishes fit, alone and made together.
//
// A change is tried on the few dishes that clash, then on the whole event; each clash that is left
// asks for the smallest change that helps there.
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "server/compose/remedies/attempt.h"
#include "server/compose/remedies/known_clashes.h"

namespace suppertide::compose {

class Tries {
 public:
  struct Told {
    std::function<bool()> stop;                                           // asked between questions
    std::function<void()> tried;                                          // a change, on some dishes
    std::function<void(std::size_t)> thoughtOf;                           // so many more changes
    std::function<void(const DishIds&, const Documents&)> learned;        // these clash in these documents
    std::function<void(const Attempt&, const planning::Schedule&)> fits;  // all dishes, with its changes
  };

  static constexpr std::size_t kMostChanges = 5;  // made together

  // `wholeConflicts`: solver effort of a question about all dishes.
  Tries(const Looking& looking, std::int64_t wholeConflicts, Told told)
      : looking_(&looking), wholeConflicts_(wholeConflicts), told_(std::move(told)), known_(looking) {}
  // As far as `other` is, for another who looks.
  Tries(const Tries& other, const Looking& looking, Told told);

  KnownClashes& known() { return known_; }

  // The `k`th of the changes (smallest first) on the dishes of a clash, then on all. It comes back when it
  // helps those dishes but more changes are needed.
  std::optional<Attempt> alone(const std::vector<Change>& changes, std::size_t k, const DishIds& dishes);
  // Adds the smallest changes that help to what still clashes, up to `most` in all. True when more are
  // needed; else it has come to an end.
  bool needsMore(Attempt& attempt, std::size_t most);

 private:
  bool helps(const Attempt& attempt, const DishIds& dishes);
  bool addSmallest(const KnownClash& clash, Attempt& attempt);
  bool mayHelp(const std::vector<Change>& all, const Change& change, const Attempt& attempt,
               const DishIds& dishes);
  Attempt with(const Attempt& attempt, const Change& change) const {
    return withChange(attempt, change, looking_->asItIs);
  }

  const Looking* looking_;
  std::int64_t wholeConflicts_;
  Told told_;
  KnownClashes known_;
  std::set<std::string> planned_;  // planningKey() of the events that were asked about as a whole
  std::set<std::string> helped_;   // groups of changes
};

}  // namespace suppertide::compose
