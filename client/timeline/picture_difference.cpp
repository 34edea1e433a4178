#include "client/timeline/picture_difference.h"

#include <algorithm>
#include <map>

namespace suppertide {
namespace {

// Where a step stands: its time and its lanes.
struct Stand {
  double start = 0;
  double length = 0;
  QString lanes;
  friend bool operator==(const Stand&, const Stand&) = default;
};
using Stands = std::map<QString, Stand>;

Stands standsOf(const Picture& picture) {
  Stands stands;
  for (const Lane& lane : picture.lanes) {
    for (const StepRow& step : lane.steps) {
      Stand& stand = stands[step.id];
      stand.start = step.start;
      stand.length = step.length;
      stand.lanes += lane.id + QLatin1Char(' ');
    }
  }
  return stands;
}

}  // namespace

QSet<QString> movedSteps(const Picture& before, const Picture& next) {
  const Stands old = standsOf(before);
  QSet<QString> moved;
  for (const auto& [id, stand] : standsOf(next)) {
    const auto found = old.find(id);
    if (found == old.end() || !(found->second == stand)) moved.insert(id);
  }
  return moved;
}

void addGhosts(const Picture& before, const QSet<QString>& ids, Picture& next) {
  std::map<QString, const Lane*> old;
  for (const Lane& lane : before.lanes) old[lane.id] = &lane;
  for (Lane& lane : next.lanes) {
    lane.ghosts = {};
    const auto was = old.find(lane.id);
    if (was == old.end()) continue;
    for (const StepRow& step : was->second->steps) {
      if (ids.contains(step.id))
        lane.ghosts.list.append({step.start, step.limit(), std::min(step.subRow, lane.subRowCount - 1)});
    }
  }
}

int goneSteps(const Picture& before, const Picture& next) {
  const Stands now = standsOf(next);
  int gone = 0;
  for (const auto& [id, stand] : standsOf(before)) gone += now.count(id) == 0 ? 1 : 0;
  return gone;
}

}  // namespace suppertide
