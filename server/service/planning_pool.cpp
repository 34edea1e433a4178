#include "server/service/planning_pool.h"

namespace suppertide::service {

std::shared_ptr<PlanningRun> PlanningPool::begin(const std::string& householdId, const std::string& eventId,
                                                 PlannedFor plannedFor) {
  const auto run = std::make_shared<PlanningRun>();
  run->householdId = householdId;
  run->eventId = eventId;
  run->plannedFor = plannedFor;
  std::lock_guard lock(mutex_);
  auto& going = running_[{householdId, eventId}];
  if (going != nullptr) {
    if (plannedFor == PlannedFor::kCorrection || going->plannedFor == PlannedFor::kPerson) return nullptr;
    going->cancel = true;
    run->earlier = going->over.get_future();
  }
  return going = run;
}

void PlanningPool::end(PlanningRun& run) {
  bool free = false;
  {
    std::lock_guard lock(mutex_);
    const auto found = running_.find({run.householdId, run.eventId});
    free = found != running_.end() && found->second.get() == &run;
    if (free) running_.erase(found);
  }
  run.over.set_value();
  if (free && ended_) ended_(run.householdId, run.eventId);
}

bool PlanningPool::stop(const std::string& householdId, const std::string& eventId) {
  std::lock_guard lock(mutex_);
  const auto found = running_.find({householdId, eventId});
  if (found == running_.end() || found->second->plannedFor != PlannedFor::kPerson) return false;
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
