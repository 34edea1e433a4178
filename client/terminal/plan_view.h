// A plan with everything needed to tell it to people.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "client/terminal/names.h"
#include "client/terminal/text.h"
#include "client/terminal/time_text.h"
#include "client/terminal/units.h"
#include "suppertide/v1/bundle.pb.h"

namespace suppertide::terminal {

// Holds its own copies. `width` is in columns, 60 at least.
class PlanView {
 public:
  // `bundle` has the event's documents; its plans are not looked at.
  PlanView(const v1::Bundle& bundle, v1::Event event, v1::Plan plan, int width, bool colour);

  const v1::Plan& plan() const { return plan_; }
  const v1::Event& event() const { return event_; }
  const Names& names() const { return names_; }
  const Clock& clock() const { return clock_; }
  const Units& units() const { return units_; }
  const Style& style() const { return style_; }
  int width() const { return width_; }

  // By planned id, "dish_id/step_id"; null when the plan has none.
  const v1::PlannedStep* step(const std::string& id) const;
  // "Shape the loaves" of any step, in the plan or not.
  std::string title(const std::string& plannedId) const;
  // "Shape the loaves · Seeded sourdough"; the title alone when it names its dish.
  std::string titleWithDish(const v1::PlannedStep& step) const;
  std::string titleWithDish(const std::string& plannedId) const;
  // Rack positions a step takes, 1 the lowest; empty when left to the cook.
  std::vector<int> rackPositions(const std::string& plannedId) const;

  // "━━ Ovens ━━━━━━", a line as wide as the view, blank line before and after.
  std::string section(const std::string& title) const;
  // Same, lighter, for parts of a section.
  std::string part(const std::string& title) const;
  // Wrapped to the width behind `indent` blanks, a line break at the end.
  std::string paragraph(const std::string& text, int indent = 0) const;
  // As paragraph, with `lead` before the first line and blanks as wide before the others.
  std::string item(const std::string& lead, const std::string& text) const;
  // As item, emphasised.
  std::string strongItem(const std::string& lead, const std::string& text) const;

 private:
  std::vector<std::string> itemLines(const std::string& lead, const std::string& text) const;

  v1::Plan plan_;
  v1::Event event_;
  Names names_;
  Clock clock_;
  Units units_;
  Style style_;
  int width_;
  std::map<std::string, const v1::PlannedStep*> steps_;  // into plan_
};

// "Dish_id" and "step_id" of "dish_id/step_id"; the second empty when there is no slash.
std::pair<std::string, std::string> splitPlannedId(const std::string& plannedId);

}  // namespace suppertide::terminal
