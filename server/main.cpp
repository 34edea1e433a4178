// The server program: flags in, objects wired, served until told to stop.
#include <pthread.h>
#include <signal.h>
#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>

#include "server/command_line.h"
#include "server/maintenance.h"
#include "server/service/server.h"
#include "server/service_manager.h"

namespace suppertide {
namespace {

void startLog(const std::string& level) {
  auto log = spdlog::stderr_logger_mt("suppertide");
  log->set_pattern("%Y-%m-%dT%H:%M:%S.%e%z level=%l %v");
  log->set_level(spdlog::level::from_str(level));
  spdlog::set_default_logger(log);
}

// What a device on another machine joins: this machine's name for "every network".
std::string reachableTarget(const std::string& target) {
  for (const std::string every : {"0.0.0.0:", "[::]:"}) {
    char name[256] = {};
    if (target.rfind(every, 0) == 0 && gethostname(name, sizeof(name) - 1) == 0)
      return std::string(name) + ":" + target.substr(every.size());
  }
  return target;
}

// For the person who started the server; scripts wait for the last line.
void tell(const service::Server& server) {
  if (const std::string code = server.hostCode(); !code.empty()) {
    const std::string whole = server.fingerprint().empty() ? code : code + "." + server.fingerprint();
    std::printf("No household yet. Host code: %s\n", whole.c_str());
    std::printf("Make the household with:\n  suppertide join %s --host-code %s --name NAME\n",
                reachableTarget(server.target()).c_str(), whole.c_str());
  }
  if (const int port = server.calendarPort(); port != 0) std::printf("Calendars on port %d\n", port);
  if (const int port = server.metricsPort(); port != 0)
    std::printf("Metrics on http://127.0.0.1:%d/metrics\n", port);
  std::printf("Listening on %s\n", server.target().c_str());
  std::fflush(stdout);
}

// SIGTERM and SIGINT, kept from every thread. Before gRPC starts its own.
sigset_t blockSignals() {
  sigset_t signals;
  sigemptyset(&signals);
  sigaddset(&signals, SIGTERM);
  sigaddset(&signals, SIGINT);
  pthread_sigmask(SIG_BLOCK, &signals, nullptr);
  return signals;
}

service::Server::Options optionsOf(const CommandLine& line) {
  service::Server::Options options;
  options.dataFile = line.data;
  options.listen = line.listen;
  options.certificateFile = line.certificate;
  options.keyFile = line.key;
  options.plain = line.plain;
  options.anotherHousehold = line.anotherHousehold;
  options.calendar = line.calendar;
  options.metrics = line.metrics;
  options.backend.planningThreads = line.planningThreads;
  return options;
}

int serve(const CommandLine& line) {
  umask(S_IRWXG | S_IRWXO);  // what a household writes down is nobody else's business
  const sigset_t signals = blockSignals();
  setenv("GRPC_VERBOSITY", "NONE", 0);  // what goes wrong is told in our own words
  startLog(line.logLevel);
  const SystemClock clock;
  auto server = service::Server::start(optionsOf(line), clock);
  if (!server.ok()) return complain(std::string(server.status().message()), kFailed);
  tell(**server);
  tellServiceManager("READY=1");
  spdlog::info("event=started target={} data={}", (*server)->target(), line.data);
  int signal = 0;
  sigwait(&signals, &signal);
  tellServiceManager("STOPPING=1");
  spdlog::info("event=stopping signal={}", signal);
  (*server)->drain();
  spdlog::info("event=stopped");
  return kDone;
}

}  // namespace
}  // namespace suppertide

int main(int argc, char** argv) {
  using suppertide::CommandLine;
  CommandLine line;
  if (const int ended = suppertide::parseCommandLine(argc, argv, line); ended >= 0) return ended;
  switch (line.command) {
    case CommandLine::Command::kBackup:
      return suppertide::backUpFile(line.data, line.file);
    case CommandLine::Command::kRestore:
      return suppertide::restoreFile(line.file, line.data, line.replace);
    case CommandLine::Command::kDoctor:
      return suppertide::examineFile(line.file, line.json);
    case CommandLine::Command::kServe:
      break;
  }
  return suppertide::serve(line);
}
