#include "client/kitchen/draft.h"

#include <utility>

#include "client/kitchen/ask_write.h"
#include "client/kitchen/document_words.h"
#include "client/link/edit.h"
#include "client/link/error_detail.h"

namespace suppertide {
namespace {

using google::protobuf::Message;

constexpr std::size_t kMostUndo = 100;

DocumentPtr copyOf(const Message& document) {
  DocumentPtr copy(document.New());
  copy->CopyFrom(document);
  return copy;
}

}  // namespace

Draft::Draft(HouseholdSession* session, Document::Kind kind, DocumentPtr base, DocumentPtr mine,
             QObject* parent)
    : QObject(parent),
      session_(session),
      kind_(kind),
      base_(std::move(base)),
      mine_(mine != nullptr ? std::move(mine) : copyOf(*base_)) {
  checkTimer_.setSingleShot(true);
  checkTimer_.setInterval(kCheckAfterMs);
  connect(&checkTimer_, &QTimer::timeout, this, &Draft::check);
  if (session_ != nullptr) {
    connect(session_, &HouseholdSession::memberChanged, this, &Draft::editableChanged);
    connect(session_, &HouseholdSession::stateChanged, this, [this] {
      if (worthChecking() && online()) checkTimer_.start();
      Q_EMIT stateChanged();
    });
  }
  if (base_ != nullptr) changedFields_ = differingFields(*base_, *mine_);
  if (worthChecking()) checkTimer_.start();
}

int Draft::problemsBelow(const QString& path) const {
  int count = 0;
  for (auto one = problems_.begin(); one != problems_.end(); ++one) {
    const QString& at = one.key();
    const bool below = at.size() > path.size() && at.startsWith(path) &&
                       (at[path.size()] == QLatin1Char('.') || at[path.size()] == QLatin1Char('['));
    count += at == path || below;
  }
  return count;
}

QString Draft::firstProblem() const {
  if (problems_.isEmpty()) return {};
  QStringList paths = problems_.keys();
  paths.sort();
  return problems_.value(paths.first());
}

void Draft::edit(const QString& place, const std::function<void(Message&)>& change) {
  std::string before = mine_->SerializeAsString();
  change(*mine_);
  if (mine_->SerializeAsString() == before) return;
  if (place.isEmpty() || place != lastPlace_ || past_.empty()) {
    past_.push_back(std::move(before));
    if (past_.size() > kMostUndo) past_.erase(past_.begin());
  }
  lastPlace_ = place;
  becameDifferent();
}

void Draft::undo() {
  if (past_.empty()) return;
  mine_->ParseFromString(past_.back());
  past_.pop_back();
  lastPlace_.clear();
  becameDifferent();
}

void Draft::revert() {
  if (base_ == nullptr || !dirty()) return;
  past_.push_back(mine_->SerializeAsString());
  mine_->CopyFrom(*base_);
  clashes_.clear();
  becameDifferent();
}

void Draft::becameDifferent() {
  ++edits_;
  changedFields_ = base_ == nullptr ? QStringList() : differingFields(*base_, *mine_);
  if (dirty()) {
    checkTimer_.start();
  } else {
    checkTimer_.stop();
    problems_.clear();
    setTrouble({});
    Q_EMIT problemsChanged();
  }
  Q_EMIT changed();
}

// Not what is new and untouched: nobody has done anything wrong yet.
bool Draft::worthChecking() const {
  return dirty() && (edits_ > 0 || !fresh());
}

bool Draft::online() const {
  return session_ != nullptr && session_->state() == HouseholdSession::Live;
}

void Draft::check() {
  if (!online()) return;
  // Its earlier version is on its way: the server would judge without it.
  if (waiting()) return checkTimer_.start();
  // Without an etag: who wrote meanwhile is another question.
  const DocumentPtr document = copyOf(*mine_);
  document->GetReflection()->ClearField(document.get(), document->GetDescriptor()->FindFieldByName("meta"));
  std::shared_ptr<Message> request =
      fresh() ? createRequest(kind_, *document, true) : updateRequest(kind_, *document, {}, true);
  askWrite(*session_, this, request,
           [this, asked = edits_](const absl::Status& status) { checked(status, asked); });
}

void Draft::checked(const absl::Status& status, int asked) {
  if (asked != edits_) return;  // A newer question is on its way.
  checkedEdits_ = asked;
  tellProblems(status);
}

void Draft::tellProblems(const absl::Status& status) {
  problems_.clear();
  const auto detail = link::errorDetail(status);
  if (detail) {
    for (const v1::FieldViolation& one : detail->violations())
      problems_.insert(QString::fromStdString(one.field_path()), QString::fromStdString(one.description()));
  }
  const bool told = status.ok() || !problems_.isEmpty();
  setTrouble(told ? QString() : QString::fromStdString(std::string(status.message())));
  Q_EMIT problemsChanged();
}

void Draft::setTrouble(const QString& text) {
  trouble_ = text;
  Q_EMIT stateChanged();
}

void Draft::save() {
  if (!dirty() || session_ == nullptr) return;
  if (!clashes_.isEmpty()) return setTrouble(tr("First choose which version holds."));
  if (checkedEdits_ == edits_ && !problems_.isEmpty())
    return setTrouble(tr("This can't be saved yet: %1").arg(firstProblem()));
  checkTimer_.stop();
  const DocumentPtr document = copyOf(*mine_);
  if (base_ != nullptr) copyField(*base_, "meta", *document);
  const DocumentPtr request = fresh() ? createRequest(kind_, *document, false)
                                      : updateRequest(kind_, *document, changedFields_, false);
  // What it stores is followed like anybody's.
  if (!session_->send(*request)) return;
  problems_.clear();
  setTrouble({});
  Q_EMIT problemsChanged();
  Q_EMIT saved();
}

void Draft::takeBack(const Message& request, const absl::Status& why) {
  const Message* document = link::documentOf(request);
  if (document == nullptr) return;
  const QStringList since = changedFields_;
  for (const QString& field : maskedFields(request)) {
    if (!since.contains(field)) copyField(*document, field.toStdString(), *mine_);
  }
  becameDifferent();
  if (why.code() == absl::StatusCode::kAborted) {
    for (const QString& field : changedFields_) clashes_.insert(field, true);
    if (base_ != nullptr) otherWriter_ = session_->nameOf(writerOf(*base_));
    setTrouble(tr("Somebody else wrote this at the same moment. Look at both versions, then save again."));
    Q_EMIT changed();
  } else {
    checked(why, edits_);
  }
}

void Draft::follow(const Message* stored) {
  if (stored == nullptr) {
    if (!fresh()) {
      base_.reset();
      setTrouble(tr("Somebody deleted this meanwhile. Saving makes it anew."));
      becameDifferent();
    }
    return;
  }
  const DocumentPtr before = base_ != nullptr ? copyOf(*base_) : copyOf(*stored);
  const QStringList news = differingFields(*before, *stored);
  if (base_ != nullptr && etagOf(*stored) == etagOf(*base_) && news.isEmpty()) return;
  base_ = copyOf(*stored);
  if (session_ != nullptr) otherWriter_ = session_->nameOf(writerOf(*stored));
  for (const QString& field : news) {
    const std::string name = field.toStdString();
    const bool mineToo = differingFields(*before, *mine_).contains(field);
    if (!mineToo)
      copyField(*stored, name, *mine_);
    else if (differingFields(*stored, *mine_).contains(field))
      clashes_.insert(field, true);
  }
  for (const QString& field : clashes_.keys()) {
    if (!differingFields(*base_, *mine_).contains(field)) clashes_.remove(field);
  }
  copyField(*stored, "meta", *mine_);
  becameDifferent();
}

QString Draft::mineText(const QString& field) const {
  return MemberWords(session_).wholeField(*mine_, field);
}

QString Draft::theirText(const QString& field) const {
  return base_ == nullptr ? QString() : MemberWords(session_).wholeField(*base_, field);
}

void Draft::keepMine(const QString& field) {
  if (clashes_.remove(field) > 0) becameDifferent();
}

void Draft::takeTheirs(const QString& field) {
  if (clashes_.remove(field) == 0) return;
  edit({}, [&](Message& document) { copyField(*base_, field.toStdString(), document); });
}

}  // namespace suppertide
