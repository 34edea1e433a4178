#include "client/link/reminder_link.h"

#include <grpcpp/client_context.h>

#include <algorithm>
#include <condition_variable>
#include <functional>
#include <mutex>
#include <thread>
#include <utility>

#include "client/link/channel.h"
#include "suppertide/v1/reminder_service.grpc.pb.h"

namespace suppertide::link {
namespace {

bool isRefusal(grpc::StatusCode code) {
  return code == grpc::StatusCode::UNAUTHENTICATED || code == grpc::StatusCode::PERMISSION_DENIED ||
         code == grpc::StatusCode::UNIMPLEMENTED;
}

}  // namespace

struct ReminderLink::State : std::enable_shared_from_this<ReminderLink::State> {
  State(LinkOptions o, std::string event, ReminderListener& l)
      : options(std::move(o)), eventId(std::move(event)), listener(l) {}

  const LinkOptions options;
  const std::string eventId;
  ReminderListener& listener;

  // Held while a callback runs, so that closing waits for one; recursive, so that a callback may close.
  std::recursive_mutex calling;
  bool closed = false;  // under calling

  std::mutex mutex;  // guards all below
  std::condition_variable wake;
  bool stopping = false;
  grpc::ClientContext* context = nullptr;
  std::thread thread;

  void tell(std::function<void(ReminderListener&)> what) {
    auto guarded = [self = shared_from_this(), what = std::move(what)] {
      const std::lock_guard lock(self->calling);
      if (!self->closed) what(self->listener);
    };
    if (options.post)
      options.post(std::move(guarded));
    else
      guarded();
  }

  // One stream from begin to end.
  grpc::Status listenOnce(bool& live) {
    grpc::ClientContext current;
    current.AddMetadata("authorization", "Bearer " + options.deviceToken);
    {
      const std::lock_guard lock(mutex);
      if (stopping) return grpc::Status::CANCELLED;
      context = &current;
    }
    const auto stub = v1::ReminderService::NewStub(
        openChannel(options.target, options.certificatePem, options.fingerprint));
    v1::WatchRemindersRequest request;
    request.set_household_id(options.householdId);
    request.set_event_id(eventId);
    const auto stream = stub->WatchReminders(&current, request);
    v1::WatchRemindersResponse message;
    while (stream->Read(&message)) {
      if (!std::exchange(live, true))
        tell([](ReminderListener& l) { l.reminderStateChanged(LinkState::kLive, ""); });
      tell([message](ReminderListener& l) { l.reminderTold(message); });
    }
    const grpc::Status status = stream->Finish();
    const std::lock_guard lock(mutex);
    context = nullptr;
    return status;
  }

  void run() {
    std::chrono::milliseconds pause = options.firstRetry;
    for (;;) {
      bool live = false;
      const grpc::Status status = listenOnce(live);
      const LinkState state = isRefusal(status.error_code()) ? LinkState::kRefused : LinkState::kConnecting;
      {
        const std::lock_guard lock(mutex);
        if (stopping) return;
      }
      tell(
          [state, why = status.error_message()](ReminderListener& l) { l.reminderStateChanged(state, why); });
      if (state == LinkState::kRefused) return;
      pause = live ? options.firstRetry : std::min(options.lastRetry, pause * 2);
      std::unique_lock lock(mutex);
      if (wake.wait_for(lock, pause, [this] { return stopping; })) return;
    }
  }
};

ReminderLink::ReminderLink(LinkOptions options, std::string eventId, ReminderListener& listener)
    : state_(std::make_shared<State>(std::move(options), std::move(eventId), listener)) {}

ReminderLink::~ReminderLink() {
  {
    const std::lock_guard lock(state_->calling);
    state_->closed = true;
  }
  stop();
}

void ReminderLink::start() {
  const std::lock_guard lock(state_->mutex);
  if (state_->thread.joinable()) return;
  state_->stopping = false;
  state_->thread = std::thread([state = state_] { state->run(); });
}

void ReminderLink::stop() {
  std::thread worker;
  {
    const std::lock_guard lock(state_->mutex);
    state_->stopping = true;
    if (state_->context != nullptr) state_->context->TryCancel();
    worker = std::move(state_->thread);
  }
  state_->wake.notify_all();
  if (!worker.joinable()) return;
  if (worker.get_id() == std::this_thread::get_id())
    worker.detach();  // it owns the state and ends by itself
  else
    worker.join();
}

}  // namespace suppertide::link
