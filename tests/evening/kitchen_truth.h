// What is really so on a simulated evening, where the plan only believes.
#pragma once

#include <cmath>
#include <cstdint>
#include <map>
#include <random>
#include <string>

namespace suppertide::evening {

class KitchenTruth {
 public:
  explicit KitchenTruth(std::uint64_t seed) : random_(seed) {
    vigour_ = std::exp(normal(0, 0.22));
    ovenLength_ = std::exp(std::abs(normal(0, 0.12)));
    breaks_ = chance(0.35);
    cancels_ = chance(0.35);
    dropsOff_ = chance(0.6);
    ovenHeat_ = std::exp(normal(0.15, 0.15));
  }

  // Times as fast as the forecast says.
  double vigour() const { return vigour_; }
  // Times as long as planned, of every bake.
  double ovenLength() const { return ovenLength_; }
  // Times as long as believed until an oven is hot.
  double ovenHeat() const { return ovenHeat_; }
  bool ovenBreaks() const { return breaks_; }
  bool guestCancels() const { return cancels_; }
  bool clientDropsOff() const { return dropsOff_; }

  // Of work by hand; drawn once for a step.
  double lengthOf(const std::string& step) {
    return once(lengths_, step, [this] { return std::exp(normal(0, 0.12)); });
  }
  // Minutes that its cook comes late: mostly a few, now and then many.
  int lateBy(const std::string& step) {
    return static_cast<int>(
        once(late_, step, [this] { return chance(0.12) ? uniform(10, 30) : uniform(0, 4); }));
  }
  bool chance(double part) { return uniform(0, 1) < part; }
  double uniform(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

 private:
  double normal(double mean, double spread) {
    return std::normal_distribution<double>(mean, spread)(random_);
  }
  template <typename Draw>
  double once(std::map<std::string, double>& drawn, const std::string& key, Draw draw) {
    const auto found = drawn.find(key);
    if (found != drawn.end()) return found->second;
    return drawn[key] = draw();
  }

  std::mt19937_64 random_;
  double vigour_ = 1;
  double ovenLength_ = 1;
  double ovenHeat_ = 1;
  bool breaks_ = false;
  bool cancels_ = false;
  bool dropsOff_ = false;
  std::map<std::string, double> lengths_;
  std::map<std::string, double> late_;
};

}  // namespace suppertide::evening
