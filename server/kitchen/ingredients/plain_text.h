// Small things done to text: cut, trimmed, compared without regard to case (ASCII).
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace suppertide::kitchen {

std::string lowerCase(std::string_view text);
std::string_view trimmed(std::string_view text);
std::string_view trimmedFront(std::string_view text);

// Parts between `separator`s, also the empty ones; never none.
std::vector<std::string_view> allParts(std::string_view text, char separator);
// Trimmed parts, without the empty ones.
std::vector<std::string_view> parts(std::string_view text, char separator);

bool beginsWith(std::string_view text, std::string_view start);
bool finishesWith(std::string_view text, std::string_view finish);
// Takes `start` from the front of `text`, whatever its case; false, with `text` as it was, when it isn't
// there.
bool takeFront(std::string_view& text, std::string_view start);

std::string joined(const std::vector<std::string>& words, std::string_view between);
// Spaces in a row become one, none at the ends.
std::string singleSpaced(std::string_view text);
std::string replaced(std::string text, std::string_view what, std::string_view with);

}  // namespace suppertide::kitchen
