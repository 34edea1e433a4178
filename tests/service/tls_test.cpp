// Servers over TLS, and clients that know which one they were invited to.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <sstream>

#include "client/link/join_code.h"
#include "client/link/pinned_certificate.h"
#include "client/link/session.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

using absl::StatusCode;
using ::testing::HasSubstr;

std::string contentsOf(const std::string& path) {
  std::ifstream file(path);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

class CertificateTest : public ::testing::Test {
 protected:
  const TemporaryFolder folder_;
  const std::string file_ = folder_.path() + "/h.sqlite";
};

TEST_F(CertificateTest, IsMadeOnceAndItsKeyIsItsOwnersAlone) {
  const auto first = selfMadeCertificate(file_);
  ASSERT_TRUE(first.ok()) << first.status();
  EXPECT_TRUE(first->selfMade);
  struct stat key {};
  ASSERT_EQ(stat((file_ + ".key.pem").c_str(), &key), 0);
  EXPECT_EQ(key.st_mode & 0777, 0600u);
  const auto second = selfMadeCertificate(file_);
  ASSERT_TRUE(second.ok()) << second.status();
  EXPECT_EQ(second->fingerprint, first->fingerprint);
  EXPECT_EQ(second->keyPem, first->keyPem);
}

TEST_F(CertificateTest, HasTheFingerprintThatAClientComputes) {
  const auto made = selfMadeCertificate("");
  ASSERT_TRUE(made.ok());
  EXPECT_EQ(made->fingerprint.size(), 64u);
  EXPECT_EQ(link::certificateFingerprint(made->certificatePem), made->fingerprint);
  EXPECT_NE(selfMadeCertificate("")->fingerprint, made->fingerprint);
}

TEST_F(CertificateTest, IsRefusedWhenOthersMayReadTheKey) {
  ASSERT_TRUE(selfMadeCertificate(file_).ok());
  std::filesystem::permissions(file_ + ".key.pem", std::filesystem::perms(0640));
  const auto opened = selfMadeCertificate(file_);
  EXPECT_EQ(opened.status().code(), StatusCode::kFailedPrecondition);
  EXPECT_THAT(std::string(opened.status().message()), HasSubstr("chmod 600"));
}

TEST_F(CertificateTest, IsRefusedWithAnothersKeyAndWithoutOne) {
  ASSERT_TRUE(selfMadeCertificate(file_).ok());
  ASSERT_TRUE(selfMadeCertificate(file_ + "2").ok());
  EXPECT_EQ(ownCertificate(file_ + ".cert.pem", file_ + "2.key.pem").status().code(),
            StatusCode::kFailedPrecondition);
  EXPECT_TRUE(ownCertificate(file_ + ".cert.pem", file_ + ".key.pem").ok());
  std::filesystem::remove(file_ + ".key.pem");
  EXPECT_EQ(selfMadeCertificate(file_).status().code(), StatusCode::kFailedPrecondition);
}

TEST_F(CertificateTest, ALostStartIsMadeGood) {
  ASSERT_TRUE(selfMadeCertificate(file_).ok());
  std::filesystem::remove(file_ + ".cert.pem");
  EXPECT_TRUE(selfMadeCertificate(file_).ok());
}

// A server on loopback TCP with a certificate of its own making.
class TlsTest : public ::testing::Test {
 protected:
  TlsTest() {
    Server::Options options;
    options.listen = "127.0.0.1:0";
    options.fullSync = false;
    auto started = Server::start(options, clock_);
    EXPECT_TRUE(started.ok()) << started.status();
    server_ = *std::move(started);
  }

  link::Session session(const std::string& fingerprint, const std::string& token = "",
                        const std::string& pem = "") {
    return link::Session({.target = server_->target(),
                          .deviceToken = token,
                          .certificatePem = pem,
                          .fingerprint = fingerprint,
                          .deadline = std::chrono::seconds(20)});
  }

  v1::CreateHouseholdRequest founding() {
    v1::CreateHouseholdRequest request;
    request.set_host_code(server_->hostCode() + "." + server_->fingerprint());
    request.mutable_household()->set_display_name("Harbour Lane");
    request.mutable_household()->set_time_zone("Europe/Lisbon");
    request.set_request_id("found");
    return request;
  }

  const SystemClock clock_;
  std::unique_ptr<Server> server_;
};

TEST_F(TlsTest, AnswersTheClientThatWasInvited) {
  const auto made = session(server_->fingerprint()).createHousehold(founding());
  ASSERT_TRUE(made.ok()) << made.status();
  link::Session host = session(server_->fingerprint(), made->device_token());
  v1::CreateInvitationRequest asked;
  asked.set_household_id(made->household().id());
  asked.set_role(v1::ROLE_COOK);
  asked.set_request_id("invite");
  const auto invitation = host.createInvitation(asked);
  ASSERT_TRUE(invitation.ok()) << invitation.status();
  EXPECT_EQ(invitation->certificate_fingerprint(), server_->fingerprint());
}

TEST_F(TlsTest, IsNotBelievedByAClientThatWasInvitedElsewhere) {
  const auto made = session(std::string(64, '0')).createHousehold(founding());
  EXPECT_EQ(made.status().code(), StatusCode::kUnavailable);
  EXPECT_THAT(std::string(made.status().message()), HasSubstr("another certificate"));
  EXPECT_FALSE(server_->hostCode().empty()) << "the code was not sent";
}

TEST_F(TlsTest, AnswersNobodyWithoutEncryption) {
  EXPECT_EQ(session("").createHousehold(founding()).status().code(), StatusCode::kUnavailable);
  EXPECT_FALSE(server_->hostCode().empty());
}

TEST(TlsServerTest, ShowsTheOwnersCertificateAndPutsNoFingerprintIntoInvitations) {
  const TemporaryFolder folder;
  const std::string file = folder.path() + "/own";
  ASSERT_TRUE(selfMadeCertificate(file).ok());
  Server::Options options;
  options.listen = "127.0.0.1:0";
  options.certificateFile = file + ".cert.pem";
  options.keyFile = file + ".key.pem";
  const SystemClock clock;
  const auto server = Server::start(options, clock);
  ASSERT_TRUE(server.ok()) << server.status();
  EXPECT_TRUE((*server)->fingerprint().empty());
  const std::string port = (*server)->target().substr((*server)->target().rfind(':'));
  link::Session session({.target = "localhost" + port,
                         .deviceToken = "none",
                         .certificatePem = contentsOf(options.certificateFile),
                         .deadline = std::chrono::seconds(20)});
  EXPECT_EQ(session.whoAmI().status().code(), StatusCode::kUnauthenticated)
      << "TLS works, the token is wrong";
}

TEST(TlsServerTest, StaysThePinnedServerOverARestart) {
  const TemporaryFolder folder;
  Server::Options options;
  options.dataFile = folder.path() + "/h.sqlite";
  options.listen = "127.0.0.1:0";
  const SystemClock clock;
  std::string fingerprint;
  {
    const auto first = Server::start(options, clock);
    ASSERT_TRUE(first.ok()) << first.status();
    fingerprint = (*first)->fingerprint();
  }
  const auto second = Server::start(options, clock);
  ASSERT_TRUE(second.ok()) << second.status();
  EXPECT_EQ((*second)->fingerprint(), fingerprint);
}

TEST(TlsServerTest, ServesNetworksOnlyWithEncryption) {
  Server::Options options;
  options.listen = "0.0.0.0:0";
  options.plain = true;
  const SystemClock clock;
  EXPECT_EQ(Server::start(options, clock).status().code(), StatusCode::kInvalidArgument);
}

}  // namespace
}  // namespace suppertide::service
