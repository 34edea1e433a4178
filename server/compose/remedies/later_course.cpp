#include "absl/strings/str_cat.h"
#include "server/compose/remedies/catalogue.h"

namespace suppertide::compose {
namespace {

constexpr int kLater[] = {15, 30, 45, 60};

}  // namespace

std::vector<Change> laterCourse(const Situation& situation) {
  std::vector<Change> changes;
  std::set<std::string> courses;
  for (const int dish : situation.dishes())
    courses.insert(situation.composition.dishes[static_cast<std::size_t>(dish)].course->id());
  for (const std::string& course : courses) {
    for (const int minutes : kLater) {
      Change change;
      change.what.set_kind(v1::REMEDY_KIND_LATER_COURSE);
      change.what.set_course_id(course);
      *change.what.mutable_duration() = durationOf(minutes);
      change.what.set_size(change_size::kLater + 2 * minutes / 15);
      change.group = absl::StrCat("later ", course);
      change.apply = [course, minutes](Documents& documents) {
        for (v1::Course& own : *documents.event.mutable_courses())
          if (own.id() == course)
            own.mutable_serving_time()->set_seconds(own.serving_time().seconds() + minutes * 60);
      };
      changes.push_back(std::move(change));
    }
  }
  return changes;
}

}  // namespace suppertide::compose
