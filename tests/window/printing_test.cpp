// The run sheet on paper, in the reader's language and units.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QtCore/qfile.h>
#include <QtCore/qtemporarydir.h>
#include <QtTest/qsignalspy.h>
#include <QtTest/qtest.h>

#include "client/printing/sheet_printer.h"
#include "client/printing/sheet_words.h"
#include "client/words/step_words.h"
#include "tests/window/sample.h"

namespace suppertide::testing {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;

v1::ShoppingItem line(const char* name, const char* day, double grams) {
  v1::ShoppingItem item;
  item.set_name(name);
  item.set_needed_date(day);
  item.mutable_to_buy()->set_mass_g(grams);
  return item;
}

std::string allWords(const std::vector<paper::Sheet>& sheets) {
  std::string all;
  for (const paper::Sheet& sheet : sheets) {
    all += sheet.title + "\n" + sheet.subtitle + "\n";
    for (const paper::Part& part : sheet.parts) {
      all += part.title + "\n";
      for (const paper::Item& item : part.items) {
        all += item.lead + " " + item.title + "\n";
        for (const std::string& detail : item.details) all += detail + "\n";
        for (const std::string& warning : item.warnings) all += warning + "\n";
      }
    }
  }
  return all;
}

class PrintingTest : public ::testing::Test {
 protected:
  PrintingTest() {
    session_.setMemberId("ines");
    session_.adopt(sampleReplica());
  }
  std::vector<paper::Sheet> sheets(const std::string& memberId = {}) {
    return SheetWords(*session_.view()).sheets({line("fennel", "2026-06-19", 900)}, memberId);
  }
  std::vector<std::string> titles(const std::vector<paper::Sheet>& sheets) {
    std::vector<std::string> titles;
    for (const paper::Sheet& sheet : sheets) titles.push_back(sheet.title);
    return titles;
  }

  HouseholdSession session_{
      [] { return Instant(std::chrono::seconds(secondsAt("2026-06-20T12:00:00+01:00"))); }};
};

TEST_F(PrintingTest, EverybodysSheetHasCooksOvensBreadsAndShopping) {
  const auto all = titles(sheets());
  for (const char* title : {"Ines", "Noor", "Ovens", "Breads", "Shopping"}) EXPECT_THAT(all, Contains(title));
  EXPECT_THAT(allWords(sheets()), HasSubstr("900 g fennel"));
  EXPECT_THAT(allWords(sheets()), HasSubstr("local food-safety code"));
}

TEST_F(PrintingTest, ACooksOwnSheetHasThatCooksStepsAlone) {
  const auto own = sheets("noor");
  ASSERT_EQ(own.size(), 1U);
  EXPECT_EQ(own[0].title, "Noor");
  std::size_t steps = 0;
  for (const v1::PlannedStep& step : session_.view()->plan()->steps())
    steps += step.cook_member_id() == "noor" && StepWords::isNeeded(step);
  std::size_t items = 0;
  for (const paper::Part& part : own[0].parts)
    for (const paper::Item& item : part.items) items += item.box;
  EXPECT_EQ(items, steps);
  EXPECT_GT(steps, 0U);
}

TEST_F(PrintingTest, TemperaturesAreInTheReadersUnit) {
  EXPECT_THAT(allWords(sheets()), HasSubstr(" °C"));
  session_.setUnits(v1::TEMPERATURE_UNIT_FAHRENHEIT, std::nullopt);
  EXPECT_THAT(allWords(sheets()), HasSubstr(" °F"));
  EXPECT_THAT(allWords(sheets()), ::testing::Not(HasSubstr(" °C")));
}

TEST_F(PrintingTest, MakesAFileForThePaperThatIsChosen) {
  const QTemporaryDir folder;
  SheetPrinter printer;
  printer.setSession(&session_);
  printer.setProperty("folder", folder.path());
  EXPECT_TRUE(printer.ready());
  EXPECT_EQ(printer.readers().front().toStdString(), "Everybody");
  const auto boxOf = [&](bool letter) {
    printer.setProperty("letter", letter);
    QSignalSpy made(&printer, &SheetPrinter::made);
    printer.make();
    EXPECT_TRUE(made.count() > 0 || made.wait(20'000)) << printer.problem().toStdString();
    QFile file(printer.file());
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << printer.file().toStdString();
    const QByteArray bytes = file.readAll();
    EXPECT_TRUE(bytes.startsWith("%PDF"));
    return bytes.contains("MediaBox [ 0 0 612 792");
  };
  EXPECT_TRUE(boxOf(true)) << "Letter is 612 by 792 points";
  EXPECT_FALSE(boxOf(false));
  EXPECT_GT(printer.pages(), 2);
  EXPECT_THAT(printer.problem().toStdString(), HasSubstr("shopping is left out"));
}

TEST_F(PrintingTest, AFolderThatCannotBeWrittenToIsNamed) {
  QTemporaryDir folder;
  QFile file(folder.filePath(QStringLiteral("taken")));
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  SheetPrinter printer;
  printer.setSession(&session_);
  printer.setProperty("folder", file.fileName());
  printer.make();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !printer.busy(); }, 20'000));
  EXPECT_TRUE(printer.file().isEmpty());
  EXPECT_THAT(printer.problem().toStdString(), HasSubstr("taken"));
}

}  // namespace
}  // namespace suppertide::testing
