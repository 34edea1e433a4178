// One write at a time: ours against gRPC's echo with one full-sync commit in it.
#include <cstdio>

#include "tests/bench/service_bench/calls.h"
#include "tests/bench/service_bench/measurements.h"
#include "tests/bench/service_bench/samples.h"

namespace suppertide::bench {
namespace {

struct Row {
  double p50 = 0;
  double p99 = 0;
};

template <typename Once>
Row measured(int count, Once once) {
  std::vector<double> samples;
  for (int i = 0; i < count / 10; ++i) once();  // the log file has grown to its size, connections stand
  for (int i = 0; i < count; ++i) {
    const auto begin = SteadyClock::now();
    once();
    samples.push_back(millisecondsSince(begin));
  }
  return {quantile(samples, 0.5), quantile(samples, 0.99)};
}

void print(const char* name, const Row& row, const Row* baseline) {
  std::printf("  %-42s p50 %7.3f ms   p99 %7.3f ms", name, row.p50, row.p99);
  if (baseline != nullptr)
    std::printf("   %.2f x / %.2f x", row.p50 / baseline->p50, row.p99 / baseline->p99);
  std::printf("\n");
}

}  // namespace

void measureWrites(const std::string& folder, int count) {
  std::printf("Unary writes, one in flight, %d each, turns of each other\n", count);
  const Peer raw = startPeer(Peer::Kind::kRaw, folder + "/raw.sqlite", 0);
  const Peer ours = startPeer(Peer::Kind::kOurs, folder + "/ours.sqlite", 1);
  const auto rawChannel = connect(raw);
  const auto stub = v1::RecipeService::NewStub(connect(ours));
  const Home& home = ours.homes.front();
  const v1::Recipe recipe = sampleRecipe("r");
  const std::string bytes = recipe.SerializeAsString();
  writeRecipe(*stub, home, recipe, true);
  const Row echo = measured(count, [&] { rawCall(rawChannel, "Echo", bytes); });
  const Row commit = measured(count, [&] { rawCall(rawChannel, "Commit", bytes); });
  const Row write = measured(count, [&] { writeRecipe(*stub, home, recipe, false); });
  const Row again = measured(count, [&] { rawCall(rawChannel, "Commit", bytes); });
  print("echo alone", echo, nullptr);
  print("echo + one full-sync commit (before)", commit, nullptr);
  print("echo + one full-sync commit (after)", again, nullptr);
  const Row baseline{(commit.p50 + again.p50) / 2, (commit.p99 + again.p99) / 2};
  print("UpdateRecipe", write, &baseline);
  stopPeer(ours);
  stopPeer(raw);
}

}  // namespace suppertide::bench
