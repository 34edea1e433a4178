// One ExportBundle call: a household's documents, in parts.
#pragma once

#include <grpcpp/server_context.h>
#include <grpcpp/support/server_callback.h>

#include "server/service/backend.h"
#include "suppertide/v1/household_service.pb.h"

namespace suppertide::service {

grpc::ServerWriteReactor<v1::Bundle>* sendBundle(Backend& backend, grpc::CallbackServerContext& context,
                                                 const v1::ExportBundleRequest& asked);

}  // namespace suppertide::service
