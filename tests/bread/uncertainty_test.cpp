#include "server/bread/uncertainty.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/bread/builders.h"

namespace suppertide::bread {
namespace {

TEST(UncertaintyTest, IndependentCausesRebuildDeviationsAndCorrelations) {
  const Uncertainty wanted = {.logVigour = 0.2,
                              .placeKelvin = 0.7,
                              .lag = 0.3,
                              .vigourWithLag = 0.6,
                              .vigourWithPlace = -0.4,
                              .lagWithPlace = 0.3};
  double vv = 0, ll = 0, pp = 0, vl = 0, vp = 0, lp = 0;
  for (const Shift& cause : independentCauses(wanted)) {
    vv += cause.logVigour * cause.logVigour;
    ll += cause.lag * cause.lag;
    pp += cause.placeKelvin * cause.placeKelvin;
    vl += cause.logVigour * cause.lag;
    vp += cause.logVigour * cause.placeKelvin;
    lp += cause.lag * cause.placeKelvin;
  }
  EXPECT_NEAR(std::sqrt(vv), 0.2, 1e-12);
  EXPECT_NEAR(std::sqrt(ll), 0.3, 1e-12);
  EXPECT_NEAR(std::sqrt(pp), 0.7, 1e-12);
  EXPECT_NEAR(vl / (0.2 * 0.3), 0.6, 1e-12);
  EXPECT_NEAR(vp / (0.2 * 0.7), -0.4, 1e-12);
  EXPECT_NEAR(lp / (0.3 * 0.7), 0.3, 1e-12);
}

TEST(UncertaintyTest, AShiftChangesVigourLagAndPlaces) {
  const DoughState moved = shifted(fed(1, 22), {.logVigour = std::log(1.5), .lag = 0.5, .placeKelvin = 2});
  EXPECT_NEAR(moved.vigour, 1.5, 1e-12);
  EXPECT_NEAR(moved.activeShare, std::exp(-1.5 * kMatureStarterLag), 1e-12);
  EXPECT_NEAR(shifted(fed(1, 22), {.lag = -3}).activeShare, 1, 1e-12) << "no lag below none";
  const Stay stay = always(20);
  EXPECT_EQ(shifted({&stay, 1}, {.placeKelvin = 2})[0].air.at(3), 22);
}

}  // namespace
}  // namespace suppertide::bread
