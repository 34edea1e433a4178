#include "client/terminal/remedy_text.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"

namespace suppertide::terminal {
namespace {

std::string quoted(const std::string& text) {
  return absl::StrCat("“", text, "”");
}

class Words {
 public:
  Words(const PlanView& view, const v1::FindRemediesResponse& found) : view_(view), found_(found) {}

  std::string of(const v1::Remedy& what) const {
    switch (what.kind()) {
      case v1::REMEDY_KIND_SHARE_TEMPERATURE:
        return absl::StrCat("let ", step(what), " be anywhere from ",
                            view_.units().dialNumber(what.min_celsius()), " to ",
                            view_.units().dial(what.max_celsius()));
      case v1::REMEDY_KIND_OTHER_OVEN:
        return absl::StrCat("let ", step(what), " go into another oven than ",
                            view_.names().oven(what.thing_id()));
      case v1::REMEDY_KIND_BAKE_EARLIER:
        return earlier(what);
      case v1::REMEDY_KIND_RETARD:
        return absl::StrCat("let ", step(what), " slow down in the fridge");
      case v1::REMEDY_KIND_LEVAIN_RATIO:
        return absl::StrCat("build the levain of ", dish(what), levain(what));
      case v1::REMEDY_KIND_OTHER_COOK:
        return absl::StrCat("ask ", view_.names().cook(what.thing_id()), " to cook, too");
      case v1::REMEDY_KIND_LATER_COURSE:
        return later(what);
      case v1::REMEDY_KIND_BORROW:
        return borrowed(what);
      case v1::REMEDY_KIND_DROP_DISH:
        return absl::StrCat("leave out ", dish(what));
      case v1::REMEDY_KIND_HOURS:
        return absl::StrCat("ask ", view_.names().cook(what.thing_id()), " for up to ",
                            durationText(what.duration()), " more at either end of their hours");
      case v1::REMEDY_KIND_UNPIN:
        return absl::StrCat("leave ", step(what), " to the planner");
      case v1::REMEDY_KIND_OTHER_PAN:
        return otherPan(what);
      default:
        return "a change this program has no words for";
    }
  }

 private:
  std::string dish(const v1::Remedy& what) const { return view_.names().dish(what.dish_id()); }
  std::string step(const v1::Remedy& what) const {
    return absl::StrCat(quoted(view_.title(what.step_id())), " of ", dish(what));
  }

  std::string earlier(const v1::Remedy& what) const {
    if (what.step_id().empty())
      return absl::StrCat("let ", dish(what), " be ready earlier and wait up to ",
                          durationText(what.duration()));
    return absl::StrCat("bake ", dish(what), " hours ahead and warm it through before serving");
  }

  // As the plan builds it.
  std::string levain(const v1::Remedy& what) const {
    for (const v1::DoughForecast& dough : found_.plan().doughs())
      if (dough.dish_id() == what.dish_id()) return absl::StrCat(" at ", plainLine(dough.levain_ratio()));
    return " at another ratio";
  }

  std::string later(const v1::Remedy& what) const {
    std::string words = absl::StrCat("serve ", view_.names().course(what.course_id()), " ",
                                     durationText(what.duration()), " later");
    for (const v1::Course& course : found_.event().courses())
      if (course.id() == what.course_id())
        absl::StrAppend(&words, ", at ", view_.clock().hour(toTime(course.serving_time())));
    return words;
  }

  std::string borrowed(const v1::Remedy& what) const {
    const std::string& id = what.thing_id();
    if (id == "burners")
      return what.count() == 1 ? "borrow a burner" : absl::StrCat("borrow ", what.count(), " burners");
    if (view_.names().place(id) != id)
      return absl::StrCat("find ", what.count(), " l more room like ", view_.names().place(id));
    return absl::StrCat("borrow another ", view_.names().thing(id));
  }

  std::string otherPan(const v1::Remedy& what) const {
    const v1::Pan& pan = what.pan();
    const std::string pans = pan.count() > 1 ? absl::StrCat(pan.count(), " pans") : "a pan";
    std::vector<std::string> beside = besideInOven(what);
    if (beside.empty()) beside = {"the others"};
    return absl::StrCat("bake ", dish(what), " in ", pans, " of at most ",
                        view_.units().atMost(pan.width_mm(), pan.depth_mm()), ", about ",
                        view_.units().height(pan.height_mm()), " high and filled deeper, for longer: then ",
                        pan.count() > 1 ? "they stand" : "it stands", " beside ", joinWords(beside),
                        " in the ", view_.names().oven(what.thing_id()));
  }

  // The dishes with which it is in that oven, as the plan has it.
  std::vector<std::string> besideInOven(const v1::Remedy& what) const {
    const auto& steps = found_.plan().steps();
    const auto own = std::find_if(steps.begin(), steps.end(),
                                  [&](const v1::PlannedStep& s) { return s.id() == what.step_id(); });
    std::vector<std::string> dishes;
    if (own == steps.end() || own->oven_id() != what.thing_id()) return dishes;
    for (const v1::PlannedStep& other : steps) {
      if (other.oven_id() != own->oven_id() || other.dish_id() == own->dish_id()) continue;
      if (toTime(other.start_time()) >= toTime(own->end_time()) ||
          toTime(own->start_time()) >= toTime(other.end_time()))
        continue;
      const std::string name = view_.names().dish(other.dish_id());
      if (std::find(dishes.begin(), dishes.end(), name) == dishes.end()) dishes.push_back(name);
    }
    return dishes;
  }

  const PlanView& view_;
  const v1::FindRemediesResponse& found_;
};

double leastChance(const v1::Plan& plan) {
  double least = 2;
  for (const v1::PlannedCourse& course : plan.courses())
    if (course.has_on_time_chance()) least = std::min(least, course.on_time_chance());
  return least;
}

}  // namespace

std::string remedyText(const PlanView& view, const v1::FindRemediesResponse& found) {
  const Words words(view, found);
  std::vector<std::string> parts = {words.of(found.remedy())};
  for (const v1::Remedy& what : found.further()) parts.push_back(words.of(what));
  return capitalised(joinWords(parts)) + ".";
}

std::string remedyCostText(const v1::Plan& plan) {
  const v1::TierCosts& costs = plan.quality().costs();
  std::vector<std::string> parts;
  if (costs.quality() > 0)
    parts.push_back(absl::StrCat(durationText(absl::Minutes(costs.quality())), " waiting or off its best"));
  if (costs.people() > 0)
    parts.push_back(absl::StrCat(durationText(absl::Minutes(costs.people())),
                                 " at unsocial hours or beyond a fair share"));
  if (costs.ovens() > 0)
    parts.push_back(absl::StrCat(durationText(absl::Minutes(costs.ovens())), " of empty oven"));
  std::string text = parts.empty() ? "Nothing waits and nobody is asked at a bad hour" : joinWords(parts);
  const double chance = leastChance(plan);
  if (chance <= 1)
    absl::StrAppend(&text, "; in time in ", static_cast<int>(std::floor(chance * 100)), " of 100 evenings");
  return text + ".";
}

std::string remediesText(const PlanView& view, const std::vector<v1::FindRemediesResponse>& ranked) {
  std::string text;
  int number = 0;
  for (const v1::FindRemediesResponse& found : ranked) {
    const std::string lead = absl::StrCat(++number, "  ");
    text += view.strongItem(lead, remedyText(view, found));
    text += view.paragraph(remedyCostText(found.plan()), displayWidth(lead));
  }
  return text;
}

}  // namespace suppertide::terminal
