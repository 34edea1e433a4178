#include "suppertide/v1/review_service.grpc.pb.h"

#include <set>

#include "server/compose/day/review.h"
#include "server/service/bundle_import.h"
#include "server/service/document_calls.h"
#include "server/service/running_event.h"
#include "server/service/services.h"

namespace suppertide::service {
namespace {

constexpr char kKeep[] = "ReviewService/KeepReview";

// What a review is made from, and all documents that its lessons may change.
struct Past {
  RunningEvent event;
  compose::BreadDocuments household;
};

template <typename Message>
Failure readEach(Backend& backend, const std::string& household, int most, std::vector<Message>& all) {
  const auto found = backend.store().list(household, kindOf(Message()), "", most);
  if (!found.ok()) return fromStorage(found.status());
  for (const storage::Document& document : *found) all.push_back(read<Message>(document));
  return {};
}

template <typename Message>
void addLearned(const std::vector<Message>& before, const std::vector<Message>& after,
                storage::WriteRequest& write) {
  for (std::size_t i = 0; i < after.size(); ++i)
    if (after[i].SerializeAsString() != before[i].SerializeAsString())
      write.puts.push_back(putOf(after[i], storage::Expect::kPresent));
}

// One KeepReview under way.
struct Keeping {
  Backend& backend;
  Caller caller;
  v1::KeepReviewRequest asked;
  v1::KeepReviewResponse* answer;
  Finish finish;
  int triesLeft = kMostTries;
};

Failure readPast(Backend& backend, const Caller& caller, const std::string& eventId, Past& past) {
  if (const Failure wrong = readRunningEvent(backend, caller.householdId, eventId, past.event);
      wrong.failed())
    return wrong;
  if (past.event.running.progress.reports().empty())
    return failure(absl::NotFoundError("nothing was reported of this event"), "NO_REPORTS");
  const std::string& id = caller.householdId;
  if (const Failure wrong = readEach(backend, id, kMostStarters, past.household.starters); wrong.failed())
    return wrong;
  if (const Failure wrong = readEach(backend, id, kMostKitchens, past.household.kitchens); wrong.failed())
    return wrong;
  return readEach(backend, id, kMostRecipes, past.household.recipes);
}

compose::PastEvent pastEvent(const Past& past) {
  return {past.event.documents, past.event.running.plan, past.event.running.progress};
}

// As kept, if it was.
Failure storedReview(Backend& backend, const Caller& caller, const std::string& eventId, v1::Review& review,
                     bool& kept) {
  const auto stored = backend.store().get(caller.householdId, {kindOf(v1::Review()), eventId});
  kept = stored.ok();
  if (stored.ok()) review = read<v1::Review>(*stored);
  return stored.ok() || stored.status().code() == absl::StatusCode::kNotFound ? Failure()
                                                                              : fromStorage(stored.status());
}

v1::Lesson* lessonCalled(v1::Review& review, const std::string& id) {
  for (v1::Lesson& lesson : *review.mutable_lessons())
    if (lesson.id() == id) return &lesson;
  return nullptr;
}

// What is to be taken now; lessons keep what was said of them before.
Failure decide(const v1::KeepReviewRequest& asked, const v1::Review& before, v1::Review& review,
               std::set<std::string>& taken) {
  // What was taken is not seen any more: the documents have it.
  for (const v1::Lesson& old : before.lessons()) {
    if (old.state() == v1::LESSON_STATE_UNSPECIFIED) continue;
    v1::Lesson* lesson = lessonCalled(review, old.id());
    *(lesson != nullptr ? lesson : review.add_lessons()) = old;
  }
  for (int l = 0; l < asked.taken_lesson_ids_size(); ++l) {
    v1::Lesson* lesson = lessonCalled(review, asked.taken_lesson_ids(l));
    if (lesson == nullptr)
      return invalidField(absl::StrCat("takenLessonIds[", l, "]"), asked.taken_lesson_ids(l).substr(0, 80),
                          "must be a lesson of the review");
    if (lesson->state() != v1::LESSON_STATE_TAKEN) taken.insert(lesson->id());
    lesson->set_state(v1::LESSON_STATE_TAKEN);
  }
  for (int l = 0; l < asked.declined_lesson_ids_size(); ++l) {
    v1::Lesson* lesson = lessonCalled(review, asked.declined_lesson_ids(l));
    if (lesson == nullptr || lesson->state() == v1::LESSON_STATE_TAKEN)
      return invalidField(absl::StrCat("declinedLessonIds[", l, "]"),
                          asked.declined_lesson_ids(l).substr(0, 80),
                          "must be a lesson of the review that was not taken");
    lesson->set_state(v1::LESSON_STATE_DECLINED);
  }
  return {};
}

void tryOnce(const std::shared_ptr<Keeping>& keeping) {
  Past past;
  if (const Failure wrong = readPast(keeping->backend, keeping->caller, keeping->asked.event_id(), past);
      wrong.failed())
    return keeping->finish(wrong);
  v1::Review before;
  bool kept = false;
  if (const Failure wrong =
          storedReview(keeping->backend, keeping->caller, keeping->asked.event_id(), before, kept);
      wrong.failed())
    return keeping->finish(wrong);
  v1::Review review = compose::reviewOf(pastEvent(past));
  compose::addLessons(pastEvent(past), past.household, review);
  std::set<std::string> taken;
  if (const Failure wrong = decide(keeping->asked, before, review, taken); wrong.failed())
    return keeping->finish(wrong);
  compose::BreadDocuments documents = past.household;
  if (absl::Status status = compose::useLessons(pastEvent(past), review, taken, documents); !status.ok())
    return keeping->finish(failure(status, "CANNOT_LEARN"));
  auto write = writeRequest(keeping->caller, kKeep, keeping->asked.request_id(), keeping->asked,
                            keeping->asked.validate_only());
  write.puts.push_back(putOf(review, kept ? storage::Expect::kPresent : storage::Expect::kAbsent));
  write.puts.back().etag = before.meta().etag();
  addLearned(past.household.starters, documents.starters, write);
  addLearned(past.household.kitchens, documents.kitchens, write);
  addLearned(past.household.recipes, documents.recipes, write);
  keeping->backend.queue().submit(
      std::move(write), [keeping, review](absl::StatusOr<storage::WriteResult> result) {
        const auto code = result.status().code();
        const bool raced = code == absl::StatusCode::kAborted || code == absl::StatusCode::kAlreadyExists ||
                           code == absl::StatusCode::kNotFound;
        if (raced && --keeping->triesLeft > 0)
          return keeping->backend.calculators().post([keeping] { tryOnce(keeping); },
                                                     keeping->caller.householdId);
        if (!result.ok()) return keeping->finish(fromStorage(result.status()));
        *keeping->answer->mutable_review() =
            keeping->asked.validate_only() ? review : read<v1::Review>(result->documents.front());
        keeping->answer->set_revision(result->revision);
        keeping->finish({});
      });
}

class ReviewServiceCalls final : public v1::ReviewService::CallbackService {
 public:
  explicit ReviewServiceCalls(Backend& backend) : backend_(backend) {}

  grpc::ServerUnaryReactor* GetReview(grpc::CallbackServerContext* context,
                                      const v1::GetReviewRequest* request, v1::Review* answer) override {
    return serveCalculated(backend_, context, request, "ReviewService/GetReview", request->household_id(),
                           [this, answer](const Caller& caller, const v1::GetReviewRequest& asked,
                                          const auto&) { return get(caller, asked.event_id(), *answer); });
  }

  grpc::ServerUnaryReactor* KeepReview(grpc::CallbackServerContext* context,
                                       const v1::KeepReviewRequest* request,
                                       v1::KeepReviewResponse* answer) override {
    return serve(
        backend_, context, request, kKeep, request->household_id(),
        [this, answer](const Caller& caller, const v1::KeepReviewRequest& asked, const Finish& finish) {
          if (const Failure wrong = checkRequestId(asked.request_id()); wrong.failed()) return finish(wrong);
          const auto keeping = std::make_shared<Keeping>(Keeping{backend_, caller, asked, answer, finish});
          backend_.calculators().post([keeping] { tryOnce(keeping); }, caller.householdId);
        });
  }

 private:
  Failure get(const Caller& caller, const std::string& eventId, v1::Review& review) {
    bool kept = false;
    if (const Failure wrong = storedReview(backend_, caller, eventId, review, kept); wrong.failed() || kept)
      return wrong;
    Past past;
    if (const Failure wrong = readPast(backend_, caller, eventId, past); wrong.failed()) return wrong;
    review = compose::reviewOf(pastEvent(past));
    compose::addLessons(pastEvent(past), past.household, review);
    return {};
  }

  Backend& backend_;
};

}  // namespace

std::unique_ptr<grpc::Service> makeReviewService(Backend& backend) {
  return std::make_unique<ReviewServiceCalls>(backend);
}

}  // namespace suppertide::service
