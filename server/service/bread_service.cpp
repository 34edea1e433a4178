#include "suppertide/v1/bread_service.grpc.pb.h"

#include "server/service/backend.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

class BreadServiceCalls final : public v1::BreadService::CallbackService {
 public:
  grpc::ServerUnaryReactor* ForecastDough(grpc::CallbackServerContext* context,
                                          const v1::ForecastDoughRequest*,
                                          v1::ForecastDoughResponse*) override {
    return notServedYet(context);
  }
  grpc::ServerUnaryReactor* FitDough(grpc::CallbackServerContext* context, const v1::FitDoughRequest*,
                                     v1::FitDoughResponse*) override {
    return notServedYet(context);
  }
};

}  // namespace

std::unique_ptr<grpc::Service> makeBreadService(Backend&) {
  return std::make_unique<BreadServiceCalls>();
}

}  // namespace suppertide::service
