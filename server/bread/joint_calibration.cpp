#include "server/bread/joint_calibration.h"

#include <algorithm>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"
#include "server/bread/credible_fit.h"

namespace suppertide::bread {
namespace {

double valueOf(const Effect& effect, double z) {
  return effect.mean + effect.spread * z;
}

// The observation as it would be if the effects were as `z` says: moved into its own
// dough and places, with what remains of the starter as a shift.
double missUnder(std::span<const Effect> effects, std::span<const double> z, const JointObservation& joint) {
  Observation seen = joint.seen;
  Shift shift;
  for (std::size_t e = 0; e < effects.size(); ++e) {
    const Effect& effect = effects[e];
    const double value = valueOf(effect, z[e]);
    switch (effect.kind) {
      case EffectKind::kVigour:
        if (effect.subject == joint.starter) shift.logVigour = value;
        break;
      case EffectKind::kLag:
        if (effect.subject == joint.starter) shift.lag = std::max(-1.0, value);
        break;
      case EffectKind::kPlace:
        for (std::size_t s = 0; s < joint.places.size(); ++s) {
          if (effect.subject == joint.places[s]) seen.stays[s].air = seen.stays[s].air.warmerBy(value);
        }
        break;
      case EffectKind::kDough:
        if (effect.subject == joint.dough) seen.kind.gasFactor *= std::exp(value);
        break;
    }
  }
  return missOf(seen, shift);
}

// What the covariance of all says of one.
LearntEffect verdict(const Effect& before, std::size_t own, const CredibleFit& fit) {
  LearntEffect learnt;
  learnt.effect = before;
  learnt.effect.mean = valueOf(before, fit.z[own]);
  learnt.spreadShare = std::sqrt(std::max(0.0, fit.covariance[own][own]));
  learnt.effect.spread = before.spread * learnt.spreadShare;
  for (std::size_t e = 0; e < fit.z.size(); ++e) {
    if (e == own) continue;
    const double correlation =
        fit.covariance[own][e] / std::sqrt(fit.covariance[own][own] * fit.covariance[e][e]);
    if (std::abs(correlation) <= std::abs(learnt.correlation) + 1e-9) continue;
    learnt.correlation = correlation;
    learnt.tiedTo = static_cast<int>(e);
  }
  const bool isTied = std::abs(learnt.correlation) >= kTiedCorrelation;
  if (learnt.spreadShare <= (isTied ? kToldThoughTied : kToldShare)) {
    learnt.telling = Telling::kTold;
  } else if (isTied) {
    learnt.telling = Telling::kTied;
  }
  return learnt;
}

}  // namespace

absl::StatusOr<std::vector<LearntEffect>> learnTogether(std::span<const Effect> before,
                                                        std::span<const JointObservation> observations) {
  for (std::size_t i = 0; i < observations.size(); ++i) {
    const JointObservation& joint = observations[i];
    if (absl::Status status = checkObservation(joint.seen, i); !status.ok()) return status;
    if (joint.places.size() != joint.seen.stays.size()) {
      return absl::InvalidArgumentError(absl::StrCat("learn from observation ", i, ": ", joint.places.size(),
                                                     " places for ", joint.seen.stays.size(), " stays"));
    }
  }
  const CredibleFit fit = mostCredible(before.size(), [&](std::span<const double> z) {
    std::vector<double> misses;
    for (const JointObservation& joint : observations) misses.push_back(missUnder(before, z, joint));
    return misses;
  });
  std::vector<LearntEffect> learnt;
  for (std::size_t e = 0; e < before.size(); ++e) learnt.push_back(verdict(before[e], e, fit));
  return learnt;
}

}  // namespace suppertide::bread
