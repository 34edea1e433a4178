// Keeps every draft until it is saved or thrown away: while other screens are shown, and on disk
// for the next start.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qpointer.h>

#include <map>
#include <utility>
#include <vector>

#include "client/kitchen/draft.h"

namespace suppertide {

class DraftShelf : public QObject {
  Q_OBJECT
 public:
  // `folder`: where changed drafts are kept; empty: nowhere. `session` outlives it.
  DraftShelf(HouseholdSession* session, const QString& folder, QObject* parent = nullptr);

  // The draft of a stored document, begun if there is none; null when there is no such document.
  Draft* open(Document::Kind kind, const QString& id);
  // Of a new document.
  Draft* begin(Document::Kind kind);
  void drop(Draft* draft);
  // Those with changes, of one kind.
  std::vector<Draft*> changed(Document::Kind kind) const;

 Q_SIGNALS:
  void draftsChanged();
  // Nothing was changed here and the document is deleted: `draft` goes.
  void gone(Draft* draft);

 private:
  using Key = std::pair<int, QString>;
  Draft* add(Document::Kind kind, DocumentPtr base, DocumentPtr mine);
  void followHousehold();
  void restore();
  void takeBack(const link::Outbox::Entry& refused);
  void keep(const Draft& draft) const;
  void forget(const Draft& draft) const;
  QString fileOf(const Draft& draft) const;
  QString folderNow() const;

  QPointer<HouseholdSession> session_;
  QString folder_;
  bool restored_ = false;
  std::map<Key, Draft*> drafts_;
};

}  // namespace suppertide
