// From starting the program to its first answer, with a large household on disk.
#include <cstdio>
#include <filesystem>

#include "server/service/documents.h"
#include "tests/bench/service_bench/calls.h"
#include "tests/bench/service_bench/measurements.h"
#include "tests/bench/service_bench/samples.h"

namespace suppertide::bench {
namespace {

Home fill(const std::string& file, int documents) {
  Home home;
  {
    const Peer peer = startPeer(Peer::Kind::kOurs, file, 1);
    home = peer.homes.front();
    stopPeer(peer);
  }
  const SystemClock clock;
  storage::Store::Options options;
  options.fullSync = false;
  const auto store = storage::Store::open(file, options, clock);
  for (int i = 0; i < documents - 1;) {
    storage::WriteRequest write;
    write.householdId = home.id;
    for (int n = 0; n < 500 && i < documents - 1; ++n, ++i)
      write.puts.push_back(service::putOf(sampleRecipe("r" + std::to_string(i))));
    if (!store.ok() || !(*store)->write(write).ok()) std::abort();
  }
  return home;
}

}  // namespace

void measureColdStart(const std::string& folder, int documents) {
  const std::string file = folder + "/cold.sqlite";
  const Home home = fill(file, documents);
  std::vector<double> samples;
  for (int i = 0; i < 5; ++i) {
    const auto begin = SteadyClock::now();
    const Peer peer = startPeer(Peer::Kind::kOurs, file, 0);
    v1::GetRecipeRequest asked;
    asked.set_household_id(home.id);
    asked.set_recipe_id("r7");
    v1::Recipe answer;
    const auto stub = v1::RecipeService::NewStub(connect(peer));
    if (!stub->GetRecipe(contextOf(home.token).get(), asked, &answer).ok()) std::abort();
    samples.push_back(millisecondsSince(begin));
    stopPeer(peer);
  }
  std::printf("Cold start with %d documents (%.0f MB): first answer after %.0f ms, worst %.0f ms of %zu\n",
              documents, static_cast<double>(std::filesystem::file_size(file)) / 1e6, quantile(samples, 0.5),
              quantile(samples, 1), samples.size());
}

}  // namespace suppertide::bench
