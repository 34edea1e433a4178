// One write at a time: ours against gRPC's echo with one full-sync commit in it, call by call, so that
// whatever else the machine does falls on both alike.
#include <cstdio>

#include "tests/bench/service_bench/calls.h"
#include "tests/bench/service_bench/measurements.h"
#include "tests/bench/service_bench/samples.h"

namespace suppertide::bench {
namespace {

constexpr int kRounds = 5;

// What one kind of call took, in milliseconds.
struct Samples {
  std::vector<double> all;
  double p50() const { return quantile(all, 0.5); }
  double p99() const { return quantile(all, 0.99); }
};

template <typename Once>
void take(Samples& samples, Once once) {
  const auto begin = SteadyClock::now();
  once();
  samples.all.push_back(millisecondsSince(begin));
}

void print(const char* name, const Samples& row, const std::vector<const Samples*>& baselines) {
  std::printf("  %-34s p50 %7.3f ms   p99 %7.3f ms", name, row.p50(), row.p99());
  for (const Samples* baseline : baselines)
    std::printf("   %.2f x / %.2f x", row.p50() / baseline->p50(), row.p99() / baseline->p99());
  std::printf("\n");
}

}  // namespace

void measureWrites(const std::string& folder, int count) {
  std::printf("Unary writes, one in flight, %d each a round, one of each in turn\n", count);
  const Peer raw = startPeer(Peer::Kind::kRaw, folder + "/raw.sqlite", 0);
  const Peer ours = startPeer(Peer::Kind::kOurs, folder + "/ours.sqlite", 1);
  const auto rawChannel = connect(raw);
  const auto ourChannel = connect(ours);
  const auto stub = v1::RecipeService::NewStub(ourChannel);
  const Home& home = ours.homes.front();
  const v1::Recipe recipe = sampleRecipe("r");
  const std::string bytes = recipe.SerializeAsString();
  writeRecipe(*stub, home, recipe, true);
  for (int round = 0; round <= kRounds; ++round) {
    Samples echo;
    Samples health;
    Samples row;
    Samples document;
    Samples write;
    // Each commit comes after a small call of the same server, which so is as awake as the others.
    const auto wakeRaw = [&] { take(echo, [&] { callRaw(rawChannel, "Echo", bytes); }); };
    const auto wakeOurs = [&] { take(health, [&] { callHealth(ourChannel); }); };
    for (int i = 0; i < count; ++i) {
      wakeRaw();
      take(row, [&] { callRaw(rawChannel, "Commit", bytes); });
      wakeOurs();
      take(write, [&] { writeRecipe(*stub, home, recipe, false); });
      wakeRaw();
      take(document, [&] { callRaw(rawChannel, "CommitDocument", bytes); });
    }
    if (round == 0) continue;  // connections stand now, and the logs have grown to their size
    print("echo alone", echo, {});
    print("our health check alone", health, {});
    print("echo + one row, full sync", row, {});
    print("echo + one document, full sync", document, {&row});
    print("UpdateRecipe", write, {&row, &document});
  }
  stopPeer(ours);
  stopPeer(raw);
}

}  // namespace suppertide::bench
