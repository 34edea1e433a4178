#include "server/planning/chance/draws.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace suppertide::planning {
namespace {

constexpr std::uint64_t kGolden = 0x9E3779B97F4A7C15ULL;
constexpr std::uint64_t kUnknownStream = 0x756E6B6E6F776E00ULL;

// The output function of splitmix64 (Steele, Lea, Flood 2014).
std::uint64_t mixed(std::uint64_t value) {
  value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9ULL;
  value = (value ^ (value >> 27)) * 0x94D049BB133111EBULL;
  return value ^ (value >> 31);
}

std::uint64_t keyOf(std::uint64_t seed, std::uint64_t stream) {
  return mixed(mixed(seed + kGolden) + (stream + 1) * kGolden);
}

// In [0, 1).
double drawn(std::uint64_t key, std::int64_t counter) {
  const std::uint64_t bits = mixed(key + static_cast<std::uint64_t>(counter + 1) * kGolden);
  return static_cast<double>(bits >> 11) * 0x1.0p-53;
}

double normal(std::uint64_t key, std::int64_t counter) {
  const double radius = std::sqrt(-2 * std::log(1 - drawn(key, 2 * counter)));
  return radius * std::cos(2 * std::numbers::pi * drawn(key, 2 * counter + 1));
}

}  // namespace

SpreadQuantiles::SpreadQuantiles(double least, double most) {
  constexpr int kSlices = 1024;
  const double width = most - least;
  const double up = 4 * (1 - least) / width;
  const double down = 4 * (most - 1) / width;
  std::array<double, kSlices + 1> below{};
  for (int s = 0; s < kSlices; ++s) {
    const double x = (s + 0.5) / kSlices;
    below[static_cast<std::size_t>(s) + 1] =
        below[static_cast<std::size_t>(s)] + std::pow(x, up) * std::pow(1 - x, down);
  }
  std::size_t slice = 0;
  for (int k = 0; k <= kSteps; ++k) {
    const double wanted = below[kSlices] * k / kSteps;
    while (slice + 1 < kSlices && below[slice + 1] < wanted) ++slice;
    const double inside = (wanted - below[slice]) / (below[slice + 1] - below[slice]);
    knots_[static_cast<std::size_t>(k)] =
        static_cast<float>(least + width * (static_cast<double>(slice) + inside) / kSlices);
  }
}

float SpreadQuantiles::at(double part) const {
  const double position = part * kSteps;
  const auto knot = static_cast<std::size_t>(position);
  const auto beyond = static_cast<float>(position - static_cast<double>(knot));
  return knots_[knot] + beyond * (knots_[knot + 1] - knots_[knot]);
}

Draws::Draws(const Problem& problem, const Schedule& schedule, std::uint64_t seed)
    : problem_(problem), seed_(seed), steps_(problem.steps.size()), unknowns_(problem.unknowns.size()) {
  for (std::size_t i = 0; i < problem.steps.size(); ++i) {
    const Step& step = problem.steps[i];
    if (schedule.unserved[static_cast<std::size_t>(step.dish)]) continue;
    if (step.pin.start && step.pin.end) continue;  // it has happened
    const Spread& spread = step.modes[static_cast<std::size_t>(schedule.steps[i].mode)].spread;
    steps_[i].spread = &spread;
    steps_[i].key = keyOf(seed, i);
    if (spread.least < spread.most) steps_[i].quantiles = tableFor(spread.least, spread.most);
  }
}

int Draws::tableFor(double least, double most) {
  const auto found = std::find(tableKeys_.begin(), tableKeys_.end(), std::pair(least, most));
  if (found != tableKeys_.end()) return static_cast<int>(found - tableKeys_.begin());
  tableKeys_.emplace_back(least, most);
  tables_.emplace_back(least, most);
  return static_cast<int>(tables_.size()) - 1;
}

bool Draws::varies(int step) const {
  const StepSpread& own = steps_[static_cast<std::size_t>(step)];
  return own.spread != nullptr && (own.quantiles >= 0 || !own.spread->follows.empty());
}

void Draws::beginBlock(std::int64_t first) {
  first_ = first;
  for (std::size_t u = 0; u < unknowns_.size(); ++u) {
    const std::uint64_t key = keyOf(seed_, kUnknownStream + u);
    for (int lane = 0; lane < kLanes; ++lane)
      unknowns_[u][static_cast<std::size_t>(lane)] = problem_.unknowns[u].sigma * normal(key, first + lane);
  }
}

Lanes Draws::factors(int step) const {
  Lanes factors;
  factors.fill(1);
  const StepSpread& own = steps_[static_cast<std::size_t>(step)];
  if (own.quantiles >= 0) {
    const SpreadQuantiles& table = tables_[static_cast<std::size_t>(own.quantiles)];
    for (int lane = 0; lane < kLanes; ++lane)
      factors[static_cast<std::size_t>(lane)] = table.at(drawn(own.key, first_ + lane));
  }
  for (const Spread::Follows& follows : own.spread->follows) {
    const auto& draws = unknowns_[static_cast<std::size_t>(follows.unknown)];
    for (std::size_t lane = 0; lane < kLanes; ++lane)
      factors[lane] *= static_cast<float>(std::exp(follows.power * draws[lane]));
  }
  return factors;
}

}  // namespace suppertide::planning
