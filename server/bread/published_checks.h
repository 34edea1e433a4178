// The model beside what others published or practise: one row a claim, with its
// source, how that source was read and how much agreement is worth.
//
// The distinction that matters is the basis: a row that a constant was fitted to, or
// whose source gave the constant, agrees by construction and proves nothing but the
// arithmetic. Only independent rows can speak for the model.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace suppertide::bread {

enum class SourceReading {
  kRead,            // in the source itself
  kAbstract,        // only its abstract
  kSecondHand,      // quoted by another text
  kMemory,          // from memory, to be looked up again
  kComputed,        // arithmetic, or the same equations solved independently
  kCommonPractice,  // no source
};

enum class CheckBasis {
  kIndependent,  // not used in making the model
  kTakenOver,    // the model uses this source's constants
  kFitted,       // a constant was chosen to meet this row
  kArithmetic,   // an identity or textbook mathematics: holds for any dough
};

struct PublishedCheck {
  std::string topic;
  std::string claim;
  std::string source;
  SourceReading reading = SourceReading::kComputed;
  CheckBasis basis = CheckBasis::kArithmetic;
  std::string unit;  // of the three values; empty for ratios
  double low = 0;    // what the source says, or its value with the tolerance allowed
  double high = 0;   // both ends count
  double model = 0;  // kNeverHours: never within the search
  bool passes = false;
  std::string knownMiss;  // why the model misses this row; empty where it should pass
};

inline constexpr double kNeverHours = 1e6;

// All rows, in the order in which a reader would want them. About 2 milliseconds.
std::vector<PublishedCheck> publishedChecks();

std::string_view nameOf(SourceReading reading);  // "second-hand", "common practice, no source", ...
std::string_view nameOf(CheckBasis basis);       // "independent", "taken over", "fitted", "arithmetic"

}  // namespace suppertide::bread
