#include "client/timeline/axis_models.h"

namespace suppertide {
namespace {

// Without its month, which stands last in every language that there is: "Sat 20" of "Sat 20 June".
QString withoutMonth(const QString& day) {
  return day.section(QLatin1Char(' '), 0, -2);
}

}  // namespace

void TickModel::setMarks(const std::vector<TickMark>& marks, Instant base, const TimeWords& words) {
  std::vector<Row> rows;
  for (const TickMark& mark : marks) {
    const Instant time = instantAt(base, mark.minute);
    const QString label = mark.midnight ? words.day(time) : words.clock(time);
    rows.push_back({mark.minute, label, mark.midnight ? withoutMonth(label) : label, mark.midnight});
  }
  reuse(rows_, std::move(rows));
}

int TickModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant TickModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == MinuteRole) return row.minute;
  if (role == LabelRole || role == Qt::DisplayRole) return row.label;
  if (role == ShortLabelRole) return row.shortLabel;
  if (role == MidnightRole) return row.midnight;
  if (role == ShownRole) return row.shown;
  return {};
}

QHash<int, QByteArray> TickModel::roleNames() const {
  return {{MinuteRole, "minute"},
          {LabelRole, "label"},
          {ShortLabelRole, "shortLabel"},
          {MidnightRole, "midnight"},
          {ShownRole, "shown"}};
}

int CourseModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant CourseModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const CourseRow& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == TitleRole || role == Qt::DisplayRole) return row.title;
  if (role == SpokenRole) return row.spoken;
  if (role == MinuteRole) return row.minute;
  if (role == SubRowRole) return row.subRow;
  if (role == RoomAfterRole) return row.roomAfter;
  if (role == LateRole) return row.late;
  return {};
}

QHash<int, QByteArray> CourseModel::roleNames() const {
  return {{TitleRole, "title"},   {SpokenRole, "spoken"},       {MinuteRole, "minute"},
          {SubRowRole, "subRow"}, {RoomAfterRole, "roomAfter"}, {LateRole, "late"}};
}

}  // namespace suppertide
