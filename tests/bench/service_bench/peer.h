// A server in a process of its own, so that its memory and time are its own.
#pragma once

#include <grpcpp/channel.h>

#include <memory>
#include <string>
#include <vector>

namespace suppertide::bench {

// A household made for the bench, and a token of its host.
struct Home {
  std::string id;
  std::string token;
};

// What a started server is.
struct Peer {
  enum class Kind {
    kOurs,  // the household server, on a file
    kRaw,   // gRPC alone: echoes what it gets after one full-sync commit of it; sends all streams the same
            // bytes
  };
  Kind kind = Kind::kOurs;
  int pid = 0;
  std::string target;
  std::vector<Home> homes;  // of kOurs
};

// Starts this program again as a server on `dataFile`, with `households` made in it. Aborts the bench when it
// cannot.
Peer startPeer(Peer::Kind kind, const std::string& dataFile, int households);
void stopPeer(const Peer& peer);
// Resident memory of its process, in bytes.
double memoryOf(const Peer& peer);
// A connection of its own.
std::shared_ptr<grpc::Channel> connect(const Peer& peer);

// The other side: serves until its standard input ends. Gives the exit code.
int servePeer(Peer::Kind kind, const std::string& dataFile, int households);

}  // namespace suppertide::bench
