#include "client/session/request_words.h"

#include <google/protobuf/descriptor.h>

#include "client/link/edit.h"
#include "client/link/error_detail.h"
#include "client/link/session.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

using google::protobuf::Message;
using link::Edit;

QString nameOf(const Message* document) {
  if (document == nullptr) return {};
  const auto* field = document->GetDescriptor()->FindFieldByName("display_name");
  return field == nullptr ? QString() : text(document->GetReflection()->GetString(*document, field));
}

// Of the plan when it has one, else of the recipe.
QString stepName(const v1::Report& report, const std::string& eventId, const link::Replica& replica) {
  const auto plan = replica.plans.find(eventId);
  if (plan != replica.plans.end()) {
    const std::string plannedId = report.dish_id() + "/" + report.step_id();
    for (const v1::PlannedStep& step : plan->second.steps())
      if (step.id() == plannedId) return text(step.title());
  }
  const auto event = replica.events.find(eventId);
  if (event != replica.events.end()) {
    for (const v1::Dish& dish : event->second.dishes()) {
      const auto recipe = replica.recipes.find(dish.recipe_id());
      if (dish.id() == report.dish_id() && recipe != replica.recipes.end())
        return text(recipe->second.display_name());
    }
  }
  return text(report.step_id().empty() ? report.dish_id() : report.step_id());
}

QString reportWords(const v1::Report& report, const QString& name) {
  switch (report.what_case()) {
    case v1::Report::kStarted:
      return RequestWords::tr("“%1” begun").arg(name);
    case v1::Report::kFinished:
      return RequestWords::tr("“%1” done").arg(name);
    case v1::Report::kSkipped:
      return RequestWords::tr("“%1” left out").arg(name);
    case v1::Report::kDelayedBy:
      return RequestWords::tr("“%1” later").arg(name);
    case v1::Report::kNeedsMoreDuration:
      return RequestWords::tr("“%1” takes longer").arg(name);
    case v1::Report::kHandedToMemberId:
      return RequestWords::tr("“%1” handed on").arg(name);
    case v1::Report::kUndoneReportId:
      return RequestWords::tr("“%1” taken back").arg(name);
    case v1::Report::WHAT_NOT_SET:
      return RequestWords::tr("A note");
    default:
      return RequestWords::tr("“%1” looked at").arg(name);
  }
}

QString editWords(const Edit& edit, const QString& name) {
  const bool creates = edit.act == Edit::Act::kCreate;
  const bool deletes = edit.act == Edit::Act::kDelete;
  const auto said = [&](const QString& created, const QString& deleted, const QString& changed) {
    return (creates ? created : deletes ? deleted : changed).arg(name);
  };
  if (edit.kind == "recipe")
    return said(RequestWords::tr("New recipe “%1”"), RequestWords::tr("Recipe “%1” removed"),
                RequestWords::tr("Change of the recipe “%1”"));
  if (edit.kind == "event")
    return said(RequestWords::tr("New event “%1”"), RequestWords::tr("Event “%1” removed"),
                RequestWords::tr("Change of the event “%1”"));
  if (edit.kind == "kitchen")
    return said(RequestWords::tr("New kitchen “%1”"), RequestWords::tr("Kitchen “%1” removed"),
                RequestWords::tr("Change of the kitchen “%1”"));
  if (edit.kind == "starter")
    return said(RequestWords::tr("New starter “%1”"), RequestWords::tr("Starter “%1” removed"),
                RequestWords::tr("Change of the starter “%1”"));
  return RequestWords::tr("Change of the household");
}

QString shoppingWords(const v1::EditShoppingRequest& request) {
  if (request.edits_size() == 1 && request.edits(0).has_own_item())
    return RequestWords::tr("“%1” on the shopping list").arg(text(request.edits(0).own_item().name()));
  if (request.edits_size() == 1 && request.edits(0).has_tick())
    return RequestWords::tr("A line of the shopping list ticked off");
  return RequestWords::tr("Change of the shopping list");
}

}  // namespace

QString RequestWords::of(const Message& request, const link::Replica& replica) {
  if (const auto* reports = dynamic_cast<const v1::AddReportsRequest*>(&request);
      reports != nullptr && reports->reports_size() > 0) {
    const v1::Report& first = reports->reports(0);
    return reportWords(first, stepName(first, reports->event_id(), replica));
  }
  if (const auto* shopping = dynamic_cast<const v1::EditShoppingRequest*>(&request); shopping != nullptr)
    return shoppingWords(*shopping);
  const Edit edit = link::readEdit(request);
  if (edit.act == Edit::Act::kOther) return tr("A change");
  QString name = nameOf(link::documentOf(request));
  if (name.isEmpty()) name = nameOf(link::documentOf(replica, edit.kind, edit.id));
  return editWords(edit, name);
}

QString RequestWords::why(const absl::Status& status) {
  const auto detail = link::errorDetail(status);
  if (!detail || detail->violations().empty()) return text(std::string(status.message()));
  QStringList lines;
  for (const v1::FieldViolation& violation : detail->violations())
    lines.append(violation.value().empty()
                     ? text(violation.description())
                     //: What stood in a field, and what is wrong with it.
                     : tr("%1: %2").arg(text(violation.value()), text(violation.description())));
  return lines.join(QLatin1Char('\n'));
}

}  // namespace suppertide
