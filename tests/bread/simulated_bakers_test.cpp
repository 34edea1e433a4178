// Bakers whose starters, rooms and eyes are known to the test and not to the fit.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "server/bread/calibration.h"
#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

constexpr double kNinthDecile = 1.2816;
constexpr int kStarters = 1000;

class SimulatedBaker {
 public:
  explicit SimulatedBaker(std::uint64_t seed) : random_(seed) {
    const Uncertainty usual;
    truth_ = {usual.logVigour * normal(), std::max(-1.0, usual.lag * normal()), usual.placeKelvin * normal()};
  }

  const Shift& truth() const { return truth_; }
  double normal() { return std::normal_distribution<double>()(random_); }

  // A jar fed 1:parts:parts in a room said to have `celsius`; nothing read from it yet.
  static Observation jar(double parts, double celsius, double hours) {
    return {
        .kind = halfWholeLevain(), .start = fed(parts, celsius), .stays = {always(celsius)}, .hours = hours};
  }

  DoughState trulyAfter(const Observation& o) const {
    return stateAfter(o.kind, shifted(o.start, truth_), o.startHour, shifted(o.stays, truth_), o.hours);
  }

  Observation riseRead(Observation o) {
    o.value = riseOf(o.kind, trulyAfter(o)) + kRiseSpread * normal();
    return o;
  }
  Observation thermometerRead(Observation o) {
    o.seen = Seen::kDoughCelsius;
    o.spread = kThermometerSpread;
    o.value = trulyAfter(o).celsius + o.spread * normal();
    return o;
  }
  Observation peakSeen(Observation o) {
    o.seen = Seen::kPeakHours;
    o.spread = kPeakSpreadHours;
    const double peak = forecast(o.kind, shifted(o.start, truth_), 0, shifted(o.stays, truth_),
                                 {kNoHighRise, kNoHighRise, kNoHighRise, 1}, {0, o.hours, 0})
                            .peakHour;
    o.value = std::clamp(peak + o.spread * normal(), 0.1, o.hours);
    return o;
  }
  Observation pokeFelt(const Observation& o, const Stage& stage) {
    const double felt = riseOf(o.kind, trulyAfter(o)) + kPokeSpread * normal();
    if (felt < stage.lowRise) return poked(o, Poke::kSpringsBack, stage);
    return poked(o, felt > stage.highRise ? Poke::kCollapses : Poke::kRecedesSlowly, stage);
  }

 private:
  std::mt19937_64 random_;
  Shift truth_;
};

struct Score {
  int bandCovers = 0;
  int vigourCovers = 0;
  double widthBefore = 0;  // summed, hours
  double widthAfter = 0;
  double missBefore = 0;  // of the likely hour, summed
  double missAfter = 0;
};

double widthOf(const ForecastBand& band) {
  return band.slow->hours.start - band.fast->hours.start;
}

// After `observations`, the next feeding's doubling: what the band said of it.
void score(const SimulatedBaker& baker, const std::vector<Observation>& observations, Score& score) {
  const Belief belief = *learn({}, observations);
  const Stay stay = always(22);
  const auto doubled = [&](const Shift& shift) {
    const auto stays = shifted({&stay, 1}, shift);
    return *forecast(halfWholeLevain(), shifted(fed(3, 22), shift), 0, stays, kLevainStage).lowHour;
  };
  const double actual = doubled(baker.truth());
  const ForecastBand before = believedBand(halfWholeLevain(), fed(3, 22), 0, {&stay, 1}, kLevainStage, {});
  const ForecastBand after = believedBand(halfWholeLevain(), fed(3, 22), 0, {&stay, 1}, kLevainStage, belief);
  score.widthBefore += widthOf(before);
  score.widthAfter += widthOf(after);
  score.missBefore += std::abs(*before.likely.lowHour - actual);
  score.missAfter += std::abs(*after.likely.lowHour - actual);
  score.bandCovers += actual >= after.fast->hours.start && actual <= after.slow->hours.start ? 1 : 0;
  score.vigourCovers +=
      std::abs(baker.truth().logVigour - belief.mean.logVigour) <= kNinthDecile * belief.spread.logVigour ? 1
                                                                                                          : 0;
}

void print(const char* what, const Score& s) {
  std::printf("%s: band covers %.1f %%, vigour's own %.1f %%, width %.2f -> %.2f h, off by %.2f -> %.2f h\n",
              what, 100.0 * s.bandCovers / kStarters, 100.0 * s.vigourCovers / kStarters,
              s.widthBefore / kStarters, s.widthAfter / kStarters, s.missBefore / kStarters,
              s.missAfter / kStarters);
}

TEST(SimulatedBakersTest, WithoutObservationsTheBandCoversFourInFive) {
  Score s;
  for (std::uint64_t seed = 1; seed <= kStarters; ++seed) score(SimulatedBaker(seed), {}, s);
  print("unseen", s);
  EXPECT_GE(s.bandCovers, 750);
  EXPECT_LE(s.bandCovers, 850);
}

TEST(SimulatedBakersTest, AfterThreeReadingsTheBandIsHalvedAndStillCoversFourInFive) {
  Score s;
  for (std::uint64_t seed = 1; seed <= kStarters; ++seed) {
    SimulatedBaker baker(seed);
    score(baker,
          {baker.riseRead(SimulatedBaker::jar(1, 22, 6)), baker.riseRead(SimulatedBaker::jar(5, 23, 10)),
           baker.thermometerRead(SimulatedBaker::jar(2, 22, 5))},
          s);
  }
  print("two rises and a thermometer", s);
  EXPECT_GE(s.bandCovers, 750);
  EXPECT_LE(s.bandCovers, 850);
  EXPECT_GE(s.vigourCovers, 750);
  EXPECT_LE(s.vigourCovers, 850);
  EXPECT_LE(s.widthAfter, 0.5 * s.widthBefore);
  EXPECT_LE(s.missAfter, 0.5 * s.missBefore);
}

TEST(SimulatedBakersTest, PeaksAndPokesTeachTooButLess) {
  constexpr Stage kJarStage = {1.6, 1.9, 2.2};
  Score s;
  for (std::uint64_t seed = 1; seed <= kStarters; ++seed) {
    SimulatedBaker baker(seed);
    score(baker,
          {baker.peakSeen(SimulatedBaker::jar(1, 23, 24)),
           baker.pokeFelt(SimulatedBaker::jar(2, 22, 7.5), kJarStage),
           baker.pokeFelt(SimulatedBaker::jar(5, 23, 8.5), kJarStage)},
          s);
  }
  print("a peak and two pokes", s);
  EXPECT_GE(s.bandCovers, 750);
  EXPECT_LE(s.bandCovers, 880) << "bounds are taken a little more loosely than they deserve";
  EXPECT_LT(s.widthAfter, 0.75 * s.widthBefore);
  EXPECT_LT(s.missAfter, 0.75 * s.missBefore);
}

}  // namespace
}  // namespace suppertide::bread
