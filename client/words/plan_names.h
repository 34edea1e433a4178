// Names for people of everything that a plan refers to by id.
#pragma once

#include <QtCore/qhash.h>
#include <QtCore/qstring.h>

#include <string>

#include "client/link/replica.h"

namespace suppertide {

// Every lookup answers: what is not known is called by its id, so that nothing is hidden.
class PlanNames {
 public:
  PlanNames(const link::Replica& replica, const v1::Event& event);

  QString cook(const std::string& id) const { return find(cooks_, id); }
  QString dish(const std::string& id) const { return find(dishes_, id); }
  QString course(const std::string& id) const { return find(courses_, id); }
  QString courseOfDish(const std::string& dishId) const;
  // A step as its recipe calls it, by planned id: also where no plan has it.
  QString step(const std::string& plannedId) const { return find(steps_, plannedId); }
  QString oven(const std::string& id) const { return find(ovens_, id); }
  QString place(const std::string& id) const { return find(places_, id); }
  QString equipment(const std::string& id) const { return find(equipment_, id); }
  // A cook, oven, equipment or place; empty for the burners, which have no name of their own.
  QString thing(const std::string& id) const;
  bool isPlace(const std::string& id) const { return places_.contains(QString::fromStdString(id)); }

 private:
  using Map = QHash<QString, QString>;
  static QString find(const Map& map, const std::string& id);

  Map cooks_, dishes_, courses_, courseIds_, steps_, ovens_, places_, equipment_;
};

}  // namespace suppertide
