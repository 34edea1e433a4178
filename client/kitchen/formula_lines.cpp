#include "client/kitchen/formula_lines.h"

#include <utility>

#include "client/kitchen/units.h"

namespace suppertide {
namespace {

void addLineTo(v1::BreadFormula& formula, const char* name, v1::FormulaRole role, double percent) {
  v1::FormulaLine& line = *formula.add_lines();
  line.set_name(name);
  line.set_role(role);
  line.set_percent(percent);
}

}  // namespace

void FormulaLines::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  answer_.Clear();
  shownFor_.clear();
  edits_.clear();
  amount_.Clear();
  trouble_.clear();
  if (draft_ != nullptr) {
    connect(draft_, &Draft::changed, this, &FormulaLines::followDraft);
    if (draft_->session() != nullptr)
      connect(draft_->session(), &HouseholdSession::stateChanged, this, &FormulaLines::followDraft,
              Qt::UniqueConnection);
  }
  Q_EMIT draftChanged();
  followDraft();
}

const v1::Recipe* FormulaLines::recipe() const {
  return draft_ == nullptr ? nullptr : dynamic_cast<const v1::Recipe*>(&draft_->document());
}

bool FormulaLines::bread() const {
  return recipe() != nullptr && recipe()->has_formula();
}

double FormulaLines::prefermentedGrams() const {
  return answer_.flour_mass_g() * answer_.prefermented_flour_percent() / 100;
}

QString FormulaLines::parts() const {
  QStringList all;
  for (const v1::DoughPart& part : answer_.parts()) {
    QStringList lines;
    for (const v1::DoughPartLine& line : part.lines())
      lines += tr("%1 %2").arg(massText(line.mass_g()), QString::fromStdString(line.name()));
    all += tr("%1: %2").arg(QString::fromStdString(part.name()), lines.join(tr(", ")));
  }
  return all.join(QLatin1Char('\n'));
}

// The draft may have changed in other ways: undone, taken over from others.
void FormulaLines::followDraft() {
  refresh();
  if (bread() && recipe()->formula().SerializeAsString() != shownFor_) ask();
}

std::string FormulaLines::lineName(int row) const {
  return bread() && row >= 0 && row < recipe()->formula().lines_size() ? recipe()->formula().lines(row).name()
                                                                       : std::string();
}

void FormulaLines::setPercent(int row, double percent) {
  v1::FormulaEdit edit;
  edit.set_line_name(lineName(row));
  edit.set_percent(percent);
  add(std::move(edit));
}

void FormulaLines::setGrams(int row, double grams) {
  v1::FormulaEdit edit;
  edit.set_line_name(lineName(row));
  edit.set_mass_g(grams);
  add(std::move(edit));
}

void FormulaLines::removeLine(int row) {
  v1::FormulaEdit edit;
  edit.set_line_name(lineName(row));
  edit.set_remove(true);
  add(std::move(edit));
}

void FormulaLines::addLine(const QString& name, int role, double percent) {
  v1::FormulaEdit edit;
  v1::FormulaLine& line = *edit.mutable_add();
  line.set_name(name.trimmed().toStdString());
  line.set_role(static_cast<v1::FormulaRole>(role));
  line.set_percent(percent);
  add(std::move(edit));
}

void FormulaLines::setFlour(double grams) {
  amount_.set_flour_g(grams);
  ask();
}

void FormulaLines::setDough(double grams) {
  amount_.set_dough_g(grams);
  ask();
}

void FormulaLines::setPieces(int count, double grams) {
  amount_.mutable_pieces()->set_count(count);
  amount_.mutable_pieces()->set_mass_g(grams);
  ask();
}

void FormulaLines::add(v1::FormulaEdit edit) {
  // Typing on in one field: only the last figure counts.
  if (!edits_.empty() && edits_.back().line_name() == edit.line_name() &&
      edits_.back().change_case() == edit.change_case() && edit.change_case() != v1::FormulaEdit::kAdd)
    edits_.pop_back();
  edits_.push_back(std::move(edit));
  ask();
}

void FormulaLines::ask() {
  HouseholdSession* session = draft_ == nullptr ? nullptr : draft_->session();
  if (asking_ || !bread() || session == nullptr) return;
  if (session->state() != HouseholdSession::Live) {
    const bool wanted = !edits_.empty() || amount_.wanted_case() != v1::DoughAmount::WANTED_NOT_SET;
    trouble_ = wanted ? tr("Grams and percentages are worked out by the server, and there is no connection.")
                      : QString();
    edits_.clear();
    amount_.Clear();
    Q_EMIT figuresChanged();
    return;
  }
  v1::WorkOutDoughRequest request;
  *request.mutable_formula() = recipe()->formula();
  for (v1::FormulaEdit& edit : edits_) *request.add_edits() = std::move(edit);
  edits_.clear();
  if (amount_.wanted_case() != v1::DoughAmount::WANTED_NOT_SET)
    *request.mutable_amount() = std::exchange(amount_, {});
  if (session->replica() != nullptr) {
    const auto starter = session->replica()->starters.find(request.formula().levain().starter_id());
    if (starter != session->replica()->starters.end()) *request.mutable_starter() = starter->second;
  }
  asking_ = true;
  asked_ = request;
  const std::string askedOf = request.formula().SerializeAsString();
  session->ask<v1::WorkOutDoughResponse>(
      this, [request](link::Session& server) { return server.workOutDough(request); },
      [this, askedOf](const absl::StatusOr<v1::WorkOutDoughResponse>& answer) { answered(answer, askedOf); });
}

void FormulaLines::answered(const absl::StatusOr<v1::WorkOutDoughResponse>& answer,
                            const std::string& askedOf) {
  asking_ = false;
  if (!bread()) return;
  if (recipe()->formula().SerializeAsString() != askedOf) {
    // Changed meanwhile in another way, as by a new name: the same once more on top of that.
    edits_.insert(edits_.begin(), asked_.edits().begin(), asked_.edits().end());
    if (asked_.has_amount() && amount_.wanted_case() == v1::DoughAmount::WANTED_NOT_SET)
      amount_ = asked_.amount();
    return ask();
  }
  if (answer.ok()) {
    show(*answer);
  } else {
    shownFor_ = askedOf;
    trouble_ = QString::fromStdString(std::string(answer.status().message()));
    Q_EMIT figuresChanged();
  }
  if (!edits_.empty() || amount_.wanted_case() != v1::DoughAmount::WANTED_NOT_SET) ask();
}

void FormulaLines::show(const v1::WorkOutDoughResponse& answer) {
  answer_ = answer;
  shownFor_ = answer.formula().SerializeAsString();
  trouble_.clear();
  if (draft_ != nullptr) {
    draft_->edit(QStringLiteral("formula"), [&](google::protobuf::Message& document) {
      if (auto* to = dynamic_cast<v1::Recipe*>(&document)) *to->mutable_formula() = answer.formula();
    });
  }
  refresh();
  Q_EMIT workedOut();
}

void FormulaLines::refresh() {
  std::vector<Row> next;
  if (bread()) {
    const v1::BreadFormula& formula = recipe()->formula();
    for (int i = 0; i < formula.lines_size(); ++i) {
      const v1::FormulaLine& line = formula.lines(i);
      next.push_back({QString::fromStdString(line.name()), QStringLiteral("formula.lines[%1]").arg(i),
                      line.role(), line.percent(), answer_.flour_mass_g() * line.percent() / 100,
                      QString::number(i)});
    }
  }
  become(rows_, std::move(next));
  Q_EMIT figuresChanged();
}

void FormulaLines::beginBread() {
  if (draft_ == nullptr || bread()) return;
  draft_->edit({}, [](google::protobuf::Message& document) {
    auto* recipe = dynamic_cast<v1::Recipe*>(&document);
    if (recipe == nullptr) return;
    v1::BreadFormula& formula = *recipe->mutable_formula();
    formula.set_dough_class(v1::DOUGH_CLASS_LEAN);
    addLineTo(formula, "bread flour", v1::FORMULA_ROLE_FLOUR, 100);
    addLineTo(formula, "water", v1::FORMULA_ROLE_WATER, 66);
    addLineTo(formula, "salt", v1::FORMULA_ROLE_SALT, 2);
    addLineTo(formula, "instant yeast", v1::FORMULA_ROLE_INSTANT_YEAST, 0.5);
    formula.set_piece_count(2);
    formula.set_piece_mass_g(500);
    formula.set_dough_celsius(25);
    formula.set_handling_loss_percent(1);
  });
}

void FormulaLines::endBread() {
  if (draft_ == nullptr || !bread()) return;
  draft_->edit({}, [](google::protobuf::Message& document) {
    if (auto* recipe = dynamic_cast<v1::Recipe*>(&document)) recipe->clear_formula();
  });
}

int FormulaLines::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant FormulaLines::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case NameRole:
      return row.name;
    case RolePlaceRole:
      return row.role;
    case PercentRole:
      return row.percent;
    case GramsRole:
      return row.grams;
    case RowPathRole:
      return row.path;
    default:
      return {};
  }
}

QHash<int, QByteArray> FormulaLines::roleNames() const {
  return {{NameRole, "name"},
          {RolePlaceRole, "role"},
          {PercentRole, "percent"},
          {GramsRole, "grams"},
          {RowPathRole, "rowPath"}};
}

}  // namespace suppertide
