#include "client/shell/options.h"

#include <gtest/gtest.h>

#include <QtCore/qfile.h>
#include <QtCore/qtemporarydir.h>

#include "client/link/credentials.h"
#include "client/link/private_file.h"

namespace suppertide {
namespace {

class OptionsTest : public ::testing::Test {
 protected:
  OptionsTest() { qputenv("XDG_CONFIG_HOME", folder_.path().toUtf8()); }

  ParsedOptions parse(const QStringList& words) {
    return parseOptions(QStringList(QStringLiteral("window")) + words);
  }
  ParsedOptions parseWithTarget(const QStringList& words) {
    return parse(QStringList{QStringLiteral("--server"), QStringLiteral("unix:/run/s"),
                             QStringLiteral("--household"), QStringLiteral("quay"),
                             QStringLiteral("--token-file"), write("token", "secret\n")} +
                 words);
  }
  QString write(const char* name, const QByteArray& text) {
    QFile file(folder_.filePath(QString::fromUtf8(name)));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text);
    return file.fileName();
  }
  void save(const std::string& name, const std::string& target) {
    link::Credentials credentials = link::loadCredentials(link::credentialsPath()).value();
    link::KnownServer server;
    server.name = name;
    server.target = target;
    server.householdId = "quay";
    server.deviceToken = "saved";
    credentials.put(server);
    ASSERT_TRUE(link::saveCredentials(link::credentialsPath(), credentials).ok());
  }

  QTemporaryDir folder_;
};

TEST_F(OptionsTest, TakesATargetWithHouseholdAndToken) {
  const ParsedOptions parsed = parseWithTarget({QStringLiteral("--event"), QStringLiteral("midsummer")});
  ASSERT_EQ(parsed.exitCode, -1) << parsed.text.toStdString();
  EXPECT_EQ(parsed.options.link.target, "unix:/run/s");
  EXPECT_EQ(parsed.options.link.householdId, "quay");
  EXPECT_EQ(parsed.options.link.deviceToken, "secret");
  EXPECT_EQ(parsed.options.eventId, "midsummer");
}

TEST_F(OptionsTest, TakesTheSavedServerUsedLastOrTheOneNamed) {
  save("home", "unix:/home");
  save("aunt", "unix:/aunt");
  EXPECT_EQ(parse({}).options.link.target, "unix:/aunt");
  const ParsedOptions named = parse({QStringLiteral("--server"), QStringLiteral("home")});
  EXPECT_EQ(named.options.link.target, "unix:/home");
  EXPECT_EQ(named.options.link.deviceToken, "saved");
}

TEST_F(OptionsTest, TheWindowAsksWhenNoHouseholdIsSaved) {
  const ParsedOptions parsed = parse({});
  EXPECT_EQ(parsed.exitCode, -1) << parsed.text.toStdString();
  EXPECT_TRUE(parsed.options.firstRun);
  EXPECT_EQ(parse({QStringLiteral("--server"), QStringLiteral("home")}).exitCode, 1)
      << "a name that is not saved";
  save("home", "unix:/home");
  EXPECT_FALSE(parse({}).options.firstRun);
}

TEST_F(OptionsTest, ASavedHouseholdIsKeptForAnOfflineStart) {
  save("home", "unix:/home");
  EXPECT_EQ(parse({}).options.store, link::householdFolder("quay"));
  EXPECT_TRUE(parseWithTarget({}).options.store.empty());
  EXPECT_EQ(link::householdFolder("../x").parent_path(), link::householdFolder("quay").parent_path());
}

TEST_F(OptionsTest, TakesTheLookOfThePicture) {
  const ParsedOptions parsed = parseWithTarget(
      {QStringLiteral("--size"), QStringLiteral("390x844"), QStringLiteral("--theme"), QStringLiteral("dark"),
       QStringLiteral("--at"), QStringLiteral("2026-06-20T14:05:00+01:00"), QStringLiteral("--view"),
       QStringLiteral("serving"), QStringLiteral("--screenshot"), QStringLiteral("x.png")});
  ASSERT_EQ(parsed.exitCode, -1) << parsed.text.toStdString();
  EXPECT_EQ(parsed.options.size, QSize(390, 844));
  EXPECT_EQ(parsed.options.scheme, WindowOptions::Scheme::kDark);
  EXPECT_EQ(parsed.options.view, WindowOptions::View::kServing);
  EXPECT_EQ(parsed.options.at->time_since_epoch().count(), 1781960700);
  EXPECT_EQ(parsed.options.screenshot, QStringLiteral("x.png"));
}

TEST_F(OptionsTest, RefusesWordsThatMeanNothing) {
  struct Row {
    const char* option;
    const char* value;
  };
  for (const Row& row :
       {Row{"--size", "wide"}, Row{"--size", "10x10"}, Row{"--size", "390x844x2"}, Row{"--theme", "pink"},
        Row{"--at", "noon"}, Row{"--view", "moon"}, Row{"--language", "xx"}}) {
    const ParsedOptions parsed =
        parseWithTarget({QString::fromUtf8(row.option), QString::fromUtf8(row.value)});
    EXPECT_EQ(parsed.exitCode, 2) << row.option << " " << row.value;
    EXPECT_TRUE(parsed.text.contains(QString::fromUtf8(row.value))) << parsed.text.toStdString();
  }
  EXPECT_EQ(parse({QStringLiteral("--nonsense")}).exitCode, 2);
  EXPECT_EQ(parse({QStringLiteral("word")}).exitCode, 2);
  EXPECT_EQ(parse({QStringLiteral("--token-file"), QStringLiteral("/none")}).exitCode, 2) << "no household";
}

TEST_F(OptionsTest, HelpNamesEveryOption) {
  const ParsedOptions help = parse({QStringLiteral("--help")});
  EXPECT_EQ(help.exitCode, 0);
  for (const char* option :
       {"--server", "--household", "--token-file", "--certificate", "--event", "--screenshot", "--size",
        "--theme", "--language", "--at", "--view", "--step", "--version"})
    EXPECT_TRUE(help.text.contains(QString::fromUtf8(option))) << option;
}

}  // namespace
}  // namespace suppertide
