#include "server/compose/bread_tables.h"

#include <array>
#include <bit>

#include "server/bread/forecast.h"

namespace suppertide::compose {
namespace {

// The bytes of all that an answer depends on. The structs hold nothing but doubles, so that a new
// member of theirs is never forgotten.
class Key {
 public:
  void add(double value) {
    const auto bytes = std::bit_cast<std::array<char, sizeof(double)>>(value);
    text_.append(bytes.data(), bytes.size());
  }
  template <typename Struct>
  void addAll(const Struct& value) {
    static_assert(sizeof(Struct) % sizeof(double) == 0);
    for (const double part : std::bit_cast<std::array<double, sizeof(Struct) / sizeof(double)>>(value))
      add(part);
  }
  void add(std::span<const bread::Stay> stays) {
    for (const bread::Stay& stay : stays) {
      add(stay.hours);
      for (const double celsius : stay.air.hourly()) add(celsius);
      add(stay.surfaceW);
    }
  }
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

}  // namespace

const BreadTables::Rows& BreadTables::rows(const bread::DoughKind& kind, const States& states,
                                           std::size_t likely, std::span<const bread::Stay> stays,
                                           const bread::Stage& stage, const bread::StartGrid& grid,
                                           const bread::TableOptions& options) {
  Key key;
  key.addAll(kind);
  key.addAll(stage);
  for (const bread::DoughState& state : states) key.addAll(state);
  for (const int part : {static_cast<int>(states.size()), static_cast<int>(likely), grid.firstMinute,
                         grid.pitchMinutes, grid.count, options.hourOfDayAtZeroMinutes})
    key.add(static_cast<double>(part));
  key.add(options.searchHours);
  key.add(stays);
  const auto [entry, isNew] = rows_.try_emplace(key.text());
  if (isNew)
    entry->second.answer = bread::robustReadinessTable(kind, states, likely, stays, stage, grid, options);
  entry->second.use = use_;
  return entry->second.answer;
}

const BreadTables::States& BreadTables::statesAtReadiness(const bread::DoughKind& kind,
                                                          const bread::DoughState& state, double startHour,
                                                          std::span<const bread::Stay> stays,
                                                          const bread::Stage& stage) {
  Key key;
  key.addAll(kind);
  key.addAll(stage);
  key.addAll(state);
  key.add(startHour);
  key.add(stays);
  const auto [entry, isNew] = states_.try_emplace(key.text());
  if (isNew) entry->second.answer = bread::statesAtReadiness(kind, state, startHour, stays, stage);
  entry->second.use = use_;
  return entry->second.answer;
}

double BreadTables::bestHours(const bread::DoughKind& kind, const bread::DoughState& state, double startHour,
                              std::span<const bread::Stay> stays, const bread::Stage& stage,
                              const bread::Shift& shift) {
  Key key;
  key.addAll(kind);
  key.addAll(stage);
  key.addAll(state);
  key.addAll(shift);
  key.add(startHour);
  key.add(stays);
  const auto [entry, isNew] = hours_.try_emplace(key.text());
  if (isNew) {
    const auto window =
        bread::forecast(kind, bread::shifted(state, shift), startHour, bread::shifted(stays, shift), stage)
            .window;
    entry->second.answer = window ? window->best - startHour : 0;
  }
  entry->second.use = use_;
  return entry->second.answer;
}

void BreadTables::nextUse() {
  const auto isOld = [this](const auto& entry) { return entry.second.use < use_; };
  std::erase_if(rows_, isOld);
  std::erase_if(states_, isOld);
  std::erase_if(hours_, isOld);
  ++use_;
}

}  // namespace suppertide::compose
