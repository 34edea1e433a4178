#include "client/kitchen/ingredient_reader.h"

#include <algorithm>

#include "client/kitchen/ask_write.h"
#include "client/words/amount_words.h"

namespace suppertide {
namespace {

constexpr int kReadAfterMs = 150;

QStringList linesOf(const QString& text) {
  QStringList lines;
  for (const QString& line : text.split(QLatin1Char('\n'))) {
    if (!line.trimmed().isEmpty()) lines += line.trimmed();
  }
  return lines;
}

QString amountOf(const v1::Ingredient& ingredient, v1::MeasureSystem measures) {
  if (ingredient.has_mass_g()) return AmountWords::mass(ingredient.mass_g(), measures);
  if (ingredient.has_volume_ml()) return AmountWords::volume(ingredient.volume_ml(), measures);
  if (ingredient.has_count()) return AmountWords::count(ingredient.count());
  return IngredientReader::tr("to taste");
}

}  // namespace

QString doubtSentence(v1::LineDoubt doubt) {
  switch (doubt) {
    case v1::LINE_DOUBT_NO_QUANTITY:
      return IngredientReader::tr("No amount is said.");
    case v1::LINE_DOUBT_VAGUE_AMOUNT:
      return IngredientReader::tr("Not a measure, so it stays without one.");
    case v1::LINE_DOUBT_INGREDIENT_NOT_KNOWN:
      return IngredientReader::tr("Not in the table of ingredients: what it holds is not known.");
    case v1::LINE_DOUBT_USUAL_KIND_TAKEN:
      return IngredientReader::tr("Several are called so; the usual one was taken.");
    case v1::LINE_DOUBT_MASS_NOT_KNOWN:
      return IngredientReader::tr("No mass is known for this measure, so the measure stays.");
    case v1::LINE_DOUBT_MASS_SCALED:
      return IngredientReader::tr("The mass is reckoned from another measure or form.");
    case v1::LINE_DOUBT_MASS_FROM_MEMORY:
      return IngredientReader::tr("The mass is from memory, not from a publication.");
    case v1::LINE_DOUBT_COMMA:
      return IngredientReader::tr("The comma could mean thousands or decimals.");
    case v1::LINE_DOUBT_RANGE:
      return IngredientReader::tr("From one amount to another; the lower counts.");
    case v1::LINE_DOUBT_MEASURES_DIFFER:
      return IngredientReader::tr("This measure differs from country to country; the household's was taken.");
    case v1::LINE_DOUBT_SIZE_TAKEN:
      return IngredientReader::tr("No size is said; the usual one was taken.");
    case v1::LINE_DOUBT_ALTERNATIVE:
      return IngredientReader::tr("Only the first of the alternatives was read.");
    case v1::LINE_DOUBT_EMPTY:
      return IngredientReader::tr("There is nothing in the line.");
    default:
      return IngredientReader::tr("Not sure.");
  }
}

v1::Ingredient ingredientOf(const v1::ParsedIngredient& parsed) {
  v1::Ingredient ingredient;
  ingredient.set_name(parsed.ingredient().empty() ? parsed.name() : parsed.ingredient());
  // Pieces stay pieces: eggs and packets are bought whole.
  if (parsed.has_count() && parsed.count() > 0 && parsed.unit().empty())
    ingredient.set_count(parsed.count());
  else if (parsed.has_mass_g() && parsed.mass_g() > 0)
    ingredient.set_mass_g(parsed.mass_g());
  else if (parsed.has_volume_ml() && parsed.volume_ml() > 0)
    ingredient.set_volume_ml(parsed.volume_ml());
  else if (parsed.has_count() && parsed.count() > 0)
    ingredient.set_count(parsed.count());
  std::string note = parsed.form();
  if (!parsed.note().empty()) note += (note.empty() ? "" : ", ") + parsed.note();
  ingredient.set_note(note);
  *ingredient.mutable_contains() = parsed.contains();
  ingredient.set_known_contents(parsed.known_contents());
  return ingredient;
}

IngredientReader::IngredientReader(QObject* parent) : DifferenceModel(parent) {
  askTimer_.setSingleShot(true);
  askTimer_.setInterval(kReadAfterMs);
  connect(&askTimer_, &QTimer::timeout, this, &IngredientReader::ask);
}

void IngredientReader::setText(const QString& text) {
  if (text == text_) return;
  text_ = text;
  Q_EMIT textChanged();
  if (linesOf(text).isEmpty())
    show(text, {});
  else
    askTimer_.start();
  Q_EMIT readChanged();
}

int IngredientReader::doubtfulCount() const {
  return static_cast<int>(
      std::count_if(rows_.begin(), rows_.end(), [](const Row& row) { return !row.doubts.isEmpty(); }));
}

void IngredientReader::ask() {
  HouseholdSession* session = draft_ == nullptr ? nullptr : draft_->session();
  if (session == nullptr || session->state() != HouseholdSession::Live) {
    trouble_ = IngredientReader::tr(
        "Lines are read by the server, and there is no connection. They are read when it is back.");
    Q_EMIT readChanged();
    return;
  }
  v1::ParseIngredientsRequest request;
  request.set_household_id(householdIdOf(*session));
  for (const QString& line : linesOf(text_)) request.add_lines(line.toStdString());
  session->ask<v1::ParseIngredientsResponse>(
      this, [request](link::Session& server) { return server.parseIngredients(request); },
      [this, asked = text_](absl::StatusOr<v1::ParseIngredientsResponse> answer) {
        if (asked != text_) return;
        if (answer.ok()) return show(asked, {answer->ingredients().begin(), answer->ingredients().end()});
        trouble_ = QString::fromStdString(std::string(answer.status().message()));
        Q_EMIT readChanged();
      });
}

void IngredientReader::show(const QString& text, std::vector<v1::ParsedIngredient> parsed) {
  shownText_ = text;
  trouble_.clear();
  parsed_ = std::move(parsed);
  const bool known =
      draft_ != nullptr && draft_->session() != nullptr && draft_->session()->replica() != nullptr;
  const auto measures =
      known ? draft_->session()->replica()->household.measure_system() : v1::MEASURE_SYSTEM_METRIC;
  std::vector<Row> next;
  for (std::size_t i = 0; i < parsed_.size(); ++i) {
    const v1::ParsedIngredient& one = parsed_[i];
    const v1::Ingredient ingredient = ingredientOf(one);
    Row row{QString::number(i),
            QString::fromStdString(one.line()),
            amountOf(ingredient, measures),
            QString::fromStdString(ingredient.name()),
            {},
            {}};
    if (!ingredient.note().empty())
      row.name += IngredientReader::tr(", ") + QString::fromStdString(ingredient.note());
    QStringList doubts;
    for (const int doubt : one.doubts()) doubts += doubtSentence(static_cast<v1::LineDoubt>(doubt));
    row.doubts = doubts.join(QLatin1Char(' '));
    QStringList contents;
    for (const std::string& content : one.contains()) contents += QString::fromStdString(content);
    row.contents = contents.join(IngredientReader::tr(", "));
    next.push_back(std::move(row));
  }
  become(rows_, std::move(next));
  Q_EMIT readChanged();
}

void IngredientReader::addAll() {
  if (draft_ == nullptr || !upToDate()) return;
  draft_->edit({}, [this](google::protobuf::Message& document) {
    auto* recipe = dynamic_cast<v1::Recipe*>(&document);
    if (recipe == nullptr) return;
    for (const v1::ParsedIngredient& one : parsed_) {
      v1::Ingredient ingredient = ingredientOf(one);
      if (!ingredient.name().empty()) *recipe->add_ingredients() = std::move(ingredient);
    }
  });
  setText({});
}

int IngredientReader::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant IngredientReader::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case LineRole:
      return row.line;
    case AmountRole:
      return row.amount;
    case NameRole:
      return row.name;
    case DoubtsRole:
      return row.doubts;
    case ContentsRole:
      return row.contents;
    default:
      return {};
  }
}

QHash<int, QByteArray> IngredientReader::roleNames() const {
  return {{LineRole, "line"},
          {AmountRole, "amount"},
          {NameRole, "name"},
          {DoubtsRole, "doubts"},
          {ContentsRole, "contents"}};
}

}  // namespace suppertide
