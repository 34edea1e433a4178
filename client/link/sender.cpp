#include "client/link/sender.h"

#include <algorithm>
#include <chrono>
#include <condition_variable>
#include <mutex>
#include <thread>

#include "client/link/edit.h"
#include "client/link/error_detail.h"
#include "client/link/session.h"

namespace suppertide::link {
namespace {

using std::chrono::milliseconds;

constexpr milliseconds kFirstPause{200};
constexpr milliseconds kLastPause{10'000};
// A server that fails on the same request so often will not take it: the ones behind it must get on.
constexpr int kMostTries = 5;

enum class Verdict { kLater, kSoon, kNever };

// kLater: not the request's fault; kSoon: it may be; kNever: asking again gives the same.
Verdict verdictOf(const absl::Status& status, const google::protobuf::Message& request) {
  const auto detail = errorDetail(status);
  switch (status.code()) {
    case absl::StatusCode::kUnavailable:
    case absl::StatusCode::kDeadlineExceeded:
    case absl::StatusCode::kCancelled:
    case absl::StatusCode::kUnauthenticated:
      return Verdict::kLater;
    case absl::StatusCode::kInternal:
    case absl::StatusCode::kUnknown:
    case absl::StatusCode::kDataLoss:
      return Verdict::kSoon;
    case absl::StatusCode::kResourceExhausted:
      return detail && detail->reason() == "LIMIT_EXCEEDED" ? Verdict::kNever : Verdict::kSoon;
    case absl::StatusCode::kAborted:
      return readEdit(request).etag.empty() ? Verdict::kSoon : Verdict::kNever;
    default:
      return Verdict::kNever;
  }
}

}  // namespace

struct Sender::State {
  State(Session& s, Outbox& o, SenderListener& l) : session(s), outbox(o), listener(l) {}

  Session& session;
  Outbox& outbox;
  SenderListener& listener;

  std::mutex mutex;  // guards the next three
  std::condition_variable changed;
  bool stopping = false;
  bool reachable = false;
  bool added = true;

  std::int64_t tried = 0;  // the number that failed last, and how often; the sender's thread only
  int tries = 0;
  milliseconds pause = kFirstPause;
  std::thread thread;

  void run();
  // False: nothing more for now.
  bool sendNext();
  bool failed(const Outbox::Entry& entry, const absl::Status& status);
};

void Sender::State::run() {
  std::unique_lock<std::mutex> lock(mutex);
  while (!stopping) {
    changed.wait(lock, [this] { return stopping || (reachable && added); });
    if (stopping) return;
    added = false;
    lock.unlock();
    while (sendNext()) {
    }
    const bool left = outbox.next().has_value();
    lock.lock();
    if (!left) continue;
    added = true;
    changed.wait_for(lock, pause, [this] { return stopping || !reachable; });
    pause = reachable ? std::min(kLastPause, pause * 2) : kFirstPause;
  }
}

bool Sender::State::sendNext() {
  {
    const std::lock_guard<std::mutex> lock(mutex);
    if (stopping || !reachable) return false;
  }
  const std::optional<Outbox::Entry> entry = outbox.next();
  if (!entry) return false;
  auto answer = session.carryOut(*entry->request);
  if (!answer.ok()) return failed(*entry, answer.status());
  tries = 0;
  pause = kFirstPause;
  const std::shared_ptr<const google::protobuf::Message> taken = *std::move(answer);
  // What can't be struck out is sent again, under its old request id.
  if (!outbox.taken(entry->number, *taken).ok()) return false;
  listener.requestTaken(*entry, taken);
  return true;
}

bool Sender::State::failed(const Outbox::Entry& entry, const absl::Status& status) {
  const Verdict verdict = verdictOf(status, *entry.request);
  if (verdict == Verdict::kLater) return false;
  tries = entry.number == tried ? tries + 1 : 1;
  tried = entry.number;
  if (verdict == Verdict::kSoon && tries < kMostTries) return false;
  if (!outbox.refused(entry.number, status).ok()) return false;
  listener.requestRefused(entry, status);
  return true;
}

Sender::Sender(Session& session, Outbox& outbox, SenderListener& listener)
    : state_(std::make_unique<State>(session, outbox, listener)) {
  state_->thread = std::thread([state = state_.get()] { state->run(); });
}

Sender::~Sender() {
  {
    const std::lock_guard<std::mutex> lock(state_->mutex);
    state_->stopping = true;
  }
  state_->changed.notify_all();
  state_->thread.join();
}

void Sender::setReachable(bool reachable) {
  const std::lock_guard<std::mutex> lock(state_->mutex);
  state_->reachable = reachable;
  state_->changed.notify_all();
}

void Sender::wake() {
  const std::lock_guard<std::mutex> lock(state_->mutex);
  state_->added = true;
  state_->changed.notify_all();
}

}  // namespace suppertide::link
