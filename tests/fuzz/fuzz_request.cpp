// Any bytes as the request of any call of a real server, from a host's device.
//
// The first line names the call ("RecipeService/CreateRecipe"), the rest is the
// message. The server may refuse it, but for its own reasons never: INTERNAL,
// UNKNOWN and DATA_LOSS are findings, as is a server that does not answer.
#include <google/protobuf/descriptor.h>
#include <grpcpp/grpcpp.h>

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "server/service/access.h"
#include "server/service/server.h"
#include "suppertide/v1/household_service.grpc.pb.h"
#include "tests/compose/small_dinner.h"
#include "tests/support/raw_call.h"

namespace {

using suppertide::service::Server;

// A server with the small dinner in memory, and a device of its host.
struct Target {
  Target() {
    std::string pattern = "/tmp/suppertide-fuzz-XXXXXX";
    if (mkdtemp(pattern.data()) == nullptr) std::abort();
    Server::Options options;
    options.listen = "unix:" + pattern + "/s";
    server = *Server::start(options, clock);
    channel = grpc::CreateChannel(options.listen, grpc::InsecureChannelCredentials());
    const suppertide::v1::Bundle dinner = suppertide::compose::smallDinner();
    suppertide::v1::CreateHouseholdRequest asked;
    asked.set_host_code(server->hostCode());
    asked.set_request_id("found");
    *asked.mutable_household() = dinner.household();
    asked.mutable_household()->set_id("home");
    suppertide::v1::CreateHouseholdResponse made;
    grpc::ClientContext context;
    const auto stub = suppertide::v1::HouseholdService::NewStub(channel);
    if (!stub->CreateHousehold(&context, asked, &made).ok()) std::abort();
    token = made.device_token();
    importAgain();
  }

  // So that there is something to work on whatever was deleted.
  void importAgain() {
    suppertide::v1::ImportBundleRequest asked;
    asked.set_household_id("home");
    asked.set_request_id("import" + std::to_string(calls));
    *asked.mutable_bundle() = suppertide::compose::smallDinner();
    call("HouseholdService/ImportBundle", asked.SerializeAsString());
  }

  grpc::StatusCode call(const std::string& method, const std::string& bytes) {
    ++calls;
    clock.advance(std::chrono::seconds(5));  // or there would be too many wrong codes
    grpc::ClientContext context;
    context.AddMetadata("authorization", "Bearer " + token);
    // What goes on for long is none of this test's: its beginning is.
    context.set_deadline(std::chrono::system_clock::now() + (streams(method)
                                                                 ? std::chrono::milliseconds(50)
                                                                 : std::chrono::milliseconds(120'000)));
    return suppertide::rawCall(channel, context, "/suppertide.v1." + method, bytes).error_code();
  }

  // Whether the answers are a stream, of which one may be read only.
  static bool streams(const std::string& method) {
    const std::size_t slash = method.find('/');
    return google::protobuf::DescriptorPool::generated_pool()
        ->FindServiceByName("suppertide.v1." + method.substr(0, slash))
        ->FindMethodByName(method.substr(slash + 1))
        ->server_streaming();
  }

  suppertide::ManualClock clock{suppertide::Instant(std::chrono::seconds(1'800'000'000))};
  std::unique_ptr<Server> server;
  std::shared_ptr<grpc::Channel> channel;
  std::string token;
  int calls = 0;
};

constexpr int kImportEvery = 500;

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static Target* target = new Target();
  const std::string input(reinterpret_cast<const char*>(data), size);
  const std::size_t line = input.find('\n');
  if (line == std::string::npos) return 0;
  std::string method = input.substr(0, line);
  const auto table = suppertide::service::accessTable();
  bool known = false;
  for (const auto& row : table) known = known || row.method == method;
  if (!known) method = std::string(table[std::hash<std::string>()(method) % table.size()].method);
  if (target->calls % kImportEvery == 0) target->importAgain();
  const grpc::StatusCode code = target->call(method, input.substr(line + 1));
  const bool finding = code == grpc::StatusCode::UNKNOWN || code == grpc::StatusCode::DATA_LOSS ||
                       (!Target::streams(method) &&
                        (code == grpc::StatusCode::INTERNAL || code == grpc::StatusCode::DEADLINE_EXCEEDED));
  if (finding) {
    std::fprintf(stderr, "%s answered %d\n", method.c_str(), static_cast<int>(code));
    std::abort();
  }
  // These may take the device away that the rest needs.
  if (method == "HouseholdService/RevokeDevice" || method == "HouseholdService/UpdateHousehold") {
    if (target->call("HouseholdService/WhoAmI", "") != grpc::StatusCode::OK) {
      delete target;
      target = new Target();
    }
  }
  return 0;
}
