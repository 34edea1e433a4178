#include "client/printing/sheet_printer.h"

#include <QtCore/qdir.h>
#include <QtCore/qsavefile.h>
#include <QtCore/qstandardpaths.h>
#include <QtCore/qurl.h>
#include <QtGui/qdesktopservices.h>

#include <utility>

#include "client/link/session.h"
#include "client/printing/sheet_words.h"

namespace suppertide {
namespace {

// Where the paper of an office is Letter.
bool usesLetter() {
  const auto territory = QLocale().territory();
  return territory == QLocale::UnitedStates || territory == QLocale::Canada || territory == QLocale::Mexico ||
         territory == QLocale::Philippines || territory == QLocale::Chile || territory == QLocale::Colombia;
}

QString usualFolder() {
  const QString documents = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
  return documents.isEmpty() ? QDir::homePath() : documents;
}

// No sign that a file system or a shell reads as anything else.
QString fileName(QString words) {
  for (QChar& sign : words)
    if (!sign.isLetterOrNumber()) sign = QLatin1Char(' ');
  return words.simplified().left(80);
}

}  // namespace

SheetPrinter::SheetPrinter(QObject* parent) : QObject(parent), letter_(usesLetter()), folder_(usualFolder()) {
  worker_.setMaxThreadCount(1);
}

SheetPrinter::~SheetPrinter() {
  worker_.waitForDone();
}

void SheetPrinter::setSession(HouseholdSession* session) {
  if (session == session_) return;
  if (session_ != nullptr) session_->disconnect(this);
  session_ = session;
  if (session_ != nullptr) {
    connect(session_, &HouseholdSession::householdChanged, this, &SheetPrinter::sessionChanged);
    connect(session_, &HouseholdSession::eventIdChanged, this, &SheetPrinter::sessionChanged);
  }
  Q_EMIT sessionChanged();
}

bool SheetPrinter::ready() const {
  return session_ != nullptr && session_->view() != nullptr && session_->view()->plan() != nullptr;
}

QStringList SheetPrinter::readers() const {
  QStringList names = {tr("Everybody")};
  if (session_ == nullptr || session_->view() == nullptr) return names;
  for (const v1::EventCook& cook : session_->view()->event().cooks())
    names.append(session_->view()->names().cook(cook.member_id()));
  return names;
}

std::string SheetPrinter::readerId() const {
  const auto& cooks = session_->view()->event().cooks();
  return reader_ < 1 || reader_ > cooks.size() ? std::string() : cooks[reader_ - 1].member_id();
}

QString SheetPrinter::nextFile() const {
  QString name = fileName(QString::fromStdString(session_->view()->event().display_name()));
  if (!readerId().empty()) name += QLatin1Char(' ') + fileName(readers().value(reader_));
  return QDir(folder_).filePath(name + QStringLiteral(".pdf"));
}

void SheetPrinter::make() {
  if (busy_ || !ready()) return;
  busy_ = true;
  problem_.clear();
  warning_.clear();
  Q_EMIT changed();
  if (!readerId().empty()) return write({});
  if (session_->state() != HouseholdSession::Live) {
    warning_ = tr("Without a connection the shopping is left out.");
    return write({});
  }
  v1::MakeShoppingListRequest request;
  request.set_household_id(session_->replica()->household.id());
  request.set_event_id(session_->eventId().toStdString());
  session_->ask<v1::MakeShoppingListResponse>(
      this, [request](link::Session& server) { return server.makeShoppingList(request); },
      [this](const absl::StatusOr<v1::MakeShoppingListResponse>& answer) {
        if (!answer.ok())
          warning_ = tr("The shopping is left out: %1")
                         .arg(QString::fromStdString(std::string(answer.status().message())));
        std::vector<v1::ShoppingItem> items;
        if (answer.ok()) items.assign(answer->items().begin(), answer->items().end());
        write(std::move(items));
      });
}

void SheetPrinter::write(std::vector<v1::ShoppingItem> shopping) {
  if (!ready()) return finish({}, 0, tr("There is no plan to print."));
  auto sheets = SheetWords(*session_->view()).sheets(shopping, readerId());
  const paper::Size size = letter_ ? paper::Size::kLetter : paper::Size::kA4;
  worker_.start([this, sheets = std::move(sheets), size, file = nextFile()] {
    int pages = 0;
    const auto pdf = paper::pdfOf(sheets, size, &pages);
    QString problem;
    if (!pdf.ok()) {
      problem = QString::fromStdString(std::string(pdf.status().message()));
    } else {
      QSaveFile to(file);
      const bool kept = QDir().mkpath(QFileInfo(file).path()) && to.open(QIODevice::WriteOnly) &&
                        to.write(QByteArray::fromStdString(*pdf)) == static_cast<qint64>(pdf->size()) &&
                        to.commit();
      if (!kept) problem = tr("%1 can't be written: %2").arg(file, to.errorString());
    }
    QMetaObject::invokeMethod(
        this, [=, this] { finish(problem.isEmpty() ? file : QString(), pages, problem); },
        Qt::QueuedConnection);
  });
}

void SheetPrinter::finish(const QString& file, int pages, const QString& problem) {
  busy_ = false;
  file_ = file;
  pages_ = pages;
  problem_ = problem.isEmpty() ? warning_ : problem;
  Q_EMIT changed();
  if (!file.isEmpty()) Q_EMIT made();
}

void SheetPrinter::open() {
  if (file_.isEmpty() || QDesktopServices::openUrl(QUrl::fromLocalFile(file_))) return;
  problem_ = tr("No program was found to open it with.");
  Q_EMIT changed();
}

}  // namespace suppertide
