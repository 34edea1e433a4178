// The household's people, invitations and devices, and the way out.
//
// People are changed like every document, also offline; invitations and devices are asked of the server.
#pragma once

#include <QtCore/qobject.h>
#include <QtQml/qqmlregistration.h>

#include "client/link/credentials.h"
#include "client/link/session.h"
#include "client/session/household_session.h"
#include "client/ui/record_model.h"

namespace suppertide {

class HouseholdController : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  // id, name, role, roleName, hours ("07:00–22:30"), awakeStart, awakeLimit, socialStart, socialLimit
  // (minutes after midnight), quietStart, quietLimit, soonMinutes, share, skills, me.
  Q_PROPERTY(suppertide::RecordModel* people READ people CONSTANT FINAL)
  // id, name, whose, seen, here (this device), revoked.
  Q_PROPERTY(suppertide::RecordModel* devices READ devices CONSTANT FINAL)
  Q_PROPERTY(QString devicesProblem READ devicesProblem NOTIFY devicesChanged FINAL)
  // The last invitation; empty code: none. `invitationLine` is what the picture says.
  Q_PROPERTY(QString invitationCode READ invitationCode NOTIFY invitationChanged FINAL)
  Q_PROPERTY(QString invitationLine READ invitationLine NOTIFY invitationChanged FINAL)
  Q_PROPERTY(QString invitationUntil READ invitationUntil NOTIFY invitationChanged FINAL)
  Q_PROPERTY(QString invitationFor READ invitationFor NOTIFY invitationChanged FINAL)
  Q_PROPERTY(QString invitationProblem READ invitationProblem NOTIFY invitationChanged FINAL)
  Q_PROPERTY(bool inviting READ inviting NOTIFY invitationChanged FINAL)
  // Of the server, as other devices type it.
  Q_PROPERTY(QString address READ address NOTIFY knownChanged FINAL)
  // Only programs on this computer reach the server.
  Q_PROPERTY(bool onlyHere READ onlyHere NOTIFY knownChanged FINAL)
  // The window serves the household itself, from this file; else empty.
  Q_PROPERTY(QString dataFile READ dataFile NOTIFY knownChanged FINAL)
 public:
  explicit HouseholdController(HouseholdSession* session, QObject* parent = nullptr);

  // How this device's household is saved.
  void setKnown(const link::KnownServer& known);

  RecordModel* people() const { return people_; }
  RecordModel* devices() const { return devices_; }
  QString devicesProblem() const { return devicesProblem_; }
  QString invitationCode() const { return invitationCode_; }
  QString invitationLine() const { return invitationLine_; }
  QString invitationUntil() const { return invitationUntil_; }
  QString invitationFor() const { return invitationFor_; }
  QString invitationProblem() const { return invitationProblem_; }
  bool inviting() const { return inviting_; }
  QString address() const { return QString::fromStdString(known_.target); }
  bool onlyHere() const;
  QString dataFile() const { return QString::fromStdString(known_.dataFile); }

  // Roles as 0 reader, 1 cook, 2 host; the words in this order.
  Q_INVOKABLE static QStringList roleNames();
  // What somebody of that role may do.
  Q_INVOKABLE static QString roleAdvice(int role);

  Q_INVOKABLE void rename(const QString& name);
  Q_INVOKABLE void addPerson(const QString& name, int role);
  Q_INVOKABLE void removePerson(const QString& id);
  Q_INVOKABLE void setName(const QString& id, const QString& name);
  Q_INVOKABLE void setRole(const QString& id, int role);
  Q_INVOKABLE void setAwake(const QString& id, int start, int limit);
  Q_INVOKABLE void setSocial(const QString& id, int start, int limit);
  // When reminders make no sound.
  Q_INVOKABLE void setQuiet(const QString& id, int start, int limit);
  // So long before a step its cook is told that it comes; 0: only when it is due.
  Q_INVOKABLE void setSoon(const QString& id, int minutes);
  Q_INVOKABLE void setShare(const QString& id, int share);
  // Separated by commas.
  Q_INVOKABLE void setSkills(const QString& id, const QString& skills);

  // For somebody new in that role, or with an `id` for that person. The code is told once.
  Q_INVOKABLE void invite(int role, const QString& id);
  Q_INVOKABLE void closeInvitation();
  Q_INVOKABLE void refreshDevices();
  Q_INVOKABLE void revoke(const QString& deviceId);
  Q_INVOKABLE void leave() { Q_EMIT left(); }

 Q_SIGNALS:
  void devicesChanged();
  void invitationChanged();
  void knownChanged();
  // The person wants this device out of the household.
  void left();

 private:
  void refreshPeople();
  void change(const QString& id, const std::function<void(v1::Member&)>& change);
  void showInvitation(const v1::CreateInvitationResponse& invitation, int role, const QString& name);
  void showDevices(const v1::ListDevicesResponse& devices);
  QString timeText(const google::protobuf::Timestamp& time) const;
  QString advice(const absl::Status& status) const;

  HouseholdSession* session_;
  RecordModel* people_;
  RecordModel* devices_;
  link::KnownServer known_;
  QString devicesProblem_;
  QString invitationCode_, invitationLine_, invitationUntil_, invitationFor_, invitationProblem_;
  bool inviting_ = false;
  std::string ownDeviceId_;
};

}  // namespace suppertide
