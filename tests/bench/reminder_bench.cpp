// How long after its moment a reminder is with the device that watches: a server by the real clock, a plan
// whose steps begin one after the other from now on, and one stream that is read.
//
//   reminder_bench
#include <google/protobuf/message.h>

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

constexpr int kFirst = 5;  // seconds from now until the first is due
constexpr int kApart = 1;

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

// The small dinner from now on: the host's steps begin second after second.
v1::Bundle dinnerFromNow(const std::string& host) {
  v1::Bundle bundle = evening::withPlan(compose::smallDinner(), 2);
  const auto now = static_cast<std::int64_t>(secondsNow());
  shift(bundle, now + kFirst - bundle.plans(0).steps(0).start_time().seconds());
  int count = 0;
  for (v1::PlannedStep& step : *bundle.mutable_plans(0)->mutable_steps()) {
    if (step.attention_percent() == 0) continue;
    step.set_cook_member_id(host);
    step.mutable_start_time()->set_seconds(now + kFirst + kApart * count++);
    step.mutable_end_time()->set_seconds(step.start_time().seconds() + 600);
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

  int run() {
    const v1::Bundle bundle = dinnerFromNow("ana");
    found(bundle);
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
    const double until = secondsNow() + kFirst + 15;
    while (secondsNow() < until && stream->Read(&message))
      if (message.has_due())
        late_.push_back(secondsNow() - static_cast<double>(message.due().reminder().remind_time().seconds()));
    context.TryCancel();
    return tell();
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

  int tell() {
    std::sort(late_.begin(), late_.end());
    if (late_.empty()) {
      std::printf("no reminder came\n");
      return 1;
    }
    std::printf("%zu reminders, ms after their moment: median %.0f, latest %.0f\n", late_.size(),
                1000 * late_[late_.size() / 2], 1000 * late_.back());
    return 0;
  }

  const SystemClock clock_;
  const std::filesystem::path folder_;
  std::unique_ptr<service::Server> server_;
  std::string household_;
  std::string token_;
  std::vector<double> late_;
};

}  // namespace
}  // namespace suppertide

int main() {
  return suppertide::Bench().run();
}
