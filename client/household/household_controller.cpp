#include "client/link/channel.h"
//
#include "client/household/household_controller.h"

#include <QtCore/qtimezone.h>

#include "client/household/household_edits.h"
#include "client/link/join_code.h"
#include "client/link/own_address.h"
#include "client/link/request_id.h"
#include "client/words/text.h"
#include "client/words/time_words.h"

namespace suppertide {
namespace {

v1::Role roleOf(int role) {
  return role == 2 ? v1::ROLE_HOST : role == 1 ? v1::ROLE_COOK : v1::ROLE_READER;
}

int placeOf(v1::Role role) {
  return role == v1::ROLE_HOST ? 2 : role == v1::ROLE_COOK ? 1 : 0;
}

QString clockText(int minutes) {
  return TimeWords().clock(Instant(std::chrono::minutes(minutes)));
}

}  // namespace

HouseholdController::HouseholdController(HouseholdSession* session, QObject* parent)
    : QObject(parent),
      session_(session),
      people_(new RecordModel(
          {"id", "name", "role", "roleName", "hours", "awakeStart", "awakeLimit", "socialStart",
           "socialLimit", "quietStart", "quietLimit", "soonMinutes", "share", "skills", "me"},
          this)),
      devices_(new RecordModel({"id", "name", "whose", "seen", "here", "revoked"}, this)) {
  connect(session_, &HouseholdSession::householdChanged, this, &HouseholdController::refreshPeople);
  connect(session_, &HouseholdSession::memberChanged, this, &HouseholdController::refreshPeople);
}

void HouseholdController::setKnown(const link::KnownServer& known) {
  known_ = known;
  changingWho_ = false;
  devices_->setRecords({});
  closeInvitation();
  Q_EMIT knownChanged();
}

bool HouseholdController::onlyHere() const {
  return link::isLocalTarget(known_.target) && known_.network.empty();
}

QString HouseholdController::address() const {
  return text(known_.network.empty() ? known_.target : link::reachableAt(known_.network));
}

void HouseholdController::letOthersIn(bool in) {
  if (changingWho_ || known_.dataFile.empty() || in == othersIn()) return;
  changingWho_ = true;
  Q_EMIT knownChanged();
  Q_EMIT othersWanted(in);
}

QStringList HouseholdController::roleNames() {
  return {tr("Reader"), tr("Cook"), tr("Host")};
}

QString HouseholdController::roleAdvice(int role) {
  if (role == 2) return tr("Changes everything: events, kitchen and people.");
  if (role == 1) return tr("Reports what is done, plans, and changes recipes and starters.");
  return tr("Sees everything, changes nothing.");
}

void HouseholdController::refreshPeople() {
  std::vector<Record> rows;
  if (session_->replica() != nullptr) {
    for (const v1::Member& member : session_->replica()->household.members()) {
      const DaySpan awake = awakeOf(member);
      const DaySpan social = socialOf(member);
      const DaySpan quiet = quietOf(member);
      QStringList skills;
      for (const std::string& skill : member.skills()) skills.append(text(skill));
      const int role = placeOf(member.role());
      rows.push_back({{QStringLiteral("id"), text(member.id())},
                      {QStringLiteral("name"), text(member.display_name())},
                      {QStringLiteral("role"), role},
                      {QStringLiteral("roleName"), roleNames().at(role)},
                      {QStringLiteral("hours"),
                       QStringLiteral("%1–%2").arg(clockText(awake.start), clockText(awake.limit))},
                      {QStringLiteral("awakeStart"), awake.start},
                      {QStringLiteral("awakeLimit"), awake.limit},
                      {QStringLiteral("socialStart"), social.start},
                      {QStringLiteral("socialLimit"), social.limit},
                      {QStringLiteral("quietStart"), quiet.start},
                      {QStringLiteral("quietLimit"), quiet.limit},
                      {QStringLiteral("soonMinutes"), soonMinutesOf(member)},
                      {QStringLiteral("share"), member.has_share() ? member.share() : 1},
                      {QStringLiteral("skills"), skills.join(QStringLiteral(", "))},
                      {QStringLiteral("me"), text(member.id()) == session_->memberId()}});
    }
  }
  people_->setRecords(std::move(rows));
  Q_EMIT rulesChanged();
}

QString HouseholdController::zone() const {
  return session_->known() ? text(session_->replica()->household.time_zone()) : QString();
}

int HouseholdController::degrees() const {
  return session_->known() &&
                 session_->replica()->household.temperature_unit() == v1::TEMPERATURE_UNIT_FAHRENHEIT
             ? 1
             : 0;
}

int HouseholdController::measures() const {
  return session_->known() && session_->replica()->household.measure_system() == v1::MEASURE_SYSTEM_US ? 1
                                                                                                       : 0;
}

int HouseholdController::safetyRules() const {
  const auto rules =
      session_->known() ? session_->replica()->household.safety_rules() : v1::SAFETY_RULES_CONSUMER;
  return rules == v1::SAFETY_RULES_UK ? 2 : rules == v1::SAFETY_RULES_FOOD_SERVICE ? 1 : 0;
}

void HouseholdController::changeHousehold(const char* field,
                                          const std::function<void(v1::Household&)>& change) {
  if (session_->replica() == nullptr) return;
  session_->send(withField(session_->replica()->household, field, change));
}

bool HouseholdController::isZone(const QString& zone) {
  return QTimeZone::isTimeZoneIdAvailable(zone.trimmed().toUtf8());
}

void HouseholdController::setZone(const QString& zone) {
  if (!isZone(zone)) return;
  changeHousehold("time_zone",
                  [&](v1::Household& household) { household.set_time_zone(zone.trimmed().toStdString()); });
}

void HouseholdController::setDegrees(int degrees) {
  const auto unit = degrees == 1 ? v1::TEMPERATURE_UNIT_FAHRENHEIT : v1::TEMPERATURE_UNIT_CELSIUS;
  changeHousehold("temperature_unit",
                  [&](v1::Household& household) { household.set_temperature_unit(unit); });
}

void HouseholdController::setMeasures(int measures) {
  const auto system = measures == 1 ? v1::MEASURE_SYSTEM_US : v1::MEASURE_SYSTEM_METRIC;
  changeHousehold("measure_system", [&](v1::Household& household) { household.set_measure_system(system); });
}

void HouseholdController::setSafetyRules(int rules) {
  const auto next = rules == 2   ? v1::SAFETY_RULES_UK
                    : rules == 1 ? v1::SAFETY_RULES_FOOD_SERVICE
                                 : v1::SAFETY_RULES_CONSUMER;
  changeHousehold("safety_rules", [&](v1::Household& household) { household.set_safety_rules(next); });
}

void HouseholdController::change(const QString& id, const std::function<void(v1::Member&)>& change) {
  if (session_->replica() == nullptr) return;
  const auto request = withMember(session_->replica()->household, id.toStdString(), change);
  if (request) session_->send(*request);
}

void HouseholdController::rename(const QString& name) {
  if (name.trimmed().isEmpty()) return;
  changeHousehold("display_name", [&](v1::Household& household) {
    household.set_display_name(name.trimmed().toStdString());
  });
}

void HouseholdController::addPerson(const QString& name, int role) {
  if (session_->replica() == nullptr || name.trimmed().isEmpty()) return;
  session_->send(withNewMember(session_->replica()->household, name.trimmed().toStdString(), roleOf(role)));
}

void HouseholdController::removePerson(const QString& id) {
  if (session_->replica() == nullptr || id == session_->memberId()) return;
  session_->send(withoutMember(session_->replica()->household, id.toStdString()));
}

void HouseholdController::setName(const QString& id, const QString& name) {
  if (name.trimmed().isEmpty()) return;
  change(id, [&](v1::Member& member) { member.set_display_name(name.trimmed().toStdString()); });
}

void HouseholdController::setRole(const QString& id, int role) {
  change(id, [&](v1::Member& member) { member.set_role(roleOf(role)); });
}

void HouseholdController::setAwake(const QString& id, int start, int limit) {
  change(id, [&](v1::Member& member) { *member.mutable_awake() = toHours({start, limit}); });
}

void HouseholdController::setSocial(const QString& id, int start, int limit) {
  change(id, [&](v1::Member& member) { *member.mutable_social() = toHours({start, limit}); });
}

void HouseholdController::setQuiet(const QString& id, int start, int limit) {
  change(id, [&](v1::Member& member) { *member.mutable_quiet() = toHours({start, limit}); });
}

void HouseholdController::setSoon(const QString& id, int minutes) {
  change(id, [&](v1::Member& member) { member.mutable_soon_duration()->set_seconds(60 * minutes); });
}

void HouseholdController::setShare(const QString& id, int share) {
  change(id, [&](v1::Member& member) { member.set_share(share); });
}

void HouseholdController::setSkills(const QString& id, const QString& skills) {
  change(id, [&](v1::Member& member) {
    member.clear_skills();
    for (const QString& skill : skills.split(QLatin1Char(','), Qt::SkipEmptyParts))
      if (!skill.trimmed().isEmpty()) member.add_skills(skill.trimmed().toStdString());
  });
}

QString HouseholdController::timeText(const google::protobuf::Timestamp& time) const {
  const std::string zone =
      session_->replica() == nullptr ? std::string() : session_->replica()->household.time_zone();
  const TimeWords words(zone);
  const Instant instant(std::chrono::seconds(time.seconds()));
  return tr("%1, %2").arg(words.day(instant), words.clock(instant));
}

QString HouseholdController::advice(const absl::Status& status) const {
  if (status.code() == absl::StatusCode::kPermissionDenied) return tr("Only hosts may do this.");
  if (status.code() == absl::StatusCode::kUnavailable || status.code() == absl::StatusCode::kDeadlineExceeded)
    return tr(
        "The server can't be reached now. Try again when the connection "
        "is live.");
  return text(std::string(status.message()));
}

void HouseholdController::invite(int role, const QString& id) {
  if (inviting_) return;
  inviting_ = true;
  invitationProblem_.clear();
  Q_EMIT invitationChanged();
  v1::CreateInvitationRequest request;
  request.set_household_id(known_.householdId);
  request.set_role(roleOf(role));
  request.set_member_id(id.toStdString());
  request.set_request_id(link::newRequestId());
  const QString name = session_->nameOf(id.toStdString());
  session_->ask<v1::CreateInvitationResponse>(
      this, [request](link::Session& server) { return server.createInvitation(request); },
      [this, role, name](absl::StatusOr<v1::CreateInvitationResponse> answer) {
        inviting_ = false;
        if (answer.ok()) {
          showInvitation(*answer, role, name);
        } else {
          invitationProblem_ = advice(answer.status());
        }
        Q_EMIT invitationChanged();
      });
}

void HouseholdController::showInvitation(const v1::CreateInvitationResponse& invitation, int role,
                                         const QString& name) {
  const std::string code =
      link::textOf(link::JoinCode{invitation.code(), invitation.certificate_fingerprint()});
  invitationCode_ = text(code);
  invitationLine_ = text(link::textOf(link::JoinLink{address().toStdString(), code}));
  invitationUntil_ = timeText(invitation.expire_time());
  invitationFor_ = name.isEmpty() ? tr("For somebody new, as %1").arg(roleNames().at(role))
                                  : tr("For %1, as %2").arg(name, roleNames().at(role));
}

void HouseholdController::closeInvitation() {
  invitationCode_.clear();
  invitationLine_.clear();
  invitationProblem_.clear();
  Q_EMIT invitationChanged();
}

void HouseholdController::refreshDevices() {
  if (!session_->mayHost()) return;
  v1::ListDevicesRequest request;
  request.set_household_id(known_.householdId);
  struct Answer {
    v1::ListDevicesResponse devices;
    std::string ownId;
  };
  session_->ask<Answer>(
      this,
      [request](link::Session& server) -> absl::StatusOr<Answer> {
        auto devices = server.listDevices(request);
        if (!devices.ok()) return devices.status();
        const auto self = server.whoAmI();
        if (!self.ok()) return self.status();
        return Answer{*std::move(devices), self->device_id()};
      },
      [this](absl::StatusOr<Answer> answer) {
        devicesProblem_ = answer.ok() ? QString() : advice(answer.status());
        if (answer.ok()) {
          ownDeviceId_ = answer->ownId;
          showDevices(answer->devices);
        }
        Q_EMIT devicesChanged();
      });
}

void HouseholdController::showDevices(const v1::ListDevicesResponse& devices) {
  std::vector<Record> rows;
  for (const v1::Device& device : devices.devices()) {
    const QString whose = session_->nameOf(device.member_id());
    rows.push_back({{QStringLiteral("id"), text(device.id())},
                    {QStringLiteral("name"), text(device.display_name())},
                    {QStringLiteral("whose"), whose.isEmpty() ? tr("nobody any more") : whose},
                    {QStringLiteral("seen"), timeText(device.last_seen_time())},
                    {QStringLiteral("here"), device.id() == ownDeviceId_},
                    {QStringLiteral("revoked"), device.revoked()}});
  }
  devices_->setRecords(std::move(rows));
}

void HouseholdController::revoke(const QString& deviceId) {
  v1::RevokeDeviceRequest request;
  request.set_household_id(known_.householdId);
  request.set_device_id(deviceId.toStdString());
  request.set_request_id(link::newRequestId());
  session_->ask<v1::RevokeDeviceResponse>(
      this, [request](link::Session& server) { return server.revokeDevice(request); },
      [this](absl::StatusOr<v1::RevokeDeviceResponse> answer) {
        if (!answer.ok()) Q_EMIT session_->failed(advice(answer.status()));
        refreshDevices();
      });
}

}  // namespace suppertide
