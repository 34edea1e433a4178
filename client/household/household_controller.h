// The household's people, invitations and devices, and the way out.
//
// People are changed like every document, also offline; invitations and devices
// are asked of the server.
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
  // id, name, role, roleName, hours ("07:00–22:30"), awakeStart, awakeLimit,
  // socialStart, socialLimit (minutes after midnight), quietStart, quietLimit,
  // soonMinutes, share, skills, me.
  Q_PROPERTY(suppertide::RecordModel* people READ people CONSTANT FINAL)
  // id, name, whose, seen, here (this device), revoked.
  Q_PROPERTY(suppertide::RecordModel* devices READ devices CONSTANT FINAL)
  Q_PROPERTY(QString devicesProblem READ devicesProblem NOTIFY devicesChanged FINAL)
  // The last invitation; empty code: none. `invitationLine` is what the picture
  // says.
  Q_PROPERTY(QString invitationCode READ invitationCode NOTIFY invitationChanged FINAL)
  Q_PROPERTY(QString invitationLine READ invitationLine NOTIFY invitationChanged FINAL)
  Q_PROPERTY(QString invitationUntil READ invitationUntil NOTIFY invitationChanged FINAL)
  Q_PROPERTY(QString invitationFor READ invitationFor NOTIFY invitationChanged FINAL)
  Q_PROPERTY(QString invitationProblem READ invitationProblem NOTIFY invitationChanged FINAL)
  Q_PROPERTY(bool inviting READ inviting NOTIFY invitationChanged FINAL)
  // What holds for the whole household. Its time zone by its IANA name.
  Q_PROPERTY(QString zone READ zone NOTIFY rulesChanged FINAL)
  // 0 Celsius, 1 Fahrenheit; 0 metric, 1 of the United States. As this person reads, where they like others.
  Q_PROPERTY(int degrees READ degrees NOTIFY rulesChanged FINAL)
  Q_PROPERTY(int measures READ measures NOTIFY rulesChanged FINAL)
  // 0 for home cooks, 1 for food service, 2 of the United Kingdom.
  Q_PROPERTY(int safetyRules READ safetyRules NOTIFY rulesChanged FINAL)
  // Of the server, as other devices type it.
  Q_PROPERTY(QList<QString> roleNames READ roleNames CONSTANT FINAL)
  Q_PROPERTY(QString address READ address NOTIFY knownChanged FINAL)
  // Only programs on this computer reach the server.
  Q_PROPERTY(bool onlyHere READ onlyHere NOTIFY knownChanged FINAL)
  // The window serves the household itself and lets other devices in; and is
  // just changing that.
  Q_PROPERTY(bool othersIn READ othersIn NOTIFY knownChanged FINAL)
  Q_PROPERTY(bool changingWho READ changingWho NOTIFY knownChanged FINAL)
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
  QString zone() const;
  int degrees() const;
  int measures() const;
  int safetyRules() const;
  QString address() const;
  bool othersIn() const { return !known_.network.empty(); }
  bool changingWho() const { return changingWho_; }
  bool onlyHere() const;
  QString dataFile() const { return QString::fromStdString(known_.dataFile); }

  // Roles as 0 reader, 1 cook, 2 host; the words in this order.
  static QStringList roleNames();
  // What somebody of that role may do.
  Q_INVOKABLE static QString roleAdvice(int role);

  Q_INVOKABLE void rename(const QString& name);
  // Whether there is such a time zone.
  Q_INVOKABLE static bool isZone(const QString& zone);
  Q_INVOKABLE void setZone(const QString& zone);
  Q_INVOKABLE void setDegrees(int degrees);
  Q_INVOKABLE void setMeasures(int measures);
  Q_INVOKABLE void setSafetyRules(int rules);
  // Whether other devices in the house may come in while this window is open.
  Q_INVOKABLE void letOthersIn(bool in);
  Q_INVOKABLE void addPerson(const QString& name, int role);
  Q_INVOKABLE void removePerson(const QString& id);
  Q_INVOKABLE void setName(const QString& id, const QString& name);
  Q_INVOKABLE void setRole(const QString& id, int role);
  Q_INVOKABLE void setAwake(const QString& id, int start, int limit);
  Q_INVOKABLE void setSocial(const QString& id, int start, int limit);
  // When reminders make no sound.
  Q_INVOKABLE void setQuiet(const QString& id, int start, int limit);
  // So long before a step its cook is told that it comes; 0: only when it is
  // due.
  Q_INVOKABLE void setSoon(const QString& id, int minutes);
  Q_INVOKABLE void setShare(const QString& id, int share);
  // Separated by commas.
  Q_INVOKABLE void setSkills(const QString& id, const QString& skills);

  // For somebody new in that role, or with an `id` for that person. The code is
  // told once.
  Q_INVOKABLE void invite(int role, const QString& id);
  Q_INVOKABLE void closeInvitation();
  Q_INVOKABLE void refreshDevices();
  Q_INVOKABLE void revoke(const QString& deviceId);
  Q_INVOKABLE void leave() { Q_EMIT left(); }

 Q_SIGNALS:
  void devicesChanged();
  void invitationChanged();
  void knownChanged();
  void rulesChanged();
  void othersWanted(bool in);
  // The person wants this device out of the household.
  void left();

 private:
  void refreshPeople();
  void changeHousehold(const char* field, const std::function<void(v1::Household&)>& change);
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
  bool changingWho_ = false;
  std::string ownDeviceId_;
};

}  // namespace suppertide
