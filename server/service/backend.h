// What all services share: storage with its writing thread, watchers, people at
// the door, and the threads for work that must not sit on gRPC's.
#pragma once

#include <grpcpp/server_context.h>
#include <grpcpp/support/server_callback.h>

#include <atomic>
#include <functional>
#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "server/compose/planner.h"
#include "server/service/call_log.h"
#include "server/service/documents.h"
#include "server/service/failure.h"
#include "server/service/in_flight.h"
#include "server/service/known_people.h"
#include "server/service/live_correction.h"
#include "server/service/metrics.h"
#include "server/service/planning_pool.h"
#include "server/service/rate_limit.h"
#include "server/service/secrets.h"
#include "server/service/streams.h"
#include "server/service/workers.h"
#include "server/storage/store.h"
#include "server/storage/write_queue.h"
#include "server/sync/hub.h"

namespace suppertide::service {

class ReminderBoard;

using Planner = std::function<absl::StatusOr<v1::Plan>(const compose::Documents&, const compose::PlanOptions&,
                                                       compose::PlanMonitor*)>;

class Backend {
 public:
  static constexpr int kReaders = 2;
  static constexpr int kCalculators = 2;

  struct Options {
    int planningThreads = 1;
    std::chrono::milliseconds bookmarkInterval{10'000};
    Planner planner = compose::planEvent;
    std::string certificateFingerprint;  // for invitations; empty: nothing to compare
  };

  Backend(std::unique_ptr<storage::Store> store, const Clock& clock, Options options);
  ~Backend();

  storage::Store& store() { return *store_; }
  storage::WriteQueue& queue() { return *queue_; }
  sync::Hub& hub() { return hub_; }
  Streams& streams() { return streams_; }
  Workers& readers() { return readers_; }
  // For what takes so long that reading must not wait for it, yet must not wait for a
  // planning: audits, doughs, menus, ovens. Under a household's id, which take turns.
  Workers& calculators() { return calculators_; }
  PlanningPool& planning() { return planning_; }
  LiveCorrection& corrections() { return corrections_; }
  ReminderBoard& reminders() { return *reminders_; }
  RateLimit& codeTries() { return codeTries_; }
  Metrics& metrics() { return metrics_; }
  // Where calendars are served; 0: nowhere. Set once, before the first call.
  void servesCalendars(int port, bool tls) {
    calendarPort_ = port;
    calendarTls_ = tls;
  }
  int calendarPort() const { return calendarPort_; }
  bool calendarTls() const { return calendarTls_; }
  const Clock& clock() const { return clock_; }
  const Options& options() const { return options_; }

  // Whose token the call carries, allowed to make it on `householdId` (empty:
  // the token's own). May read the disk. UNAUTHENTICATED without a valid token,
  // PERMISSION_DENIED for another household or too small a role.
  Failure admit(const grpc::CallbackServerContext& context, const std::string& method,
                const std::string& householdId, Caller& caller);
  // Whether a caller admitted before is known still. Reads the disk.
  Failure admitAgain(const Caller& caller);
  // Gives the caller's household a place among the calls worked on, free again when
  // `place` goes. RESOURCE_EXHAUSTED when it has all it may have; watches have
  // places of their own, as have other streams.
  Failure enter(const Caller& caller, const std::string& method, bool stream, std::shared_ptr<void>& place);
  // As enter(), among the imports that take much memory; null when there is no place.
  std::shared_ptr<void> enterLargeImport(const Caller& caller);

 private:
  const Clock& clock_;
  Options options_;
  int calendarPort_ = 0;
  bool calendarTls_ = false;
  Metrics metrics_;  // outlives all that counts
  InFlight calls_;   // of each household, by its id, as the next three
  InFlight watches_;
  InFlight otherStreams_;
  InFlight largeImports_;
  std::unique_ptr<storage::Store> store_;
  KnownPeople people_;
  sync::Hub hub_;
  Streams streams_;
  RateLimit codeTries_;
  RateLimit tokenTries_;
  LiveCorrection corrections_;  // outlives all that tell it something; its threads end first
  std::unique_ptr<storage::WriteQueue> queue_;
  Workers readers_;
  Workers calculators_;
  PlanningPool planning_;
  std::unique_ptr<ReminderBoard> reminders_;
};

// Who seems to call, before anybody looked: calls of one device take turns with others'.
std::string turnOf(const grpc::CallbackServerContext& context);
// Where from, without the port, which changes with each connection.
std::string peerOf(const grpc::CallbackServerContext& context);
Failure tooManyCalls();
Failure nobodyWaits();

// The request id, where the request has one.
template <typename Request>
std::string requestIdOf(const Request& request) {
  if constexpr (requires { request.request_id(); })
    return request.request_id();
  else
    return "";
}

// Serves one unary call: admits the caller on a reading thread, then runs
// `handle`, which calls its `finish` once, from any thread.
using Finish = std::function<void(const Failure&)>;
template <typename Request, typename Handler>
grpc::ServerUnaryReactor* serve(Backend& backend, grpc::CallbackServerContext* context,
                                const Request* request, const std::string& method,
                                const std::string& householdId, Handler handle) {
  grpc::ServerUnaryReactor* reactor = context->DefaultReactor();
  const CallLog log(backend.metrics(), method, requestIdOf(*request));
  const auto finishAs = [context, reactor, log](const std::string& id, const Failure& why) {
    const grpc::Status status = finishWith(*context, why);
    log.finished(status, id);
    reactor->Finish(status);
  };
  const bool taken = backend.readers().offer(
      turnOf(*context), [&backend, context, request, method, householdId, handle, finishAs] {
        Caller caller;
        if (const Failure refused = backend.admit(*context, method, householdId, caller); refused.failed())
          return finishAs("", refused);
        std::shared_ptr<void> place;
        if (const Failure full = backend.enter(caller, method, false, place); full.failed())
          return finishAs(caller.householdId, full);
        handle(caller, *request,
               [finishAs, place, id = caller.householdId](const Failure& why) { finishAs(id, why); });
      });
  if (!taken) finishAs("", tooManyCalls());
  return reactor;
}

// As serve(), for work that may take long: `work` runs on a calculating thread when its
// household's turn comes, and not at all when the client has left. It returns why it
// failed; its last argument tells, at any time, whether nobody waits any more.
template <typename Request, typename Work>
grpc::ServerUnaryReactor* serveCalculated(Backend& backend, grpc::CallbackServerContext* context,
                                          const Request* request, const std::string& method,
                                          const std::string& householdId, Work work) {
  return serve(backend, context, request, method, householdId,
               [&backend, context, work](const Caller& caller, const Request& asked, const Finish& finish) {
                 backend.calculators().post(
                     [context, work, caller, &asked, finish] {
                       const std::function<bool()> left = [context] { return context->IsCancelled(); };
                       finish(left() ? nobodyWaits() : work(caller, asked, left));
                     },
                     caller.householdId);
               });
}

}  // namespace suppertide::service
