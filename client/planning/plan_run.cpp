#include "client/planning/plan_run.h"

#include <QtCore/qpointer.h>

#include <algorithm>
#include <cmath>

#include "client/link/request_id.h"
#include "client/words/quality_words.h"

namespace suppertide {
namespace {

constexpr int kUsualSeconds = 20;  // what the server takes when it is told nothing

std::int64_t planRevision(const HouseholdSession& session) {
  const auto& view = session.view();
  return view == nullptr || view->plan() == nullptr ? 0 : view->plan()->meta().revision();
}

}  // namespace

PlanRun::PlanRun(HouseholdSession& session, QObject* parent) : QObject(parent), session_(session) {
  connect(&session, &HouseholdSession::householdChanged, this, &PlanRun::householdCame);
  connect(&session, &HouseholdSession::eventIdChanged, this, [this] {
    trouble_.clear();
    elsewhere_ = false;
    if (!running_) setBest(nullptr);
    Q_EMIT changed();
  });
}

// The thread that follows the planning sees the wish within half a second and ends it.
PlanRun::~PlanRun() {
  if (wish_ != nullptr) wish_->stop = true;
}

bool PlanRun::mayBegin() {
  if (running_ || session_.replica() == nullptr) return false;
  if (session_.state() == HouseholdSession::Live) return true;
  trouble_ = needsServer();
  Q_EMIT changed();
  return false;
}

void PlanRun::begin(int seconds) {
  if (!mayBegin()) return;
  eventId_ = session_.eventId().toStdString();
  v1::MakePlanRequest request;
  request.set_household_id(session_.replica()->household.id());
  request.set_event_id(eventId_);
  request.set_request_id(link::newRequestId());
  limit_ = seconds > 0 ? seconds : kUsualSeconds;
  request.mutable_time_limit()->set_seconds(static_cast<std::int64_t>(limit_));
  running_ = true;
  stopping_ = elsewhere_ = known_ = false;
  seconds_ = 0;
  awaited_ = 0;
  trouble_.clear();
  wish_ = std::make_shared<Wish>();
  session_.ask<v1::MakePlanResponse>(
      this,
      [&session = session_, self = QPointer<PlanRun>(this), wish = wish_, request](link::Session& server) {
        bool told = false;
        return server.makePlan(request, [&](const v1::MakePlanResponse& message) {
          session.post([self, message] {
            if (self != nullptr) self->take(message);
          });
          if (told || !wish->stop) return;
          told = true;
          v1::StopPlanningRequest stop;
          stop.set_household_id(request.household_id());
          stop.set_event_id(request.event_id());
          server.stopPlanning(stop).status().IgnoreError();
        });
      },
      [this](absl::StatusOr<v1::MakePlanResponse> answer) { finish(answer); });
  Q_EMIT changed();
}

void PlanRun::adapt() {
  if (!mayBegin()) return;
  eventId_ = session_.eventId().toStdString();
  v1::ReplanRequest request;
  request.set_household_id(session_.replica()->household.id());
  request.set_event_id(eventId_);
  request.set_request_id(link::newRequestId());
  running_ = true;
  stopping_ = elsewhere_ = known_ = false;
  seconds_ = 0;
  limit_ = kUsualSeconds;
  trouble_.clear();
  session_.ask<v1::MakePlanResponse>(
      this, [request](link::Session& server) { return server.replan(request); },
      [this](absl::StatusOr<v1::MakePlanResponse> answer) { finish(answer); });
  Q_EMIT changed();
}

void PlanRun::stop() {
  if (running_ && wish_ != nullptr) wish_->stop = stopping_ = true;
  if (!elsewhere_) {
    Q_EMIT changed();
    return;
  }
  v1::StopPlanningRequest request;
  request.set_household_id(session_.replica()->household.id());
  request.set_event_id(session_.eventId().toStdString());
  session_.ask<v1::StopPlanningResponse>(
      this, [request](link::Session& server) { return server.stopPlanning(request); },
      [this](const absl::StatusOr<v1::StopPlanningResponse>& answer) {
        if (answer.ok() && !answer->was_running()) elsewhere_ = false;
        Q_EMIT changed();
      });
}

double PlanRun::part() const {
  return std::clamp(seconds_ / limit_, 0.0, 1.0);
}

QString PlanRun::timeText() const {
  return tr("%1 of at most %2 s").arg(static_cast<int>(seconds_)).arg(static_cast<int>(limit_));
}

const TimeWords& PlanRun::words() const {
  static const TimeWords kAny;
  return session_.view() == nullptr ? kAny : session_.view()->words();
}

QString PlanRun::soFar() const {
  return known_ ? QualityWords::soFar(quality_, words()) : tr("Looking for a first plan…");
}

QString PlanRun::proven() const {
  return known_ ? QualityWords::proven(quality_) : QString();
}

void PlanRun::take(const v1::MakePlanResponse& message) {
  if (!running_) return;
  seconds_ = static_cast<double>(message.time_used().seconds());
  if (message.has_quality() && (message.has_plan() || best_ != nullptr)) {
    quality_ = message.quality();
    known_ = true;
  }
  if (message.has_plan() && session_.replica() != nullptr && eventId_ == session_.eventId().toStdString())
    setBest(withPlan(*session_.replica(), message.plan()));
  Q_EMIT changed();
}

void PlanRun::finish(const absl::StatusOr<v1::MakePlanResponse>& answer) {
  running_ = stopping_ = false;
  wish_.reset();
  if (answer.ok()) {
    awaited_ = answer->revision();
    householdCame();
  } else {
    setBest(nullptr);
    elsewhere_ = answer.status().code() == absl::StatusCode::kFailedPrecondition;
    planRevisionBefore_ = planRevision(session_);
    if (!elsewhere_) trouble_ = QString::fromStdString(std::string(answer.status().message()));
  }
  Q_EMIT changed();
}

// The plan shown as the best so far stays until the household has it itself.
void PlanRun::householdCame() {
  const link::Replica* now = session_.replica().get();
  if (!running_ && best_ != nullptr && (now == nullptr || now->revision >= awaited_)) setBest(nullptr);
  if (elsewhere_ && planRevision(session_) != planRevisionBefore_) {
    elsewhere_ = false;
    Q_EMIT changed();
  }
}

void PlanRun::setBest(Household best) {
  if (best == best_) return;
  best_ = std::move(best);
  Q_EMIT bestChanged();
}

}  // namespace suppertide
