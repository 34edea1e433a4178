// What stands on the axis: marks with their hours, and the courses.
#pragma once

#include <vector>

#include "client/timeline/picture.h"
#include "client/timeline/places_model.h"
#include "client/timeline/tick_marks.h"
#include "client/ui/difference_model.h"

namespace suppertide {

// Marks with their labels: an hour, or a day at midnight. Rows are places, as of a StepModel.
class TickModel : public PlacesModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by Timeline")
 public:
  enum Role { MinuteRole = Qt::UserRole, LabelRole, ShortLabelRole, MidnightRole, ShownRole };

  explicit TickModel(QObject* parent = nullptr) : PlacesModel(parent) {}
  void setMarks(const std::vector<TickMark>& marks, Instant base, const TimeWords& words);

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  struct Row {
    double minute = 0;
    QString label;
    QString shortLabel;
    bool midnight = false;
    bool shown = true;
    QString key() const { return QString::number(minute); }
    friend bool operator==(const Row&, const Row&) = default;
  };
  std::vector<Row> rows_;
};

// The courses by serving time.
class CourseModel : public DifferenceModel {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("made by Timeline")
 public:
  enum Role { TitleRole = Qt::UserRole, SpokenRole, MinuteRole, SubRowRole, RoomAfterRole, LateRole };

  explicit CourseModel(QObject* parent = nullptr) : DifferenceModel(parent) {}
  void setCourses(std::vector<CourseRow> courses) { become(rows_, std::move(courses)); }
  const std::vector<CourseRow>& courses() const { return rows_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QHash<int, QByteArray> roleNames() const override;

 private:
  std::vector<CourseRow> rows_;
};

}  // namespace suppertide
