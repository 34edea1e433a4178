// Single calls to a server, each waited for: for programs that ask and go.
//
// A call that fails gives the server's code and words; errorDetail()
// (error_detail.h) has the fields at fault. Unavailable and DeadlineExceeded
// mean that the server was not reached in time. Any thread, several at once.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "suppertide/v1/bread_service.pb.h"
#include "suppertide/v1/calendar_service.pb.h"
#include "suppertide/v1/event_service.pb.h"
#include "suppertide/v1/household_service.pb.h"
#include "suppertide/v1/kitchen_service.pb.h"
#include "suppertide/v1/menu_service.pb.h"
#include "suppertide/v1/plan_service.pb.h"
#include "suppertide/v1/progress_service.pb.h"
#include "suppertide/v1/recipe_service.pb.h"
#include "suppertide/v1/reminder_service.pb.h"
#include "suppertide/v1/review_service.pb.h"
#include "suppertide/v1/shopping_service.pb.h"
#include "suppertide/v1/starter_service.pb.h"

namespace suppertide::link {

struct SessionOptions {
  std::string target;                          // "unix:/..." or "192.168.1.4:50710"
  std::string deviceToken;                     // empty: only for creating and joining a household
  std::string certificatePem;                  // trusted over a network; empty: the system's authorities
  std::string fingerprint{};                   // of the only certificate accepted; empty: see openChannel()
  std::chrono::milliseconds deadline{15'000};  // of each call but planning
};

class Session {
 public:
  explicit Session(SessionOptions options);
  ~Session();
  Session(const Session&) = delete;
  Session& operator=(const Session&) = delete;

  absl::StatusOr<v1::CreateHouseholdResponse> createHousehold(const v1::CreateHouseholdRequest& request);
  absl::StatusOr<v1::JoinHouseholdResponse> joinHousehold(const v1::JoinHouseholdRequest& request);
  absl::StatusOr<v1::WhoAmIResponse> whoAmI();
  absl::StatusOr<v1::Household> household(const v1::GetHouseholdRequest& request);
  absl::StatusOr<v1::ImportBundleResponse> importBundle(const v1::ImportBundleRequest& request);
  absl::StatusOr<v1::Bundle> exportBundle(const v1::ExportBundleRequest& request);
  absl::StatusOr<v1::CreateInvitationResponse> createInvitation(const v1::CreateInvitationRequest& request);
  absl::StatusOr<v1::ListDevicesResponse> listDevices(const v1::ListDevicesRequest& request);
  absl::StatusOr<v1::RevokeDeviceResponse> revokeDevice(const v1::RevokeDeviceRequest& request);

  absl::StatusOr<v1::ParseIngredientsResponse> parseIngredients(const v1::ParseIngredientsRequest& request);
  absl::StatusOr<v1::CheckMenuResponse> checkMenu(const v1::CheckMenuRequest& request);
  absl::StatusOr<v1::MakeShoppingListResponse> makeShoppingList(const v1::MakeShoppingListRequest& request);
  absl::StatusOr<v1::ScaledRecipe> scaleRecipe(const v1::ScaleRecipeRequest& request);
  absl::StatusOr<v1::WriteHouseholdResponse> updateHousehold(const v1::UpdateHouseholdRequest& request);
  absl::StatusOr<v1::ListSafetyRulesResponse> safetyRules(const v1::ListSafetyRulesRequest& request);
  absl::StatusOr<v1::EditShoppingResponse> editShopping(const v1::EditShoppingRequest& request);

  absl::StatusOr<v1::FitOvenResponse> fitOven(const v1::FitOvenRequest& request);
  absl::StatusOr<v1::WriteKitchenResponse> updateKitchen(const v1::UpdateKitchenRequest& request);

  absl::StatusOr<v1::ForecastDoughResponse> forecastDough(const v1::ForecastDoughRequest& request);
  absl::StatusOr<v1::FitDoughResponse> fitDough(const v1::FitDoughRequest& request);
  absl::StatusOr<v1::WorkOutDoughResponse> workOutDough(const v1::WorkOutDoughRequest& request);
  absl::StatusOr<v1::AddBreadReadingsResponse> addBreadReadings(const v1::AddBreadReadingsRequest& request);
  absl::StatusOr<v1::CheckModelResponse> checkModel(const v1::CheckModelRequest& request);

  // Every page.
  absl::StatusOr<std::vector<v1::Event>> events(const std::string& householdId);

  // Follows the planning; `told` gets each message on the caller's thread. Returns the
  // final message. Ends at the request's time limit and a minute at the latest.
  absl::StatusOr<v1::MakePlanResponse> makePlan(const v1::MakePlanRequest& request,
                                                const std::function<void(const v1::MakePlanResponse&)>& told);
  // Follows the search for remedies; `told` gets each message on the caller's thread and says
  // whether to go on. OK when it went to its end or was left; ends after a minute at the latest.
  absl::Status findRemedies(const v1::FindRemediesRequest& request,
                            const std::function<bool(const v1::FindRemediesResponse&)>& told);
  absl::StatusOr<v1::StopPlanningResponse> stopPlanning(const v1::StopPlanningRequest& request);
  absl::StatusOr<v1::Plan> plan(const v1::GetPlanRequest& request);
  // The final message. Ends after a minute at the latest.
  absl::StatusOr<v1::MakePlanResponse> replan(const v1::ReplanRequest& request);
  absl::StatusOr<v1::ExplainStepResponse> explainStep(const v1::ExplainStepRequest& request);
  absl::StatusOr<v1::AddReportsResponse> addReports(const v1::AddReportsRequest& request);
  // Any request that changes documents: UpdateRecipeRequest, AddReportsRequest, ...
  absl::Status write(const google::protobuf::Message& request);
  // The same, with its answer: a WriteRecipeResponse, ...
  absl::StatusOr<std::unique_ptr<google::protobuf::Message>> carryOut(
      const google::protobuf::Message& request);
  absl::StatusOr<v1::AcceptProposalResponse> acceptProposal(const v1::AcceptProposalRequest& request);
  absl::StatusOr<v1::DismissProposalResponse> dismissProposal(const v1::DismissProposalRequest& request);

  // Reminders as they come: reminder_link.h.
  absl::StatusOr<v1::ListRemindersResponse> listReminders(const v1::ListRemindersRequest& request);
  absl::StatusOr<v1::SettleRemindersResponse> settleReminders(const v1::SettleRemindersRequest& request);
  absl::StatusOr<v1::SnoozeReminderResponse> snoozeReminder(const v1::SnoozeReminderRequest& request);

  absl::StatusOr<v1::ExportCalendarResponse> exportCalendar(const v1::ExportCalendarRequest& request);
  absl::StatusOr<v1::CreateCalendarAddressResponse> createCalendarAddress(
      const v1::CreateCalendarAddressRequest& request);
  absl::StatusOr<v1::ListCalendarAddressesResponse> listCalendarAddresses(
      const v1::ListCalendarAddressesRequest& request);
  absl::StatusOr<v1::RevokeCalendarAddressResponse> revokeCalendarAddress(
      const v1::RevokeCalendarAddressRequest& request);

  absl::StatusOr<v1::Review> review(const v1::GetReviewRequest& request);
  absl::StatusOr<v1::KeepReviewResponse> keepReview(const v1::KeepReviewRequest& request);
  absl::StatusOr<v1::WriteEventResponse> copyEvent(const v1::CopyEventRequest& request);
  absl::StatusOr<v1::AuditPlanResponse> auditPlan(const v1::AuditPlanRequest& request);

  // Ends every call under way with Cancelled, and each that begins later.
  void cancel();

 private:
  struct Stubs;
  std::unique_ptr<Stubs> stubs_;
};

}  // namespace suppertide::link
