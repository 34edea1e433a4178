#include "client/terminal/wish_text.h"
#include "client/terminal/words.h"

#include <algorithm>
#include <vector>

#include "absl/strings/str_cat.h"

namespace suppertide::terminal {
namespace {

std::string countWord(int count) {
  static const char* const kWords[] = {"no", "one", "two", "three", "four", "five", "six"};
  return count >= 0 && count <= 6 ? kWords[count] : absl::StrCat(count);
}

class Story {
 public:
  Story(const PlanView& view, const v1::Clash& clash) : view_(view), clash_(clash) {
    for (const v1::Wish& wish : clash.wishes())
      if (wish.kind() == v1::WISH_KIND_SERVED) served_.push_back(&wish);
  }

  std::string text() const {
    if (clash_.wishes_size() == 1 && served_.size() == 1)
      return absl::StrCat(dishName(*served_.front()), " cannot be ready by ", due(*served_.front()),
                          ", whatever else is given up.", rulesWords());
    std::vector<std::string> dishes;
    for (const v1::Wish* wish : served_) dishes.push_back(dishWords(*wish));
    std::string text = absl::StrCat("These cannot all be had: ", joinWords(dishes));
    if (oneTime()) absl::StrAppend(&text, ", ", togetherWords(), "due ", due(*served_.front()));
    const std::vector<std::string> others = otherWords();
    if (!others.empty()) absl::StrAppend(&text, "; ", joinWords(others));
    absl::StrAppend(&text, ".");
    text += rulesWords();
    if (clash_.racks_unproven()) absl::StrAppend(&text, " (As to the racks, all of it ", mayFitWords(), ".)");
    if (!clash_.smallest()) absl::StrAppend(&text, " (It may be that not all of them matter.)");
    return text;
  }

 private:
  std::string dishName(const v1::Wish& wish) const { return view_.names().dish(wish.dish_id()); }
  std::string due(const v1::Wish& wish) const { return view_.clock().dayHour(toTime(wish.time())); }

  bool oneTime() const {
    return !served_.empty() && std::all_of(served_.begin(), served_.end(), [&](const v1::Wish* wish) {
      return wish->time().seconds() == served_.front()->time().seconds();
    });
  }
  std::string togetherWords() const {
    if (served_.size() < 2) return "";
    return served_.size() == 2 ? "both " : "all ";
  }

  // "Loaf at 240 °C (kept at most 1 h)", "Gratin at 170 to 185 °C".
  std::string dishWords(const v1::Wish& served) const {
    std::string words = dishName(served);
    int bakes = 0;
    for (const v1::Wish& wish : clash_.wishes()) {
      if (wish.kind() != v1::WISH_KIND_SETPOINT || wish.dish_id() != served.dish_id()) continue;
      absl::StrAppend(&words, bakes++ == 0 ? " at " : " and ", setpointWords(wish));
    }
    if (!oneTime()) absl::StrAppend(&words, " due ", due(served));
    for (const v1::Wish& wish : clash_.wishes())
      if (wish.kind() == v1::WISH_KIND_FRESH && wish.dish_id() == served.dish_id())
        absl::StrAppend(&words, " (kept at most ", durationText(wish.duration()), ")");
    return words;
  }

  std::string setpointWords(const v1::Wish& wish) const {
    if (wish.min_celsius() == wish.max_celsius() || wish.max_celsius() == 0)
      return view_.units().dial(wish.celsius());
    return absl::StrCat(view_.units().dialNumber(wish.min_celsius()), " to ",
                        view_.units().dial(wish.max_celsius()));
  }

  std::string rulesWords() const {
    std::string words;
    for (const v1::KeptRule& rule : clash_.kept_rules()) absl::StrAppend(&words, " ", ruleWords(rule));
    return words;
  }

  // Not theirs to give up, but without it there would be no clash.
  std::string ruleWords(const v1::KeptRule& rule) const {
    const std::string dish = view_.names().dish(rule.dish_id());
    if (rule.rule() != v1::HARD_RULE_ALLERGEN)
      return absl::StrCat(dish, " also has ", safetyLimitNamed(rule.thing_id()),
                          " to keep, and that is never given up.");
    return absl::StrCat(dish, " must stay free of what a guest must not have and ",
                        view_.names().dish(rule.other_dish_id()), " holds; both use ",
                        view_.names().thing(rule.thing_id()), ", so never at once.");
  }

  std::vector<std::string> otherWords() const {
    std::vector<std::string> words;
    for (const v1::Wish& wish : clash_.wishes()) {
      if (wish.kind() == v1::WISH_KIND_COUNT) words.push_back(countWords(wish));
      if (wish.kind() == v1::WISH_KIND_HANDS) words.push_back(handsWords(wish));
      if (wish.kind() == v1::WISH_KIND_HOURS) words.push_back(hoursWords(wish));
      if (wish.kind() == v1::WISH_KIND_PINNED) words.push_back(pinWords(wish));
    }
    return words;
  }

  std::string countWords(const v1::Wish& wish) const {
    const std::string& id = wish.thing_id();
    if (id == "burners")
      return absl::StrCat(countWord(wish.count()), wish.count() == 1 ? " burner" : " burners");
    if (view_.names().place(id) != id)
      return absl::StrCat(wish.count(), " l of room in ", view_.names().place(id));
    return absl::StrCat("only ", countWord(wish.count()), " ", view_.names().thing(id));
  }

  std::string handsWords(const v1::Wish& wish) const {
    return absl::StrCat(countWord(wish.count()), wish.count() == 1 ? " cook" : " cooks");
  }

  std::string hoursWords(const v1::Wish& wish) const {
    const std::string cook = view_.names().cook(wish.thing_id());
    if (!wish.has_time()) return absl::StrCat(cook, " not asked outside their hours");
    return absl::StrCat(cook, " here only ",
                        view_.clock().spanWithDay(toTime(wish.time()), toTime(wish.until_time())));
  }

  std::string pinWords(const v1::Wish& wish) const {
    std::string words = absl::StrCat("“", view_.title(wish.step_id()), "”");
    if (wish.has_time()) absl::StrAppend(&words, " at ", view_.clock().dayHour(toTime(wish.time())));
    if (!wish.thing_id().empty()) absl::StrAppend(&words, " by ", view_.names().cook(wish.thing_id()));
    return words;
  }

  const PlanView& view_;
  const v1::Clash& clash_;
  std::vector<const v1::Wish*> served_;
};

}  // namespace

std::string wishClashText(const PlanView& view, const v1::Clash& clash) {
  return Story(view, clash).text();
}

std::string wishClashesText(const PlanView& view) {
  if (view.plan().clashes_size() == 0) return "";
  std::string text = view.section("What cannot all be had");
  for (const v1::Clash& clash : view.plan().clashes()) text += view.item("• ", wishClashText(view, clash));
  return text + view.paragraph("Leave out any one of them and the others can be had.");
}

}  // namespace suppertide::terminal
