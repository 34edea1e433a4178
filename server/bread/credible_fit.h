// The most credible case, given a prior and what was seen: damped least squares.
#pragma once

#include <functional>
#include <span>
#include <vector>

namespace suppertide::bread {

struct CredibleFit {
  std::vector<double> z;                        // most credible
  std::vector<std::vector<double>> covariance;  // of z, to first order there
};

// How far each observation lies from what `z` predicts, in its own standard deviations.
using Misses = std::function<std::vector<double>(std::span<const double> z)>;

// `z` has `count` entries, each standard normal before anything was seen. Levenberg's
// method with slopes by central differences. Cost: about 10 * (2 * count + 1) calls.
CredibleFit mostCredible(std::size_t count, const Misses& misses);

}  // namespace suppertide::bread
