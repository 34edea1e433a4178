#include "client/link/channel.h"

#include <grpcpp/create_channel.h>
#include <grpcpp/security/credentials.h>
#include <grpcpp/support/channel_arguments.h>

#include "client/link/pinned_certificate.h"

namespace suppertide::link {
namespace {

// An archive of a household may be larger than gRPC's default of 4 MiB.
constexpr int kLargestMessage = 64 * 1024 * 1024;

bool startsWith(const std::string& text, const char* prefix) {
  return text.rfind(prefix, 0) == 0;
}

// A host name may begin like an address: "127.example.org".
bool isLoopbackAddress(const std::string& target) {
  const std::string host = target.substr(0, target.find(':'));
  return startsWith(host, "127.") && host.find_first_not_of("0123456789.") == std::string::npos;
}

}  // namespace

bool isLocalTarget(const std::string& target) {
  return startsWith(target, "unix:") || isLoopbackAddress(target) || startsWith(target, "localhost:") ||
         startsWith(target, "[::1]:");
}

std::shared_ptr<grpc::Channel> openChannel(const std::string& target, const std::string& certificatePem,
                                           const std::string& fingerprint) {
  grpc::ChannelArguments arguments;
  arguments.SetInt(GRPC_ARG_USE_LOCAL_SUBCHANNEL_POOL, 1);
  // A server of the household never stands behind a web proxy set for the desktop.
  arguments.SetInt(GRPC_ARG_ENABLE_HTTP_PROXY, 0);
  arguments.SetMaxReceiveMessageSize(kLargestMessage);
  const bool socket = startsWith(target, "unix:");
  if (!socket && !fingerprint.empty())
    return grpc::CreateCustomChannel(target, pinnedCredentials(fingerprint), arguments);
  if (socket || (isLocalTarget(target) && certificatePem.empty())) {
    return grpc::CreateCustomChannel(target, grpc::InsecureChannelCredentials(), arguments);
  }
  grpc::SslCredentialsOptions options;
  options.pem_root_certs = certificatePem;
  return grpc::CreateCustomChannel(target, grpc::SslCredentials(options), arguments);
}

}  // namespace suppertide::link
