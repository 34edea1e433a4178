#include "client/link/link.h"

#include <grpcpp/client_context.h>
#include <grpcpp/completion_queue.h>

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <random>
#include <thread>
#include <utility>

#include "client/link/assembler.h"
#include "client/link/channel.h"
#include "suppertide/v1/sync_service.grpc.pb.h"

namespace suppertide::link {
namespace {

using std::chrono::milliseconds;

// Refusals that coming back cannot mend.
bool isRefusal(grpc::StatusCode code) {
  return code == grpc::StatusCode::UNAUTHENTICATED || code == grpc::StatusCode::PERMISSION_DENIED;
}

// The pause before the next try: doubles up to the last one; the random part
// keeps the clients of a restarted server from coming back all at once.
class BackOff {
 public:
  BackOff(milliseconds first, milliseconds last) : first_(first), last_(last), next_(first) {}
  void reset() { next_ = first_; }
  milliseconds take() {
    std::uniform_real_distribution<double> part(0.75, 1.25);
    const milliseconds pause(
        static_cast<milliseconds::rep>(static_cast<double>(next_.count()) * part(random_)));
    next_ = std::min(last_, next_ * 2);
    return pause;
  }

 private:
  milliseconds first_;
  milliseconds last_;
  milliseconds next_;
  std::minstd_rand random_{std::random_device{}()};
};

// One Watch call whose every wait has an end.
class WatchCall {
 public:
  WatchCall(const LinkOptions& options, std::int64_t after, milliseconds longestSilence)
      : longestSilence_(longestSilence),
        stub_(v1::SyncService::NewStub(
            openChannel(options.target, options.certificatePem, options.fingerprint))) {
    context_.AddMetadata("authorization", "Bearer " + options.deviceToken);
    request_.set_household_id(options.householdId);
    request_.set_after_revision(after);
  }
  ~WatchCall() {
    queue_.Shutdown();
    void* tag = nullptr;
    bool ok = false;
    while (queue_.Next(&tag, &ok)) {
    }
  }

  // Any thread; a call not begun yet ends as soon as it begins.
  void cancel() { context_.TryCancel(); }
  bool begin() {
    reader_ = stub_->AsyncWatch(&context_, request_, &queue_, this);
    return wait();
  }
  bool read(v1::WatchResponse& message) {
    reader_->Read(&message, this);
    return wait();
  }
  grpc::Status finish() {
    grpc::Status status;
    reader_->Finish(&status, this);
    wait();
    if (fellSilent_) return {grpc::StatusCode::UNAVAILABLE, "the server fell silent"};
    return status;
  }

 private:
  // The one operation under way. A cancelled one still comes back through the queue.
  bool wait() {
    void* tag = nullptr;
    bool ok = false;
    const auto deadline = std::chrono::system_clock::now() + longestSilence_;
    if (queue_.AsyncNext(&tag, &ok, deadline) == grpc::CompletionQueue::TIMEOUT) {
      fellSilent_ = true;
      context_.TryCancel();
      queue_.Next(&tag, &ok);
    }
    return ok;
  }

  milliseconds longestSilence_;
  bool fellSilent_ = false;
  grpc::ClientContext context_;
  grpc::CompletionQueue queue_;
  std::unique_ptr<v1::SyncService::Stub> stub_;
  v1::WatchRequest request_;
  std::unique_ptr<grpc::ClientAsyncReader<v1::WatchResponse>> reader_;
};

std::string forPeople(const grpc::Status& status) {
  return status.ok() || status.error_message().empty() ? "the connection was closed" : status.error_message();
}

}  // namespace

struct Link::State : std::enable_shared_from_this<Link::State> {
  State(LinkOptions o, LinkListener& l) : options(std::move(o)), listener(l), assembler(options.known) {
    shown = assembler.replica();
  }

  LinkOptions options;
  LinkListener& listener;

  // Held while a callback runs, so that closing waits for one that is running;
  // recursive, so that a callback may destroy the link.
  std::recursive_mutex calling;
  bool closed = false;  // under calling

  mutable std::mutex mutex;  // guards all below
  std::condition_variable wake;
  bool stopping = false;
  bool running = false;
  std::shared_ptr<WatchCall> call;
  std::shared_ptr<const Replica> shown;
  std::thread thread;

  Assembler assembler;  // the link's own thread only

  void tell(std::function<void(LinkListener&)> what) {
    auto guarded = [self = shared_from_this(), what = std::move(what)] {
      const std::lock_guard<std::recursive_mutex> lock(self->calling);
      if (!self->closed) what(self->listener);
    };
    if (options.post) {
      options.post(std::move(guarded));
    } else {
      guarded();
    }
  }
  void tellState(LinkState state, std::string why) {
    tell([state, why = std::move(why)](LinkListener& l) { l.linkStateChanged(state, why); });
  }

  void run();
  // One stream from begin to end; sets `live` once caught up.
  grpc::Status watchOnce(bool& live);
  void publish(Assembler::Published published);
  // False when stopped meanwhile.
  bool pause(milliseconds length);
  bool isStopping() const {
    const std::lock_guard<std::mutex> lock(mutex);
    return stopping;
  }
};

void Link::State::run() {
  BackOff backOff(options.firstRetry, options.lastRetry);
  tellState(LinkState::kConnecting, "");
  while (!isStopping()) {
    bool live = false;
    const grpc::Status status = watchOnce(live);
    if (isStopping()) break;
    if (isRefusal(status.error_code())) {
      tellState(LinkState::kRefused, forPeople(status));
      const std::lock_guard<std::mutex> lock(mutex);
      running = false;
      return;
    }
    // Our revision is from a future that the server lost, as after a restored backup.
    if (status.error_code() == grpc::StatusCode::INVALID_ARGUMENT) assembler.forgetRevision();
    if (live) backOff.reset();
    tellState(LinkState::kConnecting, forPeople(status));
    if (!pause(backOff.take())) break;
  }
  tellState(LinkState::kStopped, "");
  const std::lock_guard<std::mutex> lock(mutex);
  running = false;
}

grpc::Status Link::State::watchOnce(bool& live) {
  assembler.restart();
  auto current = std::make_shared<WatchCall>(options, assembler.resumeAfter(), options.longestSilence);
  {
    const std::lock_guard<std::mutex> lock(mutex);
    call = current;
    if (stopping) current->cancel();
  }
  v1::WatchResponse message;
  bool more = current->begin();
  while (more && (more = current->read(message))) {
    Assembler::Outcome outcome = assembler.take(message);
    if (outcome.published) publish(std::move(*outcome.published));
    if (outcome.caughtUp && !live) {
      live = true;
      tellState(LinkState::kLive, "");
    }
  }
  grpc::Status status = current->finish();
  const std::lock_guard<std::mutex> lock(mutex);
  call.reset();
  return status;
}

void Link::State::publish(Assembler::Published published) {
  {
    const std::lock_guard<std::mutex> lock(mutex);
    shown = published.replica;
  }
  tell([p = std::move(published)](LinkListener& l) { l.replicaChanged(p.replica, p.memberId); });
}

bool Link::State::pause(milliseconds length) {
  std::unique_lock<std::mutex> lock(mutex);
  return !wake.wait_for(lock, length, [this] { return stopping; });
}

Link::Link(LinkOptions options, LinkListener& listener)
    : state_(std::make_shared<State>(std::move(options), listener)) {}

Link::~Link() {
  {
    const std::lock_guard<std::recursive_mutex> lock(state_->calling);
    state_->closed = true;
  }
  stop();
}

void Link::start() {
  std::thread finished;
  {
    const std::lock_guard<std::mutex> lock(state_->mutex);
    if (state_->running) return;
    finished = std::move(state_->thread);
  }
  if (finished.joinable()) finished.join();
  const std::lock_guard<std::mutex> lock(state_->mutex);
  state_->stopping = false;
  state_->running = true;
  state_->thread = std::thread([state = state_] { state->run(); });
}

void Link::stop() {
  std::thread worker;
  {
    const std::lock_guard<std::mutex> lock(state_->mutex);
    state_->stopping = true;
    if (state_->call != nullptr) state_->call->cancel();
    worker = std::move(state_->thread);
  }
  state_->wake.notify_all();
  if (!worker.joinable()) return;
  if (worker.get_id() == std::this_thread::get_id()) {
    worker.detach();  // it owns the state and ends by itself
  } else {
    worker.join();
  }
}

std::shared_ptr<const Replica> Link::replica() const {
  const std::lock_guard<std::mutex> lock(state_->mutex);
  return state_->shown;
}

}  // namespace suppertide::link
