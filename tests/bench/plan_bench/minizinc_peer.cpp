#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_replace.h"
#include "tests/bench/plan_bench/minizinc_data.h"
#include "tests/bench/plan_bench/peers.h"
#include "tests/support/random_dinner.h"

namespace suppertide::planning {
namespace {

std::string quoted(const std::string& word) {
  return absl::StrCat("'", absl::StrReplaceAll(word, {{"'", "'\\''"}}), "'");
}

// Removed with the object.
class DataFile {
 public:
  explicit DataFile(const std::string& text) {
    std::string name = (std::filesystem::temp_directory_path() / "dinner-XXXXXX").string();
    const int file = mkstemp(name.data());
    if (file < 0) return;
    close(file);
    path_ = name;
    std::ofstream(path_) << text;
  }
  ~DataFile() { std::remove(path_.c_str()); }
  DataFile(const DataFile&) = delete;
  DataFile& operator=(const DataFile&) = delete;
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

// The tiers of dinner.mzn.
constexpr int kTiers = 2;

struct TierRun {
  double ended = 0;  // seconds of search
  int total = -1;    // proven least; -1: not proven
};

void readPlan(const Problem& problem, std::istringstream& words, double before, double limit, Run& run) {
  double when = 0;
  int total = 0;
  words >> when >> total;
  std::vector<Placement> places(problem.steps.size());
  for (Placement& place : places) {
    words >> place.start >> place.end >> place.mode >> place.cook;
    place.start *= kDinnerGrid;
    place.end *= kDinnerGrid;
  }
  if (words && before + when <= limit) addPlan(problem, places, before + when, run);
}

// A line of drive.mjs; what comes after `limit` seconds is dropped. `before`: seconds of search in the tiers
// before.
void readLine(const Problem& problem, const std::string& line, double before, double limit, Run& run,
              TierRun& tier) {
  std::istringstream words(line);
  std::string what;
  words >> what;
  double seconds = 0;
  if (what == "plan") {
    readPlan(problem, words, before, limit, run);
  } else if (words >> seconds) {
    if (what == "proven" && before + seconds <= limit) words >> tier.total;
    if (what == "startup") run.startUp += seconds;
    if (what == "proven" || what == "ended") tier.ended = seconds;
  }
}

TierRun runTier(const Problem& problem, const std::string& command, double before, double limit, Run& run) {
  TierRun tier;
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> output(popen(command.c_str(), "r"), pclose);
  if (!output) return tier;
  std::string line;
  for (int letter; (letter = std::fgetc(output.get())) != EOF;) {
    if (letter != '\n') {
      line += static_cast<char>(letter);
      continue;
    }
    readLine(problem, line, before, limit, run, tier);
    line.clear();
  }
  return tier;
}

}  // namespace

absl::Status minizincAtHand(const PeerPaths& paths) {
  if (paths.minizinc.empty())
    return absl::NotFoundError("no folder of the Node package minizinc is given (--minizinc)");
  if (!std::filesystem::exists(std::filesystem::path(paths.minizinc) / "dist" / "minizinc-worker.js"))
    return absl::NotFoundError(absl::StrCat("no dist/minizinc-worker.js in ", paths.minizinc));
  const std::string asked = absl::StrCat(quoted(paths.node), " --version > /dev/null 2>&1");
  if (std::system(asked.c_str()) != 0)
    return absl::NotFoundError(absl::StrCat(paths.node, " does not run (--node)"));
  return absl::OkStatus();
}

Run planWithMinizinc(const Problem& problem, const PeerPaths& paths, double limitSeconds) {
  Run run;
  const auto data = minizincData(problem, kDinnerGrid);
  if (!data.ok()) {
    std::fprintf(stderr, "minizinc: %s\n", data.status().ToString().c_str());
    return run;
  }
  const DataFile file(*data);
  const std::string folder = SUPPERTIDE_MINIZINC_MODEL;
  const std::string command =
      absl::StrCat(quoted(paths.node), " ", quoted(folder + "/drive.mjs"), " ", quoted(paths.minizinc), " ",
                   quoted(folder + "/dinner.mzn"), " ", quoted(file.path()), " ");
  double used = 0;
  int reached = 0;
  for (int tier = 1; tier <= kTiers && used < limitSeconds; ++tier) {
    const TierRun done = runTier(problem, absl::StrCat(command, tier, " ", reached, " ", limitSeconds - used),
                                 used, limitSeconds, run);
    used += done.ended;
    if (done.total < 0) break;
    reached = done.total;
    if (tier == kTiers) run.proof = used;
  }
  return run;
}

}  // namespace suppertide::planning
