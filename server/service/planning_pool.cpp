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
  {
    std::lock_guard lock(mutex_);
    running_.erase({householdId, eventId});
  }
  if (ended_) ended_(householdId, eventId);
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

std::size_t PlanningPool::size() {
  std::lock_guard lock(mutex_);
  return running_.size();
}

void PlanningPool::post(const std::string& householdId, std::function<void()> job) {
  {
    std::lock_guard lock(mutex_);
    auto& jobs = waiting_[householdId];
    if (jobs.empty()) turns_.push_back(householdId);
    jobs.push_back(std::move(job));
  }
  workers_.post([this] { runNext(); });
}

// There are as many calls of this as jobs.
void PlanningPool::runNext() {
  std::function<void()> job;
  {
    std::lock_guard lock(mutex_);
    const std::string household = std::move(turns_.front());
    turns_.pop_front();
    const auto jobs = waiting_.find(household);
    job = std::move(jobs->second.front());
    jobs->second.pop_front();
    if (jobs->second.empty())
      waiting_.erase(jobs);
    else
      turns_.push_back(household);
  }
  job();
}

}  // namespace suppertide::service
