#include "suppertide/v1/sync_service.grpc.pb.h"

#include <grpcpp/alarm.h>

#include <mutex>
#include <optional>

#include "server/service/backend.h"
#include "server/service/services.h"
#include "server/sync/feed.h"

namespace suppertide::service {
namespace {

constexpr std::size_t kPartBytes = 256 * 1024;

// One watcher. A pump on a reading thread takes items from the feed and turns
// them into messages; at most one message is in flight. Wakes, the bookmark
// alarm and the end may come from any thread: they only set flags.
class Watcher : public grpc::ServerWriteReactor<v1::WatchResponse>,
                public std::enable_shared_from_this<Watcher> {
 public:
  explicit Watcher(Backend& backend) : backend_(backend) {}

  static grpc::ServerWriteReactor<v1::WatchResponse>* start(Backend& backend,
                                                            grpc::CallbackServerContext* context,
                                                            const v1::WatchRequest* request) {
    auto watcher = std::make_shared<Watcher>(backend);
    watcher->self_ = watcher;
    backend.readers().post([watcher, context, asked = *request] { watcher->open(*context, asked); });
    return watcher.get();
  }

  void OnWriteDone(bool ok) override {
    if (!ok) return end(grpc::Status::CANCELLED);
    pump();
  }
  void OnCancel() override { end(grpc::Status::CANCELLED); }
  void OnDone() override {
    std::unique_ptr<sync::Hub::Subscription> subscription;
    {
      std::lock_guard lock(mutex_);
      if (number_ > 0) backend_.streams().remove(number_);
      subscription = std::move(subscription_);
    }
    subscription.reset();  // waits for a wake under way, so not under the lock
    self_.reset();
  }

 private:
  void open(const grpc::CallbackServerContext& context, const v1::WatchRequest& asked) {
    Caller caller;
    if (const Failure refused = backend_.admit(context, "SyncService/Watch", asked.household_id(), caller);
        refused.failed())
      return end(grpc::Status(static_cast<grpc::StatusCode>(refused.status.code()),
                              std::string(refused.status.message())));
    StartSendInitialMetadata();
    feed_.emplace(backend_.hub(), backend_.store(), caller.householdId, asked.after_revision());
    const std::weak_ptr<Watcher> weak = weak_from_this();
    const int number = backend_.streams().add(caller.deviceId, [weak](const grpc::Status& status) {
      if (const auto watcher = weak.lock()) watcher->end(status);
    });
    auto subscription = backend_.hub().subscribe(caller.householdId, [weak] {
      if (const auto watcher = weak.lock()) watcher->wake();
    });
    {
      std::lock_guard lock(mutex_);
      number_ = number;
      subscription_ = std::move(subscription);
    }
    setAlarm();
    pump();
  }

  // Goes on with the next message on a reading thread.
  void pump() {
    backend_.readers().post([self = shared_from_this()] { self->step(); });
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
    if (!item.ok())
      return end(grpc::Status(static_cast<grpc::StatusCode>(item.status().code()),
                              std::string(item.status().message())));
    if (std::holds_alternative<sync::Nothing>(*item)) return rest();
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
    if (ended_) return;
    message_ = std::move(message);
    StartWrite(&message_);
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
    const std::weak_ptr<Watcher> weak = weak_from_this();
    std::lock_guard lock(mutex_);
    if (ended_) return;
    alarm_.Set(std::chrono::system_clock::now() + backend_.options().bookmarkInterval, [weak](bool rang) {
      const auto watcher = weak.lock();
      if (rang && watcher) watcher->silence();
    });
  }

  void silence() {
    bool go = false;
    {
      std::lock_guard lock(mutex_);
      if (ended_) return;
      bookmarkDue_ = idle_;
      go = idle_;
      idle_ = false;
    }
    if (go) pump();
    setAlarm();
  }

  void end(const grpc::Status& status) {
    std::lock_guard lock(mutex_);
    if (ended_) return;
    ended_ = true;
    alarm_.Cancel();
    Finish(status);
  }

  Backend& backend_;
  std::shared_ptr<Watcher> self_;  // until OnDone
  std::optional<sync::Feed> feed_;
  std::vector<v1::WatchResponse> parts_;  // of the pump alone

  std::mutex mutex_;
  std::unique_ptr<sync::Hub::Subscription> subscription_;  // guarded by mutex_
  int number_ = 0;                                         // guarded by mutex_; among the open streams
  v1::WatchResponse message_;                              // in flight
  bool idle_ = false;         // guarded by mutex_: no pump posted and nothing in flight
  bool woken_ = false;        // guarded by mutex_
  bool bookmarkDue_ = false;  // guarded by mutex_
  bool ended_ = false;        // guarded by mutex_
  grpc::Alarm alarm_;
};

class SyncServiceCalls final : public v1::SyncService::CallbackService {
 public:
  explicit SyncServiceCalls(Backend& backend) : backend_(backend) {}
  grpc::ServerWriteReactor<v1::WatchResponse>* Watch(grpc::CallbackServerContext* context,
                                                     const v1::WatchRequest* request) override {
    return Watcher::start(backend_, context, request);
  }

 private:
  Backend& backend_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeSyncService(Backend& backend) {
  return std::make_unique<SyncServiceCalls>(backend);
}

}  // namespace suppertide::service
