// What the window asks when this device belongs to no household yet.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qthreadpool.h>
#include <QtQml/qqmlregistration.h>

#include <filesystem>
#include <functional>
#include <memory>

#include "client/link/credentials.h"
#include "client/shell/local_household.h"

namespace suppertide {

class FirstRun : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by the program")
  // There is a choice to make.
  Q_PROPERTY(bool open READ isOpen NOTIFY changed FINAL)
  // Something was chosen and is being done.
  Q_PROPERTY(bool busy READ busy NOTIFY changed FINAL)
  // Why the last try came to nothing and what to do; empty: nothing went wrong.
  Q_PROPERTY(QString problem READ problem NOTIFY changed FINAL)
  // What the desktop calls this person; may be empty.
  Q_PROPERTY(QString personName READ personName CONSTANT FINAL)
 public:
  // Where things are kept.
  struct Places {
    std::filesystem::path credentials;
    std::filesystem::path data;  // of a household on this computer
  };

  FirstRun(Places places, std::function<Instant()> clock, QObject* parent = nullptr);
  ~FirstRun() override;  // waits for what is being done

  void setOpen(bool open);
  bool isOpen() const { return open_; }
  bool busy() const { return busy_; }
  QString problem() const { return problem_; }
  QString personName() const;

  // A household on this computer alone, with the sample feast in it.
  Q_INVOKABLE void stayHere(const QString& name);
  // A household on a server. `code` may be the whole line of an invitation's picture; then no address is
  // needed.
  Q_INVOKABLE void join(const QString& address, const QString& code, const QString& name);

  // What a device that could not join says: the way out of `status` for people. `codeIsWhole`: the code
  // had the second part, which tells servers apart.
  static QString adviceFor(const absl::Status& status, const QString& address, bool codeIsWhole);

 Q_SIGNALS:
  void changed();
  // It belongs to a household now; take the server, if there is one, with takeServer().
  void joined();

 public:
  const link::KnownServer& known() const { return made_.known; }
  std::unique_ptr<EmbeddedServer> takeServer() { return std::move(made_.server); }

 private:
  using Outcome = absl::StatusOr<LocalHousehold>;
  void begin(std::function<Outcome()> work, const QString& address, bool codeIsWhole);
  void finish(Outcome outcome, const QString& address, bool codeIsWhole);
  void fail(const QString& problem);

  const Places places_;
  const std::function<Instant()> clock_;
  bool open_ = false;
  bool busy_ = false;
  QString problem_;
  LocalHousehold made_;
  QThreadPool worker_;
};

}  // namespace suppertide
