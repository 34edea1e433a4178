#include "client/terminal/plan_text.h"

#include "client/terminal/clash_text.h"
#include "client/terminal/dough_text.h"
#include "client/terminal/fetch_text.h"
#include "client/terminal/headline.h"
#include "client/terminal/oven_text.h"
#include "client/terminal/run_sheet.h"
#include "client/terminal/wish_text.h"

namespace suppertide::terminal {
namespace {

std::string orSay(const std::string& text, const char* otherwise) {
  return text.empty() ? otherwise : text;
}

std::string fetchesText(const PlanView& view, const std::string& cookId) {
  google::protobuf::RepeatedPtrField<v1::Fetch> unplanned;
  for (const v1::Fetch& fetch : view.plan().fetches())
    if (fetch.step_id().empty()) *unplanned.Add() = fetch;
  const std::string lines = fetchLines(unplanned, view.names(), view.clock(), cookId, view.width());
  return lines.empty() ? "" : view.section("Take out in time") + lines;
}

std::string chosenParts(const PlanView& view, const PlanTextOptions& options) {
  std::string text;
  if (options.firstActions)
    text += orSay(firstActionsText(view, options.cookId), "\nNobody has anything to do.\n");
  if (options.ovens) text += orSay(ovensText(view), "\nNo oven is used.\n");
  if (options.breads) text += orSay(doughsText(view), "\nThere is no bread in this plan.\n");
  if (options.clashes) text += orSay(clashesText(view), "\nNo two dishes want an oven at the same time.\n");
  return text;
}

}  // namespace

std::string planText(const PlanView& view, const PlanTextOptions& options) {
  std::string text = headlineText(view) + wishClashesText(view);
  if (view.plan().clashes_size() > 0)
    text += view.paragraph("See what would help: suppertide remedies, with the same file or event.");
  if (options.ovens || options.breads || options.clashes || options.firstActions)
    return text + chosenParts(view, options);
  text += firstActionsText(view, options.cookId) + fetchesText(view, options.cookId);
  text += runSheetText(view, {.cookId = options.cookId, .instructions = options.instructions});
  if (options.cookId.empty()) text += ovensText(view) + doughsText(view) + clashesText(view);
  return text + cautionsText(view, options.cookId);
}

}  // namespace suppertide::terminal
