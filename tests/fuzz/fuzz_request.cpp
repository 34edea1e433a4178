// Any bytes as the request of any call of a real server, from a host's device.
//
// The first line names the call ("RecipeService/CreateRecipe"), the rest is the
// message. The server may refuse it, but for its own reasons never: INTERNAL,
// UNKNOWN and DATA_LOSS are findings, as is a server that does not answer.
#include <grpcpp/generic/generic_stub.h>
#include <grpcpp/grpcpp.h>

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "server/service/access.h"
#include "server/service/secrets.h"
#include "server/service/server.h"
#include "suppertide/v1/household_service.grpc.pb.h"

namespace {

using suppertide::service::Server;

// Started once, with a household in memory.
struct Target {
  Target() {
    std::string pattern = "/tmp/suppertide-fuzz-XXXXXX";
    if (mkdtemp(pattern.data()) == nullptr) std::abort();
    Server::Options options;
    options.listen = "unix:" + pattern + "/s";
    server = *Server::start(options, clock);
    channel = grpc::CreateChannel(options.listen, grpc::InsecureChannelCredentials());
    suppertide::v1::CreateHouseholdRequest asked;
    asked.set_host_code(server->hostCode());
    asked.set_request_id("found");
    asked.mutable_household()->set_id("home");
    asked.mutable_household()->set_display_name("Home");
    asked.mutable_household()->set_time_zone("UTC");
    suppertide::v1::CreateHouseholdResponse made;
    grpc::ClientContext context;
    if (!suppertide::v1::HouseholdService::NewStub(channel)->CreateHousehold(&context, asked, &made).ok())
      std::abort();
    token = made.device_token();
  }

  const suppertide::SystemClock clock;
  std::unique_ptr<Server> server;
  std::shared_ptr<grpc::Channel> channel;
  std::string token;
};

bool streams(std::string_view method) {
  return method == "SyncService/Watch" || method == "ReminderService/WatchReminders" ||
         method == "PlanService/MakePlan" || method == "PlanService/Replan" ||
         method == "PlanService/FindRemedies";
}

grpc::StatusCode call(Target& target, const std::string& method, const std::string& bytes) {
  grpc::ClientContext context;
  context.AddMetadata("authorization", "Bearer " + target.token);
  // What goes on for long is none of this test's: its beginning is.
  context.set_deadline(std::chrono::system_clock::now() +
                       (streams(method) ? std::chrono::milliseconds(30) : std::chrono::milliseconds(20'000)));
  grpc::CompletionQueue queue;
  grpc::GenericStub stub(target.channel);
  const grpc::Slice slice(bytes);
  auto reader =
      stub.PrepareUnaryCall(&context, "/suppertide.v1." + method, grpc::ByteBuffer(&slice, 1), &queue);
  reader->StartCall();
  grpc::ByteBuffer answer;
  grpc::Status status;
  reader->Finish(&answer, &status, nullptr);
  void* tag = nullptr;
  bool ok = false;
  queue.Next(&tag, &ok);
  return status.error_code();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static Target& target = *new Target();
  const std::string input(reinterpret_cast<const char*>(data), size);
  const std::size_t line = input.find('\n');
  if (line == std::string::npos) return 0;
  std::string method = input.substr(0, line);
  const auto table = suppertide::service::accessTable();
  bool known = false;
  for (const auto& row : table) known = known || row.method == method;
  if (!known) method = std::string(table[std::hash<std::string>()(method) % table.size()].method);
  // These would take the device away that the rest needs.
  if (method == "HouseholdService/RevokeDevice" || method == "HouseholdService/UpdateHousehold") return 0;
  const grpc::StatusCode code = call(target, method, input.substr(line + 1));
  const bool finding = code == grpc::StatusCode::UNKNOWN || code == grpc::StatusCode::DATA_LOSS ||
                       (code == grpc::StatusCode::INTERNAL && !streams(method)) ||
                       (code == grpc::StatusCode::DEADLINE_EXCEEDED && !streams(method));
  if (finding) {
    std::fprintf(stderr, "%s answered %d\n", method.c_str(), static_cast<int>(code));
    std::abort();
  }
  return 0;
}
