// Many households at once: edits, reads and lists, while every household is watched.
#include <atomic>
#include <cstdio>
#include <mutex>
#include <thread>

#include "tests/bench/service_bench/calls.h"
#include "tests/bench/service_bench/measurements.h"
#include "tests/bench/service_bench/samples.h"
#include "tests/support/dice.h"

namespace suppertide::bench {
namespace {

constexpr int kClients = 8;
constexpr int kCallsASecond = 400;  // of all clients together

struct Counts {
  std::mutex mutex;
  std::vector<double> reads;   // guarded by mutex
  std::vector<double> writes;  // guarded by mutex
  std::atomic<int> errors = 0;
};

// One of the clients: its calls come at a steady rate, to one household after the other.
void live(const Peer& peer, int client, int seconds, std::vector<std::atomic<std::int64_t>>& revisions,
          Counts& counts) {
  Dice dice(static_cast<std::uint64_t>(client) + 1);
  const auto stub = v1::RecipeService::NewStub(connect(peer));
  const auto begin = SteadyClock::now();
  const auto apart = std::chrono::microseconds(1'000'000 * kClients / kCallsASecond);
  auto due = begin;
  while (due - begin < std::chrono::seconds(seconds)) {
    std::this_thread::sleep_until(due);
    due += apart;
    const auto number = static_cast<std::size_t>(dice.between(0, static_cast<int>(peer.homes.size()) - 1));
    const Home& home = peer.homes[number];
    const auto start = SteadyClock::now();
    const bool writes = dice.chance(40);
    if (writes) {
      const std::int64_t revision =
          writeRecipe(*stub, home, sampleRecipe("r" + std::to_string(dice.between(0, 4))), false);
      if (revision == 0) ++counts.errors;
      for (std::int64_t seen = revisions[number]; seen < revision;)
        if (revisions[number].compare_exchange_weak(seen, revision)) break;
    } else if (dice.chance(50)) {
      v1::GetRecipeRequest asked;
      asked.set_household_id(home.id);
      asked.set_recipe_id("r0");
      v1::Recipe answer;
      if (!stub->GetRecipe(contextOf(home.token).get(), asked, &answer).ok()) ++counts.errors;
    } else {
      v1::ListRecipesRequest asked;
      asked.set_household_id(home.id);
      v1::ListRecipesResponse answer;
      if (!stub->ListRecipes(contextOf(home.token).get(), asked, &answer).ok()) ++counts.errors;
    }
    const std::lock_guard lock(counts.mutex);
    (writes ? counts.writes : counts.reads).push_back(millisecondsSince(start));
  }
}

void print(const char* name, const std::vector<double>& samples) {
  std::printf("  %-10s %7zu calls   p50 %7.3f ms   p99 %7.3f ms   worst %7.2f ms\n", name, samples.size(),
              quantile(samples, 0.5), quantile(samples, 0.99), quantile(samples, 1));
}

}  // namespace

void measureMixed(const std::string& folder, int households, int watchersEach, int seconds) {
  std::printf("%d households, %d watchers each, %d calls a second (40 %% writes), %d s\n", households,
              watchersEach, kCallsASecond, seconds);
  const Peer peer = startPeer(Peer::Kind::kOurs, folder + "/mixed.sqlite", households);
  const auto stub = v1::RecipeService::NewStub(connect(peer));
  std::vector<std::atomic<std::int64_t>> revisions(peer.homes.size());
  for (std::size_t i = 0; i < peer.homes.size(); ++i)
    for (int r = 0; r < 5; ++r)
      revisions[i] = writeRecipe(*stub, peer.homes[i], sampleRecipe("r" + std::to_string(r)), true);
  std::vector<std::shared_ptr<grpc::Channel>> channels;
  std::vector<std::atomic<std::int64_t>> delivered(peer.homes.size() *
                                                   static_cast<std::size_t>(watchersEach));
  std::vector<std::unique_ptr<Listening>> watches;
  std::atomic<std::int64_t> skipped = 0;
  for (std::size_t w = 0; w < delivered.size(); ++w) {
    if (w % 50 == 0) channels.push_back(connect(peer));
    const std::size_t home = w / static_cast<std::size_t>(watchersEach);
    delivered[w] = revisions[home].load();
    watches.push_back(std::make_unique<Listening>(channels.back(), peer.kind, peer.homes[home],
                                                  revisions[home],
                                                  [&, w](std::size_t, std::int64_t revision) {
                                                    if (revision > delivered[w] + 1) ++skipped;
                                                    if (revision > delivered[w]) delivered[w] = revision;
                                                  }));
  }
  Counts counts;
  {
    std::vector<std::jthread> clients;
    for (int c = 0; c < kClients; ++c)
      clients.emplace_back([&, c] { live(peer, c, seconds, revisions, counts); });
  }
  std::this_thread::sleep_for(std::chrono::seconds(1));
  int behind = 0;
  for (std::size_t w = 0; w < delivered.size(); ++w)
    behind += delivered[w] < revisions[w / static_cast<std::size_t>(watchersEach)] ? 1 : 0;
  print("reads", counts.reads);
  print("writes", counts.writes);
  std::printf(
      "  %d errors, %d of %zu watchers behind after a second, %lld revisions left out, server %.0f MB\n",
      counts.errors.load(), behind, delivered.size(), static_cast<long long>(skipped.load()),
      memoryOf(peer) / 1e6);
  watches.clear();
  stopPeer(peer);
}

}  // namespace suppertide::bench
