// How the published rows are written down; for the files that do so and nobody else.
#pragma once

#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "server/bread/published_checks.h"

namespace suppertide::bread::rows {

// What rows of one origin have in common.
struct Origin {
  std::string topic;
  std::string source;
  SourceReading reading;
  CheckBasis basis;
};

inline PublishedCheck between(const Origin& origin, std::string claim, std::string unit, double low,
                              double high, double model) {
  return {origin.topic,
          std::move(claim),
          origin.source,
          origin.reading,
          origin.basis,
          std::move(unit),
          low,
          high,
          model,
          model >= low && model <= high,
          {}};
}

inline PublishedCheck near(const Origin& origin, std::string claim, std::string unit, double expected,
                           double tolerance, double model) {
  return between(origin, std::move(claim), std::move(unit), expected - tolerance, expected + tolerance,
                 model);
}

// A row that the model is known not to meet, and why.
inline PublishedCheck missed(PublishedCheck row, std::string why) {
  row.knownMiss = std::move(why);
  return row;
}

using Rows = std::vector<PublishedCheck>;

void addGrowth(Rows& rows);
void addGas(Rows& rows);
void addHeat(Rows& rows);
void addLevains(Rows& rows);
void addDoughs(Rows& rows);
void addDoughTemperature(Rows& rows);
void addFormula(Rows& rows);
void addBaking(Rows& rows);

}  // namespace suppertide::bread::rows
