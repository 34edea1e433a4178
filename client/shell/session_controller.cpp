#include "client/shell/session_controller.h"

#include <utility>

namespace suppertide {

SessionController::SessionController(Clock clock, QObject* parent)
    : QObject(parent),
      clock_(std::move(clock)),
      events_(new EventModel(this)),
      timeline_(new Timeline(this)) {
  tick();
}

SessionController::~SessionController() = default;

void SessionController::start(link::LinkOptions options, const std::string& eventId) {
  wantedEventId_ = eventId;
  options.post = [this](std::function<void()> told) {
    QMetaObject::invokeMethod(this, std::move(told), Qt::QueuedConnection);
  };
  link::LinkListener& listener = *this;
  link_ = std::make_unique<link::Link>(std::move(options), listener);
  link_->start();
}

void SessionController::tick() {
  timeline_->setNow(clock_());
}

QString SessionController::stateText() const {
  switch (state_) {
    case Connecting:
      return tr("Connecting…");
    case Live:
      return tr("Live");
    case Offline:
      return tr("Offline");
    case Refused:
      return tr("Not let in");
  }
  return {};
}

QString SessionController::householdName() const {
  return known() ? QString::fromStdString(replica_->household.display_name()) : QString();
}

void SessionController::setEventId(const QString& id) {
  const std::string next = id.toStdString();
  if (next == eventId_) return;
  eventId_ = next;
  if (replica_ != nullptr) timeline_->show(replica_, eventId_);
  Q_EMIT eventIdChanged();
}

void SessionController::linkStateChanged(link::LinkState state, const std::string& why) {
  const auto next = [&] {
    if (state == link::LinkState::kLive) return Live;
    if (state == link::LinkState::kRefused) return Refused;
    return known() ? Offline : Connecting;
  };
  state_ = next();
  why_ = QString::fromStdString(why);
  Q_EMIT stateChanged();
}

void SessionController::replicaChanged(std::shared_ptr<const link::Replica> replica,
                                       const std::string& memberId) {
  const auto before = std::exchange(replica_, std::move(replica));
  events_->setEvents(*replica_);
  if (eventId_.empty() || replica_->events.count(eventId_) == 0) {
    const std::string next =
        wantedEventId_.empty() ? events_->nearest(clock_().time_since_epoch().count()) : wantedEventId_;
    if (next != eventId_) {
      eventId_ = next;
      Q_EMIT eventIdChanged();
    }
  }
  const auto plan = replica_->plans.find(eventId_);
  const std::string& planner =
      plan == replica_->plans.end() ? std::string() : plan->second.meta().updated_by_member_id();
  timeline_->show(replica_, eventId_, memberName(memberId.empty() ? planner : memberId));
  Q_EMIT householdChanged();
}

QString SessionController::memberName(const std::string& memberId) const {
  for (const v1::Member& member : replica_->household.members()) {
    if (member.id() == memberId) return QString::fromStdString(member.display_name());
  }
  return {};
}

}  // namespace suppertide
