#include "tests/window/sample.h"

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

#include "google/protobuf/util/json_util.h"
#include "google/protobuf/util/time_util.h"
#include "suppertide/v1/bundle.pb.h"

namespace suppertide::testing {
namespace {

v1::Bundle sampleBundle() {
  std::ifstream file(SUPPERTIDE_SAMPLE);
  std::stringstream text;
  text << file.rdbuf();
  v1::Bundle bundle;
  const auto status = google::protobuf::util::JsonStringToMessage(text.str(), &bundle);
  if (!status.ok()) {
    std::cerr << SUPPERTIDE_SAMPLE << ": " << status.ToString() << "\n";
    std::abort();
  }
  return bundle;
}

link::Replica replicaOf(const v1::Bundle& bundle) {
  link::Replica replica;
  replica.revision = 1;
  replica.household = bundle.household();
  for (const auto& kitchen : bundle.kitchens()) replica.kitchens[kitchen.id()] = kitchen;
  for (const auto& recipe : bundle.recipes()) replica.recipes[recipe.id()] = recipe;
  for (const auto& event : bundle.events()) replica.events[event.id()] = event;
  for (const auto& plan : bundle.plans()) replica.plans[plan.id()] = plan;
  return replica;
}

template <class Documents, class Member>
void addAll(const Documents& documents, Member member, std::vector<v1::WatchResponse>& messages) {
  for (const auto& [id, document] : documents) {
    v1::WatchResponse message;
    *(message.mutable_snapshot()->add_documents()->*member)() = document;
    messages.push_back(message);
  }
}

}  // namespace

std::shared_ptr<const link::Replica> sampleReplica() {
  return std::make_shared<link::Replica>(replicaOf(sampleBundle()));
}

std::shared_ptr<const link::Replica> sampleWithStepLater(const std::string& plannedId, int minutes) {
  link::Replica replica = replicaOf(sampleBundle());
  for (v1::PlannedStep& step : *replica.plans.at(kSampleEvent).mutable_steps()) {
    if (step.id() != plannedId) continue;
    step.mutable_start_time()->set_seconds(step.start_time().seconds() + minutes * 60);
    step.mutable_end_time()->set_seconds(step.end_time().seconds() + minutes * 60);
  }
  return std::make_shared<link::Replica>(std::move(replica));
}

std::vector<v1::WatchResponse> snapshotOf(const link::Replica& replica) {
  std::vector<v1::WatchResponse> messages(2);
  messages[0].mutable_reset();
  *messages[1].mutable_snapshot()->add_documents()->mutable_household() = replica.household;
  addAll(replica.kitchens, &v1::Change::mutable_kitchen, messages);
  addAll(replica.recipes, &v1::Change::mutable_recipe, messages);
  addAll(replica.events, &v1::Change::mutable_event, messages);
  addAll(replica.plans, &v1::Change::mutable_plan, messages);
  messages.emplace_back().mutable_bookmark()->set_revision(replica.revision);
  return messages;
}

v1::WatchResponse planWritten(const link::Replica& replica, std::int64_t revision,
                              const std::string& memberId) {
  v1::WatchResponse message;
  message.mutable_changes()->set_revision(revision);
  message.mutable_changes()->set_member_id(memberId);
  *message.mutable_changes()->add_changes()->mutable_plan() = replica.plans.at(kSampleEvent);
  return message;
}

std::int64_t secondsAt(const std::string& rfc3339) {
  google::protobuf::Timestamp time;
  google::protobuf::util::TimeUtil::FromString(rfc3339, &time);
  return time.seconds();
}

}  // namespace suppertide::testing
