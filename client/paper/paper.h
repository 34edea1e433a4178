// Pages for the kitchen wall, as PDF: large type, a page each where it fits.
//
// Only sets what it is given: the words are the caller's, in any language and direction.
#pragma once

#include <string>
#include <vector>

#include "absl/status/statusor.h"

namespace suppertide::paper {

enum class Size { kA4, kLetter };

// One thing to do, or one row of a list.
struct Item {
  std::string lead;  // beside it, large: a time; may be empty
  std::string title;
  std::vector<std::string> details;   // smaller, below
  std::vector<std::string> warnings;  // set off: heat, raw food, allergens
  bool box = false;                   // with a box to tick
};

struct Part {
  std::string title;  // may be empty
  std::vector<Item> items;
};

// Begins on a page of its own; set smaller, down to a limit, to fit on one.
struct Sheet {
  std::string title;
  std::string subtitle;
  std::vector<Part> parts;
};

// The PDF's bytes; `pages` gets their number, if given. Internal when no font can be had. Cost: some ms a
// page.
absl::StatusOr<std::string> pdfOf(const std::vector<Sheet>& sheets, Size size, int* pages = nullptr);

}  // namespace suppertide::paper
