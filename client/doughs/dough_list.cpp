#include "client/doughs/dough_list.h"

#include <QtCore/qlocale.h>

#include "client/doughs/rise_curve.h"
#include "client/ui/symbol.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

QString times(double rise) {
  return QLocale().toString(rise, 'f', 1);
}

}  // namespace

QString DoughReader::stageName(v1::FermentStage stage) {
  switch (stage) {
    case v1::FERMENT_STAGE_LEVAIN:
      return tr("Levain");
    case v1::FERMENT_STAGE_BULK:
      return tr("First rise");
    case v1::FERMENT_STAGE_PROOF:
      return tr("Final proof");
    case v1::FERMENT_STAGE_PREFERMENT:
      return tr("Preferment");
    default:
      return tr("Ferment");
  }
}

QString DoughReader::when(Instant time) const {
  const bool today = view_.words().local(time).date() == view_.words().local(now_).date();
  return today ? view_.words().clock(time) : view_.words().dayClock(time);
}

bool DoughReader::isOver(const v1::FermentForecast& stage) const {
  return view_.progress().isOver(stage.step_id()) || toInstant(stage.end_time()) <= now_;
}

bool DoughReader::isUnderWay(const v1::FermentForecast& stage) const {
  return toInstant(stage.start_time()) <= now_ && !isOver(stage);
}

const v1::FermentForecast* DoughReader::stageNow(const v1::DoughForecast& dough) const {
  const v1::FermentForecast* next = nullptr;
  for (const v1::FermentForecast& stage : dough.stages()) {
    if (isUnderWay(stage)) return &stage;
    if (!isOver(stage) && (next == nullptr || stage.start_time().seconds() < next->start_time().seconds()))
      next = &stage;
  }
  if (next != nullptr || dough.stages().empty()) return next;
  return &*dough.stages().rbegin();
}

QString DoughReader::window(const v1::FermentForecast& stage) const {
  if (!stage.has_ready_from_time()) return tr("Not ready at this place in the planned time");
  const Instant from = toInstant(stage.ready_from_time());
  QString words = stage.has_ready_until_time()
                      ? tr("Ready %1").arg(view_.words().span(from, toInstant(stage.ready_until_time())))
                      : tr("Ready from %1").arg(when(from));
  if (stage.has_best_time()) words = tr("%1, best at %2").arg(words, when(toInstant(stage.best_time())));
  return words;
}

QString DoughReader::state(const v1::FermentForecast& stage) const {
  const Instant start = toInstant(stage.start_time());
  if (isOver(stage)) return tr("Over since %1").arg(when(toInstant(stage.end_time())));
  if (now_ < start)
    return tr("Begins at %1, in %2").arg(when(start), view_.words().length(minutesBetween(now_, start)));
  const auto rise = riseAt(stage, now_);
  const QString now = rise ? tr("about %1 times its volume").arg(times(*rise)) : tr("rising");
  if (!stage.has_ready_from_time()) return tr("Now %1").arg(now);
  const Instant from = toInstant(stage.ready_from_time());
  if (now_ < from)
    return tr("Now %1. Ready in %2").arg(now, view_.words().length(minutesBetween(now_, from)));
  if (!stage.has_ready_until_time() || now_ < toInstant(stage.ready_until_time()))
    return tr("Ready now: %1").arg(now);
  return tr("Past its window since %1: look at it now").arg(when(toInstant(stage.ready_until_time())));
}

QString DoughReader::temperature(const v1::FermentForecast& stage) const {
  for (const auto& reports = view_.progress().reportsOf(stage.step_id());
       const v1::Report* report : reports) {
    if (report->what_case() != v1::Report::kDoughCelsius || report != reports.back()) continue;
    return tr("%1 measured at %2")
        .arg(view_.degrees(report->dough_celsius()), when(toInstant(report->happen_time())));
  }
  const Instant at = std::max(now_, toInstant(stage.start_time()));
  const auto celsius = celsiusAt(stage, at);
  return tr("%1, %2").arg(view_.degrees(celsius.value_or(stage.celsius_at_end())),
                          view_.names().place(stage.place_id()));
}

QString DoughReader::nextAct(const v1::DoughForecast& dough) const {
  for (const v1::PlannedStep& step : view_.plan()->steps()) {
    if (step.dish_id() != dough.dish_id() || step.left_out() || step.cook_member_id().empty()) continue;
    if (view_.progress().isOver(step.id()) || toInstant(step.end_time()) <= now_) continue;
    return tr("%1 at %2, %3")
        .arg(text(step.title()), when(toInstant(step.start_time())),
             view_.names().cook(step.cook_member_id()));
  }
  return {};
}

std::vector<Record> DoughReader::doughs() const {
  std::vector<Record> records;
  if (view_.plan() == nullptr) return records;
  for (const v1::DoughForecast& dough : view_.plan()->doughs()) {
    const v1::FermentForecast* stage = stageNow(dough);
    if (stage == nullptr) continue;
    records.push_back({{QStringLiteral("doughId"), text(dough.dish_id())},
                       {QStringLiteral("name"), view_.names().dish(dough.dish_id())},
                       {QStringLiteral("stage"), stageName(stage->stage())},
                       {QStringLiteral("stateText"), state(*stage)},
                       {QStringLiteral("act"), nextAct(dough)},
                       {QStringLiteral("underWay"), isUnderWay(*stage)},
                       {QStringLiteral("over"), isOver(*stage)}});
  }
  return records;
}

std::vector<Record> DoughReader::stages(const v1::DoughForecast& dough) const {
  std::vector<Record> records;
  for (const v1::FermentForecast& stage : dough.stages())
    records.push_back({{QStringLiteral("stageId"), text(stage.step_id())},
                       {QStringLiteral("name"), stageName(stage.stage())},
                       {QStringLiteral("when"),
                        view_.words().span(toInstant(stage.start_time()), toInstant(stage.end_time()))},
                       {QStringLiteral("over"), isOver(stage)}});
  return records;
}

}  // namespace suppertide
