#include "server/service/find_remedies.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <deque>
#include <memory>
#include <mutex>
#include <utility>
#include <vector>

#include "server/compose/live_correction.h"
#include "server/compose/remedies/find_remedies.h"
#include "server/service/answer_stream.h"
#include "server/service/bundle_import.h"
#include "server/service/running_event.h"

namespace suppertide::service {
namespace {

using SteadyClock = std::chrono::steady_clock;

constexpr char kFindRemedies[] = "PlanService/FindRemedies";
// The search ends here and keeps what it has found.
constexpr std::chrono::seconds kMostRemedyTime{10};
constexpr std::chrono::milliseconds kTellTriesEvery{250};

template <typename Message>
bool isSame(const Message& a, const Message& b) {
  return a.SerializeAsString() == b.SerializeAsString();
}

class FindRemediesCall : public AnswerStream<v1::FindRemediesResponse>, public compose::RemedyMonitor {
 public:
  FindRemediesCall(Backend& backend, grpc::CallbackServerContext& context,
                   const v1::FindRemediesRequest& asked)
      : AnswerStream(backend, context, kFindRemedies), asked_(asked) {}

  void OnWriteDone(bool ok) override {
    if (!ok) return end(grpc::Status::CANCELLED);
    bool last = false;
    {
      std::lock_guard lock(mutex_);
      writing_ = false;
      sendNext();
      last = !writing_ && finalSent_;
    }
    if (last) end(grpc::Status::OK);
  }

  // ---- on the planning thread ----
  void clashesKnown(const std::vector<v1::Clash>& clashes) override {
    v1::FindRemediesResponse message = progress();
    for (const v1::Clash& clash : clashes) *message.add_clashes() = clash;
    offer(std::move(message));
  }
  void found(const compose::FoundRemedy& remedy) override {
    v1::FindRemediesResponse message = progress();
    message.set_number(remedy.number);
    *message.mutable_remedy() = remedy.changes.front();
    for (std::size_t k = 1; k < remedy.changes.size(); ++k) *message.add_further() = remedy.changes[k];
    *message.mutable_event() = remedy.documents.event;
    *message.mutable_plan() = remedy.plan;
    if (underWay_)
      compose::carryOver(running_.plan, running_.progress.reports_size() > 0, *message.mutable_plan());
    addChanged(remedy.documents, message);
    offer(std::move(message));
  }
  void tried(int count, int candidates) override {
    tried_ = count;
    candidates_ = candidates;
    if (SteadyClock::now() - lastTold_ >= kTellTriesEvery) offer(progress());
  }
  bool stop() override { return cancelled_ || SteadyClock::now() >= deadline_; }

 private:
  Failure open(const grpc::CallbackServerContext& context) override {
    Caller caller;
    if (const Failure refused = backend_.admit(context, kFindRemedies, asked_.household_id(), caller);
        refused.failed())
      return refused;
    householdId_ = caller.householdId;
    std::int64_t revision = 0;
    if (const Failure wrong =
            documentsOf(backend_, caller.householdId, asked_.event_id(), documents_, revision, nullptr);
        wrong.failed())
      return wrong;
    if (const Failure wrong = readRunning(caller); wrong.failed()) return wrong;
    return enlist(caller);
  }

  // An event is under way once its plan has begun or somebody has told of it.
  Failure readRunning(const Caller& caller) {
    const auto plan = backend_.store().get(caller.householdId, {"plan", asked_.event_id()});
    if (plan.status().code() == absl::StatusCode::kNotFound) return {};
    if (!plan.ok()) return fromStorage(plan.status());
    running_.plan = read<v1::Plan>(*plan);
    running_.now.set_seconds(backend_.clock().now().time_since_epoch().count());
    if (const Failure wrong =
            readProgress(backend_, caller.householdId, asked_.event_id(), running_.progress);
        wrong.failed())
      return wrong;
    const auto begun = [&](const v1::PlannedStep& step) {
      return step.start_time().seconds() <= running_.now.seconds();
    };
    const auto& steps = running_.plan.steps();
    underWay_ = running_.progress.reports_size() > 0 || std::any_of(steps.begin(), steps.end(), begun);
    return {};
  }

  void opened() override {
    backend_.planning().post(
        householdId_,
        [self = std::static_pointer_cast<FindRemediesCall>(shared_from_this())] { self->search(); });
  }

  void ending() override { cancelled_ = true; }

  void search() {
    if (cancelled_) return;
    begin_ = lastTold_ = SteadyClock::now();
    deadline_ = begin_ + kMostRemedyTime;
    const auto result = compose::findRemedies(documents_, {}, this, underWay_ ? &running_ : nullptr);
    if (cancelled_) return;
    if (!result.ok()) return endWith(failure(result.status(), "CANNOT_PLAN"));
    v1::FindRemediesResponse message = progress();
    message.set_final(true);
    message.set_fits(result->fits);
    for (const compose::FoundRemedy& remedy : result->remedies) message.add_ranking(remedy.number);
    offer(std::move(message));
  }

  void addChanged(const compose::Documents& now, v1::FindRemediesResponse& message) const {
    if (!isSame(now.kitchen, documents_.kitchen)) *message.mutable_kitchen() = now.kitchen;
    if (!isSame(now.household, documents_.household)) *message.mutable_household() = now.household;
    for (const v1::Recipe& recipe : now.recipes) {
      const bool known = std::any_of(documents_.recipes.begin(), documents_.recipes.end(),
                                     [&](const v1::Recipe& old) { return isSame(old, recipe); });
      if (!known) *message.add_recipes() = recipe;
    }
  }

  v1::FindRemediesResponse progress() {
    lastTold_ = SteadyClock::now();
    v1::FindRemediesResponse message;
    message.set_tried_count(tried_);
    message.set_candidate_count(candidates_);
    const auto used = std::chrono::duration_cast<std::chrono::nanoseconds>(lastTold_ - begin_).count();
    message.mutable_time_used()->set_seconds(used / 1'000'000'000);
    message.mutable_time_used()->set_nanos(static_cast<std::int32_t>(used % 1'000'000'000));
    return message;
  }

  // Mere progress gives way to whatever comes after it; nothing else is ever left out.
  void offer(v1::FindRemediesResponse message) {
    std::lock_guard lock(mutex_);
    if (!waiting_.empty() && isProgress(waiting_.back())) waiting_.pop_back();
    waiting_.push_back(std::move(message));
    if (!writing_) sendNext();
  }

  static bool isProgress(const v1::FindRemediesResponse& message) {
    return !message.has_remedy() && message.clashes_size() == 0 && !message.final();
  }

  // mutex_ is held, nothing is in flight.
  void sendNext() {
    if (waiting_.empty()) return;
    finalSent_ = waiting_.front().final();
    v1::FindRemediesResponse next = std::move(waiting_.front());
    waiting_.pop_front();
    writing_ = send(std::move(next));
  }

  const v1::FindRemediesRequest asked_;
  std::string householdId_;
  compose::Documents documents_;
  compose::RunningPlan running_;  // when it is
  bool underWay_ = false;
  SteadyClock::time_point begin_;  // these of the planning thread
  SteadyClock::time_point deadline_;
  SteadyClock::time_point lastTold_;
  int tried_ = 0;
  int candidates_ = 0;

  std::atomic<bool> cancelled_{false};
  std::deque<v1::FindRemediesResponse> waiting_;  // guarded by mutex_
  bool writing_ = false;                          // guarded by mutex_
  bool finalSent_ = false;                        // guarded by mutex_
};

}  // namespace

grpc::ServerWriteReactor<v1::FindRemediesResponse>* findRemedies(Backend& backend,
                                                                 grpc::CallbackServerContext& context,
                                                                 const v1::FindRemediesRequest& asked) {
  const auto call = std::make_shared<FindRemediesCall>(backend, context, asked);
  call->start();
  return call.get();
}

}  // namespace suppertide::service
