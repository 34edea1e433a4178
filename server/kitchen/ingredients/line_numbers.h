// Numbers as recipes write them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace suppertide::kitchen {

struct DoubtfulComma {
  double asThousands = 0;
  double asDecimals = 0;
};

struct ReadNumber {
  double value = 0;
  std::optional<double> most;  // "2-3", "2 to 3"
  // "1,500", "1.500": thousands in one country, decimals in the next. `value` takes the comma for thousands
  // and the point for decimals.
  std::optional<DoubtfulComma> doubtful;
};

// Takes a number from the front of `text`: 2, 2.5, 2,5, 1/2, 2 1/4, 2-3, "a",
// "half a", "three". Common fractions must be plain already (plainText). None,
// with `text` as it was, when there is none.
std::optional<ReadNumber> takeNumber(std::string_view& text);

// Fraction signs, dashes, odd spaces and bullets in plain letters: "2½" is "2 1/2".
std::string plainText(std::string_view text);

}  // namespace suppertide::kitchen
