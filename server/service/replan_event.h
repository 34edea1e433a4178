// One Replan call: from admitting the caller to the stored plan.
#pragma once

#include <grpcpp/server_context.h>
#include <grpcpp/support/server_callback.h>

#include "server/service/backend.h"
#include "suppertide/v1/plan_service.pb.h"

namespace suppertide::service {

grpc::ServerWriteReactor<v1::MakePlanResponse>* replanEvent(Backend& backend,
                                                            grpc::CallbackServerContext& context,
                                                            const v1::ReplanRequest& asked);

}  // namespace suppertide::service
