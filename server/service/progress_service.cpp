#include "suppertide/v1/progress_service.grpc.pb.h"

#include <set>

#include "server/service/document_calls.h"
#include "server/service/reports.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

constexpr int kMostReports = 5000;

// One AddReports under way: reads, appends what is new, writes; again when
// someone else wrote in between.
struct Adding {
  Backend& backend;
  Caller caller;
  v1::AddReportsRequest asked;
  v1::AddReportsResponse* answer;
  Finish finish;
  int triesLeft = kMostTries;
};

// Adds the reports that are not known yet and counts them.
Failure append(const Adding& adding, v1::Progress& progress, int& added) {
  std::set<std::string> known;
  for (const v1::Report& report : progress.reports()) known.insert(report.id());
  const std::int64_t now = adding.backend.clock().now().time_since_epoch().count();
  for (v1::Report report : adding.asked.reports()) {
    if (!known.insert(report.id()).second) continue;
    if (report.member_id().empty()) report.set_member_id(adding.caller.memberId);
    if (!report.has_happen_time()) report.mutable_happen_time()->set_seconds(now);
    report.clear_receive_time();
    report.mutable_receive_time()->set_seconds(now);
    *progress.add_reports() = std::move(report);
    ++added;
  }
  if (progress.reports_size() <= kMostReports) return {};
  return failure(
      absl::ResourceExhaustedError(absl::StrCat("an event takes at most ", kMostReports, " reports")),
      "LIMIT_EXCEEDED");
}

Failure checkReports(const Adding& adding) {
  const std::string& id = adding.caller.householdId;
  const auto household = adding.backend.store().get(id, {"household", id});
  if (!household.ok()) return fromStorage(household.status());
  const auto wrong = validateReports(adding.asked, read<v1::Household>(*household));
  return wrong.empty() ? Failure() : invalid(wrong);
}

void tryOnce(std::shared_ptr<Adding> adding) {
  const std::string& household = adding->caller.householdId;
  const std::string& event = adding->asked.event_id();
  if (const auto found = adding->backend.store().get(household, {"event", event}); !found.ok())
    return adding->finish(
        found.status().code() == absl::StatusCode::kNotFound
            ? failure(absl::NotFoundError(absl::StrCat("there is no event '", event, "' in this household")),
                      "NO_SUCH_DOCUMENT")
            : fromStorage(found.status()));
  const auto stored = adding->backend.store().get(household, {"progress", event});
  v1::Progress progress;
  if (stored.ok())
    progress = read<v1::Progress>(*stored);
  else if (stored.status().code() != absl::StatusCode::kNotFound)
    return adding->finish(fromStorage(stored.status()));
  progress.set_id(event);
  int added = 0;
  if (const Failure wrong = append(*adding, progress, added); wrong.failed()) return adding->finish(wrong);
  if (added == 0) {
    *adding->answer->mutable_progress() = progress;
    adding->answer->set_revision(progress.meta().revision());
    return adding->finish({});
  }
  auto write = writeRequest(adding->caller, "ProgressService/AddReports", adding->asked.request_id(),
                            adding->asked, false);
  write.puts.push_back(putOf(progress, stored.ok() ? storage::Expect::kPresent : storage::Expect::kAbsent));
  adding->backend.queue().submit(std::move(write), [adding](absl::StatusOr<storage::WriteResult> result) {
    const auto code = result.status().code();
    const bool raced = code == absl::StatusCode::kAborted || code == absl::StatusCode::kAlreadyExists ||
                       code == absl::StatusCode::kNotFound;
    if (raced && --adding->triesLeft > 0)
      return adding->backend.readers().post([adding] { tryOnce(adding); });
    if (!result.ok()) return adding->finish(fromStorage(result.status()));
    *adding->answer->mutable_progress() = read<v1::Progress>(result->documents.front());
    adding->answer->set_revision(result->revision);
    adding->finish({});
  });
}

class ProgressServiceCalls final : public v1::ProgressService::CallbackService {
 public:
  explicit ProgressServiceCalls(Backend& backend) : backend_(backend), calls_(backend, "ProgressService") {}

  grpc::ServerUnaryReactor* GetProgress(grpc::CallbackServerContext* context,
                                        const v1::GetProgressRequest* request,
                                        v1::Progress* answer) override {
    return calls_.get(context, request, request->event_id(), "GetProgress", answer);
  }

  grpc::ServerUnaryReactor* AddReports(grpc::CallbackServerContext* context,
                                       const v1::AddReportsRequest* request,
                                       v1::AddReportsResponse* answer) override {
    return serve(
        backend_, context, request, "ProgressService/AddReports", request->household_id(),
        [this, answer](const Caller& caller, const v1::AddReportsRequest& asked, const Finish& finish) {
          if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
          const auto adding = std::make_shared<Adding>(Adding{backend_, caller, asked, answer, finish});
          if (const Failure wrong = checkReports(*adding); wrong.failed()) return finish(wrong);
          tryOnce(adding);
        });
  }

 private:
  Backend& backend_;
  DocumentCalls<v1::Progress> calls_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeProgressService(Backend& backend) {
  return std::make_unique<ProgressServiceCalls>(backend);
}

}  // namespace suppertide::service
