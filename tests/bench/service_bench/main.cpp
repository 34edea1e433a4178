// How fast and how frugal the household server is, beside what nothing can be faster than.
//
//   service_bench [--part writes|fanout|mixed|cold] [--writes 2000] [--seconds 60] [--folder DIR]
#include <CLI/CLI.hpp>
#include <cstdio>
#include <filesystem>

#include "tests/bench/service_bench/measurements.h"
#include "tests/bench/service_bench/peer.h"

using namespace suppertide::bench;

int main(int argc, char** argv) {
  if (argc == 5 && std::string(argv[1]) == "serve") {
    const Peer::Kind kind = std::string(argv[2]) == "ours" ? Peer::Kind::kOurs : Peer::Kind::kRaw;
    return servePeer(kind, argv[3], std::atoi(argv[4]));
  }
  CLI::App app("The household server against raw gRPC and SQLite");
  std::string part;
  std::string folder = std::filesystem::temp_directory_path().string();
  int seconds = 60;
  int writes = 2000;
  app.add_option("--part", part, "Only this")->check(CLI::IsMember({"writes", "fanout", "mixed", "cold"}));
  app.add_option("--folder", folder, "On the disk to be measured")->capture_default_str();
  app.add_option("--writes", writes, "Of each kind, in each round of the writes")->capture_default_str();
  app.add_option("--seconds", seconds, "Length of the mixed part")->capture_default_str();
  CLI11_PARSE(app, argc, argv);
  std::string own = folder + "/service-bench-XXXXXX";
  if (mkdtemp(own.data()) == nullptr) return 1;
  std::setvbuf(stdout, nullptr, _IOLBF, 0);
  if (part.empty() || part == "writes") measureWrites(own, writes);
  if (part.empty() || part == "fanout") measureFanOut(own, 1000, 50);
  if (part.empty() || part == "mixed") measureMixed(own, 200, 5, seconds);
  if (part.empty() || part == "cold") measureColdStart(own, 10'000);
  std::filesystem::remove_all(own);
  return 0;
}
