#include "server/service/kept_tables.h"

#include <algorithm>

#include "server/compose/bread_tables.h"

namespace suppertide::service {
namespace {

constexpr std::size_t kMostKeptEvents = 8;

}  // namespace

KeptTables::KeptTables() = default;
KeptTables::~KeptTables() = default;

std::unique_ptr<compose::BreadTables> KeptTables::take(const Key& key) {
  std::unique_ptr<compose::BreadTables> tables;
  {
    const std::lock_guard lock(mutex_);
    const auto found =
        std::find_if(kept_.begin(), kept_.end(), [&](const auto& kept) { return kept.first == key; });
    if (found != kept_.end()) {
      tables = std::move(found->second);
      kept_.erase(found);
    }
  }
  if (tables == nullptr) tables = std::make_unique<compose::BreadTables>();
  tables->nextUse();
  return tables;
}

void KeptTables::keep(const Key& key, std::unique_ptr<compose::BreadTables> tables) {
  const std::lock_guard lock(mutex_);
  kept_.emplace_back(key, std::move(tables));
  if (kept_.size() > kMostKeptEvents) kept_.pop_front();
}

KeptTables& keptTables() {
  static KeptTables tables;
  return tables;
}

}  // namespace suppertide::service
