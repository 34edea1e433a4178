// The shopping of the shown event: what to buy, who does, what is in the basket; and what to
// take out of fridge and freezer when.
//
// The lines are made by the server from menu and plan, and asked for again when one of these
// changes. Ticks, buyers and lines of the household's own come from the shared document, so they
// are live, and right without a connection, too. The last list is kept on disk for the shop.
#pragma once

#include <QtCore/qobject.h>
#include <QtCore/qpointer.h>
#include <QtCore/qtimer.h>

#include "client/link/session.h"
#include "client/session/household_session.h"
#include "client/shopping/shopping_model.h"

namespace suppertide {

class ShoppingController : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(suppertide::HouseholdSession* session READ session WRITE setSession NOTIFY sessionChanged
                 REQUIRED FINAL)
  Q_PROPERTY(QString folder READ folder WRITE setFolder NOTIFY sessionChanged FINAL)
  Q_PROPERTY(suppertide::ShoppingModel* items READ items CONSTANT FINAL)
  Q_PROPERTY(suppertide::FetchModel* fetches READ fetches CONSTANT FINAL)
  // By section of the shop instead of by day.
  Q_PROPERTY(bool bySection READ bySection WRITE setBySection NOTIFY choiceChanged FINAL)
  // Only what this person buys.
  Q_PROPERTY(bool onlyMine READ onlyMine WRITE setOnlyMine NOTIFY choiceChanged FINAL)
  // Without what is in the basket or at hand.
  Q_PROPERTY(bool onlyOpen READ onlyOpen WRITE setOnlyOpen NOTIFY choiceChanged FINAL)
  Q_PROPERTY(int openCount READ openCount NOTIFY listChanged FINAL)
  Q_PROPERTY(int allCount READ allCount NOTIFY listChanged FINAL)
  // A list was received, now or before.
  Q_PROPERTY(bool known READ known NOTIFY listChanged FINAL)
  Q_PROPERTY(QString trouble READ trouble NOTIFY listChanged FINAL)
  // Cooks and hosts tick and change.
  Q_PROPERTY(bool mayEdit READ mayEdit NOTIFY mayEditChanged FINAL)
  // Who may buy: the household's members.
  Q_PROPERTY(QList<QString> members READ members NOTIFY listChanged FINAL)
  // What was bought and is no longer on the list, in words.
  Q_PROPERTY(QString needless READ needless NOTIFY listChanged FINAL)
 public:
  explicit ShoppingController(QObject* parent = nullptr);

  HouseholdSession* session() const { return session_; }
  void setSession(HouseholdSession* session);
  QString folder() const { return folder_; }
  void setFolder(const QString& folder);
  ShoppingModel* items() const { return items_; }
  FetchModel* fetches() const { return fetches_; }
  bool bySection() const { return bySection_; }
  void setBySection(bool on);
  bool onlyMine() const { return onlyMine_; }
  void setOnlyMine(bool on);
  bool onlyOpen() const { return onlyOpen_; }
  void setOnlyOpen(bool on);
  int openCount() const { return openCount_; }
  int allCount() const { return allCount_; }
  bool known() const { return known_; }
  QString trouble() const { return trouble_; }
  bool mayEdit() const { return session_ != nullptr && session_->mayReport(); }
  QStringList members() const;
  QString needless() const;

  Q_INVOKABLE void toggle(const QString& itemId);
  // All of the line is in the house already, or it is not after all.
  Q_INVOKABLE void setAtHand(const QString& itemId, bool atHand);
  // `member`: a place in members(); -1: nobody.
  Q_INVOKABLE void setBuyer(const QString& itemId, int member);
  Q_INVOKABLE void setSectionBuyer(int section, int member);
  Q_INVOKABLE void addOwn(const QString& name);
  Q_INVOKABLE void removeOwn(const QString& itemId);
  // Takes the fetch as done, or takes that back.
  Q_INVOKABLE void toggleFetch(int row);

  // As the server answers; for tests.
  void show(const v1::MakeShoppingListResponse& list);

 Q_SIGNALS:
  void sessionChanged();
  void choiceChanged();
  void listChanged();
  void mayEditChanged();

 private:
  void follow();
  void ask();
  void refresh();
  void refreshFetches();
  void read();
  void keep() const;
  QString file() const;
  std::string basis() const;  // what the list is made from, to see whether it must be asked for again
  const v1::Shopping& shopping() const;
  const v1::ShoppingItem* item(const QString& itemId) const;
  const v1::Tick* tick(const std::string& itemId) const;
  std::string buyerOf(const v1::ShoppingItem& item) const;
  QString amountOf(const v1::ShoppingItem& item) const;
  ShoppingModel::Row rowOf(const v1::ShoppingItem& item) const;
  void send(v1::ShoppingEdit edit);
  void sendBuyer(const std::string& memberId, const std::function<void(v1::Buyer&)>& change);

  QPointer<HouseholdSession> session_;
  QString folder_;
  ShoppingModel* items_;
  FetchModel* fetches_;
  v1::MakeShoppingListResponse list_;
  std::string shownEvent_, askedBasis_;
  QTimer askTimer_;
  bool bySection_ = false, onlyMine_ = false, onlyOpen_ = false;
  bool known_ = false;
  int openCount_ = 0, allCount_ = 0;
  QString trouble_;
};

}  // namespace suppertide
