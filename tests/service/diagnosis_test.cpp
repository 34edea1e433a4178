#include "server/service/diagnosis.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "server/service/documents.h"
#include "server/storage/backup.h"
#include "tests/compose/small_dinner.h"
#include "tests/service/served.h"

namespace suppertide::service {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

class DiagnosisTest : public ::testing::Test {
 protected:
  // A household with the small dinner, and what `spoil` then writes past all checks.
  void make(const std::function<std::vector<storage::Put>()>& spoil) {
    Served served({}, file_);
    served.found();
    served.importDinner();
    storage::WriteRequest write;
    write.householdId = served.household;
    write.puts = spoil();
    if (write.puts.empty()) return;
    ASSERT_TRUE(served.server().backend().store().write(write).ok());
  }

  const TemporaryFolder folder_;
  const std::string file_ = folder_.path() + "/h.sqlite";
};

TEST_F(DiagnosisTest, FindsNothingInASoundFile) {
  make([] { return std::vector<storage::Put>(); });
  const auto diagnosis = diagnose(file_);
  ASSERT_TRUE(diagnosis.ok()) << diagnosis.status();
  EXPECT_TRUE(diagnosis->isWell()) << ::testing::PrintToString(diagnosis->documents);
  EXPECT_EQ(diagnosis->householdNames.begin()->second, compose::smallDinner().household().display_name());
}

TEST_F(DiagnosisTest, FindsDocumentsThatCannotBeWhatTheyAre) {
  make([] {
    storage::Put unreadable;
    unreadable.key = {"recipe", "broken"};
    unreadable.bytes = "\xFF\xFF\xFF";
    storage::Put strange;
    strange.key = {"poem", "ode"};
    v1::Event event = compose::smallDinner().events(0);
    event.set_id("lonely");
    event.set_kitchen_id("nowhere");
    return std::vector<storage::Put>{unreadable, strange, putOf(event)};
  });
  const auto diagnosis = diagnose(file_);
  ASSERT_TRUE(diagnosis.ok()) << diagnosis.status();
  EXPECT_THAT(diagnosis->documents, ::testing::Contains(HasSubstr("recipe broken cannot be read")));
  EXPECT_THAT(diagnosis->documents, ::testing::Contains(HasSubstr("poem ode is of a kind")));
  EXPECT_THAT(diagnosis->documents, ::testing::Contains(HasSubstr("nowhere")));
}

TEST_F(DiagnosisTest, LooksAtACopyAsWell) {
  make([] { return std::vector<storage::Put>(); });
  ASSERT_TRUE(storage::backUp(file_, file_ + ".copy").ok());
  EXPECT_TRUE(diagnose(file_ + ".copy")->isWell());
}

}  // namespace
}  // namespace suppertide::service
