// What a scout does on the way to remedies: it looks for nothing itself, it asks the questions so that
// their answers are there when the first thread comes.
#pragma once

#include <cstddef>
#include <mutex>
#include <optional>
#include <utility>
#include <vector>

#include "server/compose/remedies/scout.h"
#include "server/compose/remedies/tries.h"

namespace suppertide::compose {

// Dishes that clash in documents with some changes, told from the first thread to the scout.
class LearnedClashes {
 public:
  using List = std::vector<std::pair<DishIds, Documents>>;
  void add(const DishIds& dishes, const Documents& documents);
  std::size_t count() const;
  List after(std::size_t count) const;

 private:
  mutable std::mutex mutex_;
  List list_;  // guarded by mutex_
};

class Scouting {
 public:
  // On the first thread, as far as its `tries` are. `scout` and `learned` must outlive it.
  Scouting(const Tries& tries, const Looking& looking, const Scout& scout, const LearnedClashes& learned);
  // On the scout's thread, when it comes to the `k`th: knows what the first thread has learned since.
  Tries& come(std::size_t k);

 private:
  const LearnedClashes& learned_;
  std::size_t known_;  // of them
  std::size_t at_ = 0;
  std::optional<Tries> tries_;
};

}  // namespace suppertide::compose
