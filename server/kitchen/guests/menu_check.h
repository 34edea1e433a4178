// Who can eat what: guests against the dishes of each course.
//
// Contents that are not known are *unknown*, never "free of". No medical
// advice: whoever asks must still ask the guest and read the label.
#pragma once

#include <string>
#include <vector>

#include "server/kitchen/guests/substances.h"
#include "server/kitchen/ingredients/ingredient_table.h"

namespace suppertide::kitchen {

// Ascending in how much it is in the way.
enum class Fit { kSuits, kAsk, kUnknown, kDisliked, kHolds };
enum class Severity { kDislike, kAvoid, kNoTraces };

struct GuestNeed {
  std::string name;
  Severity severity = Severity::kAvoid;
};

struct MenuGuest {
  std::string id;
  std::vector<GuestNeed> needs;
};

struct DishPart {
  std::string name;
  Contents contents;  // in plain names (plainName), as contentsOf gives them
};

struct MenuDish {
  std::string id;
  std::string courseId;
  std::vector<DishPart> parts;  // empty: what is in it is not known
};

struct FitReason {
  std::string need;
  Severity severity = Severity::kAvoid;
  Fit fit = Fit::kSuits;
  std::string part;
  std::string substance;  // empty: contents not known
};

struct DishFit {
  std::string dishId;
  Fit fit = Fit::kSuits;
  std::vector<FitReason> reasons;  // worst first
};

struct GuestCourse {
  std::string guestId;
  std::string courseId;
  std::vector<DishFit> dishes;
  int suitingCount = 0;
};

enum class MenuWarningKind {
  kNothingToEat,     // no dish of the course is known to suit
  kContentsUnknown,  // nothing suits, but an unknown dish might: read its labels
  kOwnWords,         // compared by names alone
  kNoTraces,         // needs its own tools and order
};

struct MenuWarning {
  MenuWarningKind kind = MenuWarningKind::kNothingToEat;
  std::string guestId;
  std::string courseId;  // empty: the whole menu
  std::string need;
};

struct MenuCheck {
  std::vector<GuestCourse> cells;  // by guest, then course, as given
  std::vector<MenuWarning> warnings;
};

// One dish for one guest. What a guest dislikes is never worse than kDisliked,
// and unknown contents are no obstacle to a dislike but a question.
DishFit fitOf(const MenuDish& dish, const std::vector<GuestNeed>& needs);

// Guests x courses; linear in guests x needs x parts.
MenuCheck checkMenu(const std::vector<MenuGuest>& guests, const std::vector<std::string>& courseIds,
                    const std::vector<MenuDish>& dishes);

// Contents of a recipe's ingredient: what the recipe says, and what the table
// knows of its name besides. Complete only when the recipe says so, or the
// recipe says nothing at all and the table is complete.
// An ingredient that calls itself gluten-free or lactose-free is taken at its word against the table.
Contents contentsOf(const std::string& name, const std::vector<std::string>& said, bool saidComplete);

// Allergens of a law's list that the table knows of the ingredient and the recipe does not say.
std::vector<std::string> unsaidAllergens(const std::string& name, const std::vector<std::string>& said);

}  // namespace suppertide::kitchen
