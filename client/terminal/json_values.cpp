#include "client/terminal/json_values.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"

namespace suppertide::terminal {
namespace {

using Kind = JsonValue::Kind;
constexpr int kFurthestTypo = 2;

// Letters to add, drop or change to get from one name to the other.
int distance(const std::string& a, const std::string& b) {
  std::vector<int> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = static_cast<int>(j);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    int diagonal = row[0];
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const int changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, changed});
    }
  }
  return row[b.size()];
}

}  // namespace

std::optional<double> numberOf(const JsonValue& value) {
  double number = 0;
  switch (value.kind) {
    case Kind::kInteger:
      return static_cast<double>(value.integer);
    case Kind::kUnsigned:
      return static_cast<double>(value.natural);
    case Kind::kReal:
      number = value.real;
      break;
    case Kind::kText:
      if (!absl::SimpleAtod(value.text, &number)) return std::nullopt;
      break;
    default:
      return std::nullopt;
  }
  if (!std::isfinite(number)) return std::nullopt;
  return number;
}

template <typename Integer>
std::optional<Integer> integerOf(const JsonValue& value) {
  Integer number = 0;
  switch (value.kind) {
    case Kind::kInteger:
      if (value.integer < 0 && std::numeric_limits<Integer>::min() == 0) return std::nullopt;
      if (!absl::SimpleAtoi(absl::StrCat(value.integer), &number)) return std::nullopt;
      return number;
    case Kind::kUnsigned:
      if (!absl::SimpleAtoi(absl::StrCat(value.natural), &number)) return std::nullopt;
      return number;
    case Kind::kText:
      if (!absl::SimpleAtoi(value.text, &number)) return std::nullopt;
      return number;
    case Kind::kReal:
      if (value.real != std::floor(value.real) || std::fabs(value.real) > 9e15 ||
          !absl::SimpleAtoi(absl::StrCat(static_cast<std::int64_t>(value.real)), &number)) {
        return std::nullopt;
      }
      return number;
    default:
      return std::nullopt;
  }
}

template std::optional<std::int32_t> integerOf(const JsonValue& value);
template std::optional<std::int64_t> integerOf(const JsonValue& value);
template std::optional<std::uint32_t> integerOf(const JsonValue& value);
template std::optional<std::uint64_t> integerOf(const JsonValue& value);

std::string nearest(const std::string& name, const std::vector<std::string>& names) {
  std::string best;
  int least = kFurthestTypo + 1;
  for (const std::string& candidate : names) {
    const int d = distance(name, candidate);
    if (d < least) {
      least = d;
      best = candidate;
    }
  }
  return best;
}

}  // namespace suppertide::terminal
