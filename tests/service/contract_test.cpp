// What every service promises alike, asked of each that there is: so that a new document or call keeps it,
// too.
#include <gmock/gmock.h>
#include <google/protobuf/descriptor.h>
#include <google/protobuf/message.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "suppertide/v1/calendar_service.grpc.pb.h"
#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"
#include "tests/service/supper.h"
#include "tests/support/raw_call.h"

namespace suppertide::service {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::DescriptorPool;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::MessageFactory;
using google::protobuf::MethodDescriptor;
using google::protobuf::ServiceDescriptor;
using grpc::StatusCode;

std::unique_ptr<Message> emptyOf(const Descriptor* type) {
  return std::unique_ptr<Message>(MessageFactory::generated_factory()->GetPrototype(type)->New());
}

bool has(const Descriptor* type, const char* field) {
  return type->FindFieldByName(field) != nullptr;
}

TEST(ContractTest, EveryWriteTellsItsRevisionAndKnowsARepeat) {
  int writes = 0;
  for (const MethodDescriptor* call : everyCall()) {
    if (!has(call->output_type(), "revision") || has(call->output_type(), "next_page_token")) continue;
    EXPECT_TRUE(has(call->input_type(), "request_id")) << call->full_name();
    ++writes;
  }
  EXPECT_GT(writes, 15);
}

TEST(ContractTest, EveryListHasPages) {
  int lists = 0;
  for (const MethodDescriptor* call : everyCall()) {
    const bool list = std::string(call->name()).rfind("List", 0) == 0;
    if (!list && !has(call->output_type(), "next_page_token")) continue;
    EXPECT_TRUE(has(call->output_type(), "next_page_token")) << call->full_name();
    EXPECT_TRUE(has(call->input_type(), "page_size")) << call->full_name();
    EXPECT_TRUE(has(call->input_type(), "page_token")) << call->full_name();
    ++lists;
  }
  EXPECT_GE(lists, 9);
}

TEST(ContractTest, EveryWriteCanBeTriedFirst) {
  int writes = 0;
  for (const MethodDescriptor* call : everyCall()) {
    const std::string name(call->name());
    const bool isWrite = has(call->input_type(), "request_id");
    EXPECT_TRUE(!isWrite || has(call->input_type(), "validate_only")) << call->full_name();
    EXPECT_TRUE(name.rfind("Update", 0) != 0 || has(call->input_type(), "update_mask")) << call->full_name();
    writes += isWrite ? 1 : 0;
  }
  EXPECT_GT(writes, 25);
}

TEST(ContractTest, EveryCallNamesItsHouseholdOrIsAboutNone) {
  const std::set<std::string> aboutNone = {"CreateHousehold", "JoinHousehold", "WhoAmI",      "ForecastDough",
                                           "FitDough",        "CheckModel",    "WorkOutDough"};
  for (const MethodDescriptor* call : everyCall()) {
    const bool named = has(call->input_type(), "household_id") || has(call->input_type(), "household");
    EXPECT_TRUE(named || aboutNone.contains(std::string(call->name()))) << call->full_name();
  }
}

// One kind of document with the calls that write it: its name, and samples of it in the small dinner.
class DocumentContractTest : public ::testing::TestWithParam<std::string> {
 protected:
  void SetUp() override {
    served_.found();
    served_.importDinner();
    noun_ = GetParam();
    field_ = std::string(1, static_cast<char>(std::tolower(noun_[0]))) + noun_.substr(1);
    const v1::Bundle bundle = served_.exported();
    const FieldDescriptor* list = bundle.GetDescriptor()->FindFieldByName(field_ + "s");
    sample_.reset(bundle.GetReflection()->GetRepeatedMessage(bundle, list, 0).New());
    sample_->CopyFrom(bundle.GetReflection()->GetRepeatedMessage(bundle, list, 0));
    set(*sample_, "id", "fresh");
    sample_->GetReflection()->ClearField(sample_.get(), field(*sample_, "meta"));
  }

  static const FieldDescriptor* field(const Message& message, const std::string& name) {
    return message.GetDescriptor()->FindFieldByName(name);
  }
  static void set(Message& message, const std::string& name, const std::string& value) {
    message.GetReflection()->SetString(&message, field(message, name), value);
  }
  static std::string text(const Message& message, const std::string& name) {
    return message.GetReflection()->GetString(message, field(message, name));
  }
  static std::int64_t revision(const Message& message) {
    return message.GetReflection()->GetInt64(message, field(message, "revision"));
  }
  const Message& documentIn(const Message& message) const {
    return message.GetReflection()->GetMessage(message, field(message, field_));
  }
  static std::string etagOf(const Message& document) {
    return text(document.GetReflection()->GetMessage(document, field(document, "meta")), "etag");
  }

  // The request of "Create", "Get", ... on the household, with a fresh request id where it has one.
  std::unique_ptr<Message> request(const std::string& verb) {
    auto made = emptyOf(method(verb)->input_type());
    set(*made, "household_id", served_.household);
    if (field(*made, "request_id") != nullptr) set(*made, "request_id", freshRequest());
    if (field(*made, field_ + "_id") != nullptr) set(*made, field_ + "_id", "fresh");
    if (const auto* document = field(*made, field_))
      made->GetReflection()->MutableMessage(made.get(), document)->CopyFrom(*sample_);
    return made;
  }
  Message& document(Message& request) {
    return *request.GetReflection()->MutableMessage(&request, field(request, field_));
  }
  StatusCode call(const std::string& verb, const Message& request) {
    const MethodDescriptor* called = method(verb);
    answer_ = emptyOf(called->output_type());
    std::string bytes;
    const grpc::Status status =
        rawCall(served_.channel(), *with(served_.token),
                "/" + std::string(called->service()->full_name()) + "/" + std::string(called->name()),
                request.SerializeAsString(), &bytes);
    answer_->ParseFromString(bytes);
    return status.error_code();
  }
  const MethodDescriptor* method(const std::string& verb) const {
    const ServiceDescriptor* service =
        DescriptorPool::generated_pool()->FindServiceByName("suppertide.v1." + noun_ + "Service");
    return service->FindMethodByName(verb + noun_ + (verb == "List" ? "s" : ""));
  }
  static void only(Message& request) {
    request.GetReflection()->SetBool(&request, field(request, "validate_only"), true);
  }
  std::int64_t present() {
    return served_.server().backend().store().revision(served_.household).value_or(0);
  }

  Served served_;
  std::string noun_;
  std::string field_;
  std::unique_ptr<Message> sample_;
  std::unique_ptr<Message> answer_;
};

TEST_P(DocumentContractTest, IsMadeOnceAndARepeatGetsTheFirstOutcome) {
  const auto create = request("Create");
  ASSERT_EQ(call("Create", *create), StatusCode::OK);
  const std::int64_t made = revision(*answer_);
  EXPECT_EQ(call("Create", *create), StatusCode::OK);
  EXPECT_EQ(revision(*answer_), made);
  EXPECT_EQ(present(), made);
  EXPECT_EQ(call("Create", *request("Create")), StatusCode::ALREADY_EXISTS);
  set(document(*create), "display_name", "Something else");
  EXPECT_EQ(call("Create", *create), StatusCode::INVALID_ARGUMENT) << "a request id for two things";
}

TEST_P(DocumentContractTest, NeedsARequestIdOfAHundredCharactersAtMost) {
  for (const char* verb : {"Create", "Update", "Delete"}) {
    const auto made = request(verb);
    set(*made, "request_id", "");
    EXPECT_EQ(call(verb, *made), StatusCode::INVALID_ARGUMENT) << verb;
    set(*made, "request_id", std::string(101, 'x'));
    EXPECT_EQ(call(verb, *made), StatusCode::INVALID_ARGUMENT) << verb;
  }
}

TEST_P(DocumentContractTest, AStaleEtagIsAborted) {
  ASSERT_EQ(call("Create", *request("Create")), StatusCode::OK);
  const std::string first = etagOf(documentIn(*answer_));
  const auto update = request("Update");
  Message& given = document(*update);
  set(given, "display_name", "Second");
  Message* meta = given.GetReflection()->MutableMessage(&given, field(given, "meta"));
  set(*meta, "etag", first);
  ASSERT_EQ(call("Update", *update), StatusCode::OK);
  set(*update, "request_id", freshRequest());
  EXPECT_EQ(call("Update", *update), StatusCode::ABORTED);
  const auto removal = request("Delete");
  set(*removal, "etag", first);
  EXPECT_EQ(call("Delete", *removal), StatusCode::ABORTED);
}

TEST_P(DocumentContractTest, AMaskChangesItsFieldsAlone) {
  ASSERT_EQ(call("Create", *request("Create")), StatusCode::OK);
  const auto update = request("Update");
  Message& given = document(*update);
  given.Clear();
  set(given, "id", "fresh");
  set(given, "display_name", "Renamed");
  const FieldDescriptor* maskField = field(*update, "update_mask");
  Message* mask = update->GetReflection()->MutableMessage(update.get(), maskField);
  mask->GetReflection()->AddString(mask, field(*mask, "paths"), "display_name");
  ASSERT_EQ(call("Update", *update), StatusCode::OK);
  const auto stored = emptyOf(sample_->GetDescriptor());
  stored->CopyFrom(documentIn(*answer_));
  stored->GetReflection()->ClearField(stored.get(), field(*stored, "meta"));
  set(*sample_, "display_name", "Renamed");
  EXPECT_EQ(stored->DebugString(), sample_->DebugString());
  set(*update, "request_id", freshRequest());
  mask->GetReflection()->AddString(mask, field(*mask, "paths"), "no_such_field");
  EXPECT_EQ(call("Update", *update), StatusCode::INVALID_ARGUMENT);
}

TEST_P(DocumentContractTest, TryingChangesNothing) {
  const std::int64_t before = present();
  const auto create = request("Create");
  only(*create);
  ASSERT_EQ(call("Create", *create), StatusCode::OK);
  EXPECT_EQ(text(documentIn(*answer_), "id"), "fresh");
  EXPECT_EQ(call("Get", *request("Get")), StatusCode::NOT_FOUND);
  EXPECT_EQ(present(), before);
  ASSERT_EQ(call("Create", *request("Create")), StatusCode::OK);
  const std::int64_t made = present();
  for (const char* verb : {"Update", "Delete"}) {
    const auto tried = request(verb);
    only(*tried);
    EXPECT_EQ(call(verb, *tried), StatusCode::OK) << verb;
  }
  EXPECT_EQ(present(), made);
  EXPECT_EQ(call("Get", *request("Get")), StatusCode::OK);
}

TEST_P(DocumentContractTest, IsListedInPagesById) {
  for (const char* id : {"a1", "a2", "a3"}) {
    const auto create = request("Create");
    set(document(*create), "id", id);
    ASSERT_EQ(call("Create", *create), StatusCode::OK) << id;
  }
  std::vector<std::string> ids;
  const auto list = request("List");
  list->GetReflection()->SetInt32(list.get(), field(*list, "page_size"), 1);
  for (int pages = 0; pages < 50; ++pages) {
    ASSERT_EQ(call("List", *list), StatusCode::OK);
    const FieldDescriptor* documents = field(*answer_, field_ + "s");
    ASSERT_LE(answer_->GetReflection()->FieldSize(*answer_, documents), 1);
    if (answer_->GetReflection()->FieldSize(*answer_, documents) == 1)
      ids.push_back(text(answer_->GetReflection()->GetRepeatedMessage(*answer_, documents, 0), "id"));
    EXPECT_EQ(revision(*answer_), present());
    set(*list, "page_token", text(*answer_, "next_page_token"));
    if (text(*list, "page_token").empty()) break;
  }
  EXPECT_TRUE(std::is_sorted(ids.begin(), ids.end()));
  for (const char* id : {"a1", "a2", "a3"}) EXPECT_THAT(ids, testing::Contains(id));
  list->GetReflection()->SetInt32(list.get(), field(*list, "page_size"), -1);
  EXPECT_EQ(call("List", *list), StatusCode::INVALID_ARGUMENT);
}

TEST_P(DocumentContractTest, LeavesATombstoneThatWatchersAreTold) {
  ASSERT_EQ(call("Create", *request("Create")), StatusCode::OK);
  const std::int64_t made = revision(*answer_);
  const auto removal = request("Delete");
  ASSERT_EQ(call("Delete", *removal), StatusCode::OK);
  EXPECT_EQ(revision(*answer_), made + 1);
  EXPECT_EQ(call("Delete", *removal), StatusCode::OK) << "a repeat";
  EXPECT_EQ(call("Get", *request("Get")), StatusCode::NOT_FOUND);
  EXPECT_EQ(call("Delete", *request("Delete")), StatusCode::OK) << "of what is gone";
  EXPECT_EQ(present(), made + 1);
  v1::WatchRequest watch;
  watch.set_household_id(served_.household);
  watch.set_after_revision(made);
  const auto context = with(served_.token);
  const auto stream = v1::SyncService::NewStub(served_.channel())->Watch(context.get(), watch);
  v1::WatchResponse message;
  ASSERT_TRUE(stream->Read(&message));
  bool told = false;
  for (const v1::Change& change : message.changes().changes())
    told = told || (change.deleted().kind() == field_ && change.deleted().id() == "fresh");
  EXPECT_TRUE(told) << message.ShortDebugString();
  context->TryCancel();
  while (stream->Read(&message)) {
  }
  stream->Finish();
}

// Every list by pages of one: what each holds is what the whole list holds.
class ListContractTest : public ::testing::TestWithParam<std::string> {
 protected:
  void SetUp() override {
    supper_.makePlan();
    for (const char* name : {"Mine", "Theirs", "All"}) address(name);
    method_ = DescriptorPool::generated_pool()->FindMethodByName("suppertide.v1." + GetParam());
    request_ = emptyOf(method_->input_type());
    request_->GetReflection()->SetString(request_.get(), field(*request_, "household_id"), served_.household);
    if (const FieldDescriptor* from = field(*request_, "from_time")) {
      Message* time = request_->GetReflection()->MutableMessage(request_.get(), from);
      time->GetReflection()->SetInt64(time, field(*time, "seconds"), 1);
    }
  }
  void address(const std::string& name) {
    v1::CreateCalendarAddressRequest request;
    request.set_household_id(served_.household);
    request.mutable_address()->set_display_name(name);
    request.set_request_id(freshRequest());
    v1::CreateCalendarAddressResponse answer;
    ASSERT_TRUE(v1::CalendarService::NewStub(served_.channel())
                    ->CreateCalendarAddress(with(served_.token).get(), request, &answer)
                    .ok());
  }
  static const FieldDescriptor* field(const Message& message, const std::string& name) {
    return message.GetDescriptor()->FindFieldByName(name);
  }
  // The items of a page, as text.
  std::vector<std::string> page(int size, std::string& token, StatusCode& code) {
    request_->GetReflection()->SetInt32(request_.get(), field(*request_, "page_size"), size);
    request_->GetReflection()->SetString(request_.get(), field(*request_, "page_token"), token);
    std::string bytes;
    code = rawCall(served_.channel(), *with(served_.token),
                   "/" + std::string(method_->service()->full_name()) + "/" + std::string(method_->name()),
                   request_->SerializeAsString(), &bytes)
               .error_code();
    const auto answer = emptyOf(method_->output_type());
    answer->ParseFromString(bytes);
    token = answer->GetReflection()->GetString(*answer, field(*answer, "next_page_token"));
    std::vector<std::string> items;
    for (int f = 0; f < answer->GetDescriptor()->field_count(); ++f) {
      const FieldDescriptor* list = answer->GetDescriptor()->field(f);
      if (!list->is_repeated()) continue;
      for (int i = 0; i < answer->GetReflection()->FieldSize(*answer, list); ++i)
        items.push_back(answer->GetReflection()->GetRepeatedMessage(*answer, list, i).ShortDebugString());
    }
    return items;
  }

  Supper supper_{v1::LIVE_CORRECTION_AT_ONCE, {}, "127.0.0.1:0"};
  Served& served_ = supper_.served();
  const MethodDescriptor* method_ = nullptr;
  std::unique_ptr<Message> request_;
};

TEST_P(ListContractTest, PagesOfOneHoldWhatTheWholeListHolds) {
  std::string token;
  StatusCode code = StatusCode::OK;
  const std::vector<std::string> whole = page(500, token, code);
  ASSERT_EQ(code, StatusCode::OK);
  EXPECT_EQ(token, "");
  ASSERT_FALSE(whole.empty());
  std::vector<std::string> single;
  do {
    const auto items = page(1, token, code);
    ASSERT_EQ(code, StatusCode::OK);
    ASSERT_EQ(items.size(), 1u);
    single.push_back(items.front());
  } while (!token.empty() && single.size() <= whole.size());
  EXPECT_EQ(single, whole);
  page(-1, token, code);
  EXPECT_EQ(code, StatusCode::INVALID_ARGUMENT);
}

std::vector<std::string> everyList() {
  std::vector<std::string> lists;
  for (const MethodDescriptor* call : everyCall())
    if (std::string(call->name()).rfind("List", 0) == 0)
      lists.push_back(std::string(call->service()->name()) + "." + std::string(call->name()));
  return lists;
}

INSTANTIATE_TEST_SUITE_P(Each, ListContractTest, ::testing::ValuesIn(everyList()),
                         [](const auto& list) { return list.param.substr(list.param.find('.') + 1); });

INSTANTIATE_TEST_SUITE_P(Each, DocumentContractTest,
                         ::testing::Values("Kitchen", "Starter", "Recipe", "Event"),
                         [](const auto& kind) { return kind.param; });

}  // namespace
}  // namespace suppertide::service
