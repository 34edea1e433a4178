// Codes and tokens: made from the system's randomness, kept only as hashes.
#pragma once

#include <google/protobuf/message_lite.h>

#include <string>

namespace suppertide::service {

// 256 random bits, base64 for addresses, 43 characters.
std::string newToken();
// "XXXX-XXXX-XXXX" without letters and digits that look alike; 58 bits.
std::string newCode();
// What is stored of a token or code; case and dashes of a code do not matter, nor
// what follows a dot: the fingerprint of our certificate, which is for clients.
std::string hashOfToken(const std::string& token);
std::string hashOfCode(const std::string& code);
// An id for the member that a code adds: the same for the same code, and telling nothing of it.
std::string memberIdOfCode(const std::string& code);
// A short mark of a call and its content, for replays: the same for equal content.
std::string fingerprintOf(const std::string& method, const google::protobuf::MessageLite& content);

}  // namespace suppertide::service
