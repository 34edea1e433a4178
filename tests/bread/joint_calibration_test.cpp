#include "server/bread/joint_calibration.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

// Two starters, two rooms, one recipe: indices of their effects.
enum { kVigourA, kVigourB, kLagA, kKitchen, kCellar, kRolls, kEffects };
constexpr int kPlain = 7;  // a levain's own flour, whose effect is known

std::vector<Effect> unsure() {
  const Uncertainty usual;
  return {{EffectKind::kVigour, 0, 0, usual.logVigour},  {EffectKind::kVigour, 1, 0, usual.logVigour},
          {EffectKind::kLag, 0, 0, usual.lag},           {EffectKind::kPlace, 0, 0, usual.placeKelvin},
          {EffectKind::kPlace, 1, 0, usual.placeKelvin}, {EffectKind::kDough, 0, 0, kDoughSpread}};
}

// What happens when these effects have these values; read without error unless `error` is given.
class Household {
 public:
  explicit Household(std::vector<double> truth) : truth_(std::move(truth)) {}

  JointObservation jar(int starter, int room, double parts, double hours, double error = 0) const {
    Observation o{.kind = halfWholeLevain(), .start = fed(parts, 22), .stays = {always(22)}, .hours = hours};
    return read({o, starter, kPlain, {room}}, error);
  }
  JointObservation rolls(int starter, int room, double hours, double error = 0) const {
    Observation o{.kind = enriched(), .start = enrichedMixed(24), .stays = {always(22)}, .hours = hours};
    return read({o, starter, 0, {room}}, error);
  }
  JointObservation thermometer(int room, double error = 0) const {
    JointObservation joint = rolls(0, room, 7);
    joint.seen.seen = Seen::kDoughCelsius;
    joint.seen.spread = kThermometerSpread;
    const Shift shift = shiftOf(joint);
    joint.seen.value =
        stateAfter(joint.seen.kind, joint.seen.start, 0, shifted(joint.seen.stays, shift), 7).celsius +
        kThermometerSpread * error;
    return joint;
  }

 private:
  Shift shiftOf(const JointObservation& joint) const {
    return {truth_[joint.starter == 0 ? kVigourA : kVigourB], joint.starter == 0 ? truth_[kLagA] : 0,
            truth_[joint.places[0] == 0 ? kKitchen : kCellar]};
  }
  JointObservation read(JointObservation joint, double error) const {
    DoughKind kind = joint.seen.kind;
    if (joint.dough == 0) kind.gasFactor *= std::exp(truth_[kRolls]);
    const Shift shift = shiftOf(joint);
    joint.seen.value = riseOf(kind, stateAfter(kind, shifted(joint.seen.start, shift), 0,
                                               shifted(joint.seen.stays, shift), joint.seen.hours)) +
                       kRiseSpread * error;
    return joint;
  }

  std::vector<double> truth_;
};

TEST(JointCalibrationTest, OneSlowDoughSpeaksAgainstAllAlikeAndSaysSo) {
  const Household household({-0.2, 0, 0, 0, 0, 0});
  const auto learnt = *learnTogether(unsure(), std::vector{household.rolls(0, 0, 4)});
  EXPECT_EQ(learnt[kVigourA].telling, Telling::kTied);
  EXPECT_LT(learnt[kVigourA].correlation, -0.2);
  EXPECT_NE(learnt[kRolls].telling, Telling::kTold);
  EXPECT_EQ(learnt[kVigourB].telling, Telling::kUntold);
  EXPECT_EQ(learnt[kVigourB].spreadShare, 1);
  EXPECT_EQ(learnt[kCellar].effect.mean, 0);
  EXPECT_LT(learnt[kVigourA].effect.mean, -0.01) << "some of the blame goes to each";
  EXPECT_LT(learnt[kRolls].effect.mean, -0.01);
  EXPECT_LT(learnt[kKitchen].effect.mean, -0.01);
}

TEST(JointCalibrationTest, MixedCompanyTellsStarterPlaceAndDoughApart) {
  const std::vector<double> truth = {0.25, -0.2, 0.2, 0.8, -0.7, -0.2};
  const Household home(truth);
  std::vector<JointObservation> seen;
  for (int room : {0, 1}) {
    for (int again = 0; again < 3; ++again) seen.push_back(home.thermometer(room));
    for (double hours : {3.0, 4.5}) seen.push_back(home.jar(0, room, 1, hours));
    for (double hours : {8.0, 9.0}) seen.push_back(home.jar(0, room, 5, hours));
    for (double hours : {6.0, 7.0}) seen.push_back(home.jar(1, room, 1, hours));
    for (double hours : {3.0, 4.0, 5.0}) seen.push_back(home.rolls(0, room, hours));
  }
  const auto learnt = *learnTogether(unsure(), seen);
  for (int e = 0; e < kEffects; ++e) {
    SCOPED_TRACE(e);
    const LearntEffect& effect = learnt[static_cast<std::size_t>(e)];
    EXPECT_LE(effect.spreadShare, kToldShare);
    EXPECT_NE(effect.telling, Telling::kUntold);
    const double wanted = truth[static_cast<std::size_t>(e)];
    EXPECT_NEAR(effect.effect.mean, wanted, 0.5 * std::abs(wanted));
    EXPECT_NEAR(effect.effect.mean, wanted, 1.3 * effect.effect.spread) << "the prior holds it back";
  }
}

TEST(JointCalibrationTest, SimulatedHouseholdsAreCoveredFourInFive) {
  constexpr int kHouseholds = 300;
  int covered[kEffects] = {};
  for (std::uint64_t seed = 1; seed <= kHouseholds; ++seed) {
    std::mt19937_64 random(seed);
    std::normal_distribution<double> normal;
    std::vector<double> truth;
    for (const Effect& effect : unsure()) truth.push_back(effect.spread * normal(random));
    const Household home(truth);
    const auto off = [&] { return normal(random); };
    std::vector<JointObservation> seen = {home.thermometer(0, off()),   home.jar(0, 0, 1, 5, off()),
                                          home.jar(0, 1, 5, 10, off()), home.jar(1, 1, 2, 7, off()),
                                          home.rolls(0, 0, 4, off()),   home.rolls(1, 1, 5, off())};
    std::erase_if(seen, [](const JointObservation& joint) { return joint.seen.value <= 0; });
    const auto learnt = *learnTogether(unsure(), seen);
    for (std::size_t e = 0; e < kEffects; ++e) {
      if (std::abs(learnt[e].effect.mean - truth[e]) <= 1.2816 * learnt[e].effect.spread) ++covered[e];
    }
  }
  for (int count : covered) {
    EXPECT_GE(count, kHouseholds * 0.73);  // 0.8 less three standard errors of 300
    EXPECT_LE(count, kHouseholds * 0.87);
  }
}

TEST(JointCalibrationTest, RefusesPlacesThatDoNotMatchTheStays) {
  JointObservation joint = Household(std::vector<double>(kEffects, 0.0)).rolls(0, 0, 4);
  joint.places = {};
  EXPECT_THAT(std::string(learnTogether(unsure(), {&joint, 1}).status().message()),
              testing::HasSubstr("observation 0: 0 places for 1 stays"));
}

}  // namespace
}  // namespace suppertide::bread
