#include "suppertide/v1/progress_service.grpc.pb.h"

#include <algorithm>
#include <set>

#include "server/service/document_calls.h"
#include "server/service/report_context.h"
#include "server/service/reports.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

constexpr int kMostReports = 5000;

// One AddReports under way: reads, appends what is new, writes; again when
// someone else wrote in between.
struct AddingReports {
  Backend& backend;
  Caller caller;
  v1::AddReportsRequest asked;
  v1::AddReportsResponse* answer;
  Finish finish;
  int triesLeft = kMostTries;
};

// Whether so many reports have room.
Failure checkRoom(const v1::Progress& progress) {
  if (progress.reports_size() <= kMostReports) return {};
  return failure(
      absl::ResourceExhaustedError(absl::StrCat("an event takes at most ", kMostReports, " reports")),
      "LIMIT_EXCEEDED");
}

std::set<std::string> stepsOf(Backend& backend, const std::string& household, const std::string& recipeId) {
  std::set<std::string> steps;
  const auto stored = backend.store().get(household, {"recipe", recipeId});
  if (!stored.ok()) return steps;
  const auto recipe = read<v1::Recipe>(*stored);
  for (const v1::Step& step : recipe.steps()) steps.insert(step.id());
  return steps;
}

// Adds the reports that are not known yet and counts them.
Failure append(const AddingReports& adding, const v1::Event& event, v1::Progress& progress, int& added) {
  Backend& backend = adding.backend;
  const std::string& household = adding.caller.householdId;
  const auto stored = backend.store().get(household, {"plan", event.id()});
  if (!stored.ok() && stored.status().code() != absl::StatusCode::kNotFound)
    return fromStorage(stored.status());
  v1::Plan plan;
  if (stored.ok()) plan = read<v1::Plan>(*stored);
  const ReportContext context{event, stored.ok() ? &plan : nullptr,
                              [&](const std::string& id) { return stepsOf(backend, household, id); },
                              backend.clock().now()};
  const auto wrong = appendReports(adding.asked, adding.caller.memberId, context, progress, added);
  return wrong.empty() ? checkRoom(progress) : invalid(wrong);
}

Failure checkReports(const AddingReports& adding) {
  const std::string& id = adding.caller.householdId;
  const auto household = adding.backend.store().get(id, {"household", id});
  if (!household.ok()) return fromStorage(household.status());
  const auto wrong = validateReports(adding.asked, read<v1::Household>(*household));
  return wrong.empty() ? Failure() : invalid(wrong);
}

// Notes and leftovers do not.
bool mayMoveThePlan(const v1::AddReportsRequest& asked) {
  return std::any_of(asked.reports().begin(), asked.reports().end(), [](const v1::Report& report) {
    return report.what_case() != v1::Report::WHAT_NOT_SET &&
           report.what_case() != v1::Report::kLeftOverServingCount;
  });
}

void tryOnce(std::shared_ptr<AddingReports> adding) {
  const std::string& household = adding->caller.householdId;
  const std::string& event = adding->asked.event_id();
  const auto found = adding->backend.store().get(household, {"event", event});
  if (!found.ok())
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
  if (const Failure wrong = append(*adding, read<v1::Event>(*found), progress, added); wrong.failed())
    return adding->finish(wrong);
  if (added == 0) {
    *adding->answer->mutable_progress() = progress;
    adding->answer->set_revision(progress.meta().revision());
    return adding->finish({});
  }
  auto write = writeRequest(adding->caller, "ProgressService/AddReports", adding->asked.request_id(),
                            adding->asked, adding->asked.validate_only());
  write.puts.push_back(putOf(progress, stored.ok() ? storage::Expect::kPresent : storage::Expect::kAbsent));
  adding->backend.queue().writeNow(
      std::move(write), [adding, progress](absl::StatusOr<storage::WriteResult> result) {
        const auto code = result.status().code();
        const bool raced = code == absl::StatusCode::kAborted || code == absl::StatusCode::kAlreadyExists ||
                           code == absl::StatusCode::kNotFound;
        if (raced && --adding->triesLeft > 0)
          return adding->backend.readers().post([adding] { tryOnce(adding); });
        if (!result.ok()) return adding->finish(fromStorage(result.status()));
        *adding->answer->mutable_progress() =
            adding->asked.validate_only() ? progress : read<v1::Progress>(result->documents.front());
        adding->answer->set_revision(result->revision);
        if (result->changed && mayMoveThePlan(adding->asked))
          adding->backend.corrections().reported(adding->caller.householdId, adding->asked.event_id());
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
          const auto adding =
              std::make_shared<AddingReports>(AddingReports{backend_, caller, asked, answer, finish});
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
