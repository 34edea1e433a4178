#include "client/kitchen/amount_field.h"

#include "client/kitchen/field_path.h"

namespace suppertide {
namespace {

using google::protobuf::Message;

QString fieldOf(const QString& path, int unit) {
  switch (unit) {
    case AmountField::Grams:
      return path + QStringLiteral(".massG");
    case AmountField::Millilitres:
      return path + QStringLiteral(".volumeMl");
    case AmountField::Pieces:
      return path + QStringLiteral(".count");
    default:
      return {};
  }
}

}  // namespace

void AmountField::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) {
    connect(draft_, &Draft::changed, this, &AmountField::changed);
    connect(draft_, &Draft::problemsChanged, this, &AmountField::changed);
  }
  Q_EMIT changed();
}

int AmountField::unit() const {
  if (draft_ == nullptr) return ToTaste;
  for (const int unit : {Grams, Millilitres, Pieces}) {
    if (FieldPath::in(draft_->document(), fieldOf(path_, unit)).present()) return unit;
  }
  return ToTaste;
}

double AmountField::number() const {
  return unit() == ToTaste ? 0 : FieldPath::in(draft_->document(), fieldOf(path_, unit())).number();
}

QString AmountField::problem() const {
  return unit() == ToTaste ? QString() : draft_->problem(fieldOf(path_, unit()));
}

void AmountField::setUnit(int next) {
  if (draft_ == nullptr || next == unit()) return;
  const double kept = number() > 0 ? number() : 1;
  draft_->edit({}, [&](Message& document) {
    if (unit() != ToTaste) FieldPath::inOrMake(document, fieldOf(path_, unit())).clear();
    if (next != ToTaste) FieldPath::inOrMake(document, fieldOf(path_, next)).setNumber(kept);
  });
}

void AmountField::setNumber(double next) {
  if (draft_ == nullptr || unit() == ToTaste) return;
  draft_->edit(path_ + QStringLiteral(".amount"), [&](Message& document) {
    FieldPath::inOrMake(document, fieldOf(path_, unit())).setNumber(next);
  });
}

}  // namespace suppertide
