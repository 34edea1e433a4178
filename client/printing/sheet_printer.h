// Makes the run sheet of the shown event as a PDF file and hands it to the desktop, which shows and prints
// it.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qpointer.h>
#include <QtCore/qthreadpool.h>
#include <QtQml/qqmlregistration.h>

#include <functional>

#include "client/paper/paper.h"
#include "client/session/household_session.h"

namespace suppertide {

class SheetPrinter : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::HouseholdSession* session READ session WRITE setSession NOTIFY sessionChanged
                 REQUIRED FINAL)
  // For whom: 0 everybody, with ovens, breads and shopping; then each cook of the event.
  Q_PROPERTY(QList<QString> readers READ readers NOTIFY sessionChanged FINAL)
  Q_PROPERTY(int reader MEMBER reader_ NOTIFY choiceChanged FINAL)
  Q_PROPERTY(bool letter MEMBER letter_ NOTIFY choiceChanged FINAL)
  // There is a plan to print.
  Q_PROPERTY(bool ready READ ready NOTIFY sessionChanged FINAL)
  Q_PROPERTY(bool busy READ busy NOTIFY changed FINAL)
  // The last file made; empty: none.
  Q_PROPERTY(QString file READ file NOTIFY changed FINAL)
  Q_PROPERTY(int pages READ pages NOTIFY changed FINAL)
  // What is missing or went wrong; empty: nothing.
  Q_PROPERTY(QString problem READ problem NOTIFY changed FINAL)
  // Where files are put.
  Q_PROPERTY(QString folder MEMBER folder_ NOTIFY choiceChanged FINAL)
 public:
  explicit SheetPrinter(QObject* parent = nullptr);
  ~SheetPrinter() override;  // waits for a file that is being made

  HouseholdSession* session() const { return session_; }
  void setSession(HouseholdSession* session);
  QStringList readers() const;
  bool ready() const;
  bool busy() const { return busy_; }
  QString file() const { return file_; }
  int pages() const { return pages_; }
  QString problem() const { return problem_; }

  // Without a connection the shopping is left out, and `problem` says so.
  Q_INVOKABLE void make();
  // Shows the file in the desktop's own program for PDF.
  Q_INVOKABLE void open();

 Q_SIGNALS:
  void sessionChanged();
  void choiceChanged();
  void changed();
  // The file is there.
  void made();

 private:
  std::string readerId() const;
  QString nextFile() const;
  void write(std::vector<v1::ShoppingItem> shopping);
  void finish(const QString& file, int pages, const QString& problem);

  QPointer<HouseholdSession> session_;
  int reader_ = 0;
  bool letter_;
  bool busy_ = false;
  QString folder_, file_, problem_, warning_;
  int pages_ = 0;
  QThreadPool worker_;
};

}  // namespace suppertide
