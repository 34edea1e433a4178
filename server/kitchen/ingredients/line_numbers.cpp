#include "server/kitchen/ingredients/line_numbers.h"

#include <array>
#include <charconv>
#include <utility>

#include "server/kitchen/ingredients/plain_text.h"

namespace suppertide::kitchen {
namespace {

bool isDigit(char letter) {
  return letter >= '0' && letter <= '9';
}

void skipSpaces(std::string_view& text) {
  text = trimmedFront(text);
}

std::string_view takeDigits(std::string_view& text) {
  std::size_t length = 0;
  while (length < text.size() && length < 9 && isDigit(text[length])) ++length;
  const std::string_view digits = text.substr(0, length);
  text.remove_prefix(length);
  return digits;
}

double valueOf(std::string_view digits) {
  double value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

// "1/2" at the front; leaves `text` alone when it isn't one.
std::optional<double> takeFraction(std::string_view& text) {
  std::string_view rest = text;
  const std::string_view above = takeDigits(rest);
  if (above.empty() || !takeFront(rest, "/")) return std::nullopt;
  const std::string_view below = takeDigits(rest);
  if (below.empty() || valueOf(below) == 0) return std::nullopt;
  text = rest;
  return valueOf(above) / valueOf(below);
}

// One number in figures, with a fraction or decimals behind it.
std::optional<double> takeFigures(std::string_view& text, std::optional<DoubtfulComma>& doubtful) {
  if (const auto fraction = takeFraction(text)) return fraction;
  std::string_view rest = text;
  const std::string_view whole = takeDigits(rest);
  if (whole.empty()) return std::nullopt;
  double value = valueOf(whole);
  if (rest.size() > 1 && (rest[0] == '.' || rest[0] == ',') && isDigit(rest[1])) {
    const bool comma = rest[0] == ',';
    rest.remove_prefix(1);
    const std::string_view decimals = takeDigits(rest);
    value = valueOf(std::string(whole) + "." + std::string(decimals));
    if (decimals.size() == 3 && whole != "0") {
      doubtful = {valueOf(std::string(whole) + std::string(decimals)), value};
      if (comma) value = doubtful->asThousands;
    }
    text = rest;
    return value;
  }
  std::string_view behind = rest;
  skipSpaces(behind);
  if (const auto fraction = takeFraction(behind)) {
    value += *fraction;
    rest = behind;
  }
  text = rest;
  return value;
}

constexpr std::array<std::pair<std::string_view, double>, 17> kWords = {{{"half a ", 0.5},
                                                                         {"half an ", 0.5},
                                                                         {"a half ", 0.5},
                                                                         {"half ", 0.5},
                                                                         {"an ", 1},
                                                                         {"a ", 1},
                                                                         {"one ", 1},
                                                                         {"two ", 2},
                                                                         {"three ", 3},
                                                                         {"four ", 4},
                                                                         {"five ", 5},
                                                                         {"six ", 6},
                                                                         {"seven ", 7},
                                                                         {"eight ", 8},
                                                                         {"nine ", 9},
                                                                         {"ten ", 10},
                                                                         {"twelve ", 12}}};

std::optional<double> takeWord(std::string_view& text) {
  for (const auto& [word, value] : kWords)
    if (beginsWith(text, word) && !beginsWith(text, "a little ") && !beginsWith(text, "half and half") &&
        !beginsWith(text, "a few ")) {
      text.remove_prefix(word.size());
      return value;
    }
  return std::nullopt;
}

// The upper end: "-3", "to 3".
std::optional<double> takeMost(std::string_view& text) {
  std::string_view rest = text;
  skipSpaces(rest);
  if (!takeFront(rest, "-") && !takeFront(rest, "to ")) return std::nullopt;
  skipSpaces(rest);
  std::optional<DoubtfulComma> doubtful;
  const auto most = takeFigures(rest, doubtful);
  if (most) text = rest;
  return most;
}

constexpr std::array<std::pair<std::string_view, std::string_view>, 27> kPlain = {
    {{"½", " 1/2"}, {"⅓", " 1/3"},   {"⅔", " 2/3"},   {"¼", " 1/4"},   {"¾", " 3/4"}, {"⅛", " 1/8"},
     {"⅜", " 3/8"}, {"⅝", " 5/8"},   {"⅞", " 7/8"},   {"⅕", " 1/5"},   {"⅖", " 2/5"}, {"⅗", " 3/5"},
     {"⅘", " 4/5"}, {"⅙", " 1/6"},   {"⅚", " 5/6"},   {"⁄", "/"},      {"–", "-"},    {"—", "-"},
     {"−", "-"},    {"\u00a0", " "}, {"\u202f", " "}, {"\u2009", " "}, {"\t", " "},   {"×", "x"},
     {"\n", " "},   {"\r", " "},     {"’", "'"}}};

}  // namespace

std::optional<ReadNumber> takeNumber(std::string_view& text) {
  skipSpaces(text);
  ReadNumber number;
  std::string_view rest = text;
  auto value = takeFigures(rest, number.doubtful);
  if (!value) value = takeWord(rest);
  if (!value) return std::nullopt;
  number.value = *value;
  const std::string_view before = rest;
  if (const auto most = takeMost(rest); most && *most > number.value)
    number.most = most;
  else
    rest = before;
  text = rest;
  return number;
}

std::string plainText(std::string_view text) {
  std::string plain(text);
  for (const auto& [sign, letters] : kPlain) plain = replaced(std::move(plain), sign, letters);
  std::string_view rest = trimmed(plain);
  for (const std::string_view bullet : {"- ", "* ", "• ", "· "})
    if (takeFront(rest, bullet)) break;
  return singleSpaced(rest);
}

}  // namespace suppertide::kitchen
