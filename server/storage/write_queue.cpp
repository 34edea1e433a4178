#include "server/storage/write_queue.h"

#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>
#include <utility>
#include <variant>
#include <vector>

namespace suppertide::storage {

namespace {

// Bounds how long one commit keeps the first of its writers waiting.
constexpr std::size_t kMostInOneCommit = 256;

struct Write {
  WriteRequest request;
  WriteQueue::Done done;
};
struct Joining {
  Redemption redemption;
  std::function<void(absl::StatusOr<Redeemed>)> done;
};
using Task = std::function<void(Store&)>;
using Item = std::variant<Write, Joining, Task>;

// What the log has of a write that changed something.
std::shared_ptr<const Change> changeOf(const WriteResult& result, const std::string& memberId) {
  auto change = std::make_shared<Change>();
  change->revision = result.revision;
  change->memberId = memberId;
  for (const Document& document : result.documents) {
    // A removal that found nothing may show a tombstone of an earlier revision.
    if (document.revision == result.revision) change->documents.push_back(document);
  }
  change->commitTime = change->documents.front().updateTime;
  return change;
}

}  // namespace

struct WriteQueue::State {
  State(Store& givenStore, Committed givenCommitted)
      : store(givenStore), committed(std::move(givenCommitted)) {}

  void work();
  std::deque<Item> takeAll();
  void writeNow(Write write);
  void rest();
  void commit(std::vector<Write>& writes);
  void letIn(Joining& joining);
  void add(Item item);

  Store& store;
  const Committed committed;
  std::mutex mutex;
  std::condition_variable wake;
  std::deque<Item> waiting;  // guarded by mutex
  bool busy = false;         // guarded by mutex: some thread is writing
  bool closing = false;      // guarded by mutex
  std::thread thread;
};

void WriteQueue::State::add(Item item) {
  {
    const std::lock_guard guard(mutex);
    waiting.push_back(std::move(item));
  }
  wake.notify_one();
}

// Empty means that the queue is closing and nothing is left. Else this thread is the one that writes.
std::deque<Item> WriteQueue::State::takeAll() {
  std::unique_lock guard(mutex);
  wake.wait(guard, [&] { return !busy && (closing || !waiting.empty()); });
  busy = !waiting.empty();
  return std::exchange(waiting, {});
}

void WriteQueue::State::rest() {
  const std::lock_guard guard(mutex);
  busy = false;
  // Under the lock, since the queue may go as soon as nobody writes.
  if (closing || !waiting.empty()) wake.notify_one();
}

void WriteQueue::State::writeNow(Write write) {
  {
    const std::lock_guard guard(mutex);
    if (busy || !waiting.empty()) {
      waiting.push_back(std::move(write));
      wake.notify_one();
      return;
    }
    busy = true;
  }
  std::vector<Write> alone;
  alone.push_back(std::move(write));
  commit(alone);
  rest();
}

void WriteQueue::State::work() {
  for (std::deque<Item> items = takeAll(); !items.empty(); items = takeAll()) {
    std::vector<Write> writes;
    for (Item& item : items) {
      if (auto* write = std::get_if<Write>(&item)) {
        writes.push_back(std::move(*write));
        if (writes.size() == kMostInOneCommit) commit(writes);
        continue;
      }
      commit(writes);
      if (auto* joining = std::get_if<Joining>(&item)) letIn(*joining);
      if (auto* task = std::get_if<Task>(&item)) (*task)(store);
    }
    commit(writes);
    rest();
  }
}

void WriteQueue::State::commit(std::vector<Write>& writes) {
  if (writes.empty()) return;
  std::vector<WriteRequest> requests;
  for (Write& write : writes) requests.push_back(std::move(write.request));
  std::vector<absl::StatusOr<WriteResult>> results = store.writeAll(requests);
  for (std::size_t i = 0; i < writes.size(); ++i) {
    absl::StatusOr<WriteResult>& result = results[i];
    if (result.ok() && result->changed && committed) {
      committed(requests[i].householdId, changeOf(*result, requests[i].memberId));
    }
    writes[i].done(std::move(result));
  }
  writes.clear();
}

void WriteQueue::State::letIn(Joining& joining) {
  absl::StatusOr<Redeemed> result = store.redeemInvitation(joining.redemption);
  if (result.ok() && result->write.changed && committed) {
    committed(result->device.householdId, changeOf(result->write, result->device.memberId));
  }
  joining.done(std::move(result));
}

WriteQueue::WriteQueue(Store& store, Committed committed)
    : state_(std::make_unique<State>(store, std::move(committed))) {
  state_->thread = std::thread([state = state_.get()] { state->work(); });
}

WriteQueue::~WriteQueue() {
  {
    const std::lock_guard guard(state_->mutex);
    state_->closing = true;
  }
  state_->wake.notify_one();
  state_->thread.join();
}

void WriteQueue::submit(WriteRequest request, Done done) {
  state_->add(Write{std::move(request), std::move(done)});
}

void WriteQueue::writeNow(WriteRequest request, Done done) {
  state_->writeNow({std::move(request), std::move(done)});
}

void WriteQueue::redeem(Redemption redemption, std::function<void(absl::StatusOr<Redeemed>)> done) {
  state_->add(Joining{std::move(redemption), std::move(done)});
}

std::size_t WriteQueue::waiting() const {
  const std::lock_guard guard(state_->mutex);
  return state_->waiting.size();
}

void WriteQueue::run(std::function<void(Store&)> task) {
  state_->add(std::move(task));
}

}  // namespace suppertide::storage
