#include "server/compose/day/calendar_uid.h"

#include <cstdint>

#include "absl/strings/str_format.h"

namespace suppertide::compose {
namespace {

// FNV-1a, begun at two unlike values for the two halves.
std::uint64_t hashed(const std::string& name, std::uint64_t hash) {
  constexpr std::uint64_t kPrime = 0x100000001B3;
  for (const char c : name) hash = (hash ^ static_cast<unsigned char>(c)) * kPrime;
  return hash ^ (hash >> 29);
}

}  // namespace

std::string calendarUid(const std::string& name) {
  constexpr std::uint64_t kBegin = 0xCBF29CE484222325;
  const std::uint64_t high = hashed(name, kBegin);
  const std::uint64_t low = hashed(name, kBegin ^ high ^ 0x9E3779B97F4A7C15);
  return absl::StrFormat("%08x-%04x-8%03x-%04x-%012x", high >> 32, (high >> 16) & 0xFFFF, high & 0xFFF,
                         0x8000 | ((low >> 48) & 0x3FFF), low & 0xFFFFFFFFFFFF);
}

}  // namespace suppertide::compose
