#include "client/terminal/text.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdint>

namespace suppertide::terminal {
namespace {

struct Range {
  std::uint32_t first;
  std::uint32_t last;
};
// Unicode blocks of combining marks and invisible signs.
constexpr std::array<Range, 8> kZeroWide = {{{0x0300, 0x036f},
                                             {0x1ab0, 0x1aff},
                                             {0x1dc0, 0x1dff},
                                             {0x200b, 0x200f},
                                             {0x202a, 0x202e},
                                             {0x20d0, 0x20ff},
                                             {0xfe00, 0xfe0f},
                                             {0xfe20, 0xfe2f}}};
// Unicode blocks that terminals draw two columns wide.
constexpr std::array<Range, 9> kTwoWide = {{{0x1100, 0x115f},
                                            {0x2e80, 0x303e},
                                            {0x3041, 0x33ff},
                                            {0x3400, 0x9fff},
                                            {0xac00, 0xd7a3},
                                            {0xf900, 0xfaff},
                                            {0xff00, 0xff60},
                                            {0x1f300, 0x1faff},
                                            {0x20000, 0x3fffd}}};

template <std::size_t size>
bool inRanges(const std::array<Range, size>& ranges, std::uint32_t letter) {
  return std::any_of(ranges.begin(), ranges.end(),
                     [letter](Range r) { return letter >= r.first && letter <= r.last; });
}

int widthOf(std::uint32_t letter) {
  if (inRanges(kZeroWide, letter)) return 0;
  return inRanges(kTwoWide, letter) ? 2 : 1;
}

// The letter at `at`; moves `at` behind it. A stray byte stands for itself.
std::uint32_t nextLetter(const std::string& text, std::size_t& at) {
  const auto byte = [&](std::size_t i) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(text[i]));
  };
  const std::uint32_t first = byte(at);
  const std::size_t more = first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : first >= 0xc0 ? 1 : 0;
  std::uint32_t letter = more == 0 ? first : first & (0x3fU >> more);
  ++at;
  for (std::size_t i = 0; i < more && at < text.size() && (byte(at) & 0xc0U) == 0x80U; ++i, ++at) {
    letter = letter << 6 | (byte(at) & 0x3fU);
  }
  return letter;
}

// Appends one word to the lines, cutting it when it is wider than a line.
void placeWord(std::string word, int width, std::string& line, std::vector<std::string>& lines) {
  if (!line.empty() && displayWidth(line) + 1 + displayWidth(word) > width) {
    lines.push_back(std::move(line));
    line.clear();
  }
  while (displayWidth(word) > width) {
    std::size_t at = 0;
    std::size_t fits = 0;
    int used = 0;
    while (at < word.size()) {
      used += widthOf(nextLetter(word, at));
      if (used > width && fits > 0) break;
      fits = at;
    }
    lines.push_back(word.substr(0, fits));
    word.erase(0, fits);
  }
  if (!line.empty()) line += ' ';
  line += word;
}

void wrapParagraph(const std::string& text, int width, std::vector<std::string>& lines) {
  std::string line;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t start = text.find_first_not_of(' ', at);
    if (start == std::string::npos) break;
    const std::size_t limit = std::min(text.find(' ', start), text.size());
    placeWord(text.substr(start, limit - start), width, line, lines);
    at = limit;
  }
  if (!line.empty()) lines.push_back(line);
}

}  // namespace

int displayWidth(const std::string& text) {
  int width = 0;
  for (std::size_t at = 0; at < text.size();) width += widthOf(nextLetter(text, at));
  return width;
}

std::string plainLine(const std::string& text) {
  std::string line;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    const std::uint32_t letter = nextLetter(text, at);
    // C0, DEL and C1: the signs that steer a terminal.
    const bool steers = letter < 0x20 || (letter >= 0x7f && letter < 0xa0);
    line += steers ? " " : text.substr(start, at - start);
  }
  return line;
}

std::string padRight(const std::string& text, int width) {
  return text + std::string(static_cast<std::size_t>(std::max(0, width - displayWidth(text))), ' ');
}

std::string padLeft(const std::string& text, int width) {
  return std::string(static_cast<std::size_t>(std::max(0, width - displayWidth(text))), ' ') + text;
}

std::string shortened(const std::string& text, int width) {
  if (displayWidth(text) <= width) return text;
  std::string start;
  int used = 0;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t from = at;
    used += widthOf(nextLetter(text, at));
    if (used > width - 1) break;
    start += text.substr(from, at - from);
  }
  return start + "…";
}

std::vector<std::string> wrap(const std::string& text, int width) {
  std::vector<std::string> lines;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t limit = std::min(text.find('\n', at), text.size());
    wrapParagraph(text.substr(at, limit - at), std::max(1, width), lines);
    at = limit + 1;
  }
  return lines;
}

std::string hanging(const std::string& first, const std::string& text, int width) {
  std::string lines;
  const std::string rest(static_cast<std::size_t>(displayWidth(first)), ' ');
  for (const std::string& line : wrap(text, width - displayWidth(first))) {
    lines += lines.empty() ? first : rest;
    lines += line + "\n";
  }
  return lines;
}

std::string joinWords(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " and " : ", ";
    text += words[i];
  }
  return text;
}

std::string counted(long long count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string capitalised(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text;
}

std::string Style::wrapped(const char* code, const std::string& text) const {
  if (!colour_ || text.empty()) return text;
  return std::string("\x1b[") + code + "m" + text + "\x1b[0m";
}

}  // namespace suppertide::terminal
