#include "server/service/replan_event.h"

#include <chrono>
#include <memory>
#include <mutex>

#include "absl/strings/str_cat.h"
#include "server/compose/live_correction.h"
#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/planning_call.h"
#include "server/service/reports.h"
#include "server/service/running_event.h"

namespace suppertide::service {
namespace {

using SteadyClock = std::chrono::steady_clock;

constexpr char kReplan[] = "PlanService/Replan";
// Longest search; what nearly always is enough takes a few milliseconds.
constexpr std::chrono::seconds kMostReplanTime{5};
constexpr std::int64_t kReplanWork = 20'000;

class ReplanCall : public PlanningCall {
 public:
  ReplanCall(Backend& backend, grpc::CallbackServerContext& context, const v1::ReplanRequest& asked)
      : PlanningCall(backend, context, kReplan), asked_(asked) {}

  void OnWriteDone(bool ok) override { end(ok ? grpc::Status::OK : grpc::Status::CANCELLED); }

  bool stop() override {
    return run().stop || run().cancel || SteadyClock::now() >= begin_ + kMostReplanTime;
  }

 private:
  Failure open(const grpc::CallbackServerContext& context) override {
    if (const Failure refused = backend_.admit(context, kReplan, asked_.household_id(), caller_);
        refused.failed())
      return refused;
    if (const Failure wrong = checkAsked(); wrong.failed()) return wrong;
    return enlist(caller_);
  }

  Failure checkAsked() const {
    if (const Failure wrong = checkRequestId(asked_.request_id()); wrong.failed()) return wrong;
    if (asked_.has_event() && asked_.event().id() != asked_.event_id())
      return invalidField("event.id", asked_.event().id(), "must be the event that is replanned");
    if (asked_.validate_only()) return {};
    if (asked_.has_event() && caller_.role < v1::ROLE_HOST)
      return failure(absl::PermissionDeniedError("only a host may change an event; ask with validate_only"),
                     "ROLE_TOO_SMALL");
    const char* whatIf = asked_.reports_size() > 0 ? "reports"
                         : asked_.has_now()        ? "now"
                         : asked_.has_plan()       ? "plan"
                                                   : nullptr;
    if (whatIf == nullptr) return {};
    return invalidField(whatIf, "given", "may be given only with validateOnly: true");
  }

  // On the planning thread: what a correction wrote until this run took its place is taken in.
  Failure readDocuments() {
    const v1::Event* asIf = asked_.has_event() ? &asked_.event() : nullptr;
    if (const Failure wrong = documentsOf(backend_, caller_.householdId, asked_.event_id(), documents_,
                                          inputRevision_, &inputEtags_, asIf);
        wrong.failed())
      return wrong;
    return readRunning();
  }

  Failure readRunning() {
    if (asked_.has_plan()) {
      running_.plan = asked_.plan();
      if (running_.plan.id() != asked_.event_id())
        return invalidField("plan.id", running_.plan.id(), "must be the event that is replanned");
    } else {
      const auto plan = backend_.store().get(caller_.householdId, {"plan", asked_.event_id()});
      if (!plan.ok()) return fromStorage(plan.status());
      running_.plan = read<v1::Plan>(*plan);
    }
    if (const Failure wrong =
            readProgress(backend_, caller_.householdId, asked_.event_id(), running_.progress);
        wrong.failed())
      return wrong;
    running_.now = asked_.now();
    if (!asked_.has_now()) running_.now.set_seconds(backend_.clock().now().time_since_epoch().count());
    return addWhatIf();
  }

  Failure addWhatIf() {
    if (asked_.reports().empty()) return {};
    v1::AddReportsRequest check;
    *check.mutable_reports() = asked_.reports();
    if (const auto wrong = validateReports(check, documents_.household); !wrong.empty())
      return invalid(wrong);
    for (v1::Report report : asked_.reports()) {
      if (report.member_id().empty()) report.set_member_id(caller_.memberId);
      if (!report.has_happen_time()) *report.mutable_happen_time() = running_.now;
      *running_.progress.add_reports() = std::move(report);
    }
    return {};
  }

  const std::string& eventId() const override { return asked_.event_id(); }

  void plan() override {
    begin_ = SteadyClock::now();
    if (const Failure wrong = readDocuments(); wrong.failed()) return giveUp(wrong);
    compose::PlanOptions options;
    options.workLimit = kReplanWork;
    absl::StatusOr<compose::ReplannedEvent> made = absl::CancelledError("nobody waits for this plan");
    if (!run().cancel) made = compose::replanEvent(documents_, running_, options, this);
    if (run().cancel) return leave();
    if (!made.ok()) return giveUp(failure(made.status(), "CANNOT_REPLAN"));
    stamp(made->plan);
    if (!asked_.validate_only() && (!made->nothingMoves || asked_.has_event())) return store(*made);
    leave();
    answer(made->plan, made->nothingMoves, 0);
  }

  void stamp(v1::Plan& plan) const {
    plan.set_input_revision(inputRevision_);
    for (const auto& [document, etag] : inputEtags_) (*plan.mutable_input_etags())[document] = etag;
    compose::carryOver(running_.plan, running_.progress.reports_size() > 0, plan);
    const auto used =
        std::chrono::duration_cast<std::chrono::nanoseconds>(SteadyClock::now() - begin_).count();
    auto& time = *plan.mutable_search()->mutable_time_used();
    time.set_seconds(used / 1'000'000'000);
    time.set_nanos(static_cast<std::int32_t>(used % 1'000'000'000));
  }

  void store(const compose::ReplannedEvent& made) {
    // A plan must not outlive its event, nor hide that another one replaced it meanwhile.
    if (const auto event = backend_.store().get(caller_.householdId, {"event", asked_.event_id()});
        !event.ok())
      return giveUp(fromStorage(event.status()));
    auto write = writeRequest(caller_, kReplan, asked_.request_id(), asked_, false);
    write.puts.push_back(putOf(made.plan, storage::Expect::kPresent));
    write.puts.back().etag = running_.plan.meta().etag();
    if (asked_.has_event()) write.puts.push_back(putOf(asked_.event(), storage::Expect::kPresent));
    write.puts.push_back(withoutProposal(asked_.event_id()));
    backend_.queue().submit(
        std::move(write), [self = std::static_pointer_cast<ReplanCall>(shared_from_this()),
                           nothing = made.nothingMoves](absl::StatusOr<storage::WriteResult> result) {
          self->leave();
          if (!result.ok()) return self->endWith(fromStorage(result.status()));
          self->answer(read<v1::Plan>(result->documents.front()), nothing, result->revision);
        });
  }

  void answer(const v1::Plan& plan, bool nothingMoves, std::int64_t revision) {
    v1::MakePlanResponse message = finalAnswer(plan, revision);
    message.set_nothing_moves(nothingMoves);
    std::lock_guard lock(mutex_);
    send(std::move(message));
  }

  const v1::ReplanRequest asked_;
  compose::Documents documents_;
  compose::RunningPlan running_;
  std::int64_t inputRevision_ = 0;
  google::protobuf::Map<std::string, std::string> inputEtags_;
  SteadyClock::time_point begin_;  // of the planning thread
};

}  // namespace

grpc::ServerWriteReactor<v1::MakePlanResponse>* replanEvent(Backend& backend,
                                                            grpc::CallbackServerContext& context,
                                                            const v1::ReplanRequest& asked) {
  const auto call = std::make_shared<ReplanCall>(backend, context, asked);
  call->start();
  return call.get();
}

}  // namespace suppertide::service
