// Every call against those who were let in once, or elsewhere.
#include <google/protobuf/descriptor.h>
#include <google/protobuf/message.h>
#include <gtest/gtest.h>

#include "server/service/access.h"
#include "tests/service/served.h"
#include "tests/support/raw_call.h"

namespace suppertide::service {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::DescriptorPool;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::MessageFactory;

// The request of a call, on household `id`; empty where its request names no household.
std::string requestOn(std::string_view method, const std::string& id) {
  const std::string name(method);
  const auto* service =
      DescriptorPool::generated_pool()->FindServiceByName("suppertide.v1." + name.substr(0, name.find('/')));
  if (service == nullptr) return "";
  const Descriptor* type = service->FindMethodByName(name.substr(name.find('/') + 1))->input_type();
  const std::unique_ptr<Message> request(MessageFactory::generated_factory()->GetPrototype(type)->New());
  if (const FieldDescriptor* field = type->FindFieldByName("household_id")) {
    request->GetReflection()->SetString(request.get(), field, id);
  } else if (const FieldDescriptor* household = type->FindFieldByName("household")) {
    Message* inner = request->GetReflection()->MutableMessage(request.get(), household);
    inner->GetReflection()->SetString(inner, inner->GetDescriptor()->FindFieldByName("id"), id);
  }
  return request->SerializeAsString();
}

grpc::StatusCode call(Served& served, std::string_view method, const std::string& bytes,
                      const std::string& token) {
  return rawCall(served.channel(), *with(token), "/suppertide.v1." + std::string(method), bytes).error_code();
}

class StrangerTest : public ::testing::Test {
 protected:
  void SetUp() override { served_.found(); }

  // Each call that is not free, with its request on a household.
  void expectOfEach(grpc::StatusCode wanted, const std::string& household, const std::string& token) {
    int calls = 0;
    for (const Access& row : accessTable()) {
      if (row.least == v1::ROLE_UNSPECIFIED) continue;
      const std::string request = requestOn(row.method, household);
      if (request.empty()) continue;
      EXPECT_EQ(call(served_, row.method, request, token), wanted) << row.method;
      ++calls;
    }
    EXPECT_GT(calls, 40);
  }

  Served served_;
};

TEST_F(StrangerTest, ARevokedDeviceMayDoNothing) {
  const std::string token = served_.invite(v1::ROLE_HOST);
  const auto stub = v1::HouseholdService::NewStub(served_.channel());
  v1::WhoAmIResponse who;
  const auto first = with(token);
  ASSERT_TRUE(stub->WhoAmI(first.get(), {}, &who).ok());
  v1::RevokeDeviceRequest asked;
  asked.set_household_id(served_.household);
  asked.set_device_id(who.device_id());
  asked.set_request_id(freshRequest());
  v1::RevokeDeviceResponse answer;
  const auto second = with(served_.token);
  ASSERT_TRUE(stub->RevokeDevice(second.get(), asked, &answer).ok());
  expectOfEach(grpc::StatusCode::UNAUTHENTICATED, served_.household, token);
}

TEST_F(StrangerTest, AHostOfOneHouseholdMayDoNothingInAnother) {
  expectOfEach(grpc::StatusCode::PERMISSION_DENIED, "elsewhere", served_.token);
}

TEST_F(StrangerTest, WhoWasTakenOffTheHouseholdMayDoNothing) {
  const std::string token = served_.invite(v1::ROLE_HOST);
  v1::UpdateHouseholdRequest asked;
  asked.mutable_household()->set_id(served_.household);
  v1::Member& ana = *asked.mutable_household()->add_members();
  ana.set_id("ana");
  ana.set_display_name("Ana");
  ana.set_role(v1::ROLE_HOST);
  asked.mutable_update_mask()->add_paths("members");
  asked.set_request_id(freshRequest());
  v1::WriteHouseholdResponse written;
  const auto context = with(served_.token);
  ASSERT_TRUE(
      v1::HouseholdService::NewStub(served_.channel())->UpdateHousehold(context.get(), asked, &written).ok());
  expectOfEach(grpc::StatusCode::PERMISSION_DENIED, served_.household, token);
}

}  // namespace
}  // namespace suppertide::service
