#include "server/service/access.h"

#include <algorithm>
#include <array>

namespace suppertide::service {
namespace {

constexpr v1::Role kFree = v1::ROLE_UNSPECIFIED;
constexpr v1::Role kReader = v1::ROLE_READER;
constexpr v1::Role kCook = v1::ROLE_COOK;
constexpr v1::Role kHost = v1::ROLE_HOST;

constexpr std::array kTable = {
    Access{"HouseholdService/CreateHousehold", kFree},
    Access{"HouseholdService/JoinHousehold", kFree},
    Access{"HouseholdService/GetHousehold", kReader},
    Access{"HouseholdService/UpdateHousehold", kCook},
    Access{"HouseholdService/WhoAmI", kReader},
    Access{"HouseholdService/ImportBundle", kHost},
    Access{"HouseholdService/ExportBundle", kReader},
    Access{"HouseholdService/CreateInvitation", kHost},
    Access{"HouseholdService/ListDevices", kHost},
    Access{"HouseholdService/RevokeDevice", kHost},
    Access{"KitchenService/GetKitchen", kReader},
    Access{"KitchenService/ListKitchens", kReader},
    Access{"KitchenService/CreateKitchen", kHost},
    Access{"KitchenService/UpdateKitchen", kHost},
    Access{"KitchenService/DeleteKitchen", kHost},
    Access{"KitchenService/FitOven", kReader},
    Access{"StarterService/GetStarter", kReader},
    Access{"StarterService/ListStarters", kReader},
    Access{"StarterService/CreateStarter", kCook},
    Access{"StarterService/UpdateStarter", kCook},
    Access{"StarterService/DeleteStarter", kHost},
    Access{"RecipeService/GetRecipe", kReader},
    Access{"RecipeService/ListRecipes", kReader},
    Access{"RecipeService/CreateRecipe", kCook},
    Access{"RecipeService/UpdateRecipe", kCook},
    Access{"RecipeService/DeleteRecipe", kHost},
    Access{"EventService/GetEvent", kReader},
    Access{"EventService/ListEvents", kReader},
    Access{"EventService/CreateEvent", kHost},
    Access{"EventService/UpdateEvent", kHost},
    Access{"EventService/DeleteEvent", kHost},
    Access{"EventService/CopyEvent", kHost},
    Access{"PlanService/MakePlan", kCook},
    Access{"PlanService/StopPlanning", kCook},
    Access{"PlanService/GetPlan", kReader},
    Access{"PlanService/ListPlans", kReader},
    Access{"PlanService/AuditPlan", kReader},
    Access{"PlanService/Replan", kCook},
    Access{"PlanService/FindRemedies", kCook},
    Access{"PlanService/ExplainStep", kReader},
    Access{"PlanService/ComparePlans", kReader},
    Access{"PlanService/AcceptProposal", kHost},
    Access{"PlanService/DismissProposal", kHost},
    Access{"ProgressService/GetProgress", kReader},
    Access{"ProgressService/AddReports", kCook},
    Access{"SyncService/Watch", kReader},
    Access{"BreadService/ForecastDough", kReader},
    Access{"BreadService/FitDough", kReader},
    Access{"BreadService/CheckModel", kReader},
    Access{"MenuService/ParseIngredients", kReader},
    Access{"MenuService/CheckMenu", kReader},
    Access{"MenuService/MakeShoppingList", kReader},
    Access{"MenuService/ScaleRecipe", kReader},
    Access{"MenuService/ListSafetyRules", kReader},
    Access{"ShoppingService/GetShopping", kReader},
    Access{"ShoppingService/EditShopping", kCook},
    Access{"BreadService/WorkOutDough", kReader},
    Access{"ReminderService/WatchReminders", kReader},
    Access{"ReminderService/ListReminders", kReader},
    Access{"ReminderService/SettleReminders", kCook},
    Access{"ReminderService/SnoozeReminder", kCook},
    Access{"ReviewService/GetReview", kReader},
    Access{"ReviewService/KeepReview", kHost},
    Access{"CalendarService/ExportCalendar", kReader},
    Access{"CalendarService/CreateCalendarAddress", kCook},
    Access{"CalendarService/ListCalendarAddresses", kReader},
    Access{"CalendarService/RevokeCalendarAddress", kCook},
    Access{"BreadService/AddBreadReadings", kCook},
};

}  // namespace

std::span<const Access> accessTable() {
  return kTable;
}

v1::Role leastRole(std::string_view method) {
  const auto row =
      std::find_if(kTable.begin(), kTable.end(), [&](const Access& a) { return a.method == method; });
  return row == kTable.end() ? v1::ROLE_HOST : row->least;
}

}  // namespace suppertide::service
