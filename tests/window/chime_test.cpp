// The sound of reminders where the desktop makes none.
#include "client/session/chime.h"

#include <gtest/gtest.h>

#include <QtCore/qfile.h>
#include <QtCore/qtemporarydir.h>
#include <QtTest/qtest.h>

namespace suppertide::testing {
namespace {

TEST(ChimeTest, IsAWaveFileOfHalfASecond) {
  const QByteArray wave = Chime::wave();
  ASSERT_GT(wave.size(), 44);
  EXPECT_EQ(wave.left(4), "RIFF");
  EXPECT_EQ(wave.mid(8, 8), "WAVEfmt ");
  const auto number = [&](qsizetype at) {
    return static_cast<quint32>(static_cast<uchar>(wave[at])) |
           static_cast<quint32>(static_cast<uchar>(wave[at + 1])) << 8 |
           static_cast<quint32>(static_cast<uchar>(wave[at + 2])) << 16 |
           static_cast<quint32>(static_cast<uchar>(wave[at + 3])) << 24;
  };
  EXPECT_EQ(number(4), static_cast<quint32>(wave.size() - 8));
  EXPECT_EQ(number(40), static_cast<quint32>(wave.size() - 44));
  EXPECT_NEAR(number(40) / static_cast<double>(number(28)), 0.56, 0.01) << "seconds";
}

class ChimePlayerTest : public ::testing::Test {
 protected:
  ChimePlayerTest() : path_(qgetenv("PATH")) { qputenv("PATH", folder_.path().toUtf8()); }
  ~ChimePlayerTest() override { qputenv("PATH", path_); }
  QString file(const char* name) const { return folder_.filePath(QString::fromUtf8(name)); }

  QTemporaryDir folder_;
  QByteArray path_;
};

TEST_F(ChimePlayerTest, IsPlayedByWhatTheDesktopHas) {
  QFile player(file("aplay"));
  ASSERT_TRUE(player.open(QIODevice::WriteOnly));
  player.write("#!/bin/sh\n/bin/cp \"$1\" '" + file("heard.part").toUtf8() + "' && /bin/mv '" +
               file("heard.part").toUtf8() + "' '" + file("heard").toUtf8() + "'\n");
  player.close();
  ASSERT_TRUE(player.setPermissions(QFile::ReadOwner | QFile::ExeOwner));
  Chime chime;
  ASSERT_TRUE(chime.ring());
  ASSERT_TRUE(QTest::qWaitFor([&] { return QFile::exists(file("heard")); }, 20'000));
  QFile heard(file("heard"));
  ASSERT_TRUE(heard.open(QIODevice::ReadOnly));
  EXPECT_EQ(heard.readAll(), Chime::wave());
}

TEST_F(ChimePlayerTest, IsSilentWhereNothingPlays) {
  Chime chime;
  EXPECT_FALSE(chime.ring());
}

}  // namespace
}  // namespace suppertide::testing
