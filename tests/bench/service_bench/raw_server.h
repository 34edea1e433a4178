// gRPC and SQLite with nothing between: what a household server cannot be faster than.
#pragma once

#include <memory>
#include <string>

namespace suppertide::bench {

// Answers any call named ".../Echo" with what it got; ".../Commit" after one
// full-sync commit of it as a row, ".../CommitDocument" after one of a document with
// its log, request and revision. Any other call is a stream that gets each message sent
// to ".../Send", the same bytes to all. Serves until destroyed.
class RawServer {
 public:
  RawServer(const std::string& dataFile, const std::string& listen);
  ~RawServer();

 private:
  struct State;
  std::unique_ptr<State> state_;
};

}  // namespace suppertide::bench
