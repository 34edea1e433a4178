#include "suppertide/v1/progress_service.grpc.pb.h"

#include <set>

#include "server/service/document_calls.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

constexpr int kMostReports = 5000;
constexpr int kMostTries = 5;

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

Failure append(const Adding& adding, v1::Progress& progress) {
  std::set<std::string> known;
  for (const v1::Report& report : progress.reports()) known.insert(report.id());
  for (int i = 0; i < adding.asked.reports_size(); ++i) {
    v1::Report report = adding.asked.reports(i);
    if (!isId(report.id()))
      return invalidField(absl::StrCat("reports[", i, "].id"), report.id(),
                          "must be an id of 1 to 64 letters, digits, - _ .");
    if (!known.insert(report.id()).second) continue;
    if (report.member_id().empty()) report.set_member_id(adding.caller.memberId);
    report.mutable_receive_time()->set_seconds(adding.backend.clock().now().time_since_epoch().count());
    *progress.add_reports() = std::move(report);
  }
  if (progress.reports_size() <= kMostReports) return {};
  return failure(
      absl::ResourceExhaustedError(absl::StrCat("an event takes at most ", kMostReports, " reports")),
      "LIMIT_EXCEEDED");
}

void tryOnce(std::shared_ptr<Adding> adding) {
  const std::string& household = adding->caller.householdId;
  const std::string& event = adding->asked.event_id();
  if (const auto found = adding->backend.store().get(household, {"event", event}); !found.ok())
    return adding->finish(
        failure(absl::NotFoundError(absl::StrCat("there is no event '", event, "' in this household")),
                "NO_SUCH_DOCUMENT"));
  const auto stored = adding->backend.store().get(household, {"progress", event});
  v1::Progress progress;
  if (stored.ok())
    progress = read<v1::Progress>(*stored);
  else if (stored.status().code() != absl::StatusCode::kNotFound)
    return adding->finish(fromStorage(stored.status()));
  progress.set_id(event);
  if (const Failure wrong = append(*adding, progress); wrong.failed()) return adding->finish(wrong);
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
          if (asked.reports().empty() || asked.reports_size() > 100)
            return finish(
                invalidField("reports", absl::StrCat(asked.reports_size()), "must be 1 to 100 reports"));
          tryOnce(std::make_shared<Adding>(Adding{backend_, caller, asked, answer, finish}));
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
