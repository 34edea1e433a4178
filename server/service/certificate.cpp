#include "server/service/certificate.h"

#include <fcntl.h>
#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/rand.h>
#include <openssl/x509v3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <memory>
#include <sstream>

#include "absl/strings/escaping.h"
#include "absl/strings/str_cat.h"

namespace suppertide::service {
namespace {

template <auto Free>
struct Freed {
  template <typename T>
  void operator()(T* object) const {
    Free(object);
  }
};
using Key = std::unique_ptr<EVP_PKEY, Freed<EVP_PKEY_free>>;
using X509Pointer = std::unique_ptr<X509, Freed<X509_free>>;
using Bio = std::unique_ptr<BIO, Freed<BIO_free_all>>;
using Extension = std::unique_ptr<X509_EXTENSION, Freed<X509_EXTENSION_free>>;

// Others' clients compare names and dates even when they trust this certificate alone.
constexpr char kNames[] = "DNS:localhost,IP:127.0.0.1,IP:::1";
constexpr char kFrom[] = "20200101000000Z";
constexpr char kTo[] = "99991231235959Z";  // RFC 5280 4.1.2.5: no date of expiry

absl::Status cannotMake() {
  return absl::InternalError("the server's certificate cannot be made");
}

absl::Status unusable(const std::string& file, const std::string& why) {
  return absl::FailedPreconditionError(absl::StrCat("certificate: ", file, ": ", why));
}

std::string textOf(BIO* bio) {
  char* data = nullptr;
  const long size = BIO_get_mem_data(bio, &data);
  return {data, static_cast<std::size_t>(size)};
}

bool addExtension(X509* certificate, int id, const char* value) {
  const Extension extension(X509V3_EXT_conf_nid(nullptr, nullptr, id, value));
  return extension != nullptr && X509_add_ext(certificate, extension.get(), -1) == 1;
}

bool describe(X509* certificate, EVP_PKEY* key) {
  std::array<unsigned char, 16> serial{};
  if (RAND_bytes(serial.data(), static_cast<int>(serial.size())) != 1) return false;
  serial[0] &= 0x7F;  // a positive number
  const std::unique_ptr<BIGNUM, Freed<BN_free>> number(
      BN_bin2bn(serial.data(), static_cast<int>(serial.size()), nullptr));
  X509_NAME* name = X509_get_subject_name(certificate);
  return X509_set_version(certificate, 2) == 1 && number != nullptr &&
         BN_to_ASN1_INTEGER(number.get(), X509_get_serialNumber(certificate)) != nullptr &&
         ASN1_TIME_set_string_X509(X509_getm_notBefore(certificate), kFrom) == 1 &&
         ASN1_TIME_set_string_X509(X509_getm_notAfter(certificate), kTo) == 1 &&
         X509_NAME_add_entry_by_txt(name, "CN", MBSTRING_ASC,
                                    reinterpret_cast<const unsigned char*>("Suppertide server"), -1, -1,
                                    0) == 1 &&
         X509_set_issuer_name(certificate, name) == 1 && X509_set_pubkey(certificate, key) == 1 &&
         addExtension(certificate, NID_basic_constraints, "critical,CA:FALSE") &&
         addExtension(certificate, NID_key_usage, "critical,digitalSignature") &&
         addExtension(certificate, NID_ext_key_usage, "serverAuth") &&
         addExtension(certificate, NID_subject_alt_name, kNames);
}

X509Pointer certificateIn(const std::string& pem) {
  const Bio bio(BIO_new_mem_buf(pem.data(), static_cast<int>(pem.size())));
  return X509Pointer(PEM_read_bio_X509(bio.get(), nullptr, nullptr, nullptr));
}

std::string fingerprintOf(X509* certificate) {
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
  unsigned int size = 0;
  if (X509_digest(certificate, EVP_sha256(), digest.data(), &size) != 1) return "";
  return absl::BytesToHexString(std::string(reinterpret_cast<const char*>(digest.data()), size));
}

absl::StatusOr<Certificate> make() {
  const Key key(EVP_EC_gen("P-256"));
  const X509Pointer certificate(X509_new());
  if (key == nullptr || certificate == nullptr || !describe(certificate.get(), key.get()) ||
      X509_sign(certificate.get(), key.get(), EVP_sha256()) == 0)
    return cannotMake();
  const Bio certificateText(BIO_new(BIO_s_mem()));
  const Bio keyText(BIO_new(BIO_s_mem()));
  if (PEM_write_bio_X509(certificateText.get(), certificate.get()) != 1 ||
      PEM_write_bio_PKCS8PrivateKey(keyText.get(), key.get(), nullptr, nullptr, 0, nullptr, nullptr) != 1)
    return cannotMake();
  return Certificate{textOf(certificateText.get()), textOf(keyText.get()), fingerprintOf(certificate.get()),
                     true};
}

// Whole or not at all, and never for a moment readable by others than `mode` says.
absl::Status writeNew(const std::string& path, const std::string& text, mode_t mode) {
  const std::string next = path + ".new";
  const int file = open(next.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC | O_NOFOLLOW, mode);
  if (file < 0) return absl::UnavailableError(absl::StrCat("write ", path, ": ", std::strerror(errno)));
  const bool written = fchmod(file, mode) == 0 &&
                       write(file, text.data(), text.size()) == static_cast<ssize_t>(text.size()) &&
                       fsync(file) == 0;
  const int error = errno;
  close(file);
  if (written && rename(next.c_str(), path.c_str()) == 0) return absl::OkStatus();
  unlink(next.c_str());
  return absl::UnavailableError(absl::StrCat("write ", path, ": ", std::strerror(error)));
}

absl::StatusOr<std::string> contentsOf(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) return unusable(path, std::strerror(errno));
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

absl::Status checkKeyMode(const std::string& path, mode_t tooOpen) {
  struct stat there {};
  if (stat(path.c_str(), &there) != 0) return unusable(path, std::strerror(errno));
  if ((there.st_mode & tooOpen) == 0) return absl::OkStatus();
  return unusable(path, "others on this machine may read the key: chmod 600 it");
}

// The two files, which must be each other's.
absl::StatusOr<Certificate> read(const std::string& certificateFile, const std::string& keyFile,
                                 mode_t tooOpen) {
  if (auto status = checkKeyMode(keyFile, tooOpen); !status.ok()) return status;
  auto certificatePem = contentsOf(certificateFile);
  if (!certificatePem.ok()) return certificatePem.status();
  auto keyPem = contentsOf(keyFile);
  if (!keyPem.ok()) return keyPem.status();
  const X509Pointer certificate = certificateIn(*certificatePem);
  if (certificate == nullptr) return unusable(certificateFile, "holds no certificate in PEM");
  const Bio bio(BIO_new_mem_buf(keyPem->data(), static_cast<int>(keyPem->size())));
  // Without a password: nobody is there to type one.
  const Key key(PEM_read_bio_PrivateKey(bio.get(), nullptr, nullptr, const_cast<char*>("")));
  if (key == nullptr) return unusable(keyFile, "holds no key in PEM, or one with a password");
  if (X509_check_private_key(certificate.get(), key.get()) != 1)
    return unusable(keyFile, absl::StrCat("is not the key of ", certificateFile));
  return Certificate{*std::move(certificatePem), *std::move(keyPem), fingerprintOf(certificate.get()), false};
}

bool exists(const std::string& path) {
  struct stat there {};
  return stat(path.c_str(), &there) == 0;
}

}  // namespace

absl::StatusOr<Certificate> selfMadeCertificate(const std::string& dataFile) {
  if (dataFile.empty()) return make();
  const std::string certificateFile = dataFile + ".cert.pem";
  const std::string keyFile = dataFile + ".key.pem";
  // The certificate is written last: a key alone is a start that broke off.
  if (!exists(certificateFile)) {
    auto made = make();
    if (!made.ok()) return made;
    if (auto status = writeNew(keyFile, made->keyPem, S_IRUSR | S_IWUSR); !status.ok()) return status;
    if (auto status = writeNew(certificateFile, made->certificatePem, S_IRUSR | S_IWUSR | S_IRGRP | S_IROTH);
        !status.ok())
      return status;
    return made;
  }
  auto kept = read(certificateFile, keyFile, S_IRWXG | S_IRWXO);
  if (kept.ok()) kept->selfMade = true;
  return kept;
}

absl::StatusOr<Certificate> ownCertificate(const std::string& certificateFile, const std::string& keyFile) {
  return read(certificateFile, keyFile, S_IRWXO);
}

}  // namespace suppertide::service
