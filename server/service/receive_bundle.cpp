#include "server/service/receive_bundle.h"

#include <memory>
#include <mutex>
#include <optional>
#include <utility>

#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"

namespace suppertide::service {
namespace {

constexpr char kImportBundle[] = "HouseholdService/ImportBundle";
constexpr std::size_t kMostBytes = 64 * 1024 * 1024;
// From here on a household sends one at a time, so that it cannot fill the memory.
constexpr std::size_t kLargeBytes = 8 * 1024 * 1024;

Failure brokenOff() {
  return failure(absl::InvalidArgumentError("the bundle's last part is missing: nothing was imported"),
                 "PART_MISSING");
}

Failure tooLarge() {
  return failure(absl::ResourceExhaustedError("a bundle can have at most 64 MiB: import it in several"),
                 "LIMIT_EXCEEDED");
}

// The call's steps follow one another, on gRPC's threads, a reading thread and the
// writing one. An end from outside (the client, the server's stop, a revoked device)
// is heard only between parts: while the caller is being admitted it is noted, since
// gRPC frees the call's context with its end, and what is complete is carried out.
class ImportCall final : public grpc::ServerReadReactor<v1::ImportBundleRequest>,
                         public std::enable_shared_from_this<ImportCall> {
 public:
  ImportCall(Backend& backend, grpc::CallbackServerContext& context, v1::ImportBundleResponse& answer)
      : backend_(backend), context_(context), answer_(answer) {}

  // Call once, on an object in a shared_ptr.
  void start() {
    self_ = shared_from_this();
    StartRead(&part_);
  }

  void OnReadDone(bool ok) override {
    if (log_) return ok ? take() : endWith(brokenOff());
    log_.emplace(backend_.metrics(), kImportBundle, part_.request_id());
    const bool offered =
        backend_.readers().offer(turnOf(context_), [self = self_, ok] { self->admit(/*any=*/ok); });
    if (offered) return;
    receiving();
    endWith(tooManyCalls());
  }
  void OnCancel() override { end(grpc::Status::CANCELLED); }
  void OnDone() override {
    backend_.streams().remove(number_);
    const auto last = std::move(self_);
  }

 private:
  enum class Phase { kAdmitting, kReceiving, kWorking, kEnded };

  // `any`: there is a first part.
  void admit(bool any) {
    Failure refused = backend_.admit(context_, kImportBundle, part_.household_id(), caller_);
    if (!refused.failed()) refused = backend_.enter(caller_, kImportBundle, false, place_);
    if (!refused.failed()) refused = enlist();
    receiving();
    if (refused.failed()) return endWith(refused);
    any ? take() : endWith(brokenOff());
  }

  Failure enlist() {
    const std::weak_ptr<ImportCall> weak = weak_from_this();
    number_ = backend_.streams().add(caller_.deviceId, [weak](const grpc::Status& status) {
      if (const auto call = weak.lock()) call->end(status);
    });
    return backend_.admitAgain(caller_);
  }

  // Ends from outside are heard from here on.
  void receiving() {
    std::optional<grpc::Status> noted;
    {
      std::lock_guard lock(mutex_);
      phase_ = Phase::kReceiving;
      noted = noted_;
    }
    if (noted) end(*noted);
  }

  // Adds the part that has come, and waits for the next one unless it is the last.
  void take() {
    bytes_ += part_.ByteSizeLong();
    if (bytes_ > kMostBytes) return endWith(tooLarge());
    if (bytes_ > kLargeBytes && largePlace_ == nullptr) {
      largePlace_ = backend_.enterLargeImport(caller_);
      if (largePlace_ == nullptr) return endWith(tooManyCalls());
    }
    const bool partial = part_.partial();
    if (!std::exchange(hasFirst_, true)) {
      asked_.Swap(&part_);
      asked_.clear_partial();
    } else {
      asked_.mutable_bundle()->MergeFrom(part_.bundle());
    }
    {
      std::lock_guard lock(mutex_);
      if (phase_ == Phase::kEnded) return;
      if (partial) return StartRead(&part_);
      phase_ = Phase::kWorking;
    }
    // Audits of plans take their time, as does a large bundle.
    const bool quick = asked_.bundle().plans().empty() && largePlace_ == nullptr;
    (quick ? backend_.readers() : backend_.calculators())
        .post([self = self_] { self->work(); }, caller_.householdId);
  }

  void work() {
    if (const Failure wrong = checkRequestId(asked_.request_id()); wrong.failed()) return endWith(wrong);
    auto write = writeRequest(caller_, kImportBundle, asked_.request_id(), asked_, asked_.validate_only());
    Import import;
    if (const Failure wrong = importOf(backend_, asked_.bundle(), caller_, import); wrong.failed())
      return endWith(wrong);
    for (const storage::Put& put : import.puts) ++(*answer_.mutable_written_counts())[put.key.kind];
    for (std::string& id : import.keptMemberIds) answer_.add_kept_member_ids(std::move(id));
    write.puts = std::move(import.puts);
    backend_.queue().submit(std::move(write), [self = self_](absl::StatusOr<storage::WriteResult> result) {
      if (!result.ok()) return self->endWith(fromStorage(result.status()));
      self->answer_.set_revision(result->revision);
      self->endWith({});
    });
  }

  void end(const grpc::Status& status) {
    {
      std::lock_guard lock(mutex_);
      if (phase_ == Phase::kAdmitting) noted_ = status;
      if (phase_ != Phase::kReceiving) return;
      phase_ = Phase::kEnded;
    }
    finish(status);
  }
  void endWith(const Failure& why) {
    grpc::Status status;
    {
      std::lock_guard lock(mutex_);
      if (phase_ == Phase::kEnded) return;
      phase_ = Phase::kEnded;
      status = finishWith(context_, why);
    }
    finish(status);
  }
  void finish(const grpc::Status& status) {
    log_->finished(status, caller_.householdId);
    Finish(status);
  }

  Backend& backend_;
  grpc::CallbackServerContext& context_;  // gone once the call has ended
  v1::ImportBundleResponse& answer_;
  std::optional<CallLog> log_;        // from the first part on
  Caller caller_;                     // once admitted
  std::shared_ptr<void> place_;       // among its household's calls
  std::shared_ptr<void> largePlace_;  // among its household's large imports
  int number_ = 0;                    // among the open streams
  v1::ImportBundleRequest part_;      // being read
  v1::ImportBundleRequest asked_;     // all parts so far
  bool hasFirst_ = false;
  std::size_t bytes_ = 0;
  std::shared_ptr<ImportCall> self_;  // until OnDone

  std::mutex mutex_;
  Phase phase_ = Phase::kAdmitting;    // guarded by mutex_
  std::optional<grpc::Status> noted_;  // guarded by mutex_: an end while admitting
};

}  // namespace

grpc::ServerReadReactor<v1::ImportBundleRequest>* receiveBundle(Backend& backend,
                                                                grpc::CallbackServerContext& context,
                                                                v1::ImportBundleResponse& answer) {
  const auto call = std::make_shared<ImportCall>(backend, context, answer);
  call->start();
  return call.get();
}

}  // namespace suppertide::service
