// Times and what is told of them.
#pragma once

#include <algorithm>
#include <chrono>
#include <vector>

namespace suppertide::bench {

using SteadyClock = std::chrono::steady_clock;

inline double millisecondsSince(SteadyClock::time_point begin) {
  return std::chrono::duration<double, std::milli>(SteadyClock::now() - begin).count();
}

// The value below which `part` of the samples lie; 0 without any.
inline double quantile(std::vector<double> samples, double part) {
  if (samples.empty()) return 0;
  std::sort(samples.begin(), samples.end());
  return samples[std::min(samples.size() - 1,
                          static_cast<std::size_t>(part * static_cast<double>(samples.size())))];
}

}  // namespace suppertide::bench
