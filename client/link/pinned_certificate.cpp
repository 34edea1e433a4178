#include "client/link/pinned_certificate.h"

#include <grpcpp/security/tls_certificate_verifier.h>
#include <grpcpp/security/tls_credentials_options.h>
#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/x509.h>

#include <array>
#include <functional>

#include "absl/strings/escaping.h"

namespace suppertide::link {
namespace {

namespace tls = grpc::experimental;

class PinnedCertificate : public tls::ExternalCertificateVerifier {
 public:
  explicit PinnedCertificate(std::string fingerprint) : fingerprint_(std::move(fingerprint)) {}

  bool Verify(tls::TlsCustomVerificationCheckRequest* request, std::function<void(grpc::Status)>,
              grpc::Status* outcome) override {
    const grpc::string_ref shown = request->peer_cert();
    const bool same = certificateFingerprint(std::string(shown.data(), shown.size())) == fingerprint_;
    if (!same)
      *outcome = {grpc::StatusCode::UNAUTHENTICATED,
                  "it shows another certificate than the one this device was invited with"};
    return true;  // decided at once
  }
  void Cancel(tls::TlsCustomVerificationCheckRequest*) override {}

 private:
  const std::string fingerprint_;
};

}  // namespace

std::string certificateFingerprint(const std::string& pem) {
  BIO* bio = BIO_new_mem_buf(pem.data(), static_cast<int>(pem.size()));
  X509* certificate = PEM_read_bio_X509(bio, nullptr, nullptr, nullptr);
  BIO_free(bio);
  if (certificate == nullptr) return "";
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned int size = 0;
  const bool made = X509_digest(certificate, EVP_sha256(), digest.data(), &size) == 1;
  X509_free(certificate);
  return made ? absl::BytesToHexString(std::string(reinterpret_cast<const char*>(digest.data()), size)) : "";
}

std::shared_ptr<grpc::ChannelCredentials> pinnedCredentials(const std::string& fingerprint) {
  tls::TlsChannelCredentialsOptions options;
  options.set_verify_server_certs(false);  // by issuer; the verifier below is the check
  options.set_check_call_host(false);
  options.set_certificate_verifier(tls::ExternalCertificateVerifier::Create<PinnedCertificate>(fingerprint));
  return tls::TlsCredentials(options);
}

}  // namespace suppertide::link
