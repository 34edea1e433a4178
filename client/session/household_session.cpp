#include "client/session/household_session.h"

#include <QtCore/qpointer.h>
#include <QtCore/qtimezone.h>

#include <utility>

#include "client/link/any_write.h"
#include "client/link/request_id.h"
#include "client/link/session.h"

namespace suppertide {
namespace {

// Planning and a question or two beside it; more wait.
constexpr int kWorkers = 4;

link::SessionOptions sessionOptions(const link::LinkOptions& options) {
  link::SessionOptions session;
  session.target = options.target;
  session.deviceToken = options.deviceToken;
  session.certificatePem = options.certificatePem;
  session.fingerprint = options.fingerprint;
  return session;
}

QString words(const absl::Status& status) {
  return QString::fromStdString(std::string(status.message()));
}

}  // namespace

HouseholdSession::HouseholdSession(Clock clock, QObject* parent)
    : QObject(parent), clock_(std::move(clock)), now_(clock_()), events_(new EventModel(this)) {
  workers_.setMaxThreadCount(kWorkers);
}

HouseholdSession::~HouseholdSession() {
  link_.reset();
  workers_.clear();
  workers_.waitForDone();
}

void HouseholdSession::start(link::LinkOptions options, const std::string& eventId) {
  wantedEventId_ = eventId;
  options_ = options;
  server_ = std::make_shared<link::Session>(sessionOptions(options_));
  options.post = [this](std::function<void()> told) { post(std::move(told)); };
  link::LinkListener& listener = *this;
  link_ = std::make_unique<link::Link>(std::move(options), listener);
  link_->start();
}

void HouseholdSession::adopt(std::shared_ptr<const link::Replica> replica, const std::string& memberId) {
  replicaChanged(std::move(replica), memberId);
}

void HouseholdSession::tick() {
  const Instant next = clock_();
  if (next == now_) return;
  now_ = next;
  Q_EMIT nowChanged();
}

QString HouseholdSession::stateText() const {
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

QString HouseholdSession::householdName() const {
  return known() ? QString::fromStdString(replica_->household.display_name()) : QString();
}

void HouseholdSession::setEventId(const QString& id) {
  const std::string next = id.toStdString();
  if (next == eventId_) return;
  eventId_ = next;
  changedBy_.clear();
  refreshView();
  Q_EMIT eventIdChanged();
}

void HouseholdSession::setMemberId(const std::string& id) {
  if (id == memberId_) return;
  memberId_ = id;
  Q_EMIT memberChanged();
}

bool HouseholdSession::mayReport() const {
  const v1::Member* who = member();
  return who != nullptr && (who->role() == v1::ROLE_COOK || who->role() == v1::ROLE_HOST);
}

bool HouseholdSession::mayHost() const {
  const v1::Member* who = member();
  return who != nullptr && who->role() == v1::ROLE_HOST;
}

QDateTime HouseholdSession::nowTime() const {
  return QDateTime::fromSecsSinceEpoch(now_.time_since_epoch().count(), QTimeZone::utc());
}

QString HouseholdSession::nameOf(const std::string& memberId) const {
  if (replica_ == nullptr) return {};
  for (const v1::Member& member : replica_->household.members()) {
    if (member.id() == memberId) return QString::fromStdString(member.display_name());
  }
  return {};
}

void HouseholdSession::report(v1::Report report) {
  if (report.id().empty()) report.set_id(link::newRequestId());
  if (report.member_id().empty()) report.set_member_id(memberId_);
  if (!report.has_happen_time()) report.mutable_happen_time()->set_seconds(now_.time_since_epoch().count());
  v1::AddReportsRequest request;
  request.set_event_id(eventId_);
  *request.add_reports() = std::move(report);
  send(request);
}

void HouseholdSession::send(const google::protobuf::Message& request) {
  std::shared_ptr<google::protobuf::Message> copy(request.New());
  copy->CopyFrom(request);
  link::fillIds(*copy, options_.householdId);
  run([this, copy](link::Session& server) {
    if (const absl::Status status = server.write(*copy); !status.ok())
      post([this, text = words(status)] { Q_EMIT failed(text); });
  });
}

void HouseholdSession::post(std::function<void()> told) {
  QMetaObject::invokeMethod(this, std::move(told), Qt::QueuedConnection);
}

void HouseholdSession::run(std::function<void(link::Session&)> work) {
  if (server_ == nullptr) {
    Q_EMIT failed(tr("There is no server to tell this to."));
    return;
  }
  workers_.start([server = server_, work = std::move(work)] { work(*server); });
}

void HouseholdSession::linkStateChanged(link::LinkState state, const std::string& why) {
  const auto next = [&] {
    if (state == link::LinkState::kLive) return Live;
    if (state == link::LinkState::kRefused) return Refused;
    return known() ? Offline : Connecting;
  };
  state_ = next();
  why_ = QString::fromStdString(why);
  if (state_ == Live && memberId_.empty()) askWhoIAm();
  Q_EMIT stateChanged();
}

void HouseholdSession::replicaChanged(std::shared_ptr<const link::Replica> replica,
                                      const std::string& memberId) {
  replica_ = std::move(replica);
  events_->setEvents(*replica_);
  const std::string before = eventId_;
  chooseEvent();
  const auto plan = replica_->plans.find(eventId_);
  const std::string& planner =
      plan == replica_->plans.end() ? std::string() : plan->second.meta().updated_by_member_id();
  changedBy_ = nameOf(memberId.empty() ? planner : memberId);
  refreshView();
  if (eventId_ != before) Q_EMIT eventIdChanged();
  Q_EMIT householdChanged();
  Q_EMIT memberChanged();
}

void HouseholdSession::chooseEvent() {
  if (!eventId_.empty() && replica_->events.count(eventId_) > 0) return;
  eventId_ = wantedEventId_.empty() ? events_->nearest(now_.time_since_epoch().count()) : wantedEventId_;
}

void HouseholdSession::refreshView() {
  const bool here = replica_ != nullptr && replica_->events.count(eventId_) > 0;
  view_ = here ? std::make_shared<const PlanView>(replica_, eventId_) : nullptr;
}

void HouseholdSession::askWhoIAm() {
  ask<v1::WhoAmIResponse>(
      this, [](link::Session& server) { return server.whoAmI(); },
      [this](absl::StatusOr<v1::WhoAmIResponse> answer) {
        if (answer.ok()) setMemberId(answer->member_id());
      });
}

const v1::Member* HouseholdSession::member() const {
  if (replica_ == nullptr) return nullptr;
  for (const v1::Member& member : replica_->household.members()) {
    if (member.id() == memberId_) return &member;
  }
  return nullptr;
}

}  // namespace suppertide
