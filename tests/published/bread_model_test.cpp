// The model against its own tables, which were computed independently: regression rows.
#include <cmath>

#include "server/bread/calibration.h"
#include "tests/published/bread_rows.h"

namespace suppertide::bread {
namespace {

TEST(BreadModelTest, LevainTableIsReproduced) {  // printed to a tenth of an hour
  struct Line {
    double parts;
    double doubled[5];
    double peak[5];
  };
  const double celsius[5] = {18, 21, 24, 26, 28};
  const Line lines[] = {{1, {11.6, 6.9, 4.8, 4.1, 4.1}, {16.1, 10.2, 7.3, 6.5, 6.4}},
                        {2, {14.5, 8.7, 6.0, 5.2, 5.1}, {19.0, 12.1, 8.7, 7.6, 7.6}},
                        {5, {19.0, 11.5, 8.0, 7.0, 6.9}, {23.5, 15.0, 10.7, 9.4, 9.4}},
                        {10, {22.8, 13.9, 9.7, 8.4, 8.3}, {27.3, 17.3, 12.4, 10.9, 10.8}}};
  std::vector<Row> rows;
  for (const Line& line : lines) {
    for (std::size_t i = 0; i < 5; ++i) {
      const std::string name =
          "1:" + std::to_string(static_cast<int>(line.parts)) + " at " + std::to_string(celsius[i]);
      rows.push_back(near(name + " doubles", kModel, "computed", line.doubled[i], 0.06,
                          [=] { return doubles(line.parts, celsius[i]); }));
      rows.push_back(near(name + " peaks", kModel, "computed", line.peak[i], 0.08,
                          [=] { return levain(line.parts, celsius[i]).peakHour; }));
    }
  }
  for (const auto& [at, hours] :
       {std::pair{20.0, 8.1}, {22.0, 6.0}, {30.0, 4.9}, {32.0, 8.7}, {33.0, 15.8}}) {
    rows.push_back(near("1:1:1 at " + std::to_string(at), kModel, "computed", hours, 0.06,
                        [at = at] { return doubles(1, at); }));
  }
  rows.push_back(near("1:1:1 at 15", kModel, "computed", 22, 0.5, [] { return doubles(1, 15); }));
  for (double never : {10.0, 12.0, 34.0, 35.0}) {
    rows.push_back(within("1:1:1 never doubles at " + std::to_string(never), kModel, "computed", kNever,
                          kNever, [=] { return doubles(1, never); }));
  }
  rows.push_back(near("white flour", kModel, "computed", 6.5, 0.06, [] { return doubles(1, 22, 0); }));
  rows.push_back(near("all whole wheat", kModel, "computed", 5.6, 0.06, [] { return doubles(1, 22, 1); }));
  for (const auto& [lag, hours] : {std::pair{0.1, 2.7}, {1.0, 4.8}, {2.0, 7.8}}) {
    rows.push_back(near("lag " + std::to_string(lag), kModel, "computed", hours, 0.06,
                        [lag = lag] { return doubles(1, 22, 0.5, {.lag = lag}); }));
  }
  checkRows(rows);
}

TEST(BreadModelTest, RiseCurvesAreReproduced) {  // printed to a hundredth
  std::vector<Row> rows;
  for (const auto& [hours, rise] : {std::pair{1.0, 1.04},
                                    {2.0, 1.12},
                                    {3.0, 1.26},
                                    {4.0, 1.46},
                                    {5.0, 1.71},
                                    {6.0, 2.00},
                                    {7.0, 2.27},
                                    {8.0, 2.46},
                                    {9.0, 2.52},
                                    {10.0, 2.48},
                                    {12.0, 2.32},
                                    {16.0, 2.04}}) {
    rows.push_back(near("1:1:1 at 22 after " + std::to_string(hours) + " h", kModel, "computed", rise, 0.01,
                        [hours = hours] { return levainRise(hours); }));
  }
  for (const auto& [celsius, hours] :
       {std::pair{22.0, 3.9}, {24.0, 3.1}, {26.0, 2.7}, {28.0, 2.65}, {30.0, 3.2}}) {
    rows.push_back(near("enriched bulk to 1.5 at " + std::to_string(celsius), kModel, "computed", hours, 0.06,
                        [celsius = celsius] { return enrichedBulkHours(celsius, 1.5); }));
  }
  struct Chill {
    double kilograms, hours, celsius, volume;
  };
  const Chill chills[] = {{1, 0.5, 23.2, 1.27}, {1, 1, 19.3, 1.33}, {1, 2, 13.8, 1.37},   {1, 4, 8.0, 1.36},
                          {1, 8, 4.7, 1.34},    {1, 16, 4.0, 1.34}, {0.5, 1, 17.4, 1.30}, {0.5, 4, 6.3, 1.27},
                          {0.5, 12, 4.0, 1.27}, {2, 1, 21.0, 1.37}, {2, 4, 10.0, 1.48},   {2, 12, 4.4, 1.45}};
  for (const Chill& chill : chills) {
    const std::string name =
        std::to_string(chill.kilograms) + " kg chilled " + std::to_string(chill.hours) + " h";
    rows.push_back(near(name + ", degrees", kModel, "computed", chill.celsius, 0.06,
                        [=] { return chilled(chill.kilograms, chill.hours).celsius; }));
    rows.push_back(near(name + ", volume", kModel, "computed", chill.volume, 0.011,
                        [=] { return riseOf(enriched(), chilled(chill.kilograms, chill.hours)); }));
  }
  struct Yeasted {
    double celsius, percent, hours;
  };
  for (const Yeasted& y : {Yeasted{20, 0.5, 11.9},
                           {20, 2, 3.0},
                           {22, 1, 4.7},
                           {24, 3, 1.4},
                           {26, 1, 3.3},
                           {28, 0.5, 5.7},
                           {28, 2, 1.5},
                           {30, 1, 2.6}}) {
    rows.push_back(near("yeast " + std::to_string(y.percent) + " % at " + std::to_string(y.celsius), kModel,
                        "computed", y.hours, 0.06, [=] { return yeastedDoubles(y.percent, y.celsius); }));
  }
  checkRows(rows);
}

// The vigour that a doubling of 1:1:1 at 22 degrees after this long speaks for.
double vigourFromDoubling(double hours) {
  const DoughKind kind = withComposition(kLevainKind, 0.5, 0, 0);
  const Observation jar{.kind = kind,
                        .start = *mixLevain(kind, {}, {1, 1, 1}, 22, 0.2),
                        .stays = {always(22)},
                        .hours = hours,
                        .value = 2.0,
                        .spread = 1e-3};
  const Belief unsure = {{}, {.logVigour = 1, .placeKelvin = 0, .lag = 0}};
  return std::exp(learn(unsure, {&jar, 1})->mean.logVigour);
}

TEST(BreadModelTest, VigourFromADoubling) {
  std::vector<Row> rows;
  for (const auto& [hours, vigour] :
       {std::pair{4.5, 1.314}, {5.0, 1.188}, {5.5, 1.086}, {7.0, 0.866}, {8.0, 0.765}, {9.0, 0.686}}) {
    rows.push_back(near("doubled after " + std::to_string(hours) + " h", kModel, "computed", vigour, 0.003,
                        [hours = hours] { return vigourFromDoubling(hours); }));
  }
  checkRows(rows);
}

}  // namespace
}  // namespace suppertide::bread
