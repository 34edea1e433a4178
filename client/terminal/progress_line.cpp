#include "client/terminal/progress_line.h"

#include <string>

#include "absl/strings/str_cat.h"
#include "client/terminal/text.h"

namespace suppertide::terminal {
namespace {

std::string wordsOf(const v1::MakePlanResponse& message) {
  std::string words = absl::StrCat("Planning, ", message.time_used().seconds(), " s");
  if (!message.has_quality()) return words;
  const v1::Quality& quality = message.quality();
  const v1::TierCosts& costs = quality.costs();
  absl::StrAppend(
      &words, ": ",
      costs.unserved() == 0 ? "all dishes served" : absl::StrCat(costs.unserved(), " not served yet"));
  if (costs.lateness() > 0) absl::StrAppend(&words, ", ", costs.lateness(), " min late");
  if (quality.optimal()) return absl::StrCat(words, ", proven best");
  return absl::StrCat(words, ", ", quality.proven_tier_count(), " of 7 goals proven best");
}

}  // namespace

ProgressLine::~ProgressLine() {
  if (shown_) environment_.err << "\r\x1b[K" << std::flush;
}

void ProgressLine::show(const v1::MakePlanResponse& message) {
  print(wordsOf(message));
}

void ProgressLine::show(const v1::FindRemediesResponse& message, int found) {
  print(absl::StrCat("Looking for remedies: ", message.tried_count(), " of ", message.candidate_count(),
                     " changes tried, ", found, " that help"));
}

void ProgressLine::print(const std::string& words) {
  if (!environment_.progressLine) return;
  environment_.err << "\r\x1b[K" << shortened(words, environment_.width - 1) << std::flush;
  shown_ = true;
}

}  // namespace suppertide::terminal
