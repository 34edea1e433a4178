#include <gtest/gtest.h>

#include "server/service/server.h"

namespace suppertide::service {
namespace {

TEST(ListenAddressTest, ServesLoopbackAndUnixSockets) {
  for (const char* good : {"127.0.0.1:50710", "127.8.8.8:0", "localhost:1", "[::1]:50710", "unix:/tmp/x"})
    EXPECT_TRUE(checkListenAddress(good).ok()) << good;
}

TEST(ListenAddressTest, RefusesEverythingElse) {
  for (const char* bad : {"0.0.0.0:50710", "192.168.1.4:50710", "[::]:50710", "example.org:1", "127.0.0.1",
                          "127.0.0.1:", "127.0.0.1:x", "127.0.0.1:70000", "unix:", ""})
    EXPECT_FALSE(checkListenAddress(bad).ok()) << bad;
}

TEST(ServerTest, SaysWhenAnAddressIsTaken) {
  const SystemClock clock;
  Server::Options options;
  options.listen = "127.0.0.1:0";
  const auto first = Server::start(options, clock);
  ASSERT_TRUE(first.ok()) << first.status();
  options.listen = (*first)->target();
  EXPECT_EQ(Server::start(options, clock).status().code(), absl::StatusCode::kUnavailable);
}

}  // namespace
}  // namespace suppertide::service
