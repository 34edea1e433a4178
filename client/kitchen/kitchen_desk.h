// Where recipes, kitchens and starters are looked through and changed: which is open, and
// what becomes of it.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qpointer.h>
#include <QtQml/qqmlregistration.h>

#include "client/kitchen/draft_shelf.h"
#include "client/kitchen/library_model.h"

namespace suppertide {

class KitchenDesk : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::HouseholdSession* session READ session WRITE setSession NOTIFY sessionChanged
                 REQUIRED FINAL)
  // Where drafts are kept for the next start; empty: nowhere.
  Q_PROPERTY(QString draftFolder READ draftFolder WRITE setDraftFolder NOTIFY sessionChanged FINAL)
  Q_PROPERTY(suppertide::Document::Kind kind READ kind WRITE setKind NOTIFY kindChanged FINAL)
  Q_PROPERTY(QString filter READ filter WRITE setFilter NOTIFY kindChanged FINAL)
  Q_PROPERTY(suppertide::LibraryModel* library READ library CONSTANT FINAL)
  // What is open; null: nothing.
  Q_PROPERTY(suppertide::Draft* draft READ draft NOTIFY draftChanged FINAL)
  Q_PROPERTY(QString openId READ openId NOTIFY draftChanged FINAL)
  // Only hosts change things here.
  Q_PROPERTY(bool mayEdit READ mayEdit NOTIFY mayEditChanged FINAL)
  // What was deleted last and can still be had back; empty: nothing.
  Q_PROPERTY(QString removedName READ removedName NOTIFY removedChanged FINAL)
  // Drafts of all kinds that wait to be saved.
  Q_PROPERTY(int changedCount READ changedCount NOTIFY listChanged FINAL)
 public:
  explicit KitchenDesk(QObject* parent = nullptr);

  HouseholdSession* session() const { return session_; }
  void setSession(HouseholdSession* session);
  QString draftFolder() const { return draftFolder_; }
  void setDraftFolder(const QString& folder);
  Document::Kind kind() const { return kind_; }
  void setKind(Document::Kind kind);
  QString filter() const { return filter_; }
  void setFilter(const QString& filter);
  LibraryModel* library() const { return library_; }
  Draft* draft() const { return draft_; }
  QString openId() const { return draft_ == nullptr ? QString() : draft_->documentId(); }
  bool mayEdit() const { return session_ != nullptr && session_->mayHost(); }
  QString removedName() const { return QString::fromStdString(removed_ ? nameOf(*removed_) : ""); }
  int changedCount() const;

  Q_INVOKABLE void open(const QString& id);
  // Of whatever kind it is. False: the household has no such document.
  bool find(const QString& id);
  Q_INVOKABLE void begin();
  Q_INVOKABLE void close();
  // Throws the changes of what is open away; something new is gone then, too.
  Q_INVOKABLE void discard();
  Q_INVOKABLE void remove();
  Q_INVOKABLE void undoRemove();

  static QString usualDraftFolder();

 Q_SIGNALS:
  void sessionChanged();
  void kindChanged();
  void draftChanged();
  void mayEditChanged();
  void removedChanged();
  void listChanged();

 private:
  void openShelf();
  void show(Draft* draft);
  void refresh();
  void removedNow(DocumentPtr document);

  QPointer<HouseholdSession> session_;
  QString draftFolder_ = usualDraftFolder();
  Document::Kind kind_ = Document::Recipe;
  QString filter_;
  LibraryModel* library_;
  DraftShelf* shelf_ = nullptr;
  QPointer<Draft> draft_;
  DocumentPtr removed_;
  Document::Kind removedKind_ = Document::Recipe;
};

}  // namespace suppertide
