// Acknowledged writes a second: one at a time, and many waiting for one sync.
//
// On the disk of the temporary folder (TMPDIR); the figure is the disk's more
// than ours. Each write is a document of 2 kB with a request id.
#include <benchmark/benchmark.h>

#include <atomic>

#include "server/storage/write_queue.h"
#include "tests/support/stored_household.h"
#include "tests/support/temp_dir.h"

namespace suppertide::storage {
namespace {

WriteRequest nextWrite(int& number) {
  const std::string id = "r" + std::to_string(number++ % 200);
  return writeOf({put("recipe", id, std::string(2000, 'x'))}, "request-" + std::to_string(number));
}

void writeOneAtATime(benchmark::State& state) {
  TempDir dir;
  ManualClock clock(kNoon);
  Store::Options options;
  options.fullSync = state.range(0) != 0;
  const std::unique_ptr<Store> store = storeWithHome(dir.file("data"), options, clock);
  int number = 0;
  for (auto _ : state) {
    if (!store->write(nextWrite(number)).ok()) state.SkipWithError("a write was refused");
  }
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(writeOneAtATime)->ArgName("full_sync")->Arg(1)->Arg(0)->UseRealTime();

void writeThroughTheQueue(benchmark::State& state) {
  TempDir dir;
  ManualClock clock(kNoon);
  const std::unique_ptr<Store> store = storeWithHome(dir.file("data"), {}, clock);
  std::atomic<int> waiting = 0;
  const int inFlight = static_cast<int>(state.range(0));
  int number = 0;
  WriteQueue queue(*store, nullptr);
  for (auto _ : state) {
    for (int seen = waiting; seen >= inFlight; seen = waiting) waiting.wait(seen);
    ++waiting;
    queue.submit(nextWrite(number), [&](const absl::StatusOr<WriteResult>&) {
      --waiting;
      waiting.notify_one();
    });
  }
  for (int seen = waiting; seen > 0; seen = waiting) waiting.wait(seen);
  state.SetItemsProcessed(state.iterations());
}
BENCHMARK(writeThroughTheQueue)->ArgName("in_flight")->Arg(1)->Arg(8)->Arg(64)->UseRealTime();

}  // namespace
}  // namespace suppertide::storage
