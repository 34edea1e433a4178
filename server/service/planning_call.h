// A call that plans an event on a planning thread: it takes the event's place among the plannings, waits for
// its household's turn there, and is cancelled when nobody reads its answers any more.
#pragma once

#include <chrono>
#include <memory>
#include <string>
#include <utility>

#include "server/compose/planner.h"
#include "server/service/answer_stream.h"
#include "server/service/planning_pool.h"
#include "suppertide/v1/plan_service.pb.h"

namespace suppertide::service {

class PlanningCall : public AnswerStream<v1::MakePlanResponse>, public compose::PlanMonitor {
 public:
  using AnswerStream::AnswerStream;

 protected:
  // Ends the stream or calls leave(), at once or in what it leaves behind. On a planning thread.
  virtual void plan() = 0;
  virtual const std::string& eventId() const = 0;

  PlanningRun& run() { return *run_; }
  // The event may be planned by others; after the call's last write, before its last answer.
  void leave() { backend_.planning().end(*run_); }
  void giveUp(const Failure& wrong) {
    leave();
    endWith(wrong);
  }

  // The last answer. A plan that is not stored has the revision 0.
  static v1::MakePlanResponse finalAnswer(const v1::Plan& plan, std::int64_t revision) {
    v1::MakePlanResponse message;
    *message.mutable_plan() = plan;
    *message.mutable_quality() = plan.quality();
    *message.mutable_time_used() = plan.search().time_used();
    message.set_final(true);
    message.set_revision(revision);
    return message;
  }

  Caller caller_;  // set while opening

 private:
  void opened() final {
    auto run = backend_.planning().begin(caller_.householdId, eventId());
    if (run == nullptr)
      return endWith(failure(
          absl::FailedPreconditionError("this event is being planned already; wait for it or stop it"),
          "PLANNING_ALREADY"));
    {
      std::lock_guard lock(mutex_);
      if (gone_) run->cancel = true;
      run_ = std::move(run);
    }
    backend_.planning().post(caller_.householdId,
                             [self = std::static_pointer_cast<PlanningCall>(shared_from_this())] {
                               self->run_->waitForEarlier();
                               self->plan();
                             });
  }

  void ending() final {
    gone_ = true;
    if (run_ != nullptr) run_->cancel = true;
  }

  std::shared_ptr<PlanningRun> run_;  // set once under mutex_, before planning
  bool gone_ = false;                 // guarded by mutex_: the stream has ended
};

}  // namespace suppertide::service
