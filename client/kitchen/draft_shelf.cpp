#include "client/kitchen/draft_shelf.h"

#include <QtCore/qdatastream.h>
#include <QtCore/qdir.h>
#include <QtCore/qsavefile.h>

#include "client/kitchen/ask_write.h"
#include "client/link/edit.h"

namespace suppertide {
namespace {

constexpr qint32 kFormat = 1;

QByteArray bytesOf(const google::protobuf::Message* document) {
  return document == nullptr ? QByteArray() : QByteArray::fromStdString(document->SerializeAsString());
}

DocumentPtr documentOf(Document::Kind kind, const QByteArray& bytes) {
  if (bytes.isEmpty()) return nullptr;
  DocumentPtr document = makeDocument(kind);
  if (!document->ParseFromString(bytes.toStdString())) return nullptr;
  return document;
}

DocumentPtr copyOf(const google::protobuf::Message& document) {
  DocumentPtr copy(document.New());
  copy->CopyFrom(document);
  return copy;
}

}  // namespace

DraftShelf::DraftShelf(HouseholdSession* session, const QString& folder, QObject* parent)
    : QObject(parent), session_(session), folder_(folder) {
  connect(session_, &HouseholdSession::householdChanged, this, &DraftShelf::followHousehold);
  connect(session_, &HouseholdSession::refusedNow, this, [this](qint64 number) {
    for (const link::Outbox::Entry& entry : session_->refusedEntries())
      if (entry.number == number) takeBack(entry);
  });
  followHousehold();
}

Draft* DraftShelf::open(Document::Kind kind, const QString& id) {
  const auto found = drafts_.find({kind, id});
  if (found != drafts_.end()) return found->second;
  if (session_->replica() == nullptr) return nullptr;
  const auto* stored = findDocument(*session_->replica(), kind, id.toStdString());
  return stored == nullptr ? nullptr : add(kind, copyOf(*stored), nullptr);
}

Draft* DraftShelf::begin(Document::Kind kind) {
  Draft* draft = add(kind, nullptr, newDocument(kind));
  Q_EMIT draftsChanged();
  return draft;
}

void DraftShelf::drop(Draft* draft) {
  if (draft == nullptr) return;
  forget(*draft);
  drafts_.erase({draft->kind(), draft->documentId()});
  draft->deleteLater();
  Q_EMIT draftsChanged();
}

std::vector<Draft*> DraftShelf::changed(Document::Kind kind) const {
  std::vector<Draft*> all;
  for (const auto& [key, draft] : drafts_) {
    if (key.first == kind && draft->dirty()) all.push_back(draft);
  }
  return all;
}

Draft* DraftShelf::add(Document::Kind kind, DocumentPtr base, DocumentPtr mine) {
  auto* draft = new Draft(session_, kind, std::move(base), std::move(mine), this);
  drafts_[{kind, draft->documentId()}] = draft;
  connect(draft, &Draft::changed, this, [this, draft] {
    if (draft->dirty())
      keep(*draft);
    else
      forget(*draft);
    Q_EMIT draftsChanged();
  });
  return draft;
}

void DraftShelf::followHousehold() {
  if (session_->replica() == nullptr || !session_->known()) return;
  if (!restored_) restore();
  // Following may end in signals that open or drop others.
  const auto drafts = drafts_;
  for (const auto& [key, draft] : drafts) {
    const auto* stored = findDocument(*session_->replica(), draft->kind(), key.second.toStdString());
    if (stored != nullptr || draft->dirty()) {
      draft->follow(stored);
    } else {
      Q_EMIT gone(draft);
      drop(draft);
    }
  }
}

QString DraftShelf::folderNow() const {
  const std::string household = householdIdOf(*session_);
  if (folder_.isEmpty() || household.empty()) return {};
  return folder_ + QLatin1Char('/') + QString::fromStdString(household);
}

QString DraftShelf::fileOf(const Draft& draft) const {
  return QStringLiteral("%1/%2-%3.draft").arg(folderNow()).arg(draft.kind()).arg(draft.documentId());
}

void DraftShelf::keep(const Draft& draft) const {
  if (folderNow().isEmpty() || !QDir().mkpath(folderNow())) return;
  QSaveFile file(fileOf(draft));
  if (!file.open(QIODevice::WriteOnly)) return;
  QDataStream out(&file);
  out << kFormat << qint32(draft.kind()) << bytesOf(draft.base()) << bytesOf(&draft.document());
  file.commit();
}

void DraftShelf::forget(const Draft& draft) const {
  if (!folderNow().isEmpty()) QFile::remove(fileOf(draft));
}

void DraftShelf::restore() {
  restored_ = true;
  if (folderNow().isEmpty()) return;
  const QDir folder(folderNow());
  for (const QString& name : folder.entryList({QStringLiteral("*.draft")}, QDir::Files, QDir::Name)) {
    QFile file(folder.filePath(name));
    if (!file.open(QIODevice::ReadOnly)) continue;
    QDataStream in(&file);
    qint32 format = 0, kind = 0;
    QByteArray base, mine;
    in >> format >> kind >> base >> mine;
    if (in.status() != QDataStream::Ok || format != kFormat || kind < 0 || kind > Document::Starter) continue;
    const auto known = static_cast<Document::Kind>(kind);
    DocumentPtr changed = documentOf(known, mine);
    if (changed == nullptr || drafts_.count({known, QString::fromStdString(idOf(*changed))}) > 0) continue;
    add(known, documentOf(known, base), std::move(changed));
  }
  for (const link::Outbox::Entry& entry : session_->refusedEntries()) takeBack(entry);
  Q_EMIT draftsChanged();
}

// From the session, which keeps it for people to settle, to the page where it can be put right.
void DraftShelf::takeBack(const link::Outbox::Entry& refused) {
  const auto kind = kindOf(*refused.request);
  const auto* document = link::documentOf(*refused.request);
  if (!kind || document == nullptr) return;
  const QString id = QString::fromStdString(idOf(*document));
  Draft* draft = open(*kind, id);
  if (draft == nullptr) draft = add(*kind, nullptr, copyOf(*document));
  draft->takeBack(*refused.request, refused.refusal);
  session_->letGo(refused.number);
  Q_EMIT session_->failed(
      tr("“%1”: the server did not take it. It is kept under Kitchen, to be put right and saved again.")
          .arg(draft->name()));
}

}  // namespace suppertide
