// One maker a service; each lives in a file of its own with its generated header.
#pragma once

#include <grpcpp/impl/service_type.h>

#include <memory>

namespace suppertide::service {

class Backend;

std::unique_ptr<grpc::Service> makeHouseholdService(Backend& backend);
std::unique_ptr<grpc::Service> makeKitchenService(Backend& backend);
std::unique_ptr<grpc::Service> makeStarterService(Backend& backend);
std::unique_ptr<grpc::Service> makeRecipeService(Backend& backend);
std::unique_ptr<grpc::Service> makeEventService(Backend& backend);
std::unique_ptr<grpc::Service> makePlanService(Backend& backend);
std::unique_ptr<grpc::Service> makeProgressService(Backend& backend);
std::unique_ptr<grpc::Service> makeSyncService(Backend& backend);
std::unique_ptr<grpc::Service> makeBreadService(Backend& backend);
std::unique_ptr<grpc::Service> makeMenuService(Backend& backend);
std::unique_ptr<grpc::Service> makeReminderService(Backend& backend);
std::unique_ptr<grpc::Service> makeCalendarService(Backend& backend);
std::unique_ptr<grpc::Service> makeReviewService(Backend& backend);
std::unique_ptr<grpc::Service> makeShoppingService(Backend& backend);

}  // namespace suppertide::service
