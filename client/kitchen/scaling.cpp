#include "client/kitchen/scaling.h"

#include <cmath>

#include "client/kitchen/ask_write.h"
#include "client/kitchen/units.h"
#include "client/words/time_words.h"

namespace suppertide {
namespace {
constexpr int kScaleAfterMs = 200;
constexpr double kSamePart = 0.005;
}  // namespace

ScaledLines::ScaledLines(QObject* parent) : DifferenceModel(parent) {
  timer_.setSingleShot(true);
  timer_.setInterval(kScaleAfterMs);
  connect(&timer_, &QTimer::timeout, this, &ScaledLines::ask);
}

void ScaledLines::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) connect(draft_, &Draft::changed, &timer_, qOverload<>(&QTimer::start));
  Q_EMIT draftChanged();
  timer_.start();
}

void ScaledLines::setServings(double servings) {
  if (servings == servings_) return;
  servings_ = servings;
  Q_EMIT servingsChanged();
  timer_.start();
}

void ScaledLines::ask() {
  const auto* recipe = draft_ == nullptr ? nullptr : dynamic_cast<const v1::Recipe*>(&draft_->document());
  HouseholdSession* session = draft_ == nullptr ? nullptr : draft_->session();
  if (recipe == nullptr || session == nullptr || servings_ <= 0) return;
  if (session->state() != HouseholdSession::Live) {
    trouble_ = tr("Another size is worked out by the server, and there is no connection.");
    Q_EMIT answered();
    return;
  }
  v1::ScaleRecipeRequest request;
  request.set_household_id(householdIdOf(*session));
  request.set_recipe_id(recipe->id());
  *request.mutable_recipe() = *recipe;
  request.set_serving_count(servings_);
  if (session->replica()->kitchens.size() == 1)
    request.set_kitchen_id(session->replica()->kitchens.begin()->first);
  session->ask<v1::ScaledRecipe>(
      this, [request](link::Session& server) { return server.scaleRecipe(request); },
      [this, asked = servings_](const absl::StatusOr<v1::ScaledRecipe>& answer) {
        if (asked != servings_) return;
        if (answer.ok()) return show(*answer);
        trouble_ = QString::fromStdString(std::string(answer.status().message()));
        Q_EMIT answered();
      });
}

QString ScaledLines::bakeText(const v1::ScaledBake& bake) const {
  const TimeWords times;
  const double least = toMinutes(bake.least_duration());
  const double most = toMinutes(bake.most_duration());
  QString text =
      tr("%1: %2 to %3").arg(QString::fromStdString(bake.title()), times.length(least), times.length(most));
  for (const v1::OvenLoads& loads : bake.ovens()) {
    QString oven = QString::fromStdString(loads.oven_id());
    for (const auto& [id, kitchen] : draft_->session()->replica()->kitchens)
      for (const v1::Oven& one : kitchen.ovens())
        if (one.id() == loads.oven_id()) oven = QString::fromStdString(one.display_name());
    text += loads.load_count() == 0 ? tr("; does not fit into %1").arg(oven)
                                    : tr("; %1: ").arg(oven) + tr("%n loads", "", loads.load_count());
    if (loads.fewer_may_do()) text += tr(", perhaps fewer: try it with the cold pans first");
  }
  return text;
}

void ScaledLines::show(const v1::ScaledRecipe& scaled) {
  trouble_.clear();
  headline_ = tr("%1 times the recipe").arg(numberText(scaled.factor()));
  if (scaled.piece_count() > 0)
    headline_ += tr(", ") + tr("%n pieces of ", "", scaled.piece_count()) + massText(scaled.piece_mass_g());
  std::vector<Row> next;
  for (const v1::ScaledLine& line : scaled.lines()) {
    QString note = QString::fromStdString(line.note());
    const bool rounded =
        line.exact().has_count() && std::abs(line.exact().count() - line.rounded().count()) > kSamePart;
    if (rounded) {
      if (!note.isEmpty()) note += tr(", ");
      note += tr("by the numbers %1").arg(numberText(line.exact().count()));
      if (line.far_off()) note += tr(", far off: taste, or choose another number of guests");
    }
    next.push_back({QString::number(next.size()), QString::fromStdString(line.name()),
                    QString::fromStdString(line.shown()), note});
  }
  become(rows_, std::move(next));
  bakes_.clear();
  for (const v1::ScaledBake& bake : scaled.bakes()) bakes_ += bakeText(bake);
  Q_EMIT answered();
}

int ScaledLines::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant ScaledLines::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case NameRole:
      return row.name;
    case ShownRole:
      return row.shown;
    case NoteRole:
      return row.note;
    default:
      return {};
  }
}

QHash<int, QByteArray> ScaledLines::roleNames() const {
  return {{NameRole, "name"}, {ShownRole, "shown"}, {NoteRole, "note"}};
}

}  // namespace suppertide
