#include "client/terminal/shopping_notes.h"

#include <algorithm>

#include "absl/strings/ascii.h"
#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"

namespace suppertide::terminal {
namespace {

std::string lower(const std::string& text) {
  return absl::AsciiStrToLower(text);
}

// By id or name; else the only line with these words in its name.
const v1::ShoppingItem* lineOf(const v1::MakeShoppingListResponse& list, const std::string& wanted) {
  const v1::ShoppingItem* part = nullptr;
  int parts = 0;
  for (const v1::ShoppingItem& item : list.items()) {
    if (item.id() == wanted || lower(item.name()) == lower(wanted)) return &item;
    if (!absl::StrContains(lower(item.name()), lower(wanted))) continue;
    part = &item;
    ++parts;
  }
  return parts == 1 ? part : nullptr;
}

class Edits {
 public:
  Edits(const v1::MakeShoppingListResponse& list, Violations& mistakes) : list_(list), mistakes_(mistakes) {}

  void tick(const std::string& wanted) {
    if (const v1::ShoppingItem* line = find("--tick", wanted))
      edits_.emplace_back().mutable_tick()->set_item_id(line->id());
  }
  void untick(const std::string& wanted) {
    for (const v1::Tick& tick : list_.needless_ticks())
      if (tick.item_id() == wanted || lower(tick.name()) == lower(wanted)) {
        edits_.emplace_back().set_untick_item_id(tick.item_id());
        return;
      }
    if (const v1::ShoppingItem* line = find("--untick", wanted))
      edits_.emplace_back().set_untick_item_id(line->id());
  }
  void add(const std::string& text) {
    v1::OwnItem& own = *edits_.emplace_back().mutable_own_item();
    own.set_id(link::newRequestId());
    own.set_name(text);
  }
  void drop(const std::string& wanted) {
    constexpr std::string_view kOwn = "own:";
    const v1::ShoppingItem* line = find("--drop", wanted);
    if (line == nullptr) return;
    if (line->own())
      edits_.emplace_back().set_no_own_item_id(line->id().substr(kOwn.size()));
    else
      wrong("--drop", wanted, "a recipe asks for it; only lines that were added can be dropped");
  }
  std::vector<v1::ShoppingEdit>& list() { return edits_; }

 private:
  const v1::ShoppingItem* find(const char* option, const std::string& wanted) {
    const v1::ShoppingItem* line = lineOf(list_, wanted);
    if (line == nullptr)
      wrong(option, wanted, "must be one line of the list, by its name or its id (--json shows ids)");
    return line;
  }
  void wrong(const std::string& option, const std::string& value, const std::string& allowed) {
    v1::FieldViolation& violation = mistakes_.emplace_back();
    violation.set_field_path(option);
    violation.set_value(value);
    violation.set_description(allowed);
  }

  const v1::MakeShoppingListResponse& list_;
  Violations& mistakes_;
  std::vector<v1::ShoppingEdit> edits_;
};

}  // namespace

bool asksForEdits(const ShoppingCommand& command) {
  return command.keep || !command.ticks.empty() || !command.unticks.empty() || !command.added.empty() ||
         !command.dropped.empty() || !command.usedUp.empty() || !command.packets.empty();
}

std::vector<v1::ShoppingEdit> shoppingEdits(const ShoppingCommand& command,
                                            const v1::MakeShoppingListRequest& request,
                                            const v1::MakeShoppingListResponse& list, Violations& mistakes) {
  Edits edits(list, mistakes);
  for (const std::string& name : command.usedUp) edits.list().emplace_back().set_not_at_hand_name(name);
  if (command.keep) {
    for (const v1::AtHand& one : request.at_hand()) *edits.list().emplace_back().mutable_at_hand() = one;
    for (const v1::Buyer& buyer : request.buyers()) *edits.list().emplace_back().mutable_buyer() = buyer;
  }
  for (const std::string& text : command.added) edits.add(text);
  for (const std::string& name : command.ticks) edits.tick(name);
  for (const std::string& name : command.unticks) edits.untick(name);
  for (const std::string& name : command.dropped) edits.drop(name);
  return std::move(edits.list());
}

absl::StatusOr<std::vector<std::string>> uncountedAtHand(const EventTask& task,
                                                         const v1::MakeShoppingListRequest& request) {
  std::vector<std::string> names;
  for (const v1::AtHand& there : request.at_hand()) {
    // Instead of all that was noted: what a line takes, it takes from this.
    v1::MakeShoppingListRequest one = request;
    one.clear_at_hand();
    *one.add_at_hand() = there;
    const auto list = task.connection.session->makeShoppingList(one);
    if (!list.ok()) return list.status();
    if (std::none_of(list->items().begin(), list->items().end(),
                     [](const v1::ShoppingItem& item) { return item.has_at_hand(); }))
      names.push_back(there.name());
  }
  return names;
}

}  // namespace suppertide::terminal
