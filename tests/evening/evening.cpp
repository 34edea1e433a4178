#include "tests/evening/evening.h"

#include <google/protobuf/util/message_differencer.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <map>
#include <set>

#include "absl/strings/str_cat.h"
#include "absl/time/time.h"
#include "client/link/request_id.h"
#include "server/base/ids.h"
#include "server/service/server.h"
#include "tests/evening/cook_client.h"
#include "tests/evening/kitchen_truth.h"

namespace suppertide::evening {
namespace {

constexpr int kTick = 5 * 60;
constexpr int kMinute = 60;

// A server of its own, with the household's people on it.
class Party {
 public:
  Party(const v1::Bundle& bundle, std::int64_t begin)
      : clock_(Instant(std::chrono::seconds(begin))),
        folder_(std::filesystem::temp_directory_path() / ("evening-" + newId())) {
    std::filesystem::create_directory(folder_);
    service::Server::Options options;
    options.listen = "unix:" + (folder_ / "s").string();
    options.fullSync = false;
    auto started = service::Server::start(options, clock_);
    if (!started.ok()) std::abort();
    server_ = *std::move(started);
    found(bundle);
  }
  ~Party() {
    cooks.clear();
    server_.reset();
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }

  service::Server& server() { return *server_; }
  ManualClock& clock() { return clock_; }
  CookClient& host() { return *cooks.front(); }
  const std::string& household() const { return household_; }

  std::vector<std::unique_ptr<CookClient>> cooks;  // the host first

 private:
  void found(const v1::Bundle& bundle) {
    link::Session stranger({.target = server_->target(), .deviceToken = "", .certificatePem = ""});
    v1::CreateHouseholdRequest request;
    request.set_host_code(server_->hostCode());
    request.mutable_household()->set_display_name("Evening");
    request.mutable_household()->set_time_zone(bundle.household().time_zone());
    for (const v1::Member& member : bundle.household().members())
      if (member.role() == v1::ROLE_HOST && request.household().members().empty())
        *request.mutable_household()->add_members() = member;
    request.set_request_id(link::newRequestId());
    const auto created = stranger.createHousehold(request);
    if (!created.ok()) std::abort();
    household_ = created->household().id();
    add(created->member_id(), created->device_token());
    v1::ImportBundleRequest import;
    import.set_household_id(household_);
    *import.mutable_bundle() = bundle;
    import.set_request_id(link::newRequestId());
    if (const auto imported = host().session().importBundle(import); !imported.ok()) {
      std::fprintf(stderr, "%s\n", imported.status().ToString().c_str());
      std::abort();
    }
    for (const v1::EventCook& cook : bundle.events(0).cooks())
      if (cook.member_id() != created->member_id()) join(cook.member_id());
  }

  void join(const std::string& memberId) {
    v1::CreateInvitationRequest invite;
    invite.set_household_id(household_);
    invite.set_role(v1::ROLE_COOK);
    invite.set_member_id(memberId);
    invite.set_request_id(link::newRequestId());
    const auto invitation = host().session().createInvitation(invite);
    if (!invitation.ok()) std::abort();
    link::Session stranger({.target = server_->target(), .deviceToken = "", .certificatePem = ""});
    v1::JoinHouseholdRequest request;
    request.set_code(invitation->code());
    request.set_request_id(link::newRequestId());
    const auto joined = stranger.joinHousehold(request);
    if (!joined.ok()) std::abort();
    add(memberId, joined->device_token());
  }

  void add(const std::string& memberId, const std::string& token) {
    link::LinkOptions options;
    options.target = server_->target();
    options.householdId = household_;
    options.deviceToken = token;
    options.firstRetry = std::chrono::milliseconds(1);
    cooks.push_back(std::make_unique<CookClient>(memberId, options));
  }

  ManualClock clock_;
  const std::filesystem::path folder_;
  std::unique_ptr<service::Server> server_;
  std::string household_;
};

// Where a step stands in truth.
struct Standing {
  std::int64_t begun = 0;  // seconds; 0: not yet
  std::int64_t ends = 0;   // once begun, unless it turns out otherwise
  bool over = false;
  bool saidLate = false;
  bool looked = false;
  std::string oven;
  v1::FermentForecast forecast;  // of a ferment, as foreseen when it began
};

class Evening {
 public:
  Evening(const v1::Bundle& bundle, std::uint64_t seed)
      : bundle_(bundle),
        event_(bundle.events(0)),
        truth_(seed),
        begin_(bundle.plans(0).steps(0).start_time().seconds() - 30 * kMinute),
        party_(bundle, begin_) {
    for (const v1::Member& member : bundle.household().members()) names_[member.id()] = member.display_name();
    for (const v1::Dish& dish : event_.dishes()) {
      names_[dish.id()] = dish.display_name();
      for (const v1::Recipe& recipe : bundle.recipes())
        if (dish.display_name().empty() && recipe.id() == dish.recipe_id())
          names_[dish.id()] = recipe.display_name();
    }
    for (const v1::Kitchen& kitchen : bundle.kitchens())
      for (const v1::Oven& oven : kitchen.ovens()) names_[oven.id()] = oven.display_name();
    if (!absl::LoadTimeZone(event_.time_zone().empty() ? bundle.household().time_zone() : event_.time_zone(),
                            &zone_))
      zone_ = absl::UTCTimeZone();
    for (const v1::Course& course : event_.courses())
      last_ = std::max(last_, course.serving_time().seconds());
    drawTroubles();
  }

  Outcome play() {
    everybodySees();
    for (now_ = begin_; now_ <= last_ + 2 * 3600 && !allOver(); now_ += kTick) {
      party_.clock().set(Instant(std::chrono::seconds(now_)));
      troubles();
      for (const std::string& id : stepIds()) act(id);
    }
    comeBackAll();
    everybodySees();
    check();
    return std::move(out_);
  }

 private:
  using Seen = std::shared_ptr<const link::Replica>;
  const v1::Plan& planIn(const Seen& seen) const { return seen->plans.at(event_.id()); }
  Seen hostSees() { return party_.host().replica(); }

  void say(const std::string& line) {
    out_.story.push_back(
        absl::StrCat(absl::FormatTime("%a %H:%M", absl::FromUnixSeconds(now_), zone_), "  ", line));
  }
  std::string clock(std::int64_t seconds) const {
    return absl::FormatTime("%H:%M", absl::FromUnixSeconds(seconds), zone_);
  }
  std::string name(const std::string& id) const {
    const auto found = names_.find(id);
    return found == names_.end() ? id : found->second;
  }
  std::string stepName(const v1::PlannedStep& step) const {
    return absl::StrCat(step.title(), " · ", name(step.dish_id()));
  }
  void fault(const std::string& what) {
    out_.faults.push_back(
        absl::StrCat(absl::FormatTime("%a %H:%M", absl::FromUnixSeconds(now_), zone_), " ", what));
  }

  // ---- what goes wrong, drawn once ----

  void drawTroubles() {
    const std::int64_t first = begin_;
    const auto between = [&](double low, double high) {
      return first +
             static_cast<std::int64_t>(truth_.uniform(low, high) * static_cast<double>(last_ - first));
    };
    if (truth_.ovenBreaks()) breaksAt_ = between(0.6, 0.97);
    if (truth_.guestCancels()) cancelsAt_ = between(0.3, 0.95);
    if (truth_.clientDropsOff()) {
      offAt_ = between(0.5, 0.95);
      backAt_ = offAt_ + static_cast<std::int64_t>(truth_.uniform(20, 120)) * kMinute;
    }
  }

  void troubles() {
    if (due(offAt_)) {
      CookClient& cook = *party_.cooks.back();
      cook.dropOff();
      say(absl::StrCat(name(cook.memberId()), "'s device is off; what ", name(cook.memberId()),
                       " does is told later."));
    }
    if (due(backAt_)) comeBackAll();
    if (due(breaksAt_)) breakOven();
    if (due(cancelsAt_)) cancelGuest();
  }
  bool due(std::int64_t& moment) {
    if (moment == 0 || now_ < moment) return false;
    moment = 0;
    return true;
  }

  void comeBackAll() {
    for (auto& cook : party_.cooks) {
      if (cook->online()) continue;
      cook->comeBack();
      std::string refused;
      cook->tellWaiting(event_.id(), refused);
      if (!refused.empty()) fault(absl::StrCat("what waited was refused: ", refused));
      say(absl::StrCat(name(cook->memberId()), "'s device is back."));
      corrected("");
    }
  }

  v1::Event stored() { return party_.host().replica()->events.at(event_.id()); }

  void breakOven() {
    v1::Event event = stored();
    const auto& ovens = bundle_.kitchens(0).ovens();
    const std::string oven = ovens[ovens.size() - 1].id();
    v1::Unavailable& away = *event.add_unavailable();
    away.set_thing_id(oven);
    away.mutable_when()->mutable_start()->set_seconds(now_);
    away.mutable_when()->mutable_limit()->set_seconds(last_ + 24 * 3600);
    broken_ = oven;
    say(absl::StrCat(name(oven), " is broken."));
    replan(event);
    // What stood in it begins again elsewhere.
    for (auto& [id, standing] : steps_)
      if (standing.begun != 0 && !standing.over && standing.oven == oven) standing = Standing();
  }

  void cancelGuest() {
    v1::Event event = stored();
    if (event.guests().size() < 2) return;
    const std::string guest = event.guests(event.guests_size() - 1).display_name();
    event.mutable_guests()->RemoveLast();
    say(absl::StrCat(guest, " cannot come."));
    replan(event);
  }

  void replan(const v1::Event& event) {
    v1::ReplanRequest request;
    request.set_household_id(party_.household());
    request.set_event_id(event_.id());
    *request.mutable_event() = event;
    request.set_request_id(link::newRequestId());
    const auto answer = party_.host().session().replan(request);
    if (!answer.ok()) return fault(absl::StrCat("replanning was refused: ", answer.status().ToString()));
    corrected("");
  }

  // ---- what people do ----

  std::vector<std::string> stepIds() {
    std::vector<std::string> ids;
    const Seen seen = hostSees();
    for (const v1::PlannedStep& step : planIn(seen).steps())
      if (!step.left_out() && step.start_time().seconds() <= now_ + kTick && !steps_[step.id()].over)
        ids.push_back(step.id());
    return ids;
  }

  static const v1::PlannedStep* find(const v1::Plan& plan, const std::string& id) {
    for (const v1::PlannedStep& step : plan.steps())
      if (step.id() == id) return &step;
    return nullptr;
  }

  CookClient& whoTells(const v1::PlannedStep& step) {
    for (auto& cook : party_.cooks)
      if (cook->memberId() == step.cook_member_id()) return *cook;
    return party_.host();
  }

  void act(const std::string& id) {
    const Seen all = hostSees();
    const v1::PlannedStep* known = find(planIn(all), id);
    if (known == nullptr) return;
    // They go by what their own device shows.
    CookClient& cook = whoTells(*known);
    const Seen seen = cook.replica();
    const v1::Plan& shown = planIn(seen);
    const v1::PlannedStep* step = find(shown, id);
    if (step == nullptr) return;
    Standing& here = steps_[id];
    if (here.over) return;
    if (here.begun == 0) return begin(cook, shown, *step, here);
    goOn(cook, shown, *step, here);
  }

  bool isFerment(const v1::PlannedStep& step) const { return step.kind() == v1::STEP_KIND_FERMENT; }
  bool isBake(const v1::PlannedStep& step) const { return step.kind() == v1::STEP_KIND_OVEN; }
  bool hasHands(const v1::PlannedStep& step) const { return !step.cook_member_id().empty(); }

  // What the plan has before it in its dish is over in truth.
  bool mayBegin(const v1::Plan& shown, const v1::PlannedStep& step) {
    for (const v1::PlannedStep& other : shown.steps())
      if (other.dish_id() == step.dish_id() && other.id() != step.id() && !other.left_out() &&
          other.end_time().seconds() <= step.start_time().seconds() &&
          other.start_time().seconds() < step.end_time().seconds() && !steps_[other.id()].over)
        return false;
    return true;
  }

  void begin(CookClient& cook, const v1::Plan& shown, const v1::PlannedStep& step, Standing& here) {
    const std::int64_t start = step.start_time().seconds();
    if (start > now_ || !mayBegin(shown, step)) return;
    const int late = hasHands(step) ? truth_.lateBy(step.id()) : 0;
    if (late >= 10 && !here.saidLate) {
      here.saidLate = true;
      say(absl::StrCat(name(cook.memberId()), " will be ", late, " minutes late for ", stepName(step), "."));
      v1::Report report = about(step);
      report.mutable_delayed_by()->set_seconds(late * kMinute);
      return tell(cook, report);
    }
    if (!here.saidLate && late > 0 && now_ < start + late * kMinute) return;
    const std::int64_t planned = std::max<std::int64_t>(0, step.end_time().seconds() - start);
    here.begun = now_;
    here.oven = step.oven_id();
    double times = hasHands(step) ? truth_.lengthOf(step.id()) : 1;
    if (isBake(step)) times = truth_.ovenLength();
    here.ends = now_ + static_cast<std::int64_t>(static_cast<double>(planned) * times);
    if (isFerment(step)) beginFerment(shown, step, here);
    if (!hasHands(step) && !isBake(step)) return;
    say(absl::StrCat(name(cook.memberId()), isBake(step) ? " puts in: " : " begins: ", stepName(step),
                     now_ >= start + 10 * kMinute ? absl::StrCat(" (planned ", clock(start), ")") : ""));
    v1::Report report = about(step);
    report.set_started(true);
    tell(cook, report);
  }

  void beginFerment(const v1::Plan& shown, const v1::PlannedStep& step, Standing& here) {
    for (const v1::DoughForecast& dough : shown.doughs())
      for (const v1::FermentForecast& stage : dough.stages())
        if (stage.step_id() == step.id()) here.forecast = stage;
    // Ready when its dough is, at its own pace; never before it stood at all.
    const std::int64_t readyFrom = here.forecast.ready_from_time().seconds();
    if (readyFrom > 0)
      here.ends =
          here.begun +
          static_cast<std::int64_t>(
              std::max<double>(0, static_cast<double>(readyFrom - here.forecast.start_time().seconds())) /
              truth_.vigour());
  }

  double trueRise(const Standing& here) const {
    const double at = static_cast<double>(here.forecast.start_time().seconds()) +
                      static_cast<double>(now_ - here.begun) * truth_.vigour();
    double rise = 1;
    for (const v1::RiseSample& sample : here.forecast.samples()) {
      if (static_cast<double>(sample.time().seconds()) > at) break;
      rise = sample.rise();
    }
    return std::clamp(rise, 0.5, 8.0);
  }

  void goOn(CookClient& cook, const v1::Plan&, const v1::PlannedStep& step, Standing& here) {
    if (isFerment(step)) return watchDough(cook, step, here);
    if (now_ < here.ends) {
      if (isBake(step) && now_ >= step.end_time().seconds()) needsMore(cook, step, here);
      return;
    }
    here.over = true;
    if (!hasHands(step) && !isBake(step)) return;
    say(absl::StrCat(name(cook.memberId()),
                     isBake(step) ? " takes out: " : " is done with: ", stepName(step)));
    v1::Report report = about(step);
    report.set_finished(true);
    tell(cook, report);
  }

  void needsMore(CookClient& cook, const v1::PlannedStep& step, const Standing& here) {
    const std::int64_t minutes = ((here.ends - now_) / kMinute + 4) / 5 * 5;
    if (minutes < 5) return;
    say(absl::StrCat(name(cook.memberId()), " looks at ", stepName(step), ": it needs ", minutes, " more."));
    v1::Report report = about(step);
    report.mutable_needs_more_duration()->set_seconds(minutes * kMinute);
    tell(cook, report);
  }

  bool isDaytime() const {
    const int hour = absl::ToCivilHour(absl::FromUnixSeconds(now_), zone_).hour();
    return hour >= 7 && hour < 23;
  }

  // A look two thirds through, and again when the plan says that it should be ready and it is not.
  void watchDough(CookClient& cook, const v1::PlannedStep& step, Standing& here) {
    const std::int64_t end = step.end_time().seconds();
    const std::int64_t look = here.begun + (end - here.begun) * 2 / 3;
    if (!here.looked && now_ >= look && isDaytime()) {
      here.looked = true;
      return tellRise(cook, step, here);
    }
    if (now_ < end) return;
    if (now_ >= here.ends) {
      here.over = true;
      return;
    }
    if (isDaytime()) tellRise(cook, step, here);
  }

  void tellRise(CookClient& cook, const v1::PlannedStep& step, const Standing& here) {
    const double rise = trueRise(here);
    say(absl::StrCat(name(cook.memberId()), " looks at ", stepName(step), ": risen to ",
                     std::round(rise * 100) / 100, " (ready from ",
                     std::round(here.forecast.low_rise() * 100) / 100, ")"));
    v1::Report report = about(step);
    report.set_rise(rise);
    tell(cook, report);
  }

  // ---- telling, and what comes of it ----

  v1::Report about(const v1::PlannedStep& step) const {
    v1::Report report;
    report.set_id(link::newRequestId());
    report.set_dish_id(step.dish_id());
    report.set_step_id(step.step_id());
    report.mutable_happen_time()->set_seconds(now_);
    return report;
  }

  void tell(CookClient& cook, v1::Report report) {
    report.set_member_id(cook.memberId());
    told_.push_back(report.id());
    ++out_.reports;
    const auto before = std::chrono::steady_clock::now();
    std::string refused;
    cook.tell(event_.id(), report, refused);
    if (!refused.empty())
      fault(absl::StrCat(report.dish_id(), "/", report.step_id(), " was refused: ", refused));
    if (!cook.online()) return;
    const bool moved = corrected(report.id());
    if (!moved) return;
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - before;
    out_.corrections.push_back(took.count());
  }

  void everybodySees() {
    const auto revision = party_.server().backend().store().revision(party_.household());
    for (auto& cook : party_.cooks)
      if (cook->online() && !cook->waitFor(revision.value_or(0)))
        fault(absl::StrCat(cook->memberId(), " is not told any more"));
  }

  // Waits for what the server makes of it; whether another plan came.
  bool corrected(const std::string& reportId) {
    party_.server().backend().corrections().waitUntilDone();
    everybodySees();
    const Seen seen = hostSees();
    const v1::Plan& now = planIn(seen);
    if (now.meta().revision() == lastPlan_) return false;
    const bool first = lastPlan_ == 0;
    lastPlan_ = now.meta().revision();
    if (first && reportId.empty()) return false;
    ++out_.plans;
    // A dish under way may be over its dough's own limits, or late, rather than be thrown away; the plan says
    // so.
    for (const v1::Breach& breach : now.breaches())
      if (breach.rule() != v1::HARD_RULE_READINESS && breach.rule() != v1::HARD_RULE_SERVING &&
          breach.rule() != v1::HARD_RULE_GAP)
        fault(absl::StrCat("a stored plan breaks a rule: ", breach.ShortDebugString()));
    for (const v1::MovedStep& moved : now.moved_steps()) {
      ++out_.moves;
      if (!moved.has_new_start_time() || !moved.has_old_start_time()) continue;
      const std::int64_t by = moved.new_start_time().seconds() - moved.old_start_time().seconds();
      if (by != 0 && std::abs(by) < 5 * kMinute)
        fault(absl::StrCat("a flutter of ", by, " s: ", moved.step_id()));
      if (by == 0) continue;
      say(absl::StrCat("    the plan moves ", moved.title(), " from ",
                       clock(moved.old_start_time().seconds()), " to ",
                       clock(moved.new_start_time().seconds()), why(now, moved)));
    }
    return true;
  }

  std::string why(const v1::Plan& plan, const v1::MovedStep& moved) const {
    std::string text = absl::StrCat(", ", v1::MoveCause_Name(moved.cause()).substr(11));
    if (const v1::PlannedStep* other = find(plan, moved.cause_step_id()))
      absl::StrAppend(&text, ": ", other->title());
    return text;
  }

  // ---- the end ----

  bool allOver() {
    const Seen seen = hostSees();
    for (const v1::PlannedStep& step : planIn(seen).steps())
      if (!step.left_out() && !steps_[step.id()].over) return false;
    return true;
  }

  void check() {
    checkServed();
    checkAgreement();
    checkNothingLost();
  }

  void checkServed() {
    const Seen seen = hostSees();
    const v1::Plan& final = planIn(seen);
    out_.unserved = final.unserved_size();
    std::map<std::string, std::int64_t> serving;
    for (const v1::Course& course : event_.courses()) serving[course.id()] = course.serving_time().seconds();
    for (const v1::Dish& dish : event_.dishes()) {
      const bool unserved = std::any_of(final.unserved().begin(), final.unserved().end(),
                                        [&](const v1::Unserved& u) { return u.dish_id() == dish.id(); });
      if (unserved) {
        say(absl::StrCat(name(dish.id()), " is not served; the plan says so."));
        continue;
      }
      std::int64_t ready = 0;
      for (const v1::PlannedStep& step : final.steps()) {
        if (step.dish_id() != dish.id() || step.left_out()) continue;
        const Standing& standing = steps_[step.id()];
        if (!standing.over) fault(absl::StrCat(name(dish.id()), " was never finished: ", step.title()));
        ready = std::max(ready, standing.ends);
      }
      const auto late = static_cast<int>((ready - serving[dish.course_id()]) / kMinute);
      out_.lateMinutes = std::max(out_.lateMinutes, late);
      if (late <= kToldWithin) continue;
      int told = 0;
      for (const v1::PlannedDish& planned : final.dishes())
        if (planned.dish_id() == dish.id())
          told = static_cast<int>(planned.late_duration().seconds() / kMinute);
      say(absl::StrCat(name(dish.id()), " is ", late, " minutes late; the plan said ", told, "."));
      if (told == 0)
        fault(absl::StrCat(name(dish.id()), " was ", late, " minutes late and the plan never said so"));
    }
  }

  void checkAgreement() {
    v1::ExportBundleRequest request;
    request.set_household_id(party_.household());
    const auto bundle = party_.host().session().exportBundle(request);
    if (!bundle.ok()) return fault("nothing can be exported");
    for (auto& cook : party_.cooks) {
      const auto replica = cook->replica();
      using google::protobuf::util::MessageDifferencer;
      const bool same =
          MessageDifferencer::Equals(replica->plans.at(event_.id()), bundle->plans(0)) &&
          MessageDifferencer::Equals(replica->progresses.at(event_.id()), bundle->progresses(0)) &&
          MessageDifferencer::Equals(replica->events.at(event_.id()), bundle->events(0));
      if (!same)
        fault(absl::StrCat(name(cook->memberId()), "'s client shows another evening than the server"));
    }
  }

  void checkNothingLost() {
    std::set<std::string> kept;
    for (const v1::Report& report : party_.host().replica()->progresses.at(event_.id()).reports())
      kept.insert(report.id());
    for (const std::string& id : told_)
      if (kept.count(id) == 0) fault("a report was lost");
  }

  // Minutes; what follows the last report need not be told any more.
  static constexpr int kToldWithin = 10;

  const v1::Bundle& bundle_;
  const v1::Event event_;
  KitchenTruth truth_;
  const std::int64_t begin_;
  Party party_;
  absl::TimeZone zone_;
  std::map<std::string, std::string> names_;
  std::map<std::string, Standing> steps_;
  std::vector<std::string> told_;
  std::string broken_;
  std::int64_t now_ = 0;
  std::int64_t last_ = 0;
  std::int64_t lastPlan_ = 0;
  std::int64_t breaksAt_ = 0;
  std::int64_t cancelsAt_ = 0;
  std::int64_t offAt_ = 0;
  std::int64_t backAt_ = 0;
  Outcome out_;
};

}  // namespace

Outcome playEvening(const v1::Bundle& planned, std::uint64_t seed) {
  return Evening(planned, seed).play();
}

v1::Bundle withPlan(v1::Bundle bundle, int seconds) {
  bundle.clear_plans();
  bundle.clear_progresses();
  Party party(bundle, bundle.events(0).courses(0).serving_time().seconds() - 5 * 24 * 3600);
  v1::MakePlanRequest request;
  request.set_household_id(party.household());
  request.set_event_id(bundle.events(0).id());
  request.mutable_time_limit()->set_seconds(seconds);
  request.set_request_id(link::newRequestId());
  const auto made = party.host().session().makePlan(request, nullptr);
  if (!made.ok()) std::abort();
  *bundle.add_plans() = made->plan();
  bundle.mutable_plans(0)->clear_meta();
  return bundle;
}

}  // namespace suppertide::evening
