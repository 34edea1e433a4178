#include "client/session/household_session.h"

#include <QtCore/qcoreapplication.h>
#include <QtCore/qpointer.h>
#include <QtCore/qtimezone.h>

#include <utility>

#include "client/link/any_write.h"
#include "client/link/edit.h"
#include "client/link/request_id.h"
#include "client/link/session.h"
#include "client/session/request_words.h"

namespace suppertide {
namespace {

// Planning and a question or two beside it; more wait.
constexpr int kWorkers = 4;
constexpr std::chrono::milliseconds kKeepPause{1000};
// What was told longer ago is no slip of the finger.
constexpr std::chrono::hours kLongestUndo{2};

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
    : QObject(parent),
      clock_(std::move(clock)),
      now_(clock_()),
      events_(new EventModel(this)),
      refused_(new RefusedModel(this)),
      outbox_(link::Outbox::inMemory()) {
  workers_.setMaxThreadCount(kWorkers);
}

HouseholdSession::~HouseholdSession() {
  if (server_ != nullptr) server_->cancel();
  link_.reset();
  sender_.reset();
  workers_.clear();
  workers_.waitForDone();
}

void HouseholdSession::start(link::LinkOptions options, const std::string& eventId,
                             const std::filesystem::path& folder) {
  wantedEventId_ = eventId;
  options_ = options;
  if (!folder.empty()) openStore(folder);
  options.known = told_;
  server_ = std::make_shared<link::Session>(sessionOptions(options_));
  link::SenderListener& sending = *this;
  sender_ = std::make_unique<link::Sender>(*server_, *outbox_, sending);
  options.post = [this](std::function<void()> told) { post(std::move(told)); };
  link::LinkListener& listener = *this;
  link_ = std::make_unique<link::Link>(std::move(options), listener);
  link_->start();
}

void HouseholdSession::openStore(const std::filesystem::path& folder) {
  auto outbox = link::Outbox::open(folder / "outbox.sqlite");
  if (outbox.ok()) {
    outbox_ = *std::move(outbox);
  } else {
    // Told once the window is there to show it.
    post([this, why = words(outbox.status())] {
      Q_EMIT failed(tr("What you do now is lost if this window closes before it is sent: %1").arg(why));
    });
  }
  for (const link::Outbox::Entry& entry : outbox_->entries()) {
    if (!entry.refused && entry.request != nullptr) pending_.add(entry.number, entry.request);
  }
  keeper_ = std::make_unique<link::ReplicaKeeper>(folder / "replica", kKeepPause);
  if (auto kept = link::loadReplica(folder / "replica"); kept.ok()) told_ = *std::move(kept);
  if (told_ != nullptr) show();
}

void HouseholdSession::stop() {
  if (server_ != nullptr) server_->cancel();
  link_.reset();
  sender_.reset();
  workers_.clear();
  workers_.waitForDone();
  // What they told last comes to nothing.
  QCoreApplication::removePostedEvents(this, QEvent::MetaCall);
  asking_ = 0;
  server_.reset();
  keeper_.reset();
  outbox_ = link::Outbox::inMemory();
  pending_ = {};
  undo_ = {};
  told_.reset();
  replica_.reset();
  view_.reset();
  eventId_.clear();
  memberId_.clear();
  why_.clear();
  state_ = Connecting;
  events_->setEvents({});
  refused_->setEntries({}, {});
  Q_EMIT stateChanged();
  Q_EMIT householdChanged();
  Q_EMIT eventIdChanged();
  Q_EMIT memberChanged();
  Q_EMIT undoChanged();
}

void HouseholdSession::adopt(std::shared_ptr<const link::Replica> replica, const std::string& memberId) {
  replicaChanged(std::move(replica), memberId);
}

void HouseholdSession::setUnits(std::optional<v1::TemperatureUnit> temperature,
                                std::optional<v1::MeasureSystem> measures) {
  temperatureUnit_ = temperature;
  measureSystem_ = measures;
  if (told_ != nullptr) show();
}

void HouseholdSession::tellAnew() {
  if (told_ != nullptr) show();
  Q_EMIT stateChanged();
  Q_EMIT undoChanged();
  Q_EMIT eventIdChanged();
}

void HouseholdSession::readInOwnUnits() {
  const v1::Household& household = replica_->household;
  const auto temperature = temperatureUnit_.value_or(household.temperature_unit());
  const auto measures = measureSystem_.value_or(household.measure_system());
  if (temperature == household.temperature_unit() && measures == household.measure_system()) return;
  auto own = std::make_shared<link::Replica>(*replica_);
  own->household.set_temperature_unit(temperature);
  own->household.set_measure_system(measures);
  replica_ = std::move(own);
}

void HouseholdSession::tick() {
  const Instant next = clock_();
  if (next == now_) return;
  now_ = next;
  Q_EMIT nowChanged();
}

QString HouseholdSession::stateText() const {
  const int waiting = waitingCount();
  switch (state_) {
    case Connecting:
      return waiting > 0 ? tr("Connecting, %n waiting", "", waiting) : tr("Connecting…");
    case Live:
      return waiting > 0 ? tr("Live, %n being sent", "", waiting) : tr("Live");
    case Offline:
      return waiting > 0 ? tr("Offline, %n waiting", "", waiting) : tr("Offline");
    case Refused:
      return waiting > 0 ? tr("Not let in, %n waiting", "", waiting) : tr("Not let in");
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
  Q_EMIT undoChanged();
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

bool HouseholdSession::send(const google::protobuf::Message& request) {
  std::shared_ptr<google::protobuf::Message> copy(request.New());
  copy->CopyFrom(request);
  return keep(std::move(copy), /*undoable=*/true);
}

bool HouseholdSession::keep(std::shared_ptr<google::protobuf::Message> request, bool undoable) {
  link::fillIds(*request, options_.householdId);
  const auto number = outbox_->add(*request, now_.time_since_epoch().count());
  if (!number.ok()) {
    Q_EMIT failed(
        tr("This could not be kept on this device, so it was not done: %1").arg(words(number.status())));
    return false;
  }
  if (undoable && replica_ != nullptr) {
    undo_.add(*number, *request, *replica_, RequestWords::of(*request, *replica_));
    Q_EMIT undoChanged();
  }
  pending_.add(*number, std::move(request));
  if (sender_ != nullptr) sender_->wake();
  if (told_ != nullptr) show();
  Q_EMIT stateChanged();
  return true;
}

QString HouseholdSession::undoText() const {
  if (!undo_.empty()) return undo_.text();
  const v1::Report* last = lastReport();
  if (last == nullptr) return {};
  v1::AddReportsRequest told;
  told.set_event_id(eventId_);
  *told.add_reports() = *last;
  return RequestWords::of(told, *replica_);
}

void HouseholdSession::undo() {
  if (replica_ == nullptr) return;
  if (!undo_.empty()) {
    if (auto back = undo_.take(*replica_); back != nullptr) keep(std::move(back), /*undoable=*/false);
  } else if (const v1::Report* last = lastReport(); last != nullptr) {
    v1::AddReportsRequest told;
    told.set_event_id(eventId_);
    *told.add_reports() = *last;
    keep(link::inverseOf(told, *replica_), /*undoable=*/false);
  }
  Q_EMIT undoChanged();
}

void HouseholdSession::remember(const QString& what, std::int64_t revision, UndoStack::Documents touched,
                                std::function<void()> back) {
  undo_.add(what, revision, std::move(touched), std::move(back));
  Q_EMIT undoChanged();
}

const v1::Report* HouseholdSession::lastReport() const {
  if (view_ == nullptr || memberId_.empty() || !mayReport()) return nullptr;
  const v1::Report* last = view_->progress().lastOf(memberId_);
  const bool recent = last != nullptr && toInstant(last->happen_time()) > now_ - kLongestUndo;
  return recent ? last : nullptr;
}

void HouseholdSession::requestTaken(const link::Outbox::Entry& entry,
                                    std::shared_ptr<const google::protobuf::Message> answer) {
  post([this, number = entry.number, answer = std::move(answer)] { wasTaken(number, answer); });
}

void HouseholdSession::requestRefused(const link::Outbox::Entry& entry, const absl::Status& why) {
  post([this, entry, why] { wasRefused(entry, why); });
}

void HouseholdSession::wasTaken(std::int64_t number,
                                std::shared_ptr<const google::protobuf::Message> answer) {
  undo_.taken(number, *answer);
  pending_.taken(number, std::move(answer));
  if (told_ != nullptr) show();
  Q_EMIT stateChanged();
}

void HouseholdSession::wasRefused(const link::Outbox::Entry& entry, const absl::Status& why) {
  pending_.drop(entry.number);
  undo_.drop(entry.number);
  if (told_ != nullptr) show();
  refreshRefused();
  Q_EMIT stateChanged();
  Q_EMIT undoChanged();
  const QString what = RequestWords::of(*entry.request, replica_ != nullptr ? *replica_ : link::Replica());
  Q_EMIT refusedNow(entry.number, what, RequestWords::why(why));
  if (why.code() == absl::StatusCode::kAborted) Q_EMIT conflicted(entry.number);
}

HouseholdSession::Conflict HouseholdSession::conflict(qint64 number) const {
  const auto entry = outbox_->entry(number);
  if (!entry || !entry->refused || entry->request == nullptr || told_ == nullptr ||
      entry->refusal.code() != absl::StatusCode::kAborted)
    return {};
  const link::Edit edit = link::readEdit(*entry->request);
  Conflict both;
  // The replica is at least as new as what the refusal carries, and whole.
  if (const auto* theirs = link::documentOf(*told_, edit.kind, edit.id); theirs != nullptr) {
    std::shared_ptr<google::protobuf::Message> copy(theirs->New());
    copy->CopyFrom(*theirs);
    both.theirs = std::move(copy);
  }
  if (both.theirs == nullptr || link::documentOf(*entry->request) == nullptr) return both;
  link::Replica mine = *told_;
  link::foresee(*entry->request, memberId_, mine);
  const auto* document = link::documentOf(mine, edit.kind, edit.id);
  std::shared_ptr<google::protobuf::Message> copy(document->New());
  copy->CopyFrom(*document);
  both.mine = std::move(copy);
  return both;
}

void HouseholdSession::sendAgain(qint64 number) {
  const auto entry = outbox_->entry(number);
  if (!entry || !entry->refused || entry->request == nullptr) return;
  std::shared_ptr<google::protobuf::Message> again(entry->request->New());
  again->CopyFrom(*entry->request);
  link::renew(*again);
  const link::Edit edit = link::readEdit(*again);
  const auto* there = replica_ == nullptr ? nullptr : link::documentOf(*replica_, edit.kind, edit.id);
  if (!edit.etag.empty() && there != nullptr) link::aimAt(*again, link::etagOf(*there));
  // Kept anew before the old one goes.
  if (keep(std::move(again), /*undoable=*/true)) letGo(number);
}

void HouseholdSession::letGo(qint64 number) {
  const auto entry = outbox_->entry(number);
  if (!entry || !entry->refused) return;
  if (const absl::Status status = outbox_->drop(number); !status.ok()) Q_EMIT failed(words(status));
  refreshRefused();
}

std::vector<link::Outbox::Entry> HouseholdSession::refusedEntries() const {
  std::vector<link::Outbox::Entry> refused;
  for (link::Outbox::Entry& entry : outbox_->entries())
    if (entry.refused && entry.request != nullptr) refused.push_back(std::move(entry));
  return refused;
}

void HouseholdSession::refreshRefused() {
  refused_->setEntries(outbox_->entries(), replica_ != nullptr ? *replica_ : link::Replica());
}

void HouseholdSession::post(std::function<void()> told) {
  QMetaObject::invokeMethod(this, std::move(told), Qt::QueuedConnection);
}

void HouseholdSession::run(std::function<void(link::Session&)> work) {
  if (server_ == nullptr) {
    Q_EMIT failed(tr("There is no server to tell this to."));
    return;
  }
  ++asking_;
  workers_.start([server = server_, work = std::move(work)] { work(*server); });
}

void HouseholdSession::linkStateChanged(link::LinkState state, const std::string& why) {
  const auto next = [&] {
    if (state == link::LinkState::kLive) return Live;
    if (state == link::LinkState::kRefused) return Refused;
    return known() && !why.empty() ? Offline : Connecting;
  };
  state_ = next();
  why_ = QString::fromStdString(why);
  if (sender_ != nullptr) sender_->setReachable(state_ == Live);
  if (state_ == Live && memberId_.empty()) askWhoIAm();
  Q_EMIT stateChanged();
}

void HouseholdSession::replicaChanged(std::shared_ptr<const link::Replica> replica,
                                      const std::string& memberId) {
  told_ = std::move(replica);
  if (keeper_ != nullptr) keeper_->keep(told_);
  undo_.check(*told_);
  show(&memberId);
}

void HouseholdSession::show(const std::string* writer) {
  replica_ = pending_.over(told_, memberId_);
  readInOwnUnits();
  events_->setEvents(*replica_);
  const std::string before = eventId_;
  chooseEvent();
  changedBy_ = writer == nullptr ? QString() : nameOf(writer->empty() ? planner() : *writer);
  refreshView();
  refreshRefused();
  if (eventId_ != before) Q_EMIT eventIdChanged();
  Q_EMIT householdChanged();
  Q_EMIT memberChanged();
  Q_EMIT undoChanged();
}

std::string HouseholdSession::planner() const {
  const auto plan = replica_->plans.find(eventId_);
  return plan == replica_->plans.end() ? std::string() : plan->second.meta().updated_by_member_id();
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
