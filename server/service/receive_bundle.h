// One ImportBundle call: from the first part of a bundle to the stored documents.
#pragma once

#include <grpcpp/server_context.h>
#include <grpcpp/support/server_callback.h>

#include "server/service/backend.h"
#include "suppertide/v1/household_service.pb.h"

namespace suppertide::service {

// `answer` lives as long as the call.
grpc::ServerReadReactor<v1::ImportBundleRequest>* receiveBundle(Backend& backend,
                                                                grpc::CallbackServerContext& context,
                                                                v1::ImportBundleResponse& answer);

}  // namespace suppertide::service
