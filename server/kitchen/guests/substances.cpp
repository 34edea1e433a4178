#include "server/kitchen/guests/substances.h"

#include <algorithm>
#include <array>
#include <optional>

#include "server/kitchen/ingredients/ingredient_table.h"
#include "server/kitchen/ingredients/plain_text.h"

namespace suppertide::kitchen {
namespace {

constexpr Source kUs{"FD&C Act s. 201(qq); FDA Food Allergen Guidance, Edition 5 (2025)", Mark::kExcerpt};
constexpr Source kEu{"Regulation (EU) No 1169/2011, Annex II", Mark::kExcerpt};
constexpr Source kIso{"ISO 23662:2021", Mark::kExcerpt};
constexpr Source kGluten{"21 CFR 101.91; Regulation (EU) No 828/2014", Mark::kExcerpt};
constexpr Source kLaws{"Regenstein and others, Compr. Rev. Food Sci. Food Saf. 2 (2003)", Mark::kExcerpt};
constexpr Source kMilk{"from memory", Mark::kMemory};
constexpr Source kOwn{"the guest's own words", Mark::kPractice};

// A list's allergen: the words a need may use, what it excludes, what to ask about.
struct Row {
  NeedKind kind;
  std::string_view names;  // the first is the list's
  std::string_view excluded;
  std::string_view ask;
  const Source* source;
};

// One a law's entry. Spelt and khorasan are wheat in both; barley and rye only in the EU's.
constexpr std::array<Row, 23> kLists = {{
    {NeedKind::kUsList, "milk,dairy", "milk,lactose", "", &kUs},
    {NeedKind::kUsList, "egg", "egg", "", &kUs},
    {NeedKind::kUsList, "fish", "fish", "", &kUs},
    {NeedKind::kUsList, "crustacean shellfish,crustacean,shellfish", "crustacean,shellfish", "mollusc", &kUs},
    {NeedKind::kUsList, "tree nut,nut,fda tree nut",
     "tree nut,nut,almond,black walnut,brazil nut,walnut,cashew,hazelnut,heartnut,macadamia,pecan,pine "
     "nut,pistachio",
     "coconut,chestnut,shea,hickory,butternut,beech,ginkgo,pili,peanut", &kUs},
    {NeedKind::kUsList, "wheat", "wheat,spelt,khorasan,gluten", "", &kUs},
    {NeedKind::kUsList, "peanut", "peanut", "", &kUs},
    {NeedKind::kUsList, "soybean,soy,soya", "soy", "", &kUs},
    {NeedKind::kUsList, "sesame", "sesame", "", &kUs},
    {NeedKind::kEuList, "cereals containing gluten,gluten", "gluten,wheat,spelt,khorasan,rye,barley,oats", "",
     &kEu},
    {NeedKind::kEuList, "crustacean", "crustacean,shellfish", "mollusc", &kEu},
    {NeedKind::kEuList, "egg", "egg", "", &kEu},
    {NeedKind::kEuList, "fish", "fish", "", &kEu},
    {NeedKind::kEuList, "peanut", "peanut", "", &kEu},
    {NeedKind::kEuList, "soybean,soy,soya", "soy", "", &kEu},
    {NeedKind::kEuList, "milk,dairy", "milk,lactose", "", &kEu},
    {NeedKind::kEuList, "nut,tree nut",
     "nut,tree nut,almond,hazelnut,walnut,cashew,pecan,brazil nut,pistachio,macadamia",
     "pine nut,black walnut,heartnut,coconut,chestnut,peanut", &kEu},
    {NeedKind::kEuList, "celery", "celery", "", &kEu},
    {NeedKind::kEuList, "mustard", "mustard", "", &kEu},
    {NeedKind::kEuList, "sesame seed,sesame", "sesame", "", &kEu},
    {NeedKind::kEuList, "sulphite,sulphur dioxide,sulfite", "sulphite", "", &kEu},
    {NeedKind::kEuList, "lupin", "lupin", "", &kEu},
    {NeedKind::kEuList, "mollusc,mollusk", "mollusc,shellfish", "", &kEu},
}};

constexpr std::string_view kFlesh =
    "meat,beef,pork,poultry,lamb,game,fish,crustacean,mollusc,shellfish,gelatine,rennet";
constexpr std::array<Row, 12> kDiets = {{
    {NeedKind::kDiet, "vegetarian,ovo-lacto-vegetarian,lacto-ovo-vegetarian", kFlesh, "", &kIso},
    {NeedKind::kDiet, "lacto-vegetarian",
     "meat,beef,pork,poultry,lamb,game,fish,crustacean,mollusc,shellfish,gelatine,rennet,egg", "", &kIso},
    {NeedKind::kDiet, "ovo-vegetarian",
     "meat,beef,pork,poultry,lamb,game,fish,crustacean,mollusc,shellfish,gelatine,rennet,milk,lactose", "",
     &kIso},
    {NeedKind::kDiet, "vegan,plant-based",
     "meat,beef,pork,poultry,lamb,game,fish,crustacean,mollusc,shellfish,gelatine,rennet,milk,lactose,egg,"
     "honey",
     "", &kIso},
    {NeedKind::kDiet, "pescetarian,pescatarian", "meat,beef,pork,poultry,lamb,game,gelatine,rennet", "",
     &kIso},
    {NeedKind::kDiet, "coeliac,celiac,coeliac disease,celiac disease,gluten-free,gluten free",
     "gluten,wheat,spelt,khorasan,rye,barley,oats", "", &kGluten},
    {NeedKind::kDiet, "lactose,lactose intolerance,lactose-free,lactose intolerant", "lactose,milk", "",
     &kMilk},
    {NeedKind::kDiet, "halal", "pork,alcohol", "meat,beef,poultry,lamb,game,gelatine,rennet", &kLaws},
    {NeedKind::kDiet, "kosher", "pork,crustacean,mollusc,shellfish",
     "meat,beef,poultry,lamb,game,gelatine,rennet,milk,alcohol", &kLaws},
    {NeedKind::kDiet, "no pork,pork", "pork", "meat,gelatine", &kOwn},
    {NeedKind::kDiet, "no alcohol,alcohol", "alcohol", "", &kOwn},
    {NeedKind::kDiet, "no meat,meat", "meat,beef,pork,poultry,lamb,game", "gelatine", &kOwn},
}};

std::string_view lastPart(std::string_view name, std::string_view& list) {
  if (takeFront(name, "us ") || takeFront(name, "fda ")) list = "us";
  if (takeFront(name, "eu ")) list = "eu";
  return trimmed(name);
}

bool named(const Row& row, const std::string& need) {
  const auto names = parts(row.names, ',');
  return std::any_of(names.begin(), names.end(),
                     [&](std::string_view name) { return plainName(name) == need; });
}

void add(std::vector<std::string>& to, std::string_view words) {
  for (const std::string_view part : parts(words, ','))
    if (std::string word = plainName(part); std::find(to.begin(), to.end(), word) == to.end())
      to.push_back(std::move(word));
}

// Both lists' sets together, unless one is asked for.
std::optional<Avoidance> byLists(const std::string& need, std::string_view list) {
  std::optional<Avoidance> found;
  for (const Row& row : kLists) {
    if (list == "us" && row.kind != NeedKind::kUsList) continue;
    if (list == "eu" && row.kind != NeedKind::kEuList) continue;
    if (!named(row, need)) continue;
    if (!found) found = Avoidance{row.kind, {}, {}, *row.source};
    add(found->excluded, row.excluded);
    add(found->ask, row.ask);
  }
  if (!found) return found;
  std::erase_if(found->ask, [&](const std::string& word) {
    return std::find(found->excluded.begin(), found->excluded.end(), word) != found->excluded.end();
  });
  return found;
}

std::vector<std::string> allergensOf(NeedKind kind, std::string_view substance) {
  std::vector<std::string> found;
  for (const Row& row : kLists) {
    if (row.kind != kind) continue;
    std::vector<std::string> words;
    add(words, row.excluded);
    if (std::find(words.begin(), words.end(), plainName(substance)) != words.end())
      found.emplace_back(parts(row.names, ',').front());
  }
  return found;
}

}  // namespace

Avoidance avoidanceOf(std::string_view text) {
  std::string_view list;
  const std::string lower = lowerCase(text);
  const std::string need = plainName(lastPart(lower, list));
  if (auto found = byLists(need, list)) return *std::move(found);
  for (const Row& row : kDiets)
    if (list.empty() && named(row, need)) {
      Avoidance diet{row.kind, {}, {}, *row.source};
      add(diet.excluded, row.excluded);
      add(diet.ask, row.ask);
      return diet;
    }
  std::string_view own = need;
  if (!takeFront(own, "no ")) takeFront(own, "without ");
  return {NeedKind::kOwnWords, {std::string(own)}, {}, kOwn};
}

std::vector<std::string> usAllergensOf(std::string_view substance) {
  return allergensOf(NeedKind::kUsList, substance);
}
std::vector<std::string> euAllergensOf(std::string_view substance) {
  return allergensOf(NeedKind::kEuList, substance);
}

}  // namespace suppertide::kitchen
