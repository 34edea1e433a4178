#include "server/kitchen/menu/shopping.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "server/kitchen/ingredients/amount_mass.h"
#include "server/kitchen/ingredients/plain_text.h"

namespace suppertide::kitchen {
namespace {

constexpr double kNoise = 1e-6;

// Eggs are sold by the piece: by weight they are bought as large ones.
constexpr double kLargeEgg = 50;  // grams without shell, USDA SR 01123

// What a use is bought as. Words for its preparation stand behind a comma.
struct Bought {
  std::string key;
  std::string name;
  ShopSection section = ShopSection::kOther;
  const Ingredient* ingredient = nullptr;
};

// Without preparation and purpose: "butter, soft" and "butter for the filling" are butter.
std::string shortName(const std::string& name) {
  const std::string_view bought = std::string_view(name).substr(0, name.find(','));
  return std::string(trimmed(bought.substr(0, bought.find(" for the "))));
}

// Kinds of one word stay apart on the list ("cream" is not surely "heavy cream"),
// but share what the table knows of the usual one.
Bought boughtAs(const std::string& name) {
  const std::string short_ = shortName(name);
  const Lookup found = findIngredient(short_);
  Bought bought{plainName(short_), short_, ShopSection::kOther, found.ingredient};
  if (found.ingredient == nullptr) return bought;
  bought.section = found.ingredient->section;
  if (found.usualKind) return bought;
  bought.key = plainName(found.ingredient->name);
  bought.name = found.ingredient->name;
  return bought;
}

bool needsNoShop(const Bought& bought) {
  return bought.key == "water";
}

// A volume as grams where a cup of it was weighed as it comes.
std::optional<double> gramsOf(const Bought& bought, const Amount& amount) {
  if (amount.kind == AmountKind::kGrams) return amount.value;
  if (amount.kind != AmountKind::kMillilitres || bought.ingredient == nullptr) return std::nullopt;
  const auto mass = measuredMass(*bought.ingredient, amount.value, "ml", 1, "");
  return mass ? std::optional(mass->grams) : std::nullopt;
}

// Grams of one piece: what the table has of a middling one.
std::optional<double> gramsOfPiece(const Bought& bought) {
  if (bought.ingredient == nullptr) return std::nullopt;
  if (bought.key == "egg") return kLargeEgg;
  for (const char* usual : {"piece", "medium", "large"})
    if (const auto mass = measuredMass(*bought.ingredient, 1, usual, 0, "")) return mass->grams;
  return std::nullopt;
}

constexpr double kCup = 240;  // most things were weighed by the cup

// What is at hand in the kind of amount that a line has; none where the table knows no way.
std::optional<double> stockIn(AmountKind kind, const Bought& bought, const Amount& stock) {
  if (stock.kind == kind) return stock.value;
  const auto grams = [&](const Amount& amount) -> std::optional<double> {
    if (amount.kind != AmountKind::kPieces) return gramsOf(bought, amount);
    const auto each = gramsOfPiece(bought);
    return each ? std::optional(amount.value * *each) : std::nullopt;
  };
  const auto have = grams(stock);
  const Amount some{kind, kind == AmountKind::kMillilitres ? kCup : 1};
  const auto weighed = grams(some);
  return have && weighed && *weighed > 0 ? std::optional(*have / *weighed * some.value) : std::nullopt;
}

struct Group {
  Bought bought;
  std::vector<Use> uses;
};

// The cook's word where all dishes use the same one, else the table's.
std::string nameOf(const Group& group) {
  const std::string first = shortName(group.uses.front().name);
  const bool same = std::all_of(group.uses.begin(), group.uses.end(),
                                [&](const Use& use) { return shortName(use.name) == first; });
  return same ? first : group.bought.name;
}

const char* letterOf(AmountKind kind) {
  switch (kind) {
    case AmountKind::kGrams:
      return "g";
    case AmountKind::kMillilitres:
      return "ml";
    case AmountKind::kPieces:
      return "pieces";
    case AmountKind::kSome:
      break;
  }
  return "some";
}

// Grams when any use weighs; then volumes that can be weighed join them.
void gather(const Group& group, std::vector<ShoppingLine>& lines) {
  const bool eggs = group.bought.key == "egg";
  const bool weighs = std::any_of(group.uses.begin(), group.uses.end(),
                                  [](const Use& use) { return use.amount.kind == AmountKind::kGrams; });
  std::map<AmountKind, ShoppingLine> byKind;
  for (const Use& use : group.uses) {
    Amount amount = use.amount;
    if (eggs && amount.kind == AmountKind::kGrams)
      amount = {AmountKind::kPieces, amount.value / kLargeEgg};
    else if (const auto grams = gramsOf(group.bought, amount); weighs && grams)
      amount = {AmountKind::kGrams, *grams};
    ShoppingLine& line = byKind[amount.kind];
    line.day = line.uses.empty() ? use.day : std::min(line.day, use.day);
    line.needed.kind = amount.kind;
    line.needed.value += amount.value;
    line.uses.push_back(use);
  }
  // Something to taste is bought with what is measured.
  if (const auto some = byKind.find(AmountKind::kSome); some != byKind.end() && byKind.size() > 1) {
    ShoppingLine& other = std::next(some)->second;
    other.uses.insert(other.uses.end(), some->second.uses.begin(), some->second.uses.end());
    other.day = std::min(other.day, some->second.day);
    byKind.erase(some);
  }
  for (auto& [kind, line] : byKind) {
    line.key = group.bought.key + ":" + letterOf(kind);
    line.name = nameOf(group);
    if (eggs && weighs) line.name = "eggs, large";
    line.section = group.bought.section;
    lines.push_back(std::move(line));
  }
}

// What was measured as the line is, or (`otherwise`) what was not.
void takeFromStock(ShoppingLine& line, std::vector<Stock>& stock, bool otherwise) {
  const Bought wanted = boughtAs(line.name);
  line.atHand.kind = line.needed.kind;
  for (Stock& one : stock) {
    if (boughtAs(one.name).key != wanted.key || one.amount.value <= 0) continue;
    if ((one.amount.kind != line.needed.kind) != otherwise) continue;
    const auto have = stockIn(line.needed.kind, wanted, one.amount);
    if (!have || *have <= 0) continue;
    const double used = std::min(*have, line.needed.value - line.atHand.value);
    one.amount.value *= 1 - used / *have;
    line.atHand.value += used;
  }
}

void settleToBuy(ShoppingLine& line) {
  double left = line.needed.value - line.atHand.value;
  if (left < kNoise * line.needed.value) left = 0;
  line.lacking = {line.needed.kind,
                  line.needed.kind == AmountKind::kPieces ? std::ceil(left - kNoise) : left};
  line.toBuy = line.lacking;
}

int packsOf(double amount, double size) {
  return static_cast<int>(std::ceil(amount / size - kNoise));
}

// What is left to buy comes in whole packs, where a pack of it is known in the same kind of amount.
void takePacks(ShoppingLine& line, const std::vector<Pack>& packs) {
  const Bought wanted = boughtAs(line.name);
  for (const Pack& pack : packs) {
    if (boughtAs(pack.name).key != wanted.key || pack.size.value <= 0) continue;
    double size = pack.size.value;
    if (pack.size.kind != line.toBuy.kind) {
      const auto grams = gramsOf(wanted, pack.size);
      if (line.toBuy.kind != AmountKind::kGrams || !grams) continue;
      size = *grams;
    }
    line.pack = {line.toBuy.kind, size};
    line.packCount = packsOf(line.toBuy.value, size);
    line.toBuy.value = line.packCount * size;
    return;
  }
}

// By what is bought and how it is measured: the names shown follow the dishes that use it.
struct Buying {
  std::string name;
  double value = 0;
};
using ByThing = std::map<std::pair<std::string, AmountKind>, Buying>;

ByThing amountsOf(const std::vector<ShoppingLine>& lines) {
  ByThing amounts;
  for (const ShoppingLine& line : lines)
    amounts[{boughtAs(line.name).key, line.toBuy.kind}] = {line.name, line.toBuy.value};
  return amounts;
}

}  // namespace

std::vector<ShoppingLine> shoppingList(const std::vector<Use>& uses, const std::vector<Stock>& stock,
                                       const std::vector<Pack>& packs) {
  std::map<std::string, Group> groups;
  for (const Use& use : uses) {
    const Bought bought = boughtAs(use.name);
    if (needsNoShop(bought)) continue;
    Group& group = groups[bought.key];
    if (group.uses.empty()) group.bought = bought;
    group.uses.push_back(use);
  }
  std::vector<ShoppingLine> lines;
  for (const auto& [key, group] : groups) gather(group, lines);
  std::stable_sort(lines.begin(), lines.end(), [](const ShoppingLine& a, const ShoppingLine& b) {
    return std::tie(a.day, a.section, a.name) < std::tie(b.day, b.section, b.name);
  });
  std::vector<Stock> left = stock;
  for (const bool otherwise : {false, true})
    for (ShoppingLine& line : lines) takeFromStock(line, left, otherwise);
  for (ShoppingLine& line : lines) {
    settleToBuy(line);
    takePacks(line, packs);
  }
  return lines;
}

double stillToBuy(const ShoppingLine& line, double bought) {
  const double missing = line.lacking.value - bought;
  if (missing <= kNoise * line.lacking.value) return 0;
  return line.packCount > 0 ? packsOf(missing, line.pack.value) * line.pack.value : missing;
}

std::string boughtKey(const std::string& name) {
  return boughtAs(name).key;
}

std::vector<LineChange> changesOf(const std::vector<ShoppingLine>& before,
                                  const std::vector<ShoppingLine>& after) {
  const ByThing old = amountsOf(before);
  const ByThing now = amountsOf(after);
  std::vector<LineChange> changes;
  for (const auto& [key, was] : old) {
    const auto found = now.find(key);
    if (found == now.end())
      changes.push_back({was.name, Amount{key.second, was.value}, {}});
    else if (const Buying& is = found->second;
             std::abs(is.value - was.value) > kNoise * std::max(was.value, is.value))
      changes.push_back({is.name, Amount{key.second, was.value}, Amount{key.second, is.value}});
  }
  for (const auto& [key, is] : now) {
    if (old.count(key) > 0) continue;
    // Measured otherwise, as eggs that were counted and are weighed now.
    const auto gone =
        std::find_if(changes.begin(), changes.end(), [thing = key.first](const LineChange& change) {
          return !change.after && boughtAs(change.name).key == thing;
        });
    if (gone != changes.end())
      gone->after = Amount{key.second, is.value};
    else
      changes.push_back({is.name, {}, Amount{key.second, is.value}});
  }
  std::stable_sort(changes.begin(), changes.end(),
                   [](const LineChange& a, const LineChange& b) { return a.name < b.name; });
  return changes;
}

}  // namespace suppertide::kitchen
