#include "server/embedded.h"

#include <grpcpp/grpcpp.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "tests/service/served.h"

namespace suppertide {
namespace {

TEST(EmbeddedServerTest, ServesOnAPrivateSocketThatGoesAwayWithIt) {
  std::string socket;
  {
    const auto server = EmbeddedServer::start({});
    ASSERT_TRUE(server.ok()) << server.status();
    EXPECT_FALSE((*server)->hostCode().empty());
    ASSERT_EQ((*server)->target().rfind("unix:", 0), 0u);
    socket = (*server)->target().substr(5);
    EXPECT_TRUE(std::filesystem::exists(socket));
    const auto folder = std::filesystem::status(std::filesystem::path(socket).parent_path()).permissions();
    EXPECT_EQ(folder, std::filesystem::perms::owner_all);
  }
  EXPECT_FALSE(std::filesystem::exists(std::filesystem::path(socket).parent_path()));
}

TEST(EmbeddedServerTest, MayListenOnLoopback) {
  const auto server = EmbeddedServer::start({.dataFile = "", .listen = "127.0.0.1:0"});
  ASSERT_TRUE(server.ok()) << server.status();
  EXPECT_EQ((*server)->target().rfind("127.0.0.1:", 0), 0u);
}

TEST(EmbeddedServerTest, RefusesAFileThatAnotherServerHas) {
  const service::TemporaryFolder folder;
  const std::string file = folder.path() + "/h.sqlite";
  const auto first = EmbeddedServer::start({.dataFile = file, .listen = ""});
  ASSERT_TRUE(first.ok()) << first.status();
  EXPECT_EQ(EmbeddedServer::start({.dataFile = file, .listen = ""}).status().code(),
            absl::StatusCode::kFailedPrecondition);
}

}  // namespace
}  // namespace suppertide
