#include "suppertide/v1/event_service.grpc.pb.h"

#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

class EventServiceCalls final : public v1::EventService::CallbackService {
 public:
  explicit EventServiceCalls(Backend& backend)
      : calls_(backend, "EventService", kMostEvents,
               [&backend](const Caller& caller, const v1::Event& event) {
                 return checkReferences(backend, caller.householdId, event);
               }) {}

  grpc::ServerUnaryReactor* GetEvent(grpc::CallbackServerContext* context, const v1::GetEventRequest* request,
                                     v1::Event* answer) override {
    return calls_.get(context, request, request->event_id(), "GetEvent", answer);
  }
  grpc::ServerUnaryReactor* ListEvents(grpc::CallbackServerContext* context,
                                       const v1::ListEventsRequest* request,
                                       v1::ListEventsResponse* answer) override {
    return calls_.list(context, request, "ListEvents", answer,
                       [](v1::ListEventsResponse* to, v1::Event one) { *to->add_events() = std::move(one); });
  }
  grpc::ServerUnaryReactor* CreateEvent(grpc::CallbackServerContext* context,
                                        const v1::CreateEventRequest* request,
                                        v1::WriteEventResponse* answer) override {
    return calls_.create(context, request, request->event(), "CreateEvent", answer, answer->mutable_event());
  }
  grpc::ServerUnaryReactor* UpdateEvent(grpc::CallbackServerContext* context,
                                        const v1::UpdateEventRequest* request,
                                        v1::WriteEventResponse* answer) override {
    return calls_.update(context, request, request->household_id(), request->event(), "UpdateEvent", answer,
                         answer->mutable_event());
  }
  grpc::ServerUnaryReactor* DeleteEvent(grpc::CallbackServerContext* context,
                                        const v1::DeleteEventRequest* request,
                                        v1::DeleteEventResponse* answer) override {
    return calls_.remove(context, request, request->event_id(), "DeleteEvent", answer,
                         {"plan", "progress", "plan_proposal", "review", "shopping"});
  }

 private:
  DocumentCalls<v1::Event> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeEventService(Backend& backend) {
  return std::make_unique<EventServiceCalls>(backend);
}

}  // namespace suppertide::service
