#include "suppertide/v1/plan_service.grpc.pb.h"

#include <map>

#include "server/compose/replanner.h"
#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/find_remedies.h"
#include "server/service/make_plan.h"
#include "server/service/proposals.h"
#include "server/service/replan_event.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

class PlanServiceCalls final : public v1::PlanService::CallbackService {
 public:
  explicit PlanServiceCalls(Backend& backend) : backend_(backend), calls_(backend, "PlanService") {}

  grpc::ServerWriteReactor<v1::MakePlanResponse>* MakePlan(grpc::CallbackServerContext* context,
                                                           const v1::MakePlanRequest* request) override {
    return makePlan(backend_, *context, *request);
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
    return serveCalculated(backend_, context, request, "PlanService/AuditPlan", request->household_id(),
                           [this, answer](const Caller& caller, const v1::AuditPlanRequest& asked,
                                          const auto&) { return audit(caller, asked, *answer); });
  }

  grpc::ServerWriteReactor<v1::MakePlanResponse>* Replan(grpc::CallbackServerContext* context,
                                                         const v1::ReplanRequest* request) override {
    return replanEvent(backend_, *context, *request);
  }

  grpc::ServerUnaryReactor* ExplainStep(grpc::CallbackServerContext* context,
                                        const v1::ExplainStepRequest* request,
                                        v1::ExplainStepResponse* answer) override {
    return serveCalculated(backend_, context, request, "PlanService/ExplainStep", request->household_id(),
                           [this, answer](const Caller& caller, const v1::ExplainStepRequest& asked,
                                          const auto&) { return explain(caller, asked, *answer); });
  }

  grpc::ServerUnaryReactor* ComparePlans(grpc::CallbackServerContext* context,
                                         const v1::ComparePlansRequest* request,
                                         v1::ComparePlansResponse* answer) override {
    return serveCalculated(backend_, context, request, "PlanService/ComparePlans", request->household_id(),
                           [this, answer](const Caller& caller, const v1::ComparePlansRequest& asked,
                                          const auto&) { return compare(caller, asked, *answer); });
  }

  grpc::ServerUnaryReactor* AcceptProposal(grpc::CallbackServerContext* context,
                                           const v1::AcceptProposalRequest* request,
                                           v1::AcceptProposalResponse* answer) override {
    return serve(
        backend_, context, request, "PlanService/AcceptProposal", request->household_id(),
        [this, answer](const Caller& caller, const v1::AcceptProposalRequest& asked, const Finish& finish) {
          acceptProposal(backend_, caller, asked, answer, finish);
        });
  }

  grpc::ServerUnaryReactor* DismissProposal(grpc::CallbackServerContext* context,
                                            const v1::DismissProposalRequest* request,
                                            v1::DismissProposalResponse* answer) override {
    return serve(
        backend_, context, request, "PlanService/DismissProposal", request->household_id(),
        [this, answer](const Caller& caller, const v1::DismissProposalRequest& asked, const Finish& finish) {
          dismissProposal(backend_, caller, asked, answer, finish);
        });
  }

  grpc::ServerWriteReactor<v1::FindRemediesResponse>* FindRemedies(
      grpc::CallbackServerContext* context, const v1::FindRemediesRequest* request) override {
    return findRemedies(backend_, *context, *request);
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
    compose::RunningPlan running;
    if (const Failure wrong = runningOf(caller, asked.event_id(), std::move(plan), running); wrong.failed())
      return wrong;
    const auto result = compose::auditRunning(documents, running);
    if (!result.ok()) return failure(result.status(), "NOT_A_PLAN_OF_THIS_EVENT");
    for (const v1::Breach& breach : result->breaches) *answer.add_breaches() = breach;
    *answer.mutable_costs() = result->costs;
    return {};
  }

  Failure storedPlan(const Caller& caller, const std::string& eventId, v1::Plan& plan) {
    const auto stored = backend_.store().get(caller.householdId, {"plan", eventId});
    if (!stored.ok()) return fromStorage(stored.status());
    plan = read<v1::Plan>(*stored);
    return {};
  }

  // The plan with all reports so far, now.
  Failure runningOf(const Caller& caller, const std::string& eventId, v1::Plan plan,
                    compose::RunningPlan& running) {
    running.plan = std::move(plan);
    running.now.set_seconds(backend_.clock().now().time_since_epoch().count());
    const auto progress = backend_.store().get(caller.householdId, {"progress", eventId});
    if (progress.ok())
      running.progress = read<v1::Progress>(*progress);
    else if (progress.status().code() != absl::StatusCode::kNotFound)
      return fromStorage(progress.status());
    return {};
  }

  Failure explain(const Caller& caller, const v1::ExplainStepRequest& asked,
                  v1::ExplainStepResponse& answer) {
    constexpr std::int64_t kMostShift = 24 * 3600;
    const std::int64_t shift = asked.shift_duration().seconds();
    if (shift < -kMostShift || shift > kMostShift)
      return invalidField("shiftDuration", absl::StrCat(shift, " s"), "must be at most a day either way");
    v1::Plan plan;
    if (const Failure wrong = storedPlan(caller, asked.event_id(), plan); wrong.failed()) return wrong;
    compose::Documents documents;
    std::int64_t revision = 0;
    if (const Failure wrong =
            documentsOf(backend_, caller.householdId, asked.event_id(), documents, revision, nullptr);
        wrong.failed())
      return wrong;
    compose::RunningPlan running;
    if (const Failure wrong = runningOf(caller, asked.event_id(), std::move(plan), running); wrong.failed())
      return wrong;
    const auto told = compose::explainStep(documents, running, asked.step_id(), static_cast<int>(shift / 60));
    if (!told.ok())
      return failure(told.status(), told.status().code() == absl::StatusCode::kNotFound
                                        ? "NO_SUCH_STEP"
                                        : "NOT_A_PLAN_OF_THIS_EVENT");
    *answer.mutable_step() = told->step;
    *answer.mutable_dish_costs() = told->dishCosts;
    for (const v1::Reason& reason : told->obstacles) *answer.add_obstacles() = reason;
    answer.set_possible(told->possible);
    if (!told->possible) return {};
    *answer.mutable_moved_steps() = told->moved;
    *answer.mutable_costs_now() = told->costsNow;
    *answer.mutable_costs_then() = told->costsThen;
    return {};
  }

  Failure compare(const Caller& caller, const v1::ComparePlansRequest& asked,
                  v1::ComparePlansResponse& answer) {
    v1::Plan before = asked.before();
    if (!asked.has_before())
      if (const Failure wrong = storedPlan(caller, asked.event_id(), before); wrong.failed()) return wrong;
    *answer.mutable_costs_before() = before.quality().costs();
    *answer.mutable_costs_after() = asked.after().quality().costs();
    *answer.mutable_moved_steps() = compose::movedSteps(before, asked.after());
    std::map<std::string, v1::DishDifference> dishes;
    for (const v1::PlannedDish& dish : before.dishes()) *dishes[dish.dish_id()].mutable_before() = dish;
    for (const v1::PlannedDish& dish : asked.after().dishes()) *dishes[dish.dish_id()].mutable_after() = dish;
    for (auto& [id, difference] : dishes) {
      const bool same =
          difference.has_before() && difference.has_after() &&
          difference.before().costs().SerializeAsString() == difference.after().costs().SerializeAsString();
      if (same) continue;
      difference.set_dish_id(id);
      *answer.add_dishes() = std::move(difference);
    }
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
