// The preferred irreducible subset of things that cannot all be (Junker, AAAI 2004).
#pragma once

#include <functional>
#include <utility>
#include <vector>

namespace suppertide::planning {

template <typename Item>
class QuickXplain {
 public:
  using Items = std::vector<Item>;
  // Whether these cannot all be. Of more things it must be true as well.
  using Conflicts = std::function<bool(const Items&)>;

  explicit QuickXplain(Conflicts conflicts) : conflicts_(std::move(conflicts)) {}

  // Of `items`, which conflict together with `background`, a smallest part that
  // still does; later ones are left out before earlier ones. Empty when the
  // background alone conflicts. About k log(n / k) questions for a part of k.
  Items explain(const Items& background, const Items& items) {
    if (conflicts_(background)) return {};
    return items.empty() ? Items{} : explain(background, false, items);
  }

 private:
  Items explain(const Items& background, bool grown, const Items& items) {
    if (grown && conflicts_(background)) return {};
    if (items.size() == 1) return items;
    const auto middle = items.begin() + static_cast<std::ptrdiff_t>(items.size() / 2);
    const Items first(items.begin(), middle);
    const Items second(middle, items.end());
    const Items fromSecond = explain(joined(background, first), true, second);
    const Items fromFirst = explain(joined(background, fromSecond), !fromSecond.empty(), first);
    return joined(fromFirst, fromSecond);
  }

  static Items joined(Items a, const Items& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
  }

  Conflicts conflicts_;
};

}  // namespace suppertide::planning
