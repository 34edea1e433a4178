// What benchmarks time with.
#pragma once

#include <ctime>

namespace suppertide {

// Seconds of processor time of this process: other work on the machine does not count.
class CpuWatch {
 public:
  double seconds() const { return static_cast<double>(std::clock() - begin_) / CLOCKS_PER_SEC; }

 private:
  std::clock_t begin_ = std::clock();
};

}  // namespace suppertide
