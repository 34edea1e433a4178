// What is done to the shared shopping list from the command line.
#pragma once

#include "client/terminal/commands.h"
#include "client/terminal/event_task.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {

// The edits that the options ask for, lines by their names on `list`; `atHand` and `buyers` are those
// of `request`, noted for everybody with --keep. Empty: nothing is to be noted.
std::vector<v1::ShoppingEdit> shoppingEdits(const ShoppingCommand& command,
                                            const v1::MakeShoppingListRequest& request,
                                            const v1::MakeShoppingListResponse& list, Violations& mistakes);

// Whether any option asks for an edit.
bool asksForEdits(const ShoppingCommand& command);

// What is at hand and changes no line: nothing asks for it, or the table of ingredients cannot tell how much
// of a line it is. Asks the server once for each.
absl::StatusOr<std::vector<std::string>> uncountedAtHand(const EventTask& task,
                                                         const v1::MakeShoppingListRequest& request);

}  // namespace suppertide::terminal
