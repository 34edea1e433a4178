#include "server/compose/remedies/tries.h"

#include <utility>

namespace suppertide::compose {

Tries::Tries(const Tries& other, const Looking& looking, Told told)
    : looking_(&looking),
      wholeConflicts_(other.wholeConflicts_),
      told_(std::move(told)),
      known_(other.known_, looking),
      planned_(other.planned_),
      helped_(other.helped_) {}

std::optional<Attempt> Tries::alone(const std::vector<Change>& changes, std::size_t k,
                                    const DishIds& dishes) {
  const Change& change = changes[k];
  if (helped_.contains(change.group)) return std::nullopt;
  Attempt attempt = with({}, change);
  if (!mayHelp(changes, change, {}, dishes) || !helps(attempt, dishes)) return std::nullopt;
  helped_.insert(change.group);
  if (!needsMore(attempt, 1)) return std::nullopt;
  return attempt;
}

bool Tries::needsMore(Attempt& attempt, std::size_t most) {
  while (!told_.stop()) {
    if (const KnownClash* open = known_.openIn(attempt.documents)) {
      if (attempt.changes.size() >= most && most < kMostChanges) return true;
      if (!addSmallest(*open, attempt)) return false;
      continue;
    }
    if (!planned_.insert(planningKey(attempt.documents)).second) return false;  // the same in another order
    const FitAnswer answer = looking_->answers.of(attempt.documents, wholeConflicts_, looking_->stop);
    if (answer.fits) told_.fits(attempt, answer.schedule);
    if (answer.fits || answer.clashing.empty()) return false;
    known_.add(answer.clashing, attempt.documents);
    told_.learned(answer.clashing, attempt.documents);
  }
  return false;
}

bool Tries::helps(const Attempt& attempt, const DishIds& dishes) {
  told_.tried();
  return known_.fit(attempt.documents, dishes);
}

bool Tries::addSmallest(const KnownClash& clash, Attempt& attempt) {
  told_.thoughtOf(clash.changes.size());
  for (const Change& change : clash.changes) {
    if (told_.stop()) return false;
    if (attempt.hasAsMuch(change) || !mayHelp(clash.changes, change, attempt, clash.dishes)) continue;
    Attempt next = with(attempt, change);
    if (next.changes.size() > kMostChanges || !helps(next, clash.dishes)) continue;
    attempt = std::move(next);
    return true;
  }
  return false;
}

// False when even the biggest change of its group does not help, and would if this one did.
bool Tries::mayHelp(const std::vector<Change>& all, const Change& change, const Attempt& attempt,
                    const DishIds& dishes) {
  if (!change.biggerAllowsMore) return true;
  const Change& biggest = biggestLike(change, all);
  return &biggest == &change || helps(with(attempt, biggest), dishes);
}

}  // namespace suppertide::compose
