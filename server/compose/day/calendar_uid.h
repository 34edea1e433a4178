// What an entry of a calendar is known by.
#pragma once

#include <string>

namespace suppertide::compose {

// A UUID (RFC 9562, version 8) that is always the same for the same name and tells nothing of it, as
// RFC 7986 5.3 asks.
std::string calendarUid(const std::string& name);

}  // namespace suppertide::compose
