#include "client/session/reminders.h"

#include <QtCore/qfile.h>
#include <QtCore/qsavefile.h>

#include <algorithm>
#include <utility>

#include "client/words/reminder_words.h"

namespace suppertide {
namespace {

constexpr std::size_t kMostTold = 500;
// What came due longer ago than this while nobody was reached is no news.
constexpr std::chrono::hours kLongestMissed{2};
constexpr int kSnoozeFromDesktop = 10;

}  // namespace

Reminders::Reminders(HouseholdSession& session, Notifier& notifier, QObject* parent)
    : QObject(parent),
      session_(session),
      notifier_(notifier),
      due_({"reminderId", "title", "text", "symbol", "missed", "kind", "taskId"}) {
  connect(&session, &HouseholdSession::nowChanged, this, &Reminders::tellWhatCame);
  connect(&session, &HouseholdSession::householdChanged, this, [this] {
    for (const Early& one : std::exchange(early_, {})) tell(one.reminder, one.rings, one.missed);
    dropWhatIsDone();
    show();
  });
  connect(&notifier, &Notifier::settled, this, &Reminders::settle);
  connect(&notifier, &Notifier::snoozed, this, [this](const QString& id) { snooze(id, kSnoozeFromDesktop); });
}

Reminders::~Reminders() = default;

void Reminders::start(link::LinkOptions options, const std::filesystem::path& folder) {
  toldFile_ = folder.empty() ? QString() : QString::fromStdString((folder / "reminders-told").string());
  readTold();
  options.post = [&session = session_](std::function<void()> told) { session.post(std::move(told)); };
  link::ReminderListener& listener = *this;
  link_ = std::make_unique<link::ReminderLink>(std::move(options), "", listener);
  link_->start();
}

void Reminders::stop() {
  link_.reset();
  live_ = false;
  for (const Told& one : open_) notifier_.takeBack(QString::fromStdString(one.reminder.id()));
  open_.clear();
  early_.clear();
  upcoming_.clear();
  told_.clear();
  toldFile_.clear();
  show();
}

void Reminders::reminderStateChanged(link::LinkState state, const std::string&) {
  live_ = state == link::LinkState::kLive;
}

void Reminders::reminderTold(const v1::WatchRemindersResponse& message) {
  switch (message.kind_case()) {
    case v1::WatchRemindersResponse::kUpcoming:
      upcoming_.assign(message.upcoming().reminders().begin(), message.upcoming().reminders().end());
      break;
    case v1::WatchRemindersResponse::kMissed:
      // One sound for all of them would say nothing; they are shown.
      for (const v1::Reminder& reminder : message.missed().reminders()) tell(reminder, false, true);
      break;
    case v1::WatchRemindersResponse::kDue:
      tell(message.due().reminder(), message.due().rings(), false);
      break;
    case v1::WatchRemindersResponse::kSettled:
      takeAway(message.settled().reminder_id());
      break;
    case v1::WatchRemindersResponse::KIND_NOT_SET:
      break;
  }
}

void Reminders::tellWhatCame() {
  if (live_) return;
  for (const v1::Reminder& reminder : std::exchange(upcoming_, {})) {
    const Instant time = toInstant(reminder.remind_time());
    if (time > session_.now())
      upcoming_.push_back(reminder);
    else if (time > session_.now() - kLongestMissed && !isOver(reminder))
      tell(reminder, !reminder.quiet(), false);
  }
}

void Reminders::tell(const v1::Reminder& reminder, bool rings, bool missed) {
  if (wasTold(reminder.id())) return;
  const auto& household = session_.replica();
  if (household == nullptr || household->events.count(reminder.event_id()) == 0) {
    early_.push_back({reminder, rings, missed});
    return;
  }
  note(reminder.id());
  open_.insert(open_.begin(), {reminder, missed});
  show();
  const int row = due_.rowOf(QString::fromStdString(reminder.id()));
  notifier_.tell(QString::fromStdString(reminder.id()), due_.value(row, QStringLiteral("title")).toString(),
                 due_.value(row, QStringLiteral("text")).toString(), rings);
}

void Reminders::takeAway(const std::string& id) {
  const auto gone =
      std::remove_if(open_.begin(), open_.end(), [&](const Told& one) { return one.reminder.id() == id; });
  if (gone == open_.end()) return;
  open_.erase(gone, open_.end());
  notifier_.takeBack(QString::fromStdString(id));
  show();
}

void Reminders::settle(const QString& id) {
  v1::SettleRemindersRequest request;
  request.add_reminder_ids(id.toStdString());
  takeAway(id.toStdString());
  session_.send(request);
}

void Reminders::settleAll() {
  v1::SettleRemindersRequest request;
  for (const Told& one : open_) request.add_reminder_ids(one.reminder.id());
  if (request.reminder_ids().empty()) return;
  for (const std::string& id : request.reminder_ids()) takeAway(id);
  session_.send(request);
}

void Reminders::snooze(const QString& id, int minutes) {
  const auto one = std::find_if(open_.begin(), open_.end(),
                                [&](const Told& told) { return told.reminder.id() == id.toStdString(); });
  if (one == open_.end()) return;
  v1::Reminder later = one->reminder;
  later.mutable_remind_time()->set_seconds(
      (session_.now() + std::chrono::minutes(minutes)).time_since_epoch().count());
  told_.erase(std::remove(told_.begin(), told_.end(), later.id()), told_.end());
  keepTold();
  takeAway(later.id());
  // Told from here should the server be away by then.
  upcoming_.push_back(later);
  v1::SnoozeReminderRequest request;
  request.set_reminder_id(later.id());
  request.mutable_snooze_duration()->set_seconds(minutes * 60);
  session_.send(request);
}

bool Reminders::isOver(const v1::Reminder& reminder) const {
  if (session_.replica() == nullptr || reminder.step_id().empty()) return false;
  const auto progress = session_.replica()->progresses.find(reminder.event_id());
  if (progress == session_.replica()->progresses.end()) return false;
  const ProgressReading reading(progress->second);
  if (reading.isOver(reminder.step_id())) return true;
  return reminder.kind() != v1::REMINDER_KIND_TAKE_OUT && reminder.kind() != v1::REMINDER_KIND_DOUGH_LOOK &&
         reading.of(reminder.step_id()).state == StepProgress::State::kUnderWay;
}

void Reminders::dropWhatIsDone() {
  std::vector<std::string> over;
  for (const Told& one : open_)
    if (isOver(one.reminder)) over.push_back(one.reminder.id());
  for (const std::string& id : over) takeAway(id);
}

void Reminders::show() {
  std::vector<Record> records;
  for (const Told& one : open_) {
    const v1::Reminder& reminder = one.reminder;
    const auto& household = session_.replica();
    if (household == nullptr || household->events.count(reminder.event_id()) == 0)
      continue;  // taken out since
    const bool shown = session_.view() != nullptr && session_.view()->event().id() == reminder.event_id();
    const auto view =
        shown ? session_.view() : std::make_shared<const PlanView>(household, reminder.event_id());
    records.push_back({{QStringLiteral("reminderId"), QString::fromStdString(reminder.id())},
                       {QStringLiteral("title"), ReminderWords::title(*view, reminder)},
                       {QStringLiteral("text"), ReminderWords::text(*view, reminder)},
                       {QStringLiteral("symbol"), ReminderWords::symbol(reminder.kind())},
                       {QStringLiteral("missed"), one.missed},
                       {QStringLiteral("kind"), static_cast<int>(reminder.kind())},
                       {QStringLiteral("taskId"), QString::fromStdString(reminder.step_id())}});
  }
  due_.setRecords(std::move(records));
}

bool Reminders::wasTold(const std::string& id) const {
  return std::find(told_.begin(), told_.end(), id) != told_.end();
}

void Reminders::note(const std::string& id) {
  told_.push_back(id);
  if (told_.size() > kMostTold) told_.erase(told_.begin());
  keepTold();
}

void Reminders::readTold() {
  told_.clear();
  QFile file(toldFile_);
  if (toldFile_.isEmpty() || !file.open(QIODevice::ReadOnly)) return;
  for (const QByteArray& line : file.readAll().split('\n'))
    if (!line.isEmpty()) told_.push_back(line.toStdString());
}

// Losing it costs a reminder told twice: nothing is said of an error.
void Reminders::keepTold() const {
  if (toldFile_.isEmpty()) return;
  QSaveFile file(toldFile_);
  if (!file.open(QIODevice::WriteOnly)) return;
  for (const std::string& id : told_) file.write(QByteArray::fromStdString(id) + '\n');
  file.commit();
}

}  // namespace suppertide
