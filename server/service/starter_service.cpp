#include "suppertide/v1/starter_service.grpc.pb.h"

#include "server/service/document_calls.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

class StarterServiceCalls final : public v1::StarterService::CallbackService {
 public:
  explicit StarterServiceCalls(Backend& backend) : calls_(backend, "StarterService", kMostStarters) {}

  grpc::ServerUnaryReactor* GetStarter(grpc::CallbackServerContext* context,
                                       const v1::GetStarterRequest* request, v1::Starter* answer) override {
    return calls_.get(context, request, request->starter_id(), "GetStarter", answer);
  }
  grpc::ServerUnaryReactor* ListStarters(grpc::CallbackServerContext* context,
                                         const v1::ListStartersRequest* request,
                                         v1::ListStartersResponse* answer) override {
    return calls_.list(
        context, request, "ListStarters", answer,
        [](v1::ListStartersResponse* to, v1::Starter one) { *to->add_starters() = std::move(one); });
  }
  grpc::ServerUnaryReactor* CreateStarter(grpc::CallbackServerContext* context,
                                          const v1::CreateStarterRequest* request,
                                          v1::WriteStarterResponse* answer) override {
    return calls_.create(context, request, request->starter(), "CreateStarter", answer,
                         answer->mutable_starter());
  }
  grpc::ServerUnaryReactor* UpdateStarter(grpc::CallbackServerContext* context,
                                          const v1::UpdateStarterRequest* request,
                                          v1::WriteStarterResponse* answer) override {
    return calls_.update(context, request, request->household_id(), request->starter(), "UpdateStarter",
                         answer, answer->mutable_starter());
  }
  grpc::ServerUnaryReactor* DeleteStarter(grpc::CallbackServerContext* context,
                                          const v1::DeleteStarterRequest* request,
                                          v1::DeleteStarterResponse* answer) override {
    return calls_.remove(context, request, request->starter_id(), "DeleteStarter", answer);
  }

 private:
  DocumentCalls<v1::Starter> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeStarterService(Backend& backend) {
  return std::make_unique<StarterServiceCalls>(backend);
}

}  // namespace suppertide::service
