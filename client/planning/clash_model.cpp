#include "client/planning/clash_model.h"

#include <algorithm>

#include "client/words/rack_words.h"
#include "client/words/wish_words.h"

namespace suppertide {

void ClashModel::show(const PlanView& view, const google::protobuf::RepeatedPtrField<v1::Clash>& clashes) {
  const WishWords words(view);
  std::vector<Row> rows;
  const auto add = [&](Row row) {
    const bool told =
        std::any_of(rows.begin(), rows.end(), [&](const Row& one) { return one.key() == row.key(); });
    if (!told) rows.push_back(std::move(row));
  };
  if (view.plan() != nullptr) {
    const bool proven = view.plan()->quality().proven_tier_count() > 0;
    for (const v1::Unserved& left : view.plan()->unserved())
      add({words.unserved(left, proven), {}, {}, false});
  }
  const auto& told = clashes.empty() && view.plan() != nullptr ? view.plan()->clashes() : clashes;
  for (const v1::Clash& clash : told) {
    QStringList further = words.keptRules(clash);
    if (clash.racks_unproven()) further << RackWords::mayFit();
    const QString rules = further.join(QLatin1Char('\n'));
    if (clash.wishes_size() < 2) {
      add({words.sentence(clash), {}, rules, false});
      continue;
    }
    add({tr("These cannot all be had:"), words.wishes(clash).join(QLatin1Char('\n')), rules,
         clash.smallest()});
  }
  const std::size_t before = rows_.size();
  become(rows_, std::move(rows));
  if (rows_.size() != before) Q_EMIT countChanged();
}

int ClashModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant ClashModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == HeadlineRole || role == Qt::DisplayRole) return row.headline;
  if (role == WishesRole) return row.wishes;
  if (role == RulesRole) return row.rules;
  if (role == IsWishesRole) return row.isWishes;
  return {};
}

QHash<int, QByteArray> ClashModel::roleNames() const {
  return {
      {HeadlineRole, "headline"}, {WishesRole, "wishes"}, {RulesRole, "rules"}, {IsWishesRole, "isWishes"}};
}

}  // namespace suppertide
