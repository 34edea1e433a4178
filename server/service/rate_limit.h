// Slows down guessing: so many failures by peer and minute, then no more tries.
#pragma once

#include <map>
#include <mutex>
#include <string>
#include <vector>

#include "server/base/clock.h"

namespace suppertide::service {

class RateLimit {
 public:
  RateLimit(const Clock& clock, int failuresPerMinute) : clock_(clock), most_(failuresPerMinute) {}

  // Whether `peer` may try now.
  bool mayTry(const std::string& peer);
  void failed(const std::string& peer);

 private:
  void forgetOld(Instant now);  // mutex_ held

  const Clock& clock_;
  const int most_;
  std::mutex mutex_;
  std::map<std::string, std::vector<Instant>> failures_;  // guarded by mutex_
};

}  // namespace suppertide::service
