#include "tests/support/psplib/bounds.h"

#include <vector>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "absl/strings/string_view.h"
#include "absl/strings/strip.h"

namespace suppertide::planning::psplib {
namespace {

bool readOptimum(absl::string_view text, Bounds& bounds) {
  bounds.unsat = text == "unsat";
  if (bounds.unsat) return true;
  const std::vector<absl::string_view> ends = absl::StrSplit(text, absl::MaxSplits("..", 1));
  return absl::SimpleAtoi(ends.front(), &bounds.lower) && absl::SimpleAtoi(ends.back(), &bounds.upper);
}

bool readField(absl::string_view column, absl::string_view text, Bounds& bounds) {
  if (column == "optimum") return readOptimum(text, bounds);
  if (column == "lower") return absl::SimpleAtoi(text, &bounds.lower);
  if (column == "upper") return absl::SimpleAtoi(text, &bounds.upper);
  return true;
}

std::string nameOf(absl::string_view field) {
  return std::string(field.substr(0, field.find('.')));
}

}  // namespace

absl::StatusOr<std::map<std::string, Bounds>> readBounds(std::istream& in) {
  std::map<std::string, Bounds> all;
  std::string line;
  std::getline(in, line);
  absl::StripTrailingAsciiWhitespace(&line);
  const std::vector<std::string> columns = absl::StrSplit(line, ',');
  while (std::getline(in, line)) {
    absl::StripTrailingAsciiWhitespace(&line);
    if (line.empty()) continue;
    const std::vector<absl::string_view> fields = absl::StrSplit(line, ',');
    Bounds bounds;
    bool good = fields.size() == columns.size();
    for (std::size_t f = 1; good && f < fields.size(); ++f) good = readField(columns[f], fields[f], bounds);
    if (!good) return absl::InvalidArgumentError(absl::StrCat("read bounds: line `", line, "` is broken"));
    all[nameOf(fields.front())] = bounds;
  }
  return all;
}

}  // namespace suppertide::planning::psplib
