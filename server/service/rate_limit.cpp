#include "server/service/rate_limit.h"

#include <algorithm>

namespace suppertide::service {

void RateLimit::forgetOld(Instant now) {
  for (auto peer = failures_.begin(); peer != failures_.end();) {
    std::erase_if(peer->second, [&](Instant at) { return at + std::chrono::minutes(1) <= now; });
    peer = peer->second.empty() ? failures_.erase(peer) : std::next(peer);
  }
}

bool RateLimit::mayTry(const std::string& peer) {
  std::lock_guard lock(mutex_);
  forgetOld(clock_.now());
  const auto found = failures_.find(peer);
  return found == failures_.end() || static_cast<int>(found->second.size()) < most_;
}

void RateLimit::failed(const std::string& peer) {
  std::lock_guard lock(mutex_);
  failures_[peer].push_back(clock_.now());
}

}  // namespace suppertide::service
