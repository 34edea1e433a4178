#include "client/kitchen/draft_rows.h"

#include <QtCore/qset.h>

#include "client/kitchen/document_words.h"
#include "client/kitchen/field_path.h"

namespace suppertide {

using google::protobuf::Message;

void DraftRows::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) {
    connect(draft_, &Draft::changed, this, &DraftRows::refresh);
    connect(draft_, &Draft::problemsChanged, this, &DraftRows::refresh);
  }
  Q_EMIT draftChanged();
  refresh();
}

void DraftRows::setPath(const QString& path) {
  if (path == path_) return;
  path_ = path;
  Q_EMIT pathChanged();
  refresh();
}

void DraftRows::refresh() {
  std::vector<Row> next;
  const FieldPath list = draft_ == nullptr ? FieldPath() : FieldPath::in(draft_->document(), path_);
  QSet<QString> seen;
  const MemberWords words(draft_ == nullptr ? nullptr : draft_->session());
  for (int i = 0; i < list.count(); ++i) {
    Row row;
    row.path = QStringLiteral("%1[%2]").arg(path_).arg(i);
    if (const Message* member = list.member(i)) {
      row.id = QString::fromStdString(idOf(*member));
      const MemberText text = words.of(*member, draft_->document());
      row.title = text.title;
      row.detail = text.detail;
      row.symbol = text.symbol;
    }
    // By place where there is no id of its own: the row that stays keeps what has the focus.
    if (row.id.isEmpty() || seen.contains(row.id)) row.id = QStringLiteral("#%1").arg(i);
    seen.insert(row.id);
    row.problems = draft_->problemsBelow(row.path);
    next.push_back(std::move(row));
  }
  const std::size_t before = rows_.size();
  become(rows_, std::move(next));
  if (rows_.size() != before) Q_EMIT countChanged();
}

int DraftRows::add() {
  if (draft_ == nullptr) return -1;
  draft_->edit({}, [this](Message& document) {
    FieldPath list = FieldPath::inOrMake(document, path_);
    if (Message* member = list.append()) {
      fillUsual(*member, document);
    } else if (list.valid()) {
      const FieldPath last =
          FieldPath::in(document, QStringLiteral("%1[%2]").arg(path_).arg(list.count() - 1));
      list.appendNumber(last.number());
    }
  });
  return rowCount() - 1;
}

void DraftRows::remove(int row) {
  if (draft_ == nullptr) return;
  draft_->edit({}, [&](Message& document) { FieldPath::inOrMake(document, path_).remove(row); });
}

void DraftRows::moveBy(int row, int places) {
  if (draft_ == nullptr) return;
  draft_->edit({}, [&](Message& document) { FieldPath::inOrMake(document, path_).move(row, row + places); });
}

int DraftRows::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant DraftRows::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case RowPathRole:
      return row.path;
    case TitleRole:
      return row.title;
    case DetailRole:
      return row.detail;
    case SymbolRole:
      return row.symbol;
    case ProblemsRole:
      return row.problems;
    default:
      return {};
  }
}

QHash<int, QByteArray> DraftRows::roleNames() const {
  return {{RowPathRole, "rowPath"},
          {TitleRole, "title"},
          {DetailRole, "detail"},
          {SymbolRole, "symbol"},
          {ProblemsRole, "problems"}};
}

}  // namespace suppertide
