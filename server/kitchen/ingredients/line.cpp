#include "server/kitchen/ingredients/line.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "server/kitchen/ingredients/amount_mass.h"
#include "server/kitchen/ingredients/line_numbers.h"
#include "server/kitchen/ingredients/line_units.h"
#include "server/kitchen/ingredients/plain_text.h"

namespace suppertide::kitchen {
namespace {

// How an ingredient may be when it is measured; the first of a pair is said, the second in the table.
constexpr std::array<std::pair<std::string_view, std::string_view>, 24> kForms = {
    {{"firmly packed", "packed"},
     {"tightly packed", "packed"},
     {"lightly packed", "packed"},
     {"loosely packed", "loose"},
     {"packed", "packed"},
     {"unpacked", "loose"},
     {"loose", "loose"},
     {"unsifted", "unsifted"},
     {"sifted", "sifted"},
     {"finely chopped", "chopped"},
     {"roughly chopped", "chopped"},
     {"chopped", "chopped"},
     {"sliced", "sliced"},
     {"slivered", "slivered"},
     {"ground", "ground"},
     {"grated", "grated"},
     {"shredded", "shredded"},
     {"diced", "diced"},
     {"cubed", "cubed"},
     {"melted", "melted"},
     {"whole", "whole"},
     {"halves", "halves"},
     {"cooked", "cooked"},
     {"whipped", "whipped"}}};
constexpr std::array<std::string_view, 5> kSizes = {"extra large", "large", "medium", "small", "jumbo"};

// Parts of the line while it is taken to pieces.
struct Parts {
  std::string name;
  std::string note;
  std::string size;
  bool formBehindComma = false;
};

class Reader {
 public:
  Reader(std::string_view text, Measures measures)
      : measures_(measures), whole_(plainText(text)), rest_(whole_) {}

  IngredientLine read() {
    if (rest_.empty()) return doubting(Doubt::kEmpty), std::move(line_);
    readQuantity();
    takeNotes();
    takeSizeAndForm();
    lookUp();
    weigh();
    return std::move(line_);
  }

 private:
  void doubting(Doubt doubt) {
    if (!line_.has(doubt)) line_.doubts.push_back(doubt);
  }

  void readQuantity() {
    if (const auto number = takeNumber(rest_)) {
      line_.quantity = number->value;
      line_.mostQuantity = number->most;
      if (number->most) doubting(Doubt::kRange);
      if (number->doubtful) doubting(Doubt::kComma);
      doubtful_ = number->doubtful;
    }
    rest_ = trimmedFront(rest_);
    takePack();
    // "large" before "clove" or "stalk": a size, and then the unit.
    takeSizes(rest_);
    const auto unit = takeUnit(rest_, measures_);
    if (unit) apply(*unit);
    for (const std::string_view small : {"of ", "a "})
      if (line_.quantity || unit) takeFront(rest_, small);
    if (!line_.quantity && !line_.has(Doubt::kVagueAmount)) doubting(Doubt::kNoQuantity);
    if (lowerCase(rest_).find("to taste") != std::string::npos) doubting(Doubt::kVagueAmount);
  }

  // "2 x 400 g", "1 (14 oz) can": pieces of a mass or volume each.
  void takePack() {
    if (!line_.quantity) return;
    std::string_view rest = rest_;
    const bool times = takeFront(rest, "x ");
    const bool bracket = !times && takeFront(rest, "(");
    if (!times && !bracket) return;
    const auto each = takeNumber(rest);
    if (!each) return;
    takeFront(rest, "-");
    const auto unit = takeUnit(rest, measures_);
    if (!unit || (unit->kind != UnitKind::kMass && unit->kind != UnitKind::kVolume)) return;
    if (bracket && !takeFront(rest, ")")) return;
    pack_ = unit;
    pack_->factor *= each->value;
    rest_ = trimmedFront(rest);
  }

  void apply(const LineUnit& unit) {
    unit_ = unit;
    line_.unit = unit.name;
    if (unit.kind == UnitKind::kVague) {
      doubting(Doubt::kVagueAmount);
      line_.doubts.erase(std::remove(line_.doubts.begin(), line_.doubts.end(), Doubt::kNoQuantity),
                         line_.doubts.end());
    }
    if (unit.differs) doubting(Doubt::kMeasuresDiffer);
    if (doubtful_) settleComma(unit);
  }

  // Nobody buys a thousand kilograms, nor weighs to a thousandth of a gram.
  void settleComma(const LineUnit& unit) {
    if (unit.kind != UnitKind::kMass && unit.kind != UnitKind::kVolume) return;
    constexpr double kLarge = 100;  // grams or millilitres
    line_.quantity = unit.factor >= kLarge ? doubtful_->asDecimals : doubtful_->asThousands;
  }

  void takeSizes(std::string_view& text) {
    for (const std::string_view size : kSizes)
      if (beginsWith(text, std::string(size) + " ")) {
        parts_.size = std::string(size);
        text.remove_prefix(size.size() + 1);
        return;
      }
  }

  void addNote(std::string_view note) {
    note = trimmed(note);
    if (note.empty()) return;
    if (!parts_.note.empty()) parts_.note += ", ";
    parts_.note += note;
  }

  // What stands in brackets, behind a comma, and behind "for" or "or".
  void takeNotes() {
    std::string text(rest_);
    const std::size_t open = text.find('(');
    const std::size_t close = open == std::string::npos ? open : text.find(')', open);
    std::string bracket;
    if (close != std::string::npos) {
      bracket = text.substr(open + 1, close - open - 1);
      text.erase(open, close - open + 1);
    }
    const std::size_t comma = text.find(',');
    const std::string behind = comma == std::string::npos ? "" : text.substr(comma + 1);
    text = text.substr(0, comma);
    cut(text, " or ", Doubt::kAlternative);
    for (const std::string_view word : {" for ", " plus ", " to taste", " at room temperature"})
      cut(text, word, {});
    addNote(behind);
    addNote(bracket);
    parts_.name = singleSpaced(text);
  }

  void cut(std::string& text, std::string_view word, std::optional<Doubt> doubt) {
    const std::size_t at = lowerCase(text).find(word);
    if (at == std::string::npos) return;
    addNote(std::string_view(text).substr(at));
    text = text.substr(0, at);
    if (doubt) doubting(*doubt);
  }

  void takeSizeAndForm() {
    const std::string sized = parts_.name;
    std::string_view name = sized;
    takeSizes(name);
    parts_.name = std::string(name);
    const Lookup whole = findIngredient(parts_.name);
    if (whole.ingredient == nullptr) takeForm(name);
    if (line_.form.empty()) formFromNote();
    line_.name = parts_.name;
    line_.note = parts_.note;
  }

  // "sifted flour", "pecans halves", unless the word is part of the name ("ground beef").
  void takeForm(std::string_view name) {
    for (const auto& [said, form] : kForms) {
      std::string rest;
      if (beginsWith(name, std::string(said) + " "))
        rest = std::string(name.substr(said.size() + 1));
      else if (finishesWith(name, " " + std::string(said)))
        rest = std::string(name.substr(0, name.size() - said.size() - 1));
      else
        continue;
      line_.form = std::string(form);
      parts_.name = rest;
      return;
    }
  }

  void formFromNote() {
    for (const auto& [said, form] : kForms) {
      const std::string note = lowerCase(parts_.note);
      const std::size_t at = note.find(said);
      if (at == std::string::npos || (at > 0 && note[at - 1] != ' ')) continue;
      line_.form = std::string(form);
      // A sugar is packed into its cup; other things are worked on after measuring.
      parts_.formBehindComma = form != "packed" && form != "loose" && form != "unsifted";
      if (note == said) parts_.note.clear();
      return;
    }
  }

  void lookUp() {
    const Lookup found = findIngredient(line_.name);
    line_.ingredient = found.ingredient;
    if (found.ingredient == nullptr) doubting(Doubt::kIngredientNotKnown);
    if (found.usualKind) doubting(Doubt::kUsualKindTaken);
  }

  void weigh() {
    if (!line_.quantity || (unit_ && unit_->kind == UnitKind::kVague)) return;
    const double quantity = *line_.quantity;
    if (pack_) {
      line_.count = quantity;
      return total(*pack_, quantity);
    }
    if (unit_ && unit_->kind != UnitKind::kPieces) return total(*unit_, quantity);
    line_.count = quantity * (unit_ ? unit_->factor : 1);
    weighPieces();
  }

  void total(const LineUnit& unit, double quantity) {
    if (unit.kind == UnitKind::kMass) {
      line_.grams = quantity * unit.factor;
      line_.massSource = "scale";
      return;
    }
    line_.millilitres = quantity * unit.factor;
    if (line_.ingredient == nullptr) return;
    const bool metric = measureMillilitres(unit.name) == 0 || pack_.has_value();
    const std::string measure = metric ? "ml" : unit.name;
    const double each = metric ? 1 : unit.factor;
    const double amount = metric ? *line_.millilitres : quantity;
    const std::string asMeasured = parts_.formBehindComma ? "" : line_.form;
    auto mass = measuredMass(*line_.ingredient, amount, measure, each, asMeasured);
    if (!mass && asMeasured != line_.form) {
      mass = measuredMass(*line_.ingredient, amount, measure, each, line_.form);
      if (mass) mass->way = MassWay::kOtherForm;
    }
    take(mass);
  }

  void weighPieces() {
    if (line_.ingredient == nullptr) return;
    const bool pieces = line_.unit.empty() || line_.unit == "dozen" || line_.unit == "piece";
    const std::string unit = pieces ? parts_.size : line_.unit;
    std::optional<MeasuredMass> mass;
    if (!unit.empty())
      mass = measuredMass(*line_.ingredient, *line_.count, unit, 0, pieces ? "" : parts_.size);
    if (!mass && pieces && parts_.size.empty())
      for (const char* usual : {"piece", "medium", "large"}) {
        // Recipes mean large eggs, and medium vegetables.
        const bool egg = beginsWith(line_.ingredient->name, "egg");
        mass = measuredMass(*line_.ingredient, *line_.count, egg ? "large" : usual, 0, "");
        if (!mass) continue;
        doubting(Doubt::kSizeTaken);
        break;
      }
    take(mass);
  }

  void take(const std::optional<MeasuredMass>& mass) {
    if (!mass) return doubting(Doubt::kMassNotKnown);
    line_.grams = mass->grams;
    line_.massSource = mass->mark == Mark::kRead ? line_.ingredient->sourceTitle : std::string("from memory");
    if (mass->way != MassWay::kMeasured) doubting(Doubt::kMassScaled);
    if (mass->mark != Mark::kRead) doubting(Doubt::kMassFromMemory);
  }

  const Measures measures_;
  const std::string whole_;
  std::string_view rest_;
  std::optional<DoubtfulComma> doubtful_;
  std::optional<LineUnit> unit_;
  std::optional<LineUnit> pack_;
  Parts parts_;
  IngredientLine line_;
};

}  // namespace

bool IngredientLine::has(Doubt doubt) const {
  return std::find(doubts.begin(), doubts.end(), doubt) != doubts.end();
}

IngredientLine readLine(std::string_view text, Measures measures) {
  return Reader(text, measures).read();
}

}  // namespace suppertide::kitchen
