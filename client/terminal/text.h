// Text in columns: widths of what is seen, padding, wrapping, style.
//
// Widths count columns of a terminal, not bytes: "crème" is 5 wide however its
// accents are encoded. Text from documents may hold anything; `plainLine` makes
// it safe to print.
#pragma once

#include <string>
#include <vector>

namespace suppertide::terminal {

// Columns that UTF-8 `text` takes. Combining marks take none, wide East Asian
// letters and emoji two; a byte that is not UTF-8 takes one.
int displayWidth(const std::string& text);

// One line without control characters: each becomes a space.
std::string plainLine(const std::string& text);

// Filled with spaces up to `width`; unchanged when wider.
std::string padRight(const std::string& text, int width);
std::string padLeft(const std::string& text, int width);

// Cut to `width` with "…" when wider.
std::string shortened(const std::string& text, int width);

// Lines of at most `width` columns, broken at spaces; a longer word is cut.
// Line breaks in the text stay. Empty text gives no line.
std::vector<std::string> wrap(const std::string& text, int width);
// The same as whole lines: `first` before the first, its width in spaces before the others.
std::string hanging(const std::string& first, const std::string& text, int width);

// "a", "a and b", "a, b and c".
std::string joinWords(const std::vector<std::string>& words);

// "1 dish", "3 dishes".
std::string counted(long long count, const std::string& one, const std::string& many);

std::string capitalised(std::string text);

// Emphasis, only where the output shows it. Never the only sign of anything.
class Style {
 public:
  explicit Style(bool colour) : colour_(colour) {}
  std::string heading(const std::string& text) const { return wrapped("1", text); }
  std::string strong(const std::string& text) const { return wrapped("1", text); }
  std::string quiet(const std::string& text) const { return wrapped("2", text); }
  std::string warning(const std::string& text) const { return wrapped("1;33", text); }

 private:
  std::string wrapped(const char* code, const std::string& text) const;
  bool colour_;
};

}  // namespace suppertide::terminal
