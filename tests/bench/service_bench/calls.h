// The few calls that the measurements make, of our server and of the raw one.
#pragma once

#include <grpcpp/grpcpp.h>

#include <functional>
#include <memory>
#include <string>

#include "suppertide/v1/recipe_service.grpc.pb.h"
#include "suppertide/v1/sync_service.grpc.pb.h"
#include "tests/bench/service_bench/peer.h"

namespace suppertide::bench {

// A recipe as people write them: some steps with a line or two of instructions each.
v1::Recipe sampleRecipe(const std::string& id);

// Writes a recipe over the one of its id and gives the revision; 0 when it was refused.
std::int64_t writeRecipe(v1::RecipeService::Stub& stub, const Home& home, const v1::Recipe& recipe,
                         bool create);

// A call of our server that does nothing: "are you well?". False when it failed.
bool callHealth(const std::shared_ptr<grpc::Channel>& channel);

// A call of the raw server: "Echo". False when it failed.
bool callRaw(const std::shared_ptr<grpc::Channel>& channel, const std::string& method,
             const std::string& bytes);

std::unique_ptr<grpc::ClientContext> contextOf(const std::string& token);

// A stream that is read until destroyed. `got` runs for each message, on gRPC's
// threads, with its size in bytes and, of our server, the revision it completes (0: none).
class Listening {
 public:
  using Got = std::function<void(std::size_t bytes, std::int64_t revision)>;
  // Of our server: Watch after `after`. Of the raw one: Listen.
  Listening(const std::shared_ptr<grpc::Channel>& channel, Peer::Kind kind, const Home& home,
            std::int64_t after, Got got);
  ~Listening();
  Listening(const Listening&) = delete;
  Listening& operator=(const Listening&) = delete;

 private:
  class Reactor;
  std::unique_ptr<Reactor> reactor_;
};

}  // namespace suppertide::bench
