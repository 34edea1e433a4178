// How long after its moment a reminder is with the device that watches: a server by the real clock, a dinner
// whose next work begins in some seconds, and one stream that is read; several times.
//
//   reminder_bench
#include <google/protobuf/message.h>
#include <grpcpp/create_channel.h>
#include <grpcpp/security/credentials.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <vector>

#include "client/link/request_id.h"
#include "client/link/session.h"
#include "server/base/clock.h"
#include "server/base/ids.h"
#include "server/service/server.h"
#include "suppertide/v1/reminder_service.grpc.pb.h"
#include "tests/compose/small_dinner.h"
#include "tests/evening/evening.h"

namespace suppertide {
namespace {

constexpr int kFirst = 4;  // seconds from now until it is due
constexpr int kRounds = 5;

double secondsNow() {
  return std::chrono::duration<double>(std::chrono::system_clock::now().time_since_epoch()).count();
}

// Everything in the message that many seconds later.
void shift(google::protobuf::Message& message, std::int64_t by) {
  if (auto* time = dynamic_cast<google::protobuf::Timestamp*>(&message); time != nullptr)
    return time->set_seconds(time->seconds() + by);
  const auto* reflection = message.GetReflection();
  std::vector<const google::protobuf::FieldDescriptor*> fields;
  reflection->ListFields(message, &fields);
  for (const auto* field : fields) {
    if (field->is_map() || field->cpp_type() != google::protobuf::FieldDescriptor::CPPTYPE_MESSAGE) continue;
    if (!field->is_repeated()) {
      shift(*reflection->MutableMessage(&message, field), by);
      continue;
    }
    for (int i = 0; i < reflection->FieldSize(message, field); ++i)
      shift(*reflection->MutableRepeatedMessage(&message, field, i), by);
  }
}

// The small dinner with the host's first work in some seconds.
v1::Bundle dinnerFromNow(v1::Bundle bundle, const std::string& host) {
  const auto now = static_cast<std::int64_t>(secondsNow());
  for (const v1::PlannedStep& step : bundle.plans(0).steps()) {
    if (step.attention_percent() == 0 || step.cook_member_id() != host) continue;
    shift(bundle, now + kFirst - step.start_time().seconds());
    return bundle;
  }
  return bundle;
}

class Bench {
 public:
  Bench() : folder_(std::filesystem::temp_directory_path() / ("reminders-" + newId())) {
    std::filesystem::create_directory(folder_);
    service::Server::Options options;
    options.listen = "unix:" + (folder_ / "s").string();
    auto started = service::Server::start(options, clock_);
    if (!started.ok()) std::abort();
    server_ = *std::move(started);
  }
  ~Bench() {
    server_.reset();
    std::filesystem::remove_all(folder_);
  }

  // Seconds after its moment, of each that came.
  std::vector<double> run(const v1::Bundle& planned) {
    found(dinnerFromNow(planned, "ana"));
    const auto channel = grpc::CreateChannel(server_->target(), grpc::InsecureChannelCredentials());
    const auto stub = v1::ReminderService::NewStub(channel);
    grpc::ClientContext context;
    context.AddMetadata("authorization", "Bearer " + token_);
    // By itself, whatever happens.
    context.set_deadline(std::chrono::system_clock::now() + std::chrono::seconds(kFirst + 30));
    v1::WatchRemindersRequest asked;
    asked.set_household_id(household_);
    const auto stream = stub->WatchReminders(&context, asked);
    v1::WatchRemindersResponse message;
    std::vector<double> late;
    while (late.empty() && stream->Read(&message))
      if (message.has_due())
        late.push_back(secondsNow() - static_cast<double>(message.due().reminder().remind_time().seconds()));
    context.TryCancel();
    return late;
  }

 private:
  void found(const v1::Bundle& bundle) {
    link::Session stranger({.target = server_->target(), .deviceToken = "", .certificatePem = ""});
    v1::CreateHouseholdRequest request;
    request.set_host_code(server_->hostCode());
    request.mutable_household()->set_display_name("Reminded");
    request.mutable_household()->set_time_zone(bundle.household().time_zone());
    for (const v1::Member& member : bundle.household().members())
      if (member.role() == v1::ROLE_HOST && request.household().members().empty())
        *request.mutable_household()->add_members() = member;
    request.set_request_id(link::newRequestId());
    const auto created = stranger.createHousehold(request);
    if (!created.ok()) std::abort();
    household_ = created->household().id();
    token_ = created->device_token();
    link::Session host({.target = server_->target(), .deviceToken = token_, .certificatePem = ""});
    v1::ImportBundleRequest import;
    import.set_household_id(household_);
    *import.mutable_bundle() = bundle;
    import.set_request_id(link::newRequestId());
    if (const auto imported = host.importBundle(import); !imported.ok()) {
      std::fprintf(stderr, "%s\n", imported.status().ToString().c_str());
      std::abort();
    }
  }

  const SystemClock clock_;
  const std::filesystem::path folder_;
  std::unique_ptr<service::Server> server_;
  std::string household_;
  std::string token_;
};

int measure() {
  const v1::Bundle planned = evening::withPlan(compose::smallDinner(), 2);
  std::vector<double> late;
  for (int round = 0; round < kRounds; ++round)
    for (const double one : Bench().run(planned)) late.push_back(one);
  std::sort(late.begin(), late.end());
  if (late.empty()) {
    std::printf("no reminder came\n");
    return 1;
  }
  std::printf("%zu reminders, ms after their moment: median %.0f, latest %.0f\n", late.size(),
              1000 * late[late.size() / 2], 1000 * late.back());
  return 0;
}

}  // namespace
}  // namespace suppertide

int main() {
  return suppertide::measure();
}
