// One FindRemedies call: searched on a planning thread, told as found, stored nowhere.
#pragma once

#include <grpcpp/server_context.h>
#include <grpcpp/support/server_callback.h>

#include "server/service/backend.h"
#include "suppertide/v1/plan_service.pb.h"

namespace suppertide::service {

grpc::ServerWriteReactor<v1::FindRemediesResponse>* findRemedies(Backend& backend,
                                                                 grpc::CallbackServerContext& context,
                                                                 const v1::FindRemediesRequest& asked);

}  // namespace suppertide::service
