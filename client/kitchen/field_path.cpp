#include "client/kitchen/field_path.h"

#include <google/protobuf/descriptor.h>
#include <google/protobuf/duration.pb.h>
#include <google/protobuf/timestamp.pb.h>

#include <QtCore/qstringlist.h>

#include <cmath>

namespace suppertide {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::Duration;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Timestamp;

constexpr double kSecondsPerMinute = 60;

const FieldDescriptor* fieldOf(const Descriptor& type, const std::string& jsonName) {
  for (int i = 0; i < type.field_count(); ++i) {
    if (type.field(i)->json_name() == jsonName) return type.field(i);
  }
  return nullptr;
}

bool isA(const FieldDescriptor* field, const Descriptor* type) {
  return field->cpp_type() == FieldDescriptor::CPPTYPE_MESSAGE && field->message_type() == type;
}

}  // namespace

FieldPath FieldPath::in(const Message& root, const QString& path) {
  return walk(const_cast<Message&>(root), path, false);  // Not written through without `make`.
}

FieldPath FieldPath::inOrMake(Message& root, const QString& path) {
  return walk(root, path, true);
}

FieldPath FieldPath::walk(Message& root, const QString& path, bool make) {
  FieldPath here;
  here.message_ = &root;
  const QStringList parts = path.split(QLatin1Char('.'));
  for (qsizetype i = 0; i < parts.size(); ++i) {
    if (i > 0) {
      if (here.field_->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE) return {};
      const auto& reflection = here.reflection();
      if (here.field_->is_repeated()) {
        if (here.index_ < 0) return {};
        here.message_ =
            const_cast<Message*>(&reflection.GetRepeatedMessage(*here.message_, here.field_, here.index_));
      } else if (make) {
        here.message_ = reflection.MutableMessage(here.message_, here.field_);
      } else {
        here.message_ = const_cast<Message*>(&reflection.GetMessage(*here.message_, here.field_));
      }
    }
    const qsizetype bracket = parts[i].indexOf(QLatin1Char('['));
    const QString name = bracket < 0 ? parts[i] : parts[i].left(bracket);
    here.field_ = fieldOf(*here.message_->GetDescriptor(), name.toStdString());
    here.index_ = -1;
    if (here.field_ == nullptr) return {};
    if (bracket < 0) continue;
    here.index_ = parts[i].mid(bracket + 1, parts[i].size() - bracket - 2).toInt();
    if (!here.field_->is_repeated() || here.index_ < 0 ||
        here.index_ >= here.reflection().FieldSize(*here.message_, here.field_))
      return {};
  }
  return here;
}

const Message* FieldPath::lengthOrTime() const {
  if (!valid() || field_->is_repeated()) return nullptr;
  if (!isA(field_, Duration::descriptor()) && !isA(field_, Timestamp::descriptor())) return nullptr;
  return &reflection().GetMessage(*message_, field_);
}

bool FieldPath::present() const {
  if (!valid()) return false;
  if (field_->is_repeated()) return index_ >= 0 || reflection().FieldSize(*message_, field_) > 0;
  return !field_->has_presence() || reflection().HasField(*message_, field_);
}

double FieldPath::number() const {
  if (!valid()) return 0;
  if (const Message* value = lengthOrTime()) {
    if (const auto* length = dynamic_cast<const Duration*>(value))
      return static_cast<double>(length->seconds()) / kSecondsPerMinute;
    return static_cast<double>(static_cast<const Timestamp*>(value)->seconds());
  }
  const bool listed = index_ >= 0;
  switch (field_->cpp_type()) {
    case FieldDescriptor::CPPTYPE_INT32:
      return listed ? reflection().GetRepeatedInt32(*message_, field_, index_)
                    : reflection().GetInt32(*message_, field_);
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return listed ? reflection().GetRepeatedDouble(*message_, field_, index_)
                    : reflection().GetDouble(*message_, field_);
    default:
      return 0;
  }
}

void FieldPath::setNumber(double value) {
  if (!valid()) return;
  if (isA(field_, Duration::descriptor())) {
    auto* length = static_cast<Duration*>(reflection().MutableMessage(message_, field_));
    length->set_seconds(std::llround(value * kSecondsPerMinute));
    return;
  }
  if (isA(field_, Timestamp::descriptor())) {
    static_cast<Timestamp*>(reflection().MutableMessage(message_, field_))->set_seconds(std::llround(value));
    return;
  }
  const bool listed = index_ >= 0;
  if (field_->cpp_type() == FieldDescriptor::CPPTYPE_INT32) {
    const int whole = static_cast<int>(std::lround(value));
    if (listed)
      reflection().SetRepeatedInt32(message_, field_, index_, whole);
    else
      reflection().SetInt32(message_, field_, whole);
  } else if (field_->cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE) {
    if (listed)
      reflection().SetRepeatedDouble(message_, field_, index_, value);
    else
      reflection().SetDouble(message_, field_, value);
  }
}

QString FieldPath::text() const {
  if (!valid() || field_->cpp_type() != FieldDescriptor::CPPTYPE_STRING) return {};
  if (!field_->is_repeated()) return QString::fromStdString(reflection().GetString(*message_, field_));
  if (index_ >= 0) return QString::fromStdString(reflection().GetRepeatedString(*message_, field_, index_));
  QStringList words;
  for (int i = 0; i < count(); ++i)
    words += QString::fromStdString(reflection().GetRepeatedString(*message_, field_, i));
  return words.join(QStringLiteral(", "));
}

void FieldPath::setText(const QString& value) {
  if (!valid() || field_->cpp_type() != FieldDescriptor::CPPTYPE_STRING) return;
  if (!field_->is_repeated()) return reflection().SetString(message_, field_, value.toStdString());
  reflection().ClearField(message_, field_);
  for (const QString& word : value.split(QLatin1Char(','))) {
    if (!word.trimmed().isEmpty()) reflection().AddString(message_, field_, word.trimmed().toStdString());
  }
}

bool FieldPath::flag() const {
  return valid() && field_->cpp_type() == FieldDescriptor::CPPTYPE_BOOL &&
         reflection().GetBool(*message_, field_);
}

void FieldPath::setFlag(bool value) {
  if (valid() && field_->cpp_type() == FieldDescriptor::CPPTYPE_BOOL)
    reflection().SetBool(message_, field_, value);
}

int FieldPath::choice() const {
  if (!valid() || field_->cpp_type() != FieldDescriptor::CPPTYPE_ENUM || field_->is_repeated()) return 0;
  return reflection().GetEnumValue(*message_, field_);
}

void FieldPath::setChoice(int value) {
  if (valid() && field_->cpp_type() == FieldDescriptor::CPPTYPE_ENUM && !field_->is_repeated())
    reflection().SetEnumValue(message_, field_, value);
}

QList<int> FieldPath::marks() const {
  QList<int> all;
  if (!valid() || field_->cpp_type() != FieldDescriptor::CPPTYPE_ENUM || !field_->is_repeated()) return all;
  for (int i = 0; i < count(); ++i) all += reflection().GetRepeatedEnumValue(*message_, field_, i);
  return all;
}

void FieldPath::toggleMark(int value) {
  const qsizetype at = marks().indexOf(value);
  if (at >= 0)
    remove(static_cast<int>(at));
  else if (valid() && field_->cpp_type() == FieldDescriptor::CPPTYPE_ENUM && field_->is_repeated())
    reflection().AddEnumValue(message_, field_, value);
}

int FieldPath::count() const {
  return valid() && field_->is_repeated() ? reflection().FieldSize(*message_, field_) : 0;
}

const Message* FieldPath::member(int index) const {
  if (field_ == nullptr || field_->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE || index >= count())
    return nullptr;
  return &reflection().GetRepeatedMessage(*message_, field_, index);
}

void FieldPath::clear() {
  if (valid() && index_ < 0) reflection().ClearField(message_, field_);
}

Message* FieldPath::append() {
  if (!valid() || !field_->is_repeated() || field_->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE)
    return nullptr;
  return reflection().AddMessage(message_, field_);
}

void FieldPath::appendNumber(double value) {
  if (!valid() || !field_->is_repeated()) return;
  if (field_->cpp_type() == FieldDescriptor::CPPTYPE_INT32)
    reflection().AddInt32(message_, field_, static_cast<int>(std::lround(value)));
  else if (field_->cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE)
    reflection().AddDouble(message_, field_, value);
}

void FieldPath::remove(int index) {
  if (index < 0 || index >= count()) return;
  for (int i = index; i + 1 < count(); ++i) reflection().SwapElements(message_, field_, i, i + 1);
  reflection().RemoveLast(message_, field_);
}

void FieldPath::move(int from, int to) {
  if (from < 0 || from >= count() || to < 0 || to >= count()) return;
  for (; from < to; ++from) reflection().SwapElements(message_, field_, from, from + 1);
  for (; from > to; --from) reflection().SwapElements(message_, field_, from, from - 1);
}

}  // namespace suppertide
