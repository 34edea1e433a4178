#include "client/terminal/bundle_file.h"

#include <algorithm>
#include <map>
#include <set>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "client/terminal/json_tree.h"
#include "client/terminal/json_values.h"
#include "client/terminal/text.h"
#include "google/protobuf/descriptor.h"
#include "google/protobuf/util/time_util.h"

namespace suppertide::terminal {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::EnumDescriptor;
using google::protobuf::EnumValueDescriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;
using google::protobuf::util::TimeUtil;
using Kind = JsonValue::Kind;

std::vector<std::string> fieldNames(const Descriptor& type) {
  std::vector<std::string> names;
  for (int i = 0; i < type.field_count(); ++i) names.push_back(type.field(i)->json_name());
  return names;
}

std::vector<std::string> valueNames(const EnumDescriptor& type) {
  std::vector<std::string> names;
  for (int i = 0; i < type.value_count(); ++i) {
    if (type.value(i)->number() != 0) names.push_back(type.value(i)->name());
  }
  return names;
}

const FieldDescriptor* fieldNamed(const Descriptor& type, const std::string& name) {
  for (int i = 0; i < type.field_count(); ++i) {
    if (type.field(i)->json_name() == name || type.field(i)->name() == name) return type.field(i);
  }
  return nullptr;
}

const EnumValueDescriptor* enumValueOf(const JsonValue& value, const EnumDescriptor& type) {
  if (value.kind == Kind::kText) return type.FindValueByName(value.text);
  const auto number = integerOf<std::int32_t>(value);
  return number ? type.FindValueByNumber(*number) : nullptr;
}

// "OVEN" and "oven" are STEP_KIND_OVEN, as "STEP_KIND_OVNE" is.
std::string likelyValue(const std::string& text, const std::vector<std::string>& names) {
  const std::string ending = absl::StrCat("_", absl::AsciiStrToUpper(text));
  for (const std::string& name : names) {
    if (name.size() > ending.size() && name.compare(name.size() - ending.size(), ending.size(), ending) == 0)
      return name;
  }
  return nearest(text, names);
}

bool isScalar(const JsonValue& value) {
  return value.kind != Kind::kNull && value.kind != Kind::kText && value.kind != Kind::kArray &&
         value.kind != Kind::kObject;
}

// One walk over a tree along a message's description.
class Reader {
 public:
  void readObject(const JsonValue& value, Message& message, const std::string& path) {
    if (value.kind != Kind::kObject) {
      report(path.empty() ? "(the whole file)" : path, value, "an object is wanted here: { … }");
      return;
    }
    std::set<const FieldDescriptor*> seen;
    std::map<const google::protobuf::OneofDescriptor*, std::string> chosen;
    for (const auto& [name, member] : value.members) {
      const std::string memberPath =
          path.empty() ? plainLine(name) : absl::StrCat(path, ".", plainLine(name));
      const FieldDescriptor* field = fieldNamed(*message.GetDescriptor(), name);
      if (field == nullptr) {
        readUnknown(memberPath, name, value, member, message);
      } else if (!seen.insert(field).second) {
        report(memberPath, member, "this field is given twice here; keep one");
      } else if (const auto* oneof = field->real_containing_oneof();
                 oneof != nullptr && member.kind != Kind::kNull && !chosen.emplace(oneof, name).second) {
        report(
            memberPath, member,
            absl::StrCat("only one of these may be given; there is ", plainLine(chosen[oneof]), " already"));
      } else if (member.kind != Kind::kNull) {
        readField(member, *field, message, memberPath);
      }
    }
  }

  Reading take() { return std::move(reading_); }

 private:
  void report(const std::string& path, const JsonValue& value, const std::string& allowed) {
    v1::FieldViolation violation;
    violation.set_field_path(path);
    violation.set_value(describe(value));
    violation.set_description(allowed);
    reading_.mistakes.push_back(std::move(violation));
  }

  // A member of `object` that `message` has no field for.
  void readUnknown(const std::string& path, const std::string& name, const JsonValue& object,
                   const JsonValue& value, Message& message) {
    const Descriptor& type = *message.GetDescriptor();
    const std::vector<std::string> names = fieldNames(type);
    const std::string likely = nearest(name, names);
    if (likely.empty()) {
      report(path, value, absl::StrCat("there is no such field; known here: ", absl::StrJoin(names, ", ")));
      return;
    }
    report(path, value, absl::StrCat("there is no such field; did you mean ", likely, "?"));
    const FieldDescriptor* field = fieldNamed(type, likely);
    const bool given = std::any_of(object.members.begin(), object.members.end(), [&](const auto& member) {
      return fieldNamed(type, member.name) == field;
    });
    if (!given && field->real_containing_oneof() == nullptr) readField(value, *field, message, path);
  }

  // The value that was meant; null when that is not plain.
  const EnumValueDescriptor* reportUnknownValue(const JsonValue& value, const EnumDescriptor& type,
                                                const std::string& path) {
    const std::vector<std::string> names = valueNames(type);
    const std::string likely = value.kind == Kind::kText ? likelyValue(value.text, names) : "";
    report(path, value,
           absl::StrCat(likely.empty() ? "" : absl::StrCat("did you mean ", likely, "? "), "one of ",
                        absl::StrJoin(names, ", ")));
    if (!likely.empty()) return type.FindValueByName(likely);
    const std::string parent = path.substr(0, path.rfind('.'));
    if (parent.find('[') != std::string::npos) reading_.doubtful.push_back(parent);
    return nullptr;
  }

  void readField(const JsonValue& value, const FieldDescriptor& field, Message& message,
                 const std::string& path) {
    if (field.is_map()) {
      readMap(value, field, message, path);
    } else if (field.is_repeated()) {
      readList(value, field, message, path);
    } else {
      readOne(value, field, message, path);
    }
  }

  void readList(const JsonValue& value, const FieldDescriptor& field, Message& message,
                const std::string& path) {
    if (value.kind != Kind::kArray) {
      report(path, value, "a list is wanted here: [ … ]");
      if (value.kind == Kind::kObject) readOne(value, field, message, absl::StrCat(path, "[0]"));
      return;
    }
    for (std::size_t i = 0; i < value.elements.size(); ++i) {
      readOne(value.elements[i], field, message, absl::StrCat(path, "[", i, "]"));
    }
  }

  void readMap(const JsonValue& value, const FieldDescriptor& field, Message& message,
               const std::string& path) {
    if (value.kind != Kind::kObject) {
      report(path, value, "an object is wanted here: { … }");
      return;
    }
    const Descriptor& entry = *field.message_type();
    std::set<std::string> keys;
    for (const auto& [key, member] : value.members) {
      const std::string memberPath = absl::StrCat(path, "[", plainLine(key), "]");
      if (!keys.insert(key).second) {
        report(memberPath, member, "this key is given twice here; keep one");
        continue;
      }
      Message& pair = *message.GetReflection()->AddMessage(&message, &field);
      JsonValue name;
      name.kind = Kind::kText;
      name.text = key;
      readOne(name, *entry.map_key(), pair, memberPath);
      readOne(member, *entry.map_value(), pair, memberPath);
    }
  }

  // One value into a single field, or as the next element of a list.
  void readOne(const JsonValue& value, const FieldDescriptor& field, Message& message,
               const std::string& path) {
    const Reflection& reflection = *message.GetReflection();
    switch (field.cpp_type()) {
      case FieldDescriptor::CPPTYPE_MESSAGE: {
        Message& inner = field.is_repeated() ? *reflection.AddMessage(&message, &field)
                                             : *reflection.MutableMessage(&message, &field);
        if (!readMessageValue(value, inner, path) && !field.is_repeated())
          reflection.ClearField(&message, &field);
        return;
      }
      case FieldDescriptor::CPPTYPE_ENUM: {
        const EnumValueDescriptor* known = enumValueOf(value, *field.enum_type());
        if (known == nullptr) known = reportUnknownValue(value, *field.enum_type(), path);
        if (field.is_repeated()) {
          reflection.AddEnumValue(&message, &field, known == nullptr ? 0 : known->number());
        } else if (known != nullptr) {
          reflection.SetEnumValue(&message, &field, known->number());
        }
        return;
      }
      case FieldDescriptor::CPPTYPE_STRING: {
        std::optional<std::string> text;
        if (value.kind == Kind::kText) text = value.text;
        const bool faulty = !text;
        if (isScalar(value)) text = describe(value);
        if (faulty) report(path, value, "text in quotes is wanted here: \"…\"");
        if (field.is_repeated()) {
          reflection.AddString(&message, &field, text.value_or(""));
        } else if (text) {
          reflection.SetString(&message, &field, *text);
        }
        return;
      }
      case FieldDescriptor::CPPTYPE_BOOL: {
        if (value.kind != Kind::kBool) report(path, value, "true or false, without quotes");
        if (field.is_repeated()) {
          reflection.AddBool(&message, &field, value.truth);
        } else if (value.kind == Kind::kBool) {
          reflection.SetBool(&message, &field, value.truth);
        }
        return;
      }
      default:
        readNumber(value, field, message, path);
    }
  }

  template <typename Number>
  void store(const std::optional<Number>& number, const JsonValue& value, const FieldDescriptor& field,
             Message& message, const std::string& path, const char* allowed,
             void (Reflection::*set)(Message*, const FieldDescriptor*, Number) const,
             void (Reflection::*add)(Message*, const FieldDescriptor*, Number) const) {
    if (!number) report(path, value, allowed);
    if (field.is_repeated()) {
      (message.GetReflection()->*add)(&message, &field, number.value_or(Number{}));
    } else if (number) {
      (message.GetReflection()->*set)(&message, &field, *number);
    }
  }

  void readNumber(const JsonValue& value, const FieldDescriptor& field, Message& message,
                  const std::string& path) {
    static constexpr char kWhole[] = "a whole number is wanted here, without a unit";
    static constexpr char kNatural[] = "a whole number from 0 up is wanted here, without a unit";
    static constexpr char kAny[] = "a number is wanted here, without a unit";
    switch (field.cpp_type()) {
      case FieldDescriptor::CPPTYPE_INT32:
        return store(integerOf<std::int32_t>(value), value, field, message, path, kWhole,
                     &Reflection::SetInt32, &Reflection::AddInt32);
      case FieldDescriptor::CPPTYPE_INT64:
        return store(integerOf<std::int64_t>(value), value, field, message, path, kWhole,
                     &Reflection::SetInt64, &Reflection::AddInt64);
      case FieldDescriptor::CPPTYPE_UINT32:
        return store(integerOf<std::uint32_t>(value), value, field, message, path, kNatural,
                     &Reflection::SetUInt32, &Reflection::AddUInt32);
      case FieldDescriptor::CPPTYPE_UINT64:
        return store(integerOf<std::uint64_t>(value), value, field, message, path, kNatural,
                     &Reflection::SetUInt64, &Reflection::AddUInt64);
      case FieldDescriptor::CPPTYPE_FLOAT: {
        const auto number = numberOf(value);
        const auto real = number ? std::optional<float>(static_cast<float>(*number)) : std::nullopt;
        return store(real, value, field, message, path, kAny, &Reflection::SetFloat, &Reflection::AddFloat);
      }
      default:
        return store(numberOf(value), value, field, message, path, kAny, &Reflection::SetDouble,
                     &Reflection::AddDouble);
    }
  }

  // False when the value as a whole could not be read.
  bool readMessageValue(const JsonValue& value, Message& message, const std::string& path) {
    const std::string& type = message.GetDescriptor()->full_name();
    if (type == "google.protobuf.Timestamp") {
      google::protobuf::Timestamp time;
      const bool read = value.kind == Kind::kText && TimeUtil::FromString(value.text, &time);
      if (read) message.CopyFrom(time);
      if (!read)
        report(path, value, "a date and time with its offset from UTC: \"2026-06-20T18:30:00+01:00\"");
      return read;
    }
    if (type == "google.protobuf.Duration") {
      google::protobuf::Duration duration;
      const bool read = value.kind == Kind::kText && TimeUtil::FromString(value.text, &duration);
      if (read) message.CopyFrom(duration);
      if (!read) report(path, value, "seconds as text: \"2700s\" is 45 minutes");
      return read;
    }
    if (value.kind == Kind::kNull) {
      report(path, value, "an object is wanted here: { … }");
      return false;
    }
    readObject(value, message, path);
    return value.kind == Kind::kObject;
  }

  Reading reading_;
};

// Whether `path` is `above` or lies inside it.
bool liesWithin(const std::string& path, const std::string& above) {
  if (path.compare(0, above.size(), above) != 0) return false;
  return path.size() == above.size() || path[above.size()] == '.' || path[above.size()] == '[';
}

}  // namespace

Reading readMessage(const std::string& text, google::protobuf::Message& message) {
  JsonSyntaxError error;
  const auto tree = parseJson(text, error);
  if (tree) {
    Reader reader;
    reader.readObject(*tree, message, "");
    return reader.take();
  }
  v1::FieldViolation violation;
  violation.set_field_path(absl::StrCat("line ", error.line, ", column ", error.column));
  violation.set_value(error.found);
  violation.set_description(error.expected);
  return {.isJson = false, .mistakes = {violation}, .doubtful = {}};
}

Violations joined(const Reading& reading, const Violations& found) {
  Violations all = reading.mistakes;
  for (const v1::FieldViolation& violation : found) {
    const std::string& path = violation.field_path();
    const bool told = std::any_of(reading.mistakes.begin(), reading.mistakes.end(), [&](const auto& mistake) {
      return liesWithin(path, mistake.field_path()) || liesWithin(mistake.field_path(), path);
    });
    const bool doubtful = std::any_of(reading.doubtful.begin(), reading.doubtful.end(),
                                      [&](const std::string& thing) { return liesWithin(path, thing); });
    if (!told && !doubtful) all.push_back(violation);
  }
  return all;
}

std::string lineOf(const v1::FieldViolation& violation) {
  const std::string value = violation.value().empty() ? "(nothing)" : plainLine(violation.value());
  return absl::StrCat(plainLine(violation.field_path()), ": ", value, " — ",
                      plainLine(violation.description()));
}

}  // namespace suppertide::terminal
