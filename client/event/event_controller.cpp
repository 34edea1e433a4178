#include "client/event/event_controller.h"

#include <algorithm>
#include <memory>
#include <utility>

#include "client/event/event_versions.h"
#include "client/link/edit.h"
#include "client/link/error_detail.h"
#include "client/link/request_id.h"

namespace suppertide {
namespace {

constexpr int kWaitMs = 400;  // typing rests
constexpr int kNewEventDays = 7;

std::string utf8(const QString& text) {
  return text.toStdString();
}

}  // namespace

EventController::EventController(QObject* parent)
    : QObject(parent),
      courses_({"courseId", "name", "serving", "minutes", "part", "dishCount", "problem"}),
      marks_({"key", "part", "label"}),
      guests_({"guestId", "name", "portion", "needs", "needsText", "problem"}),
      dishes_({"dishId", "name", "courseId", "cookId", "cookName", "servings", "servingsText", "collisions",
               "grave", "problem"}),
      cooks_({"memberId", "name", "cooks", "hours"}),
      warnings_({"words", "grave"}),
      recipes_({"recipeId", "name", "note"}),
      kitchens_({"kitchenId", "name"}),
      differences_({"key", "what", "mine", "theirs"}) {
  wait_.setSingleShot(true);
  wait_.setInterval(kWaitMs);
  connect(&wait_, &QTimer::timeout, this, &EventController::check);
}

void EventController::setSession(HouseholdSession* session) {
  if (session == session_) return;
  if (session_ != nullptr) session_->disconnect(this);
  session_ = session;
  if (session_ != nullptr) {
    connect(session_, &HouseholdSession::householdChanged, this, &EventController::householdCame);
    connect(session_, &HouseholdSession::stateChanged, this, &EventController::householdCame);
    connect(session_, &HouseholdSession::memberChanged, this, &EventController::changed);
    connect(session_, &HouseholdSession::eventIdChanged, this, [this] {
      draft_.reset();
      endConflict();
      householdCame();
    });
    connect(session_, &HouseholdSession::conflicted, this, &EventController::takeConflict);
  }
  householdCame();
  Q_EMIT sessionChanged();
}

const v1::Event* EventController::stored() const {
  return session_ == nullptr || session_->view() == nullptr ? nullptr : &session_->view()->event();
}

const v1::Event* EventController::shown() const {
  return draft_ ? &draft_->event() : stored();
}

bool EventController::mayMake() const {
  return mayEdit() && session_->replica() != nullptr && !session_->replica()->kitchens.empty();
}

QString EventController::name() const {
  return shown() == nullptr ? QString() : QString::fromStdString(shown()->display_name());
}

QString EventController::location() const {
  return shown() == nullptr ? QString() : QString::fromStdString(shown()->location());
}

QString EventController::kitchenId() const {
  return shown() == nullptr ? QString() : QString::fromStdString(shown()->kitchen_id());
}

QString EventController::dayText() const {
  if (shown() == nullptr || shown()->courses().empty()) return {};
  return timeWordsOf(*session_->replica(), *shown()).longDay(toInstant(shown()->courses(0).serving_time()));
}

QString EventController::problem() const {
  QStringList found;
  for (auto one = problems_.begin(); one != problems_.end(); ++one)
    if (!one.key().contains(QLatin1Char('['))) found << one.value();
  found.sort();
  return found.join(QLatin1Char('\n'));
}

void EventController::householdCame() {
  showComing();
  const v1::Event* event = stored();
  const bool another = event == nullptr || checkedEtag_ != event->id() + event->meta().etag();
  if (!draft_ && another) {
    menu_.reset();
    problems_.clear();
    checkedEtag_.clear();
  }
  readRecipes();
  refresh();
  if (!draft_ && another && event != nullptr && session_->state() == HouseholdSession::Live) check();
}

void EventController::refresh() {
  EventLists lists;
  if (shown() != nullptr) {
    const v1::CheckMenuResponse* menu = menu_ ? &*menu_ : nullptr;
    lists = EventReader(*session_->replica(), *shown(), menu, problems_).read();
  }
  courses_.setRecords(std::move(lists.courses));
  marks_.setRecords(std::move(lists.marks));
  guests_.setRecords(std::move(lists.guests));
  dishes_.setRecords(std::move(lists.dishes));
  cooks_.setRecords(std::move(lists.cooks));
  warnings_.setRecords(std::move(lists.warnings));
  guestText_ = lists.guestText;
  Q_EMIT changed();
}

void EventController::readRecipes() {
  std::vector<Record> recipes, kitchens;
  if (session_ != nullptr && session_->replica() != nullptr) {
    for (const auto& [id, recipe] : session_->replica()->recipes)
      recipes.push_back({{QStringLiteral("recipeId"), QString::fromStdString(id)},
                         {QStringLiteral("name"), QString::fromStdString(recipe.display_name())},
                         {QStringLiteral("note"), recipe.has_formula() ? tr("bread") : QString()}});
    for (const auto& [id, kitchen] : session_->replica()->kitchens)
      kitchens.push_back({{QStringLiteral("kitchenId"), QString::fromStdString(id)},
                          {QStringLiteral("name"), QString::fromStdString(kitchen.display_name())}});
  }
  std::sort(recipes.begin(), recipes.end(), [](const Record& a, const Record& b) {
    return a.value(QStringLiteral("name"))
               .toString()
               .localeAwareCompare(b.value(QStringLiteral("name")).toString()) < 0;
  });
  recipes_.setRecords(std::move(recipes));
  kitchens_.setRecords(std::move(kitchens));
}

void EventController::change(const std::function<void(EventDraft&)>& edit) {
  if (!mayEdit() || shown() == nullptr) return;
  if (!draft_) draft_.emplace(*stored(), timeWordsOf(*session_->replica(), *stored()).zone());
  edit(*draft_);
  edited();
}

void EventController::edit() {
  if (!draft_) change([](EventDraft&) {});
}

void EventController::makeNew() {
  if (!mayMake()) return;
  const v1::Household& household = session_->replica()->household;
  const TimeWords words(household.time_zone());
  std::vector<std::string> cooks;
  for (const v1::Member& member : household.members())
    if (member.role() == v1::ROLE_COOK || member.role() == v1::ROLE_HOST) cooks.push_back(member.id());
  const QDate day = words.local(session_->now()).date().addDays(kNewEventDays);
  draft_.emplace(EventDraft::fresh(utf8(tr("Dinner")), session_->replica()->kitchens.begin()->first, day,
                                   words.zone(), cooks, utf8(tr("Main course"))),
                 words.zone());
  trouble_.clear();
  menu_.reset();
  edited();
}

void EventController::putBack() {
  draft_.reset();
  endConflict();
  problems_.clear();
  trouble_.clear();
  checkedEtag_.clear();
  ++asked_;
  householdCame();
}

void EventController::edited() {
  trouble_.clear();
  ++asked_;
  checking_ = true;
  wait_.start();
  refresh();
}

// The menu against the guests; and of a draft, whether it may be stored.
void EventController::check() {
  if (shown() == nullptr) return;
  const int asked = ++asked_;
  checking_ = true;
  v1::Event event = *shown();
  if (event.id().empty()) event.set_id("new-event");
  if (!draft_) checkedEtag_ = event.id() + event.meta().etag();
  v1::CheckMenuRequest menu;
  menu.set_household_id(session_->replica()->household.id());
  menu.set_event_id(event.id());
  // An event that is not stored yet has nothing to be set against.
  const bool known = !isNew();
  if (draft_) *menu.mutable_event() = event;
  if (known && !event.dishes().empty()) {
    session_->ask<v1::CheckMenuResponse>(
        this, [menu](link::Session& server) { return server.checkMenu(menu); },
        [this, asked](absl::StatusOr<v1::CheckMenuResponse> answer) { takeMenu(asked, answer); });
  }
  if (!draft_) {
    checking_ = false;
    Q_EMIT changed();
    return;
  }
  std::shared_ptr<google::protobuf::Message> request;
  if (isNew()) {
    auto create = std::make_shared<v1::CreateEventRequest>();
    *create->mutable_event() = event;
    create->set_validate_only(true);
    create->set_household_id(menu.household_id());
    create->set_request_id(link::newRequestId());
    request = create;
  } else {
    auto update = std::make_shared<v1::UpdateEventRequest>();
    *update->mutable_event() = event;
    update->set_validate_only(true);
    update->set_household_id(menu.household_id());
    update->set_request_id(link::newRequestId());
    request = update;
  }
  session_->ask<bool>(
      this,
      [request](link::Session& server) -> absl::StatusOr<bool> {
        if (const absl::Status status = server.write(*request); !status.ok()) return status;
        return true;
      },
      [this, asked](absl::StatusOr<bool> answer) { takeProblems(asked, answer.status()); });
  Q_EMIT changed();
}

void EventController::takeMenu(int asked, const absl::StatusOr<v1::CheckMenuResponse>& answer) {
  if (asked != asked_) return;
  if (answer.ok()) menu_ = *answer;
  refresh();
}

void EventController::takeProblems(int asked, const absl::Status& status) {
  if (asked != asked_) return;
  checking_ = false;
  problems_.clear();
  trouble_.clear();
  if (!status.ok()) {
    const auto detail = link::errorDetail(status);
    if (detail) {
      for (const v1::FieldViolation& violation : detail->violations()) {
        QString path = QString::fromStdString(violation.field_path());
        if (path.startsWith(QLatin1String("event."))) path = path.mid(6);
        problems_.insert(path, QString::fromStdString(violation.description()));
      }
    }
    if (problems_.isEmpty() && !absl::IsUnavailable(status))
      trouble_ = QString::fromStdString(std::string(status.message()));
  }
  refresh();
}

void EventController::keep() {
  if (!draft_) return;
  const v1::Event event = draft_->event();
  bool kept = false;
  if (isNew()) {
    v1::CreateEventRequest request;
    *request.mutable_event() = event;
    comingId_ = link::newRequestId();
    request.mutable_event()->set_id(comingId_);
    kept = session_->send(request);
  } else {
    v1::UpdateEventRequest request;
    *request.mutable_event() = event;
    kept = session_->send(request);
  }
  if (!kept) return;
  draft_.reset();
  problems_.clear();
  ++asked_;
  checking_ = false;
  endConflict();
  householdCame();
}

void EventController::copy(int daysLater) {
  if (!mayEdit() || stored() == nullptr || stored()->courses().empty()) return;
  const TimeWords words = timeWordsOf(*session_->replica(), *stored());
  const QDate day = words.local(toInstant(stored()->courses(0).serving_time())).date().addDays(daysLater);
  v1::CopyEventRequest request;
  request.set_event_id(stored()->id());
  request.set_date(utf8(day.toString(Qt::ISODate)));
  request.set_new_event_id(link::newRequestId());
  if (session_->send(request)) comingId_ = request.new_event_id();
}

// What is being made is gone to once it is there.
void EventController::showComing() {
  if (comingId_.empty() || session_ == nullptr || session_->replica() == nullptr ||
      session_->replica()->events.count(comingId_) == 0)
    return;
  const std::string id = std::exchange(comingId_, {});
  session_->setEventId(QString::fromStdString(id));
}

// The change comes back as a draft over what is there now, beside it.
void EventController::takeConflict(qint64 number) {
  if (draft_ || stored() == nullptr) return;
  const HouseholdSession::Conflict both = session_->conflict(number);
  const auto* mine = dynamic_cast<const v1::Event*>(both.mine.get());
  const auto* theirs = dynamic_cast<const v1::Event*>(both.theirs.get());
  if (mine == nullptr || theirs == nullptr || mine->id() != stored()->id()) return;
  conflict_ = number;
  v1::Event event = *mine;
  *event.mutable_meta() = theirs->meta();
  draft_.emplace(std::move(event), timeWordsOf(*session_->replica(), *theirs).zone());
  otherName_ = session_->nameOf(link::writerOf(*theirs));
  differences_.setRecords(EventVersions::differences(*session_->replica(), *mine, *theirs));
  edited();
}

void EventController::endConflict() {
  differences_.setRecords({});
  otherName_.clear();
  if (const qint64 number = std::exchange(conflict_, 0); number != 0) session_->letGo(number);
}

void EventController::setName(const QString& name) {
  change([&](EventDraft& draft) { draft.setName(utf8(name)); });
}

void EventController::setLocation(const QString& location) {
  change([&](EventDraft& draft) { draft.setLocation(utf8(location)); });
}

void EventController::setKitchen(const QString& kitchenId) {
  change([&](EventDraft& draft) { draft.setKitchen(utf8(kitchenId)); });
}

void EventController::moveDays(int days) {
  change([&](EventDraft& draft) {
    if (draft.event().courses().empty()) return;
    const TimeWords words = timeWordsOf(*session_->replica(), draft.event());
    draft.moveToDay(words.local(toInstant(draft.event().courses(0).serving_time())).date().addDays(days));
  });
}

void EventController::addCourse(const QString& name) {
  change([&](EventDraft& draft) {
    draft.addCourse(utf8(name.trimmed().isEmpty() ? tr("Another course") : name.trimmed()));
  });
}

void EventController::removeCourse(const QString& courseId) {
  change([&](EventDraft& draft) { draft.removeCourse(utf8(courseId)); });
}

void EventController::renameCourse(const QString& courseId, const QString& name) {
  change([&](EventDraft& draft) { draft.renameCourse(utf8(courseId), utf8(name)); });
}

void EventController::setServing(const QString& courseId, int minutesAfterMidnight) {
  change([&](EventDraft& draft) { draft.setServing(utf8(courseId), minutesAfterMidnight); });
}

void EventController::addGuest(const QString& name) {
  if (name.trimmed().isEmpty()) return;
  change([&](EventDraft& draft) { draft.addGuest(utf8(name.trimmed())); });
}

void EventController::removeGuest(const QString& guestId) {
  change([&](EventDraft& draft) { draft.removeGuest(utf8(guestId)); });
}

void EventController::renameGuest(const QString& guestId, const QString& name) {
  change([&](EventDraft& draft) { draft.renameGuest(utf8(guestId), utf8(name)); });
}

void EventController::setPortion(const QString& guestId, double portion) {
  change([&](EventDraft& draft) { draft.setPortion(utf8(guestId), portion); });
}

void EventController::addNeed(const QString& guestId, const QString& name) {
  change([&](EventDraft& draft) {
    draft.addNeed(utf8(guestId), utf8(name.trimmed()), v1::NEED_SEVERITY_AVOID);
  });
}

void EventController::removeNeed(const QString& guestId, int index) {
  change([&](EventDraft& draft) { draft.removeNeed(utf8(guestId), index); });
}

void EventController::turnSeverity(const QString& guestId, int index) {
  change([&](EventDraft& draft) {
    for (const v1::Guest& guest : draft.event().guests()) {
      if (guest.id() != utf8(guestId) || index < 0 || index >= guest.needs_size()) continue;
      const int next = guest.needs(index).severity() % v1::NeedSeverity_MAX + 1;
      draft.setSeverity(guest.id(), index, static_cast<v1::NeedSeverity>(next));
      return;
    }
  });
}

void EventController::addDish(const QString& recipeId, const QString& courseId) {
  change([&](EventDraft& draft) { draft.addDish(utf8(recipeId), utf8(courseId)); });
}

void EventController::removeDish(const QString& dishId) {
  change([&](EventDraft& draft) { draft.removeDish(utf8(dishId)); });
}

void EventController::setDishCook(const QString& dishId, const QString& memberId) {
  change([&](EventDraft& draft) { draft.setDishCook(utf8(dishId), utf8(memberId)); });
}

void EventController::setDishServings(const QString& dishId, int count) {
  change([&](EventDraft& draft) { draft.setDishServings(utf8(dishId), count); });
}

void EventController::setCooks(const QString& memberId, bool cooks) {
  change([&](EventDraft& draft) { draft.setCooks(utf8(memberId), cooks); });
}

}  // namespace suppertide
