#include "suppertide/v1/event_service.grpc.pb.h"

#include "server/compose/day/copied_event.h"
#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

class EventServiceCalls final : public v1::EventService::CallbackService {
 public:
  explicit EventServiceCalls(Backend& backend)
      : backend_(backend),
        calls_(backend, "EventService", kMostEvents,
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

  grpc::ServerUnaryReactor* CopyEvent(grpc::CallbackServerContext* context,
                                      const v1::CopyEventRequest* request,
                                      v1::WriteEventResponse* answer) override {
    return calls_.createFrom(context, request, "CopyEvent", answer, answer->mutable_event(),
                             [this](const Caller& caller, const v1::CopyEventRequest& asked,
                                    v1::Event& copy) { return copyOf(caller, asked, copy); });
  }

 private:
  Failure copyOf(const Caller& caller, const v1::CopyEventRequest& asked, v1::Event& copy) {
    const auto household = backend_.store().get(caller.householdId, {"household", caller.householdId});
    if (!household.ok()) return fromStorage(household.status());
    const auto event = backend_.store().get(caller.householdId, {"event", asked.event_id()});
    if (event.status().code() == absl::StatusCode::kNotFound)
      return failure(absl::NotFoundError("there is no event '" + asked.event_id() + "' in this household"),
                     "NO_SUCH_DOCUMENT");
    if (!event.ok()) return fromStorage(event.status());
    auto made = compose::copiedEvent(read<v1::Household>(*household), read<v1::Event>(*event), asked.date());
    if (!made.ok()) return invalidField("date", asked.date().substr(0, 40), "must be a day, YYYY-MM-DD");
    copy = *std::move(made);
    copy.set_id(asked.new_event_id());
    if (!asked.display_name().empty()) copy.set_display_name(asked.display_name());
    return {};
  }

  Backend& backend_;
  DocumentCalls<v1::Event> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeEventService(Backend& backend) {
  return std::make_unique<EventServiceCalls>(backend);
}

}  // namespace suppertide::service
