#include "server/service/planning_pool.h"

namespace suppertide::service {

std::shared_ptr<PlanningRun> PlanningPool::begin(const std::string& householdId, const std::string& eventId) {
  std::lock_guard lock(mutex_);
  auto& run = running_[{householdId, eventId}];
  if (run != nullptr) return nullptr;
  run = std::make_shared<PlanningRun>();
  return run;
}

void PlanningPool::end(const std::string& householdId, const std::string& eventId) {
  std::lock_guard lock(mutex_);
  running_.erase({householdId, eventId});
}

bool PlanningPool::stop(const std::string& householdId, const std::string& eventId) {
  std::lock_guard lock(mutex_);
  const auto found = running_.find({householdId, eventId});
  if (found == running_.end()) return false;
  found->second->stop = true;
  return true;
}

void PlanningPool::stopAll() {
  std::lock_guard lock(mutex_);
  for (auto& [key, run] : running_) run->cancel = true;
}

}  // namespace suppertide::service
