// One change to many watchers of one household, and what a watcher costs while nothing happens.
#include <atomic>
#include <cstdio>
#include <thread>

#include "tests/bench/service_bench/calls.h"
#include "tests/bench/service_bench/measurements.h"
#include "tests/bench/service_bench/samples.h"

namespace suppertide::bench {
namespace {

constexpr int kPerConnection = 100;
constexpr int kWatchesOfAHousehold = 1000;  // the server's limit is a little above

struct Told {
  double last = 0;  // median over the changes, from the call to the last watcher
  double worst = 0;
  double memoryEach = 0;  // bytes
  double messageBytes = 0;
};

// Streams to all watchers, and a count of what came.
class Audience {
 public:
  Audience(const Peer& peer, int watchers) : peer_(peer) {
    const double before = memoryOf(peer);
    for (int i = 0; i < watchers; ++i) {
      if (i % kPerConnection == 0) channels_.push_back(connect(peer));
      const Home home =
          peer.homes.empty() ? Home{} : peer.homes[static_cast<std::size_t>(i / kWatchesOfAHousehold)];
      streams_.push_back(std::make_unique<Listening>(channels_.back(), peer.kind, home, 1,
                                                     [this](std::size_t bytes, std::int64_t) {
                                                       bytes_ = bytes;
                                                       ++got_;
                                                       got_.notify_one();
                                                     }));
    }
    std::this_thread::sleep_for(std::chrono::seconds(2));  // all are open, first bookmarks have come
    memoryEach_ = (memoryOf(peer) - before) / watchers;
  }
  void expect() { got_ = 0; }
  void wait(int count) {
    for (int got = got_; got < count; got = got_) got_.wait(got);
  }
  double memoryEach() const { return memoryEach_; }
  double messageBytes() const { return static_cast<double>(bytes_); }

 private:
  const Peer& peer_;
  std::atomic<int> got_ = 0;
  std::atomic<std::size_t> bytes_ = 0;
  std::vector<std::shared_ptr<grpc::Channel>> channels_;
  std::vector<std::unique_ptr<Listening>> streams_;
  double memoryEach_ = 0;
};

template <typename Send>
Told measured(const Peer& peer, int watchers, int changes, Send send) {
  Audience audience(peer, watchers);
  std::vector<double> last;
  for (int i = 0; i < changes; ++i) {
    audience.expect();
    const auto begin = SteadyClock::now();
    send();
    audience.wait(watchers);
    last.push_back(millisecondsSince(begin));
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
  }
  return {quantile(last, 0.5), quantile(last, 1), audience.memoryEach(), audience.messageBytes()};
}

void print(const char* name, const Told& told) {
  std::printf("  %-42s last %7.2f ms   worst %7.2f ms   %6.1f kB a watcher   message %5.0f bytes\n", name,
              told.last, told.worst, told.memoryEach / 1000, told.messageBytes);
}

}  // namespace

void measureFanOut(const std::string& folder, int watchers, int changes) {
  const int households = (watchers + kWatchesOfAHousehold - 1) / kWatchesOfAHousehold;
  std::printf(
      "One change to %d watchers (%d to a connection, %d households changed together), median of %d\n",
      watchers, kPerConnection, households, changes);
  Told ours;
  {
    const Peer peer = startPeer(Peer::Kind::kOurs, folder + "/fan.sqlite", households);
    std::vector<std::unique_ptr<v1::RecipeService::Stub>> stubs;
    const v1::Recipe recipe = sampleRecipe("r");
    for (const Home& home : peer.homes) {
      stubs.push_back(v1::RecipeService::NewStub(connect(peer)));
      writeRecipe(*stubs.back(), home, recipe, true);
    }
    ours = measured(peer, watchers, changes, [&] {
      std::vector<std::jthread> writers;
      for (std::size_t i = 0; i < stubs.size(); ++i)
        writers.emplace_back([&, i] { writeRecipe(*stubs[i], peer.homes[i], recipe, false); });
    });
    stopPeer(peer);
  }
  const Peer raw = startPeer(Peer::Kind::kRaw, folder + "/fanraw.sqlite", 0);
  const auto channel = connect(raw);
  const std::string bytes(static_cast<std::size_t>(ours.messageBytes), 'x');
  const Told told = measured(raw, watchers, changes, [&] {
    callRaw(channel, "Commit", bytes);
    callRaw(channel, "Send", bytes);
  });
  stopPeer(raw);
  print("raw: one commit, then the same bytes to all", told);
  print("UpdateRecipe to all watchers", ours);
  std::printf("  %.2f x in time, %.1f kB more a watcher\n", ours.last / told.last,
              (ours.memoryEach - told.memoryEach) / 1000);
}

}  // namespace suppertide::bench
