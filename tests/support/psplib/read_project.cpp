#include <cstdlib>
#include <string>

#include "absl/strings/str_cat.h"
#include "tests/support/psplib/project.h"

namespace suppertide::planning::psplib {
namespace {

absl::Status broken(const char* part) {
  return absl::InvalidArgumentError(absl::StrCat("read a project: its ", part, " are missing or broken"));
}

struct Counts {
  int jobs = 0;
  int renewable = 0;
  int usedUp = 0;
};

// The number after a colon; -1 when there is none.
int numberIn(const std::string& line) {
  const std::size_t colon = line.find(':');
  if (colon == std::string::npos) return -1;
  return std::atoi(line.c_str() + colon + 1);
}

// Skips lines up to one that holds `text` and `more` lines after it; false at the end of the file.
bool skipPast(std::istream& in, const char* text, int more) {
  std::string line;
  while (std::getline(in, line)) {
    if (line.find(text) == std::string::npos) continue;
    for (; more > 0; --more) std::getline(in, line);
    return true;
  }
  return false;
}

// Reads the head, through the title of the precedence table.
Counts readHead(std::istream& in) {
  Counts counts;
  std::string line;
  while (std::getline(in, line) && line.find("PRECEDENCE") == std::string::npos) {
    if (line.find("jobs (incl") != std::string::npos) counts.jobs = numberIn(line);
    if (line.find("- renewable") != std::string::npos) counts.renewable = numberIn(line);
    if (line.find("- nonrenewable") != std::string::npos) counts.usedUp = numberIn(line);
  }
  return counts;
}

bool readNumbers(std::istream& in, std::vector<int>& numbers) {
  for (int& number : numbers) in >> number;
  return static_cast<bool>(in);
}

bool readPrecedence(std::istream& in, Project& project) {
  for (auto& job : project.jobs) {
    int number = 0;
    int modes = 0;
    int successors = 0;
    if (!(in >> number >> modes >> successors) || modes < 1 || successors < 0) return false;
    job.modes.resize(static_cast<std::size_t>(modes));
    for (int s = 0; s < successors; ++s) {
      int next = 0;
      if (!(in >> next) || next < 1 || next > static_cast<int>(project.jobs.size())) return false;
      job.lags.push_back({next - 1, Edge::kEnd, 0});
    }
  }
  return true;
}

// A job's number stands only before its first mode.
bool readRequests(std::istream& in, Project& project, const Counts& counts) {
  for (auto& job : project.jobs) {
    int number = 0;
    if (!(in >> number)) return false;
    for (auto& mode : job.modes) {
      mode.uses.resize(static_cast<std::size_t>(counts.renewable));
      mode.consumes.resize(static_cast<std::size_t>(counts.usedUp));
      in >> number >> mode.length;
      if (!readNumbers(in, mode.uses) || !readNumbers(in, mode.consumes)) return false;
    }
  }
  return true;
}

// A lag is written `[3]`, one for each successor.
bool readLags(std::istream& in, std::vector<Project::Lag>& lags) {
  for (auto& lag : lags) {
    char open = 0;
    char close = 0;
    if (!(in >> open >> lag.least >> close) || open != '[' || close != ']') return false;
  }
  return true;
}

bool readLagJob(std::istream& in, Project& project) {
  int number = 0;
  int modes = 0;
  int successors = 0;
  const int count = static_cast<int>(project.jobs.size());
  if (!(in >> number >> modes >> successors) || number < 0 || number >= count || modes != 1) return false;
  auto& job = project.jobs[static_cast<std::size_t>(number)];
  job.lags.resize(static_cast<std::size_t>(successors));
  for (auto& lag : job.lags) {
    lag.from = Edge::kStart;
    if (!(in >> lag.to) || lag.to < 0 || lag.to >= count) return false;
  }
  return readLags(in, job.lags);
}

}  // namespace

absl::StatusOr<Project> readProject(std::istream& in) {
  Project project;
  const Counts counts = readHead(in);
  if (counts.jobs < 2 || counts.renewable < 0 || counts.usedUp < 0) return broken("counts");
  project.jobs.resize(static_cast<std::size_t>(counts.jobs));
  std::string titles;
  std::getline(in, titles);
  if (!readPrecedence(in, project)) return broken("precedence relations");
  if (!skipPast(in, "REQUESTS/DURATIONS", 2) || !readRequests(in, project, counts)) return broken("requests");
  project.capacities.resize(static_cast<std::size_t>(counts.renewable));
  project.stocks.resize(static_cast<std::size_t>(counts.usedUp));
  if (!skipPast(in, "RESOURCEAVAILABILITIES", 1) || !readNumbers(in, project.capacities) ||
      !readNumbers(in, project.stocks))
    return broken("availabilities");
  return project;
}

absl::StatusOr<Project> readLagProject(std::istream& in) {
  Project project;
  Counts counts;
  int both = 0;
  if (!(in >> counts.jobs >> counts.renewable >> counts.usedUp >> both) || counts.jobs < 0 ||
      counts.renewable < 0 || counts.usedUp != 0 || both != 0)
    return broken("counts");
  project.jobs.resize(static_cast<std::size_t>(counts.jobs) + 2);
  for (std::size_t j = 0; j < project.jobs.size(); ++j)
    if (!readLagJob(in, project)) return broken("lags");
  for (auto& job : project.jobs) {
    int number = 0;
    auto& mode = job.modes.emplace_back();
    mode.uses.resize(static_cast<std::size_t>(counts.renewable));
    in >> number >> number >> mode.length;
    if (!readNumbers(in, mode.uses)) return broken("requests");
  }
  project.capacities.resize(static_cast<std::size_t>(counts.renewable));
  if (!readNumbers(in, project.capacities)) return broken("availabilities");
  return project;
}

}  // namespace suppertide::planning::psplib
