#include "client/words/progress_reading.h"

#include <set>

namespace suppertide {
namespace {

Instant happened(const v1::Report& report) {
  const auto& time = report.has_happen_time() ? report.happen_time() : report.receive_time();
  return Instant(std::chrono::seconds(time.seconds()));
}

}  // namespace

ProgressReading::ProgressReading(const v1::Progress& progress) {
  std::set<std::string> undone;
  for (const v1::Report& report : progress.reports())
    if (report.what_case() == v1::Report::kUndoneReportId) undone.insert(report.undone_report_id());
  for (const v1::Report& report : progress.reports()) {
    if (report.what_case() == v1::Report::kUndoneReportId || undone.contains(report.id())) continue;
    reports_.push_back(&report);
    read(report);
  }
}

void ProgressReading::read(const v1::Report& report) {
  if (report.step_id().empty()) return;
  StepProgress& step = steps_[report.dish_id() + "/" + report.step_id()];
  const Instant when = happened(report);
  switch (report.what_case()) {
    case v1::Report::kStarted:
      step.started = when;
      if (!step.ended) step.state = StepProgress::State::kUnderWay;
      break;
    case v1::Report::kFinished:
      step.ended = when;
      step.state = StepProgress::State::kDone;
      break;
    case v1::Report::kSkipped:
      step.ended = when;
      step.state = StepProgress::State::kSkipped;
      break;
    case v1::Report::kHandedToMemberId:
      step.handedToMemberId = report.handed_to_member_id();
      break;
    default:
      break;
  }
  if (!report.note().empty()) step.notes.push_back(report.note());
}

const StepProgress& ProgressReading::of(const std::string& plannedId) const {
  static const StepProgress kNothing;
  const auto found = steps_.find(plannedId);
  return found == steps_.end() ? kNothing : found->second;
}

bool ProgressReading::isOver(const std::string& plannedId) const {
  return of(plannedId).ended.has_value();
}

const v1::Report* ProgressReading::lastOf(const std::string& memberId) const {
  for (auto report = reports_.rbegin(); report != reports_.rend(); ++report)
    if ((*report)->member_id() == memberId) return *report;
  return nullptr;
}

std::vector<const v1::Report*> ProgressReading::reportsOf(const std::string& plannedId) const {
  std::vector<const v1::Report*> found;
  for (const v1::Report* report : reports_)
    if (report->dish_id() + "/" + report->step_id() == plannedId) found.push_back(report);
  return found;
}

}  // namespace suppertide
