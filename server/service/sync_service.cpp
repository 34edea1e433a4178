#include "suppertide/v1/sync_service.grpc.pb.h"

#include <grpcpp/alarm.h>

#include <algorithm>
#include <memory>
#include <mutex>
#include <optional>
#include <vector>

#include "server/service/answer_stream.h"
#include "server/service/change_messages.h"
#include "server/service/services.h"
#include "server/sync/feed.h"

namespace suppertide::service {
namespace {

// One watcher. A pump on a reading thread takes items from the feed and turns
// them into messages; at most one message is in flight. Wakes, the bookmark
// alarm and the end may come from any thread: they only set flags.
class Watcher : public AnswerStream<grpc::ByteBuffer> {
 public:
  Watcher(Backend& backend, grpc::CallbackServerContext& context, const v1::WatchRequest& asked,
          std::shared_ptr<ChangeMessages> messages)
      : AnswerStream(backend, context, kMethod), asked_(asked), messages_(std::move(messages)) {}

  void OnWriteDone(bool ok) override {
    if (!ok) return end(grpc::Status::CANCELLED);
    if (!parts_.empty()) return pump();
    {
      std::lock_guard lock(mutex_);
      woken_ = false;
    }
    // Mostly that was all there is, and to rest needs no disk and so no other thread.
    feed_->isUpToDate() ? rest() : pump();
  }

 private:
  static constexpr char kMethod[] = "SyncService/Watch";

  Failure open(const grpc::CallbackServerContext& context) override {
    if (const Failure refused = backend_.admit(context, kMethod, asked_.household_id(), caller_);
        refused.failed())
      return refused;
    return enlist(caller_);
  }

  void opened() override {
    feed_.emplace(backend_.hub(), backend_.store(), caller_.householdId, asked_.after_revision());
    auto subscription = backend_.hub().subscribe(caller_.householdId, [weak = weak()] {
      if (const auto watcher = weak.lock()) watcher->wake();
    });
    {
      std::lock_guard lock(mutex_);
      if (gone_) return;  // the subscription goes with it
      subscription_ = std::move(subscription);
    }
    setAlarm();
    pump();
  }

  void ending() override {
    gone_ = true;
    alarm_.Cancel();
  }
  void closed() override {
    std::unique_ptr<sync::Hub::Subscription> subscription;
    {
      std::lock_guard lock(mutex_);
      subscription = std::move(subscription_);
    }
    subscription.reset();  // waits for a wake under way, so not under the lock
  }

  std::weak_ptr<Watcher> weak() { return std::static_pointer_cast<Watcher>(shared_from_this()); }
  std::shared_ptr<Watcher> self() { return std::static_pointer_cast<Watcher>(shared_from_this()); }

  // Goes on with the next message on a reading thread.
  void pump() {
    backend_.readers().post([self = self()] { self->step(); });
  }

  void wake() {
    {
      std::lock_guard lock(mutex_);
      if (!idle_) {
        woken_ = true;
        return;
      }
      idle_ = false;
    }
    pump();
  }

  void step() {
    {
      std::lock_guard lock(mutex_);
      woken_ = false;
    }
    if (!parts_.empty()) return write(takePart());
    const auto item = feed_->next();
    if (!item.ok()) return endWith(fromFeed(item.status()));
    if (std::holds_alternative<sync::Nothing>(*item)) return rest();
    if (leavesOut(*item))
      return endWith(
          failure(absl::PermissionDeniedError("you are no longer in the household"), "NOT_A_MEMBER"));
    makeParts(*item);
    write(takePart());
  }

  // Up to date: sleeps until woken, unless a wake came meanwhile.
  void rest() {
    {
      std::lock_guard lock(mutex_);
      if (!woken_ && !bookmarkDue_) {
        idle_ = true;
        return;
      }
      if (!woken_) {
        bookmarkDue_ = false;
        parts_.push_back(wireOf(feed_->bookmark()));
      }
    }
    pump();
  }

  grpc::ByteBuffer takePart() {
    grpc::ByteBuffer part = std::move(parts_.back());
    parts_.pop_back();
    return part;
  }

  void write(grpc::ByteBuffer message) {
    std::lock_guard lock(mutex_);
    send(std::move(message));
  }

  // Whether the change takes the watcher's member off the household.
  bool leavesOut(const sync::FeedItem& item) const {
    const auto* change = std::get_if<std::shared_ptr<const storage::Change>>(&item);
    if (change == nullptr) return false;
    for (const storage::Document& document : (*change)->documents)
      if (document.key.kind == "household" && !document.deleted)
        return memberOf(read<v1::Household>(document), caller_.memberId) == nullptr;
    return false;
  }

  static Failure fromFeed(const absl::Status& status) {
    if (status.code() != absl::StatusCode::kInvalidArgument) return fromStorage(status);
    return failure(status, "REVISION_IN_THE_FUTURE");
  }

  static grpc::ByteBuffer wireOf(const sync::Bookmark& bookmark) {
    v1::WatchResponse message;
    message.mutable_bookmark()->set_revision(bookmark.revision);
    return service::wireOf(message);
  }

  // The item as messages, the last one first in `parts_`.
  void makeParts(const sync::FeedItem& item) {
    if (std::holds_alternative<sync::Reset>(item)) {
      v1::WatchResponse message;
      message.mutable_reset();
      parts_.push_back(service::wireOf(message));
    } else if (const auto* bookmark = std::get_if<sync::Bookmark>(&item)) {
      parts_.push_back(wireOf(*bookmark));
    } else if (const auto* snapshot = std::get_if<sync::SnapshotPart>(&item)) {
      parts_ = snapshotMessages(snapshot->documents);
    } else if (const auto* change = std::get_if<std::shared_ptr<const storage::Change>>(&item)) {
      parts_ = *messages_->of(*change);
    }
    std::reverse(parts_.begin(), parts_.end());
  }

  void setAlarm() {
    std::lock_guard lock(mutex_);
    if (gone_) return;
    alarm_.Set(std::chrono::system_clock::now() + backend_.options().bookmarkInterval,
               [weak = weak()](bool rang) {
                 const auto watcher = weak.lock();
                 if (rang && watcher) watcher->silence();
               });
  }

  void silence() {
    bool go = false;
    {
      std::lock_guard lock(mutex_);
      if (gone_) return;
      bookmarkDue_ = idle_;
      go = idle_;
      idle_ = false;
    }
    if (go) pump();
    setAlarm();
  }

  const v1::WatchRequest asked_;
  const std::shared_ptr<ChangeMessages> messages_;
  Caller caller_;
  std::optional<sync::Feed> feed_;  // of the pump alone, as are parts_
  Messages parts_;                  // of the item in hand, the last one first

  std::unique_ptr<sync::Hub::Subscription> subscription_;  // guarded by mutex_
  bool idle_ = false;         // guarded by mutex_: no pump posted and nothing in flight
  bool woken_ = false;        // guarded by mutex_
  bool bookmarkDue_ = false;  // guarded by mutex_
  bool gone_ = false;         // guarded by mutex_: the stream has ended
  grpc::Alarm alarm_;
};

// Watch is served raw, as the same bytes go to many.
class SyncServiceCalls final : public v1::SyncService::WithRawCallbackMethod_Watch<v1::SyncService::Service> {
 public:
  explicit SyncServiceCalls(Backend& backend) : backend_(backend) {}
  grpc::ServerWriteReactor<grpc::ByteBuffer>* Watch(grpc::CallbackServerContext* context,
                                                    const grpc::ByteBuffer* request) override {
    v1::WatchRequest asked;
    grpc::ByteBuffer bytes = *request;
    if (!grpc::SerializationTraits<v1::WatchRequest>::Deserialize(&bytes, &asked).ok())
      return new Refusal(grpc::Status(grpc::StatusCode::INVALID_ARGUMENT, "the request cannot be read"));
    const auto watcher = std::make_shared<Watcher>(backend_, *context, asked, messages_);
    watcher->start();
    return watcher.get();
  }

 private:
  // A stream that ends at once.
  class Refusal : public grpc::ServerWriteReactor<grpc::ByteBuffer> {
   public:
    explicit Refusal(const grpc::Status& why) { Finish(why); }
    void OnDone() override { delete this; }
  };

  Backend& backend_;
  const std::shared_ptr<ChangeMessages> messages_ = std::make_shared<ChangeMessages>();
};

}  // namespace

std::unique_ptr<grpc::Service> makeSyncService(Backend& backend) {
  return std::make_unique<SyncServiceCalls>(backend);
}

}  // namespace suppertide::service
