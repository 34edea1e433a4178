#include "client/link/join_code.h"

#include <algorithm>
#include <cctype>

namespace suppertide::link {
namespace {

constexpr std::size_t kFingerprintDigits = 64;
constexpr char kLinkStart[] = "suppertide:join?at=";
constexpr char kLinkCode[] = "&code=";

std::string withoutBlanks(const std::string& text) {
  std::string out;
  std::copy_if(text.begin(), text.end(), std::back_inserter(out),
               [](unsigned char c) { return std::isspace(c) == 0; });
  return out;
}

}  // namespace

absl::StatusOr<JoinCode> parseJoinCode(const std::string& text) {
  const std::string whole = withoutBlanks(text);
  const std::size_t dot = whole.find('.');
  JoinCode code{whole.substr(0, dot), ""};
  if (dot == std::string::npos) return code;
  for (const char c : whole.substr(dot + 1)) {
    if (c == ':') continue;
    if (std::isxdigit(static_cast<unsigned char>(c)) == 0)
      return absl::InvalidArgumentError("the code's second part, after the dot, has letters it cannot have");
    code.fingerprint += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  if (code.fingerprint.size() != kFingerprintDigits)
    return absl::InvalidArgumentError(
        "the code's second part, after the dot, is cut off: give all of it, as one word");
  return code;
}

std::string textOf(const JoinCode& code) {
  return code.fingerprint.empty() ? code.code : code.code + "." + code.fingerprint;
}

std::string textOf(const JoinLink& link) {
  return kLinkStart + link.target + kLinkCode + link.code;
}

std::optional<JoinLink> parseJoinLink(const std::string& text) {
  const std::string whole = withoutBlanks(text);
  const std::string start = kLinkStart;
  const std::size_t code = whole.rfind(kLinkCode);
  if (whole.rfind(start, 0) != 0 || code == std::string::npos || code <= start.size()) return std::nullopt;
  return JoinLink{whole.substr(start.size(), code - start.size()),
                  whole.substr(code + std::string(kLinkCode).size())};
}

}  // namespace suppertide::link
