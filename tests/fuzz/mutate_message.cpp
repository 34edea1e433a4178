#include "tests/fuzz/mutate_message.h"

#include <google/protobuf/stubs/logging.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

namespace suppertide::fuzz {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

constexpr std::size_t kMostParts = 5000;

// All messages in a message, itself first, and the texts in them.
struct Contents {
  explicit Contents(Message& top) { look(top); }

  void look(Message& message) {
    if (parts.size() >= kMostParts) return;
    parts.push_back(&message);
    const auto* reflection = message.GetReflection();
    std::vector<const FieldDescriptor*> fields;
    reflection->ListFields(message, &fields);
    for (const FieldDescriptor* field : fields) {
      if (field->cpp_type() == FieldDescriptor::CPPTYPE_STRING && !field->is_repeated())
        texts.push_back(reflection->GetString(message, field));
      if (field->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE) continue;
      if (!field->is_repeated()) look(*reflection->MutableMessage(&message, field));
      for (int i = 0; field->is_repeated() && i < reflection->FieldSize(message, field); ++i)
        look(*reflection->MutableRepeatedMessage(&message, field, i));
    }
  }

  std::vector<Message*> parts;
  std::vector<std::string> texts = {"home", "supper", "ana"};
};

std::string someText(const Contents& contents, const std::string& present, Dice& dice) {
  switch (dice.between(0, 9)) {
    case 0:
      return "";
    case 1:
      return present + "x";
    case 2:
      return std::string(static_cast<std::size_t>(dice.between(1, 5000)), 'a');
    case 3:
      return dice.oneOf<std::string>({"a/b", "../a", "a b", "\n", "\xc3\xa9\xc3\xa9", "%s%n", "{}", "'; --"});
    case 4:
      return dice.oneOf<std::string>(
          {"25:00", "00:00", "23:59", "Europe/Tallinn", "Mars/Base", "1/2 cup", "-3 g"});
    default:
      return dice.oneOf(contents.texts);
  }
}

template <typename Number>
Number someWhole(Number present, Dice& dice) {
  using Limits = std::numeric_limits<Number>;
  return dice.oneOf<Number>({0, 1, 2, Number(-1), 7, 100, 86'400, 1'000'000'000, Limits::max(), Limits::min(),
                             static_cast<Number>(present + (present < Limits::max() ? 1 : 0)),
                             static_cast<Number>(present - (present > Limits::min() ? 1 : 0)),
                             static_cast<Number>(present / 2), static_cast<Number>(dice.between(0, 300))});
}

double someFraction(double present, Dice& dice) {
  using Limits = std::numeric_limits<double>;
  return dice.oneOf<double>({0, -0.0, 1, -1, 0.5, 100, 1e-300, 1e300, Limits::quiet_NaN(), Limits::infinity(),
                             -Limits::infinity(), Limits::denorm_min(), present * 2, present / 2, -present,
                             present + 1, std::nextafter(present, 1e9), dice.between(0, 3000) / 10.0});
}

void setSingle(Message& message, const FieldDescriptor* field, const Contents& contents, Dice& dice) {
  const auto* reflection = message.GetReflection();
  switch (field->cpp_type()) {
    case FieldDescriptor::CPPTYPE_INT32:
      return reflection->SetInt32(&message, field, someWhole(reflection->GetInt32(message, field), dice));
    case FieldDescriptor::CPPTYPE_INT64:
      return reflection->SetInt64(&message, field, someWhole(reflection->GetInt64(message, field), dice));
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return reflection->SetDouble(&message, field,
                                   someFraction(reflection->GetDouble(message, field), dice));
    case FieldDescriptor::CPPTYPE_BOOL:
      return reflection->SetBool(&message, field, !reflection->GetBool(message, field));
    case FieldDescriptor::CPPTYPE_ENUM:
      return reflection->SetEnumValue(&message, field,
                                      dice.between(-1, field->enum_type()->value_count() + 1));
    case FieldDescriptor::CPPTYPE_STRING:
      return reflection->SetString(&message, field,
                                   someText(contents, reflection->GetString(message, field), dice));
    case FieldDescriptor::CPPTYPE_MESSAGE:
      reflection->MutableMessage(&message, field);
      return;
    default:
      return;
  }
}

void addElement(Message& message, const FieldDescriptor* field, const Contents& contents, Dice& dice) {
  const auto* reflection = message.GetReflection();
  const int size = reflection->FieldSize(message, field);
  if (field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE) {
    if (field->is_map()) return;
    const int copied = size > 0 ? dice.between(0, size - 1) : -1;
    Message* added = reflection->AddMessage(&message, field);
    if (copied >= 0) added->CopyFrom(reflection->GetRepeatedMessage(message, field, copied));
  } else if (field->cpp_type() == FieldDescriptor::CPPTYPE_STRING) {
    reflection->AddString(&message, field, someText(contents, "", dice));
  } else if (field->cpp_type() == FieldDescriptor::CPPTYPE_ENUM) {
    reflection->AddEnumValue(&message, field, dice.between(0, field->enum_type()->value_count()));
  } else if (field->cpp_type() == FieldDescriptor::CPPTYPE_INT32) {
    reflection->AddInt32(&message, field, someWhole<std::int32_t>(1, dice));
  } else if (field->cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE) {
    reflection->AddDouble(&message, field, someFraction(1, dice));
  }
}

void changeList(Message& message, const FieldDescriptor* field, const Contents& contents, Dice& dice) {
  const auto* reflection = message.GetReflection();
  const int size = reflection->FieldSize(message, field);
  const int what = dice.between(0, 9);
  if (size > 0 && what == 0) return reflection->ClearField(&message, field);
  if (size > 0 && what <= 3) {
    reflection->SwapElements(&message, field, dice.between(0, size - 1), size - 1);
    return reflection->RemoveLast(&message, field);
  }
  if (size > 1 && what == 4)
    return reflection->SwapElements(&message, field, dice.between(0, size - 1), dice.between(0, size - 1));
  const int more = what == 5 ? dice.between(2, 60) : 1;
  for (int i = 0; i < more; ++i) addElement(message, field, contents, dice);
}

}  // namespace

void mutate(Message& message, Dice& dice) {
  const Contents contents(message);
  Message& part = *dice.oneOf(contents.parts);
  const auto* type = part.GetDescriptor();
  if (type->field_count() == 0) return;
  const FieldDescriptor* field = type->field(dice.between(0, type->field_count() - 1));
  if (field->is_repeated()) return changeList(part, field, contents, dice);
  if (part.GetReflection()->HasField(part, field) && dice.chance(15))
    return part.GetReflection()->ClearField(&part, field);
  setSingle(part, field, contents, dice);
}

}  // namespace suppertide::fuzz

extern "C" int LLVMFuzzerInitialize(int*, char***) {
  google::protobuf::SetLogHandler(nullptr);  // it complains of each text that is no UTF-8
  return 0;
}
