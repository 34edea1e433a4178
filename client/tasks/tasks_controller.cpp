#include "client/tasks/tasks_controller.h"

#include <algorithm>
#include <cmath>

namespace suppertide {
namespace {

std::vector<const char*> taskFields(std::vector<const char*> further = {}) {
  std::vector<const char*> fields = {"taskId",     "title",    "dish",      "symbol",       "when",
                                     "countdown",  "where",    "stateText", "instructions", "weighings",
                                     "cautions",   "notes",    "underWay",  "over",         "part",
                                     "mainBegins", "mainWord", "mayStart"};
  fields.insert(fields.end(), further.begin(), further.end());
  return fields;
}

}  // namespace

TasksController::TasksController(QObject* parent)
    : QObject(parent),
      cooks_({"cookId", "name", "chosen"}),
      now_(taskFields()),
      next_(taskFields()),
      later_(taskFields({"day", "more"})),
      resting_(taskFields()),
      others_({"cookId", "name", "doing"}),
      fetches_({"fetchId", "what", "way", "when", "dish", "due"}) {}

void TasksController::setSession(HouseholdSession* session) {
  if (session == session_) return;
  if (session_ != nullptr) session_->disconnect(this);
  session_ = session;
  if (session_ != nullptr) {
    for (const auto signal : {&HouseholdSession::householdChanged, &HouseholdSession::eventIdChanged,
                              &HouseholdSession::memberChanged})
      connect(session_, signal, this, &TasksController::refresh);
    connect(session_, &HouseholdSession::nowChanged, this, &TasksController::minuteCame);
  }
  refresh();
  Q_EMIT sessionChanged();
}

void TasksController::setCookId(const QString& id) {
  chosenId_ = id.toStdString();
  refresh();
}

bool TasksController::isCook(const std::string& memberId) const {
  const auto& cooks = session_->view()->event().cooks();
  return std::any_of(cooks.begin(), cooks.end(),
                     [&](const v1::EventCook& cook) { return cook.member_id() == memberId; });
}

QString TasksController::cookName() const {
  return session_ == nullptr ? QString() : session_->nameOf(cookId_);
}

bool TasksController::hasPlan() const {
  return session_ != nullptr && session_->view() != nullptr && session_->view()->plan() != nullptr;
}

bool TasksController::mayReport() const {
  return session_ != nullptr && session_->mayReport();
}

void TasksController::minuteCame() {
  if (std::chrono::floor<std::chrono::minutes>(session_->now()) != minute_) refresh();
}

void TasksController::refresh() {
  if (session_ != nullptr) minute_ = std::chrono::floor<std::chrono::minutes>(session_->now());
  TaskLists lists;
  cookId_.clear();
  if (session_ != nullptr && session_->view() != nullptr) {
    const std::string own = session_->memberId().toStdString();
    if (isCook(chosenId_))
      cookId_ = chosenId_;
    else if (isCook(own))
      cookId_ = own;
    lists = TaskReader(*session_->view(), session_->now()).read(cookId_);
  }
  readCooks();
  now_.setRecords(std::move(lists.now));
  next_.setRecords(std::move(lists.next));
  later_.setRecords(std::move(lists.later));
  resting_.setRecords(std::move(lists.resting));
  others_.setRecords(std::move(lists.others));
  fetches_.setRecords(std::move(lists.fetches));
  askingCount_ = lists.askingCount;
  Q_EMIT changed();
}

void TasksController::readCooks() {
  std::vector<Record> records;
  if (session_ != nullptr && session_->view() != nullptr) {
    for (const v1::EventCook& cook : session_->view()->event().cooks())
      records.push_back({{QStringLiteral("cookId"), QString::fromStdString(cook.member_id())},
                         {QStringLiteral("name"), session_->view()->names().cook(cook.member_id())},
                         {QStringLiteral("chosen"), cook.member_id() == cookId_}});
  }
  cooks_.setRecords(std::move(records));
}

QString TasksController::calmText() const {
  if (now_.count() > 0 || !hasPlan() || cookId_.empty()) return {};
  if (next_.count() > 0)
    return tr("Nothing to do now. Next: %1, %2.")
        .arg(next_.value(0, QStringLiteral("title")).toString(),
             next_.value(0, QStringLiteral("countdown")).toString());
  if (later_.count() > 0) return tr("Nothing more today.");
  return tr("All your tasks are done. Thank you!");
}

v1::Report TasksController::reportOn(const QString& taskId) const {
  v1::Report report;
  const std::string id = taskId.toStdString();
  const std::size_t slash = id.find('/');
  report.set_dish_id(id.substr(0, slash));
  if (slash != std::string::npos) report.set_step_id(id.substr(slash + 1));
  report.set_member_id(cookId_);
  return report;
}

void TasksController::start(const QString& taskId) {
  v1::Report report = reportOn(taskId);
  report.set_started(true);
  session_->report(std::move(report));
}

void TasksController::finish(const QString& taskId) {
  v1::Report report = reportOn(taskId);
  report.set_finished(true);
  session_->report(std::move(report));
}

void TasksController::skip(const QString& taskId) {
  v1::Report report = reportOn(taskId);
  report.set_skipped(true);
  session_->report(std::move(report));
}

void TasksController::needMore(const QString& taskId, int minutes) {
  const v1::PlannedStep* step = session_->view()->step(taskId.toStdString());
  if (step == nullptr) return;
  v1::Report report = reportOn(taskId);
  const bool underWay = session_->view()->progress().of(step->id()).state == StepProgress::State::kUnderWay;
  if (underWay) {
    const double left = std::max(0.0, minutesBetween(session_->now(), toInstant(step->end_time())));
    report.mutable_needs_more_duration()->set_seconds(std::lround(left + minutes) * 60);
  } else {
    report.mutable_delayed_by()->set_seconds(minutes * 60);
  }
  session_->report(std::move(report));
}

void TasksController::handOver(const QString& taskId, const QString& memberId) {
  v1::Report report = reportOn(taskId);
  report.set_handed_to_member_id(memberId.toStdString());
  session_->report(std::move(report));
}

void TasksController::addNote(const QString& taskId, const QString& text) {
  const QString note = text.trimmed();
  if (note.isEmpty()) return;
  v1::Report report = reportOn(taskId);
  report.set_note(note.toStdString());
  session_->report(std::move(report));
}

}  // namespace suppertide
