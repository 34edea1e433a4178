#include "client/session/refused_model.h"

#include "client/session/request_words.h"

namespace suppertide {

void RefusedModel::setEntries(const std::vector<link::Outbox::Entry>& entries, const link::Replica& replica) {
  std::vector<Row> rows;
  for (const link::Outbox::Entry& entry : entries) {
    if (!entry.refused || entry.request == nullptr) continue;
    rows.push_back({entry.number, RequestWords::of(*entry.request, replica), RequestWords::why(entry.refusal),
                    entry.refusal.code() == absl::StatusCode::kAborted});
  }
  const std::size_t before = rows_.size();
  become(rows_, std::move(rows));
  if (rows_.size() != before) Q_EMIT countChanged();
}

int RefusedModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant RefusedModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == NumberRole) return row.number;
  if (role == WhatRole || role == Qt::DisplayRole) return row.what;
  if (role == WhyRole) return row.why;
  if (role == ConflictRole) return row.conflict;
  return {};
}

QHash<int, QByteArray> RefusedModel::roleNames() const {
  return {{NumberRole, "number"}, {WhatRole, "what"}, {WhyRole, "why"}, {ConflictRole, "conflict"}};
}

}  // namespace suppertide
