#include "server/service/listen_address.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include <cstdlib>
#include <cstring>

#include "absl/strings/str_cat.h"

namespace suppertide::service {
namespace {

constexpr char kUnix[] = "unix:";

std::string socketPath(const std::string& address) {
  const std::string path = address.substr(sizeof(kUnix) - 1);
  return path.rfind("///", 0) == 0 ? path.substr(2) : path;
}

enum class Host { kLoopback, kOther, kNoAddress };

// A host name may begin like an address ("127.example.org"), so only numbers count, and "localhost".
Host kindOf(const std::string& host) {
  if (host == "localhost") return Host::kLoopback;
  in_addr four{};
  if (inet_pton(AF_INET, host.c_str(), &four) == 1)
    return ntohl(four.s_addr) >> 24 == 127 ? Host::kLoopback : Host::kOther;
  if (host.size() < 2 || host.front() != '[' || host.back() != ']') return Host::kNoAddress;
  in6_addr six{};
  if (inet_pton(AF_INET6, host.substr(1, host.size() - 2).c_str(), &six) != 1) return Host::kNoAddress;
  return IN6_IS_ADDR_LOOPBACK(&six) ? Host::kLoopback : Host::kOther;
}

bool isPort(const std::string& text) {
  const bool digits =
      !text.empty() && text.size() <= 5 && text.find_first_not_of("0123456789") == std::string::npos;
  return digits && std::atoi(text.c_str()) <= 65535;
}

absl::Status checkSocketPath(const std::string& path) {
  if (path.empty()) return absl::InvalidArgumentError("listen address unix: lacks the path of the socket");
  constexpr std::size_t kMost = sizeof(sockaddr_un::sun_path) - 1;
  if (path.size() > kMost)
    return absl::InvalidArgumentError(absl::StrCat(
        "listen address unix:", path, " is too long: a socket's path has at most ", kMost, " bytes"));
  return absl::OkStatus();
}

// Whether somebody answers at the socket.
bool isServed(const std::string& path) {
  const int peer = socket(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0);
  if (peer < 0) return false;
  sockaddr_un name{};
  name.sun_family = AF_UNIX;
  std::memcpy(name.sun_path, path.c_str(), path.size());
  const bool served = connect(peer, reinterpret_cast<const sockaddr*>(&name), sizeof(name)) == 0;
  close(peer);
  return served;
}

}  // namespace

bool isUnixAddress(const std::string& address) {
  return address.rfind(kUnix, 0) == 0;
}

absl::Status checkListenAddress(const std::string& address, bool encrypted) {
  if (isUnixAddress(address)) return checkSocketPath(socketPath(address));
  const auto colon = address.rfind(':');
  if (colon == std::string::npos || !isPort(address.substr(colon + 1)))
    return absl::InvalidArgumentError(
        absl::StrCat("listen address ", address, " is not HOST:PORT or unix:PATH"));
  const Host host = kindOf(address.substr(0, colon));
  if (host == Host::kNoAddress)
    return absl::InvalidArgumentError(absl::StrCat(
        "listen address ", address,
        " names no address in numbers: 0.0.0.0 serves every network, 127.0.0.1 this machine's loopback"));
  if (host == Host::kOther && !encrypted)
    return absl::InvalidArgumentError(
        absl::StrCat("listen address ", address,
                     " is not this machine's own: without encryption only a loopback address (127.0.0.1, "
                     "[::1]) or unix:PATH is served"));
  return absl::OkStatus();
}

absl::Status checkSocketIsFree(const std::string& address) {
  if (!isUnixAddress(address)) return absl::OkStatus();
  const std::string path = socketPath(address);
  struct stat there {};
  if (lstat(path.c_str(), &there) != 0) return absl::OkStatus();
  if (!S_ISSOCK(there.st_mode))
    return absl::UnavailableError(
        absl::StrCat("cannot listen on ", address, ": there is a file of that name"));
  if (isServed(path))
    return absl::UnavailableError(
        absl::StrCat("cannot listen on ", address, ": another server is listening there"));
  return absl::OkStatus();
}

}  // namespace suppertide::service
