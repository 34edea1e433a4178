#include "client/shell/sample_event.h"

#include <google/protobuf/timestamp.pb.h>
#include <google/protobuf/util/json_util.h>

#include <QtCore/qdatetime.h>
#include <QtCore/qtimezone.h>

#include <functional>

namespace suppertide {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Timestamp;

constexpr int kDaysAhead = 4;
constexpr int kWeek = 7;

using Change = std::function<void(Timestamp&)>;

// Every time in the message, however deep.
void changeTimes(Message& message, const Change& change) {
  if (message.GetDescriptor() == Timestamp::descriptor()) {
    change(static_cast<Timestamp&>(message));
    return;
  }
  const auto* reflection = message.GetReflection();
  std::vector<const FieldDescriptor*> fields;
  reflection->ListFields(message, &fields);
  for (const FieldDescriptor* field : fields) {
    if (field->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE || field->is_map()) continue;
    if (!field->is_repeated()) {
      changeTimes(*reflection->MutableMessage(&message, field), change);
      continue;
    }
    for (int i = 0; i < reflection->FieldSize(message, field); ++i)
      changeTimes(*reflection->MutableRepeatedMessage(&message, field, i), change);
  }
}

QTimeZone zoneOf(const std::string& name) {
  const QTimeZone zone(QByteArray::fromStdString(name));
  return zone.isValid() ? zone : QTimeZone::utc();
}

QDateTime localTime(const Timestamp& time, const QTimeZone& zone) {
  return QDateTime::fromSecsSinceEpoch(time.seconds(), zone);
}

// Whole weeks, so that a Saturday stays one.
int daysToMove(const QDateTime& dinner, const QDate& today) {
  const auto least = dinner.date().daysTo(today.addDays(kDaysAhead));
  return static_cast<int>((least >= 0 ? (least + kWeek - 1) / kWeek : least / kWeek) * kWeek);
}

}  // namespace

std::string hostOf(const v1::Bundle& bundle) {
  for (const v1::Member& member : bundle.household().members())
    if (member.role() == v1::ROLE_HOST) return member.id();
  return {};
}

absl::StatusOr<v1::Bundle> sampleEvent(const QByteArray& json, const SampleHome& home, Instant now) {
  v1::Bundle bundle;
  const auto status = google::protobuf::util::JsonStringToMessage(json.toStdString(), &bundle);
  if (!status.ok() || bundle.events().empty() || bundle.events(0).courses().empty())
    return absl::DataLossError("read the sample event: it is damaged");
  const QTimeZone from = zoneOf(bundle.household().time_zone());
  const QTimeZone to = zoneOf(home.timeZone);
  const QDate today = QDateTime::fromSecsSinceEpoch(now.time_since_epoch().count(), to).date();
  const int days = daysToMove(localTime(bundle.events(0).courses(0).serving_time(), from), today);
  changeTimes(bundle, [&](Timestamp& time) {
    const QDateTime before = localTime(time, from);
    time.set_seconds(QDateTime(before.date().addDays(days), before.time(), to).toSecsSinceEpoch());
  });
  bundle.mutable_household()->set_time_zone(to.id().toStdString());
  for (v1::Event& event : *bundle.mutable_events()) event.clear_time_zone();
  bundle.mutable_household()->set_display_name(home.householdName);
  const std::string host = hostOf(bundle);
  for (v1::Member& member : *bundle.mutable_household()->mutable_members())
    if (member.id() == host) member.set_display_name(home.personName);
  return bundle;
}

}  // namespace suppertide
