#include "suppertide/v1/plan_service.grpc.pb.h"

#include <algorithm>
#include <chrono>
#include <mutex>
#include <optional>

#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

using SteadyClock = std::chrono::steady_clock;

constexpr std::int64_t kUsualSeconds = 20;
constexpr std::int64_t kMostSeconds = 300;
constexpr std::chrono::milliseconds kTellEvery{500};

// One MakePlan under way. The planning thread offers plans; the newest waits
// while a message is in flight, so a slow reader never slows the search.
class Planning : public grpc::ServerWriteReactor<v1::MakePlanResponse>,
                 public compose::PlanMonitor,
                 public std::enable_shared_from_this<Planning> {
 public:
  explicit Planning(Backend& backend) : backend_(backend) {}

  static grpc::ServerWriteReactor<v1::MakePlanResponse>* start(Backend& backend,
                                                               grpc::CallbackServerContext* context,
                                                               const v1::MakePlanRequest* request) {
    auto planning = std::make_shared<Planning>(backend);
    planning->self_ = planning;
    planning->context_ = context;
    planning->asked_ = *request;
    backend.readers().post([planning] { planning->open(); });
    return planning.get();
  }

  void OnWriteDone(bool ok) override {
    std::lock_guard lock(mutex_);
    writing_ = false;
    if (!ok) {
      if (run_ != nullptr) run_->cancel = true;
      return;
    }
    writeNext();
  }
  void OnCancel() override {
    std::lock_guard lock(mutex_);
    if (run_ != nullptr) run_->cancel = true;
    finish(grpc::Status::CANCELLED);
  }
  void OnDone() override {
    std::lock_guard lock(mutex_);
    if (number_ > 0) backend_.streams().remove(number_);
    const auto self = std::move(self_);
    backend_.readers().post([self] {});  // let go after the lock
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
    return run_->stop || run_->cancel || now >= deadline_;
  }

 private:
  void open() {
    if (const Failure wrong = admit(); wrong.failed()) return refuse(wrong);
    run_ = backend_.planning().begin(caller_.householdId, asked_.event_id());
    if (run_ == nullptr)
      return refuse(failure(
          absl::FailedPreconditionError("this event is being planned already; wait for it or stop it"),
          "PLANNING_ALREADY"));
    const std::weak_ptr<Planning> weak = weak_from_this();
    const int number = backend_.streams().add(caller_.deviceId, [weak](const grpc::Status& status) {
      const auto planning = weak.lock();
      if (!planning) return;
      planning->run_->cancel = true;
      std::lock_guard lock(planning->mutex_);
      planning->finish(status);
    });
    {
      std::lock_guard lock(mutex_);
      number_ = number;
    }
    backend_.planning().post([self = shared_from_this()] { self->plan(); });
  }

  Failure admit() {
    if (const Failure refused =
            backend_.admit(*context_, "PlanService/MakePlan", asked_.household_id(), caller_);
        refused.failed())
      return refused;
    if (const Failure wrong = checkRequestId(asked_.request_id()); wrong.failed()) return wrong;
    const std::int64_t seconds = asked_.time_limit().seconds();
    if (seconds < 0 || seconds > kMostSeconds)
      return invalidField("timeLimit", absl::StrCat(seconds, " s"), "must be at most 5 minutes");
    if (asked_.work_limit() < 0)
      return invalidField("workLimit", absl::StrCat(asked_.work_limit()), "must be 0 or more");
    return documentsOf(backend_, caller_.householdId, asked_.event_id(), documents_, inputRevision_,
                       &inputEtags_);
  }

  void plan() {
    begin_ = lastTold_ = SteadyClock::now();
    const std::int64_t seconds =
        asked_.time_limit().seconds() > 0 ? asked_.time_limit().seconds() : kUsualSeconds;
    deadline_ =
        begin_ + std::chrono::seconds(seconds) + std::chrono::nanoseconds(asked_.time_limit().nanos());
    compose::PlanOptions options;
    options.seed = asked_.seed() == 0 ? 1 : asked_.seed();
    options.workLimit = asked_.work_limit();
    absl::StatusOr<v1::Plan> made = absl::CancelledError("nobody waits for this plan");
    if (!run_->cancel) made = backend_.options().planner(documents_, options, this);
    backend_.planning().end(caller_.householdId, asked_.event_id());
    if (run_->cancel) return;
    if (!made.ok()) return refuse(failure(made.status(), "CANNOT_PLAN"));
    *made = stamped(*made);
    if (asked_.validate_only()) return offerFinal(*made, 0);
    auto write = writeRequest(caller_, "PlanService/MakePlan", asked_.request_id(), asked_, false);
    write.puts.push_back(putOf(*made));
    write.puts.back().etag.clear();
    backend_.queue().submit(std::move(write),
                            [self = shared_from_this()](absl::StatusOr<storage::WriteResult> result) {
                              if (!result.ok()) return self->refuse(fromStorage(result.status()));
                              self->offerFinal(read<v1::Plan>(result->documents.front()), result->revision);
                            });
  }

  v1::Plan stamped(v1::Plan plan) const {
    plan.set_input_revision(inputRevision_);
    *plan.mutable_input_etags() = inputEtags_;
    *plan.mutable_search()->mutable_time_used() = timeUsed();
    return plan;
  }

  google::protobuf::Duration timeUsed() const {
    const auto used =
        std::chrono::duration_cast<std::chrono::nanoseconds>(SteadyClock::now() - begin_).count();
    google::protobuf::Duration duration;
    duration.set_seconds(used / 1'000'000'000);
    duration.set_nanos(static_cast<std::int32_t>(used % 1'000'000'000));
    return duration;
  }

  v1::MakePlanResponse progress() {
    lastTold_ = SteadyClock::now();
    v1::MakePlanResponse message;
    *message.mutable_quality() = quality_;
    *message.mutable_time_used() = timeUsed();
    return message;
  }

  void offerFinal(const v1::Plan& plan, std::int64_t revision) {
    v1::MakePlanResponse message;
    *message.mutable_plan() = plan;
    *message.mutable_quality() = plan.quality();
    *message.mutable_time_used() = timeUsed();
    message.set_final(true);
    message.set_revision(revision);
    offer(std::move(message));
  }

  // A plan that waits is kept until a newer plan replaces it; mere progress does not.
  void offer(v1::MakePlanResponse message) {
    std::lock_guard lock(mutex_);
    if (!waiting_ || message.has_plan() || !waiting_->has_plan()) waiting_ = std::move(message);
    if (!writing_) writeNext();
  }

  // mutex_ held.
  void writeNext() {
    if (finished_) return;
    if (waiting_) {
      message_ = *std::move(waiting_);
      waiting_.reset();
      writing_ = true;
      StartWrite(&message_);
    } else if (message_.final()) {
      finish(grpc::Status::OK);
    }
  }

  void refuse(const Failure& why) {
    std::lock_guard lock(mutex_);
    finish(finished_ ? grpc::Status::CANCELLED : finishWith(*context_, why));
  }

  // mutex_ held.
  void finish(const grpc::Status& status) {
    if (finished_) return;
    finished_ = true;
    Finish(status);
  }

  Backend& backend_;
  std::shared_ptr<Planning> self_;  // until OnDone
  grpc::CallbackServerContext* context_ = nullptr;
  v1::MakePlanRequest asked_;
  Caller caller_;
  compose::Documents documents_;
  std::int64_t inputRevision_ = 0;
  google::protobuf::Map<std::string, std::string> inputEtags_;
  std::shared_ptr<PlanningRun> run_;  // set once, before planning
  SteadyClock::time_point begin_;     // these four of the planning thread
  SteadyClock::time_point deadline_;
  SteadyClock::time_point lastTold_;
  v1::Quality quality_;

  std::mutex mutex_;
  int number_ = 0;                               // guarded by mutex_; among the open streams
  v1::MakePlanResponse message_;                 // in flight
  std::optional<v1::MakePlanResponse> waiting_;  // guarded by mutex_
  bool writing_ = false;                         // guarded by mutex_
  bool finished_ = false;                        // guarded by mutex_
};

// A stream that is promised but not served yet.
template <typename Message>
class NotServedYet : public grpc::ServerWriteReactor<Message> {
 public:
  NotServedYet() {
    this->Finish(grpc::Status(grpc::StatusCode::UNIMPLEMENTED, "this call is not served yet"));
  }
  void OnDone() override { delete this; }
};

class PlanServiceCalls final : public v1::PlanService::CallbackService {
 public:
  explicit PlanServiceCalls(Backend& backend) : backend_(backend), calls_(backend, "PlanService") {}

  grpc::ServerWriteReactor<v1::MakePlanResponse>* MakePlan(grpc::CallbackServerContext* context,
                                                           const v1::MakePlanRequest* request) override {
    return Planning::start(backend_, context, request);
  }

  grpc::ServerUnaryReactor* StopPlanning(grpc::CallbackServerContext* context,
                                         const v1::StopPlanningRequest* request,
                                         v1::StopPlanningResponse* answer) override {
    return serve(
        backend_, context, request, "PlanService/StopPlanning", request->household_id(),
        [this, answer](const Caller& caller, const v1::StopPlanningRequest& asked, const Finish& finish) {
          answer->set_was_running(backend_.planning().stop(caller.householdId, asked.event_id()));
          finish({});
        });
  }

  grpc::ServerUnaryReactor* GetPlan(grpc::CallbackServerContext* context, const v1::GetPlanRequest* request,
                                    v1::Plan* answer) override {
    return calls_.get(context, request, request->event_id(), "GetPlan", answer);
  }

  grpc::ServerUnaryReactor* ListPlans(grpc::CallbackServerContext* context,
                                      const v1::ListPlansRequest* request,
                                      v1::ListPlansResponse* answer) override {
    return calls_.list(context, request, "ListPlans", answer,
                       [](v1::ListPlansResponse* to, v1::Plan plan) { *to->add_plans() = std::move(plan); });
  }

  grpc::ServerUnaryReactor* AuditPlan(grpc::CallbackServerContext* context,
                                      const v1::AuditPlanRequest* request,
                                      v1::AuditPlanResponse* answer) override {
    return serve(backend_, context, request, "PlanService/AuditPlan", request->household_id(),
                 [this, answer](const Caller& caller, const v1::AuditPlanRequest& asked,
                                const Finish& finish) { finish(audit(caller, asked, *answer)); });
  }

  grpc::ServerWriteReactor<v1::MakePlanResponse>* Replan(grpc::CallbackServerContext*,
                                                         const v1::ReplanRequest*) override {
    return new NotServedYet<v1::MakePlanResponse>();
  }
  grpc::ServerWriteReactor<v1::FindRemediesResponse>* FindRemedies(grpc::CallbackServerContext*,
                                                                   const v1::FindRemediesRequest*) override {
    return new NotServedYet<v1::FindRemediesResponse>();
  }

 private:
  Failure audit(const Caller& caller, const v1::AuditPlanRequest& asked, v1::AuditPlanResponse& answer) {
    compose::Documents documents;
    std::int64_t revision = 0;
    if (const Failure wrong =
            documentsOf(backend_, caller.householdId, asked.event_id(), documents, revision, nullptr);
        wrong.failed())
      return wrong;
    v1::Plan plan = asked.plan();
    if (!asked.has_plan()) {
      const auto stored = backend_.store().get(caller.householdId, {"plan", asked.event_id()});
      if (!stored.ok()) return fromStorage(stored.status());
      plan = read<v1::Plan>(*stored);
    }
    const auto result = compose::auditPlan(documents, plan);
    if (!result.ok()) return failure(result.status(), "NOT_A_PLAN_OF_THIS_EVENT");
    for (const v1::Breach& breach : result->breaches) *answer.add_breaches() = breach;
    *answer.mutable_costs() = result->costs;
    return {};
  }

  Backend& backend_;
  DocumentCalls<v1::Plan> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makePlanService(Backend& backend) {
  return std::make_unique<PlanServiceCalls>(backend);
}

}  // namespace suppertide::service
