#include "client/shopping/shopping_model.h"

namespace suppertide {

QString sectionName(v1::ShopSection section) {
  switch (section) {
    case v1::SHOP_SECTION_PRODUCE:
      return ShoppingModel::tr("Fruit and vegetables");
    case v1::SHOP_SECTION_MEAT_FISH:
      return ShoppingModel::tr("Meat and fish");
    case v1::SHOP_SECTION_DAIRY_EGGS:
      return ShoppingModel::tr("Milk, cheese, eggs");
    case v1::SHOP_SECTION_BAKING:
      return ShoppingModel::tr("Flour and baking");
    case v1::SHOP_SECTION_DRY_GOODS:
      return ShoppingModel::tr("Dry goods");
    case v1::SHOP_SECTION_SPICES:
      return ShoppingModel::tr("Spices");
    case v1::SHOP_SECTION_FROZEN:
      return ShoppingModel::tr("Frozen");
    case v1::SHOP_SECTION_DRINKS:
      return ShoppingModel::tr("Drinks");
    default:
      return ShoppingModel::tr("Everything else");
  }
}

int ShoppingModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant ShoppingModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case ItemIdRole:
      return row.itemId;
    case NameRole:
      return row.name;
    case ShownRole:
      return row.shown;
    case DetailRole:
      return row.detail;
    case NoteRole:
      return row.note;
    case GroupRole:
      return row.group;
    case HeadingRole:
      return row.heading;
    case BuyerRole:
      return row.buyer;
    case BuyerPlaceRole:
      return row.buyerPlace;
    case SectionRole:
      return row.section;
    case TickedRole:
      return row.ticked;
    case TickedByRole:
      return row.tickedBy;
    case OwnRole:
      return row.own;
    case AtHandRole:
      return row.atHand;
    case WaitsRole:
      return row.waits;
    default:
      return {};
  }
}

QHash<int, QByteArray> ShoppingModel::roleNames() const {
  return {{ItemIdRole, "itemId"},
          {NameRole, "name"},
          {ShownRole, "shown"},
          {DetailRole, "detail"},
          {NoteRole, "note"},
          {GroupRole, "group"},
          {HeadingRole, "heading"},
          {BuyerRole, "buyer"},
          {BuyerPlaceRole, "buyerPlace"},
          {SectionRole, "shopSection"},
          {TickedRole, "ticked"},
          {TickedByRole, "tickedBy"},
          {OwnRole, "own"},
          {AtHandRole, "atHand"},
          {WaitsRole, "waits"}};
}

int FetchModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant FetchModel::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case DayRole:
      return row.day;
    case WhenRole:
      return row.when;
    case WhatRole:
      return row.what;
    case WayRole:
      return row.way;
    case WhyRole:
      return row.why;
    case CookRole:
      return row.cook;
    case DoneRole:
      return row.done;
    case TickableRole:
      return !row.stepId.isEmpty();
    default:
      return {};
  }
}

QHash<int, QByteArray> FetchModel::roleNames() const {
  return {{DayRole, "day"}, {WhenRole, "when"}, {WhatRole, "what"}, {WayRole, "way"},
          {WhyRole, "why"}, {CookRole, "cook"}, {DoneRole, "done"}, {TickableRole, "tickable"}};
}

}  // namespace suppertide
