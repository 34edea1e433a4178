// Plays simulated evenings and tells them.
//
//   evening BUNDLE [--seed N] [--evenings N] [--seconds N] [--save FILE]
//
// A bundle without a plan is planned first, for so many seconds; --save keeps it with its plan. One evening
// is told as its cooks see it; of several a line each. Exits with 1 when a promise did not hold.
#include <google/protobuf/util/json_util.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "tests/evening/evening.h"

namespace {

const char* textAfter(int argc, char** argv, const std::string& flag) {
  for (int a = 1; a + 1 < argc; ++a)
    if (argv[a] == flag) return argv[a + 1];
  return nullptr;
}

int numberAfter(int argc, char** argv, const std::string& flag, int usual) {
  const char* text = textAfter(argc, argv, flag);
  return text == nullptr ? usual : std::atoi(text);
}

// The part-th of the sorted values; 0 of none.
double partOf(std::vector<double> values, double part) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  return values[static_cast<std::size_t>(part * static_cast<double>(values.size() - 1))];
}

}  // namespace

int main(int argc, char** argv) {
  using namespace suppertide;
  if (argc < 2) {
    std::fprintf(stderr, "evening BUNDLE [--seed N] [--evenings N] [--seconds N] [--save FILE]\n");
    return 2;
  }
  std::ifstream file(argv[1]);
  std::stringstream text;
  text << file.rdbuf();
  v1::Bundle bundle;
  if (!google::protobuf::util::JsonStringToMessage(text.str(), &bundle).ok()) return 2;
  const v1::Bundle planned =
      bundle.plans().empty() ? evening::withPlan(bundle, numberAfter(argc, argv, "--seconds", 20)) : bundle;
  if (const char* path = textAfter(argc, argv, "--save"); path != nullptr) {
    std::string json;
    if (!google::protobuf::util::MessageToJsonString(planned, &json).ok()) return 2;
    std::ofstream(path) << json;
  }
  const int seed = numberAfter(argc, argv, "--seed", 1);
  const int evenings = numberAfter(argc, argv, "--evenings", 1);
  bool good = true;
  std::vector<double> corrections;
  std::vector<double> work;
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  const auto begin = std::chrono::steady_clock::now();
  for (int e = 0; e < evenings; ++e) {
    const evening::Outcome outcome = evening::playEvening(planned, static_cast<std::uint64_t>(seed + e));
    if (evenings == 1)
      for (const std::string& line : outcome.story) std::printf("%s\n", line.c_str());
    std::printf(
        "seed %d: %d reports, %d plans, %d moves (%d to mind), latest dish %d min, %d unserved, "
        "%d left out and taken back\n",
        seed + e, outcome.reports, outcome.plans, outcome.moves, outcome.movesTold, outcome.lateMinutes,
        outcome.unserved, outcome.takenBack);
    for (const evening::Learned& one : outcome.learned)
      std::printf("  learned %s: believed %.2f, in truth %.2f, would use %.2f\n", one.lesson.c_str(),
                  one.believed, one.truth, one.learned);
    for (const std::string& fault : outcome.faults) std::printf("  FAULT %s\n", fault.c_str());
    good = good && outcome.faults.empty();
    corrections.insert(corrections.end(), outcome.corrections.begin(), outcome.corrections.end());
    work.insert(work.end(), outcome.correctionWork.begin(), outcome.correctionWork.end());
  }
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
  const auto tell = [](const char* what, const std::vector<double>& seconds) {
    std::printf("%s, ms: median %.0f, p90 %.0f, max %.0f (%zu)\n", what, 1000 * partOf(seconds, 0.5),
                1000 * partOf(seconds, 0.9), 1000 * partOf(seconds, 1), seconds.size());
  };
  std::printf("%d evenings in %.1f s\n", evenings, took.count());
  tell("report to corrected plan on all clients", corrections);
  tell("processor time of that", work);
  return good ? 0 : 1;
}
