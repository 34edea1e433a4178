// The run sheet on paper: a sheet a cook, then ovens, breads and shopping.
#include <algorithm>
#include <set>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "client/paper/paper.h"
#include "client/terminal/connection.h"
#include "client/terminal/day_options.h"
#include "client/terminal/event_task.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/menu_text.h"
#include "client/terminal/plan_view.h"
#include "client/terminal/report.h"
#include "client/terminal/step_text.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

using paper::Item;
using paper::Part;
using paper::Sheet;

// In a whole sentence the first time on a sheet, then in a word.
std::vector<std::string> warningsOf(const v1::PlannedStep& step, std::set<int>& told) {
  std::vector<std::string> warnings;
  std::string known;
  for (const int number : step.cautions()) {
    const auto caution = static_cast<v1::Caution>(number);
    if (told.insert(number).second)
      warnings.push_back(absl::StrCat(capitalised(cautionWords(caution)), ": ", cautionSentence(caution)));
    else
      absl::StrAppend(&known, known.empty() ? "" : " · ", cautionWords(caution));
  }
  if (!known.empty()) warnings.push_back(capitalised(known));
  return warnings;
}

// The notes of a step without its cautions, which are set off.
Item itemOf(const PlanView& view, const v1::PlannedStep& step, std::set<int>& toldCautions) {
  Item item;
  item.lead = view.clock().span(toTime(step.start_time()), toTime(step.end_time()));
  item.title = view.titleWithDish(step);
  if (std::string where = whereText(view, step); !where.empty()) item.details.push_back(std::move(where));
  v1::PlannedStep plain = step;
  plain.clear_cautions();
  for (std::string& note : stepNotes(view, plain)) item.details.push_back(std::move(note));
  item.warnings = warningsOf(step, toldCautions);
  item.box = true;
  return item;
}

// By day, in order of their start.
template <typename Wanted>
std::vector<Part> days(const PlanView& view, Wanted wanted) {
  std::vector<const v1::PlannedStep*> steps;
  for (const v1::PlannedStep& step : view.plan().steps())
    if (!step.left_out() && wanted(step)) steps.push_back(&step);
  std::stable_sort(steps.begin(), steps.end(), [](const v1::PlannedStep* a, const v1::PlannedStep* b) {
    return a->start_time().seconds() < b->start_time().seconds();
  });
  std::vector<Part> parts;
  std::set<int> told;
  for (const v1::PlannedStep* step : steps) {
    const std::string day = view.clock().day(toTime(step->start_time()));
    if (parts.empty() || parts.back().title != day) parts.push_back({day, {}});
    parts.back().items.push_back(itemOf(view, *step, told));
  }
  return parts;
}

std::string coursesLine(const PlanView& view) {
  std::string line;
  for (const v1::PlannedCourse& course : view.plan().courses())
    absl::StrAppend(&line, line.empty() ? "" : " · ", view.names().course(course.course_id()), " ",
                    view.clock().dayHour(toTime(course.serving_time())));
  return line;
}

Sheet cookSheet(const PlanView& view, const std::string& memberId) {
  return {view.names().cook(memberId),
          absl::StrCat(plainLine(view.event().display_name()), "\n", coursesLine(view)),
          days(view, [&](const v1::PlannedStep& step) { return step.cook_member_id() == memberId; })};
}

const char* segmentWords(v1::OvenSegmentKind kind) {
  switch (kind) {
    case v1::OVEN_SEGMENT_KIND_HEATING:
      return "heat to ";
    case v1::OVEN_SEGMENT_KIND_COOLING:
      return "let it cool to ";
    case v1::OVEN_SEGMENT_KIND_HOLDING:
      return "keep at ";
    default:
      return "";
  }
}

// What stands in a stretch of an oven's program, on which racks.
std::vector<std::string> foodIn(const PlanView& view, const v1::OvenSegment& segment) {
  std::vector<std::string> lines;
  for (const v1::RackUse& rack : segment.racks()) {
    const v1::PlannedStep* step = view.step(rack.step_id());
    if (step == nullptr) continue;
    std::string racks;
    for (const int position : rack.positions())
      absl::StrAppend(&racks, racks.empty() ? ", rack " : " and ", position);
    if (rack.may_fit()) absl::StrAppend(&racks, ", ", mayFitWords());
    lines.push_back(absl::StrCat(view.clock().span(toTime(step->start_time()), toTime(step->end_time())),
                                 "  ", view.titleWithDish(*step), racks));
  }
  return lines;
}

Sheet ovenSheet(const PlanView& view) {
  Sheet sheet{"Ovens", coursesLine(view), {}};
  for (const v1::OvenProgram& program : view.plan().oven_programs()) {
    if (program.segments().empty()) continue;
    Part part{view.names().oven(program.oven_id()), {}};
    for (const v1::OvenSegment& segment : program.segments()) {
      // Nobody has to do anything for an oven that is hot and empty.
      const bool changes =
          segment.kind() == v1::OVEN_SEGMENT_KIND_HEATING || segment.kind() == v1::OVEN_SEGMENT_KIND_COOLING;
      if (!changes && segment.racks().empty()) continue;
      Item item;
      item.lead = view.clock().dayHour(toTime(segment.start_time()));
      item.title =
          segment.kind() == v1::OVEN_SEGMENT_KIND_PROOFING
              ? "off, light on: dough stands in it"
              : absl::StrCat(segmentWords(segment.kind()), view.units().dial(segment.setpoint_celsius()));
      item.details = foodIn(view, segment);
      part.items.push_back(std::move(item));
    }
    sheet.parts.push_back(std::move(part));
  }
  return sheet;
}

Item stageItem(const PlanView& view, const v1::FermentForecast& stage) {
  Item item;
  item.lead = view.clock().dayHour(toTime(stage.start_time()));
  item.title =
      absl::StrCat(stageWords(stage.stage()),
                   stage.place_id().empty() ? "" : absl::StrCat(", ", view.names().place(stage.place_id())));
  if (stage.has_ready_from_time())
    item.details.push_back(absl::StrCat(
        "Ready ", view.clock().spanWithDay(toTime(stage.ready_from_time()), toTime(stage.ready_until_time())),
        ", best at ", absl::StrFormat("%.1f", stage.wanted_rise()), " times its volume"));
  item.details.push_back("Watch the dough, not the clock.");
  return item;
}

Sheet breadSheet(const PlanView& view) {
  Sheet sheet{"Breads", coursesLine(view), {}};
  for (const v1::DoughForecast& dough : view.plan().doughs()) {
    Part part{view.names().dish(dough.dish_id()), {}};
    if (dough.water_celsius() > 0)
      part.items.push_back(
          {"", absl::StrCat("Water at ", view.units().degrees(dough.water_celsius())), {}, {}, false});
    for (const v1::FermentForecast& stage : dough.stages()) part.items.push_back(stageItem(view, stage));
    sheet.parts.push_back(std::move(part));
  }
  return sheet;
}

Sheet shoppingSheet(const v1::MakeShoppingListResponse& list) {
  Sheet sheet{"Shopping", "", {}};
  for (const v1::ShoppingItem& item : list.items()) {
    const std::string title =
        item.own() ? std::string("Also") : absl::StrCat("Needed on ", dateText(item.needed_date()));
    if (sheet.parts.empty() || sheet.parts.back().title != title) sheet.parts.push_back({title, {}});
    sheet.parts.back().items.push_back({item.shown(), plainLine(item.name()), {}, {}, true});
  }
  return sheet;
}

std::vector<Sheet> sheetsOf(const PlanView& view, const std::string& memberId,
                            const v1::MakeShoppingListResponse& shopping) {
  std::vector<Sheet> sheets;
  for (const v1::EventCook& cook : view.event().cooks()) {
    if (!memberId.empty() && cook.member_id() != memberId) continue;
    sheets.push_back(cookSheet(view, cook.member_id()));
  }
  if (!memberId.empty()) return sheets;
  if (Sheet ovens = ovenSheet(view); !ovens.parts.empty()) sheets.push_back(std::move(ovens));
  if (Sheet breads = breadSheet(view); !breads.parts.empty()) sheets.push_back(std::move(breads));
  if (!shopping.items().empty()) sheets.push_back(shoppingSheet(shopping));
  for (Sheet& sheet : sheets)
    if (sheet.title != "Shopping") sheet.parts.push_back({"", {{"", safetyNotice(), {}, {}, false}}});
  return sheets;
}

}  // namespace

int runSheet(const SheetCommand& command, Environment& environment) {
  int exitCode = kFailed;
  const auto task = eventTask({"", command.eventId, command.server, command.json}, environment, exitCode);
  if (!task) return exitCode;
  const auto& plans = task->bundle.plans();
  const auto plan =
      std::find_if(plans.begin(), plans.end(), [&](const v1::Plan& p) { return p.id() == task->event.id(); });
  if (plan == plans.end())
    return reportFailure(environment, absl::NotFoundError("the event has no plan yet"), command.json);
  std::string memberId;
  for (const v1::Member& member : task->bundle.household().members())
    if (member.id() == command.cook ||
        absl::AsciiStrToLower(member.display_name()) == absl::AsciiStrToLower(command.cook))
      memberId = member.id();
  if (!command.cook.empty() && memberId.empty())
    return reportFailure(environment,
                         absl::InvalidArgumentError(absl::StrCat("nobody is called ", command.cook)),
                         command.json);
  v1::MakeShoppingListRequest request;
  request.set_household_id(task->connection.householdId);
  request.set_event_id(task->event.id());
  const auto shopping = task->connection.session->makeShoppingList(request);
  if (!shopping.ok()) return reportFailure(environment, shopping.status(), command.json);
  const PlanView view(task->bundle, task->event, *plan, 80, false);
  int pages = 0;
  const auto pdf = paper::pdfOf(sheetsOf(view, memberId, *shopping),
                                command.paper == "letter" ? paper::Size::kLetter : paper::Size::kA4, &pages);
  if (!pdf.ok()) return reportFailure(environment, pdf.status(), command.json);
  if (absl::Status status = writeFile(command.file, *pdf); !status.ok())
    return reportFailure(environment, status, command.json);
  if (!command.json)
    environment.out << "Written to " << plainLine(command.file) << ": " << pages
                    << (pages == 1 ? " page.\n" : " pages.\n");
  return kOk;
}

}  // namespace suppertide::terminal
