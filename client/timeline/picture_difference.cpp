#include "client/timeline/picture_difference.h"

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

int goneSteps(const Picture& before, const Picture& next) {
  const Stands now = standsOf(next);
  int gone = 0;
  for (const auto& [id, stand] : standsOf(before)) gone += now.count(id) == 0 ? 1 : 0;
  return gone;
}

}  // namespace suppertide
