#include "client/terminal/chance_text.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "client/terminal/words.h"

namespace suppertide::terminal {
namespace {

std::string courseSentence(const PlanView& view, const v1::PlannedCourse& course) {
  const double chance = course.on_time_chance();
  const long evenings = std::lround(chance * 100);
  const std::string name = view.names().course(course.course_id());
  if (chance >= 0.995) return absl::StrCat(name, " is ready in time on practically every evening.");
  if (evenings == 0) return absl::StrCat(name, " will hardly ever be ready in time.");
  std::string sentence = absl::StrCat(name, " is ready in time on ", evenings, " of 100 such evenings");
  if (!course.late_step_id().empty()) {
    const long share = std::lround(course.late_step_share() * 100);
    const std::string often =
        share >= 95 ? "nearly always" : absl::StrCat("most often (", share, " of 100 times)");
    absl::StrAppend(&sentence, "; when it is late, ", often, " because “",
                    view.titleWithDish(course.late_step_id()), "” took longer");
  }
  return sentence + ".";
}

}  // namespace

std::string chancesText(const PlanView& view) {
  std::string text;
  for (const v1::PlannedCourse& course : view.plan().courses())
    if (course.has_on_time_chance()) text += view.item("• ", courseSentence(view, course));
  return text;
}

}  // namespace suppertide::terminal
