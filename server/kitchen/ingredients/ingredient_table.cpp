#include "server/kitchen/ingredients/ingredient_table.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <unordered_map>

#include "server/kitchen/ingredients/plain_text.h"

namespace suppertide::kitchen {
namespace {

ShopSection sectionOf(std::string_view word) {
  static const std::unordered_map<std::string_view, ShopSection> kSections = {
      {"produce", ShopSection::kProduce}, {"meat", ShopSection::kMeatFish},
      {"dairy", ShopSection::kDairyEggs}, {"baking", ShopSection::kBaking},
      {"dry", ShopSection::kDryGoods},    {"spices", ShopSection::kSpices},
      {"frozen", ShopSection::kFrozen},   {"drinks", ShopSection::kDrinks}};
  const auto found = kSections.find(word);
  return found == kSections.end() ? ShopSection::kOther : found->second;
}

Contents contentsOf(std::string_view text) {
  Contents contents;
  for (const std::string_view part : parts(text, ',')) {
    if (part == "?")
      contents.complete = false;
    else if (finishesWith(part, "?"))
      contents.mayHold.emplace_back(part.substr(0, part.size() - 1));
    else
      contents.holds.emplace_back(part);
  }
  return contents;
}

// "cup packed 220*": the last word is the mass, the first the unit (two for fl oz and extra large).
Measure measureOf(std::string_view text, Mark mark) {
  std::vector<std::string_view> words = parts(text, ' ');
  Measure measure;
  measure.mark = mark;
  if (words.size() < 2) return measure;
  std::string_view grams = words.back();
  if (grams.back() == '*') {
    measure.mark = Mark::kMemory;
    grams.remove_suffix(1);
  }
  std::from_chars(grams.data(), grams.data() + grams.size(), measure.grams);
  words.pop_back();
  measure.unit = words.front();
  std::size_t used = 1;
  if (words.size() > 1 && (measure.unit == "fl" || measure.unit == "extra")) {
    measure.unit += " " + std::string(words[1]);
    used = 2;
  }
  if (words.size() > used) measure.form = words[used];
  return measure;
}

Ingredient ingredientOf(std::string_view row) {
  const std::vector<std::string_view> fields = allParts(row, '|');
  Ingredient ingredient;
  if (fields.size() != 6) return ingredient;
  ingredient.name = std::string(fields[0]);
  for (const std::string_view other : parts(fields[1], ',')) ingredient.alsoCalled.emplace_back(other);
  ingredient.section = sectionOf(fields[2]);
  const bool read = beginsWith(fields[3], "SR ");
  ingredient.mark = read ? Mark::kRead : Mark::kMemory;
  ingredient.sourceTitle = read ? "USDA " + std::string(fields[3]) : "from memory";
  ingredient.contents = contentsOf(fields[4]);
  for (const std::string_view part : parts(fields[5], ';'))
    ingredient.measures.push_back(measureOf(part, ingredient.mark));
  return ingredient;
}

std::vector<Ingredient> readRows() {
  std::vector<Ingredient> all;
  for (const std::string_view row : parts(ingredientRows(), '\n')) all.push_back(ingredientOf(row));
  return all;
}

std::string singular(std::string word) {
  const auto endsWith = [&](std::string_view end) {
    return word.size() > end.size() + 1 && finishesWith(word, end);
  };
  if (word == "leaves") return "leaf";
  if (word == "halves") return "half";
  if (endsWith("ies")) return word.substr(0, word.size() - 3) + "y";
  if (endsWith("oes") || endsWith("shes") || endsWith("ches") || endsWith("sses") || endsWith("xes"))
    return word.substr(0, word.size() - 2);
  if (endsWith("s") && !endsWith("ss")) word.pop_back();
  return word;
}

// Words before a name that change neither its mass nor its contents.
constexpr std::array<std::string_view, 20> kPlainWords = {
    "fresh", "ripe",  "organic", "good",  "fine", "raw",   "cold",    "warm",     "free-range", "of",
    "the",   "large", "medium",  "small", "very", "extra", "chilled", "softened", "hot",        "cooled"};

struct Index {
  std::unordered_map<std::string, Lookup> byName;
};

const Index& nameIndex() {
  static const Index kIndex = [] {
    Index index;
    for (const Ingredient& one : ingredients()) {
      index.byName[plainName(one.name)] = {&one, false};
      for (std::string_view other : one.alsoCalled) {
        const bool usual = takeFront(other, "~");
        index.byName.try_emplace(plainName(other), Lookup{&one, usual});
      }
    }
    return index;
  }();
  return kIndex;
}

}  // namespace

const std::vector<Ingredient>& ingredients() {
  static const std::vector<Ingredient> kAll = readRows();
  return kAll;
}

std::string plainName(std::string_view name) {
  const std::string lower = lowerCase(name);
  std::vector<std::string> words;
  for (const std::string_view word : parts(lower, ' ')) words.push_back(singular(std::string(word)));
  return joined(words, " ");
}

Lookup findIngredient(std::string_view name) {
  const auto& byName = nameIndex().byName;
  std::string rest = plainName(name);
  while (!rest.empty()) {
    const auto found = byName.find(rest);
    if (found != byName.end()) return found->second;
    const std::size_t space = rest.find(' ');
    if (space == std::string::npos) break;
    if (std::find(kPlainWords.begin(), kPlainWords.end(), rest.substr(0, space)) == kPlainWords.end()) break;
    rest = rest.substr(space + 1);
  }
  return {};
}

}  // namespace suppertide::kitchen
