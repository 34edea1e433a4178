#include "suppertide/v1/bread_service.grpc.pb.h"

#include "server/service/backend.h"
#include "server/service/bread_readings.h"
#include "server/service/dough_answers.h"
#include "server/service/services.h"
#include "server/service/validate_doughs.h"

namespace suppertide::service {
namespace {

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
    return serveCalculated(backend_, context, request, "BreadService/CheckModel", "",
                           [answer](const Caller&, const v1::CheckModelRequest&, const auto&) {
                             *answer = compose::checkModel();
                             return Failure();
                           });
  }

 private:
  template <typename Request, typename Answer>
  grpc::ServerUnaryReactor* compute(grpc::CallbackServerContext* context, const Request* request,
                                    Answer* answer, const std::string& method,
                                    absl::StatusOr<Answer> (*answerTo)(const Request&,
                                                                       const compose::StopAsked&)) {
    return serveCalculated(
        backend_, context, request, method, "",
        [answer, answerTo](const Caller&, const Request& asked, const compose::StopAsked& stop) {
          if (const auto wrong = compose::validate(asked); !wrong.empty()) return invalid(wrong);
          absl::StatusOr<Answer> found = answerTo(asked, stop);
          if (absl::IsCancelled(found.status())) return nobodyWaits();
          if (!found.ok()) return failure(found.status(), "NO_SUCH_DOUGH");
          *answer = *std::move(found);
          return Failure();
        });
  }

  Backend& backend_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeBreadService(Backend& backend) {
  return std::make_unique<BreadServiceCalls>(backend);
}

}  // namespace suppertide::service
