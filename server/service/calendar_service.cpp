#include "suppertide/v1/calendar_service.grpc.pb.h"

#include "server/base/ids.h"
#include "server/service/calendars.h"
#include "server/service/pages.h"
#include "server/service/secrets.h"
#include "server/service/services.h"
#include "server/service/text.h"

namespace suppertide::service {
namespace {

constexpr int kMostAddresses = 50;
constexpr int kMostName = 60;

class CalendarServiceCalls final : public v1::CalendarService::CallbackService {
 public:
  explicit CalendarServiceCalls(Backend& backend) : backend_(backend) {}

  grpc::ServerUnaryReactor* ExportCalendar(grpc::CallbackServerContext* context,
                                           const v1::ExportCalendarRequest* request,
                                           v1::ExportCalendarResponse* answer) override {
    return serve(
        backend_, context, request, "CalendarService/ExportCalendar", request->household_id(),
        [this, answer](const Caller& caller, const v1::ExportCalendarRequest& asked, const Finish& finish) {
          if (asked.event_id().empty())
            return finish(invalidField("eventId", "", "must say which event it is"));
          finish(calendarText(backend_, caller.householdId, asked.event_id(), asked.member_id(),
                              *answer->mutable_calendar()));
        });
  }

  grpc::ServerUnaryReactor* CreateCalendarAddress(grpc::CallbackServerContext* context,
                                                  const v1::CreateCalendarAddressRequest* request,
                                                  v1::CreateCalendarAddressResponse* answer) override {
    return serve(backend_, context, request, "CalendarService/CreateCalendarAddress", request->household_id(),
                 [this, answer](const Caller& caller, const v1::CreateCalendarAddressRequest& asked,
                                const Finish& finish) { create(caller, asked, answer, finish); });
  }

  grpc::ServerUnaryReactor* ListCalendarAddresses(grpc::CallbackServerContext* context,
                                                  const v1::ListCalendarAddressesRequest* request,
                                                  v1::ListCalendarAddressesResponse* answer) override {
    return serve(
        backend_, context, request, "CalendarService/ListCalendarAddresses", request->household_id(),
        [this, answer](const Caller& caller, const v1::ListCalendarAddressesRequest& asked,
                       const Finish& finish) {
          const auto stored = backend_.store().list(caller.householdId, kind(), "", kMostAddresses);
          if (!stored.ok()) return finish(fromStorage(stored.status()));
          finish(tellPage(
              asked, *answer, *stored, [](const storage::Document& document) { return document.key.id; },
              [&](const storage::Document& document) { *answer->add_addresses() = shown(document); }));
        });
  }

  grpc::ServerUnaryReactor* RevokeCalendarAddress(grpc::CallbackServerContext* context,
                                                  const v1::RevokeCalendarAddressRequest* request,
                                                  v1::RevokeCalendarAddressResponse* answer) override {
    return serve(backend_, context, request, "CalendarService/RevokeCalendarAddress", request->household_id(),
                 [this, answer](const Caller& caller, const v1::RevokeCalendarAddressRequest& asked,
                                const Finish& finish) { revoke(caller, asked, answer, finish); });
  }

 private:
  static std::string kind() { return kindOf(v1::CalendarAddress()); }
  static v1::CalendarAddress shown(const storage::Document& document) {
    auto address = read<v1::CalendarAddress>(document);
    address.clear_secret_hash();
    return address;
  }

  static Failure notTheirs() {
    return failure(absl::PermissionDeniedError("only a host may do this for others"), "ROLE_TOO_SMALL");
  }

  Failure check(const Caller& caller, const v1::CalendarAddress& address) {
    if (backend_.calendarPort() == 0)
      return failure(absl::FailedPreconditionError(
                         "this server serves no calendars: start it with --calendar, or export a file"),
                     "NO_CALENDARS");
    if (caller.role < v1::ROLE_HOST && address.member_id() != caller.memberId) return notTheirs();
    const int length = charactersOf(address.display_name());
    if (length < 1 || length > kMostName)
      return invalidField("address.displayName", absl::StrCat(length, " characters"),
                          "must be 1 to 60 characters");
    const auto household = backend_.store().get(caller.householdId, {"household", caller.householdId});
    if (!household.ok()) return fromStorage(household.status());
    if (!address.member_id().empty() &&
        memberOf(read<v1::Household>(*household), address.member_id()) == nullptr)
      return invalidField("address.memberId", address.member_id().substr(0, 64),
                          "must be a member of the household");
    if (!address.event_id().empty() &&
        !backend_.store().get(caller.householdId, {"event", address.event_id()}).ok())
      return invalidField("address.eventId", address.event_id().substr(0, 64),
                          "must be an event of the household");
    const auto present = backend_.store().list(caller.householdId, kind(), "", kMostAddresses);
    if (!present.ok()) return fromStorage(present.status());
    return static_cast<int>(present->size()) < kMostAddresses ? Failure()
                                                              : tooMany("calendar address", kMostAddresses);
  }

  void create(const Caller& caller, const v1::CreateCalendarAddressRequest& asked,
              v1::CreateCalendarAddressResponse* answer, const Finish& finish) {
    if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
    if (const Failure wrong = check(caller, asked.address()); wrong.failed()) return finish(wrong);
    const std::string secret = newToken();
    v1::CalendarAddress address = asked.address();
    address.set_id(newId());
    address.set_secret_hash(hexHashOf(secret));
    auto write = writeRequest(caller, "CalendarService/CreateCalendarAddress", asked.request_id(), asked,
                              asked.validate_only());
    write.puts.push_back(putOf(address, storage::Expect::kAbsent));
    write.puts.back().etag.clear();
    backend_.queue().submit(
        std::move(write), [this, caller, secret, answer, finish,
                           tried = asked.validate_only()](absl::StatusOr<storage::WriteResult> result) {
          if (!result.ok()) return finish(fromStorage(result.status()));
          *answer->mutable_address() = shown(result->documents.front());
          if (!result->replayed && !tried)
            answer->set_path(calendarPath(caller.householdId, answer->address().id(), secret));
          answer->set_port(backend_.calendarPort());
          answer->set_tls(backend_.calendarTls());
          answer->set_revision(result->revision);
          finish({});
        });
  }

  void revoke(const Caller& caller, const v1::RevokeCalendarAddressRequest& asked,
              v1::RevokeCalendarAddressResponse* answer, const Finish& finish) {
    if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
    const auto stored = backend_.store().get(caller.householdId, {kind(), asked.address_id()});
    if (stored.ok() && caller.role < v1::ROLE_HOST &&
        read<v1::CalendarAddress>(*stored).member_id() != caller.memberId)
      return finish(notTheirs());
    auto write = writeRequest(caller, "CalendarService/RevokeCalendarAddress", asked.request_id(), asked,
                              asked.validate_only());
    write.puts.push_back({{kind(), asked.address_id()}, "", storage::Expect::kAnything, "", true});
    backend_.queue().submit(std::move(write), [answer, finish](absl::StatusOr<storage::WriteResult> result) {
      if (!result.ok()) return finish(fromStorage(result.status()));
      answer->set_revision(result->revision);
      finish({});
    });
  }

  Backend& backend_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeCalendarService(Backend& backend) {
  return std::make_unique<CalendarServiceCalls>(backend);
}

}  // namespace suppertide::service
