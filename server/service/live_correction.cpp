#include "server/service/live_correction.h"

#include <google/protobuf/util/message_differencer.h>
#include <spdlog/spdlog.h>

#include <ctime>
#include <future>

#include "server/compose/bread_tables.h"
#include "server/compose/live_correction.h"
#include "server/service/kept_tables.h"
#include "server/service/running_event.h"

namespace suppertide::service {
namespace {

using SteadyClock = std::chrono::steady_clock;

constexpr std::int64_t kWork = 20'000;
// What is told of a meal that is long over changes no plan any more.
constexpr std::int64_t kLongOverSeconds = 24 * 3600;

// Processor time of the thread that made it, and ten times as much of anybody's: on a busy machine a
// correction comes later, not worse.
class TimeUp : public compose::PlanMonitor {
 public:
  TimeUp(std::chrono::nanoseconds most, PlanningRun& run)
      : usedUp_(used() + most), until_(SteadyClock::now() + 10 * most), run_(run) {}
  bool stop() override {
    if (run_.cancel || run_.stop || used() >= usedUp_ || SteadyClock::now() >= until_) cut_ = true;
    return cut_;
  }
  bool wasCut() const { return cut_; }

 private:
  static std::chrono::nanoseconds used() {
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return std::chrono::seconds(time.tv_sec) + std::chrono::nanoseconds(time.tv_nsec);
  }

  const std::chrono::nanoseconds usedUp_;
  const SteadyClock::time_point until_;
  PlanningRun& run_;
  bool cut_ = false;
};

bool isOver(const RunningEvent& event) {
  std::int64_t last = 0;
  for (const v1::Course& course : event.documents.event.courses())
    last = std::max(last, course.serving_time().seconds());
  return event.running.now.seconds() > last + kLongOverSeconds;
}

bool isWorse(const v1::TierCosts& a, const v1::TierCosts& b) {
  return a.unserved() != b.unserved() ? a.unserved() > b.unserved() : a.lateness() > b.lateness();
}

bool isShort(const v1::Plan& plan) {
  return plan.unserved_size() > 0 || plan.quality().costs().lateness() > 0;
}

void describe(const RunningEvent& event, const compose::CorrectedPlan& made, v1::Correction& correction) {
  *correction.mutable_correct_time() = event.running.now;
  const auto& reports = event.running.progress.reports();
  for (int r = compose::reportsIn(event.running.plan); r < reports.size(); ++r)
    correction.add_report_ids(reports[r].id());
  for (const std::string& id : made.forcedStepIds) correction.add_forced_step_ids(id);
}

// What one correction writes; nothing to do where it is empty.
class Outcome {
 public:
  Outcome(Backend& backend, const std::string& household, const RunningEvent& event)
      : backend_(backend), household_(household), event_(event) {}

  std::vector<storage::Put> puts(compose::CorrectedPlan made, bool again) {
    std::vector<storage::Put> puts;
    const std::string& id = event_.documents.event.id();
    if (!made.saysMore || (again && !isWorth(made))) {
      if (!made.saysMore && proposal()) puts.push_back(withoutProposal(id));
      return puts;
    }
    stampPlan(event_, made.plan);
    describe(event_, made, *made.plan.mutable_correction());
    const bool ask = event_.documents.event.live_correction() == v1::LIVE_CORRECTION_ASK_FIRST;
    if (ask && !made.nothingMoves) return proposing(made.plan);
    puts.push_back(putOf(made.plan, storage::Expect::kPresent));
    puts.back().etag = event_.running.plan.meta().etag();
    puts.push_back(withoutProposal(id));
    return puts;
  }

 private:
  // A second search moves people about once more only for what they would notice.
  bool isWorth(const compose::CorrectedPlan& made) const {
    return isWorse(event_.running.plan.quality().costs(), made.plan.quality().costs());
  }

  std::optional<v1::PlanProposal> proposal() const {
    const auto stored =
        backend_.store().get(household_, {kindOf(v1::PlanProposal()), event_.documents.event.id()});
    if (!stored.ok()) return std::nullopt;
    return read<v1::PlanProposal>(*stored);
  }

  std::vector<storage::Put> proposing(const v1::Plan& plan) const {
    const auto before = proposal();
    using google::protobuf::util::MessageDifferencer;
    if (before && before->running_plan_etag() == event_.running.plan.meta().etag() &&
        MessageDifferencer::Equals(before->plan().correction(), plan.correction()))
      return {};
    v1::PlanProposal made;
    made.set_id(plan.id());
    *made.mutable_plan() = plan;
    made.set_running_plan_etag(event_.running.plan.meta().etag());
    return {putOf(made)};
  }

  Backend& backend_;
  const std::string& household_;
  const RunningEvent& event_;
};

}  // namespace

void LiveCorrection::reported(const std::string& householdId, const std::string& eventId) {
  const Key key{householdId, eventId};
  const std::lock_guard lock(mutex_);
  if (quick_ == nullptr) return;
  State& state = states_[key];
  if (state.going != nullptr) state.going->cancel = true;
  if (state.queued) return;
  state.queued = true;
  post(key, Search::kQuick);
}

void LiveCorrection::post(const Key& key, Search search) {
  const bool first = search == Search::kQuick || search == Search::kInstead;
  ++open_;
  if (first) ++openFirst_;
  (search == Search::kQuick ? *quick_ : *thorough_)
      .post(
          [this, key, search, first] {
            correct(key, search);
            const std::lock_guard lock(mutex_);
            --open_;
            if (first) --openFirst_;
            done_.notify_all();
          },
          key.first);
}

void LiveCorrection::waitUntilCorrected() {
  std::unique_lock lock(mutex_);
  done_.wait(lock, [this] { return openFirst_ == 0; });
}

void LiveCorrection::waitUntilDone() {
  std::unique_lock lock(mutex_);
  done_.wait(lock, [this] { return open_ == 0; });
}

void LiveCorrection::planningEnded(const std::string& householdId, const std::string& eventId) {
  {
    const std::lock_guard lock(mutex_);
    const auto found = states_.find({householdId, eventId});
    if (found == states_.end() || !found->second.waiting) return;
    found->second.waiting = false;
  }
  reported(householdId, eventId);
}

void LiveCorrection::stop() {
  std::unique_ptr<Workers> quick;
  std::unique_ptr<Workers> thorough;
  {
    const std::lock_guard lock(mutex_);
    for (auto& [key, state] : states_)
      if (state.going != nullptr) state.going->cancel = true;
    quick = std::move(quick_);
    thorough = std::move(thorough_);
  }
}

std::shared_ptr<PlanningRun> LiveCorrection::begin(const Key& key, Search search) {
  const bool thorough = search != Search::kQuick;
  {
    const std::lock_guard lock(mutex_);
    if (quick_ == nullptr) return nullptr;
    State& state = states_[key];
    if (thorough && (state.queued || state.waiting)) return nullptr;
    if (!thorough) {
      state.queued = false;
      // Before the pool is asked, so that an end in between is not missed.
      state.waiting = true;
    }
  }
  auto run = backend_.planning().begin(key.first, key.second, PlannedFor::kCorrection);
  const std::lock_guard lock(mutex_);
  if (run == nullptr) return nullptr;
  State& state = states_[key];
  if (!thorough) state.waiting = false;
  if (thorough && state.queued) run->cancel = true;
  if (thorough) state.going = run;
  return run;
}

void LiveCorrection::end(const Key& key, PlanningRun& run) {
  {
    const std::lock_guard lock(mutex_);
    State& state = states_[key];
    state.going = nullptr;
    // Cancelled for a person's planning or for a report, which is queued then.
    if (run.cancel) state.waiting = true;
    if (!state.queued && !state.waiting) states_.erase(key);
  }
  backend_.planning().end(run);
}

void LiveCorrection::correct(const Key& key, Search search) {
  const auto run = begin(key, search);
  if (run == nullptr) return;
  const auto next = tryCorrect(key, search, *run);
  end(key, *run);
  const std::lock_guard lock(mutex_);
  if (next && thorough_ != nullptr) post(key, *next);
}

std::optional<LiveCorrection::Search> LiveCorrection::tryCorrect(const Key& key, Search search,
                                                                 PlanningRun& run) {
  const bool quick = search == Search::kQuick;
  RunningEvent event;
  // Without a plan there is nothing to correct; documents that no longer fit together are told to who plans.
  if (readRunningEvent(backend_, key.first, key.second, event).failed()) return std::nullopt;
  if (event.documents.event.live_correction() == v1::LIVE_CORRECTION_OFF || isOver(event) ||
      event.running.progress.reports().empty())
    return std::nullopt;
  if (search == Search::kClashes) {
    tellClashes(key, event, run);
    return std::nullopt;
  }
  TimeUp time(quick ? std::chrono::nanoseconds(kQuick) : std::chrono::nanoseconds(kThorough), run);
  compose::PlanOptions options;
  options.workLimit = kWork;
  options.clashesLater = event.documents.event.live_correction() != v1::LIVE_CORRECTION_ASK_FIRST;
  auto tables = keptTables().take(key);
  event.running.tables = tables.get();
  auto made = compose::correctPlan(event.documents, event.running, options, &time);
  keptTables().keep(key, std::move(tables));
  if (run.cancel) return std::nullopt;
  const auto instead = quick && time.wasCut() ? std::optional(Search::kInstead) : std::nullopt;
  if (!made.ok()) {
    if (!time.wasCut()) spdlog::warn("correcting a plan failed: {}", made.status().ToString());
    return instead;
  }
  // A dish is not given up for want of a moment's thought.
  if (instead && made->plan.unserved_size() > event.running.plan.unserved_size()) return instead;
  const bool untold = isShort(made->plan) && made->plan.clashes().empty() && options.clashesLater;
  const bool better = quick && isShort(made->plan) && time.wasCut();
  std::vector<storage::Put> puts =
      Outcome(backend_, key.first, event).puts(*std::move(made), search == Search::kBetter);
  if (!puts.empty()) {
    const absl::Status status = write(key, std::move(puts));
    // Somebody stored another plan meanwhile: it is corrected instead.
    if (status.code() == absl::StatusCode::kAborted) reported(key.first, key.second);
    if (better) return Search::kBetter;
  }
  return untold ? std::optional(Search::kClashes) : std::nullopt;
}

// Of the plan that is stored, which stays as it is.
void LiveCorrection::tellClashes(const Key& key, const RunningEvent& event, PlanningRun& run) {
  v1::Plan plan = event.running.plan;
  if (!isShort(plan) || !plan.clashes().empty()) return;
  auto clashes =
      compose::clashesOf(event.documents, event.running, [&run] { return run.cancel || run.stop; });
  if (!clashes.ok() || clashes->empty() || run.cancel || run.stop) return;
  *plan.mutable_clashes() = *std::move(clashes);
  std::vector<storage::Put> puts = {putOf(plan, storage::Expect::kPresent)};
  puts.back().etag = event.running.plan.meta().etag();
  // Where somebody stored another plan meanwhile, that one's are told.
  write(key, std::move(puts)).IgnoreError();
}

// Waited for, so that whoever plans the event next begins with this plan.
absl::Status LiveCorrection::write(const Key& key, std::vector<storage::Put> puts) {
  storage::WriteRequest write;
  write.householdId = key.first;
  write.puts = std::move(puts);
  std::promise<absl::Status> written;
  backend_.queue().submit(std::move(write), [&written](const absl::StatusOr<storage::WriteResult>& result) {
    written.set_value(result.status());
  });
  return written.get_future().get();
}

}  // namespace suppertide::service
