#include "client/link/any_write.h"

#include <google/protobuf/descriptor.h>
#include <grpcpp/channel.h>
#include <grpcpp/client_context.h>
#include <grpcpp/completion_queue.h>
#include <grpcpp/generic/generic_stub.h>
#include <grpcpp/support/byte_buffer.h>

#include <vector>

#include "absl/strings/str_cat.h"
#include "client/link/edit.h"
#include "client/link/error_detail.h"
#include "client/link/open_calls.h"
#include "client/link/request_id.h"
#include "suppertide/v1/event_service.pb.h"
#include "suppertide/v1/household_service.pb.h"
#include "suppertide/v1/kitchen_service.pb.h"
#include "suppertide/v1/plan_service.pb.h"
#include "suppertide/v1/progress_service.pb.h"
#include "suppertide/v1/recipe_service.pb.h"
#include "suppertide/v1/reminder_service.pb.h"
#include "suppertide/v1/review_service.pb.h"
#include "suppertide/v1/shopping_service.pb.h"
#include "suppertide/v1/starter_service.pb.h"

namespace suppertide::link {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;

// A file with services that change documents, by one message of each.
const google::protobuf::FileDescriptor* const* serviceFiles(std::size_t& count) {
  static const google::protobuf::FileDescriptor* const files[] = {
      v1::UpdateEventRequest::descriptor()->file(),   v1::UpdateHouseholdRequest::descriptor()->file(),
      v1::UpdateKitchenRequest::descriptor()->file(), v1::UpdateRecipeRequest::descriptor()->file(),
      v1::UpdateStarterRequest::descriptor()->file(), v1::AddReportsRequest::descriptor()->file(),
      v1::StopPlanningRequest::descriptor()->file(),  v1::SettleRemindersRequest::descriptor()->file(),
      v1::KeepReviewRequest::descriptor()->file(),    v1::EditShoppingRequest::descriptor()->file(),
  };
  count = std::size(files);
  return files;
}

void fill(google::protobuf::Message& request, const char* name, const std::string& value) {
  const FieldDescriptor* field = request.GetDescriptor()->FindFieldByName(name);
  if (field == nullptr || field->cpp_type() != FieldDescriptor::CPPTYPE_STRING || field->is_repeated())
    return;
  const auto* reflection = request.GetReflection();
  if (reflection->GetString(request, field).empty()) reflection->SetString(&request, field, value);
}

grpc::ByteBuffer bytesOf(const google::protobuf::Message& request) {
  const std::string bytes = request.SerializeAsString();
  const grpc::Slice slice(bytes);
  return grpc::ByteBuffer(&slice, 1);
}

// The unary call that takes such a request; null when there is none.
const google::protobuf::MethodDescriptor* methodOf(const google::protobuf::Message& request) {
  const Descriptor* wanted = request.GetDescriptor();
  std::size_t count = 0;
  const auto* files = serviceFiles(count);
  for (std::size_t f = 0; f < count; ++f) {
    for (int s = 0; s < files[f]->service_count(); ++s) {
      const auto* service = files[f]->service(s);
      for (int m = 0; m < service->method_count(); ++m) {
        const auto* method = service->method(m);
        if (method->input_type() == wanted && !method->server_streaming()) return method;
      }
    }
  }
  return nullptr;
}

std::string pathOf(const google::protobuf::MethodDescriptor& method) {
  return absl::StrCat("/", method.service()->full_name(), "/", method.name());
}

std::unique_ptr<google::protobuf::Message> answerOf(const google::protobuf::MethodDescriptor& method,
                                                    const grpc::ByteBuffer& bytes) {
  std::unique_ptr<google::protobuf::Message> answer(
      google::protobuf::MessageFactory::generated_factory()->GetPrototype(method.output_type())->New());
  std::vector<grpc::Slice> slices;
  if (!bytes.Dump(&slices).ok()) return nullptr;
  std::string text;
  for (const grpc::Slice& slice : slices)
    text.append(reinterpret_cast<const char*>(slice.begin()), slice.size());
  return answer->ParseFromString(text) ? std::move(answer) : nullptr;
}

}  // namespace

std::string callPathOf(const google::protobuf::Message& request) {
  const auto* method = methodOf(request);
  return method == nullptr ? std::string() : pathOf(*method);
}

void fillIds(google::protobuf::Message& request, const std::string& householdId) {
  fill(request, "household_id", householdId);
  fill(request, "request_id", newRequestId());
  if (google::protobuf::Message* document = mutableDocument(request); document != nullptr)
    fill(*document, "id", newRequestId());
}

absl::StatusOr<std::unique_ptr<google::protobuf::Message>> writeAny(
    const std::shared_ptr<grpc::Channel>& channel, const std::string& deviceToken,
    const google::protobuf::Message& request, std::chrono::milliseconds deadline, OpenCalls& calls) {
  const auto* method = methodOf(request);
  if (method == nullptr)
    return absl::InvalidArgumentError(absl::StrCat(request.GetTypeName(), " is no request that writes"));
  OpenCalls::Call open(calls);
  grpc::ClientContext& context = open.context();
  context.AddMetadata("authorization", "Bearer " + deviceToken);
  context.set_deadline(std::chrono::system_clock::now() + deadline);
  grpc::CompletionQueue queue;
  grpc::GenericStub stub(channel);
  const auto call = stub.PrepareUnaryCall(&context, pathOf(*method), bytesOf(request), &queue);
  call->StartCall();
  grpc::ByteBuffer bytes;
  grpc::Status status;
  call->Finish(&bytes, &status, &context);
  void* tag = nullptr;
  bool ok = false;
  queue.Next(&tag, &ok);
  queue.Shutdown();
  while (queue.Next(&tag, &ok)) {
  }
  if (!status.ok()) return toStatus(status, context);
  auto answer = answerOf(*method, bytes);
  if (answer == nullptr)
    return absl::InternalError(absl::StrCat(method->name(), ": the answer is unreadable"));
  return answer;
}

}  // namespace suppertide::link
