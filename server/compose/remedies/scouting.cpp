#include "server/compose/remedies/scouting.h"

namespace suppertide::compose {

void LearnedClashes::add(const DishIds& dishes, const Documents& documents) {
  std::lock_guard lock(mutex_);
  list_.emplace_back(dishes, documents);
}

std::size_t LearnedClashes::count() const {
  std::lock_guard lock(mutex_);
  return list_.size();
}

LearnedClashes::List LearnedClashes::after(std::size_t count) const {
  std::lock_guard lock(mutex_);
  return {list_.begin() + static_cast<std::ptrdiff_t>(count), list_.end()};
}

Scouting::Scouting(const Tries& tries, const Looking& looking, const Scout& scout,
                   const LearnedClashes& learned)
    : learned_(learned), known_(learned.count()) {
  Tries::Told told;
  told.stop = [this, &scout] { return !scout.isAhead(at_); };
  told.tried = [] {};
  told.thoughtOf = [](std::size_t) {};
  told.learned = [](const DishIds&, const Documents&) {};
  told.fits = [](const Attempt&, const planning::Schedule&) {};
  tries_.emplace(tries, looking, std::move(told));
}

Tries& Scouting::come(std::size_t k) {
  at_ = k;
  const LearnedClashes::List news = learned_.after(known_);
  known_ += news.size();
  for (const auto& [dishes, documents] : news) tries_->known().add(dishes, documents);
  return *tries_;
}

}  // namespace suppertide::compose
