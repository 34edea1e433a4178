#include "client/planning/what_if.h"

#include <algorithm>
#include <cmath>

#include "client/link/request_id.h"
#include "client/words/quality_words.h"

namespace suppertide {
namespace {

v1::StepPin* pinOf(v1::Event& event, const v1::PlannedStep& step) {
  for (v1::StepPin& pin : *event.mutable_pins())
    if (pin.dish_id() == step.dish_id() && pin.step_id() == step.step_id()) return &pin;
  return nullptr;
}

v1::Event pinned(v1::Event event, const v1::PlannedStep& step, std::int64_t startSeconds) {
  v1::StepPin* pin = pinOf(event, step);
  if (pin == nullptr) {
    pin = event.add_pins();
    pin->set_dish_id(step.dish_id());
    pin->set_step_id(step.step_id());
  }
  pin->mutable_start_time()->set_seconds(startSeconds);
  return event;
}

v1::Event unpinned(v1::Event event, const v1::PlannedStep& step) {
  auto& pins = *event.mutable_pins();
  pins.erase(std::remove_if(pins.begin(), pins.end(),
                            [&](const v1::StepPin& pin) {
                              return pin.dish_id() == step.dish_id() && pin.step_id() == step.step_id();
                            }),
             pins.end());
  return event;
}

}  // namespace

WhatIf::WhatIf(HouseholdSession& session, QObject* parent)
    : QObject(parent), session_(session), moves_(new MoveModel(this)) {
  connect(&session, &HouseholdSession::eventIdChanged, this, &WhatIf::leave);
  connect(&session, &HouseholdSession::householdChanged, this, [this] {
    // Stays in sight until the household has it itself.
    const link::Replica* now = session_.replica().get();
    if (now == nullptr || (awaited_ > 0 && now->revision >= awaited_)) leave();
  });
}

void WhatIf::ask(const QString& stepId, double minutesLater) {
  const auto& view = session_.view();
  const v1::PlannedStep* step = view == nullptr ? nullptr : view->step(stepId.toStdString());
  if (step == nullptr || applying_) return;
  const std::int64_t start = step->start_time().seconds() + std::llround(minutesLater) * 60;
  const QString title = view->quoted(step->id(), step->dish_id());
  const QString when = view->words().dayClock(Instant(std::chrono::seconds(start)));
  const QString question = start == step->start_time().seconds()
                               ? tr("%1 fixed at %2").arg(title, when)
                               : tr("%1 at %2 instead of %3")
                                     .arg(title, when, view->words().dayClock(toInstant(step->start_time())));
  askWith(step->id(), pinned(view->event(), *step, start), question);
}

void WhatIf::askFree(const QString& stepId) {
  const auto& view = session_.view();
  const v1::PlannedStep* step = view == nullptr ? nullptr : view->step(stepId.toStdString());
  if (step == nullptr || applying_) return;
  askWith(step->id(), unpinned(view->event(), *step),
          tr("%1 left to the planner").arg(view->quoted(step->id(), step->dish_id())));
}

void WhatIf::askWith(const std::string& stepId, v1::Event event, const QString& question) {
  if (stepId != stepId_) clearAnswer();
  stepId_ = stepId;
  event_ = std::move(event);
  question_ = question;
  trouble_.clear();
  ++number_;
  answered_ = false;
  asking_ = waiting_ = session_.state() == HouseholdSession::Live;
  if (!asking_) trouble_ = needsServer();
  sendNext();
  Q_EMIT changed();
}

v1::ReplanRequest WhatIf::request(bool validateOnly) const {
  v1::ReplanRequest request;
  request.set_household_id(session_.replica()->household.id());
  request.set_event_id(event_.id());
  *request.mutable_event() = event_;
  request.set_request_id(link::newRequestId());
  request.set_validate_only(validateOnly);
  // What is shown as now, so that the answer is about the same moment.
  if (validateOnly) request.mutable_now()->set_seconds(session_.now().time_since_epoch().count());
  return request;
}

// One question at a time is under way; what was asked meanwhile waits, and only the newest.
void WhatIf::sendNext() {
  if (inFlight_ || !waiting_) return;
  waiting_ = false;
  inFlight_ = true;
  session_.ask<v1::MakePlanResponse>(
      this, [asked = request(true)](link::Session& server) { return server.replan(asked); },
      [this, number = number_](const absl::StatusOr<v1::MakePlanResponse>& answer) {
        inFlight_ = false;
        take(number, answer);
        sendNext();
      });
}

void WhatIf::take(int number, const absl::StatusOr<v1::MakePlanResponse>& answer) {
  if (number != number_ || !isOpen() || session_.view() == nullptr) return;
  asking_ = false;
  if (answer.ok()) {
    tell(*answer);
  } else {
    clearAnswer();
    trouble_ = QString::fromStdString(std::string(answer.status().message()));
  }
  Q_EMIT changed();
}

void WhatIf::tell(const v1::MakePlanResponse& answer) {
  const PlanView& before = *session_.view();
  if (before.plan() == nullptr) return leave();
  auto next = std::make_shared<link::Replica>(*withPlan(*session_.replica(), answer.plan()));
  next->events[event_.id()] = event_;
  const PlanView after(next, event_.id());
  MoveModel::Moves moves = answer.nothing_moves() ? MoveModel::Moves() : answer.plan().moved_steps();
  moves_->setMoves(moves, after);
  const int others = static_cast<int>(std::count_if(
      moves.begin(), moves.end(), [&](const v1::MovedStep& moved) { return moved.step_id() != stepId_; }));
  summary_ = others == 0   ? tr("Nothing else has to move.")
             : others == 1 ? tr("1 other step moves.")
                           : tr("%1 other steps move.").arg(others);
  const v1::TierCosts& was = before.plan()->quality().costs();
  const v1::TierCosts& is = answer.plan().quality().costs();
  QStringList worse = QualityWords::worse(was, is, before.words());
  for (const v1::Unserved& left : answer.plan().unserved())
    if (before.dish(left.dish_id()) != nullptr)
      worse.prepend(tr("%1 does not fit any more.").arg(before.names().dish(left.dish_id())));
  for (const v1::PlannedCourse& course : answer.plan().courses())
    if (toMinutes(course.late_duration()) >= 1)
      worse << tr("%1 is %2 late.")
                   .arg(before.names().course(course.course_id()),
                        before.words().length(toMinutes(course.late_duration())));
  if (answer.plan().breaches_size() > 0)
    worse << tr(
        "Something that is under way is kept longer than its recipe allows: look at it before you go on.");
  worse_ = worse.join(QLatin1Char('\n'));
  better_ = QualityWords::better(was, is, before.words()).join(QLatin1Char('\n'));
  answered_ = true;
  trouble_.clear();
  setPreview(next);
}

QString WhatIf::obstacle() const {
  if (!trouble_.isEmpty()) return trouble_;
  if (answered_ && !session_.mayHost()) return tr("Only a host may change the plan. Show them this.");
  return {};
}

bool WhatIf::mayApply() const {
  return answered_ && !asking_ && !applying_ && session_.mayHost();
}

void WhatIf::apply() {
  if (!mayApply()) return;
  applying_ = true;
  const Household before = session_.replica();
  session_.ask<v1::MakePlanResponse>(
      this, [asked = request(false)](link::Session& server) { return server.replan(asked); },
      [this, before, after = preview_, what = question_](const absl::StatusOr<v1::MakePlanResponse>& answer) {
        applying_ = false;
        if (!answer.ok()) {
          trouble_ = QString::fromStdString(std::string(answer.status().message()));
          Q_EMIT changed();
          return;
        }
        awaited_ = answer->revision();
        Q_EMIT applied(before, after, what, awaited_);
        if (session_.replica()->revision >= awaited_) leave();
      });
  Q_EMIT changed();
}

void WhatIf::leave() {
  if (!isOpen()) return;
  stepId_.clear();
  awaited_ = 0;
  ++number_;
  waiting_ = asking_ = false;
  clearAnswer();
  Q_EMIT changed();
  Q_EMIT left();
}

void WhatIf::clearAnswer() {
  answered_ = false;
  summary_.clear();
  worse_.clear();
  better_.clear();
  trouble_.clear();
  moves_->clear();
  setPreview(nullptr);
}

void WhatIf::setPreview(Household preview) {
  if (preview == preview_) return;
  preview_ = std::move(preview);
  Q_EMIT previewChanged();
}

}  // namespace suppertide
