#include "client/planning/remedy_search.h"

#include <QtCore/qpointer.h>

#include "client/planning/plan_difference.h"

namespace suppertide {

RemedySearch::RemedySearch(HouseholdSession& session, QObject* parent)
    : QObject(parent),
      session_(session),
      clashes_(new ClashModel(this)),
      remedies_(new RemedyModel(this)),
      moves_(new MoveModel(this)) {
  connect(&session, &HouseholdSession::householdChanged, this, &RemedySearch::householdCame);
  connect(&session, &HouseholdSession::eventIdChanged, this, &RemedySearch::close);
}

RemedySearch::~RemedySearch() {
  if (leave_ != nullptr) *leave_ = true;
}

void RemedySearch::begin() {
  if (session_.view() == nullptr || running_) return;
  close();
  asked_ = session_.replica();
  view_ = session_.view();
  told_.Clear();
  open_ = running_ = true;
  progress_ = tr("Looking for what would help…");
  clashes_->show(*view_, told_);
  if (session_.state() != HouseholdSession::Live)
    return finish(absl::UnavailableError(needsServer().toStdString()));
  leave_ = std::make_shared<std::atomic<bool>>(false);
  v1::FindRemediesRequest request;
  request.set_household_id(asked_->household.id());
  request.set_event_id(view_->event().id());
  Q_EMIT changed();
  const auto leave = leave_;
  const auto told = [&session = session_, self = QPointer<RemedySearch>(this),
                     leave](const v1::FindRemediesResponse& message) {
    session.post([self, leave, message] {
      if (self != nullptr && !*leave) self->take(message);
    });
    return !*leave;
  };
  session_.ask<bool>(
      this,
      [request, told](link::Session& server) -> absl::StatusOr<bool> {
        if (absl::Status status = server.findRemedies(request, told); !status.ok()) return status;
        return true;
      },
      [this, leave](const absl::StatusOr<bool>& answer) {
        if (!*leave) finish(answer.status());
      });
}

void RemedySearch::take(const v1::FindRemediesResponse& message) {
  if (view_ == nullptr) return;
  if (message.clashes_size() > 0) told_ = message.clashes();
  if (message.clashes_size() > 0) clashes_->show(*view_, told_);
  if (message.has_remedy()) {
    remedies_->add(message, *view_);
    if (message.number() == chosen_) choose(chosen_);
  }
  if (message.candidate_count() > 0)
    progress_ = tr("%1 of %2 changes tried, %3 help")
                    .arg(message.tried_count())
                    .arg(message.candidate_count())
                    .arg(remedies_->count());
  if (message.final()) {
    remedies_->rank(message.ranking(), *view_);
    if (remedies_->found(chosen_) == nullptr) choose(0);
    progress_ = message.fits() ? tr("Every dish fits in time: plan again, a longer search finds how.")
                : remedies_->count() == 0 ? tr("No change that was tried makes every dish fit.")
                                          : tr("Each was planned to the minute and keeps every rule.");
  }
  Q_EMIT changed();
}

void RemedySearch::finish(const absl::Status& status) {
  running_ = false;
  if (!status.ok()) progress_ = QString::fromStdString(std::string(status.message()));
  Q_EMIT changed();
}

void RemedySearch::choose(int number) {
  const v1::FindRemediesResponse* found = remedies_->found(number);
  chosen_ = found == nullptr ? 0 : number;
  if (found == nullptr) {
    moves_->clear();
    setPreview(nullptr);
  } else {
    const Household next = withRemedy(*asked_, *found);
    const PlanView with(next, found->event().id());
    const v1::Plan nothing;
    moves_->setMoves(movedBetween(view_->plan() == nullptr ? nothing : *view_->plan(), found->plan()), with);
    setPreview(next);
  }
  Q_EMIT changed();
}

QString RemedySearch::obstacle() const {
  if (!session_.mayHost()) return tr("Only a host may change the event. Show them this.");
  if (session_.replica() != nullptr && asked_ != nullptr && view_ != nullptr &&
      !sameInputs(*asked_, *session_.replica(), view_->event().id()))
    return tr("Somebody changed the event meanwhile. Look again for what helps now.");
  return {};
}

void RemedySearch::apply() {
  if (preview_ == nullptr || applying_ || !obstacle().isEmpty()) return;
  applying_ = true;
  const int number = chosen_;
  const Household before = session_.replica();
  const Household wanted = preview_;
  const std::string eventId = view_->event().id();
  session_.ask<std::int64_t>(
      this, [wanted, eventId](link::Session& server) { return store(*wanted, eventId, server); },
      [this, before, wanted, number](const absl::StatusOr<std::int64_t>& answer) {
        applying_ = false;
        if (answer.ok()) {
          const QString what = remedies_->title(number);
          close();
          Q_EMIT applied(before, wanted, what, *answer);
        } else {
          progress_ = QString::fromStdString(std::string(answer.status().message()));
        }
        Q_EMIT changed();
      });
  Q_EMIT changed();
}

void RemedySearch::close() {
  if (leave_ != nullptr) *leave_ = true;
  open_ = running_ = false;
  chosen_ = 0;
  remedies_->clear();
  moves_->clear();
  setPreview(nullptr);
  progress_.clear();
  Q_EMIT changed();
}

void RemedySearch::setPreview(Household preview) {
  if (preview == preview_) return;
  preview_ = std::move(preview);
  Q_EMIT previewChanged();
}

void RemedySearch::householdCame() {
  if (session_.replica() == nullptr) return close();
  if (open_) Q_EMIT changed();
}

}  // namespace suppertide
