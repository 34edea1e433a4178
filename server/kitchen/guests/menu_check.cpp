#include "server/kitchen/guests/menu_check.h"

#include <algorithm>

#include "server/kitchen/ingredients/plain_text.h"

namespace suppertide::kitchen {
namespace {

bool contains(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Whether `word` is in `name` as whole words, both plain.
bool named(const std::string& name, const std::string& word) {
  return (" " + name + " ").find(" " + word + " ") != std::string::npos;
}

bool claimsFree(const std::string& name, const std::string& of) {
  return name.find(of + "-free") != std::string::npos || name.find(of + " free") != std::string::npos;
}

// Read once, asked of every part of every dish.
struct ReadNeed {
  const GuestNeed* need;
  Avoidance avoidance;
  bool onlyLactose;
};

struct ReadDish {
  const MenuDish* dish;
  std::vector<std::string> plainNames;  // of its parts
};

std::vector<ReadNeed> readNeeds(const std::vector<GuestNeed>& needs) {
  std::vector<ReadNeed> read;
  for (const GuestNeed& need : needs)
    read.push_back(
        {&need, avoidanceOf(need.name), plainName(need.name).find("lactose") != std::string::npos});
  return read;
}

ReadDish readDish(const MenuDish& dish) {
  ReadDish read{&dish, {}};
  for (const DishPart& part : dish.parts) read.plainNames.push_back(plainName(part.name));
  return read;
}

// What one part of a dish is to one need.
class Judge {
 public:
  Judge(const ReadNeed& need, const DishPart& part, const std::string& plain, std::vector<FitReason>& reasons)
      : need_(need), part_(part), plain_(plain), reasons_(reasons) {}

  void judge() {
    const std::size_t before = reasons_.size();
    for (const std::string& held : part_.contents.holds) judge(held, Fit::kHolds);
    for (const std::string& held : part_.contents.mayHold) judge(held, Fit::kUnknown);
    if (need_.avoidance.kind == NeedKind::kOwnWords && named(plain_, need_.avoidance.excluded.front()))
      add(Fit::kHolds, need_.avoidance.excluded.front());
    if (reasons_.size() == before && !part_.contents.complete) add(Fit::kUnknown, "");
  }

 private:
  void judge(const std::string& substance, Fit whenExcluded) {
    // Milk without its sugar is still milk to everyone but those who only mind the sugar.
    if (need_.onlyLactose && claimsFree(plain_, "lactose")) return;
    if (contains(need_.avoidance.excluded, substance)) return add(whenExcluded, substance);
    if (contains(need_.avoidance.ask, substance)) return add(Fit::kAsk, substance);
  }

  void add(Fit fit, const std::string& substance) {
    if (need_.need->severity == Severity::kDislike) fit = fit == Fit::kHolds ? Fit::kDisliked : Fit::kAsk;
    reasons_.push_back({need_.need->name, need_.need->severity, fit, part_.name, substance});
  }

  const ReadNeed& need_;
  const DishPart& part_;
  const std::string& plain_;
  std::vector<FitReason>& reasons_;
};

DishFit fitOf(const ReadDish& read, const std::vector<ReadNeed>& needs) {
  static const DishPart kNothingSaid{"", {{}, {}, false}};
  static const std::string kNoName;
  DishFit fit{read.dish->id, Fit::kSuits, {}};
  for (const ReadNeed& need : needs) {
    if (read.dish->parts.empty()) Judge(need, kNothingSaid, kNoName, fit.reasons).judge();
    for (std::size_t i = 0; i < read.dish->parts.size(); ++i)
      Judge(need, read.dish->parts[i], read.plainNames[i], fit.reasons).judge();
  }
  std::stable_sort(fit.reasons.begin(), fit.reasons.end(),
                   [](const FitReason& a, const FitReason& b) { return a.fit > b.fit; });
  if (!fit.reasons.empty()) fit.fit = fit.reasons.front().fit;
  return fit;
}

// A note behind a comma names no other thing.
const Ingredient* knownAs(const std::string& name) {
  return findIngredient(std::string_view(name).substr(0, name.find(','))).ingredient;
}

void warnOfNeeds(const MenuGuest& guest, MenuCheck& check) {
  for (const GuestNeed& need : guest.needs) {
    if (need.severity == Severity::kNoTraces)
      check.warnings.push_back({MenuWarningKind::kNoTraces, guest.id, "", need.name});
    if (avoidanceOf(need.name).kind == NeedKind::kOwnWords && need.severity != Severity::kDislike)
      check.warnings.push_back({MenuWarningKind::kOwnWords, guest.id, "", need.name});
  }
}

// A question or a dislike leaves something to eat; contents unknown or held do not.
void warnOfCell(const GuestCourse& cell, MenuCheck& check) {
  bool eatable = false;
  bool unknown = false;
  for (const DishFit& dish : cell.dishes) {
    eatable |= dish.fit == Fit::kSuits;
    unknown |= dish.fit == Fit::kUnknown || dish.fit == Fit::kAsk;
  }
  if (eatable) return;
  const auto kind = unknown ? MenuWarningKind::kContentsUnknown : MenuWarningKind::kNothingToEat;
  check.warnings.push_back({kind, cell.guestId, cell.courseId, ""});
}

}  // namespace

DishFit fitOf(const MenuDish& dish, const std::vector<GuestNeed>& needs) {
  return fitOf(readDish(dish), readNeeds(needs));
}

MenuCheck checkMenu(const std::vector<MenuGuest>& guests, const std::vector<std::string>& courseIds,
                    const std::vector<MenuDish>& dishes) {
  MenuCheck check;
  std::vector<ReadDish> read;
  for (const MenuDish& dish : dishes) read.push_back(readDish(dish));
  for (const MenuGuest& guest : guests) {
    const std::vector<ReadNeed> needs = readNeeds(guest.needs);
    for (const std::string& courseId : courseIds) {
      GuestCourse cell{guest.id, courseId, {}, 0};
      for (const ReadDish& dish : read) {
        if (dish.dish->courseId != courseId) continue;
        cell.dishes.push_back(fitOf(dish, needs));
        cell.suitingCount += cell.dishes.back().fit == Fit::kSuits ? 1 : 0;
      }
      if (!guest.needs.empty() && !cell.dishes.empty()) warnOfCell(cell, check);
      check.cells.push_back(std::move(cell));
    }
    warnOfNeeds(guest, check);
  }
  return check;
}

Contents contentsOf(const std::string& name, const std::vector<std::string>& said, bool saidComplete) {
  Contents contents{{}, {}, saidComplete};
  for (const std::string& word : said) contents.holds.push_back(plainName(word));
  const Ingredient* known = knownAs(name);
  if (known == nullptr) return contents;
  if (said.empty() && !saidComplete) contents.complete = known->contents.complete;
  const std::string lower = lowerCase(name);
  for (const std::string& word : known->contents.holds) {
    const std::string plain = plainName(word);
    const bool denied = (claimsFree(lower, "gluten") && contains(avoidanceOf("gluten").excluded, plain)) ||
                        (claimsFree(lower, "lactose") && plain == "lactose");
    if (!denied && !contains(contents.holds, plain)) contents.holds.push_back(plain);
  }
  if (!saidComplete)
    for (const std::string& word : known->contents.mayHold) contents.mayHold.push_back(plainName(word));
  return contents;
}

std::vector<std::string> unsaidAllergens(const std::string& name, const std::vector<std::string>& said) {
  std::vector<std::string> covered;
  for (const std::string& word : said) {
    covered.push_back(plainName(word));
    const auto excluded = avoidanceOf(word).excluded;
    covered.insert(covered.end(), excluded.begin(), excluded.end());
  }
  std::vector<std::string> unsaid;
  for (const std::string& held : contentsOf(name, said, true).holds)
    if (!contains(covered, held) && !(usAllergensOf(held).empty() && euAllergensOf(held).empty()))
      unsaid.push_back(held);
  return unsaid;
}

}  // namespace suppertide::kitchen
