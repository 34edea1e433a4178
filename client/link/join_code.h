// What people are given to join with: a code, and for a server that made its own
// certificate that certificate's fingerprint, as one word: "ABCD-EFGH-JKLM.7a5c...".
#pragma once

#include <string>

#include "absl/status/statusor.h"

namespace suppertide::link {

struct JoinCode {
  std::string code;         // for the server
  std::string fingerprint;  // SHA-256, 64 lower-case hex digits; empty: none was given
};

// Blanks around are left out; the fingerprint may be in capitals and have colons.
// INVALID_ARGUMENT when what stands after the dot is no whole fingerprint.
absl::StatusOr<JoinCode> parseJoinCode(const std::string& text);

// The other way.
std::string textOf(const JoinCode& code);

}  // namespace suppertide::link
