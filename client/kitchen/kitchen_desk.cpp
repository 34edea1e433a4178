#include "client/kitchen/kitchen_desk.h"

#include <QtCore/qstandardpaths.h>

#include <set>

#include "client/ui/symbol.h"

namespace suppertide {
namespace {

using google::protobuf::Message;

template <class Documents, class Each>
void forAll(const Documents& documents, const Each& each) {
  for (const auto& [id, document] : documents) each(document);
}

}  // namespace

KitchenDesk::KitchenDesk(QObject* parent) : QObject(parent), library_(new LibraryModel(this)) {}

QString KitchenDesk::usualDraftFolder() {
  return QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation) + QStringLiteral("/drafts");
}

void KitchenDesk::setSession(HouseholdSession* session) {
  if (session == session_) return;
  if (session_ != nullptr) session_->disconnect(this);
  session_ = session;
  if (session_ != nullptr) {
    connect(session_, &HouseholdSession::householdChanged, this, &KitchenDesk::refresh);
    connect(session_, &HouseholdSession::memberChanged, this, &KitchenDesk::mayEditChanged);
  }
  openShelf();
  Q_EMIT sessionChanged();
  Q_EMIT mayEditChanged();
}

void KitchenDesk::setDraftFolder(const QString& folder) {
  if (folder == draftFolder_) return;
  draftFolder_ = folder;
  openShelf();
  Q_EMIT sessionChanged();
}

void KitchenDesk::openShelf() {
  show(nullptr);
  delete shelf_;
  shelf_ = session_ == nullptr ? nullptr : new DraftShelf(session_, draftFolder_, this);
  if (shelf_ != nullptr) {
    connect(shelf_, &DraftShelf::draftsChanged, this, &KitchenDesk::refresh);
    connect(shelf_, &DraftShelf::gone, this, [this](Draft* draft) {
      if (draft == draft_) show(nullptr);
    });
  }
  refresh();
}

void KitchenDesk::setKind(Document::Kind kind) {
  if (kind == kind_) return;
  kind_ = kind;
  filter_.clear();
  show(nullptr);
  refresh();
  Q_EMIT kindChanged();
}

void KitchenDesk::setFilter(const QString& filter) {
  if (filter == filter_) return;
  filter_ = filter;
  refresh();
  Q_EMIT kindChanged();
}

int KitchenDesk::changedCount() const {
  if (shelf_ == nullptr) return 0;
  std::size_t count = 0;
  for (const auto kind : {Document::Recipe, Document::Kitchen, Document::Starter})
    count += shelf_->changed(kind).size();
  return static_cast<int>(count);
}

void KitchenDesk::refresh() {
  std::vector<LibraryModel::Row> rows;
  std::set<QString> seen;
  const auto add = [&](const Message& document, bool changed) {
    LibraryModel::Row row;
    row.id = QString::fromStdString(idOf(document));
    if (!seen.insert(row.id).second) return;
    row.name = QString::fromStdString(nameOf(document));
    if (row.name.isEmpty()) row.name = tr("Without a name yet");
    row.changed = changed;
    row.symbol = Symbol::Jar;
    if (const auto* recipe = dynamic_cast<const v1::Recipe*>(&document)) {
      row.symbol = recipe->has_formula() ? Symbol::Dough : Symbol::Pot;
      row.detail = tr("for %n, ", "", recipe->serving_count()) + tr("%n steps", "", recipe->steps_size());
    } else if (const auto* kitchen = dynamic_cast<const v1::Kitchen*>(&document)) {
      row.symbol = Symbol::Oven;
      row.detail =
          tr("%n ovens, ", "", kitchen->ovens_size()) + tr("%n burners", "", kitchen->burner_count());
    } else if (const auto* starter = dynamic_cast<const v1::Starter*>(&document)) {
      row.detail =
          tr("%1 % hydration").arg(starter->hydration_percent() > 0 ? starter->hydration_percent() : 100);
    }
    rows.push_back(std::move(row));
  };
  if (shelf_ != nullptr) {
    for (const Draft* draft : shelf_->changed(kind_)) add(draft->document(), true);
  }
  if (session_ != nullptr && session_->replica() != nullptr) {
    const link::Replica& replica = *session_->replica();
    const auto stored = [&](const Message& document) { add(document, false); };
    if (kind_ == Document::Recipe) forAll(replica.recipes, stored);
    if (kind_ == Document::Kitchen) forAll(replica.kitchens, stored);
    if (kind_ == Document::Starter) forAll(replica.starters, stored);
  }
  library_->setRows(std::move(rows), filter_);
  const bool isBack = removed_ != nullptr && session_ != nullptr && session_->replica() != nullptr &&
                      findDocument(*session_->replica(), removedKind_, idOf(*removed_)) != nullptr;
  if (isBack) removedNow(nullptr);
  Q_EMIT listChanged();
}

void KitchenDesk::show(Draft* draft) {
  if (draft == draft_) return;
  // By way of nothing: an editor is of one document for all its life.
  if (draft_ != nullptr && draft != nullptr) {
    draft_ = nullptr;
    Q_EMIT draftChanged();
  }
  draft_ = draft;
  Q_EMIT draftChanged();
}

void KitchenDesk::open(const QString& id) {
  if (shelf_ == nullptr) return;
  show(shelf_->open(kind_, id));
}

bool KitchenDesk::find(const QString& id) {
  if (session_ == nullptr || session_->replica() == nullptr) return false;
  for (const auto kind : {Document::Recipe, Document::Kitchen, Document::Starter}) {
    if (findDocument(*session_->replica(), kind, id.toStdString()) == nullptr) continue;
    setKind(kind);
    open(id);
    return true;
  }
  return false;
}

void KitchenDesk::begin() {
  if (shelf_ == nullptr || !mayEdit()) return;
  show(shelf_->begin(kind_));
}

void KitchenDesk::close() {
  show(nullptr);
}

void KitchenDesk::discard() {
  if (draft_ == nullptr) return;
  Draft* draft = draft_;
  if (!draft->fresh()) return draft->revert();
  show(nullptr);
  shelf_->drop(draft);
}

void KitchenDesk::remove() {
  if (draft_ == nullptr || !mayEdit()) return;
  if (draft_->fresh()) return discard();
  const Message& stored = *draft_->base();
  DocumentPtr document(stored.New());
  document->CopyFrom(stored);
  const Document::Kind kind = draft_->kind();
  Draft* draft = draft_;
  if (!session_->send(*deleteRequest(kind, idOf(stored), etagOf(stored)))) return;
  show(nullptr);
  shelf_->drop(draft);
  removedKind_ = kind;
  removedNow(std::move(document));
}

void KitchenDesk::removedNow(DocumentPtr document) {
  removed_ = std::move(document);
  Q_EMIT removedChanged();
}

void KitchenDesk::undoRemove() {
  if (removed_ == nullptr) return;
  const DocumentPtr document = std::move(removed_);
  removedNow(nullptr);
  session_->send(*createRequest(removedKind_, *document, false));
}

}  // namespace suppertide
