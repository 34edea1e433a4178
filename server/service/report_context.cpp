#include "server/service/report_context.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/compose/seen_doughs.h"

namespace suppertide::service {
namespace {

using What = v1::Report::WhatCase;

bool sameStep(const v1::Report& a, const v1::Report& b) {
  return a.dish_id() == b.dish_id() && a.step_id() == b.step_id();
}

// Where a step stands by it.
bool isStage(What what) {
  return what == What::kStarted || what == What::kFinished || what == What::kSkipped;
}

class Appending {
 public:
  Appending(const ReportContext& context, v1::Progress& progress) : context_(context), progress_(progress) {
    for (const v1::Report& report : progress.reports()) {
      known_.insert(report.id());
      if (report.what_case() == What::kUndoneReportId) undone_.insert(report.undone_report_id());
    }
  }

  compose::Violations take(const v1::AddReportsRequest& asked, const std::string& memberId) {
    const std::int64_t now = context_.now.time_since_epoch().count();
    for (int r = 0; r < asked.reports_size(); ++r) {
      v1::Report report = asked.reports(r);
      if (known_.count(report.id()) > 0) continue;
      path_ = absl::StrCat("reports[", r, "].");
      if (report.member_id().empty()) report.set_member_id(memberId);
      if (!report.has_happen_time()) report.mutable_happen_time()->set_seconds(now);
      report.clear_receive_time();
      report.mutable_receive_time()->set_seconds(now);
      report.clear_agrees_with_report_id();
      check(report);
      add(std::move(report));
    }
    return std::move(found_);
  }
  int added() const { return added_; }

 private:
  void say(const char* field, const std::string& value, const std::string& allowed) {
    v1::FieldViolation violation;
    violation.set_field_path(path_ + field);
    violation.set_value(value.substr(0, 64));
    violation.set_description(allowed);
    found_.push_back(std::move(violation));
  }

  void check(const v1::Report& report) {
    checkStep(report);
    const std::int64_t latest = (context_.now + kClockAhead).time_since_epoch().count();
    if (report.happen_time().seconds() > latest)
      say("happenTime", absl::StrCat(report.happen_time().seconds(), " s"),
          "must not lie in the future: set the device's clock, or leave the time out");
    if (report.what_case() == What::kUndoneReportId) checkUndo(report);
    checkOrder(report);
  }

  void checkStep(const v1::Report& report) {
    if (report.dish_id().empty()) {
      if (report.what_case() != What::kUndoneReportId && report.what_case() != What::WHAT_NOT_SET)
        say("dishId", "", "must say which dish it is");
      return;
    }
    const auto& dishes = context_.event.dishes();
    const auto dish = std::find_if(dishes.begin(), dishes.end(),
                                   [&](const v1::Dish& d) { return d.id() == report.dish_id(); });
    if (dish == dishes.end()) return say("dishId", report.dish_id(), "must be a dish of the event");
    if (report.what_case() == What::kLeftOverServingCount) {
      if (!report.step_id().empty())
        say("stepId", report.step_id(), "must be empty: a dish is left over, no step");
      return;
    }
    if (report.step_id().empty()) {
      if (report.what_case() != What::WHAT_NOT_SET && report.what_case() != What::kUndoneReportId)
        say("stepId", "", "must say which step of the dish it is");
      return;
    }
    if (!isPlanned(report) && context_.stepsOfRecipe(dish->recipe_id()).count(report.step_id()) == 0)
      say("stepId", report.step_id(), "must be a step of the dish, as its plan or recipe has it");
  }

  bool isPlanned(const v1::Report& report) const {
    if (context_.plan == nullptr) return false;
    return std::any_of(context_.plan->steps().begin(), context_.plan->steps().end(),
                       [&](const v1::PlannedStep& step) {
                         return step.dish_id() == report.dish_id() && step.step_id() == report.step_id();
                       });
  }

  void checkUndo(const v1::Report& report) {
    const std::string& id = report.undone_report_id();
    if (undone_.count(id) > 0) return say("undoneReportId", id, "was taken back already");
    const auto& all = progress_.reports();
    const auto target =
        std::find_if(all.begin(), all.end(), [&](const v1::Report& r) { return r.id() == id; });
    if (target == all.end()) return say("undoneReportId", id, "must be a report of this event");
    if (target->what_case() == What::kUndoneReportId)
      say("undoneReportId", id, "is itself an undo: report anew what it took back");
  }

  // Of a step that stands as begun or ended.
  void checkOrder(const v1::Report& report) {
    const What what = report.what_case();
    if (what != What::kStarted && what != What::kFinished) return;
    for (const v1::Report* told : compose::standingReports(progress_)) {
      if (!sameStep(*told, report)) continue;
      if (what == What::kFinished && told->what_case() == What::kStarted &&
          report.happen_time().seconds() < told->happen_time().seconds())
        say("happenTime", absl::StrCat(report.happen_time().seconds(), " s"),
            "must not lie before the step was started, as reported; take that back first if it is wrong");
      if (what == What::kStarted && told->what_case() == What::kFinished &&
          report.happen_time().seconds() > told->happen_time().seconds())
        say("happenTime", absl::StrCat(report.happen_time().seconds(), " s"),
            "must not lie after the step was finished, as reported; take that back first if it is wrong");
    }
  }

  // The standing report that says the same; what was said in between by others counts.
  std::string agreesWith(const v1::Report& report) const {
    if (!isStage(report.what_case()) && report.what_case() != What::kHandedToMemberId) return "";
    const bool stage = isStage(report.what_case());
    const v1::Report* last = nullptr;
    for (const v1::Report* told : compose::standingReports(progress_))
      if (sameStep(*told, report) &&
          (stage ? isStage(told->what_case()) : told->what_case() == report.what_case()))
        last = told;
    const bool same = last != nullptr && last->what_case() == report.what_case() &&
                      last->handed_to_member_id() == report.handed_to_member_id();
    return same ? last->id() : "";
  }

  void add(v1::Report report) {
    report.set_agrees_with_report_id(agreesWith(report));
    known_.insert(report.id());
    if (report.what_case() == What::kUndoneReportId) undone_.insert(report.undone_report_id());
    *progress_.add_reports() = std::move(report);
    ++added_;
  }

  const ReportContext& context_;
  v1::Progress& progress_;
  std::set<std::string> known_;
  std::set<std::string> undone_;
  compose::Violations found_;
  std::string path_;
  int added_ = 0;
};

}  // namespace

compose::Violations appendReports(const v1::AddReportsRequest& asked, const std::string& memberId,
                                  const ReportContext& context, v1::Progress& progress, int& added) {
  Appending appending(context, progress);
  auto found = appending.take(asked, memberId);
  added = appending.added();
  return found;
}

}  // namespace suppertide::service
