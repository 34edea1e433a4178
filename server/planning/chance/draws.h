// What nature draws: for each evening and step, the real length over the planned one.
//
// Counter-based: a draw depends on seed, step and evening alone.
#pragma once

#include <array>
#include <cstdint>
#include <utility>
#include <vector>

#include "server/planning/chance/chances.h"

namespace suppertide::planning {

// Evenings are simulated side by side in blocks of this many.
inline constexpr int kLanes = 8;
using Lanes = std::array<float, kLanes>;

// Quantiles of a PERT distribution (a scaled beta with weight 4 on the likely
// value) over [least, most] with likely value 1.
class SpreadQuantiles {
 public:
  SpreadQuantiles(double least, double most);
  // `part` in [0, 1).
  float at(double part) const;

 private:
  static constexpr int kSteps = 256;
  std::array<float, kSteps + 1> knots_;
};

class Draws {
 public:
  Draws(const Problem& problem, const Schedule& schedule, std::uint64_t seed);
  bool varies(int step) const;
  // Of evenings `first` to `first` + kLanes - 1; call for a block before factors().
  void beginBlock(std::int64_t first);
  Lanes factors(int step) const;

 private:
  struct StepSpread {
    int quantiles = -1;  // index into tables_; -1: always as planned
    const Spread* spread = nullptr;
    std::uint64_t key = 0;
  };
  int tableFor(double least, double most);

  const Problem& problem_;
  std::uint64_t seed_;
  std::vector<StepSpread> steps_;
  std::vector<SpreadQuantiles> tables_;
  std::vector<std::pair<double, double>> tableKeys_;
  std::int64_t first_ = 0;
  std::vector<std::array<double, kLanes>> unknowns_;  // sigma times a normal draw, by unknown
};

// As in chances.h, with draws made before: for many schedules with the same modes and dishes served.
Chances chancesOf(const Problem& problem, const Schedule& schedule, const EveningOptions& options,
                  Draws& draws);

}  // namespace suppertide::planning
