#include "client/link/credentials.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <cstdlib>
#include <fstream>

namespace suppertide::link {
namespace {

namespace fs = std::filesystem;

class CredentialsTest : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "suppertide-credentials-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
  }
  void TearDown() override { fs::remove_all(folder_); }
  fs::path path() const { return folder_ / "suppertide" / "servers.json"; }
  void write(const std::string& text) const {
    fs::create_directories(path().parent_path());
    std::ofstream(path()) << text;
  }

  fs::path folder_;
};

TEST_F(CredentialsTest, AreEmptyWithoutAFile) {
  const auto credentials = loadCredentials(path());
  ASSERT_TRUE(credentials.ok());
  EXPECT_TRUE(credentials->servers.empty());
  EXPECT_EQ(credentials->find(""), nullptr);
}

TEST_F(CredentialsTest, ComeBackAsSaved) {
  Credentials credentials;
  credentials.put({.name = "home",
                   .target = "127.0.0.1:7443",
                   .certificatePem = "",
                   .householdId = "h1",
                   .householdName = "Calçada 9",
                   .memberId = "ana",
                   .deviceToken = "secret"});
  credentials.put({.name = "cabin",
                   .target = "unix:/run/x",
                   .certificatePem = "PEM",
                   .householdId = "h2",
                   .householdName = "Cabin",
                   .memberId = "ben",
                   .deviceToken = "other"});
  ASSERT_TRUE(saveCredentials(path(), credentials).ok());
  const auto back = loadCredentials(path());
  ASSERT_TRUE(back.ok()) << back.status();
  ASSERT_EQ(back->servers.size(), 2U);
  ASSERT_NE(back->find("home"), nullptr);
  EXPECT_EQ(back->find("home")->householdName, "Calçada 9");
  ASSERT_NE(back->find(""), nullptr);
  EXPECT_EQ(back->find("")->deviceToken, "other") << "the one put last is the chosen one";
  EXPECT_EQ(back->find("nowhere"), nullptr);
}

TEST_F(CredentialsTest, CanBeReadByTheirOwnerOnly) {
  write("{}");
  fs::permissions(path(), fs::perms::all);
  ASSERT_TRUE(saveCredentials(path(), {}).ok());
  struct stat info {};
  ASSERT_EQ(::stat(path().c_str(), &info), 0);
  EXPECT_EQ(info.st_mode & 0777U, 0600U);
}

TEST_F(CredentialsTest, LeaveNoOtherFileBehind) {
  ASSERT_TRUE(saveCredentials(path(), {}).ok());
  ASSERT_TRUE(saveCredentials(path(), {}).ok());
  EXPECT_EQ(std::distance(fs::directory_iterator(path().parent_path()), fs::directory_iterator()), 1);
}

TEST_F(CredentialsTest, RefuseAFileThatIsNotOursAndLeaveIt) {
  write("[1, 2");
  EXPECT_EQ(loadCredentials(path()).status().code(), absl::StatusCode::kFailedPrecondition);
  write(R"({"version": 99, "servers": []})");
  EXPECT_EQ(loadCredentials(path()).status().code(), absl::StatusCode::kFailedPrecondition);
}

TEST_F(CredentialsTest, StandInTheConfigFolder) {
  ASSERT_EQ(::setenv("XDG_CONFIG_HOME", "/somewhere", 1), 0);
  EXPECT_EQ(credentialsPath(), fs::path("/somewhere/suppertide/servers.json"));
  ASSERT_EQ(::unsetenv("XDG_CONFIG_HOME"), 0);
  ASSERT_EQ(::setenv("HOME", "/home/ana", 1), 0);
  EXPECT_EQ(credentialsPath(), fs::path("/home/ana/.config/suppertide/servers.json"));
}

}  // namespace
}  // namespace suppertide::link
