// What differs between two states of a household, in words.
#pragma once

#include <string>
#include <vector>

#include "client/link/replica.h"

namespace suppertide::terminal {

struct ChangeLine {
  std::string kind;  // "event", "report", ...
  std::string id;    // of the document
  std::string text;  // what was done: "changed the event Midsummer supper"
};

// One line a changed document; for progress one line a new report. Empty when nothing differs.
std::vector<ChangeLine> changesBetween(const link::Replica& before, const link::Replica& after);

}  // namespace suppertide::terminal
