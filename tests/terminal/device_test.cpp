// People and their devices, against a real server inside the test.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "client/terminal/exit_code.h"
#include "client/terminal/run.h"
#include "server/embedded.h"
#include "tests/support/temp_dir.h"

namespace suppertide::terminal {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

class DeviceTest : public ::testing::Test {
 protected:
  void SetUp() override {
    auto started = EmbeddedServer::start({});
    ASSERT_TRUE(started.ok()) << started.status();
    server_ = *std::move(started);
    ASSERT_EQ(as("ana", {"join", server_->target(), "--host-code", server_->hostCode(), "--name", "Ana",
                         "--device", "laptop", "--time-zone", "UTC"}),
              kOk);
    ASSERT_EQ(as("ana", {"invite", "--role", "cook", "--json"}), kOk);
    const std::string code = nlohmann::json::parse(out_.str())["code"];
    ASSERT_EQ(as("ben", {"join", server_->target(), "--code", code, "--name", "Ben", "--device", "phone"}),
              kOk);
  }

  // Runs the program for somebody with devices of their own; what it prints is in out_ and err_.
  int as(const std::string& who, const std::vector<std::string>& words) {
    out_.str("");
    err_.str("");
    Environment environment{.out = out_,
                            .err = err_,
                            .credentials = dir_.file(who + ".json"),
                            .startServer = EmbeddedServer::start};
    return run(words, environment);
  }

  TempDir dir_;
  std::unique_ptr<EmbeddedServer> server_;
  std::ostringstream out_;
  std::ostringstream err_;
};

TEST_F(DeviceTest, AreListedWithWhoseTheyAre) {
  ASSERT_EQ(as("ana", {"devices"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("laptop"));
  EXPECT_THAT(out_.str(), HasSubstr("this one"));
  EXPECT_THAT(out_.str(), HasSubstr("phone"));
  EXPECT_THAT(out_.str(), HasSubstr("Ben"));
  ASSERT_EQ(as("ana", {"devices", "--json"}), kOk);
  EXPECT_EQ(nlohmann::json::parse(out_.str())["devices"].size(), 2u);
}

TEST_F(DeviceTest, CanBeTakenOffByNumberOrNameAndAreThenKnownNoMore) {
  ASSERT_EQ(as("ben", {"events"}), kOk);
  ASSERT_EQ(as("ana", {"devices", "remove", "phone"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("phone of Ben is taken off"));
  EXPECT_EQ(as("ben", {"events"}), kRefused);
  ASSERT_EQ(as("ana", {"devices"}), kOk);
  EXPECT_THAT(out_.str(), HasSubstr("taken off"));
  EXPECT_EQ(as("ana", {"devices", "remove", "2"}), kOk) << "again is fine";
}

TEST_F(DeviceTest, AreForHostsAlone) {
  EXPECT_EQ(as("ben", {"devices"}), kRefused);
  EXPECT_THAT(err_.str(), HasSubstr("only a host"));
}

TEST_F(DeviceTest, ThatAreNotThereAreTold) {
  EXPECT_EQ(as("ana", {"devices", "remove", "tablet"}), kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("No device is called tablet"));
}

TEST_F(DeviceTest, AJoinWithAHalfCodeIsRefusedBeforeAnythingIsSent) {
  EXPECT_EQ(as("zoe", {"join", server_->target(), "--code", "AAAA-BBBB-CCCC.12ab", "--name", "Zoe"}),
            kBadInput);
  EXPECT_THAT(err_.str(), HasSubstr("cut off"));
  EXPECT_THAT(err_.str(), Not(HasSubstr("refused")));
}

}  // namespace
}  // namespace suppertide::terminal
