#include "client/link/join_code.h"

#include <gtest/gtest.h>

namespace suppertide::link {
namespace {

const std::string kFingerprint(64, 'a');

TEST(JoinCodeTest, SplitsCodeAndFingerprint) {
  const auto code = parseJoinCode(" ABCD-EFGH-JKLM." + std::string(64, 'A') + "\n");
  ASSERT_TRUE(code.ok()) << code.status();
  EXPECT_EQ(code->code, "ABCD-EFGH-JKLM");
  EXPECT_EQ(code->fingerprint, kFingerprint);
  EXPECT_EQ(textOf(*code), "ABCD-EFGH-JKLM." + kFingerprint);
}

TEST(JoinCodeTest, TakesACodeAlone) {
  const auto code = parseJoinCode("abcd efgh jklm");
  ASSERT_TRUE(code.ok()) << code.status();
  EXPECT_EQ(code->code, "abcdefghjklm");
  EXPECT_TRUE(code->fingerprint.empty());
  EXPECT_EQ(textOf(*code), "abcdefghjklm");
}

TEST(JoinCodeTest, TakesColonsAsOtherProgramsPrintThem) {
  std::string text = "AAAA-BBBB-CCCC.";
  for (int byte = 0; byte < 32; ++byte) text += byte == 0 ? "AA" : ":AA";
  EXPECT_EQ(parseJoinCode(text)->fingerprint, kFingerprint);
}

TEST(JoinCodeTest, RefusesACutFingerprintRatherThanTrustingAnyone) {
  for (const char* cut : {"AAAA-BBBB-CCCC.", "AAAA-BBBB-CCCC.abcd", "AAAA-BBBB-CCCC.xyz"})
    EXPECT_EQ(parseJoinCode(cut).status().code(), absl::StatusCode::kInvalidArgument) << cut;
  EXPECT_FALSE(parseJoinCode("A." + kFingerprint + "a").ok());
}

}  // namespace
}  // namespace suppertide::link
