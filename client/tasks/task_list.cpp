#include "client/tasks/task_list.h"

#include <algorithm>
#include <cmath>

#include "client/words/amount_words.h"
#include "client/words/step_words.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

constexpr std::chrono::hours kFetchAhead{36};

Instant startOf(const v1::PlannedStep& step) {
  return toInstant(step.start_time());
}
Instant limitOf(const v1::PlannedStep& step) {
  return toInstant(step.end_time());
}

// Food is put in and taken out at two moments, with other work between them.
bool hasTwoMoments(const v1::PlannedStep& step) {
  return step.kind() == v1::STEP_KIND_OVEN || step.kind() == v1::STEP_KIND_BURNER;
}

}  // namespace

const std::string& TaskReader::cookOf(const v1::PlannedStep& step) const {
  const std::string& handedTo = view_.progress().of(step.id()).handedToMemberId;
  return handedTo.empty() ? step.cook_member_id() : handedTo;
}

bool TaskReader::isOpen(const v1::PlannedStep& step) const {
  return !step.left_out() && !view_.progress().isOver(step.id());
}

bool TaskReader::isUnderWay(const v1::PlannedStep& step) const {
  return view_.progress().of(step.id()).state == StepProgress::State::kUnderWay;
}

bool TaskReader::isToday(Instant time) const {
  return view_.words().local(time).date() == view_.words().local(now_).date();
}

QString TaskReader::countdown(const v1::PlannedStep& step) const {
  const TimeWords& words = view_.words();
  const double left = minutesBetween(now_, limitOf(step));
  if (isUnderWay(step) && std::abs(left) < 1) return tr("ends now");
  if (isUnderWay(step))
    return left >= 0 ? tr("%1 left").arg(words.length(left)) : tr("%1 over").arg(words.length(left));
  const double until = minutesBetween(now_, startOf(step));
  if (until >= 1) return tr("in %1").arg(words.length(until));
  return until > -1 ? tr("now") : tr("due %1 ago").arg(words.length(until));
}

// The one large button says what is true when it is pressed.
Record TaskReader::actions(const v1::PlannedStep& step) const {
  const bool begins = hasTwoMoments(step) && !isUnderWay(step);
  QString word = tr("Done");
  if (step.kind() == v1::STEP_KIND_OVEN) word = begins ? tr("It's in") : tr("It's out");
  if (step.kind() == v1::STEP_KIND_BURNER && begins) word = tr("It's on");
  return {{QStringLiteral("mainBegins"), begins},
          {QStringLiteral("mainWord"), word},
          {QStringLiteral("mayStart"), !begins && !isUnderWay(step)}};
}

Record TaskReader::record(const v1::PlannedStep& step) const {
  const StepDetails details = StepWords(view_).details(step);
  const TimeWords& words = view_.words();
  const double length = minutesBetween(startOf(step), limitOf(step));
  const double part = length > 0 ? minutesBetween(startOf(step), now_) / length : 0;
  Record record = actions(step);
  record.insert({{QStringLiteral("taskId"), details.id},
                 {QStringLiteral("title"), details.title},
                 {QStringLiteral("dish"), details.dish},
                 {QStringLiteral("symbol"), details.symbol},
                 {QStringLiteral("when"), words.span(startOf(step), limitOf(step))},
                 {QStringLiteral("countdown"), countdown(step)},
                 {QStringLiteral("where"), details.where},
                 {QStringLiteral("stateText"), details.state},
                 {QStringLiteral("instructions"), details.instructions},
                 {QStringLiteral("weighings"), details.weighings},
                 {QStringLiteral("cautions"), details.cautions},
                 {QStringLiteral("underWay"), isUnderWay(step)},
                 {QStringLiteral("over"), limitOf(step) < now_},
                 {QStringLiteral("ends"), static_cast<qlonglong>(step.end_time().seconds())},
                 {QStringLiteral("part"), std::clamp(part, 0.0, 1.0)}});
  QStringList notes;
  for (const std::string& note : view_.progress().of(step.id()).notes) notes << text(note);
  record.insert(QStringLiteral("notes"), notes.join(QLatin1Char('\n')));
  return record;
}

void TaskReader::readOwn(const v1::PlannedStep& step, TaskLists& lists) const {
  if (isUnderWay(step) || startOf(step) <= now_) {
    lists.now.push_back(record(step));
    if (!isUnderWay(step) || limitOf(step) <= now_) ++lists.askingCount;
    return;
  }
  if (isToday(startOf(step))) {
    lists.next.push_back(record(step));
    return;
  }
  const QString day = view_.words().longDay(startOf(step));
  if (!lists.later.empty() && lists.later.back().value(QStringLiteral("day")) == day) {
    Record& first = lists.later.back();
    const int more = first.value(QStringLiteral("more")).toInt() + 1;
    first[QStringLiteral("more")] = more;
    return;
  }
  Record first = record(step);
  first.insert(QStringLiteral("day"), day);
  first.insert(QStringLiteral("more"), 0);
  lists.later.push_back(std::move(first));
}

void TaskReader::readResting(const v1::PlannedStep& step, TaskLists& lists) const {
  const bool here = isUnderWay(step) || (startOf(step) <= now_ && now_ < limitOf(step));
  if (here && isOpen(step)) lists.resting.push_back(record(step));
}

QString TaskReader::doing(const std::string& memberId) const {
  const v1::PlannedStep* now = nullptr;
  const v1::PlannedStep* next = nullptr;
  for (const v1::PlannedStep& step : view_.plan()->steps()) {
    if (cookOf(step) != memberId || !isOpen(step)) continue;
    // Of two at once the one that needs more of them.
    const bool here = isUnderWay(step) || startOf(step) <= now_;
    if (here && (now == nullptr || now->attention_percent() < step.attention_percent())) now = &step;
    if (!here && (next == nullptr || startOf(step) < startOf(*next))) next = &step;
  }
  //: A task and its dish.
  if (now != nullptr) return tr("%1 (%2)").arg(text(now->title()), view_.names().dish(now->dish_id()));
  if (next == nullptr) return tr("Nothing more to do");
  const Instant start = startOf(*next);
  return tr("Free until %1").arg(isToday(start) ? view_.words().clock(start) : view_.words().dayClock(start));
}

void TaskReader::readOthers(const std::string& memberId, TaskLists& lists) const {
  for (const v1::EventCook& cook : view_.event().cooks()) {
    if (cook.member_id() == memberId) continue;
    lists.others.push_back({{QStringLiteral("cookId"), text(cook.member_id())},
                            {QStringLiteral("name"), view_.names().cook(cook.member_id())},
                            {QStringLiteral("doing"), doing(cook.member_id())}});
  }
}

void TaskReader::readFetches(const std::string& memberId, TaskLists& lists) const {
  for (const v1::Fetch& fetch : view_.plan()->fetches()) {
    if (fetch.own_step() || !fetch.has_take_out_time()) continue;
    const v1::PlannedStep* user = view_.step(fetch.for_step_id());
    if (user != nullptr && (!isOpen(*user) || startOf(*user) <= now_)) continue;
    if (!fetch.cook_member_id().empty() && fetch.cook_member_id() != memberId) continue;
    const Instant when = toInstant(fetch.take_out_time());
    if (when > now_ + kFetchAhead) continue;
    const QString amount = AmountWords::text(fetch.amount(), view_.replica().household.measure_system());
    const QString name = text(fetch.name());
    const bool frozen = fetch.from() == v1::PLACE_KIND_FREEZER;
    lists.fetches.push_back(
        {{QStringLiteral("fetchId"), text(fetch.for_step_id() + "/" + fetch.name())},
         //: An amount and what it is: "450 g butter".
         {QStringLiteral("what"), amount.isEmpty() ? name : tr("%1 %2").arg(amount, name)},
         {QStringLiteral("way"), frozen ? tr("from the freezer into the fridge") : tr("out of the fridge")},
         {QStringLiteral("when"), isToday(when) ? view_.words().clock(when) : view_.words().dayClock(when)},
         {QStringLiteral("dish"), view_.names().dish(fetch.dish_id())},
         {QStringLiteral("due"), when <= now_}});
  }
}

TaskLists TaskReader::read(const std::string& memberId) const {
  TaskLists lists;
  if (view_.plan() == nullptr) return lists;
  for (const v1::PlannedStep& step : view_.plan()->steps()) {
    if (!isOpen(step)) continue;
    const std::string& cook = cookOf(step);
    if (cook.empty()) readResting(step, lists);
    if (!cook.empty() && cook == memberId) readOwn(step, lists);
  }
  // What has not been begun asks first, then what is nearest to its end.
  std::stable_sort(lists.now.begin(), lists.now.end(), [](const Record& a, const Record& b) {
    return !a.value(QStringLiteral("underWay")).toBool() && b.value(QStringLiteral("underWay")).toBool();
  });
  // What ends first is what somebody has to look to first.
  std::stable_sort(lists.resting.begin(), lists.resting.end(), [](const Record& a, const Record& b) {
    return a.value(QStringLiteral("ends")).toLongLong() < b.value(QStringLiteral("ends")).toLongLong();
  });
  readOthers(memberId, lists);
  readFetches(memberId, lists);
  return lists;
}

}  // namespace suppertide
