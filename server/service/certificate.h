// What the server shows to prove who it is over TLS.
//
// A certificate of the owner's is checked by its issuer and name, as everywhere.
// One that the server makes itself proves nothing by name: its SHA-256
// fingerprint travels with the host code or the invitation, and the joining
// device accepts this certificate alone. So it never expires and is never
// changed: a new one would lock everybody out.
#pragma once

#include <string>

#include "absl/status/statusor.h"

namespace suppertide::service {

struct Certificate {
  std::string certificatePem;
  std::string keyPem;
  std::string fingerprint;  // SHA-256 of the certificate's DER, 64 lower-case hex digits
  bool selfMade = false;
};

// The one kept beside `dataFile` as "DATAFILE.cert.pem" and "DATAFILE.key.pem",
// made at the first call; the key is its owner's alone (0600). Made anew each
// time for an empty `dataFile`. FAILED_PRECONDITION when one of the two files is
// missing, unreadable, not the other's, or when others may read the key.
absl::StatusOr<Certificate> selfMadeCertificate(const std::string& dataFile);

// The owner's, from two PEM files; the first may hold the chain after the
// certificate. FAILED_PRECONDITION as above, but the key may be read by a group.
absl::StatusOr<Certificate> ownCertificate(const std::string& certificateFile, const std::string& keyFile);

}  // namespace suppertide::service
