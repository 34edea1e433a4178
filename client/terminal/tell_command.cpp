// Telling what was done or seen, and seeing what the plan makes of it.
#include <algorithm>
#include <utility>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"
#include "client/link/session.h"
#include "client/terminal/connection.h"
#include "client/terminal/day_options.h"
#include "client/terminal/exit_code.h"
#include "client/terminal/live_replica.h"
#include "client/terminal/moved_text.h"
#include "client/terminal/report.h"

namespace suppertide::terminal {
namespace {

constexpr std::chrono::seconds kConnect{10};
// A correction takes a few tenths of a second; where none is needed, nothing comes.
constexpr std::chrono::milliseconds kCorrection{1'500};

class Telling {
 public:
  Telling(const TellCommand& command, const link::Replica& replica, std::string eventId, std::string memberId)
      : command_(command), replica_(replica), eventId_(std::move(eventId)), memberId_(std::move(memberId)) {}

  absl::StatusOr<v1::Report> report() {
    v1::Report report;
    report.set_id(link::newRequestId());
    const auto [dish, step] = splitPlannedId(command_.step);
    report.set_dish_id(dish);
    report.set_step_id(step);
    report.set_note(command_.note);
    if (auto status = readTime(report); !status.ok()) return status;
    if (auto status = readWhat(report); !status.ok()) return status;
    if (count_ > 1) return absl::InvalidArgumentError("tell one thing at a time");
    if (count_ == 0 && command_.note.empty())
      return absl::InvalidArgumentError("say what was done or seen: see suppertide tell --help");
    return report;
  }

 private:
  absl::TimeZone zone() const {
    const v1::Event& event = replica_.events.at(eventId_);
    absl::TimeZone zone = absl::UTCTimeZone();
    absl::LoadTimeZone(event.time_zone().empty() ? replica_.household.time_zone() : event.time_zone(), &zone);
    return zone;
  }

  absl::Status readTime(v1::Report& report) const {
    if (command_.at.empty()) return absl::OkStatus();
    absl::Time when;
    std::string error;
    const std::string today = absl::StrCat(absl::FormatTime("%Y-%m-%d ", absl::Now(), zone()), command_.at);
    if (!absl::ParseTime("%Y-%m-%d %H:%M", command_.at, zone(), &when, &error) &&
        !absl::ParseTime("%Y-%m-%d %H:%M", today, zone(), &when, &error))
      return absl::InvalidArgumentError(
          absl::StrCat("--at ", command_.at, ": give HH:MM of today, or \"YYYY-MM-DD HH:MM\""));
    report.mutable_happen_time()->set_seconds(absl::ToUnixSeconds(when));
    return absl::OkStatus();
  }

  // Counts what was said; the last one stands.
  template <typename Set>
  void when(bool said, Set set) {
    if (!said) return;
    ++count_;
    set();
  }

  absl::Status readWhat(v1::Report& r) {
    const TellCommand& c = command_;
    when(c.started, [&] { r.set_started(true); });
    when(c.finished, [&] { r.set_finished(true); });
    when(c.skipped, [&] { r.set_skipped(true); });
    when(c.done, [&] { r.set_done(true); });
    when(c.lateMinutes.has_value(), [&] { r.mutable_delayed_by()->set_seconds(*c.lateMinutes * 60); });
    when(c.needsMinutes.has_value(),
         [&] { r.mutable_needs_more_duration()->set_seconds(*c.needsMinutes * 60); });
    when(c.rise.has_value(), [&] { r.set_rise(*c.rise); });
    when(c.doughCelsius.has_value(), [&] { r.set_dough_celsius(*c.doughCelsius); });
    when(c.coreCelsius.has_value(), [&] { r.set_core_celsius(*c.coreCelsius); });
    when(c.ovenCelsius.has_value(), [&] { r.set_oven_celsius(*c.ovenCelsius); });
    when(c.leftOver.has_value(), [&] { r.set_left_over_serving_count(*c.leftOver); });
    when(!c.dent.empty(), [&] {
      r.set_dent_test(c.dent == "springs-back" ? v1::DENT_TEST_SPRINGS_BACK
                      : c.dent == "slow"       ? v1::DENT_TEST_SLOW_RETURN
                                               : v1::DENT_TEST_STAYS);
    });
    if (auto status = readHandOver(r); !status.ok()) return status;
    return readUndo(r);
  }

  absl::Status readHandOver(v1::Report& report) {
    if (command_.handTo.empty()) return absl::OkStatus();
    ++count_;
    for (const v1::Member& member : replica_.household.members())
      if (member.id() == command_.handTo ||
          absl::AsciiStrToLower(member.display_name()) == absl::AsciiStrToLower(command_.handTo))
        report.set_handed_to_member_id(member.id());
    if (!report.handed_to_member_id().empty()) return absl::OkStatus();
    return absl::InvalidArgumentError(absl::StrCat("nobody in the household is called ", command_.handTo));
  }

  absl::Status readUndo(v1::Report& report) {
    if (command_.undo.empty()) return absl::OkStatus();
    ++count_;
    report.set_undone_report_id(command_.undo == "last" ? lastOwn() : command_.undo);
    if (!report.undone_report_id().empty()) return absl::OkStatus();
    return absl::InvalidArgumentError("there is no report of yours to take back");
  }

  std::string lastOwn() const {
    const auto progress = replica_.progresses.find(eventId_);
    if (progress == replica_.progresses.end()) return "";
    std::string last;
    std::vector<std::string> undone;
    for (const v1::Report& report : progress->second.reports())
      if (report.what_case() == v1::Report::kUndoneReportId) undone.push_back(report.undone_report_id());
    for (const v1::Report& report : progress->second.reports())
      if (report.member_id() == memberId_ && report.what_case() != v1::Report::kUndoneReportId &&
          std::find(undone.begin(), undone.end(), report.id()) == undone.end())
        last = report.id();
    return last;
  }

  const TellCommand& command_;
  const link::Replica& replica_;
  const std::string eventId_;
  const std::string memberId_;
  int count_ = 0;
};

// Whether the server's correction knows the report.
bool knows(const v1::Plan& plan, const std::string& reportId) {
  const auto& ids = plan.correction().report_ids();
  return std::find(ids.begin(), ids.end(), reportId) != ids.end();
}

std::string newsOf(const link::Replica& replica, const std::string& eventId, const std::string& reportId,
                   const Environment& environment) {
  const auto proposal = replica.proposals.find(eventId);
  if (proposal != replica.proposals.end() && knows(proposal->second.plan(), reportId)) {
    const PlanView view = viewOf(replica, eventId, environment);
    return absl::StrCat("A host is asked first whether this may move:\n",
                        movedText(view, proposal->second.plan().moved_steps()),
                        "See suppertide correction --help.\n");
  }
  const auto plan = replica.plans.find(eventId);
  if (plan == replica.plans.end() || !knows(plan->second, reportId)) return "Nothing has to move.\n";
  if (plan->second.moved_steps().empty()) return "Nothing has to move; the forecasts are new.\n";
  const PlanView view = viewOf(replica, eventId, environment);
  return absl::StrCat("This moves:\n", movedText(view, plan->second.moved_steps()));
}

}  // namespace

int runTell(const TellCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  Connection connection = openKnown(*known);
  const auto self = connection.session->whoAmI();
  if (!self.ok()) return reportFailure(environment, self.status(), command.json);
  LiveReplica live(*known);
  const auto replica = live.waitFor([](const link::Replica& r) { return r.revision > 0; }, kConnect);
  if (!replica.ok()) return reportFailure(environment, replica.status(), command.json);
  if (*replica == nullptr)
    return reportFailure(environment, absl::UnavailableError("it fell silent"), command.json);
  const auto event = plannedEvent(**replica, command.eventId);
  if (!event.ok()) return reportFailure(environment, event.status(), command.json);
  const auto report = Telling(command, **replica, *event, self->member_id()).report();
  if (!report.ok()) return reportFailure(environment, report.status(), command.json);
  v1::AddReportsRequest request;
  request.set_household_id(connection.householdId);
  request.set_event_id(*event);
  request.set_request_id(link::newRequestId());
  *request.add_reports() = *report;
  const auto answer = connection.session->addReports(request);
  if (!answer.ok()) return reportFailure(environment, answer.status(), command.json);
  if (command.json) {
    environment.out << jsonOf(*answer);
    return kOk;
  }
  environment.out << "Told.\n";
  const auto corrected = live.waitFor(
      [&](const link::Replica& r) {
        const auto plan = r.plans.find(*event);
        const auto proposal = r.proposals.find(*event);
        return (plan != r.plans.end() && knows(plan->second, report->id())) ||
               (proposal != r.proposals.end() && knows(proposal->second.plan(), report->id()));
      },
      kCorrection);
  const auto latest = corrected.ok() && *corrected != nullptr
                          ? corrected
                          : live.waitFor([](const link::Replica&) { return true; }, kConnect);
  if (latest.ok() && *latest != nullptr)
    environment.out << newsOf(**latest, *event, report->id(), environment);
  return kOk;
}

int runCorrection(const CorrectionCommand& command, Environment& environment) {
  const auto known = knownServer(environment, command.server);
  if (!known.ok()) return reportFailure(environment, known.status(), command.json);
  LiveReplica live(*known);
  const auto replica = live.waitFor([](const link::Replica& r) { return r.revision > 0; }, kConnect);
  if (!replica.ok()) return reportFailure(environment, replica.status(), command.json);
  if (*replica == nullptr)
    return reportFailure(environment, absl::UnavailableError("it fell silent"), command.json);
  const auto event = plannedEvent(**replica, command.eventId);
  if (!event.ok()) return reportFailure(environment, event.status(), command.json);
  const auto proposal = (*replica)->proposals.find(*event);
  if (proposal == (*replica)->proposals.end()) {
    environment.out << (command.json ? "{}\n" : "No corrected plan waits for a word.\n");
    return kOk;
  }
  if (!command.accept && !command.dismiss) {
    environment.out << (command.json ? jsonOf(proposal->second)
                                     : movedText(viewOf(**replica, *event, environment),
                                                 proposal->second.plan().moved_steps()));
    return kOk;
  }
  const Connection connection = openKnown(*known);
  absl::Status status;
  if (command.accept) {
    v1::AcceptProposalRequest request;
    request.set_household_id(connection.householdId);
    request.set_event_id(*event);
    request.set_etag(proposal->second.meta().etag());
    request.set_request_id(link::newRequestId());
    status = connection.session->acceptProposal(request).status();
  } else {
    v1::DismissProposalRequest request;
    request.set_household_id(connection.householdId);
    request.set_event_id(*event);
    request.set_etag(proposal->second.meta().etag());
    request.set_request_id(link::newRequestId());
    status = connection.session->dismissProposal(request).status();
  }
  if (!status.ok()) return reportFailure(environment, status, command.json);
  if (!command.json) environment.out << (command.accept ? "It is the plan now.\n" : "The plan stays.\n");
  return kOk;
}

}  // namespace suppertide::terminal
