// New inputs for fuzz_request: the same call with a changed message, another call altogether, or any bytes.
#include <google/protobuf/descriptor.h>
#include <google/protobuf/message.h>

#include <memory>

#include "server/service/access.h"
#include "suppertide/v1/bundle.pb.h"
#include "tests/compose/small_dinner.h"
#include "tests/fuzz/mutate_message.h"
#include "tests/fuzz/mutators.h"

namespace {

using google::protobuf::Descriptor;
using google::protobuf::DescriptorPool;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::MessageFactory;
using suppertide::Dice;

// The request type of "RecipeService/CreateRecipe"; null when there is no such call.
const Descriptor* requestType(const std::string& method) {
  const std::size_t slash = method.find('/');
  if (slash == std::string::npos) return nullptr;
  const auto* service =
      DescriptorPool::generated_pool()->FindServiceByName("suppertide.v1." + method.substr(0, slash));
  const auto* call = service != nullptr ? service->FindMethodByName(method.substr(slash + 1)) : nullptr;
  return call != nullptr ? call->input_type() : nullptr;
}

std::unique_ptr<Message> emptyOf(const Descriptor* type) {
  return std::unique_ptr<Message>(MessageFactory::generated_factory()->GetPrototype(type)->New());
}

// A document of the sample dinner where the request wants one of its kind.
void fillIn(Message& request, Dice& dice) {
  static const suppertide::v1::Bundle dinner = suppertide::compose::smallDinner();
  const auto* reflection = request.GetReflection();
  const auto* type = request.GetDescriptor();
  const auto* kinds = dinner.GetDescriptor();
  for (int i = 0; i < type->field_count(); ++i) {
    const FieldDescriptor* field = type->field(i);
    if (field->is_repeated() || field->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE) continue;
    if (field->message_type() == kinds) reflection->MutableMessage(&request, field)->CopyFrom(dinner);
    for (int k = 0; k < kinds->field_count(); ++k) {
      const FieldDescriptor* kind = kinds->field(k);
      if (kind->message_type() != field->message_type() || !kind->is_repeated()) continue;
      const int size = dinner.GetReflection()->FieldSize(dinner, kind);
      if (size == 0) continue;
      reflection->MutableMessage(&request, field)
          ->CopyFrom(dinner.GetReflection()->GetRepeatedMessage(dinner, kind, dice.between(0, size - 1)));
    }
  }
}

// A request as a client would begin one.
std::unique_ptr<Message> freshRequest(const Descriptor* type, Dice& dice) {
  auto request = emptyOf(type);
  const auto set = [&](const char* name, const std::string& value) {
    const FieldDescriptor* field = type->FindFieldByName(name);
    if (field != nullptr && field->cpp_type() == FieldDescriptor::CPPTYPE_STRING && !field->is_repeated())
      request->GetReflection()->SetString(request.get(), field, value);
  };
  fillIn(*request, dice);
  set("household_id", "home");
  set("event_id", "supper");
  set("recipe_id", dice.oneOf<std::string>({"rolls", "gratin", "salad"}));
  set("kitchen_id", "k");
  set("starter_id", "s");
  set("request_id", "q" + std::to_string(dice.between(0, 999'999)));
  return request;
}

}  // namespace

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t maxSize,
                                               unsigned seed) {
  Dice dice(seed);
  if (dice.chance(8)) return LLVMFuzzerMutate(data, size, maxSize);
  const std::string input(reinterpret_cast<const char*>(data), size);
  const std::size_t line = input.find('\n');
  std::string method = input.substr(0, line);
  const Descriptor* type = requestType(method);
  std::unique_ptr<Message> request;
  if (type == nullptr || dice.chance(12)) {
    const auto table = suppertide::service::accessTable();
    method = table[static_cast<std::size_t>(dice.between(0, static_cast<int>(table.size()) - 1))].method;
    type = requestType(method);
    if (type == nullptr) return LLVMFuzzerMutate(data, size, maxSize);
    request = freshRequest(type, dice);
  } else {
    request = emptyOf(type);
    if (line != std::string::npos) request->ParsePartialFromString(input.substr(line + 1));
  }
  for (int changes = dice.between(0, 4); changes > 0; --changes) suppertide::fuzz::mutate(*request, dice);
  return suppertide::fuzz::give(method + "\n" + request->SerializePartialAsString(), data, maxSize);
}
