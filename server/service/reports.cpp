#include "server/service/reports.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "server/base/ids.h"
#include "server/service/documents.h"
#include "server/service/text.h"

namespace suppertide::service {
namespace {

constexpr int kMostReportsAtOnce = 100;
constexpr int kMostNote = 500;
constexpr std::int64_t kMostDelaySeconds = 7 * 24 * 3600;
constexpr std::int64_t kMostMoreSeconds = 24 * 3600;
// Years 1 to 9999, as the JSON mapping can tell.
constexpr std::int64_t kFirstSecond = -62'135'596'800;
constexpr std::int64_t kLastSecond = 253'402'300'799;

class ReportChecker {
 public:
  ReportChecker(std::string path, const v1::Report& report, const v1::Household& household,
                compose::Violations& found)
      : path_(std::move(path)), report_(report), household_(household), found_(found) {}

  void check() {
    id("id", report_.id());
    if (!report_.dish_id().empty() || !report_.step_id().empty()) {
      id("dishId", report_.dish_id());
      if (!report_.step_id().empty()) id("stepId", report_.step_id());
    }
    if (!report_.oven_id().empty()) id("ovenId", report_.oven_id());
    if (!report_.member_id().empty()) member("memberId", report_.member_id());
    if (report_.has_happen_time()) time("happenTime", report_.happen_time());
    if (charactersOf(report_.note()) > kMostNote)
      add("note", absl::StrCat(charactersOf(report_.note()), " characters"),
          absl::StrCat("must be at most ", kMostNote, " characters"));
    what();
  }

 private:
  // Cut between characters; what stood there is the caller's and may be long.
  static std::string shown(const std::string& value) {
    std::size_t end = std::min<std::size_t>(value.size(), 60);
    while (end < value.size() && end > 0 && (static_cast<unsigned char>(value[end]) & 0xC0) == 0x80) --end;
    return value.substr(0, end);
  }
  void add(const char* field, const std::string& value, const std::string& allowed) {
    v1::FieldViolation violation;
    violation.set_field_path(absl::StrCat(path_, ".", field));
    violation.set_value(value);
    violation.set_description(allowed);
    found_.push_back(std::move(violation));
  }
  void id(const char* field, const std::string& value) {
    if (!isId(value)) add(field, shown(value), "must be 1 to 64 of a-z A-Z 0-9 - _");
  }
  void member(const char* field, const std::string& value) {
    if (memberOf(household_, value) == nullptr) add(field, shown(value), "must be a member of the household");
  }
  void time(const char* field, const google::protobuf::Timestamp& value) {
    if (value.seconds() < kFirstSecond || value.seconds() > kLastSecond || value.nanos() < 0 ||
        value.nanos() > 999'999'999)
      add(field, absl::StrCat(value.seconds(), " s"), "must be a moment in the years 1 to 9999");
  }
  void number(const char* field, double value, double least, double most, const char* unit) {
    // Not a number compares false with both.
    if (!(value >= least && value <= most))
      add(field, absl::StrCat(value), absl::StrCat("must be ", least, " to ", most, unit));
  }
  void isTrue(const char* field, bool value) {
    if (!value) add(field, "false", "must be true: leave it out when it did not happen");
  }
  void what() {
    switch (report_.what_case()) {
      case v1::Report::kStarted:
        return isTrue("started", report_.started());
      case v1::Report::kFinished:
        return isTrue("finished", report_.finished());
      case v1::Report::kSkipped:
        return isTrue("skipped", report_.skipped());
      case v1::Report::kDelayedBy:
        return duration("delayedBy", report_.delayed_by(), kMostDelaySeconds, "7 days");
      case v1::Report::kHandedToMemberId:
        return member("handedToMemberId", report_.handed_to_member_id());
      case v1::Report::kRise:
        return number("rise", report_.rise(), 0.5, 8, " times the volume");
      case v1::Report::kDoughCelsius:
        return number("doughCelsius", report_.dough_celsius(), -10, 60, " degrees");
      case v1::Report::kCoreCelsius:
        return number("coreCelsius", report_.core_celsius(), -30, 150, " degrees");
      case v1::Report::kOvenCelsius:
        return number("ovenCelsius", report_.oven_celsius(), 0, 550, " degrees");
      case v1::Report::kDentTest:
        if (report_.dent_test() < v1::DENT_TEST_SPRINGS_BACK || report_.dent_test() > v1::DENT_TEST_STAYS)
          add("dentTest", absl::StrCat(report_.dent_test()), "must be springs back, slow return or stays");
        return;
      case v1::Report::kUndoneReportId:
        return id("undoneReportId", report_.undone_report_id());
      case v1::Report::kDone:
        return isTrue("done", report_.done());
      case v1::Report::kNeedsMoreDuration:
        return duration("needsMoreDuration", report_.needs_more_duration(), kMostMoreSeconds, "24 hours");
      case v1::Report::kLeftOverServingCount:
        return number("leftOverServingCount", report_.left_over_serving_count(), 0, 200, " portions");
      case v1::Report::WHAT_NOT_SET:
        if (report_.note().empty()) add("what", "", "must say what was done or seen, or have a note");
    }
  }
  void duration(const char* field, const google::protobuf::Duration& by, std::int64_t most,
                const char* mostWords) {
    if (by.seconds() < 0 || by.nanos() < 0 || by.seconds() > most || (by.seconds() == 0 && by.nanos() == 0))
      add(field, absl::StrCat(by.seconds(), " s"), absl::StrCat("must be above 0, at most ", mostWords));
  }

  const std::string path_;
  const v1::Report& report_;
  const v1::Household& household_;
  compose::Violations& found_;
};

}  // namespace

compose::Violations validateReports(const v1::AddReportsRequest& asked, const v1::Household& household) {
  compose::Violations found;
  if (asked.reports().empty() || asked.reports_size() > kMostReportsAtOnce) {
    v1::FieldViolation violation;
    violation.set_field_path("reports");
    violation.set_value(absl::StrCat(asked.reports_size()));
    violation.set_description(absl::StrCat("must be 1 to ", kMostReportsAtOnce, " reports"));
    found.push_back(std::move(violation));
    return found;
  }
  for (int i = 0; i < asked.reports_size(); ++i)
    ReportChecker(absl::StrCat("reports[", i, "]"), asked.reports(i), household, found).check();
  return found;
}

}  // namespace suppertide::service
