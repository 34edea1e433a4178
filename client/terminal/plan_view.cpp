#include "client/terminal/plan_view.h"

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"

namespace suppertide::terminal {
namespace {

constexpr int kNarrowest = 60;

std::string ruled(const std::string& line, const std::string& title, int width) {
  std::string text = line + line + " " + title + " ";
  for (int at = displayWidth(text); at < width; ++at) text += line;
  return text;
}

std::string lowerCase(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return c < 128 ? std::tolower(c) : c; });
  return text;
}

}  // namespace

PlanView::PlanView(const v1::Bundle& bundle, v1::Event event, v1::Plan plan, int width, bool colour)
    : plan_(std::move(plan)),
      event_(std::move(event)),
      names_(bundle, event_),
      clock_(plan_.time_zone().empty() ? bundle.household().time_zone() : plan_.time_zone()),
      units_(bundle.household()),
      style_(colour),
      width_(std::max(width, kNarrowest)) {
  for (const v1::PlannedStep& step : plan_.steps()) steps_[step.id()] = &step;
}

const v1::PlannedStep* PlanView::step(const std::string& id) const {
  const auto found = steps_.find(id);
  return found != steps_.end() ? found->second : nullptr;
}

std::string PlanView::title(const std::string& plannedId) const {
  const v1::PlannedStep* planned = step(plannedId);
  if (planned != nullptr && !planned->title().empty())
    return absl::StrCat(plainLine(planned->title()),
                        planned->load_count() > 1
                            ? absl::StrCat(" (load ", planned->load(), " of ", planned->load_count(), ")")
                            : "");
  const auto [dish, stepId] = splitPlannedId(plannedId);
  return names_.step(dish, stepId);
}

std::string PlanView::titleWithDish(const v1::PlannedStep& step) const {
  return titleWithDish(step.id());
}

std::string PlanView::titleWithDish(const std::string& plannedId) const {
  const std::string what = title(plannedId);
  const std::string dish = names_.dish(splitPlannedId(plannedId).first);
  if (lowerCase(what).find(lowerCase(dish)) != std::string::npos) return what;
  return what + " · " + dish;
}

std::vector<int> PlanView::rackPositions(const std::string& plannedId) const {
  for (const v1::OvenProgram& program : plan_.oven_programs()) {
    for (const v1::OvenSegment& segment : program.segments()) {
      for (const v1::RackUse& use : segment.racks()) {
        if (use.step_id() == plannedId && use.positions_size() > 0)
          return {use.positions().begin(), use.positions().end()};
      }
    }
  }
  return {};
}

std::string PlanView::section(const std::string& title) const {
  return "\n" + style_.heading(ruled("━", title, width_)) + "\n\n";
}

std::string PlanView::part(const std::string& title) const {
  return style_.heading(ruled("─", title, width_)) + "\n";
}

std::string PlanView::paragraph(const std::string& text, int indent) const {
  return item(std::string(static_cast<std::size_t>(indent), ' '), text);
}

std::string PlanView::item(const std::string& lead, const std::string& text) const {
  std::string result;
  for (const std::string& line : itemLines(lead, text)) result += line + "\n";
  return result;
}

std::string PlanView::strongItem(const std::string& lead, const std::string& text) const {
  std::string result;
  for (const std::string& line : itemLines(lead, text)) result += style_.strong(line) + "\n";
  return result;
}

std::vector<std::string> PlanView::itemLines(const std::string& lead, const std::string& text) const {
  const int leadWidth = displayWidth(lead);
  std::vector<std::string> lines = wrap(text, width_ - leadWidth);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    lines[i] = (i == 0 ? lead : std::string(static_cast<std::size_t>(leadWidth), ' ')) + lines[i];
  }
  return lines;
}

std::pair<std::string, std::string> splitPlannedId(const std::string& plannedId) {
  const std::size_t slash = plannedId.find('/');
  if (slash == std::string::npos) return {plannedId, ""};
  return {plannedId.substr(0, slash), plannedId.substr(slash + 1)};
}

}  // namespace suppertide::terminal
