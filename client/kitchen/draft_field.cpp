#include "client/kitchen/draft_field.h"

namespace suppertide {

void DraftField::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) {
    connect(draft_, &Draft::changed, this, &DraftField::valueChanged);
    connect(draft_, &Draft::problemsChanged, this, &DraftField::problemChanged);
  }
  Q_EMIT draftChanged();
  Q_EMIT valueChanged();
  Q_EMIT problemChanged();
}

void DraftField::setPath(const QString& path) {
  if (path == path_) return;
  path_ = path;
  Q_EMIT pathChanged();
  Q_EMIT valueChanged();
  Q_EMIT problemChanged();
}

FieldPath DraftField::read() const {
  return draft_ == nullptr ? FieldPath() : FieldPath::in(draft_->document(), path_);
}

QString DraftField::problem() const {
  return draft_ == nullptr ? QString() : draft_->problem(path_);
}

int DraftField::problemsBelow() const {
  return draft_ == nullptr ? 0 : draft_->problemsBelow(path_);
}

void DraftField::setNumber(double value) {
  if (draft_ == nullptr) return;
  draft_->edit(path_,
               [&](google::protobuf::Message& to) { FieldPath::inOrMake(to, path_).setNumber(value); });
}

void DraftField::setText(const QString& value) {
  if (draft_ == nullptr) return;
  draft_->edit(path_, [&](google::protobuf::Message& to) { FieldPath::inOrMake(to, path_).setText(value); });
}

void DraftField::setFlag(bool value) {
  if (draft_ == nullptr) return;
  draft_->edit({}, [&](google::protobuf::Message& to) { FieldPath::inOrMake(to, path_).setFlag(value); });
}

void DraftField::setChoice(int value) {
  if (draft_ == nullptr) return;
  draft_->edit({}, [&](google::protobuf::Message& to) { FieldPath::inOrMake(to, path_).setChoice(value); });
}

void DraftField::toggleMark(int value) {
  if (draft_ == nullptr) return;
  draft_->edit({}, [&](google::protobuf::Message& to) { FieldPath::inOrMake(to, path_).toggleMark(value); });
}

void DraftField::clear() {
  if (draft_ == nullptr) return;
  draft_->edit({}, [&](google::protobuf::Message& to) { FieldPath::inOrMake(to, path_).clear(); });
}

}  // namespace suppertide
