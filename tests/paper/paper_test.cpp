#include "client/paper/paper.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <fstream>
#include <string>

namespace suppertide::paper {
namespace {

Sheet sheetOf(int items) {
  Sheet sheet{"Ana", "Sunday supper", {{"Sunday 7 March", {}}}};
  for (int i = 0; i < items; ++i)
    sheet.parts[0].items.push_back(
        {"17:05–17:30", "Shape the rolls · Butter rolls", {"16 pieces of 55 g"}, {"Hot oven."}, true});
  return sheet;
}

// What another program reads in the file; empty when it is not installed.
std::string textOf(const std::string& pdf) {
  const std::string path = testing::TempDir() + "sheet.pdf";
  std::ofstream(path, std::ios::binary) << pdf;
  std::string text;
  FILE* reader = popen(("pdftotext -layout " + path + " - 2>/dev/null").c_str(), "r");
  if (reader == nullptr) return text;
  std::array<char, 4096> part{};
  for (std::size_t got = 0; (got = fread(part.data(), 1, part.size(), reader)) > 0;)
    text.append(part.data(), got);
  pclose(reader);
  return text;
}

TEST(PaperTest, AShortSheetIsOnePage) {
  int pages = 0;
  const auto pdf = pdfOf({sheetOf(8)}, Size::kA4, &pages);
  ASSERT_TRUE(pdf.ok());
  EXPECT_THAT(*pdf, testing::StartsWith("%PDF-"));
  EXPECT_EQ(pages, 1);
}

TEST(PaperTest, ASheetIsSetSmallerToFitOnePage) {
  int pages = 0;
  int fits = 0;
  for (int items = 1; items < 40; ++items) {
    ASSERT_TRUE(pdfOf({sheetOf(items)}, Size::kA4, &pages).ok());
    if (pages == 1) fits = items;
  }
  // At its largest size it would hold ten.
  EXPECT_GE(fits, 12);
}

TEST(PaperTest, EachSheetBeginsAPageAndALongOneGoesOn) {
  int pages = 0;
  ASSERT_TRUE(pdfOf({sheetOf(2), sheetOf(60), sheetOf(2)}, Size::kLetter, &pages).ok());
  EXPECT_GE(pages, 5);
}

TEST(PaperTest, WhatIsWrittenIsFoundAgainByAnotherProgram) {
  Sheet sheet = sheetOf(1);
  sheet.parts[0].items[0].title = "Crème brûlée — ½ l, 95 °C";
  const auto pdf = pdfOf({sheet}, Size::kA4);
  ASSERT_TRUE(pdf.ok());
  const std::string text = textOf(*pdf);
  if (text.empty()) GTEST_SKIP() << "pdftotext is not installed";
  EXPECT_THAT(text, testing::HasSubstr("Crème brûlée — ½ l, 95 °C"));
  EXPECT_THAT(text, testing::HasSubstr("17:05–17:30"));
  EXPECT_THAT(text, testing::HasSubstr("! Hot oven."));
}

TEST(PaperTest, TextThatIsNoUtf8StopsNothing) {
  Sheet sheet = sheetOf(1);
  sheet.parts[0].items[0].title = "\xff\xfe broken";
  EXPECT_TRUE(pdfOf({sheet}, Size::kA4).ok());
}

}  // namespace
}  // namespace suppertide::paper
