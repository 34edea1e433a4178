#include "suppertide/v1/bread_service.grpc.pb.h"

#include "server/service/backend.h"
#include "server/service/bread_readings.h"
#include "server/service/dough_answers.h"
#include "server/service/services.h"
#include "server/service/validate_doughs.h"

namespace suppertide::service {
namespace {

// All of it is computing, so it takes its household's turn on the planning threads.
class BreadServiceCalls final : public v1::BreadService::CallbackService {
 public:
  explicit BreadServiceCalls(Backend& backend) : backend_(backend) {}

  grpc::ServerUnaryReactor* ForecastDough(grpc::CallbackServerContext* context,
                                          const v1::ForecastDoughRequest* request,
                                          v1::ForecastDoughResponse* answer) override {
    return compute(context, request, answer, "BreadService/ForecastDough", compose::forecastDough);
  }
  grpc::ServerUnaryReactor* FitDough(grpc::CallbackServerContext* context, const v1::FitDoughRequest* request,
                                     v1::FitDoughResponse* answer) override {
    return compute(context, request, answer, "BreadService/FitDough", compose::fitDough);
  }
  grpc::ServerUnaryReactor* WorkOutDough(grpc::CallbackServerContext* context,
                                         const v1::WorkOutDoughRequest* request,
                                         v1::WorkOutDoughResponse* answer) override {
    return compute(context, request, answer, "BreadService/WorkOutDough", compose::workOutDough);
  }
  grpc::ServerUnaryReactor* AddBreadReadings(grpc::CallbackServerContext* context,
                                             const v1::AddBreadReadingsRequest* request,
                                             v1::AddBreadReadingsResponse* answer) override {
    return serve(
        backend_, context, request, "BreadService/AddBreadReadings", request->household_id(),
        [this, answer](const Caller& caller, const v1::AddBreadReadingsRequest& asked, const Finish& finish) {
          addBreadReadings(backend_, caller, asked, answer, finish);
        });
  }
  grpc::ServerUnaryReactor* CheckModel(grpc::CallbackServerContext* context,
                                       const v1::CheckModelRequest* request,
                                       v1::CheckModelResponse* answer) override {
    return serve(backend_, context, request, "BreadService/CheckModel", "",
                 [this, answer](const Caller& caller, const v1::CheckModelRequest&, const Finish& finish) {
                   backend_.planning().post(caller.householdId, [answer, finish] {
                     *answer = compose::checkModel();
                     finish({});
                   });
                 });
  }

 private:
  template <typename Request, typename Answer>
  grpc::ServerUnaryReactor* compute(grpc::CallbackServerContext* context, const Request* request,
                                    Answer* answer, const std::string& method,
                                    absl::StatusOr<Answer> (*answerTo)(const Request&,
                                                                       const compose::StopAsked&)) {
    return serve(
        backend_, context, request, method, "",
        [this, context, answer, answerTo](const Caller& caller, const Request& asked, const Finish& finish) {
          if (const auto wrong = compose::validate(asked); !wrong.empty()) return finish(invalid(wrong));
          backend_.planning().post(caller.householdId, [context, answer, answerTo, &asked, finish] {
            const auto stop = [context] { return context->IsCancelled(); };
            absl::StatusOr<Answer> found = absl::CancelledError("nobody waits for this answer");
            if (!stop()) found = answerTo(asked, stop);
            if (!found.ok())
              return finish(
                  failure(found.status(), absl::IsCancelled(found.status()) ? "CANCELLED" : "NO_SUCH_DOUGH"));
            *answer = *std::move(found);
            finish({});
          });
        });
  }

  Backend& backend_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeBreadService(Backend& backend) {
  return std::make_unique<BreadServiceCalls>(backend);
}

}  // namespace suppertide::service
