#include "suppertide/v1/plan_service.grpc.pb.h"

#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/make_plan.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

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
    return serve(
        backend_, context, request, "PlanService/AuditPlan", request->household_id(),
        [this, answer](const Caller& caller, const v1::AuditPlanRequest& asked, const Finish& finish) {
          backend_.auditors().post(
              [this, caller, &asked, answer, finish] { finish(audit(caller, asked, *answer)); });
        });
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
