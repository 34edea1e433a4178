#include "client/printing/sheet_words.h"

#include <algorithm>

#include "client/words/amount_words.h"
#include "client/words/rack_words.h"
#include "client/words/step_words.h"

namespace suppertide {
namespace {

using paper::Item;
using paper::Part;
using paper::Sheet;

QString plain(const std::string& utf8) {
  return QString::fromStdString(utf8).simplified();
}

std::vector<std::string> linesOf(const QString& words) {
  std::vector<std::string> lines;
  for (const QString& line : words.split(QLatin1Char('\n'), Qt::SkipEmptyParts))
    lines.push_back(line.toStdString());
  return lines;
}

// Begins a part where the heading changes.
Part& under(const QString& heading, std::vector<Part>& parts) {
  if (parts.empty() || parts.back().title != heading.toStdString())
    parts.push_back({heading.toStdString(), {}});
  return parts.back();
}

}  // namespace

QString SheetWords::titleWithDish(const v1::PlannedStep& step) const {
  const QString title = StepWords::title(step);
  const QString dish = view_.names().dish(step.dish_id());
  //: A step and its dish.
  return title.contains(dish) ? title : tr("%1 – %2").arg(title, dish);
}

std::string SheetWords::courses() const {
  QStringList parts;
  for (const v1::PlannedCourse& course : view_.plan()->courses())
    parts.append(tr("%1 %2").arg(view_.names().course(course.course_id()),
                                 view_.words().dayClock(toInstant(course.serving_time()))));
  return parts.join(QStringLiteral(" · ")).toStdString();
}

Item SheetWords::stepItem(const v1::PlannedStep& step) const {
  const StepDetails details = StepWords(view_).details(step);
  Item item;
  item.lead = view_.words().span(toInstant(step.start_time()), toInstant(step.end_time())).toStdString();
  item.title = titleWithDish(step).toStdString();
  for (const QString& words : {details.where, details.instructions, details.weighings, details.dough}) {
    for (std::string& line : linesOf(words)) item.details.push_back(std::move(line));
  }
  item.warnings = linesOf(details.cautions);
  item.box = true;
  return item;
}

Sheet SheetWords::cookSheet(const std::string& memberId) const {
  std::vector<const v1::PlannedStep*> steps;
  for (const v1::PlannedStep& step : view_.plan()->steps())
    if (StepWords::isNeeded(step) && step.cook_member_id() == memberId) steps.push_back(&step);
  std::stable_sort(steps.begin(), steps.end(), [](const auto* a, const auto* b) {
    return a->start_time().seconds() < b->start_time().seconds();
  });
  Sheet sheet{view_.names().cook(memberId).toStdString(),
              plain(view_.event().display_name()).toStdString() + "\n" + courses(),
              {}};
  for (const v1::PlannedStep* step : steps)
    under(view_.words().longDay(toInstant(step->start_time())), sheet.parts).items.push_back(stepItem(*step));
  return sheet;
}

Item SheetWords::segmentItem(const v1::OvenSegment& segment) const {
  const QString dial = view_.dial(segment.setpoint_celsius());
  const auto what = [&] {
    switch (segment.kind()) {
      case v1::OVEN_SEGMENT_KIND_HEATING:
        return tr("Heat to %1").arg(dial);
      case v1::OVEN_SEGMENT_KIND_COOLING:
        return tr("Let it cool to %1").arg(dial);
      case v1::OVEN_SEGMENT_KIND_PROOFING:
        return tr("Off, light on: dough stands in it");
      default:
        return tr("Keep at %1").arg(dial);
    }
  };
  Item item;
  item.lead = view_.words().clock(toInstant(segment.start_time())).toStdString();
  item.title = what().toStdString();
  for (const v1::RackUse& rack : segment.racks()) {
    const v1::PlannedStep* step = view_.step(rack.step_id());
    if (step == nullptr) continue;
    QStringList racks;
    for (const int position : rack.positions()) racks.append(QString::number(position));
    const QString line = tr("%1  %2").arg(
        view_.words().span(toInstant(step->start_time()), toInstant(step->end_time())), titleWithDish(*step));
    //: Where in the oven; the racks are counted from below.
    item.details.push_back(
        (racks.isEmpty() ? line : tr("%1, rack %2").arg(line, racks.join(tr(", ")))).toStdString());
    if (rack.may_fit()) item.details.push_back(RackWords::mayFit().toStdString());
  }
  return item;
}

Sheet SheetWords::ovenSheet() const {
  Sheet sheet{tr("Ovens").toStdString(), courses(), {}};
  for (const v1::OvenProgram& program : view_.plan()->oven_programs()) {
    const QString oven = view_.names().oven(program.oven_id());
    for (const v1::OvenSegment& segment : program.segments())
      //: An oven and a day, above its program.
      under(tr("%1, %2").arg(oven, view_.words().longDay(toInstant(segment.start_time()))), sheet.parts)
          .items.push_back(segmentItem(segment));
  }
  return sheet;
}

Item SheetWords::stageItem(const v1::FermentForecast& stage) const {
  const v1::PlannedStep* step = view_.step(stage.step_id());
  const TimeWords& words = view_.words();
  Item item;
  item.lead = words.dayClock(toInstant(stage.start_time())).toStdString();
  item.title =
      (step == nullptr ? view_.names().step(stage.step_id()) : StepWords::title(*step)).toStdString();
  if (!stage.place_id().empty()) item.details.push_back(view_.names().place(stage.place_id()).toStdString());
  if (step != nullptr)
    for (std::string& line : linesOf(StepWords(view_).details(*step).dough))
      item.details.push_back(std::move(line));
  item.details.push_back(tr("Watch the dough, not the clock.").toStdString());
  return item;
}

Sheet SheetWords::breadSheet() const {
  Sheet sheet{tr("Breads").toStdString(), courses(), {}};
  for (const v1::DoughForecast& dough : view_.plan()->doughs()) {
    Part part{view_.names().dish(dough.dish_id()).toStdString(), {}};
    if (dough.water_celsius() > 0) {
      Item water;
      water.title = tr("Water at %1").arg(view_.degrees(dough.water_celsius())).toStdString();
      part.items.push_back(std::move(water));
    }
    for (const v1::FermentForecast& stage : dough.stages()) part.items.push_back(stageItem(stage));
    sheet.parts.push_back(std::move(part));
  }
  return sheet;
}

Sheet SheetWords::shoppingSheet(const std::vector<v1::ShoppingItem>& shopping) const {
  Sheet sheet{tr("Shopping").toStdString(), {}, {}};
  for (const v1::ShoppingItem& line : shopping) {
    const QDate day = QDate::fromString(QString::fromStdString(line.needed_date()), Qt::ISODate);
    //: How Qt is to write a day and its date: "Saturday 20 June".
    const QString date = QLocale().toString(day, tr("dddd d MMMM"));
    const QString heading = day.isValid() ? tr("For %1").arg(date) : tr("Any day");
    Item item;
    item.lead = AmountWords::toBuy(line.to_buy(), view_.replica().household.measure_system()).toStdString();
    item.title = plain(line.name()).toStdString();
    item.box = true;
    under(heading, sheet.parts).items.push_back(std::move(item));
  }
  return sheet;
}

std::vector<Sheet> SheetWords::sheets(const std::vector<v1::ShoppingItem>& shopping,
                                      const std::string& memberId) const {
  std::vector<Sheet> sheets;
  for (const v1::EventCook& cook : view_.event().cooks()) {
    if (memberId.empty() || cook.member_id() == memberId) sheets.push_back(cookSheet(cook.member_id()));
  }
  if (memberId.empty()) {
    for (Sheet& sheet : std::vector<Sheet>{ovenSheet(), breadSheet()})
      if (!sheet.parts.empty()) sheets.push_back(std::move(sheet));
  }
  Item notice;
  notice.title =
      tr("Your local food-safety code and licensed practice come before this plan. Ask every guest "
         "about allergies and read the labels: the plan knows only what it was told.")
          .toStdString();
  for (Sheet& sheet : sheets) sheet.parts.push_back({"", {notice}});
  if (memberId.empty() && !shopping.empty()) sheets.push_back(shoppingSheet(shopping));
  return sheets;
}

}  // namespace suppertide
