// Household measures, allergens and eggs against published values. Each row names its source.
#include <gtest/gtest.h>

#include "server/kitchen/guests/menu_check.h"
#include "server/kitchen/ingredients/line.h"

namespace suppertide::kitchen {
namespace {

// USDA National Nutrient Database for Standard Reference, WEIGHT table, 2013: NDB number, food as
// named there, measure, form, grams.
struct Weight {
  const char* ndb;
  const char* food;
  const char* unit;
  const char* form;
  double grams;
};
constexpr Weight kWeights[] = {
    {"20081", "Wheat flour, white, all-purpose", "cup", "", 125},
    {"20083", "Wheat flour, white, bread", "cup", "", 137},
    {"20084", "Wheat flour, cake", "cup", "", 137},
    {"20082", "Wheat flour, self-rising", "cup", "", 125},
    {"20080", "Wheat flour, whole-grain", "cup", "", 120},
    {"20063", "Rye flour, dark", "cup", "", 128},
    {"20064", "Rye flour, medium", "cup", "", 102},
    {"20061", "Rice flour, white", "cup", "", 158},
    {"11413", "Potato flour", "cup", "", 160},
    {"20140", "Spelt grain, uncooked", "cup", "", 174},
    {"20020", "Cornmeal, whole-grain yellow", "cup", "", 122},
    {"20027", "Cornstarch", "cup", "", 128},
    {"20033", "Oat bran, raw", "cup", "", 94},
    {"08120", "Rolled oats, regular or quick, dry", "cup", "", 81},
    {"20044", "Rice, white long-grain, raw", "cup", "", 185},
    {"20036", "Rice, brown long-grain, raw", "cup", "", 185},
    {"20450", "Rice, white medium-grain, raw", "cup", "", 195},
    {"20445", "Rice, white long-grain, cooked", "cup", "", 158},
    {"20088", "Wild rice, raw", "cup", "", 160},
    {"20035", "Quinoa, uncooked", "cup", "", 170},
    {"20005", "Barley, pearled, raw", "cup", "", 200},
    {"19335", "Sugar, granulated", "tsp", "", 4.2},
    {"19335", "Sugar, granulated", "cup", "", 200},
    {"19334", "Sugar, brown", "tsp", "loose", 3},
    {"19334", "Sugar, brown", "cup", "packed", 220},
    {"19334", "Sugar, brown", "cup", "loose", 145},
    {"19334", "Sugar, brown", "tsp", "packed", 4.6},
    {"19336", "Sugar, powdered", "cup", "unsifted", 120},
    {"19336", "Sugar, powdered", "cup", "sifted", 100},
    {"19336", "Sugar, powdered", "tbsp", "unsifted", 8},
    {"19336", "Sugar, powdered", "tsp", "", 2.5},
    {"19296", "Honey", "cup", "", 339},
    {"19296", "Honey", "tbsp", "", 21},
    {"19304", "Molasses", "cup", "", 337},
    {"19304", "Molasses", "tbsp", "", 20},
    {"19353", "Syrup, maple", "tbsp", "", 20},
    {"19353", "Syrup, maple", "cup", "", 315},
    {"19350", "Syrup, corn, light", "cup", "", 341},
    {"19350", "Syrup, corn, light", "tbsp", "", 22},
    {"19165", "Cocoa, dry, unsweetened", "cup", "", 86},
    {"19165", "Cocoa, dry, unsweetened", "tbsp", "", 5.4},
    {"19080", "Chocolate chips, semisweet", "cup", "large", 182},
    {"19080", "Chocolate chips, semisweet", "cup", "mini", 173},
    {"19080", "Chocolate chips, semisweet", "cup", "", 168},
    {"18369", "Baking powder, double-acting (Na Al sulfate)", "tsp", "", 4.6},
    {"18372", "Baking soda", "tsp", "", 4.6},
    {"18373", "Cream of tartar", "tsp", "", 3},
    {"18375", "Yeast, baker's, active dry", "tsp", "", 4},
    {"18375", "Yeast, baker's, active dry", "tbsp", "", 12},
    {"18375", "Yeast, baker's, active dry", "packet", "", 7.2},
    {"18374", "Yeast, baker's, compressed", "cake", "", 17},
    {"19177", "Gelatin, dry powder", "envelope", "", 7},
    {"02047", "Salt, table", "tsp", "", 6},
    {"02047", "Salt, table", "tbsp", "", 18},
    {"02047", "Salt, table", "cup", "", 292},
    {"02050", "Vanilla extract", "tsp", "", 4.2},
    {"02050", "Vanilla extract", "tbsp", "", 13},
    {"02050", "Vanilla extract", "cup", "", 208},
    {"02010", "Cinnamon, ground", "tsp", "", 2.6},
    {"02010", "Cinnamon, ground", "tbsp", "", 7.8},
    {"02030", "Pepper, black", "tsp", "ground", 2.3},
    {"02030", "Pepper, black", "tbsp", "ground", 6.9},
    {"02030", "Pepper, black", "tsp", "whole", 2.9},
    {"02038", "Sage, ground", "tsp", "", 0.7},
    {"02038", "Sage, ground", "tbsp", "", 2},
    {"02042", "Thyme, dried", "tsp", "", 1},
    {"02042", "Thyme, dried", "tbsp", "", 2.7},
    {"02042", "Thyme, dried", "tsp", "ground", 1.4},
    {"02042", "Thyme, dried", "tbsp", "ground", 4.3},
    {"01145", "Butter, unsalted", "tbsp", "", 14.2},
    {"01145", "Butter, unsalted", "cup", "", 227},
    {"01145", "Butter, unsalted", "stick", "", 113},
    {"01001", "Butter, salted", "tbsp", "", 14.2},
    {"01001", "Butter, salted", "cup", "", 227},
    {"01001", "Butter, salted", "stick", "", 113},
    {"04610", "Margarine, stick 80 % fat", "tbsp", "", 14},
    {"04610", "Margarine, stick 80 % fat", "cup", "", 227},
    {"04610", "Margarine, stick 80 % fat", "tsp", "", 4.7},
    {"04610", "Margarine, stick 80 % fat", "stick", "", 113},
    {"04002", "Lard", "tbsp", "", 12.8},
    {"04002", "Lard", "cup", "", 205},
    {"04053", "Oil, olive", "tbsp", "", 13.5},
    {"04053", "Oil, olive", "cup", "", 216},
    {"04053", "Oil, olive", "tsp", "", 4.5},
    {"04044", "Oil, soybean", "tbsp", "", 13.6},
    {"04044", "Oil, soybean", "cup", "", 218},
    {"04044", "Oil, soybean", "tsp", "", 4.5},
    {"04025", "Mayonnaise, regular", "tbsp", "", 13.8},
    {"04025", "Mayonnaise, regular", "cup", "", 220},
    {"01077", "Milk, whole", "cup", "", 244},
    {"01077", "Milk, whole", "fl oz", "", 30.5},
    {"01077", "Milk, whole", "tbsp", "", 15},
    {"01077", "Milk, whole", "quart", "", 976},
    {"01079", "Milk, 2 % fat", "cup", "", 244},
    {"01079", "Milk, 2 % fat", "quart", "", 976},
    {"01088", "Buttermilk, cultured lowfat", "cup", "", 245},
    {"01088", "Buttermilk, cultured lowfat", "quart", "", 980},
    {"01053", "Cream, heavy whipping", "cup", "whipped", 120},
    {"01053", "Cream, heavy whipping", "cup", "", 238},
    {"01053", "Cream, heavy whipping", "tbsp", "", 15},
    {"01049", "Cream, half and half", "tbsp", "", 15},
    {"01049", "Cream, half and half", "cup", "", 242},
    {"01056", "Sour cream", "tbsp", "", 12},
    {"01056", "Sour cream", "cup", "", 230},
    {"01017", "Cream cheese", "tbsp", "", 14.5},
    {"01017", "Cream cheese", "cup", "", 232},
    {"01116", "Yogurt, plain whole milk", "cup", "", 245},
    {"01091", "Milk, dry nonfat", "cup", "", 120},
    {"01009", "Cheese, cheddar", "cup", "diced", 132},
    {"01009", "Cheese, cheddar", "cup", "melted", 244},
    {"01009", "Cheese, cheddar", "cup", "shredded", 113},
    {"01032", "Cheese, parmesan, grated", "cup", "grated", 100},
    {"01032", "Cheese, parmesan, grated", "tbsp", "grated", 5},
    {"01026", "Cheese, mozzarella", "cup", "shredded", 112},
    {"01123", "Egg, whole, raw", "large", "", 50},
    {"01123", "Egg, whole, raw", "extra large", "", 56},
    {"01123", "Egg, whole, raw", "jumbo", "", 63},
    {"01123", "Egg, whole, raw", "cup", "", 243},
    {"01123", "Egg, whole, raw", "medium", "", 44},
    {"01123", "Egg, whole, raw", "small", "", 38},
    {"01124", "Egg white, raw", "large", "", 33},
    {"01124", "Egg white, raw", "cup", "", 243},
    {"01125", "Egg yolk, raw", "large", "", 17},
    {"01125", "Egg yolk, raw", "cup", "", 243},
    {"12061", "Almonds", "cup", "whole", 143},
    {"12061", "Almonds", "cup", "sliced", 92},
    {"12061", "Almonds", "cup", "slivered", 108},
    {"12061", "Almonds", "cup", "ground", 95},
    {"12142", "Pecans", "cup", "chopped", 109},
    {"12142", "Pecans", "cup", "halves", 99},
    {"12155", "Walnuts, English", "cup", "chopped", 117},
    {"12155", "Walnuts, English", "cup", "ground", 80},
    {"12155", "Walnuts, English", "cup", "halves", 100},
    {"12155", "Walnuts, English", "cup", "pieces", 120},
    {"12120", "Hazelnuts", "cup", "chopped", 115},
    {"12120", "Hazelnuts", "cup", "ground", 75},
    {"12120", "Hazelnuts", "cup", "whole", 135},
    {"12023", "Sesame seeds", "cup", "", 144},
    {"12023", "Sesame seeds", "tbsp", "", 9},
    {"16098", "Peanut butter, smooth", "cup", "", 258},
    {"09298", "Raisins, seedless", "cup", "packed", 165},
    {"09298", "Raisins, seedless", "cup", "", 145},
    {"09078", "Cranberries, raw", "cup", "chopped", 110},
    {"09078", "Cranberries, raw", "cup", "whole", 100},
    {"11282", "Onions, raw", "cup", "chopped", 160},
    {"11282", "Onions, raw", "cup", "sliced", 115},
    {"11282", "Onions, raw", "tbsp", "chopped", 10},
    {"11282", "Onions, raw", "large", "", 150},
    {"11282", "Onions, raw", "medium", "", 110},
    {"11282", "Onions, raw", "small", "", 70},
    {"11215", "Garlic, raw", "cup", "", 136},
    {"11215", "Garlic, raw", "tsp", "", 2.8},
    {"11215", "Garlic, raw", "clove", "", 3},
    {"11143", "Celery, raw", "cup", "chopped", 101},
    {"11143", "Celery, raw", "tbsp", "", 7.5},
    {"11124", "Carrots, raw", "cup", "chopped", 128},
    {"11124", "Carrots, raw", "cup", "grated", 110},
    {"11124", "Carrots, raw", "large", "", 72},
    {"11124", "Carrots, raw", "medium", "", 61},
    {"11124", "Carrots, raw", "small", "", 50},
    {"11507", "Sweet potato, raw", "cup", "cubed", 133},
    {"11424", "Pumpkin, canned", "cup", "", 245},
    {"09003", "Apples, raw, with skin", "cup", "sliced", 109},
    {"09003", "Apples, raw, with skin", "large", "", 223},
    {"09003", "Apples, raw, with skin", "medium", "", 182},
    {"09003", "Apples, raw, with skin", "small", "", 149},
    {"16069", "Lentils, raw", "cup", "", 192},
    {"16069", "Lentils, raw", "tbsp", "", 12},
    {"16056", "Chickpeas, raw", "cup", "", 200},
    {"16056", "Chickpeas, raw", "tbsp", "", 12.5},
    {"06172", "Chicken stock, home-prepared", "cup", "", 240},
    {"02048", "Vinegar, cider", "tbsp", "", 14.9},
    {"02048", "Vinegar, cider", "cup", "", 239},
    {"02048", "Vinegar, cider", "tsp", "", 5},
    {"09152", "Lemon juice, raw", "cup", "", 244},
    {"14429", "Water, tap", "fl oz", "", 29.6},
    {"14429", "Water, tap", "cup", "", 237},
};

TEST(PublishedMeasureTest, EveryWeightIsTheStandardReferences) {
  for (const Weight& row : kWeights) {
    SCOPED_TRACE(std::string("USDA SR ") + row.ndb + " " + row.food + ", " + row.unit + " " + row.form);
    const std::string source = std::string("USDA SR ") + row.ndb;
    const Measure* found = nullptr;
    for (const Ingredient& one : ingredients())
      for (const Measure& measure : one.measures)
        if (one.sourceTitle == source && measure.unit == row.unit && measure.form == row.form)
          found = &measure;
    EXPECT_NE(found, nullptr);
    if (found == nullptr) continue;
    EXPECT_DOUBLE_EQ(found->grams, row.grams);
    EXPECT_EQ(found->mark, Mark::kRead);
  }
}

struct LineRow {
  const char* line;
  double grams;
  double tolerance;
  const char* source;
};
constexpr LineRow kLines[] = {
    {"2 1/4 cups all-purpose flour", 281.25, 0.01, "USDA SR 20081"},
    {"1 cup granulated sugar", 200, 1e-9, "USDA SR 19335"},
    {"3/4 cup packed brown sugar", 165, 0.01, "USDA SR 19334"},
    {"3/4 cup loosely packed brown sugar", 108.75, 0.01, "USDA SR 19334"},
    {"1 stick unsalted butter", 113, 1e-9, "USDA SR 01145"},
    {"8 tbsp unsalted butter", 113.6, 1e-9, "USDA SR 01145"},
    {"2 tbsp honey", 42, 1e-9, "USDA SR 19296"},
    {"1 1/2 tsp table salt", 9.0, 0.01, "USDA SR 02047"},
    {"2 cups whole milk", 488, 1e-9, "USDA SR 01077"},
    {"1 1/2 cups rolled oats", 121.5, 0.01, "USDA SR 08120"},
    {"1 cup chopped pecans", 109, 1e-9, "USDA SR 12142"},
    {"1 cup pecan halves", 99, 1e-9, "USDA SR 12142"},
    {"3 large eggs", 150, 1e-9, "USDA SR 01123"},
    {"1 cup whole egg", 243, 1e-9, "USDA SR 01123"},
};

TEST(PublishedMeasureTest, LinesWeighWhatTheStandardReferenceSays) {
  for (const LineRow& row : kLines) {
    SCOPED_TRACE(row.line);
    const IngredientLine line = readLine(row.line, Measures::kUs);
    ASSERT_TRUE(line.grams);
    EXPECT_NEAR(*line.grams, row.grams, row.tolerance);
    EXPECT_EQ(line.massSource, row.source);
  }
}

TEST(PublishedMeasureTest, ACupOfEggIsNearlyFiveLargeOnes) {
  const double cup = *readLine("1 cup whole egg", Measures::kUs).grams;
  const double large = *readLine("1 large egg", Measures::kUs).grams;
  EXPECT_NEAR(cup / large, 4.86, 0.01) << "USDA SR 01123";
}

struct NeedRow {
  const char* ingredient;
  const char* need;
  Fit fit;
  const char* source;
};
constexpr NeedRow kNeeds[] = {
    {"coconut", "FDA tree nuts", Fit::kAsk, "FDA Food Allergen Guidance, Edition 5 (2025)"},
    {"mussels", "EU molluscs", Fit::kHolds, "Regulation (EU) No 1169/2011, Annex II"},
    {"spelt flour", "wheat", Fit::kHolds, "Regulation (EU) No 1169/2011; 78 FR 47154"},
    {"pearl barley", "wheat", Fit::kSuits, "FD&C Act s. 201(qq): barley is no wheat"},
    {"pearl barley", "coeliac", Fit::kHolds, "Regulation (EU) No 828/2014; 21 CFR 101.91"},
    {"lactose-free milk", "milk", Fit::kHolds,
     "Allergy UK, as quoted: milk without lactose keeps all its proteins"},
    {"pine nuts", "US tree nuts", Fit::kHolds, "FDA Food Allergen Guidance, Edition 5 (2025)"},
    {"honey", "vegan", Fit::kHolds, "ISO 23662:2021"},
    {"honey", "vegetarian", Fit::kSuits, "ISO 23662:2021"},
    {"pork", "halal", Fit::kHolds, "Regenstein and others, Compr. Rev. Food Sci. Food Saf. 2 (2003)"},
    {"vanilla extract", "halal", Fit::kHolds,
     "Regenstein and others, Compr. Rev. Food Sci. Food Saf. 2 (2003)"},
    {"celery", "EU celery", Fit::kHolds, "Regulation (EU) No 1169/2011, Annex II"},
};

TEST(PublishedAllergenTest, NeedsExcludeWhatTheirSourcesSay) {
  for (const NeedRow& row : kNeeds) {
    SCOPED_TRACE(std::string(row.ingredient) + ", " + row.need + ": " + row.source);
    const MenuDish dish{"dish", "main", {{row.ingredient, contentsOf(row.ingredient, {}, false)}}};
    EXPECT_EQ(fitOf(dish, {{row.need}}).fit, row.fit);
  }
}

// Mussels are no crustaceans on the US list; they are still a question to the guest.
TEST(PublishedAllergenTest, MolluscsAreNotTheUsListsCrustaceans) {
  const MenuDish dish{"dish", "main", {{"mussels", contentsOf("mussels", {}, false)}}};
  EXPECT_NE(fitOf(dish, {{"US crustacean"}}).fit, Fit::kHolds);
}

}  // namespace
}  // namespace suppertide::kitchen
