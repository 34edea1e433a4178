#include "suppertide/v1/kitchen_service.grpc.pb.h"

#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/oven_fitting.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

class KitchenServiceCalls final : public v1::KitchenService::CallbackService {
 public:
  explicit KitchenServiceCalls(Backend& backend)
      : backend_(backend), calls_(backend, "KitchenService", kMostKitchens) {}

  grpc::ServerUnaryReactor* GetKitchen(grpc::CallbackServerContext* context,
                                       const v1::GetKitchenRequest* request, v1::Kitchen* answer) override {
    return calls_.get(context, request, request->kitchen_id(), "GetKitchen", answer);
  }
  grpc::ServerUnaryReactor* ListKitchens(grpc::CallbackServerContext* context,
                                         const v1::ListKitchensRequest* request,
                                         v1::ListKitchensResponse* answer) override {
    return calls_.list(
        context, request, "ListKitchens", answer,
        [](v1::ListKitchensResponse* to, v1::Kitchen one) { *to->add_kitchens() = std::move(one); });
  }
  grpc::ServerUnaryReactor* CreateKitchen(grpc::CallbackServerContext* context,
                                          const v1::CreateKitchenRequest* request,
                                          v1::WriteKitchenResponse* answer) override {
    return calls_.create(context, request, request->kitchen(), "CreateKitchen", answer,
                         answer->mutable_kitchen());
  }
  grpc::ServerUnaryReactor* UpdateKitchen(grpc::CallbackServerContext* context,
                                          const v1::UpdateKitchenRequest* request,
                                          v1::WriteKitchenResponse* answer) override {
    return calls_.update(context, request, request->household_id(), request->kitchen(), "UpdateKitchen",
                         answer, answer->mutable_kitchen());
  }
  grpc::ServerUnaryReactor* DeleteKitchen(grpc::CallbackServerContext* context,
                                          const v1::DeleteKitchenRequest* request,
                                          v1::DeleteKitchenResponse* answer) override {
    return calls_.remove(context, request, request->kitchen_id(), "DeleteKitchen", answer);
  }
  grpc::ServerUnaryReactor* FitOven(grpc::CallbackServerContext* context, const v1::FitOvenRequest* request,
                                    v1::FitOvenResponse* answer) override {
    return serveCalculated(
        backend_, context, request, "KitchenService/FitOven", request->household_id(),
        [this, answer](const Caller& caller, const v1::FitOvenRequest& asked, const auto&) {
          if (asked.event_id().empty()) return fitOven(asked.oven(), *answer);
          v1::Bundle bundle;
          const Failure wrong = exportOf(backend_, caller.householdId, asked.event_id(), bundle);
          return wrong.failed() ? wrong : fitOvenByDay(bundle, asked, *answer);
        });
  }

 private:
  Backend& backend_;
  DocumentCalls<v1::Kitchen> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeKitchenService(Backend& backend) {
  return std::make_unique<KitchenServiceCalls>(backend);
}

}  // namespace suppertide::service
