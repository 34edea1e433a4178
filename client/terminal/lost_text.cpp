#include "client/terminal/lost_text.h"

namespace suppertide::terminal {

std::string lostWords(v1::Cause cause) {
  switch (cause) {
    case v1::CAUSE_FOOD_SAFETY:
      return "cannot be served any more: it would be past a food-safety limit. Put something else in its "
             "place; "
             "what has stood out too long is thrown away.";
    case v1::CAUSE_SERVING:
      return "cannot be ready any more by the latest that its course allows. Let the course be later, or put "
             "something else in its place.";
    case v1::CAUSE_MUST_FOLLOW:
      return "has waited too long between two of its steps to get good. Put something else in its place.";
    case v1::CAUSE_THING_BUSY:
      return "has no oven, cook or place left that it could use. Find one, or put something else in its "
             "place.";
    default:
      return "";
  }
}

}  // namespace suppertide::terminal
