#include "server/bread/formula_edit.h"

#include <algorithm>
#include <cmath>

#include "absl/status/status.h"
#include "absl/strings/str_cat.h"

namespace suppertide::bread {
namespace {

bool isFlour(const Ingredient& line) {
  return line.role == Role::kFlour;
}

double sumPercent(const Making& making) {
  double sum = 0;
  for (const Ingredient& line : making.lines) sum += line.percent;
  return sum;
}

absl::Status refusal(const std::string& line, const std::string& why) {
  return absl::InvalidArgumentError(absl::StrCat("formula: ", line, ": ", why));
}

// Where the one line of that name is.
absl::StatusOr<std::size_t> find(const Making& making, const std::string& name) {
  const auto named = [&](const Ingredient& line) { return line.name == name; };
  const auto count = std::count_if(making.lines.begin(), making.lines.end(), named);
  if (count == 0) return refusal(name, "there is no such line");
  if (count > 1) return refusal(name, absl::StrCat("there are ", count, " lines of that name"));
  return static_cast<std::size_t>(std::find_if(making.lines.begin(), making.lines.end(), named) -
                                  making.lines.begin());
}

absl::Status checkAmount(const std::string& line, double amount) {
  if (std::isfinite(amount) && amount >= 0) return absl::OkStatus();
  return refusal(line, absl::StrCat("amount ", amount, " is not 0 or more"));
}

// The same flour in grams as before, whatever the percentages add up to now.
Making onSameFlour(const Making& before, Making after) {
  after.doughGrams = before.doughGrams * sumPercent(after) / sumPercent(before);
  return after;
}

// Makes the flours but `kept` fill what it leaves of 100; in proportion, evenly where they were nothing.
absl::Status fillFlours(Making& making, std::size_t kept) {
  const double left = 100 - making.lines[kept].percent;
  double others = 0;
  std::size_t count = 0;
  for (std::size_t i = 0; i < making.lines.size(); ++i) {
    if (i == kept || !isFlour(making.lines[i])) continue;
    others += making.lines[i].percent;
    ++count;
  }
  const std::string& name = making.lines[kept].name;
  if (left < -1e-9)
    return refusal(name, absl::StrCat(making.lines[kept].percent, " % is more than all flour"));
  if (count == 0 && left > kFlourSumTolerance)
    return refusal(name, "it is the only flour, so it is all of the 100 %");
  for (std::size_t i = 0; i < making.lines.size(); ++i) {
    if (i == kept || !isFlour(making.lines[i])) continue;
    making.lines[i].percent = others > 0 ? making.lines[i].percent * std::max(0.0, left) / others
                                         : std::max(0.0, left) / static_cast<double>(count);
  }
  return absl::OkStatus();
}

absl::StatusOr<Making> setPercent(const Making& making, std::size_t at, double percent) {
  Making after = making;
  after.lines[at].percent = percent;
  if (isFlour(after.lines[at]))
    if (absl::Status status = fillFlours(after, at); !status.ok()) return status;
  return onSameFlour(making, std::move(after));
}

}  // namespace

double flourGrams(const Making& making) {
  return making.doughGrams * 100 / sumPercent(making);
}

std::vector<double> gramsOf(const Making& making) {
  std::vector<double> grams;
  for (const Ingredient& line : making.lines) grams.push_back(flourGrams(making) * line.percent / 100);
  return grams;
}

double shownGrams(double grams) {
  return grams < 10 ? std::round(grams * 10) / 10 : std::round(grams);
}

double shownPercent(double percent) {
  return percent < 10 ? std::round(percent * 100) / 100 : std::round(percent * 10) / 10;
}

absl::StatusOr<Making> withPercent(const Making& making, const std::string& line, double percent) {
  const auto at = find(making, line);
  if (!at.ok()) return at.status();
  if (absl::Status status = checkAmount(line, percent); !status.ok()) return status;
  if (shownPercent(making.lines[*at].percent) == percent) return making;
  return setPercent(making, *at, percent);
}

absl::StatusOr<Making> withGrams(const Making& making, const std::string& line, double grams) {
  const auto at = find(making, line);
  if (!at.ok()) return at.status();
  if (absl::Status status = checkAmount(line, grams); !status.ok()) return status;
  std::vector<double> all = gramsOf(making);
  if (shownGrams(all[*at]) == grams) return making;
  all[*at] = grams;
  double flour = 0, sum = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    sum += all[i];
    if (isFlour(making.lines[i])) flour += all[i];
  }
  if (!(flour > 0)) return refusal(line, "no flour would be left");
  Making after = making;
  for (std::size_t i = 0; i < all.size(); ++i) after.lines[i].percent = all[i] / flour * 100;
  after.doughGrams = sum;
  return after;
}

absl::StatusOr<Making> without(const Making& making, const std::string& line) {
  const auto at = find(making, line);
  if (!at.ok()) return at.status();
  auto after = setPercent(making, *at, 0);
  if (!after.ok()) return after.status();
  after->lines.erase(after->lines.begin() + static_cast<std::ptrdiff_t>(*at));
  return after;
}

absl::StatusOr<Making> withLine(const Making& making, const Ingredient& line) {
  for (const Ingredient& there : making.lines)
    if (there.name == line.name) return refusal(line.name, "there is a line of that name already");
  if (absl::Status status = checkAmount(line.name, line.percent); !status.ok()) return status;
  Making wider = making;
  wider.lines.push_back(line);
  wider.lines.back().percent = 0;
  return setPercent(wider, wider.lines.size() - 1, line.percent);
}

}  // namespace suppertide::bread
