#include "suppertide/v1/sync_service.grpc.pb.h"

#include <grpcpp/alarm.h>

#include <memory>
#include <mutex>
#include <optional>
#include <vector>

#include "server/service/answer_stream.h"
#include "server/service/services.h"
#include "server/sync/feed.h"

namespace suppertide::service {
namespace {

constexpr std::size_t kPartBytes = 256 * 1024;

// One watcher. A pump on a reading thread takes items from the feed and turns
// them into messages; at most one message is in flight. Wakes, the bookmark
// alarm and the end may come from any thread: they only set flags.
class Watcher : public AnswerStream<v1::WatchResponse> {
 public:
  Watcher(Backend& backend, grpc::CallbackServerContext& context, const v1::WatchRequest& asked)
      : AnswerStream(backend, context, kMethod), asked_(asked) {}

  void OnWriteDone(bool ok) override {
    if (!ok) return end(grpc::Status::CANCELLED);
    pump();
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
        v1::WatchResponse message;
        message.mutable_bookmark()->set_revision(feed_->bookmark().revision);
        parts_.push_back(std::move(message));
      }
    }
    pump();
  }

  v1::WatchResponse takePart() {
    v1::WatchResponse part = std::move(parts_.back());
    parts_.pop_back();
    return part;
  }

  void write(v1::WatchResponse message) {
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

  // The item as messages, the last one first in `parts_`.
  void makeParts(const sync::FeedItem& item) {
    if (std::holds_alternative<sync::Reset>(item)) {
      v1::WatchResponse message;
      message.mutable_reset();
      parts_.push_back(std::move(message));
    } else if (const auto* bookmark = std::get_if<sync::Bookmark>(&item)) {
      v1::WatchResponse message;
      message.mutable_bookmark()->set_revision(bookmark->revision);
      parts_.push_back(std::move(message));
    } else if (const auto* snapshot = std::get_if<sync::SnapshotPart>(&item)) {
      addParts(
          snapshot->documents, [](v1::WatchResponse & message) -> auto& {
            return *message.mutable_snapshot()->mutable_documents();
          });
    } else if (const auto* change = std::get_if<std::shared_ptr<const storage::Change>>(&item)) {
      addParts((*change)->documents, [&](v1::WatchResponse & message) -> auto& {
        v1::ChangeSet& set = *message.mutable_changes();
        set.set_revision((*change)->revision);
        set.set_member_id((*change)->memberId);
        set.mutable_commit_time()->set_seconds((*change)->commitTime.time_since_epoch().count());
        return *set.mutable_changes();
      });
    }
  }

  template <typename Target>
  void addParts(const std::vector<storage::Document>& documents, Target target) {
    std::vector<v1::WatchResponse> messages(1);
    std::size_t bytes = 0;
    target(messages.back());
    for (const storage::Document& document : documents) {
      if (bytes > 0 && bytes + document.bytes.size() > kPartBytes) {
        messages.emplace_back();
        bytes = 0;
      }
      *target(messages.back()).Add() = changeOf(document);
      bytes += document.bytes.size();
    }
    for (std::size_t i = messages.size(); i-- > 0;) {
      if (messages[i].has_changes()) messages[i].mutable_changes()->set_partial(i + 1 < messages.size());
      parts_.push_back(std::move(messages[i]));
    }
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
  Caller caller_;
  std::optional<sync::Feed> feed_;        // of the pump alone, as are parts_
  std::vector<v1::WatchResponse> parts_;  // of the item in hand, the last one first

  std::unique_ptr<sync::Hub::Subscription> subscription_;  // guarded by mutex_
  bool idle_ = false;         // guarded by mutex_: no pump posted and nothing in flight
  bool woken_ = false;        // guarded by mutex_
  bool bookmarkDue_ = false;  // guarded by mutex_
  bool gone_ = false;         // guarded by mutex_: the stream has ended
  grpc::Alarm alarm_;
};

class SyncServiceCalls final : public v1::SyncService::CallbackService {
 public:
  explicit SyncServiceCalls(Backend& backend) : backend_(backend) {}
  grpc::ServerWriteReactor<v1::WatchResponse>* Watch(grpc::CallbackServerContext* context,
                                                     const v1::WatchRequest* request) override {
    const auto watcher = std::make_shared<Watcher>(backend_, *context, *request);
    watcher->start();
    return watcher.get();
  }

 private:
  Backend& backend_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeSyncService(Backend& backend) {
  return std::make_unique<SyncServiceCalls>(backend);
}

}  // namespace suppertide::service
