#include "server/bread/credible_fit.h"

namespace suppertide::bread {
namespace {

using Vector = std::vector<double>;
using Matrix = std::vector<Vector>;

constexpr int kMostRounds = 14;
constexpr double kSettled = 1e-6;     // of the cost
constexpr double kDifference = 0.02;  // standard deviations, for slopes: above the solver's own grain

// Solves the symmetric, positive definite system by elimination.
Vector solve(Matrix m, Vector right) {
  const std::size_t count = right.size();
  for (std::size_t i = 0; i < count; ++i) {
    for (std::size_t j = i + 1; j < count; ++j) {
      const double factor = m[j][i] / m[i][i];
      for (std::size_t k = i; k < count; ++k) m[j][k] -= factor * m[i][k];
      right[j] -= factor * right[i];
    }
  }
  for (std::size_t i = count; i-- > 0;) {
    for (std::size_t k = i + 1; k < count; ++k) right[i] -= m[i][k] * right[k];
    right[i] /= m[i][i];
  }
  return right;
}

double squares(std::span<const double> values) {
  double sum = 0;
  for (double value : values) sum += value * value;
  return sum;
}

class Fit {
 public:
  Fit(std::size_t count, const Misses& misses) : misses_(misses), z_(count), seen_(misses(z_)) {}

  CredibleFit run() {
    double damping = 0;
    linearise();
    for (int round = 0; round < kMostRounds; ++round) {
      Matrix damped = curvature_;
      for (std::size_t i = 0; i < z_.size(); ++i) damped[i][i] *= 1 + damping;
      Vector next = solve(damped, downhill_);
      for (std::size_t i = 0; i < z_.size(); ++i) next[i] += z_[i];
      Vector nextSeen = misses_(next);
      const double cost = squares(z_) + squares(seen_);
      const double gain = cost - squares(next) - squares(nextSeen);
      if (gain < 0) {
        if (gain > -kSettled * (1 + cost)) break;
        damping = damping > 0 ? damping * 5 : 0.5;
        continue;
      }
      z_ = std::move(next);
      seen_ = std::move(nextSeen);
      linearise();
      damping /= 5;
      if (gain < kSettled * (1 + cost)) break;
    }
    return {z_, inverse()};
  }

 private:
  void linearise() {
    const std::size_t count = z_.size();
    Matrix slopes;
    for (std::size_t i = 0; i < count; ++i) {
      Vector more = z_, less = z_;
      more[i] += kDifference;
      less[i] -= kDifference;
      Vector slope = misses_(more);
      const Vector atLess = misses_(less);
      for (std::size_t o = 0; o < slope.size(); ++o) slope[o] = (slope[o] - atLess[o]) / (2 * kDifference);
      slopes.push_back(std::move(slope));
    }
    curvature_.assign(count, Vector(count, 0.0));
    downhill_.assign(count, 0.0);
    for (std::size_t i = 0; i < count; ++i) {
      curvature_[i][i] = 1;
      downhill_[i] = -z_[i];
      for (std::size_t o = 0; o < seen_.size(); ++o) {
        downhill_[i] -= slopes[i][o] * seen_[o];
        for (std::size_t j = 0; j < count; ++j) curvature_[i][j] += slopes[i][o] * slopes[j][o];
      }
    }
  }

  Matrix inverse() const {
    Matrix rows;
    for (std::size_t i = 0; i < z_.size(); ++i) {
      Vector unit(z_.size(), 0.0);
      unit[i] = 1;
      rows.push_back(solve(curvature_, unit));
    }
    return rows;
  }

  const Misses& misses_;
  Vector z_;
  Vector seen_;  // the misses at z_
  Matrix curvature_;
  Vector downhill_;
};

}  // namespace

CredibleFit mostCredible(std::size_t count, const Misses& misses) {
  return Fit(count, misses).run();
}

}  // namespace suppertide::bread
