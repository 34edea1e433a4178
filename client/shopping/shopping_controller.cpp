#include "client/shopping/shopping_controller.h"

#include <QtCore/qdir.h>
#include <QtCore/qsavefile.h>
#include <QtCore/qstandardpaths.h>

#include <algorithm>
#include <utility>

#include "absl/strings/str_cat.h"
#include "client/link/request_id.h"
#include "client/link/shopping_edit.h"
#include "client/words/amount_words.h"
#include "client/words/text.h"

namespace suppertide {
namespace {

constexpr int kAskAfterMs = 120;

bool holdsNothing(const v1::Amount& amount) {
  switch (amount.kind_case()) {
    case v1::Amount::kMassG:
      return amount.mass_g() <= 0;
    case v1::Amount::kVolumeMl:
      return amount.volume_ml() <= 0;
    case v1::Amount::kCount:
      return amount.count() <= 0;
    case v1::Amount::KIND_NOT_SET:
      break;
  }
  return false;
}

template <class Items, class Item>
bool holds(const Items& items, const Item& item) {
  return std::find(items.begin(), items.end(), item) != items.end();
}

// Needed, and all of it in the house.
bool isAtHand(const v1::ShoppingItem& item) {
  return item.has_at_hand() && item.at_hand().kind_case() != v1::Amount::KIND_NOT_SET && item.has_to_buy() &&
         holdsNothing(item.to_buy());
}

}  // namespace

ShoppingController::ShoppingController(QObject* parent)
    : QObject(parent),
      folder_(QStandardPaths::writableLocation(QStandardPaths::AppLocalDataLocation) +
              QStringLiteral("/shopping")),
      items_(new ShoppingModel(this)),
      fetches_(new FetchModel(this)) {
  askTimer_.setSingleShot(true);
  askTimer_.setInterval(kAskAfterMs);
  connect(&askTimer_, &QTimer::timeout, this, &ShoppingController::ask);
}

void ShoppingController::setSession(HouseholdSession* session) {
  if (session == session_) return;
  if (session_ != nullptr) session_->disconnect(this);
  session_ = session;
  if (session_ != nullptr) {
    connect(session_, &HouseholdSession::householdChanged, this, &ShoppingController::follow);
    connect(session_, &HouseholdSession::eventIdChanged, this, &ShoppingController::follow);
    connect(session_, &HouseholdSession::stateChanged, this, &ShoppingController::follow);
    connect(session_, &HouseholdSession::memberChanged, this, [this] {
      Q_EMIT mayEditChanged();
      refresh();
    });
  }
  Q_EMIT sessionChanged();
  Q_EMIT mayEditChanged();
  follow();
}

void ShoppingController::setFolder(const QString& folder) {
  if (folder == folder_) return;
  folder_ = folder;
  Q_EMIT sessionChanged();
}

void ShoppingController::setBySection(bool on) {
  bySection_ = on;
  Q_EMIT choiceChanged();
  refresh();
}

void ShoppingController::setOnlyMine(bool on) {
  onlyMine_ = on;
  Q_EMIT choiceChanged();
  refresh();
}

void ShoppingController::setOnlyOpen(bool on) {
  onlyOpen_ = on;
  Q_EMIT choiceChanged();
  refresh();
}

QStringList ShoppingController::members() const {
  QStringList names;
  if (session_ == nullptr || session_->replica() == nullptr) return names;
  for (const v1::Member& member : session_->replica()->household.members())
    names += text(member.display_name());
  return names;
}

QString ShoppingController::needless() const {
  QStringList names;
  for (const v1::Tick& tick : list_.needless_ticks()) names += text(tick.name());
  return names.join(tr(", "));
}

std::string ShoppingController::basis() const {
  const link::Replica& replica = *session_->replica();
  std::string all = absl::StrCat(session_->eventId().toStdString(), "/", replica.household.meta().revision());
  const auto add = [&](const auto& documents, const std::string& id) {
    const auto found = documents.find(id);
    absl::StrAppend(&all, "/", found == documents.end() ? 0 : found->second.meta().revision());
  };
  const std::string event = session_->eventId().toStdString();
  add(replica.events, event);
  add(replica.plans, event);
  add(replica.shoppings, event);
  std::int64_t recipes = 0;
  for (const auto& [id, recipe] : replica.recipes) recipes = std::max(recipes, recipe.meta().revision());
  absl::StrAppend(&all, "/", recipes, "/", replica.recipes.size());
  return all;
}

void ShoppingController::follow() {
  if (session_ == nullptr || session_->replica() == nullptr || session_->view() == nullptr) {
    shownEvent_.clear();
    known_ = false;
    list_.Clear();
    return refresh();
  }
  if (const std::string event = session_->eventId().toStdString(); event != shownEvent_) {
    shownEvent_ = event;
    known_ = false;
    list_.Clear();
    askedBasis_.clear();
    read();
  }
  if (session_->state() == HouseholdSession::Live && basis() != askedBasis_) askTimer_.start();
  refresh();
}

void ShoppingController::ask() {
  if (session_ == nullptr || session_->view() == nullptr || session_->state() != HouseholdSession::Live)
    return;
  askedBasis_ = basis();
  v1::MakeShoppingListRequest request;
  request.set_household_id(session_->replica()->household.id());
  request.set_event_id(shownEvent_);
  session_->ask<v1::MakeShoppingListResponse>(
      this, [request](link::Session& server) { return server.makeShoppingList(request); },
      [this, asked = askedBasis_](const absl::StatusOr<v1::MakeShoppingListResponse>& answer) {
        if (asked != askedBasis_) return;
        if (answer.ok()) {
          show(*answer);
          return keep();
        }
        trouble_ = text(std::string(answer.status().message()));
        askedBasis_.clear();
        Q_EMIT listChanged();
      });
}

void ShoppingController::show(const v1::MakeShoppingListResponse& list) {
  list_ = list;
  known_ = true;
  trouble_.clear();
  refresh();
}

QString ShoppingController::file() const {
  if (folder_.isEmpty() || session_ == nullptr || session_->replica() == nullptr) return {};
  return QStringLiteral("%1/%2-%3.list")
      .arg(folder_, text(session_->replica()->household.id()), text(shownEvent_));
}

void ShoppingController::read() {
  QFile from(file());
  if (file().isEmpty() || !from.open(QIODevice::ReadOnly)) return;
  known_ = list_.ParseFromString(from.readAll().toStdString());
  if (!known_) list_.Clear();
}

void ShoppingController::keep() const {
  if (file().isEmpty() || !QDir().mkpath(folder_)) return;
  QSaveFile to(file());
  if (!to.open(QIODevice::WriteOnly)) return;
  to.write(QByteArray::fromStdString(list_.SerializeAsString()));
  to.commit();
}

const v1::Shopping& ShoppingController::shopping() const {
  static const v1::Shopping kNothing;
  if (session_ == nullptr || session_->replica() == nullptr) return kNothing;
  const auto found = session_->replica()->shoppings.find(shownEvent_);
  return found == session_->replica()->shoppings.end() ? kNothing : found->second;
}

const v1::ShoppingItem* ShoppingController::item(const QString& itemId) const {
  const std::string id = itemId.toStdString();
  for (const v1::ShoppingItem& one : list_.items()) {
    if (one.id() == id) return &one;
  }
  return nullptr;
}

const v1::Tick* ShoppingController::tick(const std::string& itemId) const {
  for (const v1::Tick& one : shopping().ticks()) {
    if (one.item_id() == itemId) return &one;
  }
  return nullptr;
}

// A single line goes before its section, and that before "everything nobody else buys".
std::string ShoppingController::buyerOf(const v1::ShoppingItem& item) const {
  std::string ofSection, ofRest;
  for (const v1::Buyer& buyer : shopping().buyers()) {
    if (std::find(buyer.item_ids().begin(), buyer.item_ids().end(), item.id()) != buyer.item_ids().end())
      return buyer.member_id();
    if (std::find(buyer.sections().begin(), buyer.sections().end(), item.section()) != buyer.sections().end())
      ofSection = buyer.member_id();
    if (buyer.sections().empty() && buyer.item_ids().empty()) ofRest = buyer.member_id();
  }
  return ofSection.empty() ? ofRest : ofSection;
}

// In this reader's measures and language, which the server does not know.
QString ShoppingController::amountOf(const v1::ShoppingItem& item) const {
  const auto measures = session_->replica()->household.measure_system();
  if (item.packet_count() > 0)
    //: So many packets of that size.
    return tr("%1 × %2").arg(item.packet_count()).arg(AmountWords::text(item.packet_size(), measures));
  const bool all = !item.has_to_buy() || holdsNothing(item.to_buy());
  return AmountWords::toBuy(all ? item.needed() : item.to_buy(), measures);
}

ShoppingModel::Row ShoppingController::rowOf(const v1::ShoppingItem& item) const {
  ShoppingModel::Row row;
  row.itemId = text(item.id());
  row.name = text(item.name());
  row.shown = amountOf(item);
  row.section = item.section();
  row.own = item.own();
  row.atHand = isAtHand(item);
  row.waits = session_->waits(row.itemId);
  const std::string buyer = buyerOf(item);
  row.buyer = session_->nameOf(buyer);
  const auto& people = session_->replica()->household.members();
  for (int i = 0; i < people.size(); ++i)
    if (people[i].id() == buyer) row.buyerPlace = i;
  if (const v1::Tick* ticked = tick(item.id())) {
    row.ticked = true;
    row.tickedBy = session_->nameOf(ticked->member_id());
  }
  QStringList dishes;
  for (const v1::ItemUse& use : item.uses()) {
    const QString dish = session_->view()->names().dish(use.dish_id());
    if (!dishes.contains(dish)) dishes += dish;
  }
  row.detail = dishes.join(tr(", "));
  if (row.atHand) {
    row.note = tr("at hand");
  } else if (item.has_at_hand() && item.at_hand().kind_case() != v1::Amount::KIND_NOT_SET &&
             !holdsNothing(item.at_hand())) {
    row.note = tr("some is at hand");
  }
  if (row.ticked && item.has_missing() && item.missing().kind_case() != v1::Amount::KIND_NOT_SET &&
      !holdsNothing(item.missing()))
    row.note = tr("more is needed than was bought");
  if (bySection_ || item.needed_date().empty()) {
    row.group = sectionName(item.section());
    if (item.own() && !bySection_) row.group = tr("Any day");
  } else {
    const QDate day = QDate::fromString(text(item.needed_date()), Qt::ISODate);
    //: How Qt is to write a day and its date: "Saturday 20 June".
    row.group = tr("For %1").arg(QLocale().toString(day, tr("dddd d MMMM")));
  }
  return row;
}

void ShoppingController::refresh() {
  std::vector<ShoppingModel::Row> rows;
  openCount_ = 0;
  allCount_ = 0;
  if (session_ != nullptr && session_->view() != nullptr) {
    std::vector<v1::ShoppingItem> all;
    for (const v1::ShoppingItem& one : list_.items())
      if (!one.own()) all.push_back(one);
    for (const v1::OwnItem& own : shopping().own_items()) {
      v1::ShoppingItem& one = all.emplace_back();
      one.set_id(link::ownItemId(own.id()));
      one.set_name(own.name());
      one.set_section(own.section());
      one.set_own(true);
    }
    if (bySection_)
      std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
        return (a.section() ? a.section() : 99) < (b.section() ? b.section() : 99);
      });
    for (const v1::ShoppingItem& one : all) {
      ShoppingModel::Row row = rowOf(one);
      const bool open = !row.ticked && !row.atHand;
      ++allCount_;
      openCount_ += open;
      if (onlyOpen_ && !open) continue;
      if (onlyMine_ && row.buyer != session_->memberName()) continue;
      rows.push_back(std::move(row));
    }
  }
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (i == 0 || rows[i].group != rows[i - 1].group) rows[i].heading = rows[i].group;
  items_->setRows(std::move(rows));
  refreshFetches();
  Q_EMIT listChanged();
}

void ShoppingController::refreshFetches() {
  std::vector<FetchModel::Row> rows;
  const PlanView* view = session_ == nullptr ? nullptr : session_->view().get();
  const auto placeName = [](v1::PlaceKind kind) {
    switch (kind) {
      case v1::PLACE_KIND_FREEZER:
        return tr("freezer");
      case v1::PLACE_KIND_FRIDGE:
        return tr("fridge");
      case v1::PLACE_KIND_CELLAR:
        return tr("cellar");
      default:
        return tr("counter");
    }
  };
  for (int i = 0; view != nullptr && i < list_.fetches_size(); ++i) {
    const v1::Fetch& fetch = list_.fetches(i);
    FetchModel::Row row;
    row.id = QStringLiteral("%1/%2/%3").arg(text(fetch.dish_id()), text(fetch.name())).arg(i);
    row.stepId = text(fetch.step_id());
    row.what = text(fetch.name());
    row.way = tr("from the %1 to the %2").arg(placeName(fetch.from()), placeName(fetch.to()));
    if (fetch.has_take_out_time()) {
      row.day = view->words().longDay(toInstant(fetch.take_out_time()));
      row.when = view->words().clock(toInstant(fetch.take_out_time()));
    } else {
      row.day = view->plan() != nullptr ? tr("Dishes that the plan leaves out") : tr("Once there is a plan");
      row.when = tr("%1 ahead").arg(view->words().length(toMinutes(fetch.lead_duration())));
    }
    row.why = tr("for %1").arg(view->names().dish(fetch.dish_id()));
    if (const v1::PlannedStep* step = view->step(fetch.for_step_id()))
      row.why = tr("for “%1” (%2)").arg(text(step->title()), view->names().dish(fetch.dish_id()));
    row.cook =
        fetch.cook_member_id().empty() ? tr("whoever is there") : session_->nameOf(fetch.cook_member_id());
    if (const v1::PlannedStep* step = view->step(fetch.step_id())) row.done = view->isDone(*step);
    rows.push_back(std::move(row));
  }
  QString day;
  for (FetchModel::Row& row : rows) {
    if (row.day == day)
      row.day.clear();
    else
      day = row.day;
  }
  fetches_->setRows(std::move(rows));
}

void ShoppingController::send(v1::ShoppingEdit edit) {
  if (session_ == nullptr || !mayEdit()) return;
  v1::EditShoppingRequest request;
  request.set_event_id(shownEvent_);
  *request.add_edits() = std::move(edit);
  session_->send(request);
}

void ShoppingController::toggle(const QString& itemId) {
  v1::ShoppingEdit edit;
  if (tick(itemId.toStdString()) != nullptr)
    edit.set_untick_item_id(itemId.toStdString());
  else
    edit.mutable_tick()->set_item_id(itemId.toStdString());
  send(std::move(edit));
}

void ShoppingController::setAtHand(const QString& itemId, bool atHand) {
  const v1::ShoppingItem* one = item(itemId);
  if (one == nullptr) return;
  v1::ShoppingEdit edit;
  if (!atHand) {
    edit.set_not_at_hand_name(one->name());
  } else {
    edit.mutable_at_hand()->set_name(one->name());
    *edit.mutable_at_hand()->mutable_amount() = one->needed();
  }
  send(std::move(edit));
}

void ShoppingController::sendBuyer(const std::string& memberId,
                                   const std::function<void(v1::Buyer&)>& change) {
  v1::Buyer buyer;
  buyer.set_member_id(memberId);
  for (const v1::Buyer& one : shopping().buyers())
    if (one.member_id() == memberId) buyer = one;
  change(buyer);
  v1::ShoppingEdit edit;
  // Without sections and lines a buyer is who takes everything else.
  if (buyer.sections().empty() && buyer.item_ids().empty())
    edit.set_no_buyer_member_id(memberId);
  else
    *edit.mutable_buyer() = std::move(buyer);
  send(std::move(edit));
}

void ShoppingController::setBuyer(const QString& itemId, int member) {
  const v1::ShoppingItem* one = item(itemId);
  if (one == nullptr) return;
  const std::string id = one->id();
  const auto& members = session_->replica()->household.members();
  if (member >= 0 && member < members.size())
    return sendBuyer(members[member].id(), [&](v1::Buyer& buyer) {
      if (!holds(buyer.item_ids(), id)) buyer.add_item_ids(id);
    });
  for (const v1::Buyer& buyer : shopping().buyers()) {
    if (std::find(buyer.item_ids().begin(), buyer.item_ids().end(), id) == buyer.item_ids().end()) continue;
    return sendBuyer(buyer.member_id(), [&](v1::Buyer& changed) {
      auto& ids = *changed.mutable_item_ids();
      ids.erase(std::remove(ids.begin(), ids.end(), id), ids.end());
    });
  }
}

void ShoppingController::setSectionBuyer(int section, int member) {
  const auto& members = session_->replica()->household.members();
  const auto wanted = static_cast<v1::ShopSection>(section == 0 ? v1::SHOP_SECTION_OTHER : section);
  if (member >= 0 && member < members.size())
    return sendBuyer(members[member].id(), [&](v1::Buyer& buyer) {
      if (!holds(buyer.sections(), wanted)) buyer.add_sections(wanted);
    });
}

void ShoppingController::addOwn(const QString& name) {
  if (name.trimmed().isEmpty()) return;
  v1::ShoppingEdit edit;
  v1::OwnItem& own = *edit.mutable_own_item();
  own.set_id(link::newRequestId());
  own.set_name(name.trimmed().toStdString());
  own.set_section(v1::SHOP_SECTION_OTHER);
  send(std::move(edit));
}

void ShoppingController::removeOwn(const QString& itemId) {
  for (const v1::OwnItem& own : shopping().own_items()) {
    if (link::ownItemId(own.id()) != itemId.toStdString()) continue;
    v1::ShoppingEdit edit;
    edit.set_no_own_item_id(own.id());
    return send(std::move(edit));
  }
}

void ShoppingController::toggleFetch(int row) {
  if (session_ == nullptr || session_->view() == nullptr || row < 0 || row >= fetches_->rowCount()) return;
  const FetchModel::Row& fetch = fetches_->rows()[static_cast<std::size_t>(row)];
  const v1::PlannedStep* step = session_->view()->step(fetch.stepId.toStdString());
  if (step == nullptr) return;
  v1::Report report;
  report.set_dish_id(step->dish_id());
  report.set_step_id(step->step_id());
  if (!fetch.done) {
    report.set_finished(true);
    return session_->report(std::move(report));
  }
  const auto found = session_->replica()->progresses.find(shownEvent_);
  if (found == session_->replica()->progresses.end()) return;
  for (const v1::Report& told : found->second.reports()) {
    if (told.finished() && told.dish_id() == step->dish_id() && told.step_id() == step->step_id())
      report.set_undone_report_id(told.id());
  }
  if (!report.undone_report_id().empty()) session_->report(std::move(report));
}

}  // namespace suppertide
