// What this device's person is reminded of: told once, by the desktop and in the window, until it is seen to.
//
// The server tells, and keeps what it told, so that no other device repeats it. While it is away, what it
// said was to come is told from here at its time. What was told is kept on disk, and is not told again when
// the server comes back or the program is started anew. Belongs to the thread of the user interface.
#pragma once

#include <QtCore/qobject.h>
#include <QtQml/qqmlregistration.h>

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "client/link/reminder_link.h"
#include "client/session/household_session.h"
#include "client/session/notifier.h"
#include "client/ui/record_model.h"

namespace suppertide {

class Reminders : public QObject, private link::ReminderListener {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  // Told and not seen to, the newest first.
  Q_PROPERTY(suppertide::RecordModel* due READ due CONSTANT FINAL)
 public:
  // Both outlive it.
  Reminders(HouseholdSession& session, Notifier& notifier, QObject* parent = nullptr);
  ~Reminders() override;

  // `folder`: where it is kept what was told; empty: nowhere.
  void start(link::LinkOptions options, const std::filesystem::path& folder);
  void stop();
  RecordModel* due() { return &due_; }

  // It is seen to: gone from every device.
  Q_INVOKABLE void settle(const QString& id);
  Q_INVOKABLE void settleAll();
  // Told again so many minutes from now.
  Q_INVOKABLE void snooze(const QString& id, int minutes);

  // As told by the server; also for tests without one.
  void reminderTold(const v1::WatchRemindersResponse& message) override;
  void reminderStateChanged(link::LinkState state, const std::string& why) override;

 private:
  void tell(const v1::Reminder& reminder, bool rings, bool missed);
  void tellWhatCame();  // while the server is away
  void takeAway(const std::string& id);
  void dropWhatIsDone();
  bool isOver(const v1::Reminder& reminder) const;
  void show();
  bool wasTold(const std::string& id) const;
  void note(const std::string& id);
  void readTold();
  void keepTold() const;

  struct Told {
    v1::Reminder reminder;
    bool missed = false;
  };
  HouseholdSession& session_;
  Notifier& notifier_;
  RecordModel due_;
  std::vector<Told> open_;  // the newest first
  struct Early {
    v1::Reminder reminder;
    bool rings = false;
    bool missed = false;
  };
  std::vector<Early> early_;            // came before the event that they are about
  std::vector<v1::Reminder> upcoming_;  // by time
  std::vector<std::string> told_;       // ids, the oldest first
  QString toldFile_;                    // empty: not kept
  bool live_ = false;
  std::unique_ptr<link::ReminderLink> link_;  // last: goes first
};

}  // namespace suppertide
