// Where a number comes from, kept beside the number.
#pragma once

#include <string_view>

namespace suppertide::kitchen {

// How well a number is known.
enum class Mark {
  kRead,       // read in the publication itself
  kExcerpt,    // read in an excerpt or a public reprint of it
  kSecondary,  // quoted by another publication
  kComputed,   // follows from exact definitions or from rows with a better mark
  kMemory,     // from memory; to be verified
  kPractice,   // common practice, no source
};

struct Source {
  std::string_view title;
  Mark mark = Mark::kPractice;
};

}  // namespace suppertide::kitchen
