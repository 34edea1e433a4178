#include "client/link/own_address.h"

#include <arpa/inet.h>
#include <ifaddrs.h>
#include <net/if.h>
#include <netinet/in.h>

#include <cstdint>

namespace suppertide::link {
namespace {

constexpr char kEverywhere[] = "0.0.0.0";

// 10/8, 172.16/12 and 192.168/16 (RFC 1918).
bool isPrivate(std::uint32_t address) {
  return address >> 24 == 10 || address >> 20 == 0xac1 || address >> 16 == 0xc0a8;
}

std::string textOf(const in_addr& address) {
  char text[INET_ADDRSTRLEN] = {};
  return inet_ntop(AF_INET, &address, text, sizeof(text)) == nullptr ? "" : text;
}

}  // namespace

std::string ownAddress() {
  ifaddrs* first = nullptr;
  if (getifaddrs(&first) != 0) return {};
  std::string found;
  bool foundPrivate = false;
  for (const ifaddrs* one = first; one != nullptr; one = one->ifa_next) {
    if (one->ifa_addr == nullptr || one->ifa_addr->sa_family != AF_INET) continue;
    if ((one->ifa_flags & IFF_UP) == 0 || (one->ifa_flags & IFF_LOOPBACK) != 0) continue;
    const in_addr address = reinterpret_cast<const sockaddr_in*>(one->ifa_addr)->sin_addr;
    const bool home = isPrivate(ntohl(address.s_addr));
    if (!found.empty() && (foundPrivate || !home)) continue;
    found = textOf(address);
    foundPrivate = home;
  }
  freeifaddrs(first);
  return found;
}

std::string reachableAt(const std::string& listen) {
  const auto colon = listen.rfind(':');
  if (colon == std::string::npos || listen.substr(0, colon) != kEverywhere) return listen;
  const std::string own = ownAddress();
  return own.empty() ? "" : own + listen.substr(colon);
}

}  // namespace suppertide::link
