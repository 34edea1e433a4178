#include "server/service/metrics.h"

#include <prometheus/collectable.h>
#include <prometheus/counter.h>
#include <prometheus/exposer.h>
#include <prometheus/histogram.h>
#include <prometheus/registry.h>
#include <prometheus/text_serializer.h>

#include <exception>
#include <map>
#include <mutex>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "server/service/listen_address.h"

namespace suppertide::service {
namespace {

// Seconds. A read takes some tenths of a millisecond, a plan half a minute.
const prometheus::Histogram::BucketBoundaries kBounds = {0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05,
                                                         0.1,    0.25,  0.5,    1,     5,    30,    120};

// Numbers that are looked up when somebody asks.
class Gauges : public prometheus::Collectable {
 public:
  void add(const std::string& name, const std::string& help, std::function<double()> read) {
    std::lock_guard lock(mutex_);
    gauges_.push_back({name, help, std::move(read)});
  }
  std::vector<prometheus::MetricFamily> Collect() const override {
    std::lock_guard lock(mutex_);
    std::vector<prometheus::MetricFamily> families;
    for (const Gauge& gauge : gauges_) {
      prometheus::ClientMetric metric;
      metric.gauge.value = gauge.read();
      families.push_back({gauge.name, gauge.help, prometheus::MetricType::Gauge, {metric}});
    }
    return families;
  }

 private:
  struct Gauge {
    std::string name;
    std::string help;
    std::function<double()> read;
  };
  mutable std::mutex mutex_;
  std::vector<Gauge> gauges_;  // guarded by mutex_
};

}  // namespace

struct Metrics::State {
  std::shared_ptr<prometheus::Registry> registry = std::make_shared<prometheus::Registry>();
  std::shared_ptr<Gauges> gauges = std::make_shared<Gauges>();
  prometheus::Family<prometheus::Counter>& calls = prometheus::BuildCounter()
                                                       .Name("suppertide_calls_total")
                                                       .Help("Calls, by gRPC status code.")
                                                       .Register(*registry);
  prometheus::Family<prometheus::Histogram>& seconds =
      prometheus::BuildHistogram()
          .Name("suppertide_call_seconds")
          .Help("How long calls took; streams count from open to end.")
          .Register(*registry);
  prometheus::Counter& callsOf(const std::string& method, int code);
  prometheus::Histogram& secondsOf(const std::string& method);
  std::mutex mutex;
  // The library's own way to a number, by its labels, takes longer than to count.
  std::map<std::pair<std::string, int>, prometheus::Counter*> knownCalls;  // guarded by mutex
  std::map<std::string, prometheus::Histogram*> knownSeconds;              // guarded by mutex
  std::unique_ptr<prometheus::Exposer> exposer;                            // first to go: it reads the rest
};

prometheus::Counter& Metrics::State::callsOf(const std::string& method, int code) {
  const std::lock_guard lock(mutex);
  prometheus::Counter*& counter = knownCalls[{method, code}];
  if (counter == nullptr) counter = &calls.Add({{"method", method}, {"code", std::to_string(code)}});
  return *counter;
}

prometheus::Histogram& Metrics::State::secondsOf(const std::string& method) {
  const std::lock_guard lock(mutex);
  prometheus::Histogram*& histogram = knownSeconds[method];
  if (histogram == nullptr) histogram = &seconds.Add({{"method", method}}, kBounds);
  return *histogram;
}

Metrics::Metrics() : state_(std::make_unique<State>()) {}
Metrics::~Metrics() = default;

void Metrics::called(const std::string& method, int code, std::chrono::microseconds spent) {
  state_->callsOf(method, code).Increment();
  state_->secondsOf(method).Observe(std::chrono::duration<double>(spent).count());
}

void Metrics::watch(const std::string& name, const std::string& help, std::function<double()> read) {
  state_->gauges->add(name, help, std::move(read));
}

std::string Metrics::text() const {
  auto families = state_->registry->Collect();
  for (auto& family : state_->gauges->Collect()) families.push_back(std::move(family));
  return prometheus::TextSerializer().Serialize(families);
}

absl::Status checkMetricsAddress(const std::string& address) {
  if (isUnixAddress(address) || !checkListenAddress(address, false).ok())
    return absl::InvalidArgumentError(absl::StrCat(
        "metrics address ", address, " is not HOST:PORT on this machine's loopback (127.0.0.1:9464)"));
  return absl::OkStatus();
}

absl::Status Metrics::serve(const std::string& address) {
  if (auto status = checkMetricsAddress(address); !status.ok()) return status;
  try {
    state_->exposer = std::make_unique<prometheus::Exposer>(address, 1);
  } catch (const std::exception&) {
    return absl::UnavailableError(absl::StrCat("cannot serve metrics on ", address, ": it is taken"));
  }
  state_->exposer->RegisterCollectable(state_->registry);
  state_->exposer->RegisterCollectable(state_->gauges);
  return absl::OkStatus();
}

void Metrics::stopServing() {
  state_->exposer.reset();
}

int Metrics::port() const {
  if (state_->exposer == nullptr) return 0;
  const std::vector<int> ports = state_->exposer->GetListeningPorts();
  return ports.empty() ? 0 : ports.front();
}

}  // namespace suppertide::service
