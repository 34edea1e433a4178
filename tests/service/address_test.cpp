#include <grpcpp/grpcpp.h>
#include <gtest/gtest.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "server/service/listen_address.h"
#include "server/service/server.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

TEST(ListenAddressTest, ServesLoopbackAndUnixSocketsWithAndWithoutEncryption) {
  for (const char* good : {"127.0.0.1:50710", "127.8.8.8:0", "localhost:1", "[::1]:50710", "unix:/tmp/x"})
    for (const bool encrypted : {false, true}) EXPECT_TRUE(checkListenAddress(good, encrypted).ok()) << good;
}

TEST(ListenAddressTest, ServesNetworksOnlyEncrypted) {
  for (const char* network : {"0.0.0.0:50710", "192.168.1.4:50710", "[::]:50710", "[::2]:1"}) {
    EXPECT_TRUE(checkListenAddress(network, true).ok()) << network;
    EXPECT_FALSE(checkListenAddress(network, false).ok()) << network;
  }
}

TEST(ListenAddressTest, RefusesWhatIsNoAddress) {
  for (const char* bad : {"example.org:1", "127.0.0.1", "127.0.0.1:", "127.0.0.1:x", "127.0.0.1:70000",
                          "127.example.org:1", "127.1:1", "dns:127.0.0.1:1", "unix-abstract:x", "unix:", ""})
    for (const bool encrypted : {false, true}) EXPECT_FALSE(checkListenAddress(bad, encrypted).ok()) << bad;
}

TEST(ListenAddressTest, RefusesASocketPathThatTheSystemWouldCut) {
  EXPECT_TRUE(checkListenAddress("unix:/" + std::string(106, 'x'), false).ok());
  EXPECT_FALSE(checkListenAddress("unix:/" + std::string(107, 'x'), true).ok());
}

TEST(ServerTest, LeavesTheSocketToTheServerThatIsThere) {
  const TemporaryFolder folder;
  const SystemClock clock;
  Server::Options options;
  options.listen = "unix:" + folder.path() + "/s";
  const auto first = Server::start(options, clock);
  ASSERT_TRUE(first.ok()) << first.status();
  EXPECT_EQ(Server::start(options, clock).status().code(), absl::StatusCode::kUnavailable);
  const auto channel = grpc::CreateChannel(options.listen, grpc::InsecureChannelCredentials());
  EXPECT_TRUE(channel->WaitForConnected(std::chrono::system_clock::now() + std::chrono::seconds(20)));
}

TEST(ServerTest, TakesOverASocketWhoseServerIsGone) {
  const TemporaryFolder folder;
  const std::string path = folder.path() + "/s";
  sockaddr_un name{};
  name.sun_family = AF_UNIX;
  path.copy(name.sun_path, sizeof(name.sun_path) - 1);
  const int gone = socket(AF_UNIX, SOCK_STREAM, 0);
  ASSERT_EQ(bind(gone, reinterpret_cast<const sockaddr*>(&name), sizeof(name)), 0);
  close(gone);
  const SystemClock clock;
  Server::Options options;
  options.listen = "unix:" + path;
  EXPECT_TRUE(Server::start(options, clock).ok());
}

TEST(ServerTest, LeavesAFileAloneThatIsNoSocket) {
  const TemporaryFolder folder;
  const std::string path = folder.path() + "/letter";
  std::ofstream(path) << "dear";
  const SystemClock clock;
  Server::Options options;
  options.listen = "unix:" + path;
  EXPECT_EQ(Server::start(options, clock).status().code(), absl::StatusCode::kUnavailable);
  EXPECT_EQ(std::filesystem::file_size(path), 4u);
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
