#include "server/base/ids.h"

#include <gtest/gtest.h>

#include <regex>
#include <set>

namespace suppertide {
namespace {

TEST(IdsTest, AreVersionFourUuids) {
  const std::regex form("[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}");
  for (int i = 0; i < 100; ++i) EXPECT_TRUE(std::regex_match(newId(), form));
}

TEST(IdsTest, DoNotRepeat) {
  std::set<std::string> seen;
  for (int i = 0; i < 10'000; ++i) EXPECT_TRUE(seen.insert(newId()).second);
}

TEST(IdsTest, MayBeHandWritten) {
  EXPECT_TRUE(isId("roast"));
  EXPECT_TRUE(isId("Rye-loaf_2.b"));
  EXPECT_TRUE(isId(newId()));
}

TEST(IdsTest, HaveNoSpacesSlashesOrAccentsAndSomeLength) {
  for (const char* bad : {"", "two words", "a/b", "p\xC3\xA2t\xC3\xA9"}) EXPECT_FALSE(isId(bad)) << bad;
  EXPECT_TRUE(isId(std::string(64, 'a')));
  EXPECT_FALSE(isId(std::string(65, 'a')));
}

}  // namespace
}  // namespace suppertide
