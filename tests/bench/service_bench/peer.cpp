#include "tests/bench/service_bench/peer.h"

#include <fcntl.h>
#include <grpcpp/create_channel.h>
#include <grpcpp/security/credentials.h>
#include <signal.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>

#include "server/base/ids.h"
#include "server/service/documents.h"
#include "server/service/secrets.h"
#include "server/service/server.h"
#include "tests/bench/service_bench/raw_server.h"

extern char** environ;

namespace suppertide::bench {
namespace {

[[noreturn]] void give_up(const std::string& why) {
  std::cerr << "service_bench: " << why << "\n";
  std::exit(1);
}

v1::Household householdCalled(const std::string& id) {
  v1::Household household;
  household.set_id(id);
  household.set_display_name("Household");
  household.set_time_zone("UTC");
  v1::Member& host = *household.add_members();
  host.set_id("host");
  host.set_display_name("Host");
  host.set_role(v1::ROLE_HOST);
  return household;
}

// Past the network, as a server prints one host code alone.
Home makeHome(storage::Store& store, int number) {
  Home home{"home-" + std::to_string(number), service::newToken()};
  const std::string code = service::newCode();
  storage::Code host;
  host.purpose = storage::Code::Purpose::kHost;
  if (!store.addCode(service::hashOfCode(code), host).ok()) give_up("no host code");
  storage::NewHousehold fresh;
  fresh.householdId = home.id;
  fresh.codeHash = service::hashOfCode(code);
  fresh.bytes = service::putOf(householdCalled(home.id)).bytes;
  fresh.memberId = "host";
  fresh.device.id = newId();
  fresh.device.memberId = "host";
  fresh.tokenHash = service::hashOfToken(home.token);
  if (const auto made = store.createHousehold(fresh); !made.ok()) give_up(made.status().ToString());
  return home;
}

void waitForTheEnd() {
  char byte = 0;
  while (read(STDIN_FILENO, &byte, 1) > 0) {
  }
}

int serveOurs(const std::string& dataFile, int households) {
  const SystemClock clock;
  service::Server::Options options;
  options.dataFile = dataFile;
  options.listen = "unix:" + dataFile + ".sock";
  auto server = service::Server::start(options, clock);
  if (!server.ok()) give_up(std::string(server.status().message()));
  for (int i = 0; i < households; ++i) {
    const Home home = makeHome((*server)->backend().store(), i);
    std::cout << "home " << home.id << " " << home.token << "\n";
  }
  std::cout << "target " << (*server)->target() << std::endl;
  waitForTheEnd();
  return 0;
}

int serveRaw(const std::string& dataFile) {
  RawServer server(dataFile, "unix:" + dataFile + ".sock");
  std::cout << "target unix:" << dataFile << ".sock" << std::endl;
  waitForTheEnd();
  return 0;
}

}  // namespace

// The write end of each server's standard input; closing it ends the server.
static std::map<int, int> lifelines;

Peer startPeer(Peer::Kind kind, const std::string& dataFile, int households) {
  int in[2];
  int out[2];
  if (pipe2(in, O_CLOEXEC) != 0 || pipe2(out, O_CLOEXEC) != 0) give_up("no pipe");
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_adddup2(&actions, in[0], STDIN_FILENO);
  posix_spawn_file_actions_adddup2(&actions, out[1], STDOUT_FILENO);
  const std::string count = std::to_string(households);
  const char* words[] = {"service_bench",  "serve",       kind == Peer::Kind::kOurs ? "ours" : "raw",
                         dataFile.c_str(), count.c_str(), nullptr};
  Peer peer;
  peer.kind = kind;
  if (posix_spawn(&peer.pid, "/proc/self/exe", &actions, nullptr, const_cast<char**>(words), environ) != 0)
    give_up("no server");
  posix_spawn_file_actions_destroy(&actions);
  close(in[0]);
  close(out[1]);
  lifelines[peer.pid] = in[1];
  FILE* lines = fdopen(out[0], "r");
  char line[512];
  while (peer.target.empty() && std::fgets(line, sizeof line, lines) != nullptr) {
    std::istringstream words_in(line);
    std::string word;
    words_in >> word;
    if (word == "home") {
      peer.homes.emplace_back();
      words_in >> peer.homes.back().id >> peer.homes.back().token;
    } else if (word == "target") {
      words_in >> peer.target;
    }
  }
  std::fclose(lines);
  if (peer.target.empty()) give_up("the server did not start");
  return peer;
}

void stopPeer(const Peer& peer) {
  close(lifelines[peer.pid]);
  lifelines.erase(peer.pid);
  int status = 0;
  waitpid(peer.pid, &status, 0);
}

double memoryOf(const Peer& peer) {
  std::ifstream file("/proc/" + std::to_string(peer.pid) + "/statm");
  double pages = 0;
  file >> pages >> pages;
  return pages * static_cast<double>(sysconf(_SC_PAGESIZE));
}

std::shared_ptr<grpc::Channel> connect(const Peer& peer) {
  grpc::ChannelArguments arguments;
  arguments.SetInt(GRPC_ARG_USE_LOCAL_SUBCHANNEL_POOL, 1);
  return grpc::CreateCustomChannel(peer.target, grpc::InsecureChannelCredentials(), arguments);
}

int servePeer(Peer::Kind kind, const std::string& dataFile, int households) {
  return kind == Peer::Kind::kOurs ? serveOurs(dataFile, households) : serveRaw(dataFile);
}

}  // namespace suppertide::bench
