// A stream of answers to one call. It lives until gRPC is done with it and ends
// once, whoever asks first: the client, the server's stop, a revoked device or its
// own work.
//
// gRPC frees the call's context as soon as a stream has ended, so while open()
// still looks at it an end is only noted.
#pragma once

#include <grpcpp/server_context.h>
#include <grpcpp/support/server_callback.h>

#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>

#include "server/service/backend.h"
#include "server/service/call_log.h"

namespace suppertide::service {

template <typename Answer>
class AnswerStream : public grpc::ServerWriteReactor<Answer>,
                     public std::enable_shared_from_this<AnswerStream<Answer>> {
 public:
  // `method` as in "SyncService/Watch".
  AnswerStream(Backend& backend, grpc::CallbackServerContext& context, std::string method)
      : backend_(backend), context_(context), method_(method), log_(backend.metrics(), std::move(method)) {}

  // Opens on a reading thread. Call once, on an object in a shared_ptr.
  void start() {
    self_ = this->shared_from_this();
    backend_.readers().post([self = self_] { self->openNow(); }, turnOf(context_));
  }

  void OnCancel() override { end(grpc::Status::CANCELLED); }
  void OnDone() override {
    backend_.streams().remove(number_);
    closed();
    const auto last = std::move(self_);
  }

 protected:
  // Admits the caller and gets ready; what it returns ends the stream. On a reading thread.
  virtual Failure open(const grpc::CallbackServerContext& context) = 0;
  // Goes to work, right after open(), unless the stream has ended meanwhile.
  virtual void opened() = 0;
  // The stream is ending, for whatever reason. mutex_ is held.
  virtual void ending() {}
  // The last thing that happens.
  virtual void closed() {}

  // From here on the server's stop and the device's end are this stream's, too.
  // Call from open(), once the caller is known. UNAUTHENTICATED when the device
  // was revoked since it was admitted; RESOURCE_EXHAUSTED when its household has
  // too many streams open.
  Failure enlist(const Caller& caller) {
    householdId_ = caller.householdId;
    if (const Failure full = backend_.enter(caller, method_, true, place_); full.failed()) return full;
    const std::weak_ptr<AnswerStream> weak = this->weak_from_this();
    number_ = backend_.streams().add(caller.deviceId, [weak](const grpc::Status& status) {
      if (const auto stream = weak.lock()) stream->end(status);
    });
    return backend_.admitAgain(caller);
  }

  void end(const grpc::Status& status) {
    {
      std::lock_guard lock(mutex_);
      if (ended_ || endsWith_) return;
      if (opening_) {
        endsWith_ = status;
        return;
      }
      noteEnd();
    }
    finish(status);
  }
  void endWith(const Failure& why) {
    grpc::Status status;
    {
      std::lock_guard lock(mutex_);
      if (ended_) return;
      noteEnd();
      status = finishWith(context_, why);
    }
    finish(status);
  }

  // Writes one message; the next one only after OnWriteDone. mutex_ is held. False when the stream has ended.
  bool send(Answer message) {
    if (ended_) return false;
    message_ = std::move(message);
    this->StartWrite(&message_);
    return true;
  }

  Backend& backend_;
  std::mutex mutex_;

 private:
  void openNow() {
    const Failure refused = open(context_);
    grpc::Status status;
    {
      std::lock_guard lock(mutex_);
      opening_ = false;
      if (endsWith_ || refused.failed()) {
        noteEnd();
        status = endsWith_ ? *endsWith_ : finishWith(context_, refused);
      } else {
        this->StartSendInitialMetadata();
      }
    }
    if (status.ok()) return opened();
    finish(status);
  }

  // mutex_ is held.
  void noteEnd() {
    ended_ = true;
    ending();
  }
  void finish(const grpc::Status& status) {
    log_.finished(status, householdId_);
    this->Finish(status);
  }

  grpc::CallbackServerContext& context_;  // gone once the stream has ended
  const std::string method_;
  CallLog log_;
  std::string householdId_;               // set while opening
  std::shared_ptr<void> place_;           // among its household's streams
  std::shared_ptr<AnswerStream> self_;    // until OnDone
  int number_ = 0;                        // among the open streams
  Answer message_;                        // in flight
  bool opening_ = true;                   // guarded by mutex_
  bool ended_ = false;                    // guarded by mutex_
  std::optional<grpc::Status> endsWith_;  // guarded by mutex_: an end noted while opening
};

}  // namespace suppertide::service
