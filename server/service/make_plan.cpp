#include "server/service/make_plan.h"

#include <chrono>
#include <memory>
#include <mutex>
#include <optional>

#include "absl/strings/str_cat.h"
#include "server/compose/live_correction.h"
#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/planning_call.h"
#include "server/service/running_event.h"

namespace suppertide::service {
namespace {

using SteadyClock = std::chrono::steady_clock;

constexpr char kMakePlan[] = "PlanService/MakePlan";
constexpr std::chrono::seconds kUsualTime{20};
constexpr std::chrono::minutes kMostTime{5};
constexpr std::chrono::milliseconds kTellEvery{500};

std::chrono::nanoseconds lengthOf(const google::protobuf::Duration& duration) {
  return std::chrono::seconds(duration.seconds()) + std::chrono::nanoseconds(duration.nanos());
}

google::protobuf::Duration durationOf(std::chrono::nanoseconds length) {
  google::protobuf::Duration duration;
  duration.set_seconds(length.count() / 1'000'000'000);
  duration.set_nanos(static_cast<std::int32_t>(length.count() % 1'000'000'000));
  return duration;
}

Failure checkLimits(const v1::MakePlanRequest& asked) {
  const google::protobuf::Duration& limit = asked.time_limit();
  // Seconds first: their sum with the rest could overflow.
  const std::int64_t most = std::chrono::seconds(kMostTime).count();
  if (limit.seconds() < 0 || limit.nanos() < 0 || limit.seconds() > most || lengthOf(limit) > kMostTime)
    return invalidField("timeLimit", absl::StrCat(limit.seconds(), " s"), "must be 0 to 5 minutes");
  if (asked.work_limit() < 0)
    return invalidField("workLimit", absl::StrCat(asked.work_limit()), "must be 0 or more");
  return {};
}

// The planning thread offers plans; the newest waits while a message is in
// flight, so a slow reader never slows the search.
class MakePlanCall : public PlanningCall {
 public:
  MakePlanCall(Backend& backend, grpc::CallbackServerContext& context, const v1::MakePlanRequest& asked)
      : PlanningCall(backend, context, kMakePlan), asked_(asked) {}

  void OnWriteDone(bool ok) override {
    if (!ok) return end(grpc::Status::CANCELLED);
    bool last = false;
    {
      std::lock_guard lock(mutex_);
      writing_ = false;
      sendNext();
      last = !writing_ && finalSent_;
    }
    if (last) end(grpc::Status::OK);
  }

  // ---- on the planning thread ----
  void improved(const v1::Plan& plan) override {
    v1::MakePlanResponse message = progress();
    *message.mutable_plan() = stamped(plan);
    *message.mutable_quality() = plan.quality();
    offer(std::move(message));
  }
  void progressed(const v1::Quality& quality) override { quality_ = quality; }
  bool stop() override {
    const auto now = SteadyClock::now();
    if (now - lastTold_ >= kTellEvery) offer(progress());
    return run().stop || run().cancel || now >= deadline_;
  }

 private:
  Failure open(const grpc::CallbackServerContext& context) override {
    if (const Failure refused = backend_.admit(context, kMakePlan, asked_.household_id(), caller_);
        refused.failed())
      return refused;
    if (const Failure wrong = checkRequestId(asked_.request_id()); wrong.failed()) return wrong;
    if (const Failure wrong = checkLimits(asked_); wrong.failed()) return wrong;
    if (const Failure wrong = documentsOf(backend_, caller_.householdId, asked_.event_id(), documents_,
                                          inputRevision_, &inputEtags_);
        wrong.failed())
      return wrong;
    return enlist(caller_);
  }

  const std::string& eventId() const override { return asked_.event_id(); }

  void plan() override {
    begin_ = lastTold_ = SteadyClock::now();
    const auto limit = lengthOf(asked_.time_limit());
    deadline_ = begin_ + (limit.count() > 0 ? limit : kUsualTime);
    compose::PlanOptions options;
    options.seed = asked_.seed() == 0 ? 1 : asked_.seed();
    options.workLimit = asked_.work_limit();
    absl::StatusOr<v1::Plan> made = absl::CancelledError("nobody waits for this plan");
    if (!run().cancel) made = backend_.options().planner(documents_, options, this);
    if (run().cancel) return leave();
    if (!made.ok()) return giveUp(failure(made.status(), "CANNOT_PLAN"));
    if (!asked_.validate_only()) return store(stamped(*made));
    leave();
    offer(finalAnswer(stamped(*made), 0));
  }

  // A plan that replaces a running one keeps what belongs to the event's plans together.
  Failure carryOver(v1::Plan& plan) {
    const auto before = backend_.store().get(caller_.householdId, {"plan", asked_.event_id()});
    if (before.status().code() == absl::StatusCode::kNotFound) return {};
    if (!before.ok()) return fromStorage(before.status());
    v1::Progress progress;
    if (const Failure wrong = readProgress(backend_, caller_.householdId, asked_.event_id(), progress);
        wrong.failed())
      return wrong;
    compose::carryOver(read<v1::Plan>(*before), progress.reports_size() > 0, plan);
    return {};
  }

  void store(v1::Plan plan) {
    // A plan must not outlive its event.
    if (const auto event = backend_.store().get(caller_.householdId, {"event", asked_.event_id()});
        !event.ok())
      return giveUp(fromStorage(event.status()));
    if (const Failure wrong = carryOver(plan); wrong.failed()) return giveUp(wrong);
    auto write = writeRequest(caller_, kMakePlan, asked_.request_id(), asked_, false);
    write.puts.push_back(putOf(plan));
    write.puts.back().etag.clear();
    write.puts.push_back(withoutProposal(asked_.event_id()));
    backend_.queue().submit(
        std::move(write), [self = std::static_pointer_cast<MakePlanCall>(shared_from_this())](
                              absl::StatusOr<storage::WriteResult> result) {
          self->leave();
          if (!result.ok()) return self->endWith(fromStorage(result.status()));
          // Made without regard to what was told so far.
          if (result->changed)
            self->backend_.corrections().reported(self->caller_.householdId, self->asked_.event_id());
          self->offer(finalAnswer(read<v1::Plan>(result->documents.front()), result->revision));
        });
  }

  v1::Plan stamped(v1::Plan plan) const {
    plan.set_input_revision(inputRevision_);
    *plan.mutable_input_etags() = inputEtags_;
    *plan.mutable_search()->mutable_time_used() = durationOf(SteadyClock::now() - begin_);
    return plan;
  }

  v1::MakePlanResponse progress() {
    lastTold_ = SteadyClock::now();
    v1::MakePlanResponse message;
    *message.mutable_quality() = quality_;
    *message.mutable_time_used() = durationOf(lastTold_ - begin_);
    return message;
  }

  // A plan that waits is kept until a newer plan replaces it; mere progress does not.
  void offer(v1::MakePlanResponse message) {
    std::lock_guard lock(mutex_);
    if (!waiting_ || message.has_plan() || !waiting_->has_plan()) waiting_ = std::move(message);
    if (!writing_) sendNext();
  }

  // mutex_ is held, nothing is in flight.
  void sendNext() {
    if (!waiting_) return;
    finalSent_ = waiting_->final();
    writing_ = send(*std::exchange(waiting_, std::nullopt));
  }

  const v1::MakePlanRequest asked_;
  compose::Documents documents_;
  std::int64_t inputRevision_ = 0;
  google::protobuf::Map<std::string, std::string> inputEtags_;
  SteadyClock::time_point begin_;  // these four of the planning thread
  SteadyClock::time_point deadline_;
  SteadyClock::time_point lastTold_;
  v1::Quality quality_;

  std::optional<v1::MakePlanResponse> waiting_;  // guarded by mutex_
  bool writing_ = false;                         // guarded by mutex_
  bool finalSent_ = false;                       // guarded by mutex_
};

}  // namespace

grpc::ServerWriteReactor<v1::MakePlanResponse>* makePlan(Backend& backend,
                                                         grpc::CallbackServerContext& context,
                                                         const v1::MakePlanRequest& asked) {
  const auto call = std::make_shared<MakePlanCall>(backend, context, asked);
  call->start();
  return call.get();
}

}  // namespace suppertide::service
