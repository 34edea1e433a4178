#include "server/sync/hub.h"

#include <algorithm>
#include <condition_variable>
#include <deque>
#include <map>
#include <mutex>
#include <utility>

namespace suppertide::sync {

namespace {

// One watcher's wake function, and who is inside it.
class Watcher {
 public:
  explicit Watcher(std::function<void()> wake) : wake_(std::move(wake)) {}

  void call() {
    {
      const std::lock_guard guard(mutex_);
      if (gone_) return;
      ++running_;
    }
    wake_();
    const std::lock_guard guard(mutex_);
    if (--running_ == 0) idle_.notify_all();
  }

  // No call begins after it, none is running when it returns.
  void close() {
    std::unique_lock guard(mutex_);
    gone_ = true;
    idle_.wait(guard, [&] { return running_ == 0; });
  }

 private:
  const std::function<void()> wake_;
  std::mutex mutex_;
  std::condition_variable idle_;
  int running_ = 0;    // guarded by mutex_
  bool gone_ = false;  // guarded by mutex_
};

}  // namespace

struct Hub::State {
  struct Household {
    std::deque<std::shared_ptr<const storage::Change>> recent;  // revisions without a gap
    std::vector<std::shared_ptr<Watcher>> watchers;             // not empty, or the household goes
  };

  explicit State(std::size_t keepGiven) : keep(keepGiven) {}

  const std::size_t keep;
  mutable std::mutex mutex;
  std::map<std::string, Household> households;  // guarded by mutex
};

namespace {

void remember(std::deque<std::shared_ptr<const storage::Change>>& recent,
              std::shared_ptr<const storage::Change> change, std::size_t keep) {
  if (!recent.empty() && change->revision <= recent.back()->revision) return;
  // After a gap the older ones would be taken for all there is.
  if (!recent.empty() && change->revision != recent.back()->revision + 1) recent.clear();
  recent.push_back(std::move(change));
  if (recent.size() > keep) recent.pop_front();
}

}  // namespace

// Holds the state, so that it may outlive the hub.
class SubscriptionInState : public Hub::Subscription {
 public:
  SubscriptionInState(std::shared_ptr<Hub::State> state, std::string householdId,
                      std::shared_ptr<Watcher> watcher)
      : state_(std::move(state)), householdId_(std::move(householdId)), watcher_(std::move(watcher)) {}

  ~SubscriptionInState() override {
    {
      const std::lock_guard guard(state_->mutex);
      const auto household = state_->households.find(householdId_);
      std::erase(household->second.watchers, watcher_);
      if (household->second.watchers.empty()) state_->households.erase(household);
    }
    watcher_->close();
  }

 private:
  const std::shared_ptr<Hub::State> state_;
  const std::string householdId_;
  const std::shared_ptr<Watcher> watcher_;
};

Hub::Hub(std::size_t keep) : state_(std::make_shared<State>(std::max<std::size_t>(keep, 1))) {}

Hub::~Hub() = default;

void Hub::committed(const std::string& householdId, std::shared_ptr<const storage::Change> change) {
  std::vector<std::shared_ptr<Watcher>> watchers;
  {
    const std::lock_guard guard(state_->mutex);
    const auto household = state_->households.find(householdId);
    if (household == state_->households.end()) return;
    remember(household->second.recent, std::move(change), state_->keep);
    watchers = household->second.watchers;
  }
  for (const std::shared_ptr<Watcher>& watcher : watchers) watcher->call();
}

std::unique_ptr<Hub::Subscription> Hub::subscribe(const std::string& householdId,
                                                  std::function<void()> wake) {
  auto watcher = std::make_shared<Watcher>(std::move(wake));
  const std::lock_guard guard(state_->mutex);
  state_->households[householdId].watchers.push_back(watcher);
  return std::make_unique<SubscriptionInState>(state_, householdId, std::move(watcher));
}

Hub::Recent Hub::recentAfter(const std::string& householdId, std::int64_t after) const {
  const std::lock_guard guard(state_->mutex);
  const auto household = state_->households.find(householdId);
  if (household == state_->households.end() || household->second.recent.empty()) return {};
  const auto& recent = household->second.recent;
  if (recent.front()->revision > after + 1) return {};
  const auto skip = std::min<std::int64_t>(after + 1 - recent.front()->revision, std::ssize(recent));
  return {.atHand = true, .changes = {recent.begin() + skip, recent.end()}};
}

}  // namespace suppertide::sync
