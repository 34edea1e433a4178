// What people are given to join with: a code, and for a server that made its own
// certificate that certificate's fingerprint, as one word: "ABCD-EFGH-JKLM.7a5c...".
#pragma once

#include <optional>
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

// Where and with what to join, as one line that a camera can read:
// "suppertide:join?at=192.168.1.4:50710&code=ABCD-EFGH-JKLM.7a5c...".
struct JoinLink {
  std::string target;
  std::string code;  // as one word
};
std::string textOf(const JoinLink& link);
// Blanks around are left out. Absent: it is no such line.
std::optional<JoinLink> parseJoinLink(const std::string& text);

}  // namespace suppertide::link
