#include "client/words/step_words.h"

#include <cmath>

#include "client/ui/symbol.h"
#include "client/words/caution_words.h"
#include "client/words/reason_words.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

constexpr double kFineScale = 10;  // grams; below, a tenth of a gram counts

}  // namespace

QString StepWords::kind(v1::StepKind kind) {
  switch (kind) {
    case v1::STEP_KIND_HANDS_ON:
      return tr("Hands-on");
    case v1::STEP_KIND_FERMENT:
      return tr("Ferment");
    case v1::STEP_KIND_OVEN:
      return tr("Oven");
    case v1::STEP_KIND_BURNER:
      return tr("Burner");
    case v1::STEP_KIND_CHILL:
      return tr("Chill");
    case v1::STEP_KIND_THAW:
      return tr("Thaw");
    case v1::STEP_KIND_REST:
      return tr("Rest");
    case v1::STEP_KIND_HOLD:
      return tr("Hold");
    case v1::STEP_KIND_FETCH:
      return tr("Take out");
    default:
      return tr("Wait");
  }
}

int StepWords::symbol(v1::StepKind kind) {
  switch (kind) {
    case v1::STEP_KIND_HANDS_ON:
      return Symbol::Hands;
    case v1::STEP_KIND_FETCH:
      return Symbol::TakeOut;
    case v1::STEP_KIND_FERMENT:
      return Symbol::Dough;
    case v1::STEP_KIND_OVEN:
      return Symbol::Oven;
    case v1::STEP_KIND_BURNER:
      return Symbol::Pot;
    case v1::STEP_KIND_CHILL:
      return Symbol::Snowflake;
    case v1::STEP_KIND_THAW:
      return Symbol::Drop;
    case v1::STEP_KIND_REST:
      return Symbol::Pause;
    case v1::STEP_KIND_HOLD:
      return Symbol::Cover;
    default:
      return Symbol::Hourglass;
  }
}

QString StepWords::title(const v1::PlannedStep& step) {
  const QString own = text(step.title());
  return step.load_count() > 1 ? tr("%1 (load %2 of %3)").arg(own).arg(step.load()).arg(step.load_count())
                               : own;
}

bool StepWords::isNeeded(const v1::PlannedStep& step) {
  const bool lasts = step.end_time().seconds() > step.start_time().seconds();
  return !step.left_out() && (lasts || !step.cook_member_id().empty());
}

QString StepWords::spoken(const v1::PlannedStep& step) const {
  QStringList parts = {title(step),
                       view_.words().spokenSpan(toInstant(step.start_time()), toInstant(step.end_time()))};
  if (!step.cook_member_id().empty()) parts << view_.names().cook(step.cook_member_id());
  if (!step.oven_id().empty()) parts << oven(step);
  return parts.join(tr(", "));
}

bool StepWords::isLate(const v1::PlannedStep& step) const {
  const v1::PlannedDish* dish = view_.dish(step.dish_id());
  return dish != nullptr && toMinutes(dish->late_duration()) > 0 && toMinutes(step.slack_duration()) < 1;
}

QString StepWords::state(const v1::PlannedStep& step) const {
  QStringList sentences;
  if (view_.isDone(step)) sentences << tr("Done.");
  if (isLate(step)) {
    const double late = toMinutes(view_.dish(step.dish_id())->late_duration());
    sentences << tr("Late: its dish is ready %1 after its time.").arg(view_.words().length(late));
  }
  if (view_.isPinned(step)) sentences << tr("Fixed by hand.");
  return sentences.join(QLatin1Char(' '));
}

QString StepWords::oven(const v1::PlannedStep& step) const {
  const QString name = view_.names().oven(step.oven_id());
  if (step.oven_phases_size() > 1) {
    QStringList phases;
    for (const v1::OvenPhase& phase : step.oven_phases()) {
      phases << tr("%1 for %2")
                    .arg(view_.dial(phase.setpoint_celsius()),
                         view_.words().length(toMinutes(phase.duration())));
    }
    return tr("%1 at %2").arg(name, phases.join(tr(", then ")));
  }
  if (step.setpoint_celsius() == 0) return name;
  const QString dial = view_.dial(step.setpoint_celsius());
  const QString recipe = view_.dial(step.recipe_setpoint_celsius());
  if (step.recipe_setpoint_celsius() == 0 || dial == recipe) return tr("%1 at %2").arg(name, dial);
  return tr("%1 at %2 instead of %3").arg(name, dial, recipe);
}

QString StepWords::where(const v1::PlannedStep& step) const {
  QStringList parts;
  if (!step.oven_id().empty()) parts << oven(step);
  if (!step.place_id().empty()) parts << view_.names().place(step.place_id());
  if (step.burner_count() == 1) parts << tr("1 burner");
  if (step.burner_count() > 1) parts << tr("%1 burners").arg(step.burner_count());
  for (const std::string& id : step.equipment_ids()) parts << view_.names().equipment(id);
  if (step.has_check_from_time() && step.check_from_time().seconds() < step.end_time().seconds())
    parts << tr("look from %1").arg(view_.words().clock(toInstant(step.check_from_time())));
  return parts.join(tr(", "));
}

QString StepWords::dough(const v1::PlannedStep& step) const {
  for (const v1::DoughForecast& dough : view_.plan()->doughs()) {
    for (const v1::FermentForecast& stage : dough.stages()) {
      if (stage.step_id() != step.id()) continue;
      if (!stage.has_ready_from_time()) return tr("Never ready at this place: choose a warmer one.");
      const TimeWords& words = view_.words();
      const Instant from = toInstant(stage.ready_from_time());
      QString sentence = stage.has_ready_until_time()
                             ? tr("Ready %1").arg(words.span(from, toInstant(stage.ready_until_time())))
                             : tr("Ready from %1").arg(words.clock(from));
      if (stage.has_best_time())
        sentence = tr("%1, best at %2").arg(sentence, words.clock(toInstant(stage.best_time())));
      return tr("%1. Risen to %2 times its volume at the end.")
          .arg(sentence, QLocale().toString(stage.rise_at_end(), 'f', 1));
    }
  }
  return {};
}

QStringList StepWords::weighings(const v1::PlannedStep& step) const {
  QStringList lines;
  for (const v1::Weighing& weighing : step.weighings()) {
    const int decimals = weighing.mass_g() < kFineScale ? 1 : 0;
    //: A mass in grams and what is weighed: "450 g rye flour".
    lines << tr("%1 g %2").arg(QLocale().toString(weighing.mass_g(), 'f', decimals), text(weighing.name()));
  }
  if (step.has_water_celsius()) lines << tr("Water at %1").arg(view_.degrees(step.water_celsius()));
  if (!step.levain_ratio().empty())
    lines << tr("Starter, flour and water %1 by weight").arg(text(step.levain_ratio()));
  return lines;
}

StepDetails StepWords::details(const v1::PlannedStep& step) const {
  const TimeWords& words = view_.words();
  const Instant start = toInstant(step.start_time());
  const Instant limit = toInstant(step.end_time());
  StepDetails details;
  details.id = text(step.id());
  details.title = title(step);
  details.dish = view_.names().dish(step.dish_id());
  details.kind = kind(step.kind());
  details.symbol = symbol(step.kind());
  details.pinned = view_.isPinned(step);
  details.done = view_.isDone(step);
  details.late = isLate(step);
  details.state = state(step);
  //: Day, times, and how long in brackets.
  details.when =
      tr("%1, %2 (%3)")
          .arg(words.longDay(start), words.span(start, limit), words.length(minutesBetween(start, limit)));
  details.cook =
      step.cook_member_id().empty() ? tr("Nobody is needed") : view_.names().cook(step.cook_member_id());
  details.where = where(step);
  details.why = ReasonWords(view_).sentence(step);
  const double slack = toMinutes(step.slack_duration());
  details.slack = slack < 1 ? tr("None: a later end moves a serving time")
                            : tr("May end %1 later without moving a serving time").arg(words.length(slack));
  details.dough = dough(step);
  details.instructions = text(step.instructions());
  details.weighings = weighings(step).join(QLatin1Char('\n'));
  QStringList cautions;
  for (const int caution : step.cautions())
    cautions << CautionWords::sentence(static_cast<v1::Caution>(caution));
  details.cautions = cautions.join(QLatin1Char('\n'));
  return details;
}

}  // namespace suppertide
