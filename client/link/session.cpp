#include "client/link/session.h"

#include <grpcpp/client_context.h>

#include <utility>

#include "client/link/any_write.h"
#include "client/link/bundle_parts.h"
#include "client/link/channel.h"
#include "client/link/error_detail.h"
#include "client/link/open_calls.h"
#include "suppertide/v1/bread_service.grpc.pb.h"
#include "suppertide/v1/calendar_service.grpc.pb.h"
#include "suppertide/v1/event_service.grpc.pb.h"
#include "suppertide/v1/household_service.grpc.pb.h"
#include "suppertide/v1/kitchen_service.grpc.pb.h"
#include "suppertide/v1/menu_service.grpc.pb.h"
#include "suppertide/v1/plan_service.grpc.pb.h"
#include "suppertide/v1/progress_service.grpc.pb.h"
#include "suppertide/v1/reminder_service.grpc.pb.h"
#include "suppertide/v1/review_service.grpc.pb.h"
#include "suppertide/v1/shopping_service.grpc.pb.h"

namespace suppertide::link {
namespace {

// What MakePlan uses when the request names no limit, and the least it is waited for beyond.
constexpr std::chrono::seconds kUsualPlanning{20};
constexpr std::chrono::seconds kPlanningGrace{60};

}  // namespace

struct Session::Stubs {
  explicit Stubs(SessionOptions o) : options(std::move(o)) {
    channel = openChannel(options.target, options.certificatePem, options.fingerprint);
    households = v1::HouseholdService::NewStub(channel);
    breads = v1::BreadService::NewStub(channel);
    calendars = v1::CalendarService::NewStub(channel);
    events = v1::EventService::NewStub(channel);
    kitchens = v1::KitchenService::NewStub(channel);
    menus = v1::MenuService::NewStub(channel);
    plans = v1::PlanService::NewStub(channel);
    progress = v1::ProgressService::NewStub(channel);
    reminders = v1::ReminderService::NewStub(channel);
    reviews = v1::ReviewService::NewStub(channel);
    shopping = v1::ShoppingService::NewStub(channel);
  }

  void prepare(grpc::ClientContext& context, std::chrono::milliseconds deadline) const {
    if (!options.deviceToken.empty()) context.AddMetadata("authorization", "Bearer " + options.deviceToken);
    context.set_deadline(std::chrono::system_clock::now() + deadline);
  }

  // One unary call of `stub`; `method` is its member function.
  template <typename Stub, typename Request, typename Response>
  absl::StatusOr<Response> call(Stub& stub,
                                grpc::Status (Stub::*method)(grpc::ClientContext*, const Request&, Response*),
                                const Request& request) const {
    OpenCalls::Call open(calls);
    grpc::ClientContext& context = open.context();
    prepare(context, options.deadline);
    Response response;
    const grpc::Status status = (stub.*method)(&context, request, &response);
    if (!status.ok()) return toStatus(status, context);
    return response;
  }

  SessionOptions options;
  mutable OpenCalls calls;
  std::shared_ptr<grpc::Channel> channel;
  std::unique_ptr<v1::HouseholdService::Stub> households;
  std::unique_ptr<v1::BreadService::Stub> breads;
  std::unique_ptr<v1::CalendarService::Stub> calendars;
  std::unique_ptr<v1::EventService::Stub> events;
  std::unique_ptr<v1::KitchenService::Stub> kitchens;
  std::unique_ptr<v1::MenuService::Stub> menus;
  std::unique_ptr<v1::PlanService::Stub> plans;
  std::unique_ptr<v1::ProgressService::Stub> progress;
  std::unique_ptr<v1::ReminderService::Stub> reminders;
  std::unique_ptr<v1::ReviewService::Stub> reviews;
  std::unique_ptr<v1::ShoppingService::Stub> shopping;
};

Session::Session(SessionOptions options) : stubs_(std::make_unique<Stubs>(std::move(options))) {}
Session::~Session() = default;

absl::StatusOr<v1::CreateHouseholdResponse> Session::createHousehold(
    const v1::CreateHouseholdRequest& request) {
  return stubs_->call(*stubs_->households, &v1::HouseholdService::Stub::CreateHousehold, request);
}

absl::StatusOr<v1::JoinHouseholdResponse> Session::joinHousehold(const v1::JoinHouseholdRequest& request) {
  return stubs_->call(*stubs_->households, &v1::HouseholdService::Stub::JoinHousehold, request);
}

absl::StatusOr<v1::WhoAmIResponse> Session::whoAmI() {
  return stubs_->call(*stubs_->households, &v1::HouseholdService::Stub::WhoAmI, v1::WhoAmIRequest());
}

absl::StatusOr<v1::Household> Session::household(const v1::GetHouseholdRequest& request) {
  return stubs_->call(*stubs_->households, &v1::HouseholdService::Stub::GetHousehold, request);
}

absl::StatusOr<v1::ImportBundleResponse> Session::importBundle(const v1::ImportBundleRequest& request) {
  grpc::ClientContext context;
  stubs_->prepare(context, stubs_->options.deadline);
  v1::ImportBundleResponse response;
  const auto writer = stubs_->households->ImportBundle(&context, &response);
  for (const v1::ImportBundleRequest& part : partsOf(request))
    if (!writer->Write(part)) break;  // why is in the status
  writer->WritesDone();
  const grpc::Status status = writer->Finish();
  if (!status.ok()) return toStatus(status, context);
  return response;
}

absl::StatusOr<v1::Bundle> Session::exportBundle(const v1::ExportBundleRequest& request) {
  grpc::ClientContext context;
  stubs_->prepare(context, stubs_->options.deadline);
  const auto reader = stubs_->households->ExportBundle(&context, request);
  v1::Bundle bundle;
  v1::Bundle part;
  while (reader->Read(&part)) bundle.MergeFrom(part);
  const grpc::Status status = reader->Finish();
  if (!status.ok()) return toStatus(status, context);
  return bundle;
}

absl::StatusOr<v1::CreateInvitationResponse> Session::createInvitation(
    const v1::CreateInvitationRequest& request) {
  return stubs_->call(*stubs_->households, &v1::HouseholdService::Stub::CreateInvitation, request);
}

absl::StatusOr<v1::ListDevicesResponse> Session::listDevices(const v1::ListDevicesRequest& request) {
  v1::ListDevicesResponse all;
  v1::ListDevicesRequest asked = request;
  do {
    auto page = stubs_->call(*stubs_->households, &v1::HouseholdService::Stub::ListDevices, asked);
    if (!page.ok()) return page.status();
    all.mutable_devices()->MergeFrom(page->devices());
    asked.set_page_token(page->next_page_token());
  } while (!asked.page_token().empty());
  return all;
}

absl::StatusOr<v1::RevokeDeviceResponse> Session::revokeDevice(const v1::RevokeDeviceRequest& request) {
  return stubs_->call(*stubs_->households, &v1::HouseholdService::Stub::RevokeDevice, request);
}

absl::StatusOr<v1::ForecastDoughResponse> Session::forecastDough(const v1::ForecastDoughRequest& request) {
  return stubs_->call(*stubs_->breads, &v1::BreadService::Stub::ForecastDough, request);
}

absl::StatusOr<v1::FitDoughResponse> Session::fitDough(const v1::FitDoughRequest& request) {
  return stubs_->call(*stubs_->breads, &v1::BreadService::Stub::FitDough, request);
}

absl::StatusOr<v1::WorkOutDoughResponse> Session::workOutDough(const v1::WorkOutDoughRequest& request) {
  return stubs_->call(*stubs_->breads, &v1::BreadService::Stub::WorkOutDough, request);
}

absl::StatusOr<v1::AddBreadReadingsResponse> Session::addBreadReadings(
    const v1::AddBreadReadingsRequest& request) {
  return stubs_->call(*stubs_->breads, &v1::BreadService::Stub::AddBreadReadings, request);
}

absl::StatusOr<v1::CheckModelResponse> Session::checkModel(const v1::CheckModelRequest& request) {
  return stubs_->call(*stubs_->breads, &v1::BreadService::Stub::CheckModel, request);
}

absl::StatusOr<v1::ParseIngredientsResponse> Session::parseIngredients(
    const v1::ParseIngredientsRequest& request) {
  return stubs_->call(*stubs_->menus, &v1::MenuService::Stub::ParseIngredients, request);
}

absl::StatusOr<v1::CheckMenuResponse> Session::checkMenu(const v1::CheckMenuRequest& request) {
  return stubs_->call(*stubs_->menus, &v1::MenuService::Stub::CheckMenu, request);
}

absl::StatusOr<v1::MakeShoppingListResponse> Session::makeShoppingList(
    const v1::MakeShoppingListRequest& request) {
  return stubs_->call(*stubs_->menus, &v1::MenuService::Stub::MakeShoppingList, request);
}

absl::StatusOr<v1::ScaledRecipe> Session::scaleRecipe(const v1::ScaleRecipeRequest& request) {
  return stubs_->call(*stubs_->menus, &v1::MenuService::Stub::ScaleRecipe, request);
}

absl::StatusOr<v1::WriteHouseholdResponse> Session::updateHousehold(
    const v1::UpdateHouseholdRequest& request) {
  return stubs_->call(*stubs_->households, &v1::HouseholdService::Stub::UpdateHousehold, request);
}

absl::StatusOr<v1::ListSafetyRulesResponse> Session::safetyRules(const v1::ListSafetyRulesRequest& request) {
  return stubs_->call(*stubs_->menus, &v1::MenuService::Stub::ListSafetyRules, request);
}

absl::StatusOr<v1::EditShoppingResponse> Session::editShopping(const v1::EditShoppingRequest& request) {
  return stubs_->call(*stubs_->shopping, &v1::ShoppingService::Stub::EditShopping, request);
}

absl::StatusOr<v1::FitOvenResponse> Session::fitOven(const v1::FitOvenRequest& request) {
  return stubs_->call(*stubs_->kitchens, &v1::KitchenService::Stub::FitOven, request);
}

absl::StatusOr<v1::WriteKitchenResponse> Session::updateKitchen(const v1::UpdateKitchenRequest& request) {
  return stubs_->call(*stubs_->kitchens, &v1::KitchenService::Stub::UpdateKitchen, request);
}

absl::StatusOr<std::vector<v1::Event>> Session::events(const std::string& householdId) {
  std::vector<v1::Event> all;
  v1::ListEventsRequest request;
  request.set_household_id(householdId);
  do {
    auto page = stubs_->call(*stubs_->events, &v1::EventService::Stub::ListEvents, request);
    if (!page.ok()) return page.status();
    all.insert(all.end(), page->events().begin(), page->events().end());
    request.set_page_token(page->next_page_token());
  } while (!request.page_token().empty());
  return all;
}

absl::StatusOr<v1::MakePlanResponse> Session::makePlan(
    const v1::MakePlanRequest& request, const std::function<void(const v1::MakePlanResponse&)>& told) {
  const std::chrono::seconds limit =
      request.has_time_limit() ? std::chrono::seconds(request.time_limit().seconds()) : kUsualPlanning;
  OpenCalls::Call open(stubs_->calls);
  grpc::ClientContext& context = open.context();
  stubs_->prepare(context, limit + kPlanningGrace);
  const auto reader = stubs_->plans->MakePlan(&context, request);
  v1::MakePlanResponse message;
  v1::MakePlanResponse last;
  while (reader->Read(&message)) {
    if (told) told(message);
    if (message.final()) last = message;
  }
  const grpc::Status status = reader->Finish();
  if (!status.ok()) return toStatus(status, context);
  if (!last.final()) return absl::InternalError("plan the event: the server ended without a final plan");
  return last;
}

absl::StatusOr<v1::MakePlanResponse> Session::replan(const v1::ReplanRequest& request) {
  OpenCalls::Call open(stubs_->calls);
  grpc::ClientContext& context = open.context();
  stubs_->prepare(context, kPlanningGrace);
  const auto reader = stubs_->plans->Replan(&context, request);
  v1::MakePlanResponse message;
  v1::MakePlanResponse last;
  while (reader->Read(&message))
    if (message.final()) last = message;
  const grpc::Status status = reader->Finish();
  if (!status.ok()) return toStatus(status, context);
  if (!last.final()) return absl::InternalError("replan the event: the server ended without a final plan");
  return last;
}

absl::StatusOr<v1::ExplainStepResponse> Session::explainStep(const v1::ExplainStepRequest& request) {
  return stubs_->call(*stubs_->plans, &v1::PlanService::Stub::ExplainStep, request);
}

absl::StatusOr<v1::AddReportsResponse> Session::addReports(const v1::AddReportsRequest& request) {
  return stubs_->call(*stubs_->progress, &v1::ProgressService::Stub::AddReports, request);
}

absl::Status Session::findRemedies(const v1::FindRemediesRequest& request,
                                   const std::function<bool(const v1::FindRemediesResponse&)>& told) {
  OpenCalls::Call open(stubs_->calls);
  grpc::ClientContext& context = open.context();
  stubs_->prepare(context, kPlanningGrace);
  const auto reader = stubs_->plans->FindRemedies(&context, request);
  v1::FindRemediesResponse message;
  bool final = false;
  bool left = false;
  while (reader->Read(&message)) {
    final = message.final();
    if (told(message) || final || left) continue;
    left = true;
    context.TryCancel();
  }
  const grpc::Status status = reader->Finish();
  if (left) return absl::OkStatus();
  if (!status.ok()) return toStatus(status, context);
  if (!final) return absl::InternalError("find remedies: the server ended before it was done");
  return absl::OkStatus();
}

absl::StatusOr<v1::StopPlanningResponse> Session::stopPlanning(const v1::StopPlanningRequest& request) {
  return stubs_->call(*stubs_->plans, &v1::PlanService::Stub::StopPlanning, request);
}

absl::StatusOr<v1::Plan> Session::plan(const v1::GetPlanRequest& request) {
  return stubs_->call(*stubs_->plans, &v1::PlanService::Stub::GetPlan, request);
}

absl::StatusOr<v1::AuditPlanResponse> Session::auditPlan(const v1::AuditPlanRequest& request) {
  return stubs_->call(*stubs_->plans, &v1::PlanService::Stub::AuditPlan, request);
}

absl::StatusOr<std::unique_ptr<google::protobuf::Message>> Session::carryOut(
    const google::protobuf::Message& request) {
  return writeAny(stubs_->channel, stubs_->options.deviceToken, request, stubs_->options.deadline,
                  stubs_->calls);
}

absl::Status Session::write(const google::protobuf::Message& request) {
  return carryOut(request).status();
}

void Session::cancel() {
  stubs_->calls.cancel();
}

absl::StatusOr<v1::AcceptProposalResponse> Session::acceptProposal(const v1::AcceptProposalRequest& request) {
  return stubs_->call(*stubs_->plans, &v1::PlanService::Stub::AcceptProposal, request);
}

absl::StatusOr<v1::DismissProposalResponse> Session::dismissProposal(
    const v1::DismissProposalRequest& request) {
  return stubs_->call(*stubs_->plans, &v1::PlanService::Stub::DismissProposal, request);
}

absl::StatusOr<v1::ListRemindersResponse> Session::listReminders(const v1::ListRemindersRequest& request) {
  return stubs_->call(*stubs_->reminders, &v1::ReminderService::Stub::ListReminders, request);
}

absl::StatusOr<v1::SettleRemindersResponse> Session::settleReminders(
    const v1::SettleRemindersRequest& request) {
  return stubs_->call(*stubs_->reminders, &v1::ReminderService::Stub::SettleReminders, request);
}

absl::StatusOr<v1::SnoozeReminderResponse> Session::snoozeReminder(const v1::SnoozeReminderRequest& request) {
  return stubs_->call(*stubs_->reminders, &v1::ReminderService::Stub::SnoozeReminder, request);
}

absl::StatusOr<v1::ExportCalendarResponse> Session::exportCalendar(const v1::ExportCalendarRequest& request) {
  return stubs_->call(*stubs_->calendars, &v1::CalendarService::Stub::ExportCalendar, request);
}

absl::StatusOr<v1::CreateCalendarAddressResponse> Session::createCalendarAddress(
    const v1::CreateCalendarAddressRequest& request) {
  return stubs_->call(*stubs_->calendars, &v1::CalendarService::Stub::CreateCalendarAddress, request);
}

absl::StatusOr<v1::ListCalendarAddressesResponse> Session::listCalendarAddresses(
    const v1::ListCalendarAddressesRequest& request) {
  return stubs_->call(*stubs_->calendars, &v1::CalendarService::Stub::ListCalendarAddresses, request);
}

absl::StatusOr<v1::RevokeCalendarAddressResponse> Session::revokeCalendarAddress(
    const v1::RevokeCalendarAddressRequest& request) {
  return stubs_->call(*stubs_->calendars, &v1::CalendarService::Stub::RevokeCalendarAddress, request);
}

absl::StatusOr<v1::Review> Session::review(const v1::GetReviewRequest& request) {
  return stubs_->call(*stubs_->reviews, &v1::ReviewService::Stub::GetReview, request);
}

absl::StatusOr<v1::KeepReviewResponse> Session::keepReview(const v1::KeepReviewRequest& request) {
  return stubs_->call(*stubs_->reviews, &v1::ReviewService::Stub::KeepReview, request);
}

absl::StatusOr<v1::WriteEventResponse> Session::copyEvent(const v1::CopyEventRequest& request) {
  return stubs_->call(*stubs_->events, &v1::EventService::Stub::CopyEvent, request);
}

}  // namespace suppertide::link
