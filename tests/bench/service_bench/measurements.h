// What is measured, each beside what nothing can be faster than. Each prints its rows.
#pragma once

#include <string>

namespace suppertide::bench {

// `folder` lies on the disk to be measured.
void measureWrites(const std::string& folder, int count);
void measureFanOut(const std::string& folder, int watchers, int changes);
void measureMixed(const std::string& folder, int households, int watchersEach, int seconds);
void measureColdStart(const std::string& folder, int documents);

}  // namespace suppertide::bench
