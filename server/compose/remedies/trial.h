// One set of documents, planned as far as a remedy needs it.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "server/compose/composition.h"
#include "server/planning/solver/solver.h"

namespace suppertide::compose {

// Owns changed documents and their composition, which points into them.
class Trial {
 public:
  // Null when they cannot be composed.
  static std::unique_ptr<Trial> of(Documents documents);

  const Documents& documents() const { return documents_; }
  const Composition& composition() const { return *composition_; }

  // Whether these dishes can all be served in time, other dishes aside; ids that
  // the event no longer has are no matter. False when it took too long to tell.
  bool fitsFor(const std::set<std::string>& dishIds, std::int64_t conflicts,
               const std::function<bool()>& stop) const;

  // A plan that serves every dish in time, or nothing; `suspects` then has the
  // dishes that were left out, if it is given.
  std::optional<planning::Outcome> plan(std::uint64_t seed, std::int64_t conflicts,
                                        const std::function<bool()>& stop, std::vector<int>* suspects) const;

 private:
  explicit Trial(Documents documents) : documents_(std::move(documents)) {}

  Documents documents_;
  std::optional<Composition> composition_;
};

}  // namespace suppertide::compose
