#include "server/compose/remedies/attempt.h"

#include <algorithm>
#include <numeric>

namespace suppertide::compose {

int Attempt::size() const {
  return std::accumulate(changes.begin(), changes.end(), 0,
                         [](int sum, const Change& change) { return sum + change.what.size(); });
}

bool Attempt::hasAsMuch(const Change& change) const {
  return std::any_of(changes.begin(), changes.end(), [&](const Change& other) {
    return other.group == change.group && other.what.size() >= change.what.size();
  });
}

Attempt withChange(const Attempt& attempt, const Change& change, const Documents& asItIs) {
  Attempt next{attempt.changes, asItIs};
  std::erase_if(next.changes, [&](const Change& other) { return other.group == change.group; });
  next.changes.push_back(change);
  for (const Change& each : next.changes) each.apply(next.documents);
  return next;
}

const Change& biggestLike(const Change& change, const std::vector<Change>& all) {
  return *std::find_if(all.rbegin(), all.rend(),
                       [&](const Change& other) { return other.group == change.group; });
}

}  // namespace suppertide::compose
