#include "client/kitchen/place_hours.h"

#include <cmath>
#include <numeric>

#include "client/kitchen/document_words.h"

namespace suppertide {
namespace {
constexpr int kHours = 24;
}  // namespace

void PlaceHours::setDraft(Draft* draft) {
  if (draft == draft_) return;
  if (draft_ != nullptr) draft_->disconnect(this);
  draft_ = draft;
  if (draft_ != nullptr) connect(draft_, &Draft::changed, this, &PlaceHours::changed);
  Q_EMIT changed();
}

const v1::Kitchen* PlaceHours::kitchen() const {
  return draft_ == nullptr ? nullptr : dynamic_cast<const v1::Kitchen*>(&draft_->document());
}

const v1::Place* PlaceHours::place() const {
  const v1::Kitchen* here = kitchen();
  if (here == nullptr) return nullptr;
  for (int i = 0; i < here->places_size(); ++i) {
    if (path_ == QStringLiteral("places[%1]").arg(i)) return &here->places(i);
  }
  return nullptr;
}

int PlaceHours::count() const {
  return place() == nullptr ? 0 : place()->temperature().celsius_size();
}

QString PlaceHours::learned() const {
  return place() == nullptr || !place()->has_learned_warmth()
             ? QString()
             : LearnedWords::sentence(place()->learned_warmth());
}

QStringList PlaceHours::ovens() const {
  QStringList names;
  if (kitchen() == nullptr) return names;
  for (const v1::Oven& oven : kitchen()->ovens()) names += QString::fromStdString(oven.display_name());
  return names;
}

int PlaceHours::oven() const {
  if (place() == nullptr) return -1;
  for (int i = 0; i < kitchen()->ovens_size(); ++i) {
    if (kitchen()->ovens(i).id() == place()->oven_id()) return i;
  }
  return -1;
}

void PlaceHours::editPlace(const std::function<void(v1::Place&)>& change) {
  const v1::Place* here = place();
  if (here == nullptr) return;
  draft_->edit({}, [&, id = here->id()](google::protobuf::Message& document) {
    for (v1::Place& one : *static_cast<v1::Kitchen&>(document).mutable_places())
      if (one.id() == id) change(one);
  });
}

void PlaceHours::spread(bool byHour) {
  editPlace([byHour](v1::Place& place) {
    auto& celsius = *place.mutable_temperature()->mutable_celsius();
    if (celsius.empty()) celsius.Add(21);
    const double mean = std::accumulate(celsius.begin(), celsius.end(), 0.0) / celsius.size();
    celsius.Clear();
    for (int hour = 0; hour < (byHour ? kHours : 1); ++hour) celsius.Add(std::round(mean * 10) / 10);
  });
}

void PlaceHours::setOven(int index) {
  if (kitchen() == nullptr || index < 0 || index >= kitchen()->ovens_size()) return;
  editPlace([id = kitchen()->ovens(index).id()](v1::Place& place) { place.set_oven_id(id); });
}

}  // namespace suppertide
