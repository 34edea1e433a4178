#include "server/kitchen/scaling.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "server/kitchen/rack_answer.h"

namespace suppertide::kitchen {
namespace {

// Cut in two without a thought. Common practice, no source.
constexpr std::array<std::string_view, 8> kHalved = {"yolk",  "white",  "lemon",   "lime",
                                                     "onion", "orange", "shallot", "apple"};

BakeMinutes inOrder(double a, double b) {
  return {std::min(a, b), std::max(a, b)};
}

}  // namespace

double wholePieces(std::string_view name, double exact) {
  if (exact <= 0) return 0;
  const bool halved = std::any_of(kHalved.begin(), kHalved.end(), [&](std::string_view word) {
    return name.find(word) != std::string_view::npos;
  });
  const double step = halved ? 0.5 : 1;
  return std::max(step, std::round(exact / step) * step);
}

double halfPackets(double exact, double size) {
  constexpr double kFarOff = 0.1;
  const double packets = std::round(2 * exact / size) / 2;
  return std::abs(packets * size - exact) <= kFarOff * exact ? packets : 0;
}

BakeMinutes minutesAtMass(double minutes, double massFactor) {
  return inOrder(minutes * std::cbrt(massFactor), minutes * std::pow(massFactor, 2.0 / 3));
}

BakeMinutes minutesOfRoast(double minutes, double massFactor) {
  return inOrder(minutes, minutes * std::pow(massFactor, 2.0 / 3));
}

BakeMinutes minutesAtDepth(double minutes, double depthFactor) {
  return inOrder(minutes * depthFactor, minutes * depthFactor * depthFactor);
}

PanLoads loadsOf(const Oven& oven, const Pan& pan, int count) {
  PanLoads loads;
  const auto goes = [&](int atOnce) { return (count + atOnce - 1) / atOnce; };
  int mayBe = 0;
  Pan load = pan;
  for (load.count = std::min(count, kMostPans); load.count > 0 && loads.count == 0; --load.count) {
    const RackAnswer answer = rackAnswer(oven, {load});
    if (answer == RackAnswer::kUnproven) mayBe = std::max(mayBe, load.count);
    if (answer == RackAnswer::kYes) loads.count = goes(load.count);
  }
  loads.fewerMayDo = mayBe > 0 && (loads.count == 0 || goes(mayBe) < loads.count);
  return loads;
}

}  // namespace suppertide::kitchen
